package route

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Gauges: pins that prove, pins that bracket, shanks, nothing.
func TestGauge(t *testing.T) {
	cases := []struct {
		name        string
		lim         [2]float64
		pins        *Pins
		goes, stops string
		proves      bool
	}{
		{"pins prove a wide bore", [2]float64{3.175, 3.22}, &Pins{From: 1, To: 6, Step: 0.01}, "pin 3.18", "pin 3.22",
			true},
		{"pins bracket a reamed seat", [2]float64{5.005, 5.012}, &Pins{From: 1, To: 6, Step: 0.01}, "pin 5.00",
			"pin 5.02", false},
		{"finer pins prove it", [2]float64{5.005, 5.012}, &Pins{From: 1, To: 6, Step: 0.002}, "pin 5.006",
			"pin 5.012", true},
		{"pins in inches go by their stamp", [2]float64{4.763, 4.772},
			&Pins{From: 0.061 * 25.4, To: 0.25 * 25.4, Step: 0.0254,
				Inch: true}, "pin 0.187 in", "pin 0.188 in", false},
		{"the set ends below: a shank stops", [2]float64{5.005, 5.03}, &Pins{From: 1, To: 5, Step: 0.01}, "pin 5.00",
			"5.1 mm drill shank", false},
		{"the whole set lies below and no shank is near", [2]float64{5.005, 5.012}, &Pins{From: 1, To: 4, Step: 0.01},
			"plug gauge 5.00 mm (to buy)", "plug gauge 5.02 mm (to buy)", false},
		{"the whole set lies above", [2]float64{2.005, 2.012}, &Pins{From: 3, To: 4, Step: 0.01},
			"plug gauge 2.00 mm (to buy)", "plug gauge 2.02 mm (to buy)", false},
		{"plugs that prove a wide bore", [2]float64{2.004, 2.046}, nil, "plug gauge 2.01 mm (to buy)",
			"plug gauge 2.04 mm (to buy)", true},
		{"the next shank above is too far", [2]float64{4.75, 4.9}, nil, "plug gauge 4.75 mm (to buy)", "plug gauge 4.90 mm (to buy)",
			true},
		{"shanks bracket", [2]float64{4.75, 5.0}, nil, "4.7 mm drill shank", "5.1 mm drill shank", false},
		{"nothing near: plugs to be bought", [2]float64{8.005, 8.012}, nil, "plug gauge 8.00 mm (to buy)",
			"plug gauge 8.02 mm (to buy)", false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			s := millShop()
			s.Pins = c.pins
			b := &builder{s: s, r: plainRules()}
			g := b.gauge(c.lim, "x")
			if g.goes.String() != c.goes || g.stops.String() != c.stops || g.proves != c.proves {
				t.Errorf("%+v", g)
			}
		})
	}
}

// A pair of pins that is said to prove a hole does: whatever the hole, if the
// one enters and the other does not, it is inside its limits.
func TestPinsThatProve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lo := rapid.Float64Range(1.1, 5).Draw(t, "low")
		width := rapid.Float64Range(0.002, 0.08).Draw(t, "width")
		step := rapid.SampledFrom([]float64{0.002, 0.005, 0.01}).Draw(t, "step")
		b := &builder{s: Shop{Pins: &Pins{From: 1, To: 6, Step: step}}, r: plainRules()}
		g := b.gauge([2]float64{lo, lo + width}, "x")
		var in, out float64
		if _, err := fmt.Sscanf(g.goes.String(), "pin %f", &in); err != nil {
			t.Fatal(g)
		}
		if _, err := fmt.Sscanf(g.stops.String(), "pin %f", &out); err != nil {
			t.Fatal(g)
		}
		if in >= out {
			t.Fatalf("go %v, no-go %v", in, out)
		}
		if g.proves && (in < lo-1e-6 || out > lo+width+1e-6) {
			t.Fatalf("%v and %v do not prove %v to %v", in, out, lo, lo+width)
		}
		if !g.proves && (in > lo+1e-6 || out < lo+width-1e-6) {
			t.Fatalf("%v and %v do not bracket %v to %v", in, out, lo, lo+width)
		}
	})
}

// A seat that the pins do not prove is proved by a hole in scrap, before the
// job is cut.
func TestScrapBeforeTheJob(t *testing.T) {
	s := millShop()
	r := Make(axle(), s, plainCut, plainRules())
	if o := r.Operations[1]; o.Kind != "scrap" || !strings.Contains(o.Do.String(), "bush drawer 7") {
		t.Errorf("first is %s: %s", o.Kind, o.Do)
	}
	s.Pins.Step = 0.002
	for _, o := range Make(axle(), s, plainCut, plainRules()).Operations {
		if o.Kind == "scrap" {
			t.Error("these pins prove the seat by themselves")
		}
	}
}
