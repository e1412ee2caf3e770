package survey

import "math"

// cloud is a normal density over the unknowns of a belief.
type cloud struct {
	mean   vector
	cov    matrix // upper triangle
	u      matrix // U'U = cov
	volume float64
}

// ready prepares a cloud of n unknowns.
func (c *cloud) ready(n int) bool {
	c.u = c.cov
	if !factor(&c.u, n) {
		return false
	}
	c.volume = 0
	for i := range n {
		c.volume += math.Log(c.u[i][i])
	}
	return true
}

// A share of each cloud is wide, so that no part of what is believed lies where
// hardly anything is drawn.
const (
	wideShare = 0.25
	wideBy    = 2.0
)

// at is the place that n standard normal numbers stand for.
func (c *cloud) at(z *vector, n int, by float64) (v vector) {
	v = c.mean
	for i := range n {
		for k := i; k < n; k++ {
			v[k] += by * c.u[i][k] * z[i]
		}
	}
	return v
}

// broad is from where on the doubt of a direction, in radians, reaches round the
// circle: such a cloud meets itself there.
const broad = 0.25

// density at a place, without the constant (2 pi)^(-n/2). Angles are those from
// the place `angles` on.
func (c *cloud) density(v *vector, n, angles int) float64 {
	var off vector
	for i := range n {
		off[i] = v[i] - c.mean[i]
		if i >= angles {
			off[i] = math.Remainder(off[i], 2*math.Pi)
		}
	}
	sum := c.normal(&off, n)
	if c.cov[angles][angles] > broad*broad {
		for _, turn := range [2]float64{-2 * math.Pi, 2 * math.Pi} {
			o := off
			o[angles] += turn
			sum += c.normal(&o, n)
		}
	}
	return sum
}

func (c *cloud) normal(off *vector, n int) float64 {
	var y vector
	var m float64
	for i := range n {
		d := off[i]
		for k := range i {
			d -= c.u[k][i] * y[k]
		}
		y[i] = d / c.u[i][i]
		m += y[i] * y[i]
	}
	return (1-wideShare)*math.Exp(-m/2-c.volume) +
		wideShare*math.Exp(-m/(2*wideBy*wideBy)-c.volume-float64(n)*math.Log(wideBy))
}

// places are n-dimensional standard normal numbers, spread evenly: multiples of
// square roots of primes (Richtmyer 1951, from memory) through the inverse of
// the normal distribution; every other one the mirror of the one before.
func places(count, n, odd int) []vector {
	primes := [most]float64{2, 3, 5, 7, 11, 13, 17, 19}
	out := make([]vector, count)
	for i := 0; i+1 < count; i += 2 {
		for k := range n {
			_, f := math.Modf((float64(i/2) + 0.5) * math.Sqrt(primes[k]))
			z := math.Sqrt2 * math.Erfinv(2*f-1)
			out[i][k], out[i+1][k] = z, z
			if k >= odd {
				out[i+1][k] = -z
			}
		}
	}
	return out
}
