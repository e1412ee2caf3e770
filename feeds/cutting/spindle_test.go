package cutting

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestStep(t *testing.T) {
	five := []float64{520, 900, 1400, 2000, 2700} // invented set, typical in shape
	for _, k := range []struct {
		steps            []float64
		low, high, ideal float64
		want             Step
	}{
		{five, 0, 0, 1700, Step{RPM: 1400}},
		{five, 0, 0, 1400, Step{RPM: 1400}},
		{five, 0, 0, 1399.4, Step{RPM: 900}},
		{five, 0, 0, 1399.6, Step{RPM: 1400}}, // both are read as 1400
		{five, 0, 0, 2700.4, Step{RPM: 2700, AtTop: true}},
		{five, 0, 0, 300, Step{RPM: 520, TooFast: true}},
		{five, 0, 0, 14600, Step{RPM: 2700, AtTop: true}},
		{five, 0, 0, 2700, Step{RPM: 2700}},
		{[]float64{2000, 500, 1000}, 0, 0, 1100, Step{RPM: 1000}},
		{nil, 100, 2800, 1234, Step{RPM: 1234}},
		{nil, 100, 2800, 90, Step{RPM: 100, TooFast: true}},
		{nil, 100, 2800, 3000, Step{RPM: 2800, AtTop: true}},
		{nil, 0, 0, 3000, Step{RPM: 3000, Unknown: true}},
		{[]float64{-5, math.NaN()}, 0, 0, 30, Step{RPM: 30, Unknown: true}},
		{five, 0, 0, math.NaN(), Step{RPM: 520, TooFast: true}},
	} {
		if got := SetTo(k.steps, k.low, k.high, k.ideal); got != k.want {
			t.Errorf("%v %v-%v wanted %v: %+v, want %+v", k.steps, k.low, k.high, k.ideal, got, k.want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		steps := rapid.SliceOfN(rapid.Float64Range(50, 5000), 1, 16).Draw(t, "steps")
		ideal := rapid.Float64Range(1, 20000).Draw(t, "ideal")
		s := SetTo(steps, 0, 0, ideal)
		if (s.RPM > math.Max(ideal, math.Round(ideal))*(1+1e-8)) != s.TooFast {
			t.Fatalf("%v wanted %v: %+v", steps, ideal, s)
		}
		for _, other := range steps {
			if other <= ideal && other > s.RPM {
				t.Fatalf("%v is nearer to %v than %+v", other, ideal, s)
			}
		}
	})
}
