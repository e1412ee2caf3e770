package sheets

import "rebush/sheets/draw"

// axleSketch shows what is measured at an axle with its wheels, from the front.
func axleSketch(b *block) {
	y := b.y + 16.5
	const left = 28.0
	// Along the axle: wheel, hub, plate, gear seat, plate, hub, wheel.
	wheel, hub, plate, gap := 6.0, 7.0, 6.0, 44.0
	x0 := left
	x1 := x0 + wheel // back of the left wheel
	x2 := x1 + hub   // face of its hub
	x3 := x2 + 3     // outside of the left plate
	x4 := x3 + plate // its inside
	x5 := x4 + gap   // inside of the right plate
	x6 := x5 + plate // its outside
	x7 := x6 + 3     // face of the right hub
	x8 := x7 + hub   // back of the right wheel
	seat0, seat1 := x4+14.0, x4+30.0
	b.As(draw.Picture, func() {
		for _, x := range []float64{x0, x8} {
			b.Rect(x, y-13, wheel, 26, 0.5)
		}
		for _, x := range []float64{x1, x7} {
			b.Rect(x, y-5.5, hub, 11, 0.5)
		}
		for _, x := range []float64{x3, x5} { // a plate is cut: what is above and below the hole
			for _, side := range []float64{-1, 1} {
				top := min(y+side*2.6, y+side*16)
				b.Rect(x, top, plate, 13.4, 0.5)
				for k := 1; k < 6; k++ {
					b.Line(x, top+float64(k)*2.6, x+plate, top+float64(k)*2.6-2.6, 0.15)
				}
			}
		}
		for _, s := range []float64{-1, 1} {
			b.Line(x2, y+s*2.2, seat0, y+s*2.2, 0.5)
			b.Line(seat1, y+s*2.2, x7, y+s*2.2, 0.5)
			b.Line(seat0, y+s*3.6, seat1, y+s*3.6, 0.5)
		}
		b.Line(seat0, y-3.6, seat0, y+3.6, 0.5)
		b.Line(seat1, y-3.6, seat1, y+3.6, 0.5)
		b.Span(x2, y+20, x7, y+20, 2, 0.2)
		b.Span(x1, y+26, x8, y+26, 2, 0.2)
		for _, l := range [][3]float64{{x2, y + 6, y + 21}, {x7, y + 6, y + 21}, {x1, y + 14, y + 27}, {x8, y + 14, y + 27}} {
			b.Line(l[0], l[1], l[0], l[2], 0.15)
		}
		b.Span(x0-5, y-13, x0-5, y+13, 2, 0.2)
		b.Arrow(x4+6, y-9, x4+6, y-2.2, 1.8, 0.2)
		b.Arrow(x4+6, y+9, x4+6, y+2.2, 1.8, 0.2)
		b.Arrow((seat0+seat1)/2, y-9, (seat0+seat1)/2, y-3.6, 1.8, 0.2)
		b.Arrow((seat0+seat1)/2, y+9, (seat0+seat1)/2, y+3.6, 1.8, 0.2)
	})
	b.letter(x0-5, y, "D")
	b.letter(x4+6, y-11, "J")
	b.letter((seat0+seat1)/2, y-11, "P")
	b.letter((x2+x7)/2, y+20, "H")
	b.letter((x1+x8)/2, y+26, "G")
	words := "From the front. J where it runs in the plate; P the thickest part that has to go through a hole, such as a " +
		"gear seat; H between the hubs; G back to back of the wheels; D at the tread."
	b.y = b.write(0, y+30, b.Width, words, draw.Regular, b.st.body) + 1
	b.Reach(b.y)
}

// gearSketch shows what is measured at a wheel and what drives it.
func gearSketch(b *block) {
	cx, cy := 34.0, b.y+21.5
	edge := cy + 18.0
	fx := 100.0 // the view from the front
	b.As(draw.Picture, func() {
		b.Circle(cx, cy, 10, 0.5, false)
		b.Circle(cx, cy, 8, 0.15, false)
		b.Cross(cx, cy, 2, 0.2)
		b.Rect(cx-11, cy-20, 22, 9.4, 0.5) // the worm
		for k := range 6 {
			x := cx - 9.5 + 3.4*float64(k)
			b.Line(x, cy-20, x+2, cy-10.6, 0.15)
		}
		b.Line(cx-17, cy-15.3, cx+24, cy-15.3, 0.15)
		b.Circle(cx+9.5, cy+11, 4.6, 0.5, false) // the pinion
		b.Cross(cx+9.5, cy+11, 1.6, 0.2)
		b.Line(cx-24, edge, cx+28, edge, 0.5)
		b.Span(cx-10, cy+3.4, cx+10, cy+3.4, 1.8, 0.2)
		b.Span(cx+20, cy-15.3, cx+20, edge, 1.8, 0.2)
		b.Span(cx-14, cy-20, cx-14, cy-10.6, 1.4, 0.2)
		b.Rect(fx, cy-16, 5, 34, 0.5)
		b.Rect(fx+40, cy-16, 5, 34, 0.5)
		b.Rect(fx+17, cy-10, 10, 20, 0.5)
		b.Line(fx+5, cy-1.6, fx+17, cy-1.6, 0.4)
		b.Line(fx+5, cy+1.6, fx+17, cy+1.6, 0.4)
		b.Line(fx+27, cy-1.6, fx+40, cy-1.6, 0.4)
		b.Line(fx+27, cy+1.6, fx+40, cy+1.6, 0.4)
		b.Span(fx+17, cy-13, fx+27, cy-13, 1.6, 0.2)
		b.Span(fx, cy+14, fx+22, cy+14, 1.8, 0.2)
		b.Line(fx+22, cy+4, fx+22, cy+15, 0.15)
	})
	b.letter(cx-3, cy+3.4, "K")
	b.letter(cx+20, cy, "Y")
	b.letter(cx-17.5, cy-15.3, "O")
	b.letter(cx+16.5, cy+13, "Q")
	b.letter(fx+30, cy-13, "F")
	b.letter(fx+11, cy+14, "M")
	words := "Left: from the left side. K over the tips of the wheel; O over the worm; Y its axis above the edge you measure " +
		"from; Q the middle of the pinion, x and y. Right: from the front. F width of the teeth; M their middle from the " +
		"outside of the left plate."
	b.y = b.write(0, edge+2.5, b.Width, words, draw.Regular, b.st.body) + 1
	b.Reach(b.y)
}
