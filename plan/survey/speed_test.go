package survey

import "testing"

// TestNoAllocation and a bound on the steps stand for the speed: on one core of
// a desk machine a lobe of 36 points takes about 45 microseconds, with the fan
// 100.
func TestNoAllocation(t *testing.T) {
	pts, r, side := benchPoints(t)
	for name, fit := range map[string]func() (OutlineFit, error){
		"lobe":         func() (OutlineFit, error) { return FitLobe(pts, r, 0.005, side) },
		"lobe and fan": func() (OutlineFit, error) { return FitOutline(pts, r, 0.005, side) },
		"two lobes":    func() (OutlineFit, error) { return FitTwoLobes(pts, r, 0.005, [2]float64{side - 0.4, side + 0.4}) },
	} {
		var f OutlineFit
		var err error
		if n := testing.AllocsPerRun(20, func() { f, err = fit() }); n != 0 || err != nil {
			t.Errorf("%s: %v allocations, %v", name, n, err)
		}
		limit := map[string]int{"lobe": 70, "lobe and fan": 160, "two lobes": 200}[name]
		t.Logf("%s: %d steps", name, f.Iter)
		if f.Iter > limit || f.Iter < 5 {
			t.Errorf("%s: %d steps, at most %d", name, f.Iter, limit)
		}
	}
}
