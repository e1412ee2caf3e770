package verdict

import (
	"errors"
	"fmt"
	"math"

	"rebush/fits/finding"
)

// Result is the verdict.
type Result struct {
	Choice   string // the name of an option; Leave where nothing on the list cures
	Cures    bool   // whether the choice does
	Sentence string // to be read to an owner
	RunnerUp *RunnerUp
	Bores    []BoreWay
	Options  []Option // the eight in fixed order
	Findings finding.List
}

// gravity orders options that take off the same metal and cost the same: first
// the one that leaves more of the truck. A swap takes no metal off and would
// win every tie by that; it ranks last in ties, because it gives the whole
// truck away.
var gravity = map[string]int{Leave: 0, Shim: 1, Renew: 2, Rebush: 3, BushInABush: 4, Plug: 5, NewAxle: 6, Swap: 7}

// Decide weighs the case: least expected cost among the options that cure;
// within Limits.Tie of it, the one that removes less metal, a swap last: it
// gives all of it away. Without a rate the hours decide. Errors: figures that are none.
//
// Source: METHODS.md 3; the money is the shop's own.
func Decide(c Case) (Result, error) {
	if err := c.check(); err != nil {
		return Result{}, err
	}
	list := c.weigh()
	best, second := choose(list, c.Limits.Tie)
	if last := len(list) - 1; c.Rate == nil && best >= 0 && best != last && list[last].Feasible {
		second = last // unweighed, and the question that is left open
	}
	r := Result{Choice: Leave}
	for i := range list {
		list[i].Loses, list[i].Keeps = fate(list[i].Name)
		r.Options = append(r.Options, list[i].Option)
	}
	if best >= 0 {
		r.Choice, r.Cures, r.Bores = list[best].Name, true, list[best].ways
	}
	for i := range c.Bores {
		if way := r.way(c.Bores[i].Name); way == "" {
			r.Bores = append(r.Bores, BoreWay{c.Bores[i].Name, Leave})
		}
	}
	r.Bores = inOrder(c.Bores, r.Bores)
	if second >= 0 {
		r.RunnerUp = &RunnerUp{list[second].Name, c.winsIf(list, best, second)}
	}
	r.Sentence = c.sentence(list, best, second)
	c.say(&r.Findings, list, best)
	return r, nil
}

func (r *Result) way(bore string) string {
	for _, b := range r.Bores {
		if b.Bore == bore {
			return b.Way
		}
	}
	return ""
}

func inOrder(bores []Bore, ways []BoreWay) []BoreWay {
	r := Result{Bores: ways}
	var out []BoreWay
	for _, b := range bores {
		out = append(out, BoreWay{b.Name, r.way(b.Name)})
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
		if i != without && w.Feasible {
			least = math.Min(least, w.cost)
		}
	}
	best := -1
	for i, w := range list {
		if i == without || !w.Feasible || w.cost > least*(1+tie)+1e-9 {
			continue
		}
		if best < 0 || lessMetal(w, list[best]) {
			best = i
		}
	}
	return best
}

// lessMetal says whether a leaves more of the truck than b; the cheaper where
// both leave the same.
func lessMetal(a, b weighed) bool {
	if (a.Name == Swap) != (b.Name == Swap) {
		return b.Name == Swap
	}
	if math.Abs(a.metal-b.metal) > 1e-9 {
		return a.metal < b.metal
	}
	if math.Abs(a.cost-b.cost) > 1e-9 {
		return a.cost < b.cost
	}
	return gravity[a.Name] < gravity[b.Name]
}

// fate says what each option gives up and what it keeps.
func fate(name string) (loses, keeps []string) {
	switch name {
	case Leave:
		return []string{"nothing is cured"}, []string{"every part as it is", "every later choice"}
	case Shim:
		return []string{"nothing"}, []string{"every part as it is", "every later choice"}
	case Renew:
		return []string{"the old bearings"}, []string{"the factory's own holes", "the frame"}
	case Rebush:
		return []string{"the metal round the old holes"}, []string{"the frame", "the axles"}
	case BushInABush:
		return []string{"the inside of the old bearing, or the spoilt skin of its seat"}, []string{"the frame", "the original hole centres"}
	case Plug:
		return []string{"more metal than any other repair"}, []string{"the frame", "a free choice of centre"}
	case NewAxle:
		return []string{"the old axle", "the metal round the old holes"}, []string{"the frame"}
	default:
		return []string{"the original truck and its history"}, []string{"the old truck for spares"}
	}
}

func (c *Case) check() error {
	figures := []float64{c.SetupHours, c.StripHours, c.ShimMinutes, c.Limits.LeaveMM, c.Limits.LookAgainMM, c.Limits.Tie,
		c.Limits.ReworkMinutes, c.Limits.SpoiltMinutes, c.Limits.SecondHand}
	chances := []float64{c.Limits.SecondHand}
	add := func(p *float64) {
		if p != nil {
			figures = append(figures, *p)
		}
	}
	add(c.Rate)
	add(c.Value)
	for _, b := range c.Bores {
		figures = append(figures, b.PlayMM)
		for _, w := range b.Ways {
			figures = append(figures, w.Minutes, w.MetalMM)
			chances = append(chances, w.Chance)
			add(w.Bush)
		}
	}
	for _, a := range c.Axles {
		figures = append(figures, a.Minutes)
		add(a.Price)
	}
	for _, f := range c.Faults {
		figures = append(figures, f.Minutes)
		chances = append(chances, f.Chance)
		add(f.Bush)
	}
	if c.Other != nil {
		figures = append(figures, c.Other.Price, c.Other.Hours)
		if c.Other.Chance != nil {
			chances = append(chances, *c.Other.Chance)
		}
	}
	for _, v := range figures {
		if !(v >= 0) || math.IsInf(v, 1) {
			return fmt.Errorf("verdict: a price, a time or a size is %v; all are 0 or more", v)
		}
	}
	for _, p := range chances {
		if !(p >= 0 && p <= 1) {
			return fmt.Errorf("verdict: a chance of %v; one lies between 0 and 1", p)
		}
	}
	if len(c.Bores) == 0 {
		return errors.New("verdict: no bore")
	}
	return nil
}
