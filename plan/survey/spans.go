package survey

import (
	"fmt"
	"math"

	"rebush/fits/say"
)

// SpanCentre returns the distance of two bores from edge to edge, inside and
// outside: C = (inside + outside)/2 needs no diameters. On worn bores touch
// unworn walls only.
func SpanCentre(inside, outside, uIn, uOut float64) (c, u float64) {
	return (inside + outside) / 2, math.Hypot(uIn, uOut) / 2
}

// Span is the distance to a place whose own place is known.
type Span struct {
	To       [2]float64
	Apart, U float64 // centre to centre
	UTo      float64 // of the place, per axis
	Name     string
}

// FromSpans finds a centre from its distances to two places or more, the
// crossing nearest to near (the centre roughly).
func FromSpans(spans []Span, near [2]float64) (Evidence, error) {
	if len(spans) < 2 {
		return Evidence{}, fmt.Errorf("%w: one distance gives a circle, not a place; measure to a second bore", ErrTooFew)
	}
	p := near
	var inv [2][2]float64
	for range 60 {
		var a [2][2]float64
		var g [2]float64
		for _, s := range spans {
			d := dist(p, s.To)
			if d == 0 || !finite(d, s.Apart) || s.Apart <= 0 {
				return Evidence{}, fmt.Errorf("distance to %s: %w", s.Name, ErrNotFinite)
			}
			n := [2]float64{(p[0] - s.To[0]) / d, (p[1] - s.To[1]) / d}
			w := 1 / math.Max(s.U*s.U+s.UTo*s.UTo, 1e-8)
			for i := range n {
				g[i] += w * n[i] * (d - s.Apart)
				for j := range n {
					a[i][j] += w * n[i] * n[j]
				}
			}
		}
		det := a[0][0]*a[1][1] - a[0][1]*a[1][0]
		if det < 1e-4*a[0][0]*a[1][1] || det <= 0 {
			return Evidence{}, fmt.Errorf("%w: the places measured to lie in one line with this bore", ErrCollinear)
		}
		inv = [2][2]float64{{a[1][1] / det, -a[0][1] / det}, {-a[0][1] / det, a[0][0] / det}}
		dx := inv[0][0]*g[0] + inv[0][1]*g[1]
		dy := inv[1][0]*g[0] + inv[1][1]*g[1]
		p[0] -= dx
		p[1] -= dy
		if !finite(p[0], p[1]) {
			return Evidence{}, ErrNoCircle
		}
		if math.Hypot(dx, dy) < 1e-12 {
			break
		}
	}
	e := Evidence{Rank: RankReadings, Method: BySpans, Centre: p, Cov: inv}
	for _, s := range spans {
		if off := math.Abs(dist(p, s.To) - s.Apart); off > math.Max(3*math.Hypot(s.U, s.UTo), 1e-6) {
			e.doubt("the distance to %s is %v off what the others say", s.Name, say.MM(off, 3))
		}
	}
	return e, nil
}
