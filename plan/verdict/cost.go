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
func (l Limits) FaultsOf(t Trials, bush *float64) []Fault {
	return []Fault{
		{Name: "rework", Chance: t.Rework, Minutes: l.ReworkMinutes},
		{Name: "spoilt bush", Chance: t.Spoilt, Minutes: l.SpoiltMinutes, Bush: bush},
		{Name: "another bush", Chance: t.NextBush, Minutes: l.SpoiltMinutes, Bush: bush},
		{Name: "lost", Chance: t.Lost, Lost: true},
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

// idleFor says why nothing is to be cut, "" where something is.
func (c *Case) idleFor() say.Text {
	if len(c.needs()) == 0 {
		return "no bore needs it"
	}
	return ""
}

// worked prices a way by its plan: hours are clampings, operations with the
// aids that are made, strip and rebuild; to their money comes what goes in, what
// has to be bought, and what its faults are expected to cost.
//
// Source: METHODS.md 1 and 2.
func (c *Case) worked(k *Work) weighed {
	if !k.OK {
		return weighed{whyNot: k.WhyNot, work: k}
	}
	hours := k.Minutes/60 + float64(k.Clampings)*c.SetupHours + c.StripHours
	w := c.labour("labour", hours)
	w.work, w.metal = k, k.MetalMM
	parts := 0.0
	for _, p := range k.Parts {
		switch {
		case p.Price == nil:
			w.unknown = append(w.unknown, p.Name)
		case c.Rate != nil:
			parts += *p.Price
		}
	}
	w.charge("parts", "bushes and what has to be bought", nil, parts)
	if t := k.Trials; t != nil {
		w.charge("faults", "laid by for what may go wrong", nil, c.faults(c.Limits.FaultsOf(*t, k.dearest())))
		right, lost := t.Right, t.Lost
		w.chance, w.lost = &right, &lost
	}
	if why := c.idleFor(); why != "" {
		return w.idle(why)
	}
	if len(k.Mended) == 0 && k.Minutes == 0 {
		return w.idle("nothing that could be cut would cure it")
	}
	if k.Asks != "" {
		return w.idle(k.Asks)
	}
	return w
}

// dearest is the price of the dearest bush that goes in, nil where none is
// given.
func (k *Work) dearest() *float64 {
	var best *float64
	for _, p := range k.Parts {
		if p.Bush && p.Price != nil && (best == nil || *p.Price > *best) {
			best = p.Price
		}
	}
	return best
}
