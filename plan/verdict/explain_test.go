package verdict

import (
	"math"
	"testing"

	"rebush/fits/ledger"
)

// Hours and cost of every way stand in the ledger as the verdict has them, and
// follow from what the shop says of its time and money.
func TestExplain(t *testing.T) {
	c := tram()
	book := ledger.New()
	c.Explain(book, "shop.yaml:3", "shop.yaml:5")
	r := decide(t, c)
	n := 0
	for _, w := range r.Ways {
		for key, v := range map[string]*float64{"hours": w.Hours, "cost": w.Cost} {
			e, ok := book.Get("verdict/options/" + string(w.Way) + "/" + key)
			if ok != (v != nil) || ok && math.Abs(e.Value-*v) > 1e-6 {
				t.Errorf("%s of %s: %+v", key, w.Way, e)
			}
			if ok {
				n++
				want := 3
				if w.Way.Cuts() { // minutes, clampings, parts, five shares of trials
					want += 8
				}
				if len(e.Inputs) != want {
					t.Errorf("%s of %s from %v", key, w.Way, e.Inputs)
				}
			}
		}
	}
	// The bill stands there line by line, with the formula of each.
	lines := 0
	for _, w := range r.Ways {
		for _, l := range w.Bill {
			e, ok := book.Get("verdict/options/" + string(w.Way) + "/bill/" + l.Key)
			if !ok || math.Abs(e.Value-*line(w.Bill, l.Key)) > 1e-6 || e.Formula == "" {
				t.Errorf("%s in the bill of %s: %+v", l.Key, w.Way, e)
			}
			lines++
		}
	}
	if lines < 8 {
		t.Errorf("%d lines of bills", lines)
	}
	if n != 8 { // leave, re-bush, plug and swap
		t.Errorf("%d figures", n)
	}
	if bad := book.Recompute(); len(bad) != 0 {
		t.Errorf("%v", bad)
	}
	// The figures of its plan are those that its cost hangs on: by hand ten
	// minutes more cost a sixth of 40.
	more := tram()
	for i := range more.Works {
		more.Works[i].Minutes += 10
	}
	fresh := ledger.New()
	more.Explain(fresh, "shop.yaml:3", "shop.yaml:5")
	if a, b := book.Num("verdict/options/re-bush/cost").V, fresh.Num("verdict/options/re-bush/cost").V; math.Abs(b-a-40.0/6) > 1e-6 {
		t.Errorf("ten minutes more cost %v", b-a)
	}
	c.Rate = nil
	book = ledger.New()
	c.Explain(book, "shop.yaml:3", "shop.yaml:5")
	if _, ok := book.Get("verdict/options/re-bush/cost"); ok {
		t.Error("a cost without a rate")
	}
}
