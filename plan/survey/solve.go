package survey

import "math"

// A ridge keeps unknowns that no point tells of (a lobe inside the clearance)
// where they are.
const ridge = 1e-10

// floor returns the least value of an unknown.
func (o *outline) floor(i int) float64 {
	switch {
	case i == iR:
		return o.r
	case i == iD, o.shape != OneLobe && i == iFan:
		return 0
	}
	return math.Inf(-1)
}

func (o *outline) clamp(q *vector) {
	q[iR] = math.Max(q[iR], o.r)
	q[iD] = math.Max(q[iD], 0)
	if o.shape == Fan {
		q[iFan] = math.Min(math.Max(q[iFan], 0), widestFan)
	} else if o.shape == TwoLobes {
		q[iD2] = math.Max(q[iD2], 0)
	}
	if o.free > 0 {
		q[iTheta] = o.side + math.Min(math.Max(q[iTheta]-o.side, -o.free), o.free)
	}
}

// seed is a place to start from and, after some steps, where it has come to.
type seed struct {
	q      vector
	n      normal
	lambda float64
	steps  int
	done   bool
}

func (o *outline) begin(s *seed) {
	o.clamp(&s.q)
	s.lambda = 1e-3
	s.steps, s.done = 0, false
	o.eval(&s.q, &s.n)
}

// improve takes up to n Levenberg-Marquardt steps. Unknowns on a bound whose
// slope leads beyond it stand still.
func (o *outline) improve(s *seed, n int) {
	p := o.shape.unknowns()
	var trial seed
	var step vector
	for k := 0; k < n && !s.done; {
		if s.steps++; s.steps > 400 {
			s.done = true
			return
		}
		if !o.step(&s.q, &s.n, s.lambda, &step) {
			s.lambda = math.Max(s.lambda*10, 1e-6)
			if s.lambda > 1e12 {
				s.done = true
			}
			continue
		}
		var size float64
		for i := range p {
			trial.q[i] = s.q[i] + step[i]
		}
		o.clamp(&trial.q)
		for i := range p {
			size = math.Max(size, math.Abs(trial.q[i]-s.q[i]))
		}
		o.eval(&trial.q, &trial.n)
		if trial.n.ssq < s.n.ssq {
			gain := s.n.ssq - trial.n.ssq
			s.q, s.n = trial.q, trial.n
			s.lambda = math.Max(s.lambda/10, 1e-9)
			k++
			if gain < 1e-10*s.n.ssq || s.n.ssq < 1e-22 {
				s.done = true
			}
			continue
		}
		s.lambda *= 8
		if size < 1e-10 || s.lambda > 1e12 {
			s.done = true
		}
	}
}

// step solves (A + lambda diag A) step = -g with the bounds in mind.
func (o *outline) step(q *vector, m *normal, lambda float64, step *vector) bool {
	p := o.shape.unknowns()
	var a matrix
	var b vector
	for i := range p {
		held := q[i] <= o.floor(i) && m.g[i] > 0 ||
			o.shape == Fan && i == iFan && q[i] >= widestFan && m.g[i] < 0 ||
			o.free > 0 && i == iTheta && (q[i] >= o.side+o.free && m.g[i] < 0 || q[i] <= o.side-o.free && m.g[i] > 0)
		if held {
			a[i][i] = -1 // a mark
			continue
		}
		a[i][i] = m.a[i][i]*(1+lambda) + ridge
		b[i] = -m.g[i]
	}
	for i := range p {
		for j := i + 1; j < p; j++ {
			if a[i][i] > 0 && a[j][j] > 0 {
				a[i][j] = m.a[i][j]
			}
		}
	}
	for i := range p {
		if a[i][i] < 0 {
			a[i][i] = 1
		}
	}
	if !factor(&a, p) {
		return false
	}
	solve(&a, p, &b)
	*step = b
	return true
}

// factor turns the upper triangle of a positive matrix into U with U'U = A.
func factor(a *matrix, p int) bool {
	for i := range p {
		for j := i; j < p; j++ {
			v := a[i][j]
			for k := range i {
				v -= a[k][i] * a[k][j]
			}
			if i == j {
				if !(v > 0) {
					return false
				}
				a[i][i] = math.Sqrt(v)
			} else {
				a[i][j] = v / a[i][i]
			}
		}
	}
	return true
}

// solve replaces b by the solution of U'U x = b.
func solve(a *matrix, p int, b *vector) {
	for i := range p {
		for k := range i {
			b[i] -= a[k][i] * b[k]
		}
		b[i] /= a[i][i]
	}
	for i := p - 1; i >= 0; i-- {
		for k := i + 1; k < p; k++ {
			b[i] -= a[i][k] * b[k]
		}
		b[i] /= a[i][i]
	}
}
