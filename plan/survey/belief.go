package survey

import "math"

// belief is what points of a wall leave open of one shape of wear, journal and
// all: the density from which the answer is a mean and a covariance. Its
// unknowns are, along and across a frame turned by `turn`,
//
//	x, R, w, r, [half of the fan, or w of the second lobe,] y, theta, [theta of the second]
//
// with the travel d = R - r + w. All that a mirror leaves alone comes first.
type belief struct {
	outline
	s         float64    // of one point, mm
	journal   float64    // radius as measured
	uJournal  float64    // of that radius
	sides     []float64  // that it is said to have worn to, none to two
	uSide     float64    // of those, radians
	against   float64    // by how much chi-square has to fall before the points outweigh a side
	from      [2]float64 // origin of the frame
	sin, cos  float64    // of its turn
	dir       float64    // the turn
	dims, odd int        // unknowns, and the first that a mirror turns round
}

// Places of the unknowns of a belief that all shapes have.
const (
	bX = iota
	bR
	bW
	bJournal
	bMore // of the shapes with more than one direction
)

func (b *belief) set(shape Shape, from [2]float64, turn float64) {
	b.shape, b.from, b.dir = shape, from, turn
	b.sin, b.cos = math.Sincos(turn)
	b.dims, b.odd = shape.unknowns()+1, bMore
	if shape != OneLobe {
		b.odd++
	}
}

// fit is the outline that a set of unknowns stands for.
func (b *belief) fit(v *vector) (q vector) {
	x, y := v[bX], v[b.odd]
	q[iX], q[iY] = b.from[0]+x*b.cos-y*b.sin, b.from[1]+x*b.sin+y*b.cos
	q[iR], q[iD], q[iTheta] = v[bR], v[bR]-v[bJournal]+v[bW], b.dir+v[b.odd+1]
	switch b.shape {
	case Fan:
		q[iFan] = v[bMore]
	case TwoLobes:
		q[iD2], q[iTheta2] = v[bR]-v[bJournal]+v[bMore], b.dir+v[b.odd+2]
	}
	return q
}

// unknowns are those of an outline, of a journal as measured.
func (b *belief) unknowns(q *vector) (v vector) {
	x, y := q[iX]-b.from[0], q[iY]-b.from[1]
	v[bX], v[b.odd] = x*b.cos+y*b.sin, y*b.cos-x*b.sin
	v[bR], v[bW], v[bJournal] = math.Max(q[iR], b.journal), math.Max(0, q[iD]+b.journal-q[iR]), b.journal
	v[b.odd+1] = math.Remainder(q[iTheta]-b.dir, 2*math.Pi)
	switch b.shape {
	case Fan:
		v[bMore] = q[iFan]
	case TwoLobes:
		v[bMore] = math.Max(0, q[iD2]+b.journal-q[iR])
		v[b.odd+2] = math.Remainder(q[iTheta2]-b.dir, 2*math.Pi)
	}
	return v
}

// chi is twice the negative logarithm of the density, but for a constant:
//
//	(8 + n) ln(1 + SSQ/(8 s^2)) + sides + ((r - measured)/u)^2
//
// the first what stays of the normal density of n residuals when the
// instrument's variance is known as if from 8 degrees of freedom. Infinite
// where wear or clearance would be negative.
func (b *belief) chi(v *vector) float64 {
	if v[bW] < 0 || v[bR] < v[bJournal] || v[bJournal] <= 0 || b.odd > bMore && v[bMore] < 0 ||
		b.shape == Fan && v[bMore] > widestFan {
		return math.Inf(1)
	}
	q := b.fit(v)
	b.r = v[bJournal]
	off := (v[bJournal] - b.journal) / b.uJournal
	return float64(pooled+len(b.pts))*math.Log1p(b.squares(&q)/(pooled*b.s*b.s)) + b.said(&q) + off*off +
		2*math.Log1p(v[bW]/unseen)
}

// said is what the sides tell, as chi-square. An eye is mostly right within its
// doubt u, and now and then altogether wrong:
//
//	-2 ln(exp(-off^2/(2 u^2)) + exp(-against/2))
//
// Where no side is said either nothing was to be seen, the likelier the less it
// is worn, or it was forgotten:
//
//	-2 ln(forgotten + (1 - forgotten) exp(-w/unseen))
//
// Of a fan between two sides its edges are judged, of two lobes each.
func (b *belief) said(q *vector) float64 {
	one := func(to, side float64) float64 {
		off := math.Remainder(to-side, 2*math.Pi) / b.uSide
		return -2 * math.Log(math.Exp(-off*off/2)+math.Exp(-b.against/2))
	}
	switch {
	case len(b.sides) == 0:
		wear := q[iD] + b.r - q[iR]
		return -2 * math.Log(forgotten+(1-forgotten)*math.Exp(-math.Max(0, wear)/unseen))
	case len(b.sides) == 1 || b.shape == OneLobe:
		return one(q[iTheta], between(b.sides))
	}
	first, second := q[iTheta]-q[iFan], q[iTheta]+q[iFan]
	if b.shape == TwoLobes {
		first, second = q[iTheta], q[iTheta2]
	}
	return math.Min(one(first, b.sides[0])+one(second, b.sides[1]), one(first, b.sides[1])+one(second, b.sides[0]))
}

// How often a side is forgotten, and the wear in mm that an eye overlooks about
// once in three (j).
const (
	forgotten = 0.1
	unseen    = 0.02
)

// Widths at which unknowns are first looked for where no point tells of them.
const (
	firstMM   = 0.3
	firstTurn = 0.5
)

// near is a normal density about an outline that was fitted: where to look
// first. Its covariance is that of the fit, held in what no point tells of.
func (b *belief) near(s *seed) (c cloud, ok bool) {
	n := b.dims
	c.mean = b.unknowns(&s.q)
	// The outline's unknowns by the belief's: d = R - r + w.
	var by [most]vector
	by[iX][bX], by[iX][b.odd], by[iY][bX], by[iY][b.odd] = b.cos, -b.sin, b.sin, b.cos
	by[iR][bR], by[iD][bR], by[iD][bW], by[iTheta][b.odd+1] = 1, 1, 1, 1
	switch b.shape {
	case Fan:
		by[iFan][bMore] = 1
	case TwoLobes:
		by[iD2][bR], by[iD2][bMore], by[iTheta2][b.odd+2] = 1, 1, 1
	}
	p := b.shape.unknowns()
	s2 := (pooled*b.s*b.s + s.n.ssq) / float64(pooled+len(b.pts))
	var a matrix
	for i := range p {
		for j := range p {
			v := s.n.a[min(i, j)][max(i, j)] / s2
			for k := range n {
				for l := k; l < n; l++ {
					a[k][l] += by[i][k] * v * by[j][l]
				}
			}
		}
	}
	turn := firstTurn
	if len(b.sides) > 0 {
		turn = math.Min(turn, b.uSide)
	}
	for k := range n {
		width := firstMM
		switch {
		case k == bJournal:
			width = b.uJournal
		case k > b.odd:
			width = turn
		case k == bMore && b.shape == Fan:
			width = firstTurn
		}
		a[k][k] += 1 / (width * width)
	}
	if !factor(&a, n) {
		return c, false
	}
	for k := range n {
		var e vector
		e[k] = 1
		solve(&a, n, &e)
		for l := k; l < n; l++ {
			c.cov[k][l] = e[l]
		}
	}
	return c, c.ready(n)
}
