package survey

// crossed gives the bores of one shaft that lend each other what they know the
// covariance of their two errors.
func crossed(desk []bore, holes []Hole) {
	for i := range desk {
		for k := range desk[:i] {
			a, b := &desk[i], &desk[k]
			if a.hole.Shaft != b.hole.Shaft || !holes[i].Known || !holes[k].Known {
				continue
			}
			c := crossOf(a, b)
			holes[i].Cross, holes[k].Cross = c, transposed(c)
		}
	}
}

// crossOf is the covariance of the errors of two old centres of one shaft,
//
//	G_a C_a L_b' + L_a C_b G_b' - L_a D L_b'
//
// with C what each tells by itself and D what two drillings differ by, G by how
// much the own enters an old centre, and L by how much what is lent.
func crossOf(a, b *bore) [2][2]float64 {
	ownA, lentA := a.entering()
	ownB, lentB := b.entering()
	c := add2(times(times(ownA, a.sureCov()), transposed(lentB)), times(times(lentA, b.sureCov()), transposed(ownB)))
	d := a.Drilling.V * a.Drilling.V
	return add2(c, scale2(times(lentA, transposed(lentB)), -d))
}

// sureCov is the covariance of what a bore tells of itself, zero for nothing.
func (b *bore) sureCov() (c [2][2]float64) {
	if b.own != nil {
		c = b.own.Cov
	}
	return c
}

// entering is by how much its own evidence enters an old centre, and by how much
// the other plate's.
func (b *bore) entering() (own, lent [2][2]float64) {
	c := Combine(evidenceOf(b.heard))
	for i, h := range b.heard {
		switch h.Method {
		case ByOtherPlate:
			lent = add2(lent, c.Gains[i])
		case ByDrawing, BySister:
		default:
			own = add2(own, c.Gains[i])
		}
	}
	return own, lent
}

func times(a, b [2][2]float64) (c [2][2]float64) {
	for i := range c {
		for k := range c[i] {
			c[i][k] = a[i][0]*b[0][k] + a[i][1]*b[1][k]
		}
	}
	return c
}

func transposed(a [2][2]float64) [2][2]float64 {
	return [2][2]float64{{a[0][0], a[1][0]}, {a[0][1], a[1][1]}}
}
