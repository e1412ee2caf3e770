package target

import "math"

// problem holds what does not change during the search. Moves are reckoned in
// units of the doubt: T - mean = root' y with weight^-1 = root' root, so that
// the sum to be least is |y|^2.
type problem struct {
	in     Input
	mean   []Point
	weight []Cov
	root   []Cov // lower triangle of the inverse weight: move = root y
	col    []int // first column of a shaft in y, -1 for one that stays
	cols   int
	most   float64 // mm, the longest move
}

func newProblem(in Input) *problem {
	p := &problem{in: in, most: in.MostMove}
	if p.most == 0 {
		p.most = math.Inf(1)
		for _, g := range in.Gears {
			if g.Trusted {
				p.most = math.Min(p.most, math.Abs(g.Lo+g.Hi)/20)
			}
		}
	}
	for _, s := range in.Shafts {
		m, w := s.mean()
		det := w[0][0]*w[1][1] - w[0][1]*w[1][0]
		c := Cov{{w[1][1] / det, -w[0][1] / det}, {-w[1][0] / det, w[0][0] / det}}
		l00 := math.Sqrt(c[0][0])
		l10 := c[1][0] / l00
		r := Cov{{l00, 0}, {l10, math.Sqrt(math.Max(0, c[1][1]-l10*l10))}}
		p.mean, p.weight, p.root = append(p.mean, m), append(p.weight, w), append(p.root, r)
		if s.fixed() >= 0 || s.held {
			p.col = append(p.col, -1)
			continue
		}
		p.col = append(p.col, p.cols)
		p.cols += 2
	}
	return p
}

// places turns y into targets.
func (p *problem) places(y []float64) []Point {
	t := append([]Point(nil), p.mean...)
	for i, c := range p.col {
		if c >= 0 {
			r := p.root[i]
			t[i][0] += r[0][0] * y[c]
			t[i][1] += r[1][0]*y[c] + r[1][1]*y[c+1]
		}
	}
	return t
}

// search is Newton on the active set: the windows are made straight at the
// present places, the least move that meets them is found, and again until
// nothing changes. With give above 0 each window may be missed: the miss in
// widths counts fully and the move only give squared; the lines of centres then
// stay those of the original places, or a shaft between two mates would be sent
// far aside to gain by the bend of its circle.
//
// lambda tells for each gear how hard its near and far edge push.
func (p *problem) search(give float64) (t []Point, lambda [][2]float64, ok bool) {
	y := make([]float64, p.cols)
	t = p.places(y)
	start := t
	type row struct{ gear, side int }
	for range 60 {
		var g [][]float64
		var h []float64
		var rows []row
		wide := p.cols
		if give > 0 {
			wide += 2 * len(p.in.Gears)
		}
		for i, gear := range p.in.Gears {
			e := p.in.edge(gear, t)
			if !gear.Trusted || !e.moves && !e.mMove {
				continue
			}
			ns := [2]Point{e.nNear, e.nFar}
			if give > 0 {
				e0 := p.in.edge(gear, start)
				ns = [2]Point{e0.nNear, e0.nFar}
			}
			for side, sign := range []float64{1, -1} {
				r := make([]float64, wide)
				p.grad(r, e.shaft, ns[side], -sign)
				if e.mate >= 0 {
					p.grad(r, e.mate, ns[side], sign)
				}
				need := e.inLo - e.a
				if side == 1 {
					need = e.a - e.inHi
				}
				need += dot(r[:p.cols], y)
				if give > 0 {
					for k := range p.cols {
						r[k] /= give
					}
					r[p.cols+2*i+side] = e.width
				}
				g, h, rows = append(g, r), append(h, need), append(rows, row{i, side})
			}
		}
		x, l, fits := leastDistance(g, h)
		if !fits {
			return t, nil, false
		}
		lambda = make([][2]float64, len(p.in.Gears))
		for k, r := range rows {
			if l[k] > 1e-12 {
				lambda[r.gear][r.side] = l[k]
			}
		}
		next := make([]float64, p.cols)
		if len(x) > 0 {
			copy(next, x[:p.cols])
		}
		if give > 0 {
			for k := range next {
				next[k] /= give
			}
		}
		to := p.places(next)
		far := 0.
		for i := range to {
			far = math.Max(far, math.Hypot(to[i][0]-t[i][0], to[i][1]-t[i][1]))
		}
		y, t = next, to
		if far < settled {
			return t, lambda, p.within(t) && (give > 0 || p.met(t))
		}
	}
	return t, lambda, p.within(t) && (give > 0 || p.met(t))
}

// grad adds the change of a centre distance per unit of y of one shaft.
func (p *problem) grad(r []float64, shaft int, n Point, k float64) {
	c := p.col[shaft]
	if c < 0 {
		return
	}
	m := p.root[shaft]
	r[c] += k * (n[0]*m[0][0] + n[1]*m[1][0])
	r[c+1] += k * n[1] * m[1][1]
}

// met says whether all windows that can move a shaft are met.
func (p *problem) met(t []Point) bool {
	for _, g := range p.in.Gears {
		e := p.in.edge(g, t)
		if !g.Trusted || !e.moves && !e.mMove {
			continue
		}
		if near, far := e.short(); near > missing || far > missing {
			return false
		}
	}
	return true
}

// within says whether no shaft is sent farther than the most that is allowed.
func (p *problem) within(t []Point) bool {
	for i := range t {
		if math.Hypot(t[i][0]-p.mean[i][0], t[i][1]-p.mean[i][1]) > p.most {
			return false
		}
	}
	return true
}
