package plan_test

import (
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/plan"
)

// triedOf is a change that was tried beside a stop.
func triedOf(t *testing.T, p *plan.Plan, change string) finding.Tried {
	t.Helper()
	for _, f := range p.Findings {
		for _, d := range f.Tried {
			if f.Level == finding.Stop && strings.HasPrefix(d.Change.String(), change) {
				return d
			}
		}
	}
	t.Fatalf("%q was not tried\n%s", change, everything(p))
	return finding.Tried{}
}

// raw is the plan as it is printed when no way is asked for.
func (s situation) raw() *plan.Plan {
	s.t.Helper()
	j, err := s.read()
	if err != nil {
		s.t.Fatal(err)
	}
	p, err := plan.Make(j, plan.Options{Trials: 4096, Seed: 3})
	if err != nil {
		s.t.Fatal(err)
	}
	return p
}

// TestCuresAreFollowed: what stands beside a stop as a cure is the plan of the
// job with exactly that change: made by hand it takes the stop away, and the job
// comes right as often as was said.
func TestCuresAreFollowed(t *testing.T) {
	s := plain(t).add("complaint: {binds: yes, noisy: no, rubs: no}\n")
	bare := s.inShop("reamers: [{size: 5, class: H7}]", "reamers: []").inShop("boring_head: {from: 5, to: 20}\n", "").
		inShop("lathe: yes", "lathe: no")
	few := s.with("on_hand: 9", "on_hand: 1").inShop("lathe: yes", "lathe: no")
	for name, c := range map[string]struct {
		s      situation
		change string
		kind   string
		cost   float64
		by     situation
	}{
		"a reamer":      {bare, "a 5 mm H7 reamer", "buy", 0, bare.inShop("reamers: []", "reamers: [{size: 5, class: H7}]")},
		"one bush more": {few, "1 more of bush solid 5", "buy", 1, few.with("on_hand: 1", "on_hand: 2")},
	} {
		p := c.s.raw()
		if p.OK || p.Cuts || p.Verdict.Choice != "buy first" {
			t.Errorf("%s: ok %v, %s\n%s", name, p.OK, p.Verdict.Choice, everything(p))
			continue
		}
		d := triedOf(t, p, c.change)
		if d.OK == nil || !*d.OK || d.Kind != c.kind || c.cost > 0 && (d.Cost == nil || *d.Cost != c.cost) {
			t.Errorf("%s: %+v", name, d)
			continue
		}
		after := c.by.raw()
		if !after.OK || !after.Cuts {
			t.Errorf("%s: followed, and yet ok %v, %s\n%s", name, after.OK, after.Verdict.Choice, everything(after))
			continue
		}
		near(t, name, *d.FirstTimeRight, after.Chance.FirstTimeRight, 1e-9)
	}
}

// TestAskedForAndClosed: a mend that the job asks for and no hole is open to stops
// it by the line that asks, with the cure tried.
func TestAskedForAndClosed(t *testing.T) {
	p := plain(t).add("complaint: {binds: yes, noisy: no, rubs: no}\nway: renew\n").raw()
	if p.OK || p.Cuts {
		t.Errorf("ok %v, cuts %v", p.OK, p.Cuts)
	}
	f := saidOf(t, p, "way", "")
	if f.Level != finding.Stop || f.Line == 0 || !strings.Contains(f.Text.String(), "the job asks for renew, and drive.left: there is no seat") {
		t.Errorf("%+v", f)
	}
	if d := triedOf(t, p, "another mend"); d.OK == nil || !*d.OK || d.Kind != "mend" {
		t.Errorf("%+v", d)
	}
}
