package sheets

import (
	"strconv"

	"rebush/plan"
	"rebush/sheets/draw"
)

// opAnchor names the block of an operation for links.
func opAnchor(op plan.Operation) string { return "op " + strconv.Itoa(op.Number) }

// routePages lists the operations, each with a link to its block.
func routePages(p *paper, pl *plan.Plan) {
	if len(pl.Operations) == 0 {
		return
	}
	p.open("Route", "route")
	b := p.block()
	b.para("Where the work stopped", draw.Bold, p.st.body)
	b.y -= 2
	for range 2 {
		b.blanks(0, b.Width, []blankLine{{"after operation", "", 1}, {"date", "", 0.8}, {"initials", "", 0.6}, {"still to gauge", "", 1.2}})
	}
	p.add(b)
	last := ""
	for _, op := range pl.Operations {
		if op.Setup != last && op.Setup != "" {
			last = op.Setup
			b := p.block()
			s, _ := setupNamed(pl, op.Setup)
			words := placeWords(pl, op.Setup)
			if s.Plate != "" {
				words += ": " + string(s.Plate) + " plate up"
			}
			if s.Mirrored {
				words += ", MIRRORED"
			}
			words = oneLine(words)
			b.para(words, draw.Bold, p.st.body)
			b.y -= 2
			b.Board.Height = b.y
			p.glue(b)
		}
		b := p.block()
		routeLine(b, op)
		p.tight(b)
	}
}

func routeLine(b *block, op plan.Operation) {
	t := b.st.tick
	nw := draw.Width("0000", draw.Bold, b.st.body) + 2
	x := t + 3 + nw
	wide := b.Width - x
	toolW := 0.0
	if !b.st.large {
		toolW = wide * 0.33
		wide -= toolW + 4
	}
	do := op.Do.String()
	h := b.tall(wide, do, draw.Regular, b.st.body)
	toolX, toolY := x+wide+4, 0.0
	if b.st.large {
		toolX, toolY, toolW = x, h+1, wide
	}
	text := max(0, (t-em(b.st.body))/2)
	b.Rect(0.3, 0.2, t, t, 0.45)
	b.write(t+3, text, nw, strconv.Itoa(op.Number), draw.Bold, b.st.body)
	end := b.write(x, text, wide, do, draw.Regular, b.st.body)
	if op.Tool != "" {
		end = max(end, b.write(toolX, text+toolY, toolW, op.Tool.String(), draw.Regular, b.st.small))
	}
	b.y = max(end, t+0.6) + 0.7
	b.Link(draw.Box{X: t + 2, Y: 0, W: b.Width - t - 2, H: b.y}, opAnchor(op))
	b.Line(0, b.y, b.Width, b.y, 0.12)
	b.Reach(b.y)
}
