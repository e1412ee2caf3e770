package verdict

import (
	"math"

	"rebush/fits/say"
)

// rate is the money per hour; without one an hour costs one, so that costs
// compare as hours do.
func (c *Case) rate() float64 {
	if c.Rate == nil {
		return 1
	}
	return *c.Rate
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

// spoilt is what the chance of a way not to come right costs by itself: a
// spoilt bush and its minutes.
func (c *Case) spoilt(w Way) float64 {
	cost := (1 - w.Chance) * c.Limits.SpoiltMinutes / 60 * c.rate()
	if w.Bush != nil && c.Rate != nil {
		cost += (1 - w.Chance) * *w.Bush
	}
	return cost
}

// wayCost is what one way costs by itself, its clampings not shared: time,
// bush, and a bush spoilt as often as the way does not come right.
func (c *Case) wayCost(w Way) float64 {
	cost := (w.Minutes/60+float64(len(w.Setups))*c.SetupHours)*c.rate() + c.spoilt(w)
	if w.Bush != nil && c.Rate != nil {
		cost += *w.Bush
	}
	return cost
}

// noCut says why nothing is to be cut, "" where something is.
func (c *Case) noCut() say.Text {
	switch {
	case c.doomed():
		return say.F("the casting is %s: no machining", c.Condition)
	case len(c.needs()) == 0:
		return "no bore needs it"
	}
	return ""
}

// every prices one way for every bore that needs it. Re-bush takes the
// cheapest feasible way of each.
func (c *Case) every(name Name, faults []Fault) weighed {
	if why := c.noCut(); why != "" {
		return no(why)
	}
	bores := c.needs()
	picked := make([]Way, len(bores))
	for i, b := range bores {
		w, why := c.pick(b, name)
		if why != "" {
			return no(say.F("%s: %v", b.Name, why))
		}
		picked[i] = w
	}
	return c.job(picked, bores, faults)
}

// pick finds the way of one bore, or says why there is none.
func (c *Case) pick(b *Bore, name Name) (best Way, why say.Text) {
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
		why = "no way was found"
		for _, o := range c.options() {
			if o.name == name && o.barren != "" {
				why = o.barren
			}
		}
	}
	return Way{}, why
}

// job prices a set of ways, one per bore, with strip and rebuild. Clampings
// that ways share count once. Without faults from trials the chance of every
// bore is its own, and one that fails costs a spoilt bush.
func (c *Case) job(picked []Way, bores []*Bore, faults []Fault) weighed {
	var out weighed
	setups := map[string]bool{}
	minutes, money, chance, spoilt := 0.0, 0.0, 1.0, 0.0
	for i, w := range picked {
		minutes += w.Minutes
		chance *= w.Chance
		out.metal += w.MetalMM
		spoilt += c.spoilt(w)
		for _, s := range w.Setups {
			setups[s] = true
		}
		if w.Bush == nil {
			out.unknown = append(out.unknown, "bush of "+bores[i].Name)
		} else if c.Rate != nil {
			money += *w.Bush
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
	out.feasible, out.hours, out.chance = true, &hours, &chance
	out.cost = hours*c.rate() + money + spoilt
	return out
}
