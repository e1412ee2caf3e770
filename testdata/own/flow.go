package own

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// Flow presses a round bush into a round ring little by little, where the bush
// flows at a yield stress without hardening (von Mises, plane stress), and
// gives the pressure on the seat and how far the bore has closed on diameter.
// Radii and the diametral interference in mm, MPa. Thin rings of metal, two points
// of Gauss in each.
type Flow struct {
	Bore, Seat, Edge    float64
	BushE, BushNu       float64
	Yield               float64 // of the bush; the ring stays elastic
	E, Nu, Interference float64
	Rings, Steps        int
}

// flowed is the stress (radial, hoop) that a strain leaves, given what has
// flowed before, and what has flowed then.
func flowed(e, nu, yield float64, strain, before [2]float64) (stress, after [2]float64) {
	c := e / (1 - nu*nu)
	el := [2]float64{strain[0] - before[0], strain[1] - before[1]}
	try := [2]float64{c * (el[0] + nu*el[1]), c * (el[1] + nu*el[0])}
	// In sum and difference the return comes apart: each shrinks on its own.
	mean, diff := (try[0]+try[1])/2, (try[0]-try[1])/2
	over := func(g float64) float64 {
		m, d := mean/(1+g*c*(1+nu)/3), diff/(1+g*c*(1-nu))
		return m*m + 3*d*d - yield*yield
	}
	if over(0) <= 0 {
		return try, before
	}
	lo, hi := 0.0, 1/c
	for over(hi) > 0 {
		hi *= 2
	}
	for range 100 {
		if mid := (lo + hi) / 2; over(mid) > 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	m, d := mean/(1+lo*c*(1+nu)/3), diff/(1+lo*c*(1-nu))
	stress = [2]float64{m + d, m - d}
	for i := range after {
		after[i] = strain[i] - (stress[i]-nu*stress[1-i])/e
	}
	return stress, after
}

// Press returns the pressure in MPa and the closure in mm.
func (f Flow) Press() (pressure, closure float64) {
	ps, closure := f.follow(f.steps(0, f.Interference))
	return math.Abs(ps[len(ps)-1]), closure
}

// Springs presses the bush in, takes the interference back again, as warming
// does, and returns how much of it, in mm, until no pressure is left.
func (f Flow) Springs() float64 {
	ways := append(f.steps(0, f.Interference), f.steps(f.Interference, 0)...)
	ps, _ := f.follow(ways)
	for i := f.Steps; i < len(ps); i++ {
		if ps[i]*ps[f.Steps-1] <= 0 {
			share := ps[i-1] / (ps[i-1] - ps[i])
			return f.Interference - (ways[i-1] + share*(ways[i]-ways[i-1]))
		}
	}
	return f.Interference
}

// steps are interferences on the way from one to another.
func (f Flow) steps(from, to float64) (out []float64) {
	for i := range f.Steps {
		out = append(out, from+(to-from)*float64(i+1)/float64(f.Steps))
	}
	return out
}

// follow takes interferences one after the other and returns the pressure at
// each, and the closure at last.
func (f Flow) follow(ways []float64) (pressures []float64, closure float64) {
	n := 2 * (f.Rings + 1)
	at := make([]float64, n)
	for i := 0; i <= f.Rings; i++ {
		s := float64(i) / float64(f.Rings)
		at[i], at[f.Rings+1+i] = f.Bore+s*(f.Seat-f.Bore), f.Seat*math.Pow(f.Edge/f.Seat, s)
	}
	// The two nodes at the seat move as one, the ring's ahead by the jump.
	number := func(i int) int {
		if i > f.Rings {
			return i - 1
		}
		return i
	}
	u := make([]float64, n-1)
	gone := make([][2]float64, 2*n) // what has flowed, by point of Gauss
	var jump float64
	moved := func(i int) float64 {
		if i > f.Rings {
			return u[number(i)] + jump*map[bool]float64{true: 1}[i == f.Rings+1]
		}
		return u[i]
	}
	// forces of the rings on the nodes; keep writes down what has flowed. Let go
	// the bush is elastic again, which the slope has to know.
	flowAt := f.Yield
	forces := func(keep bool) (out []float64, seat float64) {
		out = make([]float64, n-1)
		for i := range n - 1 {
			if i == f.Rings {
				continue
			}
			e, nu, yield := f.BushE, f.BushNu, flowAt
			if i > f.Rings {
				e, nu, yield = f.E, f.Nu, math.Inf(1)
			}
			long := at[i+1] - at[i]
			for g, share := range []float64{(1 - 1/math.Sqrt(3)) / 2, (1 + 1/math.Sqrt(3)) / 2} {
				r := at[i] + share*long
				strain := [2]float64{(moved(i+1) - moved(i)) / long, ((1-share)*moved(i) + share*moved(i+1)) / r}
				s, after := flowed(e, nu, yield, strain, gone[2*i+g])
				if keep {
					gone[2*i+g] = after
				}
				w := long / 2
				inner, outer := w*(-s[0]*r/long+s[1]*(1-share)), w*(s[0]*r/long+s[1]*share)
				out[number(i)] += inner
				out[number(i+1)] += outer
				if i == f.Rings+1 {
					seat -= inner
				}
			}
		}
		return out, -seat / f.Seat
	}
	const nudge = 1e-8
	for _, way := range ways {
		letGo := way/2 < jump
		jump = way / 2
		for range 30 {
			off, _ := forces(false)
			slope := mat.NewDense(n-1, n-1, nil)
			base := off
			if letGo {
				flowAt = math.Inf(1)
				base, _ = forces(false)
			}
			for j := range u {
				u[j] += nudge
				up, _ := forces(false)
				u[j] -= nudge
				for i := max(0, j-1); i <= min(n-2, j+1); i++ {
					slope.Set(i, j, (up[i]-base[i])/nudge)
				}
			}
			flowAt = f.Yield
			var du mat.VecDense
			if err := du.SolveVec(slope, mat.NewVecDense(n-1, off)); err != nil {
				return []float64{math.NaN()}, math.NaN()
			}
			for j := range u {
				u[j] -= du.AtVec(j)
			}
			if mat.Norm(&du, math.Inf(1)) < 1e-11 {
				break
			}
		}
		_, p := forces(true)
		pressures = append(pressures, p)
	}
	return pressures, -2 * u[0]
}
