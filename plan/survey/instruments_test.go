package survey

import (
	"math"
	"strings"
	"testing"

	"rebush/fits/table"
	"rebush/plan/job"
)

// Which instrument read a figure: the one named, by the shop's own u and bias;
// a kind that the name tells, by the table; without a name the worst that the
// shop has for it, never its bias; without any the default of the table. Pins of
// class ZZ are 0.00508 wide (ASME B89.1.5), rectangular: 0.00508/sqrt 12; as a
// width they are stepped by 0.01 besides.
func TestWhichInstrument(t *testing.T) {
	shop := &job.Shop{Pins: &job.PinSet{Step: mmOf(t, "0.01"), Class: "zz"}, Instruments: []job.Instrument{
		{
			Name: "bore gauge",
			U:    mmOf(t, "0.004"),
		}, {Name: "Old calliper", U: mmOf(t, "0.025"), Bias: mmOf(t, "-0.02")}}}
	in, err := ReadInstruments(table.BuiltIn(), shop)
	if err != nil {
		t.Fatal(err)
	}
	zz := 0.00508 / math.Sqrt(12)
	for _, c := range []struct {
		name    string
		what    Quantity
		u, bias float64
		is      string
	}{
		{"BORE GAUGE", Width, 0.004, 0, "bore gauge"},
		{"old calliper", Width, 0.025, -0.02, "Old calliper"},
		{"", Width, 0.025, 0, "Old calliper"},
		{"", Middle, 0.025, 0, "Old calliper"},
		{"my wiggler", Middle, 0.010, 0, "my wiggler"},
		{"", Wall, 0.010, 0, "default for a probe"},
		{"", Pin, zz, 0, "pins"},
		{"pins", Pin, zz, 0, "pins"},
		{"pins", Width, math.Hypot(zz, 0.01/math.Sqrt(12)), 0, "pins"},
	} {
		r, err := in.Named(c.name, c.what)
		if err != nil || math.Abs(r.U-c.u) > 1e-12 || r.Bias != c.bias || r.Name != c.is || r.From == "" {
			t.Errorf("%q for a %s: %+v, %v", c.name, c.what, r, err)
		}
	}
	if _, err := in.Named("thing", Width); err == nil || !strings.Contains(err.Error(), `no instrument "thing"`) {
		t.Errorf("an instrument that nobody knows: %v", err)
	}
	b := &job.Bore{With: map[string]string{"widest": "bore gauge", "all": "old calliper"}}
	if r, _ := in.Of(b, "widest", Width); r.U != 0.004 {
		t.Errorf("the one named for the figure: %+v", r)
	}
	if r, _ := in.Of(b, "narrowest", Width); r.U != 0.025 {
		t.Errorf("the one named for all: %+v", r)
	}
	if !in.CanRead("my wiggler", Middle) || in.CanRead("my wiggler", Width) || in.Known("thing") || !in.Known("dro") {
		t.Error("what kinds read")
	}
	shop.Pins.Class = "Q"
	if _, err := ReadInstruments(table.BuiltIn(), shop); err == nil ||
		!strings.Contains(err.Error(), `pins of class "Q"; the classes are`) {
		t.Errorf("a class that no table has: %v", err)
	}
}
