package verdict

import (
	"math"
	"slices"
	"strings"

	"rebush/fits/say"
)

// option is one way that the job can go, as a value: what it is called, what
// it keeps and loses, how grave it is, what it costs and how it is advised.
type option struct {
	name    Name
	owner   string // what an owner calls it, to stand after "we advise"
	cuts    bool   // this truck is machined
	gravity int    // of two that cost the same and take off the same metal the lesser is chosen
	keeps   []say.Text
	loses   []say.Text

	// weigh works out what the whole truck costs that way, or why it cannot go
	// so.
	weigh func(c *Case) weighed

	// advise is what an owner is told where it is chosen; against is what the
	// second would cost, or nothing.
	advise func(c *Case, list []weighed, w weighed, against say.Text) say.Text
}

// options are all ways that a job can go, in the order in which they are
// printed.
func options() []option {
	return []option{
		{
			name: Leave, owner: "leaving it alone", gravity: 0,
			keeps: []say.Text{"every part as it is", "every later choice"}, loses: []say.Text{"what further wear takes"},
			weigh: (*Case).leave, advise: (*Case).adviseLeave,
		}, {
			name: Shim, owner: "a washer", gravity: 1,
			keeps: []say.Text{"every part as it is", "every later choice"}, loses: []say.Text{"nothing"},
			weigh: (*Case).shim, advise: (*Case).adviseShim,
		}, {
			name: Renew, owner: "new bearings in the old seats", cuts: true, gravity: 2,
			keeps: []say.Text{"the factory's own holes", "the frame"}, loses: []say.Text{"the old bearings"},
			weigh: planned(Renew), advise: (*Case).adviseWork,
		}, {
			name: Rebush, owner: "new bearings", cuts: true, gravity: 3,
			keeps: []say.Text{"the frame", "the axles"}, loses: []say.Text{"the metal round the old holes"},
			weigh: planned(Rebush), advise: (*Case).adviseWork,
		}, {
			name: MadeToFit, owner: "bearings turned to suit the holes", cuts: true, gravity: 4,
			keeps: []say.Text{"the frame", "all its metal"}, loses: []say.Text{"the old bearings"},
			weigh: planned(MadeToFit), advise: (*Case).adviseWork,
		}, {
			name: BushInABush, owner: "new bearings inside the old ones", cuts: true, gravity: 5,
			keeps: []say.Text{"the frame", "the original hole centres"},
			loses: []say.Text{"the inside of the old bearing, or the spoilt skin of its seat"},
			weigh: planned(BushInABush), advise: (*Case).adviseWork,
		}, {
			name: Plug, owner: "filling the holes and setting new bearings", cuts: true, gravity: 6,
			keeps: []say.Text{"the frame", "a free choice of centre"}, loses: []say.Text{"more metal than any other repair"},
			weigh: planned(Plug), advise: (*Case).adviseWork,
		}, {
			name: NewAxle, owner: "new bearings and a new axle", cuts: true, gravity: 7,
			keeps: []say.Text{"the frame"}, loses: []say.Text{"the old axle", "the metal round the old holes"},
			weigh: (*Case).newAxle, advise: (*Case).adviseWork,
		}, {
			name: Swap, owner: "another truck", gravity: 8,
			keeps: []say.Text{"the old truck for spares"}, loses: []say.Text{"the original truck and its history"},
			weigh: (*Case).swap, advise: (*Case).adviseSwap,
		},
	}
}

// weighed is a way with what decides about it.
type weighed struct {
	option
	ok        bool // can be done: a way that cuts is free of stops
	cures     bool // and what is the matter
	whyNot    say.Text
	hours     *float64   // planned; nil where it cannot be done
	chance    *float64   // of coming right first time; nil where nothing can go wrong, or nobody tried
	lost      *float64   // of losing the truck
	cost      float64    // expected, with the rate in force; without one: hours
	unweighed bool       // its price cannot be set against hours: last of all
	metal     float64    // mm on radius, all bores
	work      *Work      // whose plan it is, nil where nothing is cut
	bill      []Charge   // what the cost is made of
	unknown   []say.Text // prices that are not in the cost
}

// feasible says that a way can be gone and cures.
func (w weighed) feasible() bool { return w.ok && w.cures }

// advisable says that a way can be gone, cures, and is likely enough to come
// right. What was never tried is judged by the rest.
func (c *Case) advisable(w weighed) bool {
	return w.feasible() && (w.chance == nil || *w.chance >= c.Limits.AdviseLeast-1e-9) &&
		(w.lost == nil || *w.lost <= c.Limits.AdviseLost+1e-9)
}

// weigh works out all options in their order.
func (c *Case) weigh() []weighed {
	list := c.options()
	out := make([]weighed, len(list))
	for i, o := range list {
		out[i] = o.weigh(c)
		out[i].option = o
	}
	return out
}

// no is a way that cannot be gone.
func no(why say.Text) weighed { return weighed{whyNot: why} }

// yes is a way that can be gone and cures, for so many hours and so much money.
func yes(hours, cost float64) weighed {
	return weighed{ok: true, cures: true, hours: &hours, cost: cost}
}

// idle is a way that can be gone and cures nothing.
func (w weighed) idle(why say.Text) weighed {
	w.cures, w.whyNot = false, why
	return w
}

// leave costs nothing and cures nothing.
func (c *Case) leave() weighed {
	w := yes(0, 0)
	if why, wrong := c.mustGo(); wrong {
		return w.idle("cures nothing: " + why)
	} else if why != "" {
		return w.idle(why)
	}
	if c.ShimFor != "" {
		return w.idle("cures nothing: " + c.ShimFor)
	}
	return w
}

// shim moves an axle or a gear along and touches no bore.
func (c *Case) shim() weighed {
	if c.ShimFor == "" {
		return no("nothing is wrong that a washer alone would cure")
	}
	w := c.labour("labour", c.ShimMinutes/60+c.StripHours)
	if why, _ := c.mustGo(); why != "" {
		return w.idle("a washer cures no worn hole")
	}
	return w
}

// planned weighs a way that cuts by its own plan.
func planned(name Name) func(*Case) weighed {
	return func(c *Case) weighed {
		if c.doomed() {
			return no(c.noMachining())
		}
		for i := range c.Works {
			if w := &c.Works[i]; w.Name == name {
				return c.unspoilt(c.worked(w))
			}
		}
		return no("it was not planned")
	}
}

// noMachining says why a doomed casting is not cut.
func (c *Case) noMachining() say.Text { return say.F("the casting is %s: no machining", c.Condition) }

// unspoilt says of new bearings on a journal that would eat them that they cure
// nothing.
func (c *Case) unspoilt(w weighed) weighed {
	if bad := c.badAxles(); w.ok && len(bad) > 0 {
		return w.idle(say.F("the journal of %s is %s and would eat the new bearings", bad[0].Name, bad[0].State))
	}
	return w
}

// badAxles are the axles in new bearings whose journals would eat them, by name.
func (c *Case) badAxles() []Axle {
	turns := map[string]bool{}
	for _, b := range c.needs() {
		turns[b.Shaft] = true
	}
	var out []Axle
	for _, a := range c.Axles {
		if a.bad() && turns[a.Name] {
			out = append(out, a)
		}
	}
	slices.SortFunc(out, func(a, b Axle) int { return strings.Compare(a.Name, b.Name) })
	return out
}

// newAxle is the way that would be chosen of those that cut, with new axles
// where the old ones would eat the bearings.
func (c *Case) newAxle() weighed {
	if c.doomed() {
		return no(c.noMachining())
	}
	bad := c.badAxles()
	if len(bad) == 0 {
		return no("no journal of an axle that gets new bearings is pitted, ridged or bent")
	}
	for _, a := range bad {
		if !a.HasNew {
			return no(say.F("no new axle for %s is offered", a.Name))
		}
	}
	best := c.under()
	if !best.ok {
		return best
	}
	hours := *best.hours
	for _, a := range bad {
		more := a.Minutes / 60
		hours += more
		best.charge("axle labour", "labour on the new axle", &more, more*c.rate())
		if a.Price == nil {
			best.unknown = append(best.unknown, say.Words("axle "+a.Name))
		} else if c.Rate != nil {
			best.charge("axle", say.Words("axle "+a.Name), nil, *a.Price)
		}
	}
	best.hours = &hours
	return best
}

// under is the way that cuts on which new axles are put: that which would be
// chosen of them, else the cheapest that can be gone, else the nearest.
func (c *Case) under() weighed {
	var list []weighed
	for i := range c.Works {
		w := c.worked(&c.Works[i])
		w.option, _ = c.Works[i].Name.option()
		list = append(list, w)
	}
	if best := c.pickOne(list, -1); best >= 0 {
		return list[best]
	}
	if len(list) == 0 {
		return no("no way to new bearings was planned")
	}
	return slices.MinFunc(list, func(a, b weighed) int {
		switch {
		case a.ok != b.ok:
			return first(a.ok)
		case a.ok && math.Abs(a.cost-b.cost) > 1e-9:
			return first(a.cost < b.cost)
		case a.work.Near != b.work.Near:
			return first(a.work.Near)
		}
		return a.gravity - b.gravity
	})
}

// first is the order of two of which the one comes first.
func first(it bool) int {
	if it {
		return -1
	}
	return 1
}

// swap is another truck: a second-hand one is sound with a chance of its own,
// and one that is not is bought again: (price + time) (2 - c). It takes off no
// metal of this truck and gives all of it away.
func (c *Case) swap() weighed {
	switch {
	case c.Other == nil:
		return no("no other truck is offered")
	case c.KeepOriginal:
		return no("the owner keeps the original")
	}
	chance := c.swapChance()
	w := c.labour("labour to fit it", c.Other.Hours)
	if c.Rate != nil {
		w.charge("price", "its price", nil, c.Other.Price)
	}
	w.charge("unsound", say.F("laid by, since %v second-hand ones turn out unsound and are bought again", say.InHundred(1-chance)), nil,
		w.cost*(1-chance))
	w.chance, w.metal = &chance, math.Inf(1)
	if c.Rate == nil {
		w.cost, w.unweighed = math.Inf(1), true
	}
	if c.leave().cures || c.shim().cures {
		return w.idle("nothing is wrong that a swap would cure")
	}
	return w
}

func (c *Case) swapChance() float64 {
	switch {
	case !c.Other.SecondHand:
		return 1
	case c.Other.Chance != nil:
		return *c.Other.Chance
	}
	return c.Limits.SecondHand
}
