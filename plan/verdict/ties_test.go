package verdict

import (
	"math"
	"testing"
)

// By hand: re-bush is 2.8333 h and 117.6952 (TestMoneyByHand), an axle 45 minutes and 6 on
// top of it: 3.5833 h, 117.6952 + 0.75 x 40 + 6 = 153.6952.
func TestNewAxleByHand(t *testing.T) {
	c := tram()
	c.Axles[0] = Axle{Name: "front axle", State: "bent", HasNew: true, Price: at(6), Minutes: 45}
	o := optionOf(t, decide(t, c), NewAxle)
	if math.Abs(*o.Hours-3.58333333) > 1e-6 || math.Abs(*o.Cost-153.695167) > 1e-4 || *o.Chance != *optionOf(t, decide(t, tram()), Rebush).Chance {
		t.Errorf("%v hours, %v, %v", *o.Hours, *o.Cost, *o.Chance)
	}
}

// Of two that take off the same metal the cheaper is chosen, of two that cost
// the same as well the one that is less grave.
func TestTies(t *testing.T) {
	of := func(name Name, gravity int, cost, metal float64) weighed {
		return weighed{option: option{name: name, gravity: gravity}, feasible: true, cost: cost, metal: metal}
	}
	for name, c := range map[string]struct {
		list []weighed
		want Name
	}{
		"dearer first":      {[]weighed{of("a", 0, 104, 1), of("b", 1, 100, 1)}, "b"},
		"grave first":       {[]weighed{of("a", 5, 100, 1), of("b", 1, 100, 1)}, "b"},
		"less metal":        {[]weighed{of("a", 0, 100, 1.2), of("b", 1, 110, 1)}, "b"},
		"beyond the tie":    {[]weighed{of("a", 0, 100, 1.2), of("b", 1, 110.1, 1)}, "a"},
		"all of it is last": {[]weighed{of("a", 0, 100, math.Inf(1)), of("b", 1, 110, 9)}, "b"},
	} {
		if best, _ := choose(c.list, 0.10); c.list[best].name != c.want {
			t.Errorf("%s: %s", name, c.list[best].name)
		}
	}
}

// No chance is said to be certain, and half of a per cent goes up.
func TestHundredths(t *testing.T) {
	for p, want := range map[float64]int{0.812: 81, 0.815: 82, 0.9949: 99, 0.996: 99, 1: 99, 0: 0} {
		if got := hundredths(p); got != want {
			t.Errorf("%v: %d, want %d", p, got, want)
		}
	}
}
