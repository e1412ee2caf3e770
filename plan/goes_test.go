package plan_test

import (
	"testing"

	"rebush/plan"
	"rebush/plan/verdict"
)

// TestGoes: what comes first is what a plan goes by, where no other way was
// asked for; else its way; and where neither was filled the choice.
func TestGoes(t *testing.T) {
	for _, c := range []struct {
		p    plan.Plan
		want verdict.Name
	}{
		{plan.Plan{Way: verdict.Leave, Advised: verdict.MeasureFirst}, verdict.MeasureFirst},
		{plan.Plan{Way: verdict.Leave, Advised: verdict.BuyFirst}, verdict.BuyFirst},
		{plan.Plan{Way: verdict.Leave, Advised: verdict.MeasureFirst, NotAdvised: "measure first"}, verdict.Leave},
		{plan.Plan{Way: verdict.Plug, Advised: verdict.Swap, NotAdvised: "dearer"}, verdict.Plug},
		{plan.Plan{Way: verdict.Rebush, Advised: verdict.Rebush}, verdict.Rebush},
		{plan.Plan{Verdict: &plan.Verdict{Choice: verdict.Swap}}, verdict.Swap},
		{plan.Plan{}, ""},
	} {
		if got := c.p.Goes(); got != c.want {
			t.Errorf("%+v goes by %q, want %q", c.p, got, c.want)
		}
	}
}
