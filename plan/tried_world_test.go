package plan

import (
	"math"
	"slices"
	"testing"

	"rebush/fits/finding"
	"rebush/plan/chance"
	"rebush/plan/job"
	"rebush/plan/verdict"
	"rebush/plan/world"
)

// TestTrucksAdviseWhatIsPlanned goes through trucks of the world: what is
// advised is a plan that was made, the best of them by what is printed; every
// printed cure, followed, takes its stop away and comes right as often as was
// said; and the order of the lists in job and shop decides nothing.
func TestTrucksAdviseWhatIsPlanned(t *testing.T) {
	cures, stops, repairs := 0, 0, 0
	o := Options{Trials: 1024, Seed: 3}
	dir := t.TempDir()
	for seed := range max(18, trucksHere()/3) {
		truck := world.Truck(seed+7000, world.Options{Complete: seed%2 == 0, Shop: [2]string{"read-out", ""}[seed%2]})
		j, err := truck.Read(dir)
		if err != nil {
			continue // a truck whose readings contradict each other
		}
		p, err := Make(j, o)
		if err != nil {
			t.Fatal(err)
		}
		consistent(t, seed, p)
		if p.Verdict.Choice.Cuts() {
			repairs++
		}
		stops += p.Findings.Count(finding.Stop)
		cures += followed(t, seed, j, p, o)
		other, err := truck.Shuffled(seed + 1).Read(dir)
		if err != nil {
			t.Fatal(err)
		}
		q, err := Make(other, o)
		if err != nil {
			t.Fatal(err)
		}
		alike(t, seed, p, q)
	}
	if cures < 5 || stops < 10 {
		t.Errorf("only %d cures of %d stops were followed, %d trucks repaired", cures, stops, repairs)
	}
	t.Logf("%d stops, %d cures followed, %d repairs", stops, cures, repairs)
}

// consistent holds verdict, way, operations and ok of a plan together.
func consistent(t *testing.T, seed uint64, p *Plan) {
	t.Helper()
	v, ok := p.Verdict, false
	for _, w := range p.Ways {
		ok = ok || w.OK && w.Way.Cuts()
	}
	if p.OK != ok && (p.OK || len(p.Targets) > 0 && slices.ContainsFunc(p.Ways, func(w verdict.WayRow) bool { return w.WhyNot == "" && w.Way.Cuts() })) {
		t.Errorf("truck %d: ok %v, and of its ways %v", seed, p.OK, ok)
	}
	if p.OK == p.Findings.Stops() {
		t.Errorf("truck %d: ok %v with %d stops", seed, p.OK, p.Findings.Count(finding.Stop))
	}
	if v.Choice.Cuts() != p.Cuts || p.Cuts != (len(p.Operations) > 0) || p.Cuts != (p.Chance != nil) || p.Cuts != (len(p.Seats) > 0) {
		t.Errorf("truck %d: %s, and cuts %v with %d operations, %d seats", seed, v.Choice, p.Cuts, len(p.Operations), len(p.Seats))
	}
	if first := v.Choice == verdict.BuyFirst || v.Choice == verdict.MeasureFirst; first != (len(v.Needs) > 0) {
		t.Errorf("truck %d: %s with %d needs", seed, v.Choice, len(v.Needs))
	}
	least := math.Inf(1)
	cost := map[verdict.Name]float64{}
	for _, w := range p.Ways {
		if w.OK && w.Cures && w.Cost != nil && (w.FirstTimeRight == nil || *w.FirstTimeRight >= 0.5) && (w.Lost == nil || *w.Lost <= 0.1) {
			cost[w.Way] = *w.Cost
			least = math.Min(least, *w.Cost)
		}
	}
	if c, known := cost[v.Choice]; known && c > 1.1*least+0.02 {
		t.Errorf("truck %d: %s at %v where %v would do", seed, v.Choice, c, least)
	} else if v.Choice.Cuts() && !known && p.Job.Shop.PerHour != nil {
		t.Errorf("truck %d: %s is advised and not advisable", seed, v.Choice)
	}
}

// followed plans a truck again with every printed cure made in its job.
func followed(t *testing.T, seed uint64, j *job.Job, p *Plan, o Options) (n int) {
	t.Helper()
	w, c, err := ready(j, nil)
	if err != nil {
		t.Fatal(err)
	}
	of := tour(surveyedGround(w, c, j), chance.Settings{})
	_, r, err := of.judged(nil)
	if err != nil {
		t.Fatal(err)
	}
	known := map[string]change{}
	for _, a := range of.tries(r, chance.Settings{}).list {
		known[a.Words.String()] = a.change
	}
	for _, f := range p.Findings {
		for _, d := range f.Tried {
			c, ok := known[d.Change.String()]
			if f.Level != finding.Stop || d.OK == nil || !*d.OK || !ok || len(c.Bought) > 0 {
				continue
			}
			edited := editable(j)
			if !c.in(edited) {
				t.Errorf("truck %d: %q changes nothing", seed, d.Change)
				continue
			}
			after, err := Make(edited, o)
			if err != nil {
				t.Fatal(err)
			}
			n++
			if !after.OK || slices.ContainsFunc(after.Findings, func(g finding.Finding) bool {
				return g.Level == finding.Stop && stopKey(g) == stopKey(f)
			}) {
				t.Errorf("truck %d: %q was followed, and %s at %s is still there", seed, d.Change, f.Rule.Name(), f.Where)
				continue
			}
			if d.FirstTimeRight != nil && !slices.ContainsFunc(after.Ways, func(w verdict.WayRow) bool {
				return w.FirstTimeRight != nil && math.Abs(*w.FirstTimeRight-*d.FirstTimeRight) < 1e-6
			}) {
				t.Errorf("truck %d: %q was said to give %v: %+v", seed, d.Change, *d.FirstTimeRight, after.Ways)
			}
		}
	}
	return n
}

// alike holds two plans of one truck together whose lists stand in another
// order.
func alike(t *testing.T, seed uint64, p, q *Plan) {
	t.Helper()
	if p.Way != q.Way || p.OK != q.OK || p.Verdict.Choice != q.Verdict.Choice {
		t.Errorf("truck %d: %s %v %s, shuffled %s %v %s", seed, p.Way, p.OK, p.Verdict.Choice, q.Way, q.OK, q.Verdict.Choice)
	}
	seats := map[string]Seat{}
	for _, s := range p.Seats {
		seats[s.Bore] = s
	}
	for _, s := range q.Seats {
		if of := seats[s.Bore]; of.Bush != s.Bush || of.Tool != s.Tool || of.Mend != s.Mend {
			t.Errorf("truck %d: %s gets %s by %s, shuffled %s by %s", seed, s.Bore, of.Bush, of.Tool, s.Bush, s.Tool)
		}
	}
	said := map[string]bool{}
	words := func(f finding.Finding) string {
		return string(f.Level) + f.Rule.Name() + f.Where + f.Text.String() + f.Fix.String()
	}
	for _, f := range p.Findings {
		said[words(f)] = true
	}
	for _, f := range q.Findings {
		if !said[words(f)] {
			t.Errorf("truck %d: shuffled it says of %s: %s | %s", seed, f.Where, f.Text, f.Fix)
		}
	}
}
