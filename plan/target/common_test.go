package target

import (
	"math"
	"testing"
)

// Two old centres known to 0.02 each, whose errors have half of that in common: the
// mean is the middle, and its variance 0.02^2 (1 + 0.5)/2 = 0.0003, u 0.01732 and
// not 0.01414. Of one known to 0.03 and one to 0.02 with 0.0001 in common the first
// counts (4 - 1)/(9 + 4 - 2) = 3/11, and the variance is (36 - 1)/11 x 0.0001 =
// 0.000318182. With nothing in common both are as they were.
func TestMeanOfCommonErrors(t *testing.T) {
	two := func(u, v, common float64) Shaft {
		return Shaft{Name: "axle", Cross: Cov{{common, 0}, {0, common}}, Bores: []Bore{
			{Original: Point{10, 6}, Cov: Round(u)}, {Original: Point{10.11, 6.22}, Cov: Round(v)}}}
	}
	for _, c := range []struct{ u, v, common, x, y, variance float64 }{
		{0.02, 0.02, 0.0002, 10.055, 6.11, 0.0003},
		{0.03, 0.02, 0.0001, 10.08, 6.16, 0.000318182},
		{0.02, 0.02, 0, 10.055, 6.11, 0.0002},
	} {
		m, w := two(c.u, c.v, c.common).mean()
		near(t, "x", m[0], c.x, 1e-9)
		near(t, "y", m[1], c.y, 1e-9)
		near(t, "variance", 1/w[1][1], c.variance, 1e-9)
	}
	same := two(0.02, 0.02, 0.0004) // all in common: one reading
	_, w := same.mean()
	near(t, "no surer than one", 1/w[0][0], 0.0004, 1e-9)
	if m, _ := same.mean(); math.IsNaN(m[0]) || m[0] < 10 || m[0] > 10.11 {
		t.Errorf("mean %v", m)
	}
}

// A shaft that stays in both its holes: in the middle, with 0.02 each, half the
// variance of one, 0.0002; with 0.0002 in common half of that more, 0.0003.
func TestCommonErrorsOfBoresThatStay(t *testing.T) {
	s := Shaft{Bores: []Bore{{Cov: Round(0.02), Fixed: true}, {Cov: Round(0.02), Fixed: true}}}
	near(t, "apart", s.doubt(Point{0, 1}, 0.5), 0.0002, 1e-12)
	s.Cross = Cov{{0.0002, 0}, {0, 0.0002}}
	near(t, "in common", s.doubt(Point{0, 1}, 0.5), 0.0003, 1e-12)
	near(t, "at the left bore", s.doubt(Point{0, 1}, 0), 0.0004, 1e-12)
	s.Bores[1].Fixed = false
	near(t, "one is cut", s.doubt(Point{0, 1}, 0.5), 0.0001, 1e-12)
}
