package main

import "math"

// point is a place in mm: x and y in the plane, or r and z where it turns.
type point struct{ x, y float64 }

// mesh is two parts of eight-node quadrilaterals, the bush and the metal round
// it. Their nodes at the seat lie at the same places but are not the same.
type mesh struct {
	nodes  []point // node n has the number n+1
	number map[key]int
	cells  map[string][]cell
	inside map[string]map[int]bool // nodes of a part
	turns  bool                    // about the y axis: axisymmetric
}

type key struct {
	part string
	x, y int64
}

// cell is an element: its corners counter-clockwise, then the middles of its
// sides.
type cell [8]int

func newMesh() *mesh {
	return &mesh{number: map[key]int{}, cells: map[string][]cell{}, inside: map[string]map[int]bool{}}
}

// even are the ends of n equal steps from 0 to 1.
func even(n int) []float64 { return graded(n, 1) }

// graded are the ends of n steps from 0 to 1, the last rise times the first.
func graded(n int, rise float64) []float64 {
	ends := make([]float64, n+1)
	step, each := 1.0, 1.0
	if n > 1 {
		each = math.Pow(rise, 1/float64(n-1))
	}
	for i := range n {
		ends[i+1] = ends[i] + step
		step *= each
	}
	for i := range ends {
		ends[i] /= ends[n]
	}
	ends[n] = 1
	return ends
}

// both are the ends of n steps, fine at either end and rise times as long in
// the middle.
func both(n int, rise float64) []float64 {
	half := graded((n+1)/2, rise)
	var ends []float64
	for _, x := range half {
		ends = append(ends, x/2)
	}
	for i := len(half) - 2; i >= 0; i-- {
		ends = append(ends, 1-half[i]/2)
	}
	return ends
}

// halved puts the middle of every step between its ends.
func halved(ends []float64) []float64 {
	all := []float64{ends[0]}
	for i := 1; i < len(ends); i++ {
		all = append(all, (ends[i-1]+ends[i])/2, ends[i])
	}
	return all
}

// block fills a patch of a part: at says where (s, t) of the unit square lies.
func (m *mesh) block(part string, s, t []float64, at func(s, t float64) point) {
	ss, ts := halved(s), halved(t)
	id := make([][]int, len(ss))
	for i, a := range ss {
		id[i] = make([]int, len(ts))
		for j, b := range ts {
			if i%2 == 1 && j%2 == 1 { // eight nodes: none in the middle
				continue
			}
			id[i][j] = m.node(part, at(a, b))
		}
	}
	for i := 0; i+2 < len(ss); i += 2 {
		for j := 0; j+2 < len(ts); j += 2 {
			c := cell{id[i][j], id[i+2][j], id[i+2][j+2], id[i][j+2],
				id[i+1][j], id[i+2][j+1], id[i+1][j+2], id[i][j+1]}
			if m.clockwise(c) {
				c = cell{c[0], c[3], c[2], c[1], c[7], c[6], c[5], c[4]}
			}
			m.cells[part] = append(m.cells[part], c)
		}
	}
}

func (m *mesh) clockwise(c cell) bool {
	a, b, d := m.nodes[c[0]], m.nodes[c[1]], m.nodes[c[3]]
	return (b.x-a.x)*(d.y-a.y)-(b.y-a.y)*(d.x-a.x) < 0
}

// node is that of a part at a place, the same for blocks that meet there.
func (m *mesh) node(part string, p point) int {
	k := keyOf(part, p)
	if n, ok := m.number[k]; ok {
		return n
	}
	n := len(m.nodes)
	m.nodes = append(m.nodes, p)
	m.number[k] = n
	if m.inside[part] == nil {
		m.inside[part] = map[int]bool{}
	}
	m.inside[part][n] = true
	return n
}

func keyOf(part string, p point) key {
	return key{part, int64(math.Round(p.x * 1e6)), int64(math.Round(p.y * 1e6))}
}

// on are the nodes of a part that lie where holds is true, in the order of
// their numbers.
func (m *mesh) on(part string, holds func(point) bool) []int {
	var found []int
	for n, p := range m.nodes {
		if m.inside[part][n] && holds(p) {
			found = append(found, n)
		}
	}
	return found
}

// near is true of two lengths that are one.
func near(a, b float64) bool { return math.Abs(a-b) < 1e-5 }

// polar is the place at radius r, angle a from the axis -y, which is where an
// edge lies.
func polar(r, a float64) point { return point{r * math.Sin(a), -r * math.Cos(a)} }

func along(a, b point, t float64) point { return point{a.x + t*(b.x-a.x), a.y + t*(b.y-a.y)} }
