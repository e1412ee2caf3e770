package ledger_test

import (
	"slices"
	"testing"

	"rebush/fits/ledger"
)

// A page records under its prefix, computes by the function that is handed to
// it, and a figure of it is an input of another page.
func TestPage(t *testing.T) {
	l := ledger.New()
	p := l.Page("seats/front.left")
	od, seat := p.Leaf("od", "outside", "mm", "job:1", 5.019), p.Leaf("seat", "seat", "mm", "job:2", 5.012)
	less := func(a, b float64) float64 { return 1000 * (a - b) }
	if n := p.Calc2("u", "press", "um", "a - b", "limits", less, od, seat); n.V != less(5.019, 5.012) || n.Key != "seats/front.left/u" {
		t.Errorf("%+v", n)
	}
	q := l.Page("route")
	got := q.Calc5("five", "", "", "", "", func(a, b, c, d, e float64) float64 { return a + 2*b + 4*c + 8*d + 16*e }, p.Num("u"), od, seat, od, seat)
	if want := p.Num("u").V + 2*5.019 + 4*5.012 + 8*5.019 + 16*5.012; got.V != want {
		t.Errorf("%v, want %v", got.V, want)
	}
	if !p.Has("u") || q.Has("u") || len(l.Recompute()) != 0 {
		t.Error("pages mix")
	}
	defer func() {
		if recover() == nil {
			t.Error("a figure that was never recorded is an input")
		}
	}()
	p.Num("nothing")
}

// What was cited or recorded is listed once, in the order of first mention.
func TestCited(t *testing.T) {
	l := ledger.New()
	l.Cite("rules/b")
	l.Leaf("rules/a", "", "", "x:1", 1)
	l.Leaf("seats/c", "", "", "x:1", 1)
	l.Leaf("rules/b", "", "", "x:1", 1)
	l.Cite("rules/a")
	if got := l.Cited("rules/"); !slices.Equal(got, []string{"b", "a"}) {
		t.Errorf("%v", got)
	}
	var none *ledger.Ledger
	none.Cite("rules/a")
	if none.Cited("rules/") != nil || none.Page("x").Calc1("k", "", "", "", "", func(a float64) float64 { return 2 * a }, ledger.Num{V: 3}).V != 6 {
		t.Error("a nil ledger remembers, or does not compute")
	}
}
