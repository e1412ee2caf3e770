package chance

import "math"

// strays draws the error of an old centre, of one that shares in another's what it
// has beside that.
func (b *boreC) strays(at uint64, tab *tables) (x, y float64) {
	if !b.survey {
		return 0, 0
	}
	r := mix(at)
	z1, z2 := tab.normal(uint32(r)), tab.normal(uint32(r>>32))
	return float64(b.l11 * z1), float64(b.l21*z1) + float64(b.l22*z2)
}

// root makes the square root of a covariance ready.
func (b *boreC) root(c [3]float64) {
	b.survey, b.l11, b.l21, b.l22 = c[0] > 0 || c[2] > 0, 0, 0, 0
	b.l11 = math.Sqrt(math.Max(0, c[0]))
	if b.l11 > 0 {
		b.l21 = c[1] / b.l11
	}
	b.l22 = math.Sqrt(math.Max(0, c[2]-float64(b.l21*b.l21)))
}

// share makes the old centre of a right bore hang on that of the left one: with A
// and B the covariances of both and X = cov(right, left), its error is X A^-1 of
// the left one's and something of its own of covariance B - X A^-1 X'.
func (m *Model) share(c *compiled, i int) {
	b, s := &c.bores[i], &m.Bores[i].Survey
	b.from = -1
	left, _ := m.boresOf(m.Bores[i].Shaft)
	if !m.Bores[i].Right || left < 0 || s.Cross == [2][2]float64{} {
		return
	}
	a, x := m.Bores[left].Survey.Cov, s.Cross
	det := a[0]*a[2] - a[1]*a[1]
	if !(det > 0) {
		return
	}
	for k := range 2 {
		b.by[k] = [2]float64{grid((x[k][0]*a[2] - x[k][1]*a[1]) / det), grid((x[k][1]*a[0] - x[k][0]*a[1]) / det)}
	}
	less := func(k, l int) float64 { return float64(b.by[k][0]*x[l][0]) + float64(b.by[k][1]*x[l][1]) }
	b.from = left
	b.root([3]float64{s.Cov[0] - less(0, 0), s.Cov[1] - less(1, 0), s.Cov[2] - less(1, 1)})
}

// unshared leaves out what two bores have in common where the place of either is
// known in another way.
func (m *Model) unshared() {
	for i := range m.Bores {
		left, right := m.boresOf(m.Bores[i].Shaft)
		shares := func(at int) bool { return at >= 0 && m.Bores[at].Survey.Cross != [2][2]float64{} }
		if !shares(left) || !shares(right) {
			m.Bores[i].Survey.Cross = [2][2]float64{}
		}
	}
}

// crossed is half the covariance that the k-th bore of a pair that is not cut has
// along the line of centres with the other of its shaft, where that is not either.
func (m *Model) crossed(c *gearC, k int) (v float64) {
	b := &m.Bores[c.bore[k]]
	for l := range c.n {
		o := &m.Bores[c.bore[l]]
		if l != k && c.stays[l] && o.Shaft == b.Shaft {
			x := b.Survey.Cross
			v += c.wx[k]*(x[0][0]*c.wx[l]+x[0][1]*c.wy[l]) + c.wy[k]*(x[1][0]*c.wx[l]+x[1][1]*c.wy[l])
		}
	}
	return v
}

// rescale makes the error of an old centre k times as large, and what the other
// bore of its shaft has of it.
func (m *Model) rescale(i int, k float64) {
	for j := range m.Bores[i].Survey.Cov {
		m.Bores[i].Survey.Cov[j] *= k * k
	}
	left, right := m.boresOf(m.Bores[i].Shaft)
	for _, at := range []int{left, right} {
		if at < 0 {
			continue
		}
		for a := range 2 {
			for b := range 2 {
				m.Bores[at].Survey.Cross[a][b] *= k
			}
		}
	}
}
