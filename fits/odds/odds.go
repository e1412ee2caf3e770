// Package odds answers how likely a size is to fall inside its limits when it
// is the sum of a normal error and of errors spread evenly between limits. It
// is all closed form, allocates nothing and knows nothing of bushes beyond the
// seat of file seat.go.
package odds

import "math"

// Phi is the share of a standard normal error below z.
//
// Source: any table of the normal distribution.
func Phi(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) }

// Density is the density of the standard normal distribution at z (standard formula).
func Density(z float64) float64 { return math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) }

// Sum is the sum of a mean, a normal error of standard deviation Sigma and up
// to four errors spread evenly over plus and minus Half, all independent and
// all in one unit. Sigma and Half are 0 or more; a 0 is no error.
type Sum struct {
	Mean  float64
	Sigma float64
	Half  [4]float64
}

// U is the standard uncertainty of the sum; an even spread of half-width a
// counts a/sqrt 3.
//
// Source: JCGM 100:2008, 4.3.7 and 5.1.2.
func (s Sum) U() float64 {
	v := s.Sigma * s.Sigma
	for _, a := range s.Half {
		v += a * a / 3
	}
	return math.Sqrt(v)
}

// Inside is the chance that the sum lies between lo and hi. It is 0 where hi
// is below lo. Exact to about 1e-4; see Below.
func (s Sum) Inside(lo, hi float64) float64 {
	if !(hi >= lo) {
		return 0
	}
	return clip(s.Below(hi) - s.Below(lo))
}

// Below is the chance that the sum is less than x.
//
// The even spreads are integrated exactly: with P_n the n-th integral of the
// normal distribution function,
//
//	n P_n(x) = x P_(n-1)(x) + sigma^2 P_(n-2)(x)
//
// and the chance is the sum over all sign choices of the half-widths of
// sign * P_n(x - mean + sum of signed half-widths), divided by the product of
// the full widths. A spread less than a twelfth of the whole standard
// deviation is counted as normal, which changes nothing that could be seen,
// and beyond all spreads and seven sigma the answer is 0 or 1: both keep the
// differences well conditioned.
//
// Source: own derivation (repeated convolution of boxes with a normal).
func (s Sum) Below(x float64) float64 {
	x -= s.Mean
	small := s.U() / 12
	sigma2, span := s.Sigma*s.Sigma, 1.0
	var a [4]float64
	n := 0
	for _, h := range s.Half {
		switch {
		case h <= 0:
		case h < small:
			sigma2 += h * h / 3
		default:
			a[n] = h
			span *= 2 * h
			n++
		}
	}
	sigma := math.Sqrt(sigma2)
	if n == 0 && sigma == 0 {
		if x > 0 {
			return 1
		}
		return 0
	}
	reach := 7 * sigma
	for _, h := range a[:n] {
		reach += h
	}
	if math.Abs(x) > reach {
		if x > 0 {
			return 1
		}
		return 0
	}
	total := 0.0
	for mask := 0; mask < 1<<n; mask++ {
		at, sign := x, 1.0
		for i := 0; i < n; i++ {
			if mask>>i&1 == 0 {
				at += a[i]
			} else {
				at -= a[i]
				sign = -sign
			}
		}
		total += sign * integral(n, at, sigma)
	}
	return clip(total / span)
}

// integral is the n-th integral of the normal distribution function, n from 0
// to 4.
func integral(n int, x, sigma float64) float64 {
	if x <= -8*sigma {
		return 0
	}
	v := sigma * sigma
	if x >= 8*sigma {
		switch n {
		case 0:
			return 1
		case 1:
			return x
		case 2:
			return (x*x + v) / 2
		case 3:
			return x * (x*x + 3*v) / 6
		default:
			return (x*x*x*x + 6*x*x*v + 3*v*v) / 24
		}
	}
	z := x / sigma
	before, now := math.Exp(-z*z/2)/(sigma*math.Sqrt(2*math.Pi)), Phi(z)
	for k := 1; k <= n; k++ {
		before, now = now, (x*now+v*before)/float64(k)
	}
	return now
}

func clip(p float64) float64 { return math.Max(0, math.Min(1, p)) }
