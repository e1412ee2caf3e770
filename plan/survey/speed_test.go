package survey

import (
	"slices"
	"testing"

	"rebush/testdata"
)

// TestNoAllocation and a bound on the steps stand for the speed: on one core of
// a desk machine a lobe of 36 points takes about 45 microseconds, with the fan
// 100. The bounds are on the middle one of all worn bores with 36 points off by
// some error, and on the worst: a fit that ends on a kink takes several times
// the steps.
func TestNoAllocation(t *testing.T) {
	steps := map[string][]int{}
	for _, r := range testdata.Rows[row](t, "own/wornbores.csv") {
		if r["n"] != "36" || r.num(t, "noise_um") == 0 || r.num(t, "w") == 0 || r.num(t, "fan_half_deg") > 0 {
			continue
		}
		pts, rj, s := r.points(t), r.num(t, "r"), r.num(t, "noise_um")/1000
		side := r.num(t, "wear_side_hint_deg") * deg
		for name, fit := range map[string]func() (OutlineFit, error){
			"lobe":         func() (OutlineFit, error) { return fitLobe(pts, rj, s, side) },
			"lobe and fan": func() (OutlineFit, error) { return FitOutline(pts, rj, s, side) },
			"two lobes":    func() (OutlineFit, error) { return FitTwoLobes(pts, rj, s, [2]float64{side - 0.4, side + 0.4}) },
		} {
			var f OutlineFit
			var err error
			if n := testing.AllocsPerRun(3, func() { f, err = fit() }); n != 0 || err != nil {
				t.Errorf("%s: %s: %v allocations, %v", r["id"], name, n, err)
			}
			steps[name] = append(steps[name], f.Iter)
		}
	}
	for name, limit := range map[string][2]int{"lobe": {70, 600}, "lobe and fan": {160, 1000}, "two lobes": {300, 700}} {
		all := steps[name]
		slices.Sort(all)
		if len(all) < 30 {
			t.Fatalf("%s: only %d bores", name, len(all))
		}
		middle, worst := all[len(all)/2], all[len(all)-1]
		t.Logf("%s: %d steps, at worst %d", name, middle, worst)
		if middle > limit[0] || worst > limit[1] || all[0] < 5 {
			t.Errorf("%s: %d steps, at worst %d; want at most %v", name, middle, worst, limit)
		}
	}
}
