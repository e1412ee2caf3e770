package ledger_test

import (
	"strings"
	"testing"

	"rebush/fits/ledger"
)

// A number is computed through the ledger, and the ledger can compute it again.
func TestCalcAndRecompute(t *testing.T) {
	l := ledger.New()
	a := l.Leaf("a", "outside", "mm", "job.yaml:3", 5.031)
	b := l.Leaf("b", "seat", "mm", "job.yaml:4", 5.005)
	less := func(in []float64) float64 { return (in[0] - in[1]) * 1000 }
	u := l.Calc("u", "interference", "um", "outside less seat", "limits", less, a, b)
	if u.Key != "u" || u.V < 25.999 || u.V > 26.001 {
		t.Errorf("u is %+v", u)
	}
	if bad := l.Recompute(); len(bad) != 0 {
		t.Errorf("an honest ledger says %v", bad)
	}
	e := l.Entries()["u"]
	if e.Value != 26 || e.Formula != "outside less seat" || strings.Join(e.Inputs, ",") != "a,b" {
		t.Errorf("entry is %+v", e)
	}
	if n := l.Number("u"); n != 3 {
		t.Errorf("short number %d, want 3", n)
	}
	if l.Number("nothing") != 0 {
		t.Error("an unknown key has a number")
	}
}

// An entry whose formula does not give its value is found out.
func TestRecomputeFindsALie(t *testing.T) {
	l := ledger.New()
	a := l.Leaf("a", "", "", "job.yaml:1", 1)
	calls := 0.0
	l.Calc("drifts", "", "", "never twice the same", "nowhere", func(in []float64) float64 { calls++; return in[0] + calls }, a)
	l.Calc("orphan", "", "", "of an input that was never recorded", "nowhere", func(in []float64) float64 { return in[0] }, ledger.Num{Key: "gone", V: 7})
	bad := strings.Join(l.Recompute(), "\n")
	if !strings.Contains(bad, "drifts") || !strings.Contains(bad, "gone") {
		t.Errorf("found only: %q", bad)
	}
}

// A nil ledger computes just the same and records nothing.
func TestNilLedger(t *testing.T) {
	var l *ledger.Ledger
	a := l.Leaf("a", "", "", "x:1", 2)
	if n := l.Calc("b", "", "", "twice", "arithmetic", func(in []float64) float64 { return 2 * in[0] }, a); n.V != 4 {
		t.Errorf("got %v", n.V)
	}
	if _, ok := l.Get("b"); ok || len(l.Keys()) != 0 {
		t.Error("a nil ledger remembers")
	}
}

// One key never holds two values.
func TestTwoValuesPanic(t *testing.T) {
	l := ledger.New()
	l.Leaf("a", "", "", "x:1", 1)
	l.Leaf("a", "", "", "x:1", 1)
	defer func() {
		if recover() == nil {
			t.Error("a second value was taken")
		}
	}()
	l.Leaf("a", "", "", "x:1", 2)
}

// A copy knows what was recorded before; what is recorded in it or in the other
// afterwards the two do not share.
func TestCopy(t *testing.T) {
	l := ledger.New()
	a := l.Leaf("a", "", "", "x:1", 2)
	c := l.Copy()
	c.Calc("b", "", "", "twice", "arithmetic", func(in []float64) float64 { return 2 * in[0] }, a)
	l.Leaf("b", "", "", "x:2", 7)
	l.Cite("rules/z")
	if got := c.Num("b").V; got != 4 || l.Num("b").V != 7 || c.Number("b") != 2 || len(c.Recompute()) != 0 {
		t.Errorf("%v", got)
	}
	if len(c.Cited("rules/")) != 0 || len(l.Cited("rules/")) != 1 {
		t.Error("what the one cites the other has cited")
	}
	if (*ledger.Ledger)(nil).Copy() != nil {
		t.Error("a copy of nothing is something")
	}
}
