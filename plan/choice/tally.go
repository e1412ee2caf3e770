package choice

import "math"

// tally is what offers add up to that are carried out together.
type tally struct {
	minutes, money float64 // tool changes and clampings not counted
	chance         float64 // that all of them come right
	left           float64 // least metal that any hole keeps, mm
	setups, tools  int     // clampings beside that of the truck, distinct tools
	turned, glued  int
	poor, gravest  int
}

// none is the tally of nothing done.
func none() tally { return tally{chance: 1, left: math.Inf(1)} }

// tallyOf is what one offer comes to; how many tools it needs is counted by who
// knows which of them are the same.
func tallyOf(o *Offer, r Rules) tally {
	t := tally{minutes: o.Minutes + (1-o.Chance)*r.SpoiltMinutes, money: o.Parts + (1-o.Chance)*o.Spoilt, chance: o.Chance,
		left: o.LeftMM, setups: o.Setups, turned: o.Turned, glued: o.Glued, gravest: o.Mend}
	if o.Poor {
		t.poor = 1
	}
	return t
}

// and is two tallies together, tools not counted.
func (t tally) and(u tally) tally {
	return tally{minutes: t.minutes + u.minutes, money: t.money + u.money, chance: t.chance * u.chance,
		left: math.Min(t.left, u.left), setups: max(t.setups, u.setups), turned: t.turned + u.turned,
		glued: t.glued + u.glued, poor: t.poor + u.poor, gravest: max(t.gravest, u.gravest)}
}

// cost is what it costs.
//
// Source: METHODS.md 1.
func (t tally) cost(r Rules) float64 {
	minutes := t.minutes + r.ToolMinutes*float64(t.tools)
	cost := (minutes/60 + float64(t.setups)*r.SetupHours) * r.Rate
	if r.Priced {
		cost += t.money
	}
	return cost
}
