package own

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// corners of the eight-node quadrilateral, a (round) and b (outwards) from -1
// to 1, in the order of eachElement: four corners, then the middles.
var corners = [8][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}, {0, -1}, {1, 0}, {0, 1}, {-1, 0}}

func (m *mesh) eachElement(do func(q part, keys [8][2]int)) {
	for i := 0; i < 2*m.Around; i += 2 {
		for _, q := range m.parts {
			for j := 0; j < 2*m.Deep; j += 2 {
				var keys [8][2]int
				for n, c := range corners {
					keys[n] = [2]int{i + 1 + int(c[0]), q.first + j + 1 + int(c[1])}
				}
				do(q, keys)
			}
		}
	}
}

// slopes are those of the eight shape functions along a and b.
func slopes(a, b float64) (sa, sb [8]float64) {
	for n, c := range corners {
		switch {
		case n < 4:
			sa[n] = c[0] * (1 + b*c[1]) * (2*a*c[0] + b*c[1]) / 4
			sb[n] = c[1] * (1 + a*c[0]) * (2*b*c[1] + a*c[0]) / 4
		case c[0] == 0:
			sa[n], sb[n] = -a*(1+b*c[1]), c[1]*(1-a*a)/2
		default:
			sa[n], sb[n] = c[0]*(1-b*b)/2, -b*(1+a*c[0])
		}
	}
	return sa, sb
}

// strain gives the three strains (x, y, shear) of each of the sixteen motions
// at a place in the element, and the area that the place stands for.
func (m *mesh) strain(keys [8][2]int, a, b float64) (of [3][16]float64, area float64) {
	sa, sb := slopes(a, b)
	var xa, xb, ya, yb float64
	for n, k := range keys {
		xa, xb = xa+sa[n]*m.x[k], xb+sb[n]*m.x[k]
		ya, yb = ya+sa[n]*m.y[k], yb+sb[n]*m.y[k]
	}
	det := xa*yb - xb*ya
	for n, k := range keys {
		dx, dy := (sa[n]*yb-sb[n]*ya)/det, (sb[n]*xa-sa[n]*xb)/det
		along, across := [3]float64{dx, 0, dy}, [3]float64{0, dy, dx} // of a move in x, in y
		if m.turned(k) {
			r := math.Hypot(m.x[k], m.y[k])
			cos, sin := m.x[k]/r, m.y[k]/r
			for i := range 3 {
				along[i], across[i] = along[i]*cos+across[i]*sin, across[i]*cos-along[i]*sin
			}
		}
		for i := range 3 {
			of[i][2*n], of[i][2*n+1] = along[i], across[i]
		}
	}
	return of, math.Abs(det)
}

// stress of a strain, plane stress.
func (q part) stress(e [3]float64) [3]float64 {
	c := q.e / (1 - q.nu*q.nu)
	return [3]float64{c * (e[0] + q.nu*e[1]), c * (e[1] + q.nu*e[0]), c * (1 - q.nu) / 2 * e[2]}
}

func (m *mesh) stiffness(q part, keys [8][2]int) (k [16][16]float64) {
	at, weight := []float64{-math.Sqrt(0.6), 0, math.Sqrt(0.6)}, []float64{5. / 9, 8. / 9, 5. / 9}
	for i, a := range at {
		for j, b := range at {
			of, area := m.strain(keys, a, b)
			for c := range 16 {
				s := q.stress([3]float64{of[0][c], of[1][c], of[2][c]})
				for r := range 16 {
					k[r][c] += weight[i] * weight[j] * area * (of[0][r]*s[0] + of[1][r]*s[1] + of[2][r]*s[2])
				}
			}
		}
	}
	return k
}

// polar is the radial, hoop and shear stress about a centre, as seen at angle t.
func polar(s [3]float64, t float64) (radial, hoop, shear float64) {
	sin, cos := math.Sincos(t)
	radial = s[0]*cos*cos + s[1]*sin*sin + 2*s[2]*sin*cos
	hoop = s[0]*sin*sin + s[1]*cos*cos - 2*s[2]*sin*cos
	return radial, hoop, (s[1]-s[0])*sin*cos + s[2]*(cos*cos-sin*sin)
}

// answer walks the walls. Stresses are taken where they are best, at the four
// points of Gauss, and carried straight on to the wall.
func (m *mesh) answer(u *mat.VecDense) Answer {
	out := Answer{HoleMost: math.Inf(-1), EdgeMost: math.Inf(-1)}
	share := 1 / float64(2*m.Around)
	m.eachElement(func(q part, keys [8][2]int) {
		plate := q.first == m.layers-2*m.Deep-1
		inner, outer := keys[0][1] == q.first, keys[2][1] == q.first+2*m.Deep
		for _, a := range []float64{-1, -1 / math.Sqrt(3), 1 / math.Sqrt(3), 1} {
			if inner {
				m.wall(q, keys, u, a, -1, plate, share, &out)
			}
			if outer {
				m.wall(q, keys, u, a, 1, plate, share, &out)
			}
		}
	})
	out.Closure, out.Growth = -2*m.meanOut(u, 0), 2*m.meanOut(u, m.layers-1)
	return out
}

func (m *mesh) wall(q part, keys [8][2]int, u *mat.VecDense, a, b float64, plate bool, share float64, out *Answer) {
	s := m.carried(q, keys, u, a, b)
	t := math.Pi / float64(2*m.Around) * (float64(keys[0][0]) + 1 + a)
	x, y := q.along(t, float64(keys[0][1]-q.first)/float64(2*m.Deep)+(b+1)/float64(2*m.Deep))
	seen := math.Atan2(y, x)
	inside := math.Abs(a) < 0.9 // the two points that stand for the element
	switch {
	case plate && b < 0:
		radial, hoop, shear := polar(s, seen)
		out.HoleMost = math.Max(out.HoleMost, hoop)
		if t < 1e-9 {
			out.HoleThin = hoop
			out.SeatMises = math.Sqrt(radial*radial - radial*hoop + hoop*hoop + 3*shear*shear)
		}
		if inside {
			out.HoleMean += hoop * share
			if m.BushBore == 0 {
				out.Pressure -= radial * share
			}
		}
	case plate:
		_, hoop, _ := polar(s, math.Atan2(y, x+m.Off))
		out.EdgeMost = math.Max(out.EdgeMost, hoop)
	case inside:
		radial, hoop, _ := polar(s, seen)
		if b < 0 {
			out.BushBore += hoop * share
		} else {
			out.Pressure -= radial * share
		}
	}
}

// carried is the stress at a, b by a plane through the four points of Gauss.
func (m *mesh) carried(q part, keys [8][2]int, u *mat.VecDense, a, b float64) (s [3]float64) {
	g := 1 / math.Sqrt(3)
	for _, ga := range []float64{-g, g} {
		for _, gb := range []float64{-g, g} {
			of, _ := m.strain(keys, ga, gb)
			var e [3]float64
			for n := range 16 {
				k := keys[n/2]
				v := u.AtVec(m.motions(k)[n%2])
				if n%2 == 0 {
					v += m.jump(k)
				}
				for i := range 3 {
					e[i] += of[i][n] * v
				}
			}
			weight := (1 + a*ga/(g*g)) * (1 + b*gb/(g*g)) / 4
			for i, x := range q.stress(e) {
				s[i] += weight * x
			}
		}
	}
	return s
}

// meanOut is how far a ring of nodes moves outwards, on the mean over the turn.
func (m *mesh) meanOut(u *mat.VecDense, layer int) float64 {
	var sum float64
	for i := 0; i <= 2*m.Around; i++ {
		weight := float64(2+2*(i%2)) / 3
		if i == 0 || i == 2*m.Around {
			weight = 1. / 3
		}
		k := [2]int{i, layer}
		t := math.Pi * float64(i) / float64(2*m.Around)
		d := m.motions(k)
		sum += weight * (u.AtVec(d[0])*math.Cos(t) + u.AtVec(d[1])*math.Sin(t))
	}
	return sum / float64(2*m.Around)
}
