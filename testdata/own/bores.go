// Package own makes those figures of this folder that can be made again. It
// knows nothing of the rooms that are held against them.
package own

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
)

// BoreSeed is the seed of wornbores.csv.
const BoreSeed = 20

const deg = math.Pi / 180

// shape is a hole before it is placed and probed: radius R as made, worn by a
// journal of radius r that has eaten w deep, over directions fan degrees to
// each side of one.
type shape struct{ R, r, w, fan float64 }

// shapes go from 300 degrees of wall left to 120; the last three are a slot (the
// journal fills the hole) and a hole that is not worn.
var shapes = []shape{
	{R: 1.55, r: 1.433, w: 0.02}, {R: 1.55, r: 1.4437, w: 0.05}, {R: 2, r: 1.9136, w: 0.1},
	{R: 2, r: 1.9704, w: 0.1}, {R: 1.2, r: 1.1818, w: 0.2}, {R: 3, r: 2.9886, w: 0.3},
	{R: 2.5, r: 2.4976, w: 0.5}, {R: 1, r: 0.9568, w: 0.05}, {R: 4, r: 3.9668, w: 0.4},
	{R: 3.175, r: 3.094, w: 0.15},
	{R: 1.55, r: 1.5395, w: 0.1, fan: 22.5}, {R: 2, r: 1.9834, w: 0.2, fan: 37.5},
	{R: 1.5, r: 1.5, w: 0.2}, {R: 1.5, r: 1.48},
}

// probings are how many points are taken, and how far off in micrometres.
var probings = []struct {
	n     int
	noise float64
}{{36, 0}, {36, 2}, {36, 5}, {36, 10}, {16, 0}, {16, 2}, {16, 5}, {16, 10}, {8, 0}, {8, 2}, {8, 5}}

// reach is how far the wall stands from the old centre, q radians off the
// direction of the wear. The journal went from the middle of the hole to d =
// (R - r) + w off it and cut away all that it swept; so the wall is the
// farthest point along the ray of any journal on that way, found by search.
func (s shape) reach(q float64) float64 {
	q = math.Abs(math.Remainder(q, 2*math.Pi))
	if s.w == 0 {
		return s.R
	}
	if q -= s.fan * deg; q < 0 { // the nearest of the directions cuts deepest
		q = 0
	}
	sin, cos := math.Sincos(q)
	along := func(at float64) float64 {
		under := s.r*s.r - at*at*sin*sin
		if under < 0 {
			return 0
		}
		return at*cos + math.Sqrt(under)
	}
	hi := s.d()
	if sin > 0 {
		hi = math.Min(hi, s.r/sin)
	}
	at := greatest(along, 0, hi)
	return math.Max(s.R, math.Max(along(at), along(hi)))
}

// d is how far the journal's own centre has gone.
func (s shape) d() float64 { return s.R - s.r + s.w }

// greatest is where f, which rises and then falls, is greatest.
func greatest(f func(float64) float64, lo, hi float64) float64 {
	const g = 0.6180339887498949
	a, b := hi-g*(hi-lo), lo+g*(hi-lo)
	fa, fb := f(a), f(b)
	for hi-lo > 1e-12 {
		if fa >= fb {
			hi, b, fb = b, a, fa
			a = hi - g*(hi-lo)
			fa = f(a)
		} else {
			lo, a, fa = a, b, fb
			b = lo + g*(hi-lo)
			fb = f(b)
		}
	}
	return (lo + hi) / 2
}

// corner is how far from the wear's direction its last trace lies, in radians.
func (s shape) corner() float64 {
	lo, hi := 0.0, math.Pi
	for range 60 {
		if mid := (lo + hi) / 2; s.reach(mid) > s.R+1e-12 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// area is the metal that was worn away, by Simpson's rule.
func (s shape) area() float64 {
	const steps = 4000
	end := s.corner()
	var sum float64
	for i := range steps + 1 {
		weight := float64(2 + 2*(i%2))
		if i == 0 || i == steps {
			weight = 1
		}
		rho := s.reach(end * float64(i) / steps)
		sum += weight * (rho*rho - s.R*s.R) / 2
	}
	return 2 * sum * end / steps / 3
}

// around is the smallest circle that the hole fits in: its centre lies on the
// axis of the wear, at from the old centre.
func (s shape) around() (at, radius float64) {
	const steps = 3600
	wall := make([]float64, steps+1)
	for i := range wall {
		wall[i] = s.reach(math.Pi * float64(i) / steps)
	}
	far := func(at float64) float64 {
		var most float64
		for i, rho := range wall {
			sin, cos := math.Sincos(math.Pi * float64(i) / steps)
			most = math.Max(most, math.Hypot(rho*cos-at, rho*sin))
		}
		return most
	}
	at = greatest(func(at float64) float64 { return -far(at) }, 0, s.w+1e-3)
	return at, far(at)
}

// across is the greatest and the least distance of two walls facing each other
// through the old centre.
func (s shape) across() (most, least float64) {
	most, least = 0, math.Inf(1)
	for i := range 720 {
		q := math.Pi * float64(i) / 720
		two := s.reach(q) + s.reach(q+math.Pi)
		most, least = math.Max(most, two), math.Min(least, two)
	}
	return most, least
}

// tolerance is four standard errors of the centre of a circle fitted, radius
// and all, to the points on wall that no journal touched, u the doubt of a
// point: no fit that lacks more knowledge can do better. Half a micrometre where the
// points have no error, and 0, false where fewer than four such points are left.
func tolerance(unworn []float64, u float64) (float64, bool) {
	if len(unworn) < 4 {
		return 0, false
	}
	if u == 0 {
		return 0.0005, true
	}
	// Normal equations of (cos, sin, 1), and two entries of their inverse.
	var cc, cs, ss, c, s float64
	n := float64(len(unworn))
	for _, a := range unworn {
		sin, cos := math.Sincos(a)
		cc, cs, ss, c, s = cc+cos*cos, cs+cos*sin, ss+sin*sin, c+cos, s+sin
	}
	det := cc*(ss*n-s*s) - cs*(cs*n-s*c) + c*(cs*s-ss*c)
	return 4 * u * math.Sqrt(((ss*n-s*s)+(cc*n-c*c))/det), true
}

// WornBores is the text of wornbores.csv.
func WornBores(seed uint64) string {
	rng := rand.New(rand.NewPCG(seed, seed))
	var b strings.Builder
	b.WriteString("# Made by bores.go in this folder: holes worn by a journal, with the centre that they were made about.\n" +
		"# Lengths in mm, directions in degrees from x towards y. worn_mask and the true figures are for tests only.\n" +
		"id,n,noise_um,R,r,w,d,theta_deg,fan_half_deg,x0,y0,phi_cusp_deg,unworn_arc_deg,n_unworn,dmax,dmin,area_added," +
		"mcci_x,mcci_y,mcci_r,seat_r_at_old_centre,tol_centre_mm,wear_side_hint_deg,worn_mask,points\n")
	id := 0
	for _, s := range shapes {
		f := s.figures()
		for _, p := range probings {
			id++
			b.WriteString(row(fmt.Sprintf("WB%03d", id), s, f, p.n, p.noise, rng))
		}
	}
	return b.String()
}

// figures are those of a shape, wherever it is placed.
type figures struct {
	corner, unwornArc string // degrees
	both              string // greatest and least diameter, and area: none for a fan
	at, around        float64
}

func (s shape) figures() figures {
	f := figures{unwornArc: "360.00000", both: ",,"}
	if s.w > 0 {
		corner := s.corner() / deg
		f.corner, f.unwornArc = fmt.Sprintf("%.5f", corner), fmt.Sprintf("%.5f", 360-2*corner)
	}
	if s.fan == 0 {
		most, least := s.across()
		f.both = fmt.Sprintf("%.7f,%.7f,%.8f", most, least, s.area())
	}
	f.at, f.around = s.around()
	return f
}

// row places the hole, wears it to some side and probes it: n points about
// evenly round it, each off along its ray by a normal error.
func row(id string, s shape, f figures, n int, noise float64, rng *rand.Rand) string {
	round := func(x float64, places int) float64 {
		v, err := strconv.ParseFloat(strconv.FormatFloat(x, 'f', places, 64), 64)
		if err != nil {
			panic("own: " + err.Error())
		}
		return v
	}
	theta := round(360*rng.Float64(), 2)
	x0, y0 := round(40*rng.Float64(), 3), round(60*rng.Float64()-20, 3)
	var mask, points strings.Builder
	var unworn []float64
	first := rng.Float64()
	for i := range n {
		a := 2 * math.Pi * (float64(i) + first + 0.3*(rng.Float64()-0.5)) / float64(n)
		rho := s.reach(a - theta*deg)
		if rho > s.R {
			mask.WriteByte('1')
		} else {
			mask.WriteByte('0')
			unworn = append(unworn, a)
		}
		rho += noise / 1000 * rng.NormFloat64()
		sin, cos := math.Sincos(a)
		if i > 0 {
			points.WriteByte(';')
		}
		fmt.Fprintf(&points, "%.7f %.7f", x0+rho*cos, y0+rho*sin)
	}
	tol, hint := "", math.Mod(45*math.Round(theta/45), 360)
	if v, ok := tolerance(unworn, noise/1000); ok {
		tol = fmt.Sprintf("%.4f", v)
	}
	sin, cos := math.Sincos(theta * deg)
	return fmt.Sprintf("%s,%d,%g,%g,%g,%g,%.6f,%.2f,%g,%.3f,%.3f,%s,%s,%d,%s,%.7f,%.7f,%.7f,%.7f,%s,%g,%s,%s\n",
		id, n, noise, s.R, s.r, s.w, s.d(), theta, s.fan, x0, y0, f.corner, f.unwornArc, len(unworn), f.both,
		x0+f.at*cos, y0+f.at*sin, f.around, s.reach(0), tol, hint, mask.String(), points.String())
}
