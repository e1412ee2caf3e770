package survey

import (
	"fmt"
	"math"
	"sort"
)

// ArcFit is a circle through the points believed to be unworn wall.
type ArcFit struct {
	LeastFit
	Used []bool // per point: unworn
	// Rest is the circle through the other points where there are three or
	// more; a worn half is a second circle, and the smaller one.
	Rest  Circle
	RestU float64 // of its radius
	Twin  bool    // both are of nearly one radius: the shape does not tell which is which
}

// GrownArc starts from the wall opposite the wear and takes in one neighbour
// after the other on each side while it lies within 2 s sqrt(1 + leverage) of
// the circle, for a bore whose journal is not known. side is right to about 45
// degrees. With 3 s it swallows the shallow ends of the wear: on made-up bores
// the doubled u then covers 9 of 10, with 2 s 97 of 100.
func GrownArc(pts [][2]float64, s, side float64) (ArcFit, error) {
	if err := checkPoints(pts, 5); err != nil {
		return ArcFit{}, err
	}
	s = math.Max(s, leastS)
	all, err := Taubin(pts)
	if err != nil {
		return ArcFit{}, err
	}
	// The order round the hole, beginning at the wear.
	n := len(pts)
	order := make([]int, n)
	off := make([]float64, n)
	for i, p := range pts {
		order[i] = i
		off[i] = angle(math.Atan2(p[1]-all.Centre[1], p[0]-all.Centre[0]) - side)
	}
	sort.SliceStable(order, func(i, j int) bool { return off[order[i]] < off[order[j]] })
	lo, hi := n, -1
	for _, half := range []float64{50, 65, 75, 90} {
		lo, hi = n, -1
		for k, i := range order {
			if math.Abs(off[i]-math.Pi) <= half*math.Pi/180 {
				lo, hi = min(lo, k), max(hi, k)
			}
		}
		if hi-lo+1 >= 4 {
			break
		}
	}
	if hi-lo+1 < 3 {
		return ArcFit{}, fmt.Errorf("%w: fewer than three lie opposite the wear", ErrTooFew)
	}
	arc := func() [][2]float64 {
		var in [][2]float64
		for k := lo; k <= hi; k++ {
			in = append(in, pts[order[k]])
		}
		return in
	}
	fit, err := Least(arc(), s)
	if err != nil {
		return ArcFit{}, err
	}
	fits := func(k int) bool {
		p := pts[order[k]]
		return math.Abs(fit.Deviation(p)) <= 2*s*math.Sqrt(1+fit.leverage(p, s))
	}
	below, above := lo > 0, hi < n-1
	for below || above {
		if below {
			if below = fits(lo - 1); below {
				lo--
				below = lo > 0
			}
		}
		if above {
			if above = fits(hi + 1); above {
				hi++
				above = hi < n-1
			}
		}
		next, err := Least(arc(), s)
		if err != nil {
			break
		}
		fit = next
	}
	f := ArcFit{LeastFit: fit, Used: make([]bool, n)}
	for k := lo; k <= hi; k++ {
		f.Used[order[k]] = true
	}
	f.compare(pts, s)
	return f, nil
}

// leverage is the variance that the circle adds at a point, in units of s^2.
func (f LeastFit) leverage(p [2]float64, s float64) float64 {
	a := math.Atan2(p[1]-f.Centre[1], p[0]-f.Centre[0])
	sin, cos := math.Sincos(a)
	v := f.Cov[0][0]*cos*cos + 2*f.Cov[0][1]*sin*cos + f.Cov[1][1]*sin*sin + f.UR*f.UR
	return v / (s * s)
}

// Consensus takes the circle through three points that most others agree with
// and refits it to those. Wear only removes metal: a circle with a point
// clearly inside is no old wall. Of two as good it takes the larger. It needs
// no side and no journal, and so it may take the worn half for the old one;
// Twin says where it cannot know.
func Consensus(pts [][2]float64, s float64) (ArcFit, error) {
	if err := checkPoints(pts, 5); err != nil {
		return ArcFit{}, err
	}
	s = math.Max(s, leastS)
	if _, err := Taubin(pts); err != nil {
		return ArcFit{}, err
	}
	best, most := agree(pts, pts, s)
	if most < 4 {
		return ArcFit{}, fmt.Errorf("%w: no four of them agree on one circle", ErrNoCircle)
	}
	f := ArcFit{LeastFit: LeastFit{Circle: best}, Used: make([]bool, len(pts))}
	for range 10 {
		var in [][2]float64
		changed := false
		for i, p := range pts {
			use := math.Abs(f.Deviation(p)) <= 3*s
			changed = changed || use != f.Used[i]
			f.Used[i] = use
			if use {
				in = append(in, p)
			}
		}
		if !changed && f.Iter > 0 {
			break
		}
		fit, err := Least(in, s)
		if err != nil {
			return ArcFit{}, err
		}
		f.LeastFit = fit
	}
	f.compare(pts, s)
	return f, nil
}

// agree returns the circle through three of voters that most of them lie on,
// with none of pts clearly inside. Of more than 18 voters it tries every
// second, third, ... only.
func agree(voters, pts [][2]float64, s float64) (best Circle, most int) {
	step := 1 + (len(voters)-1)/18
	var pick [][2]float64
	for i := 0; i < len(voters); i += step {
		pick = append(pick, voters[i])
	}
	spread := spreadOf(pts)
	for i := range pick {
		for j := range pick[:i] {
			for k := range pick[:j] {
				c, ok := through(pick[i], pick[j], pick[k])
				if !ok || c.R > 2*spread {
					continue
				}
				if lo, _ := reach(pts, c.Centre); lo < c.R-4.5*s {
					continue
				}
				count := 0
				for _, p := range voters {
					if math.Abs(c.Deviation(p)) <= 3*s {
						count++
					}
				}
				if count > most || count == most && c.R > best.R {
					best, most = c, count
				}
			}
		}
	}
	return best, most
}

// compare asks the other points for a circle of their own and says whether the
// two arcs are twins: unlike by less than their doubt and a hundredth of R.
func (f *ArcFit) compare(pts [][2]float64, s float64) {
	var rest [][2]float64
	for i, p := range pts {
		if !f.Used[i] {
			rest = append(rest, p)
		}
	}
	if len(rest) < 3 {
		return
	}
	c, votes := agree(rest, pts, s)
	if votes < 3 {
		return
	}
	var on [][2]float64
	for _, p := range pts { // the ends of the two arcs belong to both
		if math.Abs(c.Deviation(p)) <= 3*s {
			on = append(on, p)
		}
	}
	other, err := Least(on, s)
	if err != nil {
		return
	}
	f.Rest, f.RestU = other.Circle, other.UR
	f.Twin = math.Abs(other.R-f.R) < 2*math.Hypot(other.UR, f.UR)+0.01*f.R
}
