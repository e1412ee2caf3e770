package survey

import (
	"fmt"
	"math"
	"sort"
)

// Zone is a pair of concentric circles that holds all the points.
type Zone struct {
	Circle         // the middle one
	Width  float64 // from the inner to the outer, mm
}

// few is how many points are worked at once; more are added where they matter.
const few = 24

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

// scattered returns the points in an order that jumps about, so that a circle
// of the first few nearly holds the rest.
func scattered(pts [][2]float64) [][2]float64 {
	n := len(pts)
	stride := int(0.618 * float64(n))
	for stride > 1 && gcd(stride, n) != 1 {
		stride--
	}
	out := make([][2]float64, n)
	for i := range out {
		out[i] = pts[i*max(stride, 1)%n]
	}
	return out
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// Inscribed returns the largest circle that has no point inside (MICI of ISO
// 12181-1, name from memory) with its centre among the points: the largest
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

// grow solves for a few spread points, adds the worst offenders of the rest,
// and repeats until none offends: the answer for the few is then the answer
// for all.
func grow(pts [][2]float64, solve func([][2]float64) (Circle, float64, bool)) (Zone, bool, error) {
	if len(pts) <= few {
		c, w, ok := solve(pts)
		return Zone{c, w}, ok, nil
	}
	sub := make([][2]float64, 0, few)
	used := make([]bool, len(pts))
	add := func(i int) {
		if !used[i] {
			used[i] = true
			sub = append(sub, pts[i])
		}
	}
	for i := range 12 {
		add(i * len(pts) / 12)
	}
	for range len(pts) {
		c, w, ok := solve(sub)
		if !ok {
			if len(sub) == len(pts) {
				return Zone{}, false, nil
			}
			for i := range pts {
				if !used[i] {
					add(i)
					break
				}
			}
			continue
		}
		nearest, farthest := -1, -1
		lo, hi := c.R-w/2-1e-10*c.R, c.R+w/2+1e-10*c.R
		if w == 0 {
			hi = math.Inf(1) // an inscribed circle minds only what is inside
		}
		for i, p := range pts {
			d := dist(p, c.Centre)
			if d < lo {
				lo, nearest = d, i
			}
			if d > hi {
				hi, farthest = d, i
			}
		}
		if nearest < 0 && farthest < 0 {
			return Zone{c, w}, true, nil
		}
		was := len(sub)
		if nearest >= 0 {
			add(nearest)
		}
		if farthest >= 0 {
			add(farthest)
		}
		if len(sub) == was {
			return Zone{c, w}, true, nil // only rounding is left
		}
		if len(sub) > 90 {
			return Zone{}, false, ErrNoCircle
		}
	}
	return Zone{}, false, ErrNoCircle
}

// surround refuses points on less than half the circle about their
// least-squares centre.
func surround(pts [][2]float64) error {
	ls, err := Least(pts, 0)
	if err != nil {
		return err
	}
	if gap := largestGap(pts, ls.Centre); gap > math.Pi+1e-4 {
		return fmt.Errorf("%w: they leave %.0f degrees untouched; touch the wall all round", ErrOneSide, gap*180/math.Pi)
	}
	return nil
}

// largestGap returns the widest angle about c without a point, radians.
func largestGap(pts [][2]float64, c [2]float64) float64 {
	as := make([]float64, 0, len(pts)+1)
	for _, p := range pts {
		as = append(as, math.Atan2(p[1]-c[1], p[0]-c[0]))
	}
	sort.Float64s(as)
	as = append(as, as[0]+2*math.Pi)
	var gap float64
	for i := range pts {
		gap = math.Max(gap, as[i+1]-as[i])
	}
	return gap
}

func upper(a, b [2]float64) bool {
	if math.Abs(a[1]-b[1]) > 1e-9 {
		return a[1] > b[1]
	}
	return a[0] > b[0]+1e-9
}

// through returns the circle through three points.
func through(a, b, c [2]float64) (Circle, bool) {
	bx, by, cx, cy := b[0]-a[0], b[1]-a[1], c[0]-a[0], c[1]-a[1]
	d := 2 * (bx*cy - by*cx)
	bb, cc := bx*bx+by*by, cx*cx+cy*cy
	if math.Abs(d) <= 1e-12*math.Sqrt(bb*cc) {
		return Circle{}, false
	}
	x, y := (cy*bb-by*cc)/d, (bx*cc-cx*bb)/d
	return Circle{[2]float64{a[0] + x, a[1] + y}, math.Hypot(x, y)}, true
}

// reach returns the least and the largest distance of the points from c.
func reach(pts [][2]float64, c [2]float64) (lo, hi float64) {
	lo = math.Inf(1)
	for _, p := range pts {
		d := dist(p, c)
		lo, hi = math.Min(lo, d), math.Max(hi, d)
	}
	return lo, hi
}

// hullOf returns the convex hull, anticlockwise.
func hullOf(pts [][2]float64) [][2]float64 {
	ps := append([][2]float64(nil), pts...)
	sort.Slice(ps, func(i, j int) bool {
		return ps[i][0] < ps[j][0] || ps[i][0] == ps[j][0] && ps[i][1] < ps[j][1]
	})
	var hull [][2]float64
	for range 2 {
		base := len(hull)
		for _, p := range ps {
			for len(hull) >= base+2 && turn(hull[len(hull)-2], hull[len(hull)-1], p) <= 0 {
				hull = hull[:len(hull)-1]
			}
			hull = append(hull, p)
		}
		hull = hull[:len(hull)-1]
		for i, j := 0, len(ps)-1; i < j; i, j = i+1, j-1 {
			ps[i], ps[j] = ps[j], ps[i]
		}
	}
	return hull
}

func turn(a, b, c [2]float64) float64 {
	return (b[0]-a[0])*(c[1]-a[1]) - (b[1]-a[1])*(c[0]-a[0])
}

// within says whether p lies in the hull or on its edge.
func within(hull [][2]float64, p [2]float64) bool {
	for i, a := range hull {
		b := hull[(i+1)%len(hull)]
		if turn(a, b, p) < -1e-9*(1+dist(a, b)) {
			return false
		}
	}
	return len(hull) >= 3
}

// widthOf returns the least distance of two parallel lines about the hull.
func widthOf(hull [][2]float64) float64 {
	width := math.Inf(1)
	for i, a := range hull {
		b := hull[(i+1)%len(hull)]
		var far float64
		for _, p := range hull {
			far = math.Max(far, turn(a, b, p)/dist(a, b))
		}
		width = math.Min(width, far)
	}
	return width
}
