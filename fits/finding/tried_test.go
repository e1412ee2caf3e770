package finding_test

import (
	"testing"

	"rebush/fits/finding"
)

// What came of a change is said with the chance where there is one; what nobody
// can expect is never called a cure.
func TestTriedSaid(t *testing.T) {
	yes, no, right, price := true, false, 0.9412, 38.0
	for _, c := range []struct {
		t              finding.Tried
		already        bool
		currency, want string
	}{
		{finding.Tried{Change: "a 5.5 H7 reamer, to buy", Cost: &price, OK: &yes, FirstTimeRight: &right}, false,
			"EUR",
			"a 5.5 H7 reamer, to buy (38.00 EUR): may be machined, right first time 94 in 100"},
		{finding.Tried{Change: "a 5.5 H7 reamer, to buy", Cost: &price, OK: &yes}, false, "",
			"a 5.5 H7 reamer, to buy (38.00): may be machined"},
		{finding.Tried{Change: "a jig", OK: &no, FirstTimeRight: &right}, false, "EUR",
			"a jig: still not to be machined"},
		{finding.Tried{Change: "a jig", OK: &no, FirstTimeRight: &right}, true, "EUR",
			"a jig: not to be machined then"},
		{finding.Tried{Change: "a jig", OK: &yes, FirstTimeRight: &right}, true, "EUR",
			"a jig: right first time 94 in 100"},
		{finding.Tried{Change: "the centre of axle.left"}, false, "EUR",
			"the centre of axle.left: asked for; nobody can tell beforehand what it gives"},
	} {
		if got := c.t.Said(c.currency, c.already).String(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
