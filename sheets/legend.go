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
		{func(x, y float64) { b.Line(x-5, y, x+5, y, draw.Wide) }, "hole as found"},
		{func(x, y float64) {
			b.Stroked(draw.Other, func() { b.Line(x-5, y, x+5, y, draw.Narrow) })
		}, "before and after"},
		{func(x, y float64) { b.Circle(x, y, 1.5, 0.4, false) }, "old centre"},
		{func(x, y float64) { b.Circle(x, y, 2.1, 0.2, true) }, "how sure that is"},
		{func(x, y float64) {
			b.Line(x-1.6, y-1.6, x+1.6, y+1.6, 0.4)
			b.Line(x-1.6, y+1.6, x+1.6, y-1.6, 0.4)
		}, "middle as found"},
	}
	if pl.OK {
		list = append(list,
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
	if b.st.closer >= closest {
		row = em(pt) + 0.9
	}
	for i, s := range list {
		x, y := float64(i%cols)*w, b.y+float64(i/cols)*row
		b.As(draw.Picture, func() { s.draw(x+5.2, y+row/2) })
		b.write(x+12.5, y+(row-em(pt))/2, w-13, s.say, draw.Regular, pt)
	}
	b.y += float64((len(list)+cols-1)/cols)*row + 0.5
	words := "Left: the whole hole, its wear enlarged; right: its middle. Seen from the left, datum edge below."
	for _, h := range pl.Holes {
		if len(h.Points) > 0 {
			words += " Black dots: points measured."
			break
		}
	}
	b.para(words, draw.Regular, pt)
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
