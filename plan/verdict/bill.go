package verdict

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/say"
)

// Charge is one line of what a way costs.
type Charge struct {
	What  say.Text `json:"what"`
	Hours *float64 `json:"hours"` // of labour; nil where it is none
	Cost  *float64 `json:"cost"`  // nil where no rate is given
}

// charge adds a line to the bill of a way and its money to its cost, which is
// the sum of its bill. What costs nothing has no line.
func (w *weighed) charge(what say.Text, hours *float64, cost float64) {
	w.cost += cost
	if cost > 0 {
		w.bill = append(w.bill, Charge{What: what, Hours: hours, Cost: &cost})
	}
}

// labour is a way that can be gone and cures, for so many hours at a rate.
func (c *Case) labour(what say.Text, hours float64) weighed {
	w := yes(hours, 0)
	w.charge(what, &hours, hours*c.rate())
	return w
}

// billRounded gives the lines of a bill to a hundredth so that they add up to the
// cost as it is printed: what rounding leaves over goes to the largest.
func billRounded(list []Charge, cost *float64) []Charge {
	out := []Charge{}
	if cost == nil {
		return out
	}
	out = append(out, list...)
	rest, largest := *cost, 0
	for i := range out {
		out[i].Cost, out[i].Hours = rounded(list[i].Cost, 100), rounded(list[i].Hours, 100)
		rest -= *out[i].Cost
		if *out[i].Cost > *out[largest].Cost {
			largest = i
		}
	}
	if len(out) > 0 {
		out[largest].Cost = dim.Number(math.Round(100*(*out[largest].Cost+rest)) / 100)
	}
	return out
}
