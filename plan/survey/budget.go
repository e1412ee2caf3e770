package survey

import (
	"math"

	"gonum.org/v1/gonum/mathext"

	"rebush/fits/odds"
)

// Contribution is one source of uncertainty of a result.
type Contribution struct {
	Name string
	U    float64 // standard uncertainty of the source
	C    float64 // how much of it reaches the result
	Nu   float64 // degrees of freedom, 0 for as good as known
	Key  string  // sources with one key are one and the same error; "" is its own
}

// Budget is all that makes one result uncertain. Errors of one key add with
// their signs before they are squared: an error that two bores share cancels
// in their difference.
type Budget []Contribution

// Plus returns the budget of k1 times this result and k2 times another.
func (b Budget) Plus(k1 float64, o Budget, k2 float64) Budget {
	sum := make(Budget, 0, len(b)+len(o))
	for _, c := range b {
		c.C *= k1
		sum = append(sum, c)
	}
	for _, c := range o {
		c.C *= k2
		sum = append(sum, c)
	}
	return sum.Merged()
}

// Merged joins the contributions of one key into one.
func (b Budget) Merged() Budget {
	out := make(Budget, 0, len(b))
	at := map[string]int{}
	for _, c := range b {
		if c.Key != "" {
			if i, ok := at[c.Key]; ok {
				out[i].C += c.C
				continue
			}
			at[c.Key] = len(out)
		}
		out = append(out, c)
	}
	return out
}

// U returns the combined standard uncertainty:
//
//	u_c^2 = sum (c_i u_i)^2
//
// Source: JCGM 100:2008, 5.1.2. It is linear: where a factor has the mean 0 and
// its partner has not, it says too little.
func (b Budget) U() float64 {
	u, _ := b.combined()
	return u
}

// Nu returns the effective degrees of freedom (Welch-Satterthwaite, JCGM
// 100:2008, G.4.1); +Inf where every source is as good as known.
func (b Budget) Nu() float64 {
	_, nu := b.combined()
	return nu
}

func (b Budget) combined() (u, nu float64) {
	m := b.Merged()
	terms := make([]odds.Term, len(m))
	for i, c := range m {
		terms[i] = odds.Term{What: c.Name, C: c.C, U: c.U, N: c.Nu}
	}
	return odds.Combine(terms)
}

// Share returns the part of the variance that each contribution carries, in
// the order of Merged.
func (b Budget) Share() []float64 {
	m := b.Merged()
	shares := make([]float64, len(m))
	v := b.U()
	for i, c := range m {
		if v > 0 {
			shares[i] = c.C * c.U * c.C * c.U / (v * v)
		}
	}
	return shares
}

// Rectangular turns limits of +-a into a standard uncertainty. Source: JCGM
// 100:2008, 4.3 (from memory).
func Rectangular(a float64) float64 { return math.Abs(a) / math.Sqrt(3) }

// RandomClocking is the u per axis of an eccentricity of at most e, turned any
// way: fixed e gives e/sqrt 2, any from 0 to e alike e/sqrt 6.
func RandomClocking(e float64, fixed bool) float64 {
	if fixed {
		return math.Abs(e) / math.Sqrt2
	}
	return math.Abs(e) / math.Sqrt(6)
}

// Coverage returns k with which k u covers a share p of a Student's t of nu
// degrees of freedom (truncated to a whole number, as JCGM 100 G.6.4 does,
// from memory); of the normal where nu is infinite. 0 where p is no share.
func Coverage(p, nu float64) float64 {
	if !(p > 0 && p < 1) || nu < 1 {
		return 0
	}
	if math.IsInf(nu, 1) || nu > 1e6 {
		return math.Sqrt2 * math.Erfinv(p)
	}
	nu = math.Floor(nu)
	lo, hi := 0.0, 1e4
	for range 200 {
		t := (lo + hi) / 2
		if 1-mathext.RegIncBeta(nu/2, 0.5, nu/(nu+t*t)) < p {
			lo = t
		} else {
			hi = t
		}
	}
	return (lo + hi) / 2
}

// Conform returns the chance that a size measured as y with u lies between two
// limits. Source: JCGM 106:2012 (from memory).
func Conform(y, u, low, high float64) float64 {
	if !(u > 0) {
		if y >= low && y <= high {
			return 1
		}
		return 0
	}
	return odds.Phi((high-y)/u) - odds.Phi((low-y)/u)
}

// Radial returns the mean and the 95 % bound of the distance off place when
// both axes have the same s.
func Radial(s float64) (mean, p95 float64) {
	return s * math.Sqrt(math.Pi/2), s * math.Sqrt(-2*math.Log(0.05))
}
