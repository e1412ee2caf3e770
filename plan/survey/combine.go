package survey

import (
	"math"

	"rebush/fits/say"
)

// Part is an error that several kinds of evidence share, because one reading
// stands behind them: where it moves each, at one standard deviation, mm.
type Part struct {
	Name string
	V    [2]float64
}

// Disagree names two kinds of evidence that differ by more than
// 2 sqrt(u1^2 + u2^2), by their places in the list.
type Disagree struct {
	A, B       int
	Apart, May float64 // mm
	Words      say.Text
}

// Combined is what several kinds of evidence say together.
type Combined struct {
	Centre  [2]float64
	Cov     [2][2]float64
	Leads   int             // the place of the one that decides between such as disagree; -1 for none
	Weights []float64       // how much of the answer each makes, of 1
	Gains   [][2][2]float64 // the matrix by which each centre enters
	Parts   []Part          // what its errors still share with other evidence
	Differ  []Disagree
}

// Combine puts evidence together by its covariances, least squares of errors of
// which some are shared (parts of one name). The first in order leads: sure
// before doubtful, then by rank and method. What is farther from it than the
// doubts allow, k times as far, counts by k^4 times its covariance, so that its
// say fades out and no centre jumps; and the answer is doubted up to twice as
// much, by k.
func Combine(es []Evidence) Combined {
	c := Combined{Leads: leads(es), Weights: make([]float64, len(es))}
	if c.Leads < 0 {
		return c
	}
	lead, fades, worst := es[c.Leads], make([]float64, len(es)), 1.0
	for i, e := range es {
		fades[i] = 1
		if i == c.Leads {
			continue
		}
		d, may := dist(e.Centre, lead.Centre), 2*math.Hypot(e.U(), lead.U())
		if d <= may {
			continue
		}
		k := d / may
		fades[i], worst = math.Pow(k, 4), math.Max(worst, k)
		a, b := min(i, c.Leads), max(i, c.Leads)
		c.Differ = append(c.Differ, Disagree{A: a, B: b, Apart: d, May: may, Words: say.F(
			"%s and %s put the old centre %v apart; they should agree to %v", es[a].Method, es[b].Method,
			say.MM(d, 3), say.MM(may, 3).Bare())})
	}
	if len(es) == 1 {
		c.Centre, c.Cov, c.Weights[0] = lead.Centre, lead.Cov, 1
		c.Gains, c.Parts = [][2][2]float64{{{1, 0}, {0, 1}}}, lead.Parts
		return c
	}
	c.Gains = gains(es, fades, &c.Cov)
	for i, e := range es {
		for j := range c.Centre {
			c.Centre[j] += c.Gains[i][j][0]*e.Centre[0] + c.Gains[i][j][1]*e.Centre[1]
		}
		c.Weights[i] = (c.Gains[i][0][0] + c.Gains[i][1][1]) / 2
		for _, p := range e.Parts {
			c.share(Part{p.Name, [2]float64{c.Gains[i][0][0]*p.V[0] + c.Gains[i][0][1]*p.V[1],
				c.Gains[i][1][0]*p.V[0] + c.Gains[i][1][1]*p.V[1]}})
		}
	}
	c.Cov = scale2(c.Cov, math.Pow(math.Min(worst, 2), 2))
	return c
}

// share adds a part to those of its name.
func (c *Combined) share(p Part) {
	for i := range c.Parts {
		if c.Parts[i].Name == p.Name {
			c.Parts[i].V[0] += p.V[0]
			c.Parts[i].V[1] += p.V[1]
			return
		}
	}
	c.Parts = append(c.Parts, p)
}

// leads is the evidence that decides where others contradict it, whatever order
// they are listed in: a doubtful one only where nothing sure is left.
func leads(es []Evidence) int {
	best := -1
	for i, e := range es {
		if best < 0 || e.before(es[best]) {
			best = i
		}
	}
	return best
}

func (e Evidence) before(o Evidence) bool {
	if e.Doubtful != o.Doubtful {
		return !e.Doubtful
	}
	if e.Rank != o.Rank {
		return e.Rank < o.Rank
	}
	return e.Method < o.Method
}

// gains are the matrices by which each centre enters the mean of least variance,
// (A'V^-1 A)^-1 A'V^-1 with A the unit matrices stacked; and that variance.
func gains(es []Evidence, fades []float64, cov *[2][2]float64) [][2][2]float64 {
	n := 2 * len(es)
	v := make([][]float64, n) // beside V stands A, which becomes V^-1 A
	for i := range es {
		for r := range 2 {
			row := make([]float64, n+2)
			for j := range es {
				shared := between2(es[i], es[j])
				if i == j {
					shared = scale2(es[i].Cov, fades[i])
					shared[r][r] += leastVariance
				}
				row[2*j], row[2*j+1] = shared[r][0], shared[r][1]
			}
			row[n+r] = 1
			v[2*i+r] = row
		}
	}
	eliminate(v)
	var info [2][2]float64
	for i := range v {
		for k := range 2 {
			info[i%2][k] += v[i][n+k]
		}
	}
	*cov = inverse2(info)
	out := make([][2][2]float64, len(es))
	for i := range out {
		for r := range 2 {
			for k := range 2 {
				out[i][r][k] = cov[r][0]*v[2*i+k][n] + cov[r][1]*v[2*i+k][n+1]
			}
		}
	}
	return out
}

// leastVariance keeps evidence of no doubt at all from dividing by nothing, mm^2.
const leastVariance = 1e-12

// between2 is the covariance of the errors that two kinds of evidence share.
func between2(a, b Evidence) (c [2][2]float64) {
	for _, p := range a.Parts {
		for _, q := range b.Parts {
			if p.Name != q.Name {
				continue
			}
			for i := range c {
				for k := range c[i] {
					c[i][k] += p.V[i] * q.V[k]
				}
			}
		}
	}
	return c
}

// eliminate solves the square system that stands left of the last two columns,
// in place, by Gauss and Jordan with the largest pivot of each column.
func eliminate(v [][]float64) {
	for c := range v {
		p := c
		for r := c + 1; r < len(v); r++ {
			if math.Abs(v[r][c]) > math.Abs(v[p][c]) {
				p = r
			}
		}
		v[c], v[p] = v[p], v[c]
		if v[c][c] == 0 {
			continue
		}
		for r := range v {
			if k := v[r][c] / v[c][c]; r != c && k != 0 {
				for j := c; j < len(v[r]); j++ {
					v[r][j] -= k * v[c][j]
				}
			}
		}
	}
	for c := range v {
		if v[c][c] != 0 {
			for j := len(v); j < len(v)+2; j++ {
				v[c][j] /= v[c][c]
			}
		}
	}
}

func inverse2(a [2][2]float64) [2][2]float64 {
	det := a[0][0]*a[1][1] - a[0][1]*a[1][0]
	return [2][2]float64{{a[1][1] / det, -a[0][1] / det}, {-a[1][0] / det, a[0][0] / det}}
}
