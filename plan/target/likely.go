package target

import (
	"math"

	"rebush/fits/odds"
)

// limit is what one mesh has to come out between, and how well it is known
// beforehand: the centre distance under load at the middle of the running
// clearances, as normal.
type limit struct {
	a, sigma float64
	lo, hi   float64
	n        Point // how a grows: da = n.(d mate - d shaft)
	e        edges
}

// least is the narrowest that a limit is taken for, mm: an empty one is its
// middle.
const least = 1e-4

// limit is that of a mesh at given places of the shafts.
func (in Input) limit(g Gear, t []Point) limit {
	e := in.edge(g, t)
	l := limit{a: (e.near + e.far) / 2, lo: g.Lo, hi: g.Hi, e: e,
		n: Point{(e.nNear[0] + e.nFar[0]) / 2, (e.nNear[1] + e.nFar[1]) / 2}}
	l.sigma = math.Max(floor, math.Sqrt(e.u*e.u+(e.far-e.near)*(e.far-e.near)/12))
	switch {
	case g.Turn == [2]float64{}:
	case l.hi-l.lo < least: // no distance suits both ends: it is right where it runs
		l.lo, l.hi = g.Turn[0], g.Turn[1]
	default:
		l.lo, l.hi = math.Max(l.lo, g.Turn[0]), math.Min(l.hi, g.Turn[1])
	}
	if mid := (l.lo + l.hi) / 2; l.hi-l.lo < least {
		l.lo, l.hi = mid-least/2, mid+least/2
	}
	return l
}

// z are the limits in doubts from where the mesh stands.
func (l limit) z() [2]float64 { return [2]float64{(l.lo - l.a) / l.sigma, (l.hi - l.a) / l.sigma} }

// cost is -ln of the chance that it comes out between its limits, with its first
// and second change by a. Beyond thirty doubts it is taken as that of the nearer
// limit.
func (l limit) cost() (f, f1, f2 float64) {
	z := l.z()
	p := odds.Within(z[0], z[1])
	if p < 1e-190 {
		d := z[0]
		if z[1] < 0 {
			d = z[1]
		}
		return d * d / 2, -d / l.sigma, 1 / (l.sigma * l.sigma)
	}
	dl, dh := odds.Density(z[0]), odds.Density(z[1])
	f1 = -(dl - dh) / p
	f2 = math.Max(0, f1*f1-(z[0]*dl-z[1]*dh)/p)
	return -math.Log(p), f1 / l.sigma, f2 / (l.sigma * l.sigma)
}

// counts says whether a mesh is among those that the places are chosen for.
func (in Input) counts(g Gear, e edges) bool { return g.Trusted && (e.moves || e.mMove) }

// likelier goes from places where all windows are met to those at which the
// meshes are likeliest to come right, with what the way from the old centres
// weighs against that, inside the windows as they are narrowed. The lines of
// centres stay those of the places it starts from, or a shaft between two mates
// would be sent aside to gain by the bend of its circle; what the bend makes of a
// distance is added and the bottom sought again until nothing changes.
func (p *problem) likelier(t []Point) []Point {
	start, y := t, p.of(t)
	for range 40 {
		d := p.down(start, y)
		for i := range y {
			y[i] += d[i]
		}
		to := p.places(y)
		far := 0.0
		for i := range to {
			far = math.Max(far, math.Hypot(to[i][0]-t[i][0], to[i][1]-t[i][1]))
		}
		if t = to; far < settled {
			break
		}
	}
	if p.within(t) && p.met(t) {
		return t
	}
	return start
}

// push is what one mesh asks of a step from some places: its limits there, and
// how its distance changes by y, at the middle of the clearances and at those of
// its two edges.
type push struct {
	limit
	row, near, far []float64
}

// hollow is what is to be least about some places: it has one bottom.
type hollow struct {
	y    []float64 // the places
	move float64   // what a move weighs
	list []push
}

// hollow has the lines of centres of the start.
func (p *problem) hollow(start []Point, y []float64) hollow {
	out := hollow{y: y, move: math.Max(p.in.Move, leastMove)}
	t := p.places(y)
	for _, g := range p.in.Gears {
		l := p.in.limit(g, t)
		if !p.in.counts(g, l.e) {
			continue
		}
		first := p.in.limit(g, start)
		rowOf := func(n Point) []float64 {
			r := make([]float64, p.cols)
			p.grad(r, g.Shaft, n, -1)
			if g.Mate >= 0 {
				p.grad(r, g.Mate, n, 1)
			}
			return r
		}
		out.list = append(out.list, push{l, rowOf(first.n), rowOf(first.e.nNear), rowOf(first.e.nFar)})
	}
	return out
}

// leastMove is the least that a move weighs: with nothing against it a shaft
// could stand anywhere in a wide window.
const leastMove = 1e-6

// down is the step to the bottom, by Newton's steps, each halved until it goes
// down.
func (p *problem) down(start []Point, y []float64) []float64 {
	h := p.hollow(start, y)
	d := make([]float64, len(y))
	was := h.at(d)
	for i := range 60 {
		first := i == 0 // from places that the bend may have put outside their windows
		to, ok := h.step(d)
		if !ok {
			break
		}
		long, k := 0.0, 1.0
		next := make([]float64, len(d))
		for ; k > 1e-6; k /= 2 {
			for i := range d {
				next[i] = d[i] + k*(to[i]-d[i])
			}
			if now := h.at(next); first || now <= was+1e-14*math.Abs(was) {
				was = now
				break
			}
		}
		for i := range d {
			long = math.Max(long, math.Abs(next[i]-d[i]))
		}
		if d = next; long < 1e-11 {
			break
		}
	}
	return d
}

// moved is the limit after a step.
func (r push) moved(d []float64) limit {
	l := r.limit
	l.a += dot(r.row, d)
	return l
}

func (h hollow) at(d []float64) float64 {
	sum := 0.0
	for i, v := range h.y {
		sum += h.move * (v + d[i]) * (v + d[i])
	}
	for _, r := range h.list {
		f, _, _ := r.moved(d).cost()
		sum += f
	}
	return sum
}

// step is where Newton's step from d leads, inside the windows.
func (h hollow) step(d []float64) ([]float64, bool) {
	n := len(d)
	bend, fall := make([][]float64, n), make([]float64, n)
	for i := range bend {
		bend[i] = make([]float64, n)
		bend[i][i] = 2 * h.move
		fall[i] = 2 * h.move * (h.y[i] + d[i])
	}
	for _, r := range h.list {
		_, f1, f2 := r.moved(d).cost()
		for i, v := range r.row {
			fall[i] += f1 * v
			for k, w := range r.row {
				bend[i][k] += f2 * v * w
			}
		}
	}
	l, ok := lower(bend)
	if !ok {
		return nil, false
	}
	lean := forward(l, fall) // x = L' step + lean is to be least
	var rows [][]float64
	var need []float64
	for _, r := range h.list {
		near, far := forward(l, r.near), forward(l, r.far)
		for i := range far {
			far[i] = -far[i]
		}
		rows = append(rows, near, far)
		need = append(need, r.e.inLo-r.e.a-dot(r.near, d)+dot(near, lean),
			r.e.a+dot(r.far, d)-r.e.inHi+dot(far, lean))
	}
	x, _, fits := leastDistance(rows, need)
	if !fits {
		return nil, false
	}
	for i := range lean {
		lean[i] = -lean[i]
		if len(x) > 0 {
			lean[i] += x[i]
		}
	}
	to := backward(l, lean)
	for i := range to {
		to[i] += d[i]
	}
	return to, true
}

// of turns places into y.
func (p *problem) of(t []Point) []float64 {
	y := make([]float64, p.cols)
	for i, c := range p.col {
		if c >= 0 {
			r := p.root[i]
			y[c] = (t[i][0] - p.mean[i][0]) / r[0][0]
			y[c+1] = (t[i][1] - p.mean[i][1] - r[1][0]*y[c]) / r[1][1]
		}
	}
	return y
}
