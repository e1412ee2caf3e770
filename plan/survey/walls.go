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
	R, UR                    float64   // old radius, known otherwise
	Old                      string    // the reading that R comes from, where others may use it too
	JournalR                 float64   // 0 unknown
	WornTo                   []float64 // none to two directions, radians
	UDir                     float64   // of the direction
	Usual                    Usual     // of the side, where none is said
}

// FromWalls finds the old centre from four walls and R. On each axis the hole
// reaches R from its old centre, or as far as the lobe does,
//
//	s = max(R, r + d cos(off)),  x0 = (x1 + s1 + x2 - s2)/2
//
// and which it is hangs on the side, on R and on the depth of wear, d = R - r + w.
// All that they may be is weighed by how well it is stated and by how far apart
// the walls then should stand; the centre is the mean, and its covariance that of
// one place with what the places differ by. So a wall that may or may not be worn
// counts as both, by its chance.
func FromWalls(w Walls) (Evidence, error) {
	if !finite(w.Left, w.Right, w.Bottom, w.Top, w.R, w.UDir) || !finite(w.WornTo...) {
		return Evidence{}, fmt.Errorf("walls: %w", ErrNotFinite)
	}
	if w.R <= 0 {
		return Evidence{}, fmt.Errorf("four walls alone do not tell the old centre; give the old diameter too (the largest pin that enters)")
	}
	if slack := 4*math.Hypot(w.UWall, w.UR) + 1e-6; w.Right-w.Left < 2*w.R-slack || w.Top-w.Bottom < 2*w.R-slack {
		return Evidence{}, fmt.Errorf("%w: they stand %.3f and %.3f apart, less than the old diameter %.3f", ErrWall, w.Right-w.Left, w.Top-w.Bottom, 2*w.R)
	}
	e := Evidence{Rank: RankReadings, Method: ByWalls, R: w.R, RU: w.UR}
	m := w.weighed()
	e.Centre, e.Cov = m.centre(), m.cov()
	e.Cov = add2(e.Cov, round2(w.UWall/math.Sqrt2))
	if w.Old != "" && w.UR > 0 {
		e.Parts = []Part{{w.Old, m.along()}}
	}
	b := NewWornBore(e.Centre, w.R, w.JournalR, m.mean(iDepth), m.towards())
	b.WU, b.RU = math.Sqrt(m.covOf(iDepth, iDepth)), w.UR
	dx, dy := w.Right-w.Left-2*w.R, w.Top-w.Bottom-2*w.R
	limit := 2 * math.Hypot(w.UWall*math.Sqrt2, 2*w.UR)
	b.Round = dx <= limit && dy <= limit
	w.judge(&e, b, dx, dy)
	b.Cov = e.Cov
	e.Bore = &b
	return e, nil
}

// judge says what does not go together.
func (w Walls) judge(e *Evidence, b WornBore, dx, dy float64) {
	if b.Round {
		return
	}
	dx, dy = math.Max(0, dx), math.Max(0, dy)
	if len(w.WornTo) == 0 {
		e.doubt("the side it has worn to is not known: the old centre may lie %v across and %v up or down from the middle of the hole; say where the metal is gone", say.MM(dx/2, 3), say.MM(dy/2, 3))
		return
	}
	// What the walls have grown by says how steep the wear lies, not to which side.
	steep := math.Atan2(dy+b.C, dx+b.C)
	sin, cos := math.Sincos(between(w.WornTo))
	if said := math.Atan2(math.Abs(sin), math.Abs(cos)); len(w.WornTo) == 1 && math.Abs(steep-said) > math.Pi/4 {
		to := math.Atan2(math.Copysign(math.Sin(steep), sin), math.Copysign(math.Cos(steep), cos))
		e.doubt("the walls have worn to %.0f degrees, but it is said to have worn to %.0f", angle(to)*180/math.Pi, angle(between(w.WornTo))*180/math.Pi)
		e.Cov = scale2(e.Cov, 4)
	}
	if math.Min(dx, dy) <= math.Hypot(w.UWall*math.Sqrt2, 2*w.UR) {
		e.say("only one of the walls is worn: the wear is a guess from the stated side")
	}
}
