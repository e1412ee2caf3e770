package verdict

import (
	"math"
	"slices"

	"rebush/fits/finding"
	"rebush/fits/say"
)

// Result is the verdict.
type Result struct {
	Choice   Name          // of an option, or MeasureFirst or BuyFirst; Leave where nothing on the list cures
	Cures    bool          // whether the choice does
	Plans    map[Name]Name // of each way that cuts, the work whose plan it is
	Sentence say.Text      // to be read to an owner
	RunnerUp *RunnerUp
	Bores    []BoreWay
	Ways     []WayRow // in fixed order
	Needs    []Need
	Then     *Then
	Tried    []finding.Tried
	Findings finding.List
}

// Repairs says that the choice machines the truck.
func (r Result) Repairs() bool { return r.Cures && r.Choice.Cuts() }

// Decide weighs the case: a casting that is going or must not be cut ends it;
// else the least expected cost among the ways that are advisable; within
// Limits.Tie of it, the one that removes less metal, a swap last: it gives all
// of it away. Where none is, a swap if one is offered and wanted; else it is
// left, and that cures nothing. Without a rate the hours decide. Errors: figures
// that are none.
//
// Source: METHODS.md 3; the money is the shop's own.
func Decide(c Case) (Result, error) {
	if err := c.check(); err != nil {
		return Result{}, err
	}
	list := c.weigh()
	best, second := c.choose(list)
	r := Result{Choice: Leave, Ways: c.rows(list), Plans: map[Name]Name{}}
	for i, w := range list {
		if w.work == nil {
			continue
		}
		r.Plans[w.name] = w.work.Name
		if i == best {
			r.Bores = w.work.Mended
		}
	}
	if best >= 0 {
		r.Choice, r.Cures = list[best].name, list[best].cures
	}
	r.Bores = everyBore(c.Bores, r.Bores)
	if second >= 0 {
		r.RunnerUp = &RunnerUp{list[second].name, c.winsIf(list, best, second)}
	}
	r.Sentence = c.sentence(list, best, second)
	c.findings(&r.Findings, list, best)
	return r, nil
}

// rows are the ways with their figures as others see them.
func (c *Case) rows(list []weighed) []WayRow {
	out := make([]WayRow, len(list))
	for i, w := range list {
		out[i] = WayRow{Way: w.name, OK: w.ok, Cures: w.feasible(), WhyNot: w.whyNot,
			Cost: c.costOf(w), Hours: w.hours, FirstTimeRight: w.chance, Lost: w.lost, Loses: w.loses, Keeps: w.keeps,
			Bill: w.bill, Unpriced: sorted(w.unknown)}
		if w.whyNot != "" {
			out[i].WhyOwner = w.reason()
		}
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
// The runner-up is what would be chosen if the choice were not there; where it
// is left alone, what would be chosen if somebody complained; where a price
// cannot be set against hours, that is the question which is left open.
func (c *Case) choose(list []weighed) (best, second int) {
	best = c.pick(list)
	switch {
	case best < 0, !c.advisable(list[best]):
		return best, -1
	case list[best].name == Leave:
		return best, c.ifComplained()
	}
	second = c.pickOne(list, best)
	for i, w := range list {
		if i != best && w.unweighed && c.advisable(w) {
			second = i
		}
	}
	return best, second
}

// pick is the place of the choice, -1 where nothing cures: a swap that is not
// advisable is taken where nothing else is left.
func (c *Case) pick(list []weighed) int {
	if best := c.pickOne(list, -1); best >= 0 {
		return best
	}
	return slices.IndexFunc(list, func(w weighed) bool { return w.name == Swap && w.feasible() })
}

// ifComplained is the place of what would be chosen if it rubbed or somebody
// complained of it, -1 where it would be left all the same.
func (c *Case) ifComplained() int {
	t := *c
	t.Rubs = true
	list := t.weigh()
	if i := t.pick(list); i >= 0 && list[i].name != Leave {
		return i
	}
	return -1
}

func (c *Case) pickOne(list []weighed, without int) int {
	may := func(i int) bool {
		return i != without && c.advisable(list[i])
	}
	least := math.Inf(1)
	for i, w := range list {
		if may(i) {
			least = math.Min(least, w.cost)
		}
	}
	best := -1
	for i, w := range list {
		if !may(i) || w.cost > least*(1+c.Limits.Tie)+1e-9 {
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
