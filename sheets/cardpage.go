package sheets

import (
	"strconv"
	"strings"

	"rebush/fits/say"
	"rebush/plan"
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
	if len(c.before) > 0 {
		p.part("Before set-up "+oneLine(c.set.Name), "before "+c.set.Name, false, func() { beforeRows(p, pl, c) })
	}
	title := setTitle(c.set)
	put := p.wholePart
	if p.how.flow {
		put = p.part
	}
	put(title, "set-up "+c.set.Name, true, func() {
		p.again = func() *block { return againBlock(p, pl, c, title) }
		h := heldOf(p, pl, c)
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
			p.rows(pl, c, k, h)
		}
		p.tight(cardFoot(p, pl, c))
	})
	p.again, p.tornOn = nil, 0
}

// beforeRows are made elsewhere for a clamping, before it.
func beforeRows(p *paper, pl *plan.Plan, c card) {
	last := ""
	for _, r := range c.before {
		if at := pl.Operations[r.ops[0]].Setup; at != last {
			placeHead(p, pl, at)
			last = at
		}
		p.row(pl, c, r, held{})
	}
}

// row adds a row.
func (p *paper) row(pl *plan.Plan, c card, r row, h held) {
	p.fitTight(func(st style) *block { return shorterRow(p, pl, c, r, h, st) })
}

// shorterRow is a row with what to do beside its boxes or over them, whichever is
// shorter.
func shorterRow(p *paper, pl *plan.Plan, c card, r row, h held, st style) *block {
	var best *block
	for _, above := range []bool{false, true} {
		b := p.block()
		b.st = st
		rowBlock(b, p, pl, c, r, h, above)
		if best == nil || b.y < best.y-0.5 {
			best = b
		}
	}
	for _, i := range r.ops {
		best.ops = append(best.ops, pl.Operations[i].Number)
	}
	return best
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
	if len(h.lines)+len(h.hurts)+len(h.side)+len(h.some) == 0 && coming(p, pl, c) == "" {
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
	for _, x := range h.some {
		text = append(text, run{"At " + x.at + ":", draw.Bold}, run{ended(strings.Join(x.lines, "; ")), draw.Regular})
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
	side := 33.0
	if b.st.closer >= closest {
		side = 29
	}
	under := elevation(b, p, pl, c, draw.Box{X: 0, Y: b.y, W: wide, H: side})
	low, over := b.y+side, ""
	part := func(x, w float64, fill func(in *block)) {
		in := p.block()
		in.Board.Width = w
		fill(in)
		b.absorb(in, x, b.y)
		low = max(low, b.y+in.y)
	}
	if len(pl.Holes) > 0 && c.set.Plate != "" {
		part(wide+2, b.Width-wide-dialWide-4, func(in *block) { over = planView(in, p, pl, c) })
	}
	if dialWide > 0 {
		part(b.Width-dialWide, dialWide, func(in *block) { dialBoxes(in, p, pl, cells, 1) })
	}
	// What stands under them: in a line as far as it goes.
	pt := b.st.small
	left := min(draw.Width(printable(under), draw.Regular, pt)+0.1, 0.5*b.Width)
	b.y = b.write(0, low+0.8, left, under, draw.Regular, pt)
	b.y = max(b.y, b.write(left+4, low+0.8, b.Width-left-4, over, draw.Regular, pt)) + 0.3
	b.Reach(b.y)
}

// planView is the plate that is up, with the holes that this clamping works
// dimensioned as they are dialled. It returns what stands under it.
func planView(b *block, p *paper, pl *plan.Plan, c card) string {
	work := map[string]bool{}
	for _, g := range c.groups {
		for _, s := range g.places {
			work[s.shaft] = true
		}
	}
	words, bottom := truckDrawing(b, pl, c.set, 20, func(shaft string) bool { return work[shaft] })
	b.y = bottom
	return words
}

// forceWords is what a press is expected to want and where it is stopped, in
// large type.
func forceWords(p *paper, op plan.Operation) string {
	if op.Kind != route.KindPress || op.Halt <= 0 {
		return ""
	}
	return "HALT at " + say.Num(op.Halt, 0, "N").Halts().In(p.u.said()) + "; expect " + say.Row(0, "N", " to ", op.Expect[0],
		op.Expect[1]).In(p.u.said())
}
