package sheets

import (
	"math"

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
	k := scale(room-4, 2*reachOf(h))
	v := view{b: b, ox: left.X + room/2, oy: y + room/2, cx: h.Target[0], cy: h.Target[1], k: k}
	b.As(draw.Picture, func() {
		b.Rect(left.X, left.Y, left.W, left.H, 0.2)
		ox, oy := v.at(h.Old)
		tx, ty := v.at(h.Target)
		if len(h.Outline) > 2 {
			b.Path(v.path(thin(h.Outline, 0.4/k)), true, draw.Wide, false, draw.Open)
		}
		b.Stroked(draw.Other, func() {
			b.Circle(ox, oy, h.OldRadius*k, draw.Narrow, false)
			if h.SeatR > 0 {
				b.Circle(tx, ty, h.SeatR*k, draw.Narrow, false)
			}
		})
		out := map[int]bool{}
		for _, i := range h.LeftOut {
			out[i] = true
		}
		for i, p := range h.Points {
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
	low := max(figureOf(b, left, k, ""), middle(b, s, h, right, moveIn(pl, s.Bore)))
	b.y = low + 1.5
	b.Reach(b.y)
}

func inBox(x, y, r float64, box draw.Box) bool {
	return x-r >= box.X && y-r >= box.Y && x+r <= box.X+box.W && y+r <= box.Y+box.H
}
