package survey

import (
	"fmt"
	"math"
)

// Zone is a pair of concentric circles that holds all the points.
type Zone struct {
	Circle         // the middle one
	Width  float64 // from the inner to the outer, mm
}

// Circumscribed returns the smallest circle that holds all the points (MCCI of
// ISO 12181-1, name from memory): usual for shafts.
func Circumscribed(pts [][2]float64) (Circle, error) {
	if err := checkPoints(pts, 2); err != nil {
		return Circle{}, err
	}
	pts = scattered(pts)
	// Add one point after another; a point outside lies on the new circle.
	c := Circle{Centre: pts[0]}
	out := func(p [2]float64) bool { return dist(p, c.Centre) > c.R*(1+1e-12) }
	for i, p := range pts {
		if !out(p) {
			continue
		}
		c = Circle{Centre: p}
		for j, q := range pts[:i] {
			if !out(q) {
				continue
			}
			c = Circle{[2]float64{(p[0] + q[0]) / 2, (p[1] + q[1]) / 2}, dist(p, q) / 2}
			for _, o := range pts[:j] {
				if out(o) {
					if t, ok := through(p, q, o); ok {
						c = t
					}
				}
			}
		}
	}
	return c, nil
}

// Inscribed returns the largest circle that has no point inside (MICI of ISO
// 12181-1, name from memory) and is held by those that it touches: the largest
// round pin that enters. It reads the old size of a worn bore. Points that lie
// on one side of the hole hold no circle: ErrOneSide.
func Inscribed(pts [][2]float64) (Circle, error) {
	if err := surround(pts); err != nil {
		return Circle{}, err
	}
	hull := hullOf(pts)
	best, found, err := grow(pts, func(sub [][2]float64) (Circle, float64, bool) {
		var best Circle
		for i := range sub {
			for j := range sub[:i] {
				for k := range sub[:j] {
					c, ok := through(sub[i], sub[j], sub[k])
					if !ok || c.R < best.R*(1-1e-9) || !within(hull, c.Centre) {
						continue
					}
					// A circle that is not held by the three slips out between
					// them and grows.
					if !holds(sub[i], sub[j], sub[k], c.Centre) {
						continue
					}
					// Of two as large take the upper, then the right one.
					if best.R > 0 && c.R < best.R*(1+1e-9) && !upper(c.Centre, best.Centre) {
						continue
					}
					if lo, _ := reach(sub, c.Centre); lo >= c.R*(1-1e-9) {
						best = c
					}
				}
			}
		}
		return best, 0, best.R > 0
	})
	if err != nil || !found {
		return Circle{}, fmt.Errorf("%w: no round pin is held by them; touch the wall all round", ErrOneSide)
	}
	return best.Circle, nil
}

// holds says whether p lies in the triangle or on its edge.
func holds(a, b, c, p [2]float64) bool {
	if turn(a, b, c) < 0 {
		b, c = c, b
	}
	return within([][2]float64{a, b, c}, p)
}

// MinimumZone returns the two concentric circles of least gap that enclose the
// points (MZCI of ISO 12181-1, name from memory). On a short arc two parallel
// lines may be closer still; then there is no such pair, and ErrOneSide.
//
// Every crossing of two perpendicular bisectors is tried, of the points that
// matter: exact.
func MinimumZone(pts [][2]float64) (Zone, error) {
	if err := surround(pts); err != nil {
		return Zone{}, err
	}
	z, found, err := grow(pts, func(sub [][2]float64) (Circle, float64, bool) { return zoneOf(sub) })
	if err != nil || !found || widthOf(hullOf(pts)) < z.Width*(1-1e-9) {
		return Zone{}, fmt.Errorf("%w: two straight lines enclose them closer than two circles", ErrOneSide)
	}
	return z, nil
}

// zoneOf tries every crossing of two bisectors.
func zoneOf(pts [][2]float64) (best Circle, width float64, ok bool) {
	type line struct{ a, b, c float64 } // a x + b y = c
	o := pts[0]
	var lines []line
	for i, p := range pts {
		for _, q := range pts[:i] {
			dx, dy := p[0]-q[0], p[1]-q[1]
			if l := math.Hypot(dx, dy); l > 0 {
				mx, my := (p[0]+q[0])/2-o[0], (p[1]+q[1])/2-o[1]
				lines = append(lines, line{dx / l, dy / l, (dx*mx + dy*my) / l})
			}
		}
	}
	width = math.Inf(1)
	for i, m := range lines {
		for _, n := range lines[:i] {
			det := m.a*n.b - m.b*n.a
			if math.Abs(det) < 1e-9 {
				continue
			}
			c := [2]float64{o[0] + (m.c*n.b-n.c*m.b)/det, o[1] + (m.a*n.c-n.a*m.c)/det}
			lo, hi := math.Inf(1), 0.0
			for _, p := range pts {
				d := dist(p, c)
				lo, hi = math.Min(lo, d), math.Max(hi, d)
				if hi-lo >= width {
					break
				}
			}
			if hi-lo < width {
				width, best, ok = hi-lo, Circle{c, (hi + lo) / 2}, true
			}
		}
	}
	return best, width, ok
}
