package inspect

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestDecide(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct {
		name   string
		made   Made
		result Result
		guard  float64 // um
		never  bool
	}{
		// u 1 um, k 1.65: guard 1.65 um.
		{"middle", Made{5.006, 5.000, 5.012, 0.001, 1.65}, Accept, 1.65, false},
		{"on the guard", Made{5.00165, 5.000, 5.012, 0.001, 1.65}, Accept, 1.65, false},
		{"inside the guard", Made{5.0016, 5.000, 5.012, 0.001, 1.65}, CannotTell, 1.65, false},
		{"on the limit", Made{5.012, 5.000, 5.012, 0.001, 1.65}, CannotTell, 1.65, false},
		{"just outside", Made{5.0136, 5.000, 5.012, 0.001, 1.65}, CannotTell, 1.65, false},
		{"outside", Made{5.0140, 5.000, 5.012, 0.001, 1.65}, Reject, 1.65, false},
		{"calliper on a reamed seat", Made{5.006, 5.000, 5.012, 0.023, 1.65}, CannotTell, 37.95, true},
		{"calliper, far out", Made{5.100, 5.000, 5.012, 0.023, 1.65}, Reject, 37.95, true},
		{"no doubt, on the limit", Made{5.012, 5.000, 5.012, 0, 1.65}, Accept, 0, false},
		{"one limit", Made{0.02, -inf, 0.03, 0.005, 1.65}, Accept, 8.25, false},
		{"one limit, over", Made{0.05, -inf, 0.03, 0.005, 1.65}, Reject, 8.25, false},
	} {
		d, err := Decide(c.made)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if d.Result != c.result || math.Abs(d.GuardMM*1000-c.guard) > 1e-9 || d.Never != c.never || d.Rule == "" {
			t.Errorf("%s: %+v", c.name, d)
		}
	}
}

func TestConform(t *testing.T) {
	// On a limit of wide tolerance: half; 1.65 u inside: 95 % (table of the normal distribution).
	d, _ := Decide(Made{5, 5, 6, 0.001, 1.65})
	if math.Abs(d.Conform-0.5) > 1e-9 {
		t.Errorf("on the limit: %v", d.Conform)
	}
	if d, _ = Decide(Made{5.00165, 5, 6, 0.001, 1.65}); math.Abs(d.Conform-0.9505) > 1e-4 {
		t.Errorf("on the guard: %v", d.Conform)
	}
}

func TestRefused(t *testing.T) {
	for name, m := range map[string]Made{
		"limits":  {5, 6, 5, 0.001, 1.65},
		"size":    {math.NaN(), 5, 6, 0.001, 1.65},
		"u":       {5, 5, 6, -1, 1.65},
		"nothing": {5, math.Inf(-1), math.Inf(1), 0.001, 1.65},
	} {
		if _, err := Decide(m); err == nil {
			t.Errorf("%s: decided", name)
		}
	}
}

// A better instrument never turns a proven size into an unproven one, and what
// it would take to tell is enough.
func TestBetterInstrument(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := Made{MM: rapid.Float64Range(4.9, 5.1).Draw(t, "mm"), Low: 5, High: 5.012, UMM: rapid.Float64Range(0, 0.03).Draw(t, "u"), GuardK: 1.65}
		a, err := Decide(m)
		if err != nil {
			t.Fatal(err)
		}
		if a.Conform < 0 || a.Conform > 1 {
			t.Fatalf("chance %v", a.Conform)
		}
		finer := m
		finer.UMM /= 2
		if b, _ := Decide(finer); a.Result != CannotTell && b.Result != a.Result {
			t.Fatalf("%s, with half the doubt %s", a.Result, b.Result)
		}
		if a.Never {
			m.UMM = a.NeedUMM
			if b, _ := Decide(m); b.Never {
				t.Fatalf("%v is not enough", a.NeedUMM)
			}
		}
	})
}

func TestPutBack(t *testing.T) {
	// Printed on a hobby lathe page (METHODS.md 3): R 1.6875, e 0.313, block 0.448 (0.4476).
	e, err := PutBack([2]float64{0, 0}, [2]float64{0.313, 0}, 3.375, 1, 3.375)
	if err != nil || math.Abs(e.PackingMM-0.4476) > 5e-5 {
		t.Errorf("packing %.4f, %v", e.PackingMM, err)
	}
	// A packing as thick as the offset wanted gives two thirds of it (the same).
	e, err = PutBack([2]float64{0, 0}, [2]float64{0.0667, 0}, 5, 1, 5)
	if err != nil || math.Abs(e.PackingMM-0.100) > 2e-3 {
		t.Errorf("packing for two thirds %.4f, %v", e.PackingMM, err)
	}
	if _, err = PutBack([2]float64{0, 0}, [2]float64{3, 0}, 12, 1, 4); err == nil {
		t.Error("an offset beyond the bar is accepted")
	}
	// e 0.050 and 5 degrees: 0.004 sideways (METHODS.md 2); reading twice the offset.
	e, err = PutBack([2]float64{10.03, 6.04}, [2]float64{10, 6}, 6, 3.2, 6)
	if err != nil || math.Abs(e.OffsetMM-0.05) > 1e-9 || math.Abs(e.IndicatorMM-0.1) > 1e-9 || math.Abs(5*e.PerDegreeMM-0.00436) > 2e-5 {
		t.Errorf("%+v, %v", e, err)
	}
	if math.Abs(e.ClockDeg-233.1301) > 1e-4 || math.Abs(e.LeastWallMM-1.35) > 1e-9 {
		t.Errorf("clock %.4f wall %.4f", e.ClockDeg, e.LeastWallMM)
	}
	if _, err = PutBack([2]float64{0, 0}, [2]float64{1.5, 0}, 6, 3.2, 6); err == nil {
		t.Error("an offset without wall is accepted")
	}
}
