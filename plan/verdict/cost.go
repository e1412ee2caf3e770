package verdict

import "math"

// weighed is an option with what decides about it.
type weighed struct {
	Option
	cost    float64 // with the rate in force; without one: hours
	metal   float64 // mm on radius, all bores
	ways    []BoreWay
	unknown []string // prices that are not in the cost
}

// weigh works out the eight options in their fixed order.
func (c *Case) weigh() []weighed {
	m := c.machining()
	out := []weighed{c.leave(), c.shim()}
	out = append(out, m...)
	return append(out, c.swap())
}

// rate is the money per hour; without one an hour costs one, so that costs
// compare as hours do.
func (c *Case) rate() float64 {
	if c.Rate == nil {
		return 1
	}
	return *c.Rate
}

// needs lists the bores that have to be put right: those that are worn or
// wrong, and the other bore of the same axle.
//
// Source: bush both holes of an axle, not one: common practice, no source.
func (c *Case) needs() []*Bore {
	bad := func(b *Bore) bool { return !b.Fixed && (b.Wrong != "" || b.PlayMM > c.Limits.LeaveMM+1e-9) }
	axle := map[string]bool{}
	for i := range c.Bores {
		if b := &c.Bores[i]; bad(b) && b.Shaft != "" {
			axle[b.Shaft] = true
		}
	}
	var out []*Bore
	for i := range c.Bores {
		if b := &c.Bores[i]; bad(b) || !b.Fixed && axle[b.Shaft] {
			out = append(out, b)
		}
	}
	return out
}

// worst is the bore with the most play of those that may be touched.
func (c *Case) worst() (name string, play float64) {
	for _, b := range c.Bores {
		if !b.Fixed && b.PlayMM > play {
			name, play = b.Name, b.PlayMM
		}
	}
	return name, play
}

// loss is what a lost truck costs: the least of its value and another one.
func (c *Case) loss() (float64, bool) {
	loss := math.Inf(1)
	if c.Rate != nil && c.Other != nil {
		loss = c.Other.Price + c.Other.Hours**c.Rate
	}
	if c.Value != nil {
		loss = math.Min(loss, *c.Value)
	}
	return loss, !math.IsInf(loss, 1)
}

// FaultsOf gives the classes of a run of trials their minutes and their money:
// rework its minutes, a spoilt bush and another bush (larger or eccentric) the
// minutes of a spoilt one and a bush. bush is nil where no price is given.
//
// Source: METHODS.md 2.
func (l Limits) FaultsOf(rework, spoilt, another, lost float64, bush *float64) []Fault {
	return []Fault{
		{Name: "rework", Chance: rework, Minutes: l.ReworkMinutes},
		{Name: "spoilt bush", Chance: spoilt, Minutes: l.SpoiltMinutes, Bush: bush},
		{Name: "another bush", Chance: another, Minutes: l.SpoiltMinutes, Bush: bush},
		{Name: "lost", Chance: lost, Lost: true},
	}
}

// faults is the expected cost of what may go wrong with the plan followed.
func (c *Case) faults(list []Fault) float64 {
	sum := 0.0
	for _, f := range list {
		switch {
		case !f.Lost:
			sum += f.Chance * f.Minutes / 60 * c.rate()
			if f.Bush != nil && c.Rate != nil {
				sum += f.Chance * *f.Bush
			}
		case c.Rate != nil:
			if loss, known := c.loss(); known {
				sum += f.Chance * loss
			}
		}
	}
	return sum
}

// wayCost is what one way costs by itself, its clampings not shared: time,
// bush, and a bush spoilt as often as the way does not come right.
func (c *Case) wayCost(w Way) float64 {
	cost := (w.Minutes/60 + float64(len(w.Setups))*c.SetupHours + (1-w.Chance)*c.Limits.SpoiltMinutes/60) * c.rate()
	if w.Bush != nil && c.Rate != nil {
		cost += *w.Bush * (2 - w.Chance)
	}
	return cost
}

// job prices a set of ways, one per bore, with strip and rebuild. Clampings
// that ways share count once. Without faults from trials the chance of every
// bore is its own, and one that fails costs a spoilt bush.
func (c *Case) job(name string, picked []Way, bores []*Bore, faults []Fault) weighed {
	out := weighed{Option: Option{Name: name, Feasible: true}}
	setups := map[string]bool{}
	minutes, money, chance, spoilt := 0.0, 0.0, 1.0, 0.0
	for i, w := range picked {
		minutes += w.Minutes
		chance *= w.Chance
		out.metal += w.MetalMM
		spoilt += (1 - w.Chance) * c.Limits.SpoiltMinutes / 60 * c.rate()
		for _, s := range w.Setups {
			setups[s] = true
		}
		if w.Bush == nil {
			out.unknown = append(out.unknown, "bush of "+bores[i].Name)
		} else if c.Rate != nil {
			money += *w.Bush
			spoilt += (1 - w.Chance) * *w.Bush
		}
		out.ways = append(out.ways, BoreWay{bores[i].Name, w.Name})
	}
	if faults != nil {
		spoilt = c.faults(faults)
		chance = 1
		for _, f := range faults {
			chance -= f.Chance
		}
		chance = math.Max(0, chance)
	}
	hours := minutes/60 + float64(len(setups))*c.SetupHours + c.StripHours
	out.set(c, hours, hours*c.rate()+money+spoilt, chance)
	return out
}

func (w *weighed) set(c *Case, hours, cost, chance float64) {
	w.cost = cost
	w.Hours, w.Chance = &hours, &chance
	if c.Rate != nil {
		w.Cost = &cost
	}
}
