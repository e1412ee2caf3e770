package odds

import (
	"math"
	"math/rand/v2"
	"testing"
)

// Two errors are both below nought in 1/4 + arcsin(rho)/(2 pi) of cases
// (Sheppard, 1899, as handbooks of statistics print it, from memory).
func TestBothBelowNought(t *testing.T) {
	for _, rho := range []float64{-0.95, -0.5, 0, 0.3, 0.8, 0.95} {
		got := Both([2]float64{-9, 0}, [2]float64{-9, 0}, rho)
		want := 0.25 + math.Asin(rho)/(2*math.Pi)
		if math.Abs(got-want) > 1e-6 {
			t.Errorf("rho %v: %v, want %v", rho, got, want)
		}
	}
}

// Against drawn errors, with limits on both sides.
func TestBothAgainstTrials(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	a, b := [2]float64{-1.2, 0.4}, [2]float64{-0.3, 2}
	for _, rho := range []float64{-0.7, 0.2, 0.9} {
		const n = 200000
		in := 0
		for range n {
			x, y := r.NormFloat64(), r.NormFloat64()
			y = rho*x + math.Sqrt(1-rho*rho)*y
			if x > a[0] && x < a[1] && y > b[0] && y < b[1] {
				in++
			}
		}
		if got, want := Both(a, b, rho), float64(in)/n; math.Abs(got-want) > 0.005 {
			t.Errorf("rho %v: %v, drawn %v", rho, got, want)
		}
	}
}

// Far out nothing is lost to rounding: the share above 6 is 9.8659e-10 (any
// table of the normal distribution).
func TestWithinFarOut(t *testing.T) {
	if got := Within(6, 40); math.Abs(got-9.865876e-10) > 1e-15 {
		t.Errorf("%v", got)
	}
	if Within(1, 1) != 0 || Within(2, 1) != 0 {
		t.Error("limits the wrong way round hold something")
	}
}
