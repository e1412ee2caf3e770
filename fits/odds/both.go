package odds

import "math"

// Within is how likely a standard normal error lies from lo to hi; it keeps its
// figures far out on either side.
func Within(lo, hi float64) float64 {
	if !(hi > lo) {
		return 0
	}
	if lo > 0 {
		lo, hi = -hi, -lo
	}
	return Phi(hi) - Phi(lo)
}

// nodes and weights of Gauss and Legendre's rule of twelve places on -1 to 1,
// the half above 0.
var legendre = [6][2]float64{
	{0.1252334085114689, 0.2491470458134028}, {0.3678314989981802, 0.2334925365383548},
	{0.5873179542866175, 0.2031674267230659}, {0.7699026741943047, 0.1600783285433462},
	{0.9041172563704749, 0.1069393259953184}, {0.9815606342467192, 0.0471753363865118},
}

// Both is how likely two standard normal errors of correlation rho lie each
// between its limits, a from a[0] to a[1] and b from b[0] to b[1].
//
// The change of the chance with rho is the density at the four corners, so it is
// the product of both alone and an integral over the arc sine of rho.
//
// Source: Plackett's identity, Biometrika 41 (1954), from memory; by Gauss and
// Legendre's rule, which any handbook of numbers has.
func Both(a, b [2]float64, rho float64) float64 {
	p, q := Within(a[0], a[1]), Within(b[0], b[1])
	if p == 0 || q == 0 {
		return 0
	}
	half := math.Asin(math.Max(-0.9999, math.Min(0.9999, rho))) / 2
	sum := 0.0
	for _, n := range legendre {
		for _, x := range [2]float64{-n[0], n[0]} {
			sum += n[1] * corners(a, b, half*(1+x))
		}
	}
	return math.Max(0, math.Min(math.Min(p, q), p*q+half*sum))
}

// corners is the density of both at the corners of their limits for the arc sine
// of a correlation.
func corners(a, b [2]float64, arc float64) float64 {
	sin, cos := math.Sincos(arc)
	sum := 0.0
	for i, h := range a {
		for k, v := range b {
			d := math.Exp(-(h*h+v*v-2*h*v*sin)/(2*cos*cos)) / (2 * math.Pi)
			if math.IsNaN(d) {
				continue // a limit without end
			}
			if i != k {
				d = -d
			}
			sum += d
		}
	}
	return sum
}
