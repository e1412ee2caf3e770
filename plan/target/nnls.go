package target

import "math"

// leastDistance finds the x of least length with g.x >= h for every row, by
// way of the nearest non-negative combination of the rows: the classical
// reduction, which is an active set and ends after finitely many steps. It
// returns the multipliers of the rows (above 0: the row binds) and false where
// no x, or only an absurdly long one, meets all rows.
//
// Source: Lawson and Hanson, Solving Least Squares Problems, 1974, ch. 23
// (problem LDP), from memory.
func leastDistance(g [][]float64, h []float64) (x, lambda []float64, ok bool) {
	if len(g) == 0 {
		return nil, nil, true
	}
	n := len(g[0])
	x, lambda = make([]float64, n), make([]float64, len(g))
	// Rows to unit length, then x to the size of the largest demand.
	scale := make([]float64, len(g))
	size := 0.
	for i, r := range g {
		for _, v := range r {
			scale[i] += v * v
		}
		scale[i] = math.Sqrt(scale[i])
		if scale[i] == 0 {
			if h[i] > 0 {
				return x, lambda, false
			}
			continue
		}
		size = math.Max(size, h[i]/scale[i])
	}
	if size <= 0 {
		return x, lambda, true
	}
	var cols [][]float64
	var of []int
	for i, r := range g {
		if scale[i] == 0 {
			continue
		}
		c := make([]float64, n+1)
		for k, v := range r {
			c[k] = v / scale[i]
		}
		c[n] = h[i] / scale[i] / size
		cols, of = append(cols, c), append(of, i)
	}
	f := make([]float64, n+1)
	f[n] = 1
	y := nonNegative(cols, f)
	r := make([]float64, n+1)
	for k := range r {
		r[k] = -f[k]
		for i, c := range cols {
			r[k] += c[k] * y[i]
		}
	}
	// -r[n] is the squared length of the residual, 1/(1 + |x|^2).
	if -r[n] < 1e-11 {
		return x, lambda, false
	}
	for k := range x {
		x[k] = -r[k] / r[n] * size
	}
	for i, v := range y {
		lambda[of[i]] = v / -r[n] * size / scale[of[i]]
	}
	return x, lambda, true
}

// nonNegative returns the y >= 0 that brings the combination of the columns
// nearest to f: the active-set method of Lawson and Hanson, ch. 23.
func nonNegative(cols [][]float64, f []float64) []float64 {
	y := make([]float64, len(cols))
	var in []int                      // columns in use
	barred := make([]bool, len(cols)) // until something changes: they add nothing
	res := append([]float64(nil), f...)
	for range 30 * (len(cols) + 1) {
		best, at := 1e-13, -1
		for i, c := range cols {
			if barred[i] || contains(in, i) {
				continue
			}
			if w := dot(c, res); w > best {
				best, at = w, i
			}
		}
		if at < 0 {
			return y
		}
		in = append(in, at)
		for len(in) > 0 {
			z, ok := solve(cols, in, f)
			if newest := len(in) - 1; !ok || in[newest] == at && y[at] == 0 && z[newest] <= 0 {
				barred[at] = true
				in = in[:newest]
				break
			}
			step, drop := 1., -1
			for k, i := range in {
				if z[k] <= 0 { // y[i] > 0 here
					if s := y[i] / (y[i] - z[k]); s < step || drop < 0 {
						step, drop = s, k
					}
				}
			}
			for k, i := range in {
				y[i] += step * (z[k] - y[i])
			}
			if drop < 0 {
				clear(barred)
				break
			}
			y[in[drop]] = 0
			in = append(in[:drop], in[drop+1:]...)
		}
		copy(res, f)
		for _, i := range in {
			for k, v := range cols[i] {
				res[k] -= y[i] * v
			}
		}
	}
	return y
}

func contains(s []int, v int) bool {
	for _, x := range s {
		if x == v {
			return true
		}
	}
	return false
}

func dot(a, b []float64) float64 {
	s := 0.
	for i := range a {
		s += a[i] * b[i]
	}
	return s
}

// solve is least squares over the chosen columns by modified Gram-Schmidt,
// twice over; false where they depend on each other.
func solve(cols [][]float64, in []int, f []float64) ([]float64, bool) {
	k := len(in)
	q := make([][]float64, k)
	r := make([][]float64, k)
	for j, i := range in {
		v := append([]float64(nil), cols[i]...)
		r[j] = make([]float64, k)
		full := math.Sqrt(dot(v, v))
		for range 2 {
			for l := range j {
				d := dot(q[l], v)
				r[l][j] += d
				for t := range v {
					v[t] -= d * q[l][t]
				}
			}
		}
		r[j][j] = math.Sqrt(dot(v, v))
		if r[j][j] < 1e-12*full {
			return nil, false
		}
		for t := range v {
			v[t] /= r[j][j]
		}
		q[j] = v
	}
	z := make([]float64, k)
	for j := k - 1; j >= 0; j-- {
		z[j] = dot(q[j], f)
		for l := j + 1; l < k; l++ {
			z[j] -= r[j][l] * z[l]
		}
		z[j] /= r[j][j]
	}
	return z, true
}
