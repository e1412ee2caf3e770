package sheets

import (
	"rebush/plan"
	"rebush/sheets/draw"
)

// cautions stand before every job. Common practice, no source.
var cautions = []string{
	"The machine's own manual, local codes and licensed practice come first. This sheet comes after them.",
	"Eye protection on, from the first cut to the last of the cleaning.",
	"Rotating machinery: no gloves, no rings, no loose sleeves, long hair tied back.",
	"Clamp the work, never hold it by hand. Chuck key out before the spindle starts.",
	"Swarf: spindle stopped, then a brush. Never fingers.",
	"Work and tools get hot from cutting, and edges are sharp.",
	"Old paint may hold lead: wipe it wet, no dry sanding. Dust of old castings: damp cloth, do not breathe it.",
	"Bronze and brass may hold lead: wash hands before eating.",
	"Is it zinc? Magnesium looks alike and weighs about a quarter as much. Its swarf burns, and water feeds the fire. Light in the hand, or not sure: do not cut it.",
	"Never melt or heat a casting.",
}

func before(p *paper, pl *plan.Plan) {
	p.open("Before you start", "before")
	for _, c := range cautions {
		b := p.block()
		b.ticked(c, draw.Regular)
		p.tight(b)
	}
	list(p, "Lay out", "lay out", pl.LayOut)
	var buy []string
	for _, l := range pl.Buy {
		s := l.What
		if l.Why != "" {
			s += ": " + l.Why
		}
		buy = append(buy, s)
	}
	list(p, "Buy first", "buy", buy)
	b := p.block()
	b.para(sameWord, draw.Regular, p.st.small)
	p.add(b)
}

func list(p *paper, title, anchor string, lines []string) {
	if len(lines) == 0 {
		return
	}
	p.follow(title, anchor)
	for len(lines) > 0 {
		b := p.block()
		half := (b.Width - 6) / 2
		room := half - b.st.tick - 3.5
		if len(lines) > 1 && draw.Width(oneLine(lines[0]), draw.Regular, b.st.body) <= room && draw.Width(oneLine(lines[1]), draw.Regular, b.st.body) <= room {
			for i, x := range []float64{0, half + 6} {
				in := &block{Board: draw.NewBoard(half), st: b.st, u: b.u}
				in.ticked(lines[i], draw.Regular)
				b.absorb(in, x, 0)
				b.y = max(b.y, in.y)
			}
			lines = lines[2:]
		} else {
			b.ticked(lines[0], draw.Regular)
			lines = lines[1:]
		}
		p.tight(b)
	}
}
