package sheets

import (
	"math"
	"strconv"
	"strings"

	"rebush/plan"
	"rebush/sheets/draw"
)

// middle draws the middle of a hole on squares: old centre as a ring, the
// middle of the hole as found as a slanted cross, the target as an upright
// cross, and the arrow of the move with its figures.
func middle(b *block, s plan.SurveyedBore, h plan.Hole, room draw.Box, move *plan.XY) float64 {
	found := h.Old
	if s.FoundMM != nil {
		found = [2]float64{s.FoundMM[0].Float(), s.FoundMM[1].Float()}
	}
	lo, hi := extent([][2]float64{h.Old, found, h.Target,
		{h.Old[0] - h.UMM, h.Old[1] - h.UMM}, {h.Old[0] + h.UMM, h.Old[1] + h.UMM}})
	k := scale(room.W-8, max(hi[0]-lo[0], hi[1]-lo[1], 0.02))
	step, square := gridStep(k, b.u)
	v := view{b: b, ox: room.X + room.W/2, oy: room.Y + room.H/2, cx: (lo[0] + hi[0]) / 2, cy: (lo[1] + hi[1]) / 2, k: k}
	b.As(draw.Picture, func() {
		gx, gy := v.at(h.Target)
		d := step * k
		for x := gx - d*math.Floor((gx-room.X)/d); x < room.X+room.W; x += d {
			b.Line(x, room.Y, x, room.Y+room.H, 0.08)
		}
		for y := gy - d*math.Floor((gy-room.Y)/d); y < room.Y+room.H; y += d {
			b.Line(room.X, y, room.X+room.W, y, 0.08)
		}
		b.Rect(room.X, room.Y, room.W, room.H, 0.2)
		ox, oy := v.at(h.Old)
		fx, fy := v.at(found)
		tx, ty := v.at(h.Target)
		if r := h.UMM * k; r > 0.4 && inBox(ox, oy, r, room) {
			b.Circle(ox, oy, r, 0.2, true)
		}
		b.Circle(ox, oy, 1.5, 0.4, false)
		b.Line(fx-1.6, fy-1.6, fx+1.6, fy+1.6, 0.4)
		b.Line(fx-1.6, fy+1.6, fx+1.6, fy-1.6, 0.4)
		if move != nil {
			b.Cross(tx, ty, 3, 0.4)
			b.Arrow(ox, oy, tx, ty, 2.4, 0.45)
		}
	})
	if move != nil {
		fx, fy := v.at(found)
		ox, oy := v.at(h.Old)
		tx, ty := v.at(h.Target)
		moveFigures(b, room, [3][2]float64{{ox, oy}, {tx, ty}, {fx, fy}}, move)
	}
	if b.st.mind > 0 { // a narrow picture: its squares are its scale
		return b.write(room.X, room.Y+room.H+0.8, room.W+2.8, "square "+square, draw.Regular, b.st.small)
	}
	return figureOf(b, room, k, "square "+square)
}

// moveIn is the move of a bore where one may be made.
func moveIn(pl *plan.Plan, bore string) *plan.XY {
	for _, t := range pl.Targets {
		if t.Bore == bore && pl.OK {
			return t.FromOriginalMM
		}
	}
	return nil
}

// moveFigures dimensions the move along x and along y, each where the picture
// leaves room for it. at is where old centre, target and middle as found lie.
func moveFigures(b *block, room draw.Box, at [3][2]float64, move *plan.XY) {
	pt := b.st.small
	lo, hi := extent(at[:])
	old, to := at[0], at[1]
	mid := (draw.Rise - draw.Drop) / 2 * pt * draw.MMPerPt
	size := func(m plan.MM) string { // the way is the arrow's
		f := b.u.figure(m)
		if len(f) == 0 {
			return ""
		}
		return strings.TrimPrefix(f[0], "-")
	}
	if s := size(move[1]); s != "" && math.Abs(old[1]-to[1]) > em(pt)+5 {
		w := draw.Width(s, draw.Bold, pt)
		x := room.X + room.W - w/2 - 1.5
		if x-w/2 < hi[0]+4 {
			x = room.X + w/2 + 1.5
		}
		if x-w/2 > hi[0]+4 || x+w/2 < lo[0]-4 {
			b.As(draw.Picture, func() {
				b.Line(old[0], old[1], x, old[1], 0.2)
				b.Line(to[0], to[1], x, to[1], 0.2)
				b.Span(x, old[1], x, to[1], 2, 0.25)
			})
			b.Label(x, (old[1]+to[1])/2+mid, w+0.1, s, draw.Bold, pt)
		}
	}
	if s := size(move[0]); s != "" && math.Abs(old[0]-to[0]) > draw.Width(s, draw.Bold, pt)+5 {
		y := room.Y + room.H - em(pt)/2 - 1.5
		if y-em(pt)/2 < hi[1]+4 {
			y = room.Y + em(pt)/2 + 1.5
		}
		if y-em(pt)/2 > hi[1]+4 || y+em(pt)/2 < lo[1]-4 {
			b.As(draw.Picture, func() {
				b.Line(old[0], old[1], old[0], y, 0.2)
				b.Line(to[0], to[1], to[0], y, 0.2)
				b.Span(old[0], y, to[0], y, 2, 0.25)
			})
			b.Label((old[0]+to[0])/2, y+mid, 40, s, draw.Bold, pt)
		}
	}
}

// gridStep is the side of the squares in mm, and in words in the unit of the
// paper.
func gridStep(k float64, u units) (step float64, words string) {
	unit, name := 1.0, " mm"
	if u == "in" {
		unit, name = 25.4, " in"
	}
	for _, s := range []float64{0.0001, 0.0002, 0.0005, 0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10} {
		if s*unit*k >= 4.5 {
			return s * unit, strconv.FormatFloat(s, 'f', -1, 64) + name
		}
	}
	return 20 * unit, "20" + name
}
