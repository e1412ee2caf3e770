package draw

import "math"

// Cross draws two lines of an arm each way through x, y.
func (b *Board) Cross(x, y, arm, pen float64) {
	b.Line(x-arm, y, x+arm, y, pen)
	b.Line(x, y-arm, x, y+arm, pen)
}

// Arrow draws a line with a filled head at its second end. A head that is
// longer than the line is made shorter.
func (b *Board) Arrow(x1, y1, x2, y2, head, pen float64) {
	dx, dy := x2-x1, y2-y1
	l := math.Hypot(dx, dy)
	if l < 1e-9 {
		return
	}
	head = min(head, 0.7*l)
	dx, dy = dx/l, dy/l
	bx, by := x2-head*dx, y2-head*dy
	b.Line(x1, y1, bx, by, pen)
	w := 0.35 * head
	b.Path([][2]float64{{x2, y2}, {bx - w*dy, by + w*dx}, {bx + w*dy, by - w*dx}}, true, 0, false, Black)
}

// Ring hatches the ring between two radii with lines at 45 degrees.
func (b *Board) Ring(x, y, inner, outer, gap, pen float64) {
	const s = math.Sqrt2 / 2
	chord := func(d, r float64) float64 {
		if math.Abs(d) >= r {
			return 0
		}
		return math.Sqrt(r*r - d*d)
	}
	seg := func(d, from, to float64) {
		// Along (s, -s), offset d across it.
		b.Line(x+from*s+d*s, y-from*s+d*s, x+to*s+d*s, y-to*s+d*s, pen)
	}
	n := int(outer / gap)
	for i := -n; i <= n; i++ {
		d := float64(i) * gap
		out, in := chord(d, outer), chord(d, inner)
		switch {
		case out == 0:
		case in == 0:
			seg(d, -out, out)
		default:
			seg(d, -out, -in)
			seg(d, in, out)
		}
	}
}

// Span draws a dimension line between two points with a head at each end.
func (b *Board) Span(x1, y1, x2, y2, head, pen float64) {
	mx, my := (x1+x2)/2, (y1+y2)/2
	b.Arrow(mx, my, x1, y1, head, pen)
	b.Arrow(mx, my, x2, y2, head, pen)
}
