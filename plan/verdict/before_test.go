package verdict

import (
	"strconv"
	"strings"
	"testing"
)

// Where a measurement that may come first would make a repair the choice, a swap
// wins only from where it would not: with 20 minutes less work new bearings are
// chosen up to a dearer hour.
func TestSwapWaitsForWhatComesFirst(t *testing.T) {
	c := tram()
	c.Other.Price = 90
	alone := decide(t, c)
	better := c
	better.Works = append([]Work(nil), c.Works...)
	better.work(Rebush).Minutes -= 20
	c.First = func() []Before { return []Before{{Do: "measure", What: "the middle", Case: better}} }
	r := decide(t, c)
	if alone.Choice != Rebush || r.Choice != Rebush || alone.RunnerUp.Name != Swap || r.RunnerUp.Name != Swap {
		t.Fatalf("%+v, %+v", alone, r)
	}
	rate := func(r Result) float64 {
		said := r.RunnerUp.WinsIf.String()
		v, ok := strings.CutPrefix(said, "at ")
		if !ok {
			t.Fatalf("wins %q", said)
		}
		return number(t, strings.Fields(v)[0])
	}
	now, then := rate(alone), rate(r)
	if then <= now {
		t.Errorf("wins at %v, and with what comes first at %v", now, then)
	}
	for _, v := range []float64{then, now} {
		better.Rate = at(v)
		if got := decide(t, better).Choice; (got == Swap) != (v == then) {
			t.Errorf("at %v with what comes first: %s", v, got)
		}
	}
	c.First = func() []Before { return []Before{{Do: "measure", What: "the middle", Asked: true}} }
	if r = decide(t, c); r.RunnerUp.WinsIf != "at no price, since one would first measure the middle" {
		t.Errorf("wins %q", r.RunnerUp.WinsIf)
	}
	c.Condition = "cracked" // nothing comes before a swap
	if r = decide(t, c); r.Choice != Swap {
		t.Errorf("cracked: %s", r.Choice)
	}
}

// A try comes first where it is measured, bought or made, and leaves its case.
func TestTryBefore(t *testing.T) {
	then := Result{}
	for _, c := range []struct {
		try       Try
		asked, ok bool
	}{
		{Try{Then: &then}, false, false},
		{kind("measure", Try{Then: &then}), false, true},
		{kind("buy", Try{}), false, false},
		{kind("measure", Try{Missing: true}), true, true},
		{kind("mend", Try{Then: &then}), false, false},
	} {
		if b, ok := c.try.Before(tram()); ok != c.ok || b.Asked != c.asked || len(b.Case.Works) == 0 {
			t.Errorf("%+v: %v, asked %v", c.try, ok, b.Asked)
		}
	}
}

func kind(k string, t Try) Try {
	t.Kind = k
	return t
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
