package cutting

import (
	"math"
	"testing"
)

// Torques of a sharp drill in N m, each worked out twice for the comparison
// of the three formulas: Kienzle with VDI 3323 constants, Machinery's Handbook
// 31st ed. pp. 1152-1153, drill maker catalogue 2020-21 p.L068.
func TestTorqueAgreement(t *testing.T) {
	c := newCutting(t)
	std := c.points["standard"]
	cases := []struct {
		kd, kienzle, maker string
		d, f               float64
		byKienzle, bySO    float64
		byMaker            float64 // 0: none
	}{
		{"leaded brass", "brass", "", 6, 0.1, 0.74, 0.76, 0},
		{"aluminium", "aluminium wrought", "aluminium", 6, 0.1, 0.69, 0.76, 0.84},
		{"steel", "low-carbon steel", "low-carbon steel", 10, 0.2, 5.7, 11.3, 8.9},
		{"steel", "low-carbon steel", "low-carbon steel", 3, 0.05, 0.17, 0.43, 0.29},
	}
	digit := func(v float64) float64 { // half a last printed digit
		if v >= 2 {
			return 0.051
		}
		return 0.0051
	}
	for _, k := range cases {
		kz := c.kienzle[k.kienzle]
		within(t, k.kd+" Kienzle", Kienzle(kz.kc11, kz.mc, k.f, k.d, 118)/1000, k.byKienzle, digit(k.byKienzle))
		kd := c.kd[k.kd]
		_, m := ShawOxford(kd.thrust, kd.torque, k.f, k.d, std.a, std.b, std.j, 1)
		within(t, k.kd+" Shaw-Oxford", m/1000, k.bySO, digit(k.bySO))
		if k.byMaker > 0 {
			_, m := Maker(c.maker[k.maker].k, k.f, k.d)
			within(t, k.kd+" maker", m/1000, k.byMaker, digit(k.byMaker))
		}
	}
}

// The handbook's tables of f^0.8 and D^0.8 are plain powers: with Kd 20, B 1
// and no chisel term the thrust is their product. At 8.8 mm it prints 5.96,
// which does not fit; its neighbours do.
func TestPrintedPowers(t *testing.T) {
	for _, k := range []struct{ d, ft float64 }{{8, 5.28}, {9.5, 6.06}, {8.8, 5.70}} {
		ft, _ := ShawOxford(20, 0, 1, k.d, 1, 1, 0, 1)
		within(t, "FT", ft, k.ft, 0.005)
	}
	for _, d := range []float64{2, 6, 10} {
		_, one := ShawOxford(0, 40, 1, 1, 1, 1, 0, 1)
		_, m := ShawOxford(0, 40, 1, d, 1, 1, 0, 1)
		within(t, "FM", m/one, math.Pow(d, 1.8), 1e-9*m)
	}
	// Pc = M n / 9550 in kW: 10 N m at 955 turns is 1 kW.
	within(t, "power", Power(10000, 955), 1000, 0.1)
}

func TestThrustForBacking(t *testing.T) {
	c := newCutting(t)
	for _, m := range []string{"free-cutting brass", "zinc"} {
		a, err := c.Speed(Query{Material: m, Operation: "drill", DiaMM: 6, FeedMMRev: 0.1})
		if err != nil {
			t.Fatal(err)
		}
		// About 370 N and under 1 N m: Machinery's Handbook formulas, sharp.
		within(t, m+" thrust", a.ThrustN, 370, 5)
		if !a.ForcesKnown || a.TorqueNmm >= 1000 {
			t.Errorf("%s: torque %v N mm", m, a.TorqueNmm)
		}
		within(t, m+" power", a.PowerW, Power(a.TorqueNmm, a.RPM), 1e-9)
		dull, err := c.Speed(Query{Material: m, Operation: "drill", DiaMM: 6, FeedMMRev: 0.1, Wear: "dull"})
		if err != nil {
			t.Fatal(err)
		}
		within(t, m+" dull", dull.ThrustN, 1.5*a.ThrustN, 1e-6)
	}
	a, err := c.Speed(Query{Material: "acetal", Operation: "drill", DiaMM: 6})
	if err != nil {
		t.Fatal(err)
	}
	if a.ForcesKnown || a.ThrustN != 0 {
		t.Errorf("acetal has no force figure: %+v", a)
	}
	// Of several formulas the largest: low-carbon steel 10 mm, 0.2 gives 11.3.
	s, err := c.Speed(Query{Material: "mild steel", Operation: "drill", DiaMM: 10, FeedMMRev: 0.2})
	if err != nil {
		t.Fatal(err)
	}
	within(t, "steel torque", s.TorqueNmm/1000, 11.3, 0.05)
	thrust, _ := Maker(2.22, 0.2, 10)
	if s.ThrustN < thrust {
		t.Errorf("thrust %v is below the maker's %v", s.ThrustN, thrust)
	}
}
