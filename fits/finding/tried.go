package finding

import (
	"strings"

	"rebush/fits/say"
)

// Said is a change and what came of it, on one line: "a 5.5 H7 reamer, to buy
// (38.00 EUR): may be machined, right first time 94 in 100". The change stands
// as whoever tried it worded it; a price is in the currency of the shop, which
// may have no name. Where the job may be machined as it stands, only what is
// otherwise is said.
func (t Tried) Said(currency string, already bool) say.Text {
	out := t.Change
	if t.Cost != nil {
		out += say.F(" (%v)", Money(*t.Cost, currency))
	}
	return out + ": " + t.gives(already)
}

// gives is what came of a change, without the change.
func (t Tried) gives(already bool) say.Text {
	switch {
	case t.OK == nil:
		return "asked for; nobody can tell beforehand what it gives"
	case !*t.OK && already:
		return "not to be machined then"
	case !*t.OK:
		return "still not to be machined"
	case t.FirstTimeRight == nil:
		return "may be machined"
	case already:
		return "right first time " + say.InHundred(*t.FirstTimeRight)
	}
	return "may be machined, right first time " + say.InHundred(*t.FirstTimeRight)
}

// Else is what would change a finding beside the changes that were tried: its
// fix, unless that is one of them.
func (f Finding) Else() say.Text {
	for _, t := range f.Tried {
		if t.Change != "" && strings.Contains(string(f.Fix), string(t.Change)) {
			return ""
		}
	}
	return f.Fix
}

// Money is an amount as it stands on a bill, "38.00 EUR"; the figure alone where
// the currency has no name.
func Money(v float64, currency string) say.Text {
	amount := say.F("%.2f", v)
	if currency == "" {
		return amount
	}
	return say.Join(" ", amount, say.Words(currency))
}
