package verdict

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/say"
)

// Charge is one line of what a way costs.
type Charge struct {
	Key   string   `json:"key"` // of its entry in the ledger: labour, parts, faults, price, unsound, axle
	What  say.Text `json:"what"`
	Hours *float64 `json:"hours"` // of labour; nil where it is none
	Cost  *float64 `json:"cost"`  // nil where no rate is given
}

// charge adds a line to the bill of a way and its money to its cost, which is
// the sum of its bill. What costs nothing has no line.
func (w *weighed) charge(key string, what say.Text, hours *float64, cost float64) {
	w.cost += cost
	if cost > 0 {
		w.bill = append(w.bill, Charge{Key: key, What: what, Hours: hours, Cost: &cost})
	}
}

// labour is a way that can be gone and cures, for so many hours at a rate.
func (c *Case) labour(what say.Text, hours float64) weighed {
	w := yes(hours, 0)
	w.charge("labour", what, &hours, hours*c.rate())
	return w
}

// billFormulas are those of the lines of a bill, by their keys.
var billFormulas = map[string]string{
	"labour": "hours x rate", "parts": "prices of what goes in and of what has to be bought",
	"faults": "chance of each fault x what it costs", "price": "the price that was given",
	"unsound": "(price + labour) x share of second-hand ones that are unsound",
	"axle":    "the price that was given", "axle labour": "hours for the new axle x rate",
}

// line is the money of the lines of a bill with a key, nil where there is none.
func line(list []Charge, key string) *float64 {
	var sum *float64
	for _, c := range list {
		if c.Key == key && c.Cost != nil {
			all := *c.Cost
			if sum != nil {
				all += *sum
			}
			sum = &all
		}
	}
	return sum
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
