package sheets

import (
	"slices"
	"strconv"
	"strings"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/route"
	"rebush/plan/safety"
	"rebush/sheets/draw"
)

// cardParts lays the cards of a plan onto paper, each a part of its own.
func cardParts(p *paper, pl *plan.Plan, cards []card) {
	for k, c := range cards {
		if c.clamped {
			clampedPart(p, pl, c)
			continue
		}
		p.part(cardTitle(cards, k), "card "+strconv.Itoa(k), false, func() { benchGroups(p, pl, c) })
	}
}

// cardTitle is the heading of a card.
func cardTitle(cards []card, k int) string {
	switch {
	case cards[k].clamped:
		return setTitle(cards[k].set)
	case k+1 < len(cards):
		return "At the bench, before the first set-up"
	case k == 0:
		return "At bench and press"
	}
	return "Press, bores and putting together"
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
	return oneLine(t)
}

func clampedPart(p *paper, pl *plan.Plan, c card) {
	title := setTitle(c.set)
	p.part(title, "set-up "+c.set.Name, true, func() {
		p.again = func() *block { return againBlock(p, pl, c, title) }
		h := heldOf(p, pl, c)
		for _, r := range c.before {
			p.row(pl, c, r, held{})
		}
		b := p.block()
		setPictures(b, p, pl, c)
		p.tight(b)
		clampRows(p, pl, c, h)
		if c.set.Mirrored {
			b := p.block()
			mirroredBox(b, pl, c.set)
			p.tight(b)
		}
		heldBlock(p, pl, c, h)
		for k, g := range c.groups {
			if cells, _ := dialCells(p, pl, g); k > 0 && len(cells) > 0 {
				b := p.block()
				dialBoxes(b, p, pl, cells, min(2, len(cells)))
				p.glue(b)
			}
			if b := dialWords(p, pl, g); b != nil {
				p.glue(b)
			}
			for _, r := range g.rows {
				p.row(pl, c, r, h)
			}
		}
		p.tight(cardFoot(p, pl, c))
	})
	p.again = nil
}

// row adds a row.
func (p *paper) row(pl *plan.Plan, c card, r row, h held) {
	p.fitTight(func(st style) *block {
		b := p.block()
		b.st = st
		rowBlock(b, p, pl, c, r, h)
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
		p.row(pl, c, r, held{})
	}
}

// heldBlock is what holds for every cut of a clamping.
func heldBlock(p *paper, pl *plan.Plan, c card, h held) {
	if len(h.lines)+len(h.hurts)+len(h.side) == 0 && coming(p, pl, c) == "" {
		return
	}
	b := p.block()
	from := strconv.Itoa(h.from) + " to " + strconv.Itoa(h.to)
	var text []run
	if len(h.lines) > 0 {
		s := make([]string, len(h.lines))
		for i, l := range h.lines {
			s[i] = startSmall(l)
		}
		text = append(text, run{"At each of " + from + ":", draw.Bold}, run{ended(strings.Join(s, "; ")), draw.Regular})
	}
	for _, far := range []bool{false, true} {
		if len(h.side[far]) > 0 {
			who := map[bool]string{false: "Near plate:", true: "Far plate:"}[far]
			text = append(text, run{who, draw.Bold}, run{ended(strings.Join(h.side[far], "; ")), draw.Regular})
		}
	}
	if len(h.hurts) > 0 {
		text = append(text, run{"Safety, " + from + ":", draw.Bold}, run{hurtWords(h) + ".", draw.Regular})
	}
	if s := coming(p, pl, c); s != "" {
		text = append(text, run{"Come to each figure:", draw.Bold}, run{ended(s), draw.Regular})
	}
	b.flowing(text, b.Width, 0)
	b.Reach(b.y)
	p.tight(b)
}

// coming is how the figures of a clamping are come to.
func coming(p *paper, pl *plan.Plan, c card) string {
	for _, g := range c.groups {
		if _, common := dialCells(p, pl, g); len(common) > 0 && byDials(pl) {
			return strings.Join(common, "; ")
		}
	}
	return ""
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

// dialCell is one pair of figures to set.
type dialCell struct {
	name  string
	lines []string
	own   []string
}

// dialCells are the figures of a group, and what is said of coming to all of
// them.
func dialCells(p *paper, pl *plan.Plan, g group) (cells []dialCell, common []string) {
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
			cells = append(cells, dialCell{name, lines[i], own})
		}
	}
	return cells, common
}

// dialBoxes are the figures to set, once and large, so many across.
func dialBoxes(b *block, p *paper, pl *plan.Plan, cells []dialCell, across int) {
	pt, what := b.st.big*1.4, "dials, "+p.u.word()
	if !byDials(pl) {
		pt, what = b.st.body, "held by the jig, "+p.u.word()
	}
	w := (b.Width - 3*float64(across-1)) / float64(across)
	for i := 0; i < len(cells); i += across {
		row := cells[i:min(i+across, len(cells))]
		low := b.y
		for k, c := range row {
			x := float64(k) * (w + 3)
			lines := c.lines
			if len(cells) == 1 && len(lines) == 1 && w < 0.5*p.width() && byDials(pl) { // one above the other, as large as they go
				lines = strings.SplitN(strings.Replace(lines[0], "   y ", "|y ", 1), "|", 2)
			}
			y := b.write(x+2, b.y+1, w-4, strings.Join(append([]string{b.bench.say(c.name) + ", " + what}, c.own...), "; "), draw.Bold, b.st.small) + 0.8
			for _, l := range lines {
				size := pt
				for size > b.st.body && draw.Width(l, draw.Bold, size) > w-4 {
					size -= 0.5
				}
				y = b.write(x+2, y, w-4, l, draw.Bold, size) + 0.8
			}
			low = max(low, y+0.4)
		}
		for k := range row {
			b.Rect(float64(k)*(w+3)+0.4, b.y+0.4, w-0.8, low-b.y-0.8, 0.8)
		}
		b.y = low + 0.6
	}
	b.Reach(b.y)
}

// dialWords is the order in which the places of a group are worked; nil where
// there is but one.
func dialWords(p *paper, pl *plan.Plan, g group) *block {
	b := p.block()
	if n := len(g.places); n > 1 {
		var names []string
		for _, s := range g.places {
			names = append(names, s.shaft)
		}
		words := "First all rows at " + strings.Join(names, ", then all rows at ") + ": the numbers are the order."
		b.y = b.write(0, b.y, b.Width, words, draw.Bold, b.st.aside()+0.5) + 0.5
	}
	if b.y == 0 {
		return nil
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
	b.y = b.write(0, 0, b.Width, s, draw.Bold, b.st.aside()) + 0.6
	b.Line(0, b.y, b.Width, b.y, draw.Wide)
	b.y += 0.4
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
		b.y = b.write(0, 0.6, b.Width, coming, draw.Bold, b.st.aside())
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

// setPictures shows the clamping from the side and from above, with the dials of
// its first places beside them.
func setPictures(b *block, p *paper, pl *plan.Plan, c card) {
	b.scaled = true
	var cells []dialCell
	if len(c.groups) > 0 {
		cells, _ = dialCells(p, pl, c.groups[0])
	}
	wide, dialWide := b.Width*0.36, 0.0
	if len(cells) > 0 {
		dialWide = b.Width * 0.36
	}
	low := elevation(b, p, pl, c, draw.Box{X: 0, Y: b.y, W: wide, H: 34})
	part := func(x, w float64, fill func(in *block)) {
		in := p.block()
		in.Board.Width = w
		fill(in)
		b.absorb(in, x, b.y)
		low = max(low, b.y+in.y)
	}
	if len(pl.Holes) > 0 && c.set.Plate != "" {
		part(wide+2, b.Width-wide-dialWide-4, func(in *block) { planView(in, p, pl, c) })
	}
	if dialWide > 0 {
		part(b.Width-dialWide, dialWide, func(in *block) { dialBoxes(in, p, pl, cells, 1) })
	}
	b.y = low + 0.3
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
	truckPictureOf(b, pl, c.set, 20, func(shaft string) bool { return work[shaft] })
}

// benchGroups are the groups of a card without a clamping.
func benchGroups(p *paper, pl *plan.Plan, c card) {
	pictured := false
	var all []safety.Line
	for _, h := range benchHeld(pl, c) {
		b := p.block()
		b.y = b.write(0, 0, b.Width, "Safety, at "+h.at+": "+hurtWords(h)+".", draw.Regular, b.st.aside())
		b.Reach(b.y)
		p.glue(b)
		all = append(all, h.hurts...)
	}
	for _, g := range c.groups {
		if s, ok := setupNamed(pl, g.setup); ok && s.Words != "" {
			head := p.block()
			head.y = head.write(0, 0, head.Width, placeWords(pl, g.setup)+": "+s.Words.String()+".", draw.Bold, p.st.body)
			head.Reach(head.y)
			p.glue(head)
		}
		if op, ok := firstPress(pl, g); ok && !pictured {
			b := p.block()
			pressPicture(b, p, pl, op)
			if p.how == roomy {
				p.glue(b)
			} else {
				p.tight(b)
			}
			pictured = true
		}
		h := groupHeld(pl, g)
		h.hurts = slices.DeleteFunc(h.hurts, func(l safety.Line) bool { return slices.ContainsFunc(all, sameWords(l)) })
		if len(h.hurts) > 0 {
			b := p.block()
			b.y = b.write(0, 0, b.Width, "Safety, "+strconv.Itoa(h.from)+" to "+strconv.Itoa(h.to)+": "+hurtWords(h)+".", draw.Regular, b.st.aside())
			b.Reach(b.y)
			p.glue(b)
		}
		h.hurts = append(slices.Clone(h.hurts), all...)
		for _, r := range g.rows {
			p.row(pl, c, r, h)
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
		b.y = b.write(0, 0.6, b.Width, "A good place to rest: after "+strings.Join(rest, ", after ")+".", draw.Bold, b.st.body)
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
