package plan_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"rebush/plan"
	"rebush/plan/verdict"
)

// TestVerdictsAgree: over all jobs what is advised follows from what is printed
// of the ways, and sheet and exit go by it.
func TestVerdictsAgree(t *testing.T) {
	for _, name := range demos(t) {
		for _, why := range disagrees(makePlan(t, name, plan.Options{Trials: 512, Seed: 1})) {
			t.Errorf("%s: %s", name, why)
		}
	}
}

// disagrees says where a plan contradicts itself: plan/verdict/METHODS.md 3 worked out again
// from the rows of its ways as they are printed, and the way that is printed set
// beside it.
func disagrees(p *plan.Plan) (out []string) {
	say := func(ok bool, format string, args ...any) {
		if !ok {
			out = append(out, fmt.Sprintf(format, args...)+": "+p.Verdict.Sentence.String())
		}
	}
	v, by := p.Verdict, map[verdict.Name]verdict.WayRow{}
	least, any := math.Inf(1), false
	for i, w := range p.Ways {
		by[w.Way] = w
		o := v.Options[i]
		say(o.Name == w.Way && o.Feasible == (w.OK && w.Cures) && o.WhyNot == w.WhyNot, "%s is printed as %+v", w.Way, o)
		if advisable(w) {
			any = true
			least = math.Min(least, weight(w))
		}
	}
	chosen := by[v.Choice]
	first := v.Choice == verdict.MeasureFirst || v.Choice == verdict.BuyFirst
	cuts := v.Choice.Cuts()
	switch {
	case first:
		say(!v.Cures && len(v.Needs) > 0 && p.Way == verdict.Leave, "%s, cures %v, needs %d, the sheet is of %s", v.Choice, v.Cures, len(v.Needs), p.Way)
		say(v.Choice == verdict.MeasureFirst || v.Then != nil, "%s for nothing", v.Choice)
	case any:
		say(v.Cures && advisable(chosen), "%s is chosen and is not advisable", v.Choice)
		say(weight(chosen) <= 1.1*least+0.02, "%s at %v, and %v is least", v.Choice, weight(chosen), least)
		say(v.Choice != verdict.Swap || !slices.ContainsFunc(p.Ways, func(w verdict.WayRow) bool {
			return w.Way.Cuts() && advisable(w) && weight(w) < 1.1*weight(chosen)-0.02
		}), "the original is given up for a tie")
	default:
		swap := by[verdict.Swap]
		say(v.Choice == verdict.Swap && v.Cures || v.Choice == verdict.Leave && !v.Cures && !(swap.OK && swap.Cures), "%s, cures %v, and nothing is advisable", v.Choice, v.Cures)
	}
	say(first || p.Way == v.Choice, "%s is chosen, and the sheet is of %s", v.Choice, p.Way)
	say(cuts == (len(p.Operations) > 0) && cuts == (len(p.Seats) > 0), "%s, with %d operations and %d seats", v.Choice, len(p.Operations), len(p.Seats))
	say(!cuts || p.OK, "%s is chosen and may not be machined", v.Choice)
	if p.Chance != nil && chosen.FirstTimeRight != nil {
		say(cuts && math.Abs(p.Chance.FirstTimeRight-*chosen.FirstTimeRight) < 1e-6, "a chance of %v beside %v", p.Chance.FirstTimeRight, *chosen.FirstTimeRight)
	}
	for _, w := range p.Ways {
		say(p.OK || !w.Way.Cuts() || !w.OK || w.Way == verdict.NewAxle, "%s may be machined, and the job may not", w.Way)
	}
	gravest := verdict.Leave
	for _, b := range v.Bores {
		if slices.Index(verdict.Names(), b.Way) > slices.Index(verdict.Names(), gravest) {
			gravest = b.Way
		}
	}
	say(!cuts && gravest == verdict.Leave || cuts && (gravest == v.Choice || v.Choice == verdict.NewAxle), "%s, and a hole is to be mended by %s", v.Choice, gravest)
	if r := v.RunnerUp; r != nil {
		say(r.Name != v.Choice && r.WinsIf != "" && (first || v.Choice == verdict.Leave || advisable(by[r.Name])), "%s is second", r.Name)
	}
	text := v.Sentence.String()
	say(!cuts || strings.Contains(text, "e advise "+v.Choice.Owner()), "%s is not what is advised in words", v.Choice)
	say(v.Choice != verdict.Swap || strings.Contains(text, "nother truck is the better way"), "a swap is not said")
	say(!first || strings.Contains(text, "First "), "what comes first is not said")
	say(v.Choice != verdict.Leave || v.Cures == !strings.Contains(text, "othing that we would advise"), "cures %v is not said", v.Cures)
	return out
}

// advisable is a way that can be gone, cures, and is likely enough to come right.
func advisable(w verdict.WayRow) bool {
	return w.OK && w.Cures && (w.FirstTimeRight == nil || *w.FirstTimeRight >= 0.5-1e-6) && (w.Lost == nil || *w.Lost <= 0.1+1e-6)
}

// weight is what a way is chosen by: its cost, or without a rate its hours, and
// another truck then last of all.
func weight(w verdict.WayRow) float64 {
	switch {
	case w.Cost != nil:
		return *w.Cost
	case w.Way == verdict.Swap || w.Hours == nil:
		return math.Inf(1)
	}
	return *w.Hours
}
