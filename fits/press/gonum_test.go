package press_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"

	"rebush/fits/press"
)

// TestMeanBySum: the mean tension round a hole beside a straight edge, summed up
// point by point by gonum. The tension at a point of the hole is 1 + 2 tan^2 of
// the angle between two lines from the nearest point of the edge, one to the
// hole's centre and one to the point (Jeffery 1921, Phil. Trans. A221; as given
// by Timoshenko and Goodier, from memory). The greatest is where the second line
// touches the hole.
func TestMeanBySum(t *testing.T) {
	for _, left := range []float64{0.1, 0.3, 0.5, 1, 2, 5} {
		k := 1 + left
		hoop := func(q float64) float64 {
			sin, cos := math.Sincos(q)
			tan := sin / (k - cos)
			return 1 + 2*tan*tan
		}
		f := press.Seat{D: 2, Wall: press.Edge{Ligament: left}}.Factors()
		mean := quad.Fixed(hoop, 0, math.Pi, 400, quad.Legendre{}, 0) / math.Pi
		if math.Abs(f.MeanHoop/mean-1) > 1e-9 {
			t.Errorf("metal left %v: mean %v, summed up %v", left, f.MeanHoop, mean)
		}
		if most := hoop(math.Acos(1 / k)); math.Abs(f.HoleMax/most-1) > 1e-12 {
			t.Errorf("metal left %v: greatest %v, at the tangent %v", left, f.HoleMax, most)
		}
	}
}

// TestFlowBySum: the pressure at which a bush flows by von Mises, without
// Nadai's parameter. Balance of a thin shell is dx/d(ln r) = h - x, x being the
// pressure and h the hoop's, and von Mises says x^2 - x h + h^2 = s^2; so the
// logarithm of outside over bore is the sum of 2/(sqrt(4 s^2 - 3 x^2) - x) up to
// that pressure.
func TestFlowBySum(t *testing.T) {
	const s = 80.0
	for _, bore := range []float64{2, 3, 4, 5, 5.7} {
		b := bush46(s)
		b.Di = bore
		shell := func(x float64) float64 { return 2 / (math.Sqrt(4*s*s-3*x*x) - x) }
		sum := quad.Fixed(shell, 0, b.FlowPressureMises(), 400, quad.Legendre{}, 0)
		if math.Abs(sum/math.Log(b.D/bore)-1) > 1e-9 {
			t.Errorf("bore %v: shells of %v in all, the wall is %v", bore, sum, math.Log(b.D/bore))
		}
	}
}
