package verdict

import (
	"math"

	"rebush/fits/finding"
	"rebush/fits/say"
)

// Result is the verdict.
type Result struct {
	Choice   Name     // of an option; Leave where nothing on the list cures
	Cures    bool     // whether the choice does
	Sentence say.Text // to be read to an owner
	RunnerUp *RunnerUp
	Bores    []BoreWay
	Options  []Option // in fixed order
	Findings finding.List
}

// Decide weighs the case: least expected cost among the options that cure;
// within Limits.Tie of it, the one that removes less metal, a swap last: it
// gives all of it away. Without a rate the hours decide. Errors: figures that
// are none.
//
// Source: METHODS.md 3; the money is the shop's own.
func Decide(c Case) (Result, error) {
	if err := c.check(); err != nil {
		return Result{}, err
	}
	list := c.weigh()
	best, second := choose(list, c.Limits.Tie)
	for i, w := range list {
		if best >= 0 && i != best && w.feasible && w.unweighed {
			second = i // the question that is left open
		}
	}
	r := Result{Choice: Leave, Options: c.printed(list)}
	if best >= 0 {
		r.Choice, r.Cures, r.Bores = list[best].name, true, list[best].ways
	}
	r.Bores = everyBore(c.Bores, r.Bores)
	if second >= 0 {
		r.RunnerUp = &RunnerUp{list[second].name, c.winsIf(list, best, second)}
	}
	r.Sentence = c.sentence(list, best, second)
	c.findings(&r.Findings, list, best)
	return r, nil
}

// printed are the options with their figures as others see them.
func (c *Case) printed(list []weighed) []Option {
	out := make([]Option, len(list))
	for i, w := range list {
		out[i] = Option{Name: w.name, Feasible: w.feasible, WhyNot: w.whyNot,
			Cost: c.costOf(w), Hours: w.hours, Chance: w.chance, Loses: w.loses, Keeps: w.keeps}
	}
	return out
}

// costOf is the money of an option; nil without a rate, and of one that cannot
// be done.
func (c *Case) costOf(w weighed) *float64 {
	if c.Rate == nil || w.hours == nil {
		return nil
	}
	return &w.cost
}

// everyBore gives every bore its way, in the order of the job: those that the
// choice does not touch are left.
func everyBore(bores []Bore, chosen []BoreWay) []BoreWay {
	way := map[string]Name{}
	for _, b := range chosen {
		way[b.Bore] = b.Way
	}
	var out []BoreWay
	for _, b := range bores {
		w, ok := way[b.Name]
		if !ok {
			w = Leave
		}
		out = append(out, BoreWay{b.Name, w})
	}
	return out
}

// choose returns the places of the choice and of the runner-up, -1 for none.
// The runner-up is what would be chosen if the choice were not there.
func choose(list []weighed, tie float64) (best, second int) {
	best = pickOne(list, tie, -1)
	if best < 0 {
		return -1, -1
	}
	return best, pickOne(list, tie, best)
}

func pickOne(list []weighed, tie float64, without int) int {
	least := math.Inf(1)
	for i, w := range list {
		if i != without && w.feasible {
			least = math.Min(least, w.cost)
		}
	}
	best := -1
	for i, w := range list {
		if i == without || !w.feasible || w.cost > least*(1+tie)+1e-9 {
			continue
		}
		if best < 0 || lessMetal(w, list[best]) {
			best = i
		}
	}
	return best
}

// lessMetal says whether a leaves more of the truck than b; the cheaper where
// both leave the same, then the less grave.
func lessMetal(a, b weighed) bool {
	if math.Abs(a.metal-b.metal) > 1e-9 {
		return a.metal < b.metal
	}
	if math.Abs(a.cost-b.cost) > 1e-9 {
		return a.cost < b.cost
	}
	return a.gravity < b.gravity
}
