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
		a, err := c.Speed(Query{Material: m, Operation: "drill", DiaMM: 6, FeedMMRev: 0.1, Wear: "sharp"})
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
		usual, err := c.Speed(Query{Material: m, Operation: "drill", DiaMM: 6, FeedMMRev: 0.1})
		if err != nil {
			t.Fatal(err)
		}
		within(t, m+" in normal use", usual.ThrustN, 1.3*a.ThrustN, 1e-6)
	}
	a, err := c.Speed(Query{Material: "acetal", Operation: "drill", DiaMM: 6})
	if err != nil {
		t.Fatal(err)
	}
	if a.ForcesKnown || a.ThrustN != 0 {
		t.Errorf("acetal has no force figure: %+v", a)
	}
	// Of several formulas the largest: low-carbon steel 10 mm, 0.2 gives 11.3.
	s, err := c.Speed(Query{Material: "mild steel", Operation: "drill", DiaMM: 10, FeedMMRev: 0.2, Wear: "sharp"})
	if err != nil {
		t.Fatal(err)
	}
	within(t, "steel torque", s.TorqueNmm/1000, 11.3, 0.05)
	thrust, _ := Maker(2.22, 0.2, 10)
	if s.ThrustN < thrust {
		t.Errorf("thrust %v is below the maker's %v", s.ThrustN, thrust)
	}
}

// A drill that opens a hole cuts with the outer part of its lips alone. By hand,
// Kd 1000, f 0.1, D 4.7 from 4.5, W 1.3:
//
//	T = 0.05 x 1000 x 0.158489 x 3.44888 x 1.3 x (1 - 4.5/4.7 = 0.0425532) = 1.5119 N
//	M = 25 x 0.158489 x 16.2097 x 1.3 x (1 - (4.5/4.7)^2 = 0.0832956) = 6.9547 N mm
//
// In zinc 4.7 from 4.5 and 4.85 from 4.0 take a few newtons to two dozen, where
// solid metal takes two hundred and more; a hole that does not take the chisel
// edge helps nothing; the nearer to the drill the hole, the less is left.
func TestOpeningAHole(t *testing.T) {
	thrust, torque := Lips(1000, 1000, 0.1, 4.7, 4.5, 1.3)
	within(t, "thrust", thrust, 1.5119, 0.0001)
	within(t, "torque", torque, 6.9547, 0.0002)
	c := newCutting(t)
	ask := func(dia, from float64) Answer {
		a, err := c.Speed(Query{Material: "zinc", Operation: "drill", DiaMM: dia, FromMM: from, Hand: true})
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	for _, k := range [][4]float64{{4.7, 4.5, 2, 15}, {4.85, 4.0, 8, 40}} {
		a, solid := ask(k[0], k[1]), ask(k[0], 0)
		if a.ThrustN < k[2] || a.ThrustN > k[3] || solid.ThrustN < 150 || a.TorqueNmm > 0.4*solid.TorqueNmm {
			t.Errorf("%v from %v: %v N, %v N mm; solid %v N, %v N mm", k[0], k[1], a.ThrustN, a.TorqueNmm, solid.ThrustN,
				solid.TorqueNmm)
		}
	}
	if ask(6, 1.0).ThrustN != ask(6, 0).ThrustN || ask(6, 1.1).ThrustN >= ask(6, 0).ThrustN {
		t.Error("the chisel edge of a 6 mm drill is 0.18 x 6 = 1.08 long")
	}
	was := math.Inf(1)
	for from := 1.1; from <= 6; from += 0.1 {
		if a := ask(6, from); a.ThrustN > was {
			t.Errorf("from %v: %v N, %v before", from, a.ThrustN, was)
		} else {
			was = a.ThrustN
		}
	}
}
