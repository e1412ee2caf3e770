package target

import "math"

// lower is the lower triangle L of a symmetric matrix L L'; false where it is not
// above nought in every direction.
//
// Source: Cholesky's way, which any handbook of numbers has.
func lower(m [][]float64) ([][]float64, bool) {
	l := make([][]float64, len(m))
	for i := range m {
		l[i] = make([]float64, len(m))
		for k := 0; k <= i; k++ {
			v := m[i][k] - dot(l[i][:k], l[k][:k])
			if k < i {
				l[i][k] = v / l[k][k]
				continue
			}
			if !(v > 0) || math.IsInf(v, 0) {
				return nil, false
			}
			l[i][i] = math.Sqrt(v)
		}
	}
	return l, true
}

// forward is the x of L x = b.
func forward(l [][]float64, b []float64) []float64 {
	x := make([]float64, len(b))
	for i := range b {
		x[i] = (b[i] - dot(l[i][:i], x[:i])) / l[i][i]
	}
	return x
}

// backward is the x of L' x = b.
func backward(l [][]float64, b []float64) []float64 {
	x := make([]float64, len(b))
	for i := len(b) - 1; i >= 0; i-- {
		v := b[i]
		for k := i + 1; k < len(b); k++ {
			v -= l[k][i] * x[k]
		}
		x[i] = v / l[i][i]
	}
	return x
}
