package sheets

import (
	"math"

	"rebush/sheets/draw"
)

// letter writes the letter of a measure on a ground cleared for it, about x, y.
func (b *block) letter(x, y float64, s string) {
	pt := b.st.small
	b.Label(x, y+(draw.Rise-draw.Drop)/2*pt*draw.MMPerPt, 60, s, draw.Bold, pt)
}

// plateSketch shows where lengths are taken from: the left plate from its
// outside, and both plates from the front.
func plateSketch(b *block) {
	pt := b.st.small
	const w, h = 84.0, 27.0
	x, y := 12.0, b.y+em(pt)+2
	ex, ew, t := x+w+28, 30.0, 4.0 // the view from the front
	b.write(x, b.y, w, "left plate, seen from the left side", draw.Regular, pt)
	b.write(ex-14, b.y, b.Width-ex+14, "both plates, from the front", draw.Regular, pt)
	b.As(draw.Picture, func() {
		b.Rect(x, y, w, h, 0.5)
		b.Circle(x+16, y+17, 3, 0.5, false)
		b.Circle(x+66, y+17, 3, 0.5, false)
		b.Cross(x+66, y+17, 4.5, 0.2)
		b.Disc(x, y+h, 1.1, draw.Black)
		b.Span(x, y+h+5, x+w, y+h+5, 2, 0.2)
		b.Span(x-6, y, x-6, y+h, 2, 0.2)
		b.Span(x+66, y+17, x+66, y+h, 1.6, 0.2)
		b.Span(x, y+17, x+66, y+17, 1.6, 0.2)
		b.Rect(ex, y, t, h, 0.5)
		b.Rect(ex+ew-t, y, t, h, 0.5)
		b.Span(ex, y+h+5, ex+ew, y+h+5, 2, 0.2)
		b.Arrow(ex+t+6, y+4, ex+t, y+4, 1.8, 0.2)
		b.Arrow(ex-6, y+4, ex, y+4, 1.8, 0.2)
	})
	b.letter(x+w/2, y+h+5, "A")
	b.letter(x-6, y+h/2, "B")
	b.letter(x+40, y+17, "x")
	b.letter(x+66, y+22.5, "y")
	b.letter(ex-8.5, y+4, "T")
	b.letter(ex+ew/2, y+h+5, "width")
	b.write(x+2.5, y+h-em(pt)-0.6, 58, "black dot: from here", draw.Regular, pt)
	b.y = y + h + 9
	b.Reach(b.y)
}

// holeSketch shows what to measure at a worn hole, from where, and how
// directions are counted; it returns the height of its foot.
func holeSketch(b *block, x, y, side float64) float64 {
	pt := b.st.small
	high := side - 4 + 2*(em(pt)-em(10))
	cx, cy, r, worn := x+side/2, y+high/2+1, 12.0, 4.0
	edge := cy + r + 7.5
	b.As(draw.Picture, func() {
		b.Rect(x, y, side, high, 0.2)
		b.Path(wornShape(cx, cy, r, worn), true, 0.5, false, draw.Open)
		b.Span(cx, cy-r-worn, cx, cy+r, 2, 0.2)
		b.Span(cx-r, cy+3, cx+r, cy+3, 2, 0.2)
		b.Line(x+4, edge, x+side-4, edge, 0.5)
		b.Span(cx+6, cy+10.4, cx+6, edge, 1.4, 0.2)
		for _, d := range [][2]float64{{1, 0}, {-1, 0}} {
			b.Line(cx+d[0]*(r+1.5), cy-d[1]*(r+1.5), cx+d[0]*(r+5), cy-d[1]*(r+5), 0.2)
		}
		b.Line(cx, cy-r-worn-1, cx, cy-r-worn-2.5, 0.2)
		b.Cross(cx-5, cy-worn/2-1, 1.6, 0.35)
	})
	b.letter(cx, cy-r-worn+5.5, "W")
	b.letter(cx-r+4.5, cy+3, "N")
	b.letter(cx+9, cy+r+4.2, "E")
	b.letter(cx-5, cy-worn/2-5, "C")
	b.letter(x+side-5, cy, "0°")
	b.letter(x+5.5, cy, "180°")
	b.letter(cx+8.5, cy-r-worn-3.2, "90° up")
	b.letter(cx-6, cy+r+4.2, "270°")
	b.write(x+2, edge+1, side, "free edge", draw.Regular, pt)
	return y + high
}

// wornShape is a round hole that a journal has worn upwards.
func wornShape(cx, cy, r, worn float64) [][2]float64 {
	const n = 72
	out := make([][2]float64, n)
	for i := range out {
		s, c := math.Sincos(2 * math.Pi * float64(i) / n)
		up := max(0, s) * worn
		out[i] = [2]float64{cx + r*c, cy - r*s - up}
	}
	return out
}
