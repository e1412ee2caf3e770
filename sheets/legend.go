package sheets

import (
	"rebush/plan"
	"rebush/sheets/draw"
)

// legend explains the pictures of the holes, each sign drawn as it is there.
func legend(b *block, pl *plan.Plan) {
	type sign struct {
		draw func(x, y float64) // about x, y, 10 wide
		say  string
	}
	list := []sign{
		{func(x, y float64) { b.Line(x-5, y, x+5, y, 0.55) }, "hole as found"},
		{func(x, y float64) { b.DashLine(x-5, y, x+5, y, 0.25) }, "hole before it wore"},
		{func(x, y float64) { b.Circle(x, y, 1.5, 0.4, false) }, "old centre"},
		{func(x, y float64) { b.Circle(x, y, 2.1, 0.2, true) }, "how sure that is"},
		{func(x, y float64) {
			b.Line(x-1.6, y-1.6, x+1.6, y+1.6, 0.4)
			b.Line(x-1.6, y+1.6, x+1.6, y-1.6, 0.4)
		}, "middle as found"},
	}
	if pl.OK {
		list = append(list,
			sign{func(x, y float64) { b.Line(x-5, y, x+5, y, 0.3) }, "new seat"},
			sign{func(x, y float64) { b.Cross(x, y, 2, 0.4) }, "new centre"},
			sign{func(x, y float64) { b.Arrow(x-4, y, x+4, y, 2.4, 0.45) }, "the move"})
	}
	cols := 4
	switch {
	case b.st.large:
		cols = 2
	case b.st.body > 13:
		cols = 3
	}
	pt := b.st.small
	w, row := b.Width/float64(cols), em(pt)+2.4
	for i, s := range list {
		x, y := float64(i%cols)*w, b.y+float64(i/cols)*row
		b.As(draw.Picture, func() { s.draw(x+5.2, y+row/2) })
		b.write(x+12.5, y+(row-em(pt))/2, w-13, s.say, draw.Regular, pt)
	}
	b.y += float64((len(list)+cols-1)/cols)*row + 0.5
	b.para("Left: the whole hole; right: its middle, much larger. Seen from the left side, datum edge below. Black dots: points measured.", draw.Regular, pt)
	b.y -= 1
	b.Reach(b.y)
}

// leftAlone says whether nothing is done to a bore.
func leftAlone(pl *plan.Plan, bore string) bool {
	if pl.Holes[bore].SeatR > 0 {
		return false
	}
	if pl.Job != nil {
		if s, _ := pl.Job.Bore(bore); s != nil && s.Leave {
			return true
		}
	}
	if !pl.OK {
		return false
	}
	for _, op := range pl.Operations {
		if op.Bore == bore {
			return false
		}
	}
	return true
}

// details draws the first holes that are moved enlarged below the picture of
// the truck, where the page has room for them above what goes below: at the scale of a truck neither
// wear nor move can be seen.
func details(p *paper, pl *plan.Plan, below float64) {
	const room, apart = 39.0, 8.0
	if !pl.OK || p.st.large {
		return
	}
	b := p.block()
	n := 0
	low := 0.0
	for _, s := range pl.Survey {
		h, ok := pl.Holes[s.Bore]
		if !ok || h.SeatR <= 0 || n == 2 {
			continue
		}
		in := &block{Board: draw.NewBoard(2*room + 6), st: b.st, u: b.u, bench: b.bench}
		in.y = in.write(0, 0, in.Width, draw.Cut(oneLine(s.Bore), draw.Bold, in.st.small, in.Width), draw.Bold, in.st.small) + 1
		surveyPictures(in, pl, s, h, room)
		b.absorb(in, float64(n)*(in.Width+apart), 0)
		low = max(low, in.y)
		n++
	}
	if n == 0 {
		return
	}
	b.y = b.write(0, low, b.Width, "Thick, hole as found; broken, before it wore; thin, new seat. Ring, old centre; arrow, the move to the new centre.", draw.Regular, b.st.small)
	b.Reach(b.y)
	if p.y+b.y+gap+below > p.floor() {
		return
	}
	p.add(b)
}
