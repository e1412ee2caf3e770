package odds

import (
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

func TestPhiTable(t *testing.T) {
	// Table of the normal distribution, from memory.
	for _, c := range []struct{ z, p float64 }{{0, 0.5}, {1, 0.8413447}, {1.96, 0.9750021}, {-1.645, 0.0499849}, {3, 0.9986501}} {
		if got := Phi(c.z); math.Abs(got-c.p) > 5e-8 {
			t.Errorf("Phi(%v) = %.8f, want %.8f", c.z, got, c.p)
		}
	}
}

// Sums of even spreads alone are known exactly: one is a straight line, two
// equal ones a triangle, three a parabola (JCGM 101 calls the triangle).
func TestSumOfEvenSpreads(t *testing.T) {
	one := Sum{Mean: 2, Half: [4]float64{1}}
	tri := Sum{Half: [4]float64{1, 1}}
	three := Sum{Half: [4]float64{0.5, 0.5, 0.5}}
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"line", one.Inside(1.5, 3), 0.75},
		{"triangle, one half-width", tri.Inside(-1, 1), 0.75},
		{"three, middle piece", three.Inside(-0.5, 0.5), 2.0 / 3},
		{"three, all", three.Inside(-1.5, 1.5), 1},
		{"certain", Sum{Mean: 1}.Inside(0, 2), 1},
		{"impossible", Sum{Mean: 3}.Inside(0, 2), 0},
		{"empty window", one.Inside(3, 1), 0},
	} {
		if math.Abs(c.got-c.want) > 1e-12 {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
}

func TestSumAgainstTrials(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for _, s := range []Sum{
		{Sigma: 1, Half: [4]float64{2, 0.5}},
		{Mean: 1, Sigma: 0.2, Half: [4]float64{1, 1, 0.3, 0.1}},
		{Sigma: 1, Half: [4]float64{0.01}},
		{Half: [4]float64{5, 0.02}},
	} {
		lo, hi := s.Mean-0.7*s.U(), s.Mean+1.3*s.U()
		const n = 400000
		k := 0
		for range n {
			x := s.Mean + s.Sigma*r.NormFloat64()
			for _, a := range s.Half {
				x += a * (2*r.Float64() - 1)
			}
			if x > lo && x < hi {
				k++
			}
		}
		got, want := s.Inside(lo, hi), float64(k)/n
		if tol := 4 * math.Sqrt(want*(1-want)/n); math.Abs(got-want) > tol {
			t.Errorf("%+v: %.5f, trials %.5f +- %.5f", s, got, want, tol)
		}
	}
}

func TestSumProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Sum{Mean: rapid.Float64Range(-5, 5).Draw(t, "mean"), Sigma: rapid.Float64Range(0, 3).Draw(t, "sigma")}
		for i := range s.Half {
			s.Half[i] = rapid.Float64Range(0, 3).Draw(t, "half")
		}
		x, y := rapid.Float64Range(-20, 20).Draw(t, "x"), rapid.Float64Range(0, 5).Draw(t, "dx")
		if s.Below(x+y) < s.Below(x)-1e-9 {
			t.Fatalf("falls from %v to %v", x, x+y)
		}
		if a, b := s.Below(s.Mean+y), 1-s.Below(s.Mean-y); math.Abs(a-b) > 1e-9 && s.U() > 0 {
			t.Fatalf("not symmetric: %v and %v", a, b)
		}
	})
}

func TestWilson(t *testing.T) {
	// 81 of 263 at 95 %: 0.2553 to 0.3662 (R. G. Newcombe 1998, Stat. Med. 17:857-872, from memory).
	lo, hi := Wilson(81, 263, 1.959964)
	if math.Abs(lo-0.2553) > 5e-5 || math.Abs(hi-0.3662) > 5e-5 {
		t.Errorf("81 of 263: %.4f to %.4f", lo, hi)
	}
	// 0 of 20: 0 to 0.1611 (same).
	if lo, hi = Wilson(0, 20, 1.959964); lo != 0 || math.Abs(hi-0.1611) > 5e-5 {
		t.Errorf("0 of 20: %.4f to %.4f", lo, hi)
	}
	if lo, hi = Wilson(0, 0, 1.96); lo != 0 || hi != 1 {
		t.Errorf("nothing seen: %v to %v", lo, hi)
	}
}
