package survey

import "math"

// Usual is what is known of the side that a hole wears to where nobody says it:
// the way its shaft is pressed, and how often that holds. The zero Usual knows
// nothing: any side, any depth.
type Usual struct {
	Rad   float64 // the way the shaft is pressed, radians
	U     float64 // how far wear bearing from it, radians
	Share float64 // how often it wears to that side at all; else to any
	Worn  float64 // how often a hole of which no side is said is worn at all
	Least float64 // depths that wear of such a hole lies between, each doubling as likely, mm
	Most  float64
}

// Lean is where the middle of a hole lies from its old centre, half of the wear
// along its side, where depth or side are guessed at: mean and covariance.
type Lean struct {
	Mean [2]float64
	Cov  [2][2]float64
}

// bearing holds the first two moments of a direction: the mean of its unit vector,
// and of that vector times itself.
type bearing struct {
	one [2]float64
	two [2][2]float64
}

// about are the moments of a direction that is normal about rad. Mean resultant
// lengths exp(-u^2/2) and exp(-2u^2): of a wrapped normal, from memory.
func about(rad, u float64) bearing {
	sin, cos := math.Sincos(rad)
	k := math.Exp(-u * u / 2)
	sin2, cos2 := math.Sincos(2 * rad)
	q := math.Exp(-2*u*u) / 2
	return bearing{[2]float64{k * cos, k * sin}, [2][2]float64{{0.5 + q*cos2, q * sin2}, {q * sin2, 0.5 - q*cos2}}}
}

// mixed is one direction with a chance p, else the other.
func mixed(p float64, a, b bearing) bearing {
	for i := range a.one {
		a.one[i] = p*a.one[i] + (1-p)*b.one[i]
		for k := range a.two[i] {
			a.two[i][k] = p*a.two[i][k] + (1-p)*b.two[i][k]
		}
	}
	return a
}

// anyWay is a direction of which nothing is known.
var anyWay = bearing{two: [2][2]float64{{0.5, 0}, {0, 0.5}}}

// side are the moments of the side of wear where nobody says it: the usual one,
// or any. Where the line of the widest is known it is one of its ends.
func (u Usual) side(line float64, hasLine bool, uLine float64) bearing {
	if !hasLine {
		return mixed(u.Share, about(u.Rad, u.U), anyWay)
	}
	return mixed(u.end(line, uLine), about(line, uLine), about(line+math.Pi, uLine))
}

// end is how likely a hole that is widest along a line has worn to this end of
// it.
func (u Usual) end(line, uLine float64) float64 {
	if u.Share <= 0 {
		return 0.5
	}
	spread := math.Max(math.Hypot(u.U, uLine), deg)
	density := func(rad float64) float64 {
		off := apart(rad, u.Rad) / spread
		return u.Share*math.Exp(-off*off/2)/(spread*math.Sqrt(2*math.Pi)) + (1-u.Share)/(2*math.Pi)
	}
	a, b := density(line), density(line+math.Pi)
	return a / (a + b)
}

// depth are the first two moments of the depth of wear, given what widest less
// narrowest reads, to u, of a hole of which no side is said: it is not worn at
// all, or its wear is of any size alike, each doubling as likely as the next. By
// the midpoint rule over the logarithm of the depth.
func (u Usual) depth(reads, uRead float64) (mean, square float64) {
	if u.Most <= u.Least || uRead <= 0 {
		w := math.Max(0, reads)
		return w, w*w + uRead*uRead
	}
	likely := func(w float64) float64 {
		z := (reads - w) / uRead
		return math.Exp(-z * z / 2)
	}
	const steps = 600
	from := math.Log(u.Least)
	step := (math.Log(math.Max(u.Most, reads+6*uRead)) - from) / steps
	all := (1 - u.Worn) * likely(0)
	for i := range steps {
		w := math.Exp(from + step*(float64(i)+0.5))
		p := u.Worn / steps * likely(w)
		all += p
		mean += p * w
		square += p * w * w
	}
	if all < 1e-300 { // far below nothing: not worn
		return 0, 0
	}
	return mean / all, square / all
}

// lean is how far the middle lies from the old centre, of depth and side.
func lean(mean, square float64, t bearing) Lean {
	var l Lean
	for i := range l.Mean {
		l.Mean[i] = mean / 2 * t.one[i]
	}
	for i := range l.Mean {
		for k := range l.Mean {
			l.Cov[i][k] = square/4*t.two[i][k] - l.Mean[i]*l.Mean[k]
		}
	}
	return l
}
