package sheets

import (
	"rebush/plan"
	"rebush/sheets/draw"
)

// before is what is done and laid out before the first operation.
func before(p *paper, pl *plan.Plan) {
	p.open("Before you start", "before")
	for _, l := range pl.Safety.Before {
		b := p.block()
		b.ticked(l.Words+".", draw.Regular)
		p.tight(b)
	}
	var out, buy []string
	for _, t := range pl.LayOut {
		out = append(out, t.String())
	}
	list(p, "Lay out", "lay out", out)
	for _, l := range pl.Buy {
		s := l.What.String()
		if l.Why != "" {
			s += ": " + l.Why
		}
		buy = append(buy, s)
	}
	list(p, "Buy first", "buy", buy)
}

func list(p *paper, title, anchor string, lines []string) {
	if len(lines) == 0 {
		return
	}
	p.follow(title, anchor)
	for len(lines) > 0 {
		b := p.block()
		n := abreast(b, lines)
		w := (b.Width - 6*float64(n-1)) / float64(n)
		for i, s := range lines[:n] {
			in := &block{Board: draw.NewBoard(w), st: b.st, u: b.u}
			in.ticked(s, draw.Regular)
			b.absorb(in, float64(i)*(w+6), 0)
			b.y = max(b.y, in.y)
		}
		lines = lines[n:]
		p.tight(b)
	}
}

// abreast is how many lines of a list go beside each other, each on one line:
// columns of one width, three at most.
func abreast(b *block, lines []string) int {
	for n := min(3, len(lines)); n > 1; n-- {
		room := (b.Width-6*float64(n-1))/float64(n) - b.st.tick - 3.5
		fits := true
		for _, s := range lines[:n] {
			fits = fits && draw.Width(oneLine(s), draw.Regular, b.st.body) <= room
		}
		if fits {
			return n
		}
	}
	return 1
}
