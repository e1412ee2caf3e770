package sheets

import (
	"math"
	"strconv"
	"strings"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/job"
	"rebush/plan/route"
	"rebush/sheets/draw"
)

// cardParts lays the cards of a plan onto paper, each a part of its own.
func cardParts(p *paper, pl *plan.Plan, cards []card) {
	for k, c := range cards {
		if c.clamped {
			clampedPart(p, pl, c)
			continue
		}
		title := "Press, bores and putting together"
		if k+1 < len(cards) {
			title = "At the bench, before the first set-up"
		} else if k == 0 {
			title = "At bench and press"
		}
		p.part(title, "card "+strconv.Itoa(k), false, func() { benchGroups(p, pl, c) })
	}
}

// setTitle is the heading of a clamping.
func setTitle(s plan.Setup) string {
	t := "Set-up " + s.Name
	if s.Plate != "" {
		t += ": " + string(s.Plate) + " plate up"
	}
	if s.Mirrored {
		t += ", MIRRORED"
	}
	return t
}

func clampedPart(p *paper, pl *plan.Plan, c card) {
	title := setTitle(c.set)
	p.part(title, "set-up "+c.set.Name, true, func() {
		p.again = func() *block { return againBlock(p, pl, c, title) }
		h := heldOf(p, pl, c)
		for _, r := range c.before {
			p.row(pl, c, group{setup: pl.Operations[r.ops[0]].Setup, rows: c.before}, r, held{})
		}
		b := p.block()
		setPictures(b, p, pl, c)
		p.add(b)
		clampRows(p, pl, c, h)
		if c.set.Mirrored {
			b := p.block()
			mirroredBox(b, pl, c.set)
			p.tight(b)
		}
		heldBlock(p, h)
		for _, g := range c.groups {
			placed(p, pl, g)
			col := columnsFor(p.block(), pl, g)
			if col.spins {
				head := p.block()
				tableHead(head, p.u, col)
				p.glue(head)
			}
			for _, r := range g.rows {
				p.row(pl, c, g, r, h)
			}
		}
		p.add(cardFoot(p, pl, c))
	})
	p.again = nil
}

// row adds a row.
func (p *paper) row(pl *plan.Plan, c card, g group, r row, h held) {
	p.fitTight(func(st style) *block {
		b := p.block()
		b.st = st
		rowBlock(b, p, pl, c, g, r, h, columnsFor(b, pl, g))
		return b
	})
}

// clampRows say how the chassis is clamped; where the plan has no step for it,
// in the words of the set-up.
func clampRows(p *paper, pl *plan.Plan, c card, h held) {
	if len(c.clamp) == 0 && c.set.Words != "" {
		b := p.block()
		b.para(sentence(c.set.Words.String()), draw.Regular, p.st.body)
		p.tight(b)
	}
	for _, r := range c.clamp {
		p.row(pl, c, group{setup: c.set.Name, rows: c.clamp}, r, held{})
	}
}

// heldBlock is what holds for every cut of a clamping.
func heldBlock(p *paper, h held) {
	if len(h.lines)+len(h.hurts) == 0 {
		return
	}
	b := p.block()
	from := strconv.Itoa(h.from) + " to " + strconv.Itoa(h.to)
	if len(h.lines) > 0 {
		s := make([]string, len(h.lines))
		for i, l := range h.lines {
			s[i] = startSmall(l)
		}
		b.y = b.write(0, b.y, b.Width, "At each of "+from+": "+strings.Join(s, "; ")+".", draw.Regular, b.st.body) + 0.8
	}
	if len(h.hurts) > 0 {
		var s []string
		for _, l := range h.hurts {
			s = append(s, sentence(l.Words))
		}
		b.y = b.write(0, b.y, b.Width, "Safety, "+from+": "+strings.Join(s, ". ")+".", draw.Regular, b.st.body) + 0.8
	}
	b.Reach(b.y)
	p.tight(b)
}

// placed are the dials of a group, large, a box for each of its places.
func placed(p *paper, pl *plan.Plan, g group) {
	if b := dialStrip(p, pl, g); b != nil {
		p.glue(b)
	}
}

// dials are what is set for one place: one pair of figures, or one for each
// hole where they differ.
func dials(p *paper, pl *plan.Plan, s spot) (names []string, lines [][]string, approach []string) {
	for _, i := range s.ops {
		op := pl.Operations[i]
		at := op.DialMM
		if at == nil {
			at = op.AtMM
		}
		l := p.u.at(at, false)
		if len(l) == 0 {
			continue
		}
		known := false
		for _, k := range lines {
			known = known || strings.Join(k, "|") == strings.Join(l, "|")
		}
		if !known {
			names, lines = append(names, op.Bore), append(lines, l)
		}
		if len(approach) == 0 && op.Approach != "" {
			approach = parts(op.Approach.String())
		}
	}
	if len(lines) == 1 && len(names) == 1 {
		names[0] = s.shaft
	}
	return names, lines, approach
}

func dialStrip(p *paper, pl *plan.Plan, g group) *block {
	type cell struct {
		name  string
		lines []string
		own   []string
	}
	var cells []cell
	var common []string
	for k, s := range g.places {
		names, lines, approach := dials(p, pl, s)
		var own []string
		for _, a := range approach {
			if strings.HasPrefix(a, "MIRRORED") {
				own = append(own, strings.TrimPrefix(a, "MIRRORED, "))
			} else if k == 0 {
				common = append(common, a)
			}
		}
		for i := range lines {
			name := names[i]
			if len(g.places) > 1 {
				name = strconv.Itoa(k+1) + "  " + name
			}
			cells = append(cells, cell{name, lines[i], own})
		}
	}
	if len(cells) == 0 {
		return nil
	}
	b := p.block()
	pt, what := b.st.big, "dials, "+p.u.word()
	if !byDials(pl) {
		pt, what = b.st.body, "held by the jig, "+p.u.word()
	}
	across := 2
	if len(cells) == 1 {
		across, pt = 1, pt*1.35
	}
	w := (b.Width - 4*float64(across-1)) / float64(across)
	if !byDials(pl) {
		pt = b.st.body
	}
	for i := 0; i < len(cells); i += across {
		row := cells[i:min(i+across, len(cells))]
		low := b.y
		for k, c := range row {
			x := float64(k) * (w + 4)
			y := b.write(x+2, b.y+1.2, w-4, strings.Join(append([]string{b.bench.say(c.name) + ", " + what}, c.own...), "; "), draw.Bold, b.st.small) + 1
			for _, l := range c.lines {
				size := pt
				for size > b.st.body && draw.Width(l, draw.Bold, size) > w-4 {
					size--
				}
				y = b.write(x+2, y, w-4, l, draw.Bold, size) + 1
			}
			low = max(low, y+0.6)
		}
		for k := range row {
			b.Rect(float64(k)*(w+4)+0.4, b.y+0.4, w-0.8, low-b.y-0.8, 0.8)
		}
		b.y = low + 0.8
	}
	if len(common) > 0 && byDials(pl) {
		b.y = b.write(0, b.y, b.Width, "Come to each figure: "+strings.Join(common, "; ")+".", draw.Regular, b.st.body) + 0.6
	}
	if n := len(g.places); n > 1 {
		words := "Work " + b.bench.say(g.places[0].shaft) + " from the first row to the last, then "
		for k, s := range g.places[1:] {
			if k > 0 {
				words += ", then "
			}
			words += s.shaft + " from the first again"
		}
		b.y = b.write(0, b.y, b.Width, words+": the numbers at the boxes are the order.", draw.Bold, b.st.body) + 0.6
	}
	b.Reach(b.y)
	return b
}

// againBlock heads a card that goes on on another page, with its dials.
func againBlock(p *paper, pl *plan.Plan, c card, title string) *block {
	b := p.block()
	s := title + ", continued."
	for _, g := range c.groups {
		for _, sp := range g.places {
			names, lines, _ := dials(p, pl, sp)
			for i := range lines {
				if byDials(pl) {
					s += "  " + b.bench.say(names[i]) + ": " + strings.Join(lines[i], ", ") + "."
				}
			}
		}
	}
	b.y = b.write(0, 0, b.Width, s, draw.Bold, b.st.body) + 1
	b.Line(0, b.y, b.Width, b.y, 0.5)
	b.y++
	b.Reach(b.y)
	return b
}

// cardFoot says where the work may rest, what is set again on coming back, and
// who did it.
func cardFoot(p *paper, pl *plan.Plan, c card) *block {
	b := p.block()
	var rest []string
	coming := ""
	all := []row{}
	all = append(all, c.clamp...)
	for _, g := range c.groups {
		all = append(all, g.rows...)
	}
	var ops []int
	for _, r := range all {
		ops = append(ops, r.ops...)
	}
	for k, i := range ops {
		op := pl.Operations[i]
		switch {
		case !op.MayWait:
		case op.Kind == route.KindSetUp && k+1 < len(ops):
			rest = append(rest, "before "+strconv.Itoa(pl.Operations[ops[k+1]].Number))
		default:
			rest = append(rest, "after "+strconv.Itoa(op.Number))
		}
	}
	if len(rest) > 0 {
		coming = "Rest only " + strings.Join(rest, " or ") + ". "
		coming += comingBack(pl, c)
	}
	if coming != "" {
		b.para(coming, draw.Bold, b.st.body)
		b.y -= 1
	}
	b.blanks(0, b.Width, []blankLine{{"done by", "", 1.2}, {"date", "", 1}, {"stopped after", "", 0.9}, {"still to gauge", "", 1.1}})
	return b
}

// comingBack is what is set again when the work has rested in a clamping.
func comingBack(pl *plan.Plan, c card) string {
	kind := ""
	if pl.Job != nil && pl.Job.Shop != nil {
		kind = pl.Job.Shop.MachineKind
	}
	switch {
	case kind == string(route.OnLathe):
		return "Coming back: run the hole true with the indicator again, turn it once by hand, and pass GAUGE FIRST again."
	case !byDials(pl):
		return "Coming back: look that jig and clamps sit fast, try the rod or the slip bush again, and pass GAUGE FIRST again."
	}
	return "Coming back: touch both datum edges, zero the dials, come to the figures from the same side, and pass GAUGE FIRST again."
}

// setPictures shows the clamping from the side and from above.
func setPictures(b *block, p *paper, pl *plan.Plan, c card) {
	wide := b.Width * 0.44
	low := elevation(b, p, pl, c, draw.Box{X: 0, Y: b.y, W: wide, H: 46})
	if len(pl.Holes) > 0 && c.set.Plate != "" {
		in := p.block()
		in.Board.Width = b.Width - wide - 4
		planView(in, p, pl, c)
		b.absorb(in, wide+4, b.y)
		low = max(low, b.y+in.y)
	}
	b.y = low + 0.5
	b.Reach(b.y)
}

// planView is the plate that is up, with the holes that this clamping works
// dimensioned as they are dialled.
func planView(b *block, p *paper, pl *plan.Plan, c card) {
	work := map[string]bool{}
	for _, g := range c.groups {
		for _, s := range g.places {
			work[s.shaft] = true
		}
	}
	truckPictureOf(b, pl, c.set, 26, func(shaft string) bool { return work[shaft] })
	p.scaled = true
}

// benchGroups are the groups of a card without a clamping.
func benchGroups(p *paper, pl *plan.Plan, c card) {
	pictured := false
	for _, g := range c.groups {
		head := p.block()
		words := placeWords(pl, g.setup)
		if s, ok := setupNamed(pl, g.setup); ok && s.Words != "" {
			words += ": " + s.Words.String()
		}
		if g.setup != "" {
			head.para(sentence(words)+".", draw.Bold, p.st.body)
			head.y -= 1
			head.Board.Height = head.y
			p.glue(head)
		}
		if op, ok := firstPress(pl, g); ok && !pictured {
			b := p.block()
			pressPicture(b, p, pl, op)
			p.glue(b)
			pictured = true
		}
		h := groupHeld(pl, g)
		if len(h.hurts) > 0 {
			b := p.block()
			var s []string
			for _, l := range h.hurts {
				s = append(s, sentence(l.Words))
			}
			b.y = b.write(0, 0, b.Width, "Safety, "+strconv.Itoa(h.from)+" to "+strconv.Itoa(h.to)+": "+strings.Join(s, ". ")+".", draw.Regular, b.st.body) + 0.8
			b.Reach(b.y)
			p.glue(b)
		}
		for _, r := range g.rows {
			p.row(pl, c, g, r, h)
		}
	}
	p.add(benchFoot(p, pl, c))
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
		b.para("A good place to rest: after "+strings.Join(rest, ", after ")+".", draw.Bold, b.st.body)
		b.y -= 1
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

// forceWords is what a press is expected to want and where it is stopped, in
// large type.
func forceWords(p *paper, op plan.Operation) string {
	if op.Kind != route.KindPress || op.Halt <= 0 {
		return ""
	}
	return "HALT at " + say.Num(op.Halt, 0, "N").In(p.u.said()) + "; expect " + say.Row(0, "N", " to ", op.Expect[0], op.Expect[1]).In(p.u.said())
}

var _ = math.Pi
var _ job.Side
