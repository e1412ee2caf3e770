package sheets

import (
	"math"
	"strconv"

	"rebush/plan"
	"rebush/sheets/draw"
)

// reachOf is how far a hole and all that is drawn with it goes from its
// target.
func reachOf(h plan.Hole) float64 {
	r := math.Hypot(h.Old[0]-h.Target[0], h.Old[1]-h.Target[1]) + h.OldRadius
	for _, p := range h.Outline {
		r = max(r, math.Hypot(p[0]-h.Target[0], p[1]-h.Target[1]))
	}
	return max(r, h.SeatR)
}

// surveyPictures draws a hole twice: whole, and its middle so much larger that
// the move can be seen.
func surveyPictures(b *block, pl *plan.Plan, s plan.SurveyedBore, h plan.Hole, room float64) {
	y := b.y
	left := draw.Box{X: 0, Y: y, W: room, H: room}
	right := draw.Box{X: room + 6, Y: y, W: room, H: room}
	whole, times := h, 1.0
	if b.st.mind > 0 {
		whole, times = enlarged(h)
	}
	k := scale(room-4, 2*reachOf(whole))
	v := view{b: b, ox: left.X + room/2, oy: y + room/2, cx: h.Target[0], cy: h.Target[1], k: k}
	b.As(draw.Picture, func() {
		b.Rect(left.X, left.Y, left.W, left.H, 0.2)
		ox, oy := v.at(h.Old)
		tx, ty := v.at(h.Target)
		if len(whole.Outline) > 2 {
			b.Path(v.path(thin(whole.Outline, 0.4/k)), true, draw.Wide, false, draw.Open)
		}
		b.Stroked(draw.Other, func() {
			b.Circle(ox, oy, h.OldRadius*k, draw.Narrow, false)
			if whole.SeatR > 0 {
				b.Circle(tx, ty, h.SeatR*k, draw.Narrow, false)
			}
		})
		out := map[int]bool{}
		for _, i := range h.LeftOut {
			out[i] = true
		}
		for i, p := range whole.Points {
			px, py := v.at(p)
			if !inBox(px, py, 0.7, left) {
				continue
			}
			if out[i] {
				b.Circle(px, py, 0.7, 0.25, false)
			} else {
				b.Disc(px, py, 0.55, draw.Black)
			}
		}
		if pl.OK {
			b.Stroked(draw.Centre, func() { b.Cross(tx, ty, 2.5, draw.Narrow) })
		}
	})
	var low float64
	if times > 1 {
		words := "wear " + strconv.FormatFloat(times, 'f', -1, 64) + " times"
		low = b.write(left.X, left.Y+left.H+0.8, left.W, words, draw.Regular, b.st.small)
	} else {
		low = figureOf(b, left, k, "")
	}
	low = max(low, middle(b, s, h, right, moveIn(pl, s.Bore)))
	b.y = low + 1.5
	b.Reach(b.y)
}

// enlarged is a hole whose wear, the way of its wall from the old circle, is drawn
// so many times as large that it can be seen; its seat, which it would seem to
// reach into, is left out.
func enlarged(h plan.Hole) (out plan.Hole, times float64) {
	wear := 0.0
	for _, p := range h.Outline {
		wear = max(wear, math.Hypot(p[0]-h.Old[0], p[1]-h.Old[1])-h.OldRadius)
	}
	for _, times = range []float64{20, 10, 5, 2, 1} {
		if times*wear <= h.OldRadius/2 {
			break
		}
	}
	if times == 1 || wear < 0.001 {
		return h, 1
	}
	out = h
	out.SeatR, out.Outline, out.Points = 0, swollen(h, h.Outline, times), swollen(h, h.Points, times)
	return out, times
}

// swollen moves points away from the old circle, so many times as far as they
// are from it.
func swollen(h plan.Hole, points [][2]float64, times float64) [][2]float64 {
	out := make([][2]float64, len(points))
	for i, p := range points {
		dx, dy := p[0]-h.Old[0], p[1]-h.Old[1]
		r := math.Hypot(dx, dy)
		if r == 0 {
			out[i] = p
			continue
		}
		f := (h.OldRadius + times*(r-h.OldRadius)) / r
		out[i] = [2]float64{h.Old[0] + f*dx, h.Old[1] + f*dy}
	}
	return out
}

func inBox(x, y, r float64, box draw.Box) bool {
	return x-r >= box.X && y-r >= box.Y && x+r <= box.X+box.W && y+r <= box.Y+box.H
}
