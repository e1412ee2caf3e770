package survey

import (
	"fmt"
	"math"
	"sort"
)

// few is how many points are worked at once; more are added where they matter.
const few = 24

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
