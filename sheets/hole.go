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

// stepPicture draws a hole as it is when an operation is done.
func stepPicture(b *block, x, y float64, op plan.Operation, h plan.Hole, pressed, mirror bool) float64 {
	side := b.st.picture
	r := max(reachOf(h), op.HoleMM/2)
	if r <= 0 {
		return y
	}
	k := scale(side-4, 2*r)
	v := view{b: b, ox: x + side/2, oy: y + side/2, cx: h.Target[0], cy: h.Target[1], k: k, mirror: mirror}
	b.As(draw.Picture, func() {
		b.Rect(x, y, side, side, 0.2)
		if len(h.Outline) > 2 {
			b.Path(v.path(thin(h.Outline, 1/k)), true, 0.25, true, draw.Open)
		}
		tx, ty := v.at(h.Target)
		if pressed && h.SeatR > 0 {
			inner := h.BoreR
			if op.HoleMM > 0 && op.HoleMM/2 < h.SeatR {
				inner = op.HoleMM / 2
			}
			b.Ring(tx, ty, inner*k, h.SeatR*k, 2.4, 0.15)
			b.Circle(tx, ty, h.SeatR*k, 0.35, false)
			b.Circle(tx, ty, inner*k, 0.7, false)
		} else {
			if op.HoleMM > 0 {
				b.Circle(tx, ty, op.HoleMM/2*k, 0.7, false)
			}
			if h.SeatR > 0 && math.Abs(op.HoleMM/2-h.SeatR) > 0.005 {
				b.Circle(tx, ty, h.SeatR*k, 0.18, true)
			}
		}
		b.Cross(tx, ty, 2.4, 0.25)
	})
	note := ""
	if mirror {
		note = "MIRRORED"
	}
	return figureOf(b, draw.Box{X: x, Y: y, W: side, H: side}, k, note)
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
			b.Path(v.path(thin(h.Outline, 0.4/k)), true, 0.55, false, draw.Open)
		}
		b.Circle(ox, oy, h.OldRadius*k, 0.25, true)
		if h.SeatR > 0 {
			b.Circle(tx, ty, h.SeatR*k, 0.3, false)
		}
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
			b.Cross(tx, ty, 2.5, 0.25)
		}
	})
	low := max(figureOf(b, left, k, ""), middle(b, s, h, right, moveIn(pl, s.Bore)))
	b.y = low + 1.5
	b.Reach(b.y)
}

func inBox(x, y, r float64, box draw.Box) bool {
	return x-r >= box.X && y-r >= box.Y && x+r <= box.X+box.W && y+r <= box.Y+box.H
}
