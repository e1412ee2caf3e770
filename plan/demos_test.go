package plan_test

import (
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/plan"
	"rebush/plan/job"
)

// wayOf is what each shipped job is there to show: whether it may be machined,
// and what is advised. A job that is not named here fails.
var wayOf = map[string]struct {
	ok     bool
	choice string
}{
	"pellinthwaite":       {true, "re-bush"},
	"gullwrack":           {true, "re-bush"},
	"gullwrack-swap":      {true, "swap"},
	"gullwrack-swollen":   {false, "swap"},
	"gullwrack-thin-edge": {false, "swap"},
	"wexmarrow":           {true, "re-bush"},
	"cragwinnow":          {true, "re-bush"},
	"cragwinnow-motor":    {true, "renew"},
	"plain":               {true, "re-bush"},
	"stepped":             {true, "re-bush"},
	"insulated":           {true, "re-bush"},
	"worm-moved":          {true, "re-bush"},
	"oil-way":             {true, "re-bush"},
	"mandrels":            {true, "re-bush"},
	"odd-reamer":          {true, "re-bush"},
	"renew":               {true, "renew"},
	"thin-edge":           {false, "swap"},
	"swap-value":          {true, "swap"},
}

// TestEveryJob plans every job of both folders, by its own name, and sees that
// it shows the way that it is there for.
func TestEveryJob(t *testing.T) {
	left := maps.Clone(wayOf)
	for _, f := range demos(t) {
		name := strings.TrimSuffix(filepath.Base(f), ".yaml")
		want, ok := left[name]
		if !ok {
			t.Errorf("%s: nobody says what it shows, or the name stands in both folders", f)
			continue
		}
		delete(left, name)
		p := cutPlan(t, f, plan.Options{Trials: 4096, Seed: 1})
		if p.OK != want.ok || p.Verdict == nil || string(p.Verdict.Choice) != want.choice {
			t.Errorf("%s: may be machined %v, verdict %+v; want %v and %q", name, p.OK, p.Verdict, want.ok, want.choice)
		}
		if p.OK && len(p.Operations) == 0 || !p.OK && len(p.Operations) != 0 {
			t.Errorf("%s: may be machined %v with %d operations", name, p.OK, len(p.Operations))
		}
	}
	for name := range left {
		t.Errorf("%s is not there", name)
	}
}

// The racers of one pier stand in one shop, and each stop is the one that its
// job is there to show.
func TestRacers(t *testing.T) {
	for name, rules := range map[string][]string{
		"gullwrack": nil, "gullwrack-swap": nil, "gullwrack-swollen": {"condition", "growth"}, "gullwrack-thin-edge": {"no seat"},
	} {
		p := makePlan(t, fileOf(t, name+".yaml"), plan.Options{NoChance: true})
		if got := filepath.Base(p.Job.Shop.File); got != "shop-gullwrack.yaml" {
			t.Errorf("%s: shop %s", name, got)
		}
		if got := stopsOf(p); !slices.Equal(got, rules) {
			t.Errorf("%s stops for %v, want %v", name, got, rules)
		}
	}
	thin := makePlan(t, fileOf(t, "gullwrack-thin-edge.yaml"), plan.Options{NoChance: true})
	if s := thin.Verdict.Sentence.String(); !strings.Contains(s, "fits the metal that is left") {
		t.Errorf("the owner is told: %s", s)
	}
	if f := saidOf(t, thin, "no seat", "driven axle.left"); !strings.Contains(strings.SplitN(f.Text.String(), "; ", 3)[1], "out of the edge") {
		t.Errorf("a bush that got as far as the edge is not named first: %s", f.Text)
	}
}

// stopsOf are the rules that forbid a plan, in order of name.
func stopsOf(p *plan.Plan) []string {
	var out []string
	for _, f := range p.Findings {
		if f.Level == finding.Stop {
			out = append(out, f.Rule.Name())
		}
	}
	slices.Sort(out)
	return out
}

// The seat of a bush that an earlier repair put off place is taken in by the
// new one. By hand: its middle lies 0.194 and 0.055 from the target, 0.201 in
// all, and with its radius of 3.505 a seat of at least 3.706 takes it in. On
// the faceplate both seats are cut in one clamping.
func TestSeatOffPlaceIsTakenIn(t *testing.T) {
	p := makePlan(t, fileOf(t, "cragwinnow.yaml"), plan.Options{NoChance: true})
	target, s := targetOf(t, p, "drum shaft.right"), seatOf(t, p, "drum shaft.right")
	nearXY(t, "target", target.TargetMM, 46.016, 14.935, 0.003)
	if r := s.SeatMM.Min.Float() / 2; r < 3.706 {
		t.Errorf("a seat of radius %.3f leaves some of the old one", r)
	}
	nearXY(t, "found", surveyed(t, p, "drum shaft.right").FoundMM, 46.21, 14.88, 1e-9)
	if play := surveyed(t, p, "drum shaft.right").PlayMM; play.Given() {
		t.Errorf("the bush is out, and there is a play of %s", play)
	}
}

// Bearings under a cap: nothing is cut, and every one is gauged before it goes
// in.
func TestMotorUnderCaps(t *testing.T) {
	j, err := job.Read(fileOf(t, "cragwinnow-motor.yaml"), job.Options{})
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Make(j, plan.Options{NoChance: true})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range p.Seats {
		// By hand: 6.015 less 5.992 to 6.000 (6 h6).
		near(t, s.Bore+" least slide", -*s.InterferenceUM.Max, 15, 0.01)
		near(t, s.Bore+" most slide", -*s.InterferenceUM.Min, 23, 0.01)
		if s.HeldBy != "cap" {
			t.Errorf("%s is held by %s", s.Bore, s.HeldBy)
		}
	}
	for _, kind := range []string{"locate", "open", "size seat", "chamfer"} {
		if n := len(ops(p, kind)); n != 0 {
			t.Errorf("%d operations of the kind %q where nothing is cut", n, kind)
		}
	}
	if n := len(ops(p, "press")); n != 2 {
		t.Errorf("%d bearings laid in, want 2", n)
	}
}
