package survey

import (
	"math"
	"math/rand/v2"
)

// truth is a made-up worn bore.
type truth struct {
	o                   [2]float64
	R, r, w, d, theta   float64
	fan, d2, theta2     float64
	noise, side, unworn float64
}

// rho is the outline's distance from the old centre in a direction, by
// bisection on the distance to what the journal swept: no formula of the
// solver is used.
func (b truth) rho(psi float64) float64 {
	inside := func(rho float64) bool {
		if rho <= b.R {
			return true
		}
		x, y := rho*math.Cos(psi), rho*math.Sin(psi)
		sweep := func(d, a float64) bool {
			t := math.Min(math.Max(x*math.Cos(a)+y*math.Sin(a), 0), d)
			return math.Hypot(x-t*math.Cos(a), y-t*math.Sin(a)) <= b.r
		}
		if b.d2 > 0 && sweep(b.d2, b.theta2) {
			return true
		}
		if b.fan == 0 {
			return sweep(b.d, b.theta)
		}
		for k := -15; k <= 15; k++ {
			if sweep(b.d, b.theta+b.fan*float64(k)/15) {
				return true
			}
		}
		return false
	}
	lo, hi := b.R, b.R+b.d+b.d2+b.r
	for range 60 {
		if m := (lo + hi) / 2; inside(m) {
			lo = m
		} else {
			hi = m
		}
	}
	return lo
}

func (b truth) points(rng *rand.Rand, n int) [][2]float64 {
	pts := make([][2]float64, 0, n)
	start := rng.Float64() * 2 * math.Pi
	for i := range n {
		psi := start + 2*math.Pi*(float64(i)+0.5*(rng.Float64()-0.5))/float64(n)
		rho := b.rho(psi) + b.noise*rng.NormFloat64()
		pts = append(pts, [2]float64{b.o[0] + rho*math.Cos(psi), b.o[1] + rho*math.Sin(psi)})
	}
	return pts
}

// someBore draws a one-lobe bore of the range of wornbores.csv: unworn arc
// 185 to 300 degrees, wear 0.02 to 0.5, noise 2 to 10 micrometres, and a side
// that is right to 45 degrees.
func someBore(rng *rand.Rand) truth {
	b := truth{R: 1 + 3*rng.Float64(), theta: 2 * math.Pi * rng.Float64()}
	b.o = [2]float64{60 * rng.Float64(), 40*rng.Float64() - 10}
	b.noise = [3]float64{0.002, 0.005, 0.010}[rng.IntN(3)]
	b.w = 0.02 * math.Exp(rng.Float64()*math.Log(25))
	b.w = math.Max(b.w, 5*b.noise)
	b.unworn = 185 + 115*rng.Float64()
	// c from w and the cusp: cos phi = (R^2 - r^2 + d^2)/(2 d R), or the flank.
	phi := (360 - b.unworn) / 2 * math.Pi / 180
	lo, hi := 1e-6, b.R/2
	for range 80 {
		c := (lo + hi) / 2
		if cusp(b.R, b.R-c, c+b.w) > phi {
			lo = c
		} else {
			hi = c
		}
	}
	b.r = b.R - lo
	b.d = lo + b.w
	b.side = math.Round(b.theta/(math.Pi/4)) * math.Pi / 4
	if rng.IntN(2) == 0 {
		b.side = b.theta + (2*rng.Float64()-1)*math.Pi/4
	}
	return b
}

func cusp(R, r, d float64) float64 {
	if d*d > R*R-r*r {
		return math.Asin(r / R)
	}
	return math.Acos(math.Min(1, (R*R-r*r+d*d)/(2*d*R)))
}
