package survey

import (
	"fmt"
	"math"

	"rebush/fits/say"
)

// Walls are four wall positions on the axes through the hole.
type Walls struct {
	Left, Right, Bottom, Top float64
	UWall                    float64
	R, UR                    float64 // old radius, known otherwise
	JournalR                 float64 // 0 unknown
	WornTo                   float64
	NoSide                   bool // the side it has worn to is not known
}

// FromWalls finds the old centre from four walls and R: on each axis the wall
// away from the wear is unworn, x0 = x1 + R or x2 - R. The error of R is common
// to both axes. If both far walls are worn the wear follows too:
// d (cos, sin) = (x2 - x0 - r, y2 - y0 - r), exact.
func FromWalls(w Walls) (Evidence, error) {
	if !finite(w.Left, w.Right, w.Bottom, w.Top, w.R, w.WornTo) {
		return Evidence{}, fmt.Errorf("walls: %w", ErrNotFinite)
	}
	if w.R <= 0 {
		return Evidence{}, fmt.Errorf("four walls alone do not tell the old centre; give the old diameter too (the largest pin that enters)")
	}
	if slack := 4*math.Hypot(w.UWall, w.UR) + 1e-6; w.Right-w.Left < 2*w.R-slack || w.Top-w.Bottom < 2*w.R-slack {
		return Evidence{}, fmt.Errorf("%w: they stand %.3f and %.3f apart, less than the old diameter %.3f", ErrWall, w.Right-w.Left, w.Top-w.Bottom, 2*w.R)
	}
	e := Evidence{Rank: RankReadings, Method: ByWalls, R: w.R, RU: w.UR}
	if w.NoSide {
		return e, w.middles(&e)
	}
	sin, cos := math.Sincos(w.WornTo)
	axis := func(lo, hi, c float64) (o, sign, v float64) {
		// A wall square to the wear is unworn on both sides.
		if math.Abs(c) < 0.05 && hi-lo < 2*w.R+2*math.Hypot(w.UWall, w.UR) {
			return (lo + hi) / 2, 0, w.UWall * w.UWall / 2
		}
		if c >= 0 {
			return lo + w.R, 1, w.UWall * w.UWall
		}
		return hi - w.R, -1, w.UWall * w.UWall
	}
	x, sx, vx := axis(w.Left, w.Right, cos)
	y, sy, vy := axis(w.Bottom, w.Top, sin)
	e.Centre = [2]float64{x, y}
	r2 := w.UR * w.UR
	e.Cov = [2][2]float64{{vx + sx*sx*r2, sx * sy * r2}, {sx * sy * r2, vy + sy*sy*r2}}
	r := w.JournalR
	if r <= 0 || r > w.R {
		r = w.R
	}
	far := func(lo, hi, o, s float64) float64 {
		if s < 0 {
			return o - lo
		}
		return hi - o
	}
	hx, hy := far(w.Left, w.Right, x, sx), far(w.Bottom, w.Top, y, sy)
	worn := w.R + 2*math.Hypot(w.UWall, w.UR)
	b := NewWornBore(e.Centre, w.R, r, 0, w.WornTo)
	b.Cov, b.RU = e.Cov, w.UR
	b.WU = math.Hypot(w.UWall*math.Sqrt2, w.UR)
	switch {
	case hx > worn && hy > worn:
		dx, dy := math.Copysign(hx-r, sx), math.Copysign(hy-r, sy)
		b.D, b.ThetaRad = math.Hypot(dx, dy), angle(math.Atan2(dy, dx))
		b.W = math.Max(0, b.D-b.C)
		if apart(b.ThetaRad, w.WornTo) > math.Pi/4 {
			e.doubt("the walls have worn to %.0f degrees, but it is said to have worn to %.0f", b.ThetaRad*180/math.Pi, angle(w.WornTo)*180/math.Pi)
			e.Cov = scale2(e.Cov, 4)
		}
	case hx > worn:
		b.D = (hx - r) / math.Max(0.3, math.Abs(cos))
		b.W = math.Max(0, b.D-b.C)
		e.say("only one of the walls is worn: the wear is a guess from the stated side")
	case hy > worn:
		b.D = (hy - r) / math.Max(0.3, math.Abs(sin))
		b.W = math.Max(0, b.D-b.C)
		e.say("only one of the walls is worn: the wear is a guess from the stated side")
	default:
		b.Round = true
	}
	e.Bore = &b
	return e, nil
}

// middles is all that walls say without a side: the middle, and half of what
// they stand apart over 2R.
func (w Walls) middles(e *Evidence) error {
	dx, dy := math.Max(0, w.Right-w.Left-2*w.R)/2, math.Max(0, w.Top-w.Bottom-2*w.R)/2
	e.Centre = [2]float64{(w.Left + w.Right) / 2, (w.Bottom + w.Top) / 2}
	v := w.UWall * w.UWall / 2
	if math.Max(dx, dy) <= math.Hypot(w.UWall, w.UR) {
		e.Cov = round2(w.UWall / math.Sqrt2)
		b := NewWornBore(e.Centre, w.R, w.JournalR, 0, 0)
		b.Round, b.Cov, b.RU = true, e.Cov, w.UR
		e.Bore = &b
		return nil
	}
	e.Cov = scale2([2][2]float64{{v + dx*dx, 0}, {0, v + dy*dy}}, 4)
	e.doubt("the side it has worn to is not known: the old centre may lie %v across and %v up or down from the middle of the hole; say where the metal is gone", say.MM(dx, 3), say.MM(dy, 3))
	return nil
}
