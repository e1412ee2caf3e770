package verdict

import (
	"math"

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

	// hole is how one hole goes that way; nil where it is no way of a hole.
	// barren is said of a hole that has no such way.
	hole   func(h *Hole, f *Facts) Way
	barren say.Text
}

// options are all ways that a job can go, in the order in which they are
// printed.
func options() []option {
	return []option{
		{
			name: Leave, owner: "leaving it alone", gravity: 0,
			keeps: []say.Text{"every part as it is", "every later choice"}, loses: []say.Text{"nothing is cured"},
			weigh: (*Case).leave, advise: (*Case).adviseLeave,
		}, {
			name: Shim, owner: "a washer", gravity: 1,
			keeps: []say.Text{"every part as it is", "every later choice"}, loses: []say.Text{"nothing"},
			weigh: (*Case).shim, advise: (*Case).adviseShim,
		}, {
			name: Renew, owner: "new bearings in the old seats", cuts: true, gravity: 2,
			keeps: []say.Text{"the factory's own holes", "the frame"}, loses: []say.Text{"the old bearings"},
			weigh: everyHole(Renew, asPlanned), advise: (*Case).adviseWork,
			hole: (*Hole).renew, barren: "no old bush in a sound seat",
		}, {
			name: Rebush, owner: "new bearings", cuts: true, gravity: 3,
			keeps: []say.Text{"the frame", "the axles"}, loses: []say.Text{"the metal round the old holes"},
			weigh: (*Case).rebush, advise: (*Case).adviseWork,
			hole: (*Hole).rebush,
		}, {
			name: BushInABush, owner: "new bearings inside the old ones", cuts: true, gravity: 4,
			keeps: []say.Text{"the frame", "the original hole centres"},
			loses: []say.Text{"the inside of the old bearing, or the spoilt skin of its seat"},
			weigh: everyHole(BushInABush, byItself), advise: (*Case).adviseWork,
			hole: (*Hole).bushInABush, barren: "there is no old bush to bore out",
		}, {
			name: Plug, owner: "filling the holes and setting new bearings", cuts: true, gravity: 5,
			keeps: []say.Text{"the frame", "a free choice of centre"}, loses: []say.Text{"more metal than any other repair"},
			weigh: everyHole(Plug, byItself), advise: (*Case).adviseWork,
			hole: (*Hole).plug, barren: "not worked out",
		}, {
			name: NewAxle, owner: "new bearings and a new axle", cuts: true, gravity: 6,
			keeps: []say.Text{"the frame"}, loses: []say.Text{"the old axle", "the metal round the old holes"},
			weigh: (*Case).newAxle, advise: (*Case).adviseWork,
		}, {
			name: Swap, owner: "another truck", gravity: 7,
			keeps: []say.Text{"the old truck for spares"}, loses: []say.Text{"the original truck and its history"},
			weigh: (*Case).swap, advise: (*Case).adviseSwap,
		},
	}
}

// weighed is an option with what decides about it.
type weighed struct {
	option
	feasible  bool // can be done and cures what is the matter
	whyNot    say.Text
	hours     *float64 // planned; nil where it cannot be done
	chance    *float64 // of coming right first time; nil where nothing can go wrong
	cost      float64  // expected, with the rate in force; without one: hours
	unweighed bool     // its price cannot be set against hours: last of all
	metal     float64  // mm on radius, all bores
	ways      []BoreWay
	unknown   []string // prices that are not in the cost
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

func no(why say.Text) weighed { return weighed{whyNot: why} }

// yes is an option that can be done, for so many hours and so much money.
func yes(hours, cost float64) weighed { return weighed{feasible: true, hours: &hours, cost: cost} }

// leave costs nothing and cures nothing.
func (c *Case) leave() weighed {
	if why, wrong := c.mustGo(); wrong {
		return no("cures nothing: " + why)
	} else if why != "" {
		return no(why)
	}
	if c.ShimFor != "" {
		return no("cures nothing: " + c.ShimFor)
	}
	return yes(0, 0)
}

// shim moves an axle or a gear along and touches no bore.
func (c *Case) shim() weighed {
	if c.ShimFor == "" {
		return no("nothing is wrong that a washer alone would cure")
	}
	if why, _ := c.mustGo(); why != "" {
		return no("a washer cures no worn hole")
	}
	hours := c.ShimMinutes/60 + c.StripHours
	return yes(hours, hours*c.rate())
}

// What may go wrong with a way: what the trials of the plan say, where it is
// the plan's own, or the chance of each hole by itself.
const (
	asPlanned = true
	byItself  = false
)

// everyHole weighs one way for every hole that needs something.
func everyHole(name Name, planned bool) func(*Case) weighed {
	return func(c *Case) weighed {
		if planned {
			return c.unspoilt(c.every(name, c.Faults))
		}
		return c.unspoilt(c.every(name, nil))
	}
}

// rebush is the plan's own way; where all holes can be renewed, the plan
// renews.
func (c *Case) rebush() weighed {
	w := c.every(Rebush, c.Faults)
	if w.feasible && only(w.ways, Renew) {
		return no("the seats of the old bushes are sound: renewing them takes off nothing")
	}
	return c.unspoilt(w)
}

// only says whether all bores go one way.
func only(ways []BoreWay, way Name) bool {
	for _, w := range ways {
		if w.Way != way {
			return false
		}
	}
	return len(ways) > 0
}

// unspoilt rules out new bearings on a journal that would eat them.
func (c *Case) unspoilt(w weighed) weighed {
	if bad := c.badAxles(); w.feasible && len(bad) > 0 {
		return no(say.F("the journal of %s is %s and would eat the new bearings", bad[0].Name, bad[0].State))
	}
	return w
}

func (c *Case) badAxles() []Axle {
	var out []Axle
	for _, a := range c.Axles {
		if a.bad() {
			out = append(out, a)
		}
	}
	return out
}

// newAxle is re-bush with new axles where the old ones would eat the bearings.
func (c *Case) newAxle() weighed {
	if why := c.noCut(); why != "" {
		return no(why)
	}
	bad := c.badAxles()
	if len(bad) == 0 {
		return no("no journal is pitted, ridged or bent")
	}
	for _, a := range bad {
		if !a.HasNew {
			return no(say.F("no new axle for %s is offered", a.Name))
		}
	}
	w := c.every(Rebush, c.Faults)
	if !w.feasible {
		return w
	}
	hours, cost := *w.hours, w.cost
	for _, a := range bad {
		hours += a.Minutes / 60
		cost += a.Minutes / 60 * c.rate()
		if a.Price == nil {
			w.unknown = append(w.unknown, "axle "+a.Name)
		} else if c.Rate != nil {
			cost += *a.Price
		}
	}
	w.hours, w.cost = &hours, cost
	return w
}

// swap is another truck: a second-hand one is sound with a chance of its own,
// and one that is not is bought again: (price + time) (1 + (1 - c)). It takes
// off no metal of this truck and gives all of it away.
func (c *Case) swap() weighed {
	switch {
	case c.Other == nil:
		return no("no other truck is offered")
	case c.KeepOriginal:
		return no("the owner keeps the original")
	case c.leave().feasible:
		return no("nothing is wrong that a swap would cure")
	}
	chance := c.swapChance()
	cost := c.Other.Hours * c.rate()
	if c.Rate != nil {
		cost += c.Other.Price
	}
	w := yes(c.Other.Hours, cost*(2-chance))
	w.chance, w.metal = &chance, math.Inf(1)
	if c.Rate == nil {
		w.cost, w.unweighed = math.Inf(1), true
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
