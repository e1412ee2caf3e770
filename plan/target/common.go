package target

// joint is the mean of two old centres a and b whose errors have the covariance X
// in common, with the inverse of its covariance: the best that is straight in both,
//
//	a - K (a - b),  K = (A - X)(A + B - X - X')^-1,  covariance A - K (A - X)'
//
// Source: Gauss and Markov's theorem for two readings; METHODS.md 1.
func (s Shaft) joint() (t Point, w Cov) {
	a, b := s.Bores[0], s.Bores[1]
	var rest, apart, k, c Cov
	for i := range 2 {
		for j := range 2 {
			rest[i][j] = a.Cov[i][j] - s.Cross[i][j]
			apart[i][j] = a.Cov[i][j] + b.Cov[i][j] - s.Cross[i][j] - s.Cross[j][i]
		}
	}
	inverse := weight(apart)
	for i := range 2 {
		for j := range 2 {
			k[i][j] = rest[i][0]*inverse[0][j] + rest[i][1]*inverse[1][j]
		}
	}
	for i := range 2 {
		t[i] = a.Original[i] - k[i][0]*(a.Original[0]-b.Original[0]) - k[i][1]*(a.Original[1]-b.Original[1])
		for j := range 2 {
			c[i][j] = a.Cov[i][j] - k[i][0]*rest[j][0] - k[i][1]*rest[j][1]
		}
	}
	c[0][1] = (c[0][1] + c[1][0]) / 2
	c[1][0] = c[0][1]
	return t, weight(c)
}

// common is the covariance, along n at one share of a shaft and along m at another,
// of what the errors of two bores that stay have in common.
func (s Shaft) common(n, m Point, share, other float64) float64 {
	if len(s.Bores) < 2 || !s.Bores[0].Fixed || !s.Bores[1].Fixed {
		return 0
	}
	x := func(n, m Point) float64 {
		return n[0]*(s.Cross[0][0]*m[0]+s.Cross[0][1]*m[1]) + n[1]*(s.Cross[1][0]*m[0]+s.Cross[1][1]*m[1])
	}
	return (1-share)*other*x(n, m) + share*(1-other)*x(m, n)
}
