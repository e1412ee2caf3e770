package sheets

import (
	"math"

	"rebush/sheets/draw"
)

// plateSketch shows where lengths are taken from.
func plateSketch(b *block) {
	pt := b.st.small
	const w, h = 92.0, 26.0
	x, y := (b.Width-w)/2, b.y+1
	b.As(draw.Picture, func() {
		b.Rect(x, y, w, h, 0.5)
		b.Circle(x+18, y+17, 3, 0.4, false)
		b.Circle(x+72, y+17, 3, 0.4, false)
		b.Cross(x+18, y+17, 4.5, 0.15)
		b.Cross(x+72, y+17, 4.5, 0.15)
		b.Disc(x, y+h, 1, draw.Black)
		b.Span(x, y+h+4, x+w, y+h+4, 2, 0.2)
		b.Span(x-5, y, x-5, y+h, 2, 0.2)
		b.Span(x+18, y+17, x+18, y+h, 1.6, 0.2)
		b.Span(x, y+17, x+13.5, y+17, 1.6, 0.2)
	})
	mid := (draw.Rise - draw.Drop) / 2 * pt * draw.MMPerPt
	b.Label(x+w/2, y+h+4+mid, 10, "A", draw.Bold, pt)
	b.Label(x-5, y+h/2+mid, 10, "B", draw.Bold, pt)
	b.Label(x+7, y+17+mid, 10, "x", draw.Bold, pt)
	b.Label(x+18, y+22+mid, 10, "y", draw.Bold, pt)
	b.write(x+w+3, y+h-em(pt), b.Width-x-w-3, "black dot: datum", draw.Regular, pt)
	b.y = y + h + 8
	b.Reach(b.y)
}

// holeSketch shows what to measure at a worn hole, and from where.
func holeSketch(b *block, x, y, side float64) {
	pt := b.st.small
	cx, cy, r, worn := x+side/2-2, y+side/2, 12.5, 4.0
	b.As(draw.Picture, func() {
		b.Rect(x, y, side, side, 0.2)
		b.Path(wornShape(cx, cy, r, worn), true, 0.5, false, draw.Open)
		b.Span(cx, cy-r-worn, cx, cy+r, 2, 0.2)
		b.Span(cx-r, cy+2, cx+r, cy+2, 2, 0.2)
		b.Span(cx, cy+r, cx, y+side, 1.6, 0.2)
		b.DashLine(cx, cy, x+side-2, cy, 0.15)
		b.Cross(cx, cy-worn/2, 2, 0.35)
	})
	mid := (draw.Rise - draw.Drop) / 2 * pt * draw.MMPerPt
	b.Label(cx, cy-r-worn+6+mid, 12, "W", draw.Bold, pt)
	b.Label(cx-r+5, cy+2+mid, 12, "N", draw.Bold, pt)
	b.Label(cx, cy+r+5.5+mid, 12, "E", draw.Bold, pt)
	b.Label(x+side-4, cy-3+mid, 12, "0°", draw.Regular, pt)
	b.Label(cx+4.5, cy-worn/2-2.2+mid, 12, "C", draw.Bold, pt)
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
