package sheets

import (
	"slices"
	"strconv"
	"strings"

	"rebush/plan"
	"rebush/plan/route"
	"rebush/plan/safety"
	"rebush/sheets/draw"
)

// benchGroups are the groups of a card without a clamping.
func benchGroups(p *paper, pl *plan.Plan, c card) {
	shown := false
	var all []safety.Line
	for _, h := range benchHeld(pl, c) {
		b := p.block()
		b.y = b.write(0, 0, b.Width, "Safety, at "+h.at+": "+hurtWords(h)+".", draw.Regular, b.st.aside())
		b.Reach(b.y)
		p.glue(b)
		all = append(all, h.hurts...)
	}
	for _, g := range c.groups {
		placeHead(p, pl, g.setup)
		if op, ok := firstPress(pl, g); ok && !shown {
			b := p.block()
			pressPicture(b, p, pl, op)
			p.tight(b)
			limitBars(p, pl, "press")
			shown = true
		}
		h := groupHeld(pl, g)
		h.hurts = slices.DeleteFunc(h.hurts, func(l safety.Line) bool { return slices.ContainsFunc(all, sameWords(l)) })
		if len(h.hurts) > 0 {
			b := p.block()
			b.y = b.write(0, 0, b.Width, "Safety, "+strconv.Itoa(h.from)+" to "+strconv.Itoa(h.to)+": "+hurtWords(h)+".",
				draw.Regular, b.st.aside())
			b.Reach(b.y)
			p.glue(b)
		}
		h.hurts = append(slices.Clone(h.hurts), all...)
		for _, r := range g.rows {
			p.row(pl, c, r, h)
			if pl.Operations[r.ops[0]].Kind == route.KindTryMesh {
				meshBars(p, pl, "try "+numbers(pl, r))
			}
		}
	}
	if len(c.groups) > 2 {
		p.tight(benchFoot(p, pl, c))
	}
}

func hurtWords(h held) string {
	var s []string
	for _, l := range h.hurts {
		s = append(s, sentence(l.Words))
	}
	return strings.Join(s, ". ")
}

func sameWords(l safety.Line) func(safety.Line) bool {
	return func(x safety.Line) bool { return x.Words == l.Words }
}

// benchHeld is what can hurt at more than one place of a card: said once, with
// the numbers of its operations.
func benchHeld(pl *plan.Plan, c card) []held {
	var out []held
	where := map[string]map[int]bool{}
	numbers := map[string][]string{}
	var order []safety.Line
	for k, g := range c.groups {
		for _, r := range g.rows {
			for _, i := range r.ops {
				op := pl.Operations[i]
				for _, l := range op.Safety {
					if l.Each {
						continue
					}
					if where[l.Words] == nil {
						where[l.Words] = map[int]bool{}
						order = append(order, l)
					}
					where[l.Words][k] = true
					numbers[l.Words] = append(numbers[l.Words], strconv.Itoa(op.Number))
				}
			}
		}
	}
	for _, l := range order {
		if len(where[l.Words]) < 2 {
			continue
		}
		at := strings.Join(numbers[l.Words], ", ")
		n := slices.IndexFunc(out, func(h held) bool { return h.at == at })
		if n < 0 {
			n = len(out)
			out = append(out, held{at: at})
		}
		out[n].hurts = append(out[n].hurts, l)
	}
	return out
}

// groupHeld is what can hurt in more than one row of a group.
func groupHeld(pl *plan.Plan, g group) held {
	h := held{text: map[string]bool{}}
	rows := map[string]int{}
	for _, r := range g.rows {
		seen := map[string]bool{}
		for _, i := range r.ops {
			for _, l := range pl.Operations[i].Safety {
				if !seen[l.Words] {
					seen[l.Words] = true
					rows[l.Words]++
				}
			}
		}
	}
	said := map[string]bool{}
	for _, r := range g.rows {
		for _, i := range r.ops {
			op := pl.Operations[i]
			for _, l := range op.Safety {
				if rows[l.Words] < 2 || l.Each {
					continue
				}
				if h.from == 0 {
					h.from = op.Number
				}
				h.to = op.Number
				if !said[l.Words] {
					said[l.Words] = true
					h.hurts = append(h.hurts, l)
				}
			}
		}
	}
	return h
}

// benchFoot says where the work may rest, and who did it.
func benchFoot(p *paper, pl *plan.Plan, c card) *block {
	b := p.block()
	var rest []string
	for _, g := range c.groups {
		for _, r := range g.rows {
			for _, i := range r.ops {
				if pl.Operations[i].MayWait {
					rest = append(rest, strconv.Itoa(pl.Operations[i].Number))
				}
			}
		}
	}
	if len(rest) > 0 {
		b.y = b.write(0, 0.6, b.Width, "A good place to rest: after "+strings.Join(rest, ", after ")+".", draw.Bold,
			b.st.body)
	}
	b.blanks(0, b.Width, []blankLine{{"done by", "", 1.2}, {"date", "", 1}, {"stopped after", "", 0.9}})
	return b
}

func firstPress(pl *plan.Plan, g group) (plan.Operation, bool) {
	for _, r := range g.rows {
		for _, i := range r.ops {
			if op := pl.Operations[i]; op.Kind == route.KindPress && op.Expect[1] > 0 {
				return op, true
			}
		}
	}
	return plan.Operation{}, false
}

// placeHead is what holds for all that is done at a place without a clamping.
func placeHead(p *paper, pl *plan.Plan, setup string) {
	s, ok := setupNamed(pl, setup)
	if !ok || s.Words == "" {
		return
	}
	head := p.block()
	head.y = head.write(0, 0, head.Width, placeWords(pl, setup)+": "+s.Words.String()+".", draw.Bold, p.st.body)
	head.Reach(head.y)
	p.glue(head)
}
