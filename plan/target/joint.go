package target

import (
	"math"

	"rebush/fits/odds"
)

// chance is how likely some meshes all come right with the shafts at the given
// places. What two of them share, by the holes of a shaft or by a clamping, makes
// them come right or wrong together: each two are taken as normal together, and
// more than two as far as that goes.
func (in Input) chance(t []Point, of func(Gear) bool) float64 {
	var list []limit
	var gears []Gear
	for _, g := range in.Gears {
		if g.Trusted && of(g) {
			list, gears = append(list, in.limit(g, t)), append(gears, g)
		}
	}
	p := 1.0
	alone := make([]float64, len(list))
	least := 1.0
	for i, l := range list {
		z := l.z()
		alone[i] = odds.Within(z[0], z[1])
		p *= alone[i]
		least = math.Min(least, alone[i])
	}
	for i := range list {
		for k := range list[:i] {
			c := in.shared(gears[i], gears[k], list[i].n, list[k].n)
			if both := alone[i] * alone[k]; c != 0 && both > 1e-12 {
				p *= odds.Both(list[i].z(), list[k].z(), c/(list[i].sigma*list[k].sigma)) / both
			}
		}
	}
	return math.Min(p, least)
}

// carried is one shaft that carries a mesh: which, how a place of it changes the
// distance, and where on it the gear stands.
type carried struct {
	shaft int
	sign  float64
	share float64
}

func (g Gear) carried() []carried {
	out := []carried{{g.Shaft, -1, g.Share}}
	if g.Mate >= 0 {
		out = append(out, carried{g.Mate, 1, g.MateShare})
	}
	return out
}

// shared is the covariance of the distances of two meshes: of the holes of a
// shaft that carries both, and of a clamping in which shafts of both are cut. One
// that moves both shafts of a mesh alike does not change its distance.
func (in Input) shared(g, o Gear, n, m Point) float64 {
	along := n[0]*m[0] + n[1]*m[1]
	sum := 0.0
	for _, a := range g.carried() {
		for _, b := range o.carried() {
			if a.shaft != b.shaft {
				continue
			}
			s := in.Shafts[a.shaft]
			sum += a.sign * b.sign * s.together(n, m, a.share, b.share)
			if s.fixed() < 0 && !in.OneClamping {
				sum += a.sign * b.sign * along * s.USetup * s.USetup
			}
		}
	}
	if in.OneClamping {
		cut := func(g Gear) (sum float64) {
			for _, c := range g.carried() {
				if s := in.Shafts[c.shaft]; s.fixed() < 0 {
					sum += c.sign * s.USetup
				}
			}
			return sum
		}
		sum += along * cut(g) * cut(o)
	}
	return sum
}

// together is the covariance of where the bore centres will be at two shares of
// a shaft, along n at the one and along m at the other, without what a clamping
// gives to both bores.
func (s Shaft) together(n, m Point, share, other float64) float64 {
	v := func(b Bore) float64 {
		c := b.Cov
		if !b.Fixed {
			u := s.UHole * s.UHole
			if s.fixed() >= 0 { // beside one that stays
				u += s.USetup * s.USetup
			}
			c = Cov{{u, 0}, {0, u}}
		}
		return n[0]*(c[0][0]*m[0]+c[0][1]*m[1]) + n[1]*(c[1][0]*m[0]+c[1][1]*m[1])
	}
	if len(s.Bores) == 1 {
		return v(s.Bores[0])
	}
	return (1-share)*(1-other)*v(s.Bores[0]) + share*other*v(s.Bores[1]) + s.common(n, m, share, other)
}
