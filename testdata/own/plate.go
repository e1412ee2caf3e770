package own

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
)

// Plate is metal in plane stress with a round hole, off the middle of a round
// outer edge: the nearest edge lies at angle 0 as seen from the hole. In the
// hole sits a bush, pressed in with a diametral interference, free to slide
// round; or, where BushBore is 0, a pressure. Lengths mm, MPa. It is solved by
// finite elements: eight-node quadrilaterals over half the plate, symmetric
// about the line through both centres, closer where the wall is thin.
type Plate struct {
	Hole, Edge, Off                       float64 // radii, and the distance of the centres
	E, Nu                                 float64
	BushBore, BushE, BushNu, Interference float64 // radius of the bore
	Pressure                              float64
	Around, Deep                          int // elements over half the turn, and through each part
}

// Answer is what the rows ask of a plate. Stresses are hoop stresses but for
// SeatMises; Closure and Growth are mean changes of a diameter.
type Answer struct {
	Pressure                     float64 // mean, on the seat
	HoleMost, HoleThin, HoleMean float64
	EdgeMost, SeatMises          float64
	BushBore                     float64
	Closure, Growth              float64
}

// part is a ring of elements; along is the place at angle t, share s of the
// way from its inner to its outer wall.
type part struct {
	e, nu float64
	along func(t, s float64) (x, y float64)
	first int // number of its innermost nodes, counted outwards over all parts
}

type mesh struct {
	Plate
	parts  []part
	layers int // nodes along a ray at a corner of elements
	x, y   map[[2]int]float64
	dof    map[[2]int]int // first of two
	count  int
}

// turned says whether the motions of a node are radial and round, as they are
// on both walls of the seat.
func (m *mesh) turned(k [2]int) bool {
	return len(m.parts) == 2 && (k[1] == 2*m.Deep || k[1] == 2*m.Deep+1)
}

// jump is how far the inner wall of the plate starts inside the bush.
func (m *mesh) jump(k [2]int) float64 {
	if len(m.parts) == 2 && k[1] == 2*m.Deep+1 {
		return m.Interference / 2
	}
	return 0
}

func (p Plate) mesh() *mesh {
	m := &mesh{Plate: p, x: map[[2]int]float64{}, y: map[[2]int]float64{}, dof: map[[2]int]int{}}
	edge := func(t float64) float64 { // from the hole's centre, the edge's centre lies Off behind
		sin, cos := math.Sincos(t)
		return math.Sqrt(p.Edge*p.Edge-p.Off*p.Off*sin*sin) - p.Off*cos
	}
	ring := func(inner, outer func(float64) float64) func(t, s float64) (float64, float64) {
		return func(t, s float64) (float64, float64) {
			r := inner(t) * math.Pow(outer(t)/inner(t), s)
			return r * math.Cos(t), r * math.Sin(t)
		}
	}
	round := func(r float64) func(float64) float64 { return func(float64) float64 { return r } }
	if p.BushBore > 0 {
		m.parts = append(m.parts, part{p.BushE, p.BushNu, ring(round(p.BushBore), round(p.Hole)), 0})
	}
	m.parts = append(m.parts, part{p.E, p.Nu, ring(round(p.Hole), edge), len(m.parts) * (2*p.Deep + 1)})
	m.layers = len(m.parts) * (2*p.Deep + 1)
	for i := 0; i <= 2*p.Around; i++ {
		t := math.Pi * float64(i) / float64(2*p.Around)
		for _, q := range m.parts {
			for j := 0; j <= 2*p.Deep; j++ {
				if i%2 == 1 && j%2 == 1 {
					continue
				}
				k := [2]int{i, q.first + j}
				m.x[k], m.y[k] = q.along(t, float64(j)/float64(2*p.Deep))
				if m.jump(k) > 0 { // moves out with the bush
					m.dof[k] = m.dof[[2]int{i, 2 * p.Deep}]
					m.dof[[2]int{i, -1}] = m.count // round, on its own
					m.count++
					continue
				}
				m.dof[k] = m.count
				m.count += 2
			}
		}
	}
	return m
}

// motions are the numbers of a node's two unknowns.
func (m *mesh) motions(k [2]int) [2]int {
	if m.jump(k) > 0 {
		return [2]int{m.dof[k], m.dof[[2]int{k[0], -1}]}
	}
	return [2]int{m.dof[k], m.dof[k] + 1}
}

// held lists the unknowns that are nought: across the line of symmetry, and one
// along it.
func (m *mesh) held() map[int]bool {
	out := map[int]bool{m.motions([2]int{2 * m.Around, m.layers - 1})[0]: true}
	for _, i := range []int{0, 2 * m.Around} {
		for j := range m.layers {
			out[m.motions([2]int{i, j})[1]] = true
		}
	}
	return out
}

// Solve works the plate out.
func (p Plate) Solve() (Answer, error) {
	m := p.mesh()
	band := 0
	m.eachElement(func(_ part, keys [8][2]int) {
		lo, hi := m.count, 0
		for _, k := range keys {
			for _, d := range m.motions(k) {
				lo, hi = min(lo, d), max(hi, d)
			}
		}
		band = max(band, hi-lo)
	})
	stiff, load := mat.NewSymBandDense(m.count, band, nil), mat.NewVecDense(m.count, nil)
	held := m.held()
	m.eachElement(func(q part, keys [8][2]int) {
		k := m.stiffness(q, keys)
		for a := range 16 {
			da := m.motions(keys[a/2])[a%2]
			for b := range 16 {
				if b%2 == 0 {
					load.SetVec(da, load.AtVec(da)-k[a][b]*m.jump(keys[b/2]))
				}
				if db := m.motions(keys[b/2])[b%2]; db >= da && !held[da] && !held[db] {
					stiff.SetSymBand(da, db, stiff.At(da, db)+k[a][b])
				}
			}
		}
	})
	if p.BushBore == 0 {
		m.press(load)
	}
	for d := range held {
		stiff.SetSymBand(d, d, 1)
		load.SetVec(d, 0)
	}
	var by mat.BandCholesky
	if !by.Factorize(stiff) {
		return Answer{}, fmt.Errorf("plate %+v: the mesh is not held", p)
	}
	var u mat.VecDense
	if err := by.SolveVecTo(&u, load); err != nil {
		return Answer{}, err
	}
	return m.answer(&u), nil
}

// press puts the pressure on the hole: a third, and two in the middle, of each
// element's share of the way round, by Simpson's rule.
func (m *mesh) press(load *mat.VecDense) {
	for i := 0; i <= 2*m.Around; i++ {
		weight := float64(4-2*(1-i%2)) / 6
		if i == 0 || i == 2*m.Around {
			weight = 1.0 / 6
		}
		k := [2]int{i, 0}
		force := m.Pressure * weight * math.Pi / float64(m.Around)
		d := m.motions(k)
		load.SetVec(d[0], load.AtVec(d[0])+force*m.x[k])
		load.SetVec(d[1], load.AtVec(d[1])+force*m.y[k])
	}
}

// Sharp solves with half the elements and with all of them, and goes on by a
// third of the difference: the error falls with the square of their size.
func (p Plate) Sharp() (Answer, error) {
	fine, err := p.Solve()
	if err != nil {
		return Answer{}, err
	}
	p.Around, p.Deep = p.Around/2, p.Deep/2
	coarse, err := p.Solve()
	if err != nil {
		return Answer{}, err
	}
	on := func(c, f float64) float64 { return f + (f-c)/3 }
	return Answer{on(coarse.Pressure, fine.Pressure),
		on(coarse.HoleMost, fine.HoleMost), on(coarse.HoleThin, fine.HoleThin), on(coarse.HoleMean, fine.HoleMean),
		on(coarse.EdgeMost, fine.EdgeMost), on(coarse.SeatMises, fine.SeatMises), on(coarse.BushBore, fine.BushBore),
		fine.Closure, fine.Growth}, nil
}
