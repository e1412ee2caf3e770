package verdict

import "rebush/fits/say"

// named is how many things without a price a sentence names; more are counted (j).
const named = 2

// AllTold stands behind the cost of a way: that it is all told, or without which
// things, since no price is given for them.
func AllTold(unpriced []say.Text) say.Text {
	switch n := len(unpriced); {
	case n == 0:
		return " all told"
	case n <= named:
		return say.F(" without %v, no price given", and(sorted(unpriced)))
	default:
		return say.F(" without %d things that no price is given for", n)
	}
}

// lacking says of a way that another is set against what is not in its cost; ""
// where nothing is missing, or no money is weighed.
func (c *Case) lacking(w weighed) say.Text {
	if c.Rate == nil || len(w.unknown) == 0 {
		return ""
	}
	return AllTold(w.unknown)
}
