package verdict

import "testing"

func at(v float64) *float64 { return &v }

var limits = Limits{LeaveMM: 0.08, LookAgainMM: 0.25, Tie: 0.10, ReworkMinutes: 10, SpoiltMinutes: 20, SecondHand: 0.8,
	AdviseLeast: 0.5, AdviseLost: 0.1}

// bushings are two bushes that go in.
func bushings(price *float64) []Part {
	return []Part{{Name: "bush of front axle.left", Price: price, Bush: true}, {Name: "bush of front axle.right", Price: price, Bush: true}}
}

// mended is what a way does at the two worn holes.
func mended(way Name) []BoreWay {
	return []BoreWay{{"front axle.left", way}, {"front axle.right", way}}
}

// tram is a job of two worn holes and one that is left alone, beside another
// truck at 65, with two ways that can be gone.
func tram() Case {
	return Case{
		Condition: "sound", Binds: true,
		Bores: []Bore{{Name: "front axle.left", Shaft: "front axle", PlayMM: 0.15}, {Name: "front axle.right", Shaft: "front axle", PlayMM: 0.13},
			{Name: "rear axle.left", Shaft: "rear axle", PlayMM: 0.04, Fixed: true}},
		Axles:  []Axle{{Name: "front axle", State: "good"}},
		Meshes: []Mesh{{Name: "front drive", Right: false, Known: true, OffMM: 0.10, Words: "0.10 mm too close"}},
		Works: []Work{
			{Name: Renew, WhyNot: "front axle.left: no old bush", Owner: "there is no bearing to renew"},
			{Name: Rebush, OK: true, Minutes: 80, Clampings: 1, Parts: bushings(at(0.85)), Mended: mended(Rebush), MetalMM: 0.9,
				Trials: &Trials{Right: 0.81, Rework: 0.10, Spoilt: 0.05, NextBush: 0.03, Lost: 0.01}},
			{Name: Plug, OK: true, Minutes: 160, Clampings: 2, Parts: bushings(at(0.85)), Mended: mended(Plug), MetalMM: 1.4,
				Trials: &Trials{Right: 0.90, Rework: 0.10}},
		},
		Rate: at(40), Currency: "USD", SetupHours: 0.5, StripHours: 1,
		Other: &Offer{Price: 65, Hours: 0.5, SecondHand: true}, Limits: limits,
	}
}

// work is a way of a case.
func (c *Case) work(name Name) *Work {
	for i := range c.Works {
		if c.Works[i].Name == name {
			return &c.Works[i]
		}
	}
	panic("no work " + string(name))
}

func decide(t *testing.T, c Case) Result {
	t.Helper()
	r, err := Decide(c)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func rowOf(t *testing.T, r Result, name Name) WayRow {
	t.Helper()
	for _, w := range r.Ways {
		if w.Way == name {
			return w
		}
	}
	t.Fatalf("no way %s", name)
	return WayRow{}
}

func has(r Result, rule string) bool {
	for _, f := range r.Findings {
		if f.Rule.Name() == rule {
			return true
		}
	}
	return false
}
