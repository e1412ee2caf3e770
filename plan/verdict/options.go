package verdict

import (
	"fmt"
	"strings"
)

func no(name, why string) weighed { return weighed{Option: Option{Name: name, WhyNot: why}} }

// complaint says in words what the owner would say, "" where nothing.
func (c *Case) complaint() string {
	var out []string
	for _, w := range []struct {
		yes  bool
		word string
	}{{c.Binds, "binds"}, {c.Noisy, "is noisy"}, {c.Rubs, "rubs"}} {
		if w.yes {
			out = append(out, w.word)
		}
	}
	return strings.Join(out, " and ")
}

// meshWrong names the first pair that does not run right as found.
func (c *Case) meshWrong() string {
	for _, m := range c.Meshes {
		if !m.Right {
			return strings.TrimSuffix(m.Name+": "+m.Words, ": ")
		}
	}
	return ""
}

// gearsRight says whether every pair is known to run right: with none, or with
// one whose gears were not measured, nobody knows.
func (c *Case) gearsRight() bool {
	for _, m := range c.Meshes {
		if !m.Known || !m.Right {
			return false
		}
	}
	return len(c.Meshes) > 0
}

// mayStay says why the bores cannot stay as they are, "" where they can.
// Little play stays where the gears mesh; between the two limits only where
// nothing is complained of.
func (c *Case) mayStay() string {
	name, play := c.worst()
	for _, b := range c.Bores {
		if !b.Fixed && b.Wrong != "" {
			return "cures nothing: " + b.Name + ": " + b.Wrong
		}
	}
	if m := c.meshWrong(); m != "" {
		return "cures nothing: " + m
	}
	switch said := c.complaint(); {
	case play > c.Limits.LookAgainMM+1e-9:
		return fmt.Sprintf("%s has %.2f mm of play, %.2f at most may stay", name, play, c.Limits.LookAgainMM)
	case play > c.Limits.LeaveMM+1e-9 && said != "":
		return fmt.Sprintf("it %s, and %s has %.2f mm of play", said, name, play)
	}
	return ""
}

// leave costs nothing and cures nothing.
func (c *Case) leave() weighed {
	if why := c.mayStay(); why != "" {
		return no(Leave, why)
	}
	if c.ShimFor != "" {
		return no(Leave, "cures nothing: "+c.ShimFor)
	}
	w := weighed{Option: Option{Name: Leave, Feasible: true}}
	w.set(c, 0, 0, 1)
	w.Chance = nil
	return w
}

// shim moves an axle or a gear along and touches no bore.
func (c *Case) shim() weighed {
	if c.ShimFor == "" {
		return no(Shim, "nothing is wrong that a washer alone would cure")
	}
	if c.mayStay() != "" {
		return no(Shim, "a washer cures no worn hole")
	}
	w := weighed{Option: Option{Name: Shim, Feasible: true}}
	hours := c.ShimMinutes/60 + c.StripHours
	w.set(c, hours, hours*c.rate(), 1)
	w.Chance = nil
	return w
}

// machining works out renew, re-bush, bush in a bush, plug and new axle too.
func (c *Case) machining() []weighed {
	names := []string{Renew, Rebush, BushInABush, Plug, NewAxle}
	out := make([]weighed, 0, len(names))
	if c.doomed() {
		for _, n := range names {
			out = append(out, no(n, "the casting is "+c.Condition+": no machining"))
		}
		return out
	}
	bores := c.needs()
	if len(bores) == 0 {
		for _, n := range names {
			out = append(out, no(n, "no bore needs it"))
		}
		return out
	}
	spoilt := c.badAxles(false)
	for _, n := range names[:4] {
		w := c.allOneWay(n, bores)
		if n == Rebush && w.Feasible && only(w.ways, Renew) {
			w = no(n, "the seats of the old bushes are sound: renewing them takes off nothing")
		}
		if w.Feasible && len(spoilt) > 0 {
			w = no(n, "the journal of "+spoilt[0].Name+" is "+spoilt[0].State+" and would eat the new bearings")
		}
		out = append(out, w)
	}
	return append(out, c.newAxle(bores, spoilt))
}

// allOneWay prices one way for every bore; Rebush takes the cheapest feasible
// way of each bore.
func (c *Case) allOneWay(name string, bores []*Bore) weighed {
	var picked []Way
	for _, b := range bores {
		w, why := c.pick(b, name)
		if why != "" {
			return no(name, b.Name+": "+why)
		}
		picked = append(picked, w)
	}
	var faults []Fault
	if name == Rebush || name == Renew {
		faults = c.Faults // the plan followed: where all can be renewed it renews
	}
	return c.job(name, picked, bores, faults)
}

// only says whether all bores go one way.
func only(ways []BoreWay, way string) bool {
	for _, w := range ways {
		if w.Way != way {
			return false
		}
	}
	return len(ways) > 0
}

// ownerWhy is why re-bush cannot be done, in words for an owner.
func (c *Case) ownerWhy(whyNot string) string {
	for _, b := range c.needs() {
		_, why := c.pick(b, Rebush)
		if why == "" {
			continue
		}
		for _, w := range b.Ways {
			if w.WhyNot == why && w.Owner != "" {
				return w.Owner
			}
		}
	}
	return whyNot
}

// pick finds the way of one bore, or says why there is none.
func (c *Case) pick(b *Bore, name string) (best Way, why string) {
	found := false
	for _, w := range b.Ways {
		switch {
		case name != Rebush && w.Name != name:
		case w.WhyNot != "":
			if why == "" || w.Name == name {
				why = w.WhyNot
			}
		case !found || c.wayCost(w) < c.wayCost(best)-1e-9:
			best, found = w, true
		}
	}
	if found {
		return best, ""
	}
	if why == "" {
		why = map[string]string{Renew: "no old bush in a sound seat", BushInABush: "there is no old bush to bore out", Plug: "not worked out"}[name]
		if why == "" {
			why = "no way was found"
		}
	}
	return Way{}, why
}

func (c *Case) badAxles(withNew bool) []Axle {
	var out []Axle
	for _, a := range c.Axles {
		if a.bad() && (!withNew || a.HasNew) {
			out = append(out, a)
		}
	}
	return out
}

// newAxle is Rebush with new axles where the old ones would eat the bearings.
func (c *Case) newAxle(bores []*Bore, bad []Axle) weighed {
	if len(bad) == 0 {
		return no(NewAxle, "no journal is pitted, ridged or bent")
	}
	if len(c.badAxles(true)) < len(bad) {
		for _, a := range bad {
			if !a.HasNew {
				return no(NewAxle, "no new axle for "+a.Name+" is offered")
			}
		}
	}
	w := c.allOneWay(Rebush, bores)
	w.Name = NewAxle
	if !w.Feasible {
		return w
	}
	hours, cost := *w.Hours, w.cost
	for _, a := range bad {
		hours += a.Minutes / 60
		cost += a.Minutes / 60 * c.rate()
		if a.Price == nil {
			w.unknown = append(w.unknown, "axle "+a.Name)
		} else if c.Rate != nil {
			cost += *a.Price
		}
	}
	w.set(c, hours, cost, *w.Chance)
	return w
}

// swap is another truck: a second-hand one is sound with a chance of its own,
// and one that is not is bought again: (price + time) (1 + (1 - c)).
func (c *Case) swap() weighed {
	switch {
	case c.Other == nil:
		return no(Swap, "no other truck is offered")
	case c.KeepOriginal:
		return no(Swap, "the owner keeps the original")
	}
	w := weighed{Option: Option{Name: Swap, Feasible: true}}
	if c.leave().Feasible {
		return no(Swap, "nothing is wrong that a swap would cure")
	}
	chance := c.swapChance()
	cost := c.Other.Hours * c.rate()
	if c.Rate != nil {
		cost += c.Other.Price
	}
	w.set(c, c.Other.Hours, cost*(2-chance), chance)
	if c.Rate == nil {
		w.cost = unweighed // its price cannot be set against hours: last of all
	}
	return w
}

// unweighed is a cost above every real one.
const unweighed = 1e12

func (c *Case) swapChance() float64 {
	switch {
	case !c.Other.SecondHand:
		return 1
	case c.Other.Chance != nil:
		return *c.Other.Chance
	}
	return c.Limits.SecondHand
}
