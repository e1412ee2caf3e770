package plan

import (
	"math"
	"testing"

	"rebush/plan/chance"
	"rebush/plan/world"
)

// TestGainsComeTrue follows what is printed as what would help, in trucks of the
// world: the job with that one thing changed, planned the same way, comes right as
// often as was said.
func TestGainsComeTrue(t *testing.T) {
	o := Options{Trials: 1024, Seed: 3}
	dir := t.TempDir()
	n, levers := 0, map[changeKind]int{}
	for seed := range trucksHere() / 2 {
		j, err := world.Truck(seed+9000, world.Options{Shop: "read-out"}).Read(dir)
		if err != nil {
			continue // a truck whose readings contradict each other
		}
		p, err := Make(j, o)
		if err != nil {
			t.Fatal(err)
		}
		if p.Chance == nil {
			continue
		}
		w, c, err := ready(j, nil)
		if err != nil {
			t.Fatal(err)
		}
		of := tour(surveyedGround(w, c, j), chance.Settings{})
		s := of.named(p.Way)
		if s == nil {
			continue
		}
		known := map[string]change{}
		for _, c := range better(j, w, of.on.meshes.Drives, boredOf(of.on.survey.Holes, s.Target, s.Seats)) {
			known[c.priced(j.Shop.Currency).String()] = c
		}
		last := math.Inf(1)
		for _, g := range p.Chance.Improve {
			c, ok := known[g.Change.String()]
			if !ok || c.Do == nil {
				t.Errorf("truck %d: %q is no change that was tried", seed, g.Change)
				continue
			}
			edited := editable(j)
			if !c.Do(edited) {
				t.Errorf("truck %d: %q changes nothing", seed, g.Change)
				continue
			}
			after, err := Make(edited, Options{Trials: o.Trials, Seed: o.Seed, Way: p.Way})
			if err != nil {
				t.Fatal(err)
			}
			if after.Chance == nil || math.Abs(after.Chance.FirstTimeRight-g.FirstTimeRight) > 1e-9 {
				t.Errorf("truck %d, %q: said %.4f, came %+v", seed, g.Change, g.FirstTimeRight, after.Chance)
			}
			if g.Gain < leastGain-1e-9 || g.Gain > last {
				t.Errorf("truck %d, %q: a gain of %.4f after %.4f", seed, g.Change, g.Gain, last)
			}
			n, last = n+1, g.Gain
			levers[c.Kind]++
		}
	}
	t.Logf("%d gains followed: %v", n, levers)
	if n < 5 {
		t.Errorf("only %d gains were followed", n)
	}
}
