package sheets

import (
	"strings"

	"rebush/fits/dim"
	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/route"
	"rebush/sheets/draw"
)

// pressPicture is a bush on its way into its wall, in section: ram, guide,
// flange outwards, wall, anvil.
func pressPicture(b *block, p *paper, pl *plan.Plan, op plan.Operation) {
	const w, h = 62.0, 34.0
	pt := b.st.small
	x, y := 0.0, b.y
	axis := x + w/2
	var seat plan.Seat
	for _, s := range pl.Seats {
		if s.Bore == op.Bore {
			seat = s
		}
	}
	flange := strings.Contains(op.GaugeFirst.String(), "flange")
	b.As(draw.Picture, func() {
		hatchBox(b, draw.Box{X: axis - 20, Y: y + h - 7, W: 14.5, H: 7}, draw.Wide, 1.8) // anvil, free round the guide
		hatchBox(b, draw.Box{X: axis + 5.5, Y: y + h - 7, W: 14.5, H: 7}, draw.Wide, 1.8)
		hatchBox(b, draw.Box{X: axis - 28, Y: y + h - 15, W: 20, H: 8}, draw.Wide, 1.2) // wall
		hatchBox(b, draw.Box{X: axis + 8, Y: y + h - 15, W: 20, H: 8}, draw.Wide, 1.2)
		for _, side := range []float64{-1, 1} { // bush, half in
			left := axis + side*5.5
			if side < 0 {
				left -= 2.5
			}
			hatchBox(b, draw.Box{X: left, Y: y + h - 20, W: 2.5, H: 8}, draw.Wide, 0.9)
			if flange {
				fl := axis + side*5.5
				if side < 0 {
					fl -= 6
				}
				b.Rect(fl, y+h-22.2, 6, 2.2, draw.Wide)
			}
		}
		b.Rect(axis-4.6, y+h-24, 9.2, 21, draw.Narrow) // guide
		b.Rect(axis-12, y+4, 24, 6, draw.Wide)         // ram
		b.Arrow(axis, y, axis, y+4, 2.4, 0.5)
		b.Stroked(draw.Centre, func() { b.Line(axis, y+10.4, axis, y+h+1.5, draw.Narrow) })
	})
	mid := (draw.Rise - draw.Drop) / 2 * pt * draw.MMPerPt
	b.Label(axis, y+7+mid, 20, "ram", draw.Regular, pt)
	// The names stand beside what they name, or below the one before that takes more lines.
	right, free := x+w+3, y
	text := func(yy float64, s string) float64 {
		yy = max(yy, free+em(pt)/2)
		free = b.write(right, yy-em(pt)/2, b.Width-right, s, draw.Regular, pt)
		return yy
	}
	name := func(yy, fromX, fromY float64, s string) {
		yy = text(yy, s)
		b.As(draw.Picture, func() { b.Line(fromX, fromY, right-1, yy, 0.13) })
	}
	if op.Halt > 0 {
		text(y+5.8, "force: as bathroom scales under the anvil show it")
	}
	f := op.Tool.String()
	if k := strings.Index(f, "guide"); k >= 0 {
		name(y+10.6, axis+4.5, y+10.9, b.bench.say(f[k:]))
	}
	if flange {
		name(y+14.8, axis+11.4, y+h-21.1, "flange outwards, until it sits down all round")
	}
	name(y+19.2, axis+7.9, y+h-17.5, "bush, square to the wall")
	if l := p.u.limits(seatLimits(pl, seat)); len(l) > 0 {
		name(y+24, axis+27, y+h-11, "wall, its seat "+strings.Join(l, ", "))
	} else {
		name(y+24, axis+27, y+h-11, "wall")
	}
	name(y+29, axis+19, y+h-4, "anvil directly behind that wall (in section, not to scale)")
	b.y = max(y+h+2, free)
	b.Reach(b.y)
}

// seatLimits are those that a seat is cut and gauged to, so that all pages have
// one figure.
func seatLimits(pl *plan.Plan, s plan.Seat) *plan.MMRange {
	for _, op := range pl.Operations {
		if op.Bore == s.Bore && op.LimitsMM != nil && (op.Kind == route.KindSizeSeat || op.Kind == route.KindGauge &&
			s.Finish != "") && op.Setup != "finish" {
			return op.LimitsMM
		}
	}
	return s.SeatMM
}

func hatchBox(b *block, box draw.Box, pen, step float64) {
	b.Rect(box.X, box.Y, box.W, box.H, pen)
	hatch(b, box, step)
}

// shapesPicture draws what an operation turns, each piece in section above its
// axis and from outside below it, with its figures.
func shapesPicture(b *block, p *paper, op plan.Operation, w float64) float64 {
	y, low := b.y+0.5, b.y
	across := 2
	if len(op.Shapes) < 2 || p.u == "both" || b.st.body > 13 {
		across = 1
	}
	wide := w / float64(across)
	for i, s := range op.Shapes {
		if i > 0 && i%across == 0 {
			y = low + 0.8
		}
		low = max(low, shapePicture(b, p, s, float64(i%across)*wide, y, wide-2))
	}
	b.Reach(low)
	return low
}

// shapesBeside draws what an operation turns at a place of its own.
func shapesBeside(b *block, p *paper, op plan.Operation, x, y, w float64) float64 {
	low := y
	for _, s := range op.Shapes {
		low = shapePicture(b, p, s, x, low, w) + 0.8
	}
	b.Reach(low)
	return low
}

func shapePicture(b *block, p *paper, s route.Shape, left, y, w float64) float64 {
	pt := b.st.small
	const high, unit = 11.0, 11.0
	most := 0.0
	for _, r := range s.Steps {
		most = max(most, r.D[1])
	}
	if most <= 0 {
		return y
	}
	k := high / most
	y = b.write(left, y, w, s.For, draw.Bold, pt) + em(pt) + 2.6
	axis := y + high/2
	x := left + 3.5
	var labels []func()
	mid := (draw.Rise - draw.Drop) / 2 * pt * draw.MMPerPt
	b.As(draw.Picture, func() {
		at := x
		for i, r := range s.Steps {
			long := unit
			if i > 0 && r.Long > 0 && s.Steps[0].Long > 0 {
				long = min(max(unit*r.Long/s.Steps[0].Long, 5), 20)
			}
			figure := ""
			if r.Long > 0 {
				if figure = say.MM(r.Long, 2).Trim().In(p.u.said()); p.u == "both" {
					figure = say.MM(r.Long, 2).Trim().String()
				}
				long = max(long, draw.Width(figure, draw.Bold, pt)+1.6)
			}
			half := r.D[1] / 2 * k
			b.Rect(at, axis-half, long, 2*half, draw.Wide)
			if s.Bore[1] > 0 {
				in := s.Bore[1] / 2 * k
				b.Line(at, axis-in, at+long, axis-in, draw.Wide)
				hatch(b, draw.Box{X: at, Y: axis - half, W: long, H: half - in}, 1.3)
			}
			if r.Long > 0 {
				b.Line(at, axis-half-0.6, at, axis-high/2-3, 0.13)
				b.Line(at+long, axis-half-0.6, at+long, axis-high/2-3, 0.13)
				b.Span(at, axis-high/2-2.2, at+long, axis-high/2-2.2, 1.6, 0.18)
				from, to := at, at+long
				labels = append(labels, func() {
					b.Label((from+to)/2, axis-high/2-2.2-em(pt)*0.72+mid, 60, figure, draw.Bold, pt)
				})
			}
			at += long
		}
		b.Stroked(draw.Centre, func() { b.Line(x-3, axis, at+3, axis, draw.Narrow) })
		x = at
	})
	for _, f := range labels {
		f()
	}
	// The diameters stand in words beside the drawing, in the order of the steps.
	tx := x + 4.5
	ty := axis - high/2
	line := func(f string) { ty = b.write(tx, ty, max(left+w-tx, 30), f, draw.Bold, pt) + 0.6 }
	diameter := func(d [2]float64) string {
		if d[0] == d[1] {
			return "Ø " + say.MM(d[0], 2).In(p.u.said())
		}
		return "Ø " + strings.Join(p.u.limits(dim.Limits(d[0], d[1])), ", ")
	}
	if s.Bore[1] > 0 {
		line("outside " + diameter(s.Steps[0].D))
		line("bore " + diameter(s.Bore))
		for _, r := range s.Steps[1:] {
			line("shoulder " + diameter(r.D))
		}
	} else {
		for i, r := range s.Steps {
			line([]string{"foot ", "then "}[min(i, 1)] + diameter(r.D))
		}
	}
	return max(axis+high/2, ty)
}
