package inspect

import (
	"math"
	"strings"
	"testing"
)

// drive is a mesh whose wheel runs half way between two holes under a mate 12
// above: its distance is 12 less the mean height of both. It may be 11.96 to
// 12.06.
func drive() Check {
	return Check{Name: "drive", Holes: []int{0, 1}, Low: 11.96, High: 12.06,
		Figure: func(at [][2]float64) float64 { return 12 - (at[0][1]+at[1][1])/2 }}
}

// square is how unlike both holes stand along the truck, 0.02 at the most.
func square() Check {
	return Check{Name: "lean", Holes: []int{0, 1}, Low: math.Inf(-1), High: 0.02,
		Figure: func(at [][2]float64) float64 { return math.Abs(at[0][0] - at[1][0]) }}
}

func sites(a, b [2]float64) []Site {
	return []Site{{Name: "a.left", At: a, UMM: 0.003, Gauged: true}, {Name: "a.right", At: b, UMM: 0.003, Gauged: true}}
}

func placed(t *testing.T, a, b [2]float64, checks ...Check) []Row {
	t.Helper()
	rows, err := Places(sites(a, b), checks, shop, func(string) Hole { return reamed() })
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

// Holes that are each half right are wrong together: 0.03 towards the mate by
// one hole alone leaves 11.985, inside; by both 11.97, which is 0.01 inside, by
// both 0.05 11.95, 0.01 outside. The guard is 1.65 x 0.003 / root 2 = 0.0035.
func TestHolesTogether(t *testing.T) {
	for _, c := range []struct {
		left, right float64
		want        [2]Result
	}{
		{0, 0, [2]Result{Accept, Accept}},
		{0.03, 0, [2]Result{Accept, Accept}},
		{0.03, 0.03, [2]Result{Accept, Accept}},
		{0.038, 0.038, [2]Result{CannotTell, CannotTell}},
		{0.05, 0.05, [2]Result{Reject, Reject}},
		{0.10, 0, [2]Result{Reject, Accept}}, // the other stands where it belongs
		{-0.08, -0.08, [2]Result{Reject, Reject}},
	} {
		rows := placed(t, [2]float64{0, c.left}, [2]float64{0, c.right}, drive(), square())
		for i, r := range rows {
			if r.Result != c.want[i] || r.What != Place || len(r.By) != 2 {
				t.Errorf("%v and %v: %s is %s, want %s: %+v", c.left, c.right, r.Bore, r.Result, c.want[i], r.By)
			}
		}
		if got := rows[0].By[0].MadeMM.Float(); math.Abs(got-(12-(c.left+c.right)/2)) > 1e-9 {
			t.Errorf("distance %v", got)
		}
	}
	rows := placed(t, [2]float64{0.05, 0}, [2]float64{0, 0}, drive(), square())
	if rows[0].Result != Reject || rows[1].Result != Accept || !rows[0].By[1].Decides || rows[1].By[1].Decides {
		t.Errorf("a leaning shaft: %+v", rows)
	}
}

// Towards the mate a hole by itself may go 0.08, till the mean of both has gone
// 0.04; its guard that way is 1.65 x 0.003 / root 2 of the distance, twice that
// of the hole: 0.007. The other way 0.12.
func TestHowFarAPlaceMayBe(t *testing.T) {
	r := placed(t, [2]float64{0, 0.01}, [2]float64{0, 0}, drive())[0]
	if r.LimitsMM.Min.Float() != 0 || math.Abs(r.LimitsMM.Max.Float()-0.08) > 1.1e-3 || math.Abs(*r.GuardUM-7) > 0.3 ||
		r.ToolLimitsMM.Max.Float() != 0.03 {
		t.Errorf("%v, guard %v", r.LimitsMM, *r.GuardUM)
	}
	if r = placed(t, [2]float64{0, -0.01}, [2]float64{0, 0}, drive())[0]; math.Abs(r.LimitsMM.Max.Float()-0.12) > 1.1e-3 {
		t.Errorf("%v", r.LimitsMM)
	}
	// With the other 0.02 too low it works from the start to 0.10 up.
	if r = placed(t, [2]float64{0, 0.01}, [2]float64{0, -0.02}, drive())[0]; math.Abs(r.LimitsMM.Max.Float()-0.10) > 1.1e-3 {
		t.Errorf("%v", r.LimitsMM)
	}
	// On its target the least way counts, and one that is rejected counts at its own.
	r = placed(t, [2]float64{0, 0}, [2]float64{0, 0.2}, drive())[0]
	if r.Result != Accept || math.Abs(r.LimitsMM.Max.Float()-0.08) > 1.1e-3 {
		t.Errorf("%s %v", r.Result, r.LimitsMM)
	}
}

// The doubt of the gears is that of the plan: it does not count against a hole
// that stands where the plan wants it, but one that its gauge knows to be off
// cannot be told any more.
func TestDoubtOfThePlan(t *testing.T) {
	c := drive()
	c.UMM, c.Try = 0.03, "try the mesh"
	for off, want := range map[float64]Result{0: Accept, 0.002: Accept, 0.02: CannotTell, 0.2: Reject} {
		r := placed(t, [2]float64{0, off}, [2]float64{0, off}, c)[0]
		if r.Result != want || r.By[0].Result == Accept {
			t.Errorf("%v: %s, by %+v", off, r.Result, r.By)
		}
		if want == CannotTell && onwards(r) != "try the mesh []" {
			t.Errorf("%v: %s", off, onwards(r))
		}
	}
	c.Tells = true
	if r := placed(t, [2]float64{0, 0.2}, [2]float64{0, 0.2}, c)[0]; r.Result != Accept || r.By[0].Decides {
		t.Errorf("a mesh that is not trusted refuses a place: %+v", r)
	}
}

// A place that is not gauged counts with its own doubt and gets no row.
func TestUngauged(t *testing.T) {
	s := sites([2]float64{0, 0.03}, [2]float64{})
	s[1].Gauged, s[1].UMM = false, 0.03
	rows, err := Places(s, []Check{drive()}, shop, func(string) Hole { return reamed() })
	if err != nil || len(rows) != 1 || rows[0].Bore != "a.left" {
		t.Fatalf("%+v %v", rows, err)
	}
	if want := 1000 * 1.65 * math.Hypot(0.003, 0.03) / 2; math.Abs(*rows[0].By[0].GuardUM-want) > 1e-6 {
		t.Errorf("guard %v, by hand %v", *rows[0].By[0].GuardUM, want)
	}
	// 0.015 inside, where the other hole alone brings a guard of 0.0248.
	s[0].At[1] = 0.05
	rows, _ = Places(s, []Check{drive()}, shop, func(string) Hole { return reamed() })
	if rows[0].Result != CannotTell || !strings.HasPrefix(onwards(rows[0]), "gauge the place of a.right too") {
		t.Errorf("%s: %s", rows[0].Result, onwards(rows[0]))
	}
}
