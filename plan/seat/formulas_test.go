package seat

import (
	"math"
	"testing"

	"rebush/fits/press"
)

// Each formula with figures worked by hand. Loads, speeds and expansions are
// common practice, no source.
func TestFormulas(t *testing.T) {
	for _, c := range []struct {
		what           string
		got, want, tol float64
	}{
		{"least bore by the journal", LeastBore(3.160, 0.015, 3.165, 0.005), 3.175, 1e-12},
		{"least bore by what passes", LeastBore(3.160, 0.015, 3.200, 0.005), 3.205, 1e-12},
		{"nothing passes", LeastBore(3.160, 0.015, 0, 9), 3.175, 1e-12},
		{"most bore", MostBore(3.160, 0.060), 3.220, 1e-12},
		{"running", Running(3.175, 3.160), 0.015, 1e-12},
		{"warm bore", WarmBore(3.160, 0.005, -0.013), 3.178, 1e-12},
		{"interference", Interference(5.019, 5.0118), 0.0072, 1e-12},
		{"clean-up", CleanUp(5.005, 1.7765), 0.726, 1e-12},
		{"doubt, a 3-4-5", Doubt(0.03, 0.04), 0.10, 1e-12},
		{"metal left", MetalLeft(5.928, 5.0118), 3.4221, 1e-12},
		{"contact by the plate", Contact(3, 3.8, 0.2, 0.3), 2.5, 1e-12},
		{"contact by the bush", Contact(4, 2.2, 0.2, 0.2), 1.8, 1e-12},
		// DIN 7190 smoothing: 0.8 (Rz + Rz) = 0.8 x 10.3.
		{"smoothing", press.Smoothing(0.8, 4, 6.3), 8.24, 1e-12},
		{"left", press.Left(20, 8.24), 11.76, 1e-12},
		{"nothing left", press.Left(7.2, 8.24), 0, 0},
		// 0.12 x pi x 10 x 20 x 50 = 3769.9 N.
		{"force", AxialForce(0.12, 10, 20, 50), 3769.911, 0.001},
		{"torque", Torque(3769.911, 10), 18849.555, 0.001},
		{"needed torque", NeededTorque(3, 0.3, 1.25, 3.16), 1.7775, 1e-12},
		// 3 x pi x 5 x 2.6 = 122.522 N, over 255 of 360 degrees 86.786.
		{"compound", CompoundForce(3, 5, 2.6, 360), 122.522, 0.001},
		{"compound part of the way", CompoundForce(3, 5, 2.6, 255), 86.786, 0.001},
		// 20 + 0.0072/(5.0118 x 9.4e-6).
		{"loose at", LooseAt(0.0072, 5.0118, 27.4, 18), 172.83, 0.01},
		{"loose in the cold", LooseAt(0.0072, 5.0118, 18, 27.4), -132.83, 0.01},
		{"closed", ClosedBore(3.210, 0.0283), 3.1817, 1e-12},
		{"onto a mandrel", OntoMandrel(3.216, 3.208, 0.005), 0.013, 1e-12},
		{"pressure", BearingPressure(1.25, 3.16, 3.8), 0.104097, 1e-6},
		// 1000 rev/min on 19.0986 mm is 60 m/min, 1 m/s.
		{"rubbing", Rubbing(19.0985932, 1000), 1, 1e-8},
		{"pv", PV(1.25, 3.16, 3.8, 420), 0.0072340, 1e-6},
		{"side play", SidePlay(20, 18, 0.8, 0.5), 0.7, 1e-12},
	} {
		if !(math.Abs(c.got-c.want) <= c.tol) {
			t.Errorf("%s: %v, by hand %v", c.what, c.got, c.want)
		}
	}
	if !math.IsNaN(LooseAt(0.01, 5, 18, 18)) {
		t.Error("it comes loose where plate and bush grow alike")
	}
}

// The larger chamfer belongs to a wall over the limit: one of 1 mm has the
// smaller, whatever the last bit of its two diameters.
func TestLead(t *testing.T) {
	for _, c := range []struct{ od, bore, want float64 }{
		{5.522, 3.522, 0.2}, {5.0, 3.0, 0.2}, {5.030, 3.030, 0.2}, {5.024, 3.022, 0.3}, {4.9, 3.0, 0.2},
	} {
		if got := Lead(c.od, c.bore, 1, 0.2, 0.3); got != c.want {
			t.Errorf("a bush of %v and %v: %v, want %v", c.od, c.bore, got, c.want)
		}
	}
}

// What the running clearance does when it warms up by 100 K: 3.2 mm of bush at
// 18 is 5.76 um, 3.16 of shaft at 11.5 is 3.634 um; the seat of 5 mm outgrows
// the bush by 5 x (18 - 27.4) = -4.7 um, half of which opens the bore again.
func TestRunChange(t *testing.T) {
	e := Expansions{Bush: 18, Plate: 27.4, Shaft: 11.5}
	for _, c := range []struct {
		by    Hold
		uHigh float64
		want  float64
	}{
		{ByPress, 0.026, 5.76 - 3.634 + 2.35},
		{ByPress, 0.002, 5.76 - 3.634 + 1.0}, // no press is undone below itself
		{ByCap, -0.020, 5.76 - 3.634},        // the play is taken up first
		{ByCompound, -0.040, 5.76 - 3.634 + 2.35},
	} {
		if got := 1000 * RunChange(c.by, e, 120, 3.2, 3.16, 5, c.uHigh, 0.5); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s by %v: %v um, by hand %v", c.by, c.uHigh, got, c.want)
		}
	}
	if got := RunChange(ByPress, e, 20, 3.2, 3.16, 5, 0.026, 0.5); got != 0 {
		t.Errorf("%v at the bench", got)
	}
}

// The wall of a seat keeps its edge where it is: a larger seat has less metal
// left, and the nearer of edge and boss is what counts.
func TestWallOfASeat(t *testing.T) {
	h := Hole{Edge: 6}
	if w, ok := h.wall(5).(press.Edge); !ok || w.Ligament != 3.5 {
		t.Errorf("%+v", h.wall(5))
	}
	if w, ok := h.wall(5.2).(press.Edge); !ok || math.Abs(w.Ligament-3.4) > 1e-12 {
		t.Errorf("%+v", h.wall(5.2))
	}
	h.BossR, h.BossE = 5, 0.5
	if w, ok := h.wall(5).(press.Boss); !ok || w.OD != 10 || w.Ecc != 0.5 || h.EdgeAway() != 4.5 {
		t.Errorf("%+v, edge %v", h.wall(5), h.EdgeAway())
	}
	h.Edge = 4.8 // beyond the boss, though not by its offset
	if _, ok := h.wall(5).(press.Boss); !ok || h.EdgeAway() != 4.5 {
		t.Errorf("%+v, edge %v", h.wall(5), h.EdgeAway())
	}
	h.Edge = 4
	if w, ok := h.wall(5).(press.Edge); !ok || w.Ligament != 1.5 || h.EdgeAway() != 4 {
		t.Errorf("%+v, edge %v", h.wall(5), h.EdgeAway())
	}
	h = Hole{Edge: math.Inf(1)}
	if _, ok := h.wall(5).(press.Infinite); !ok || !math.IsInf(h.EdgeAway(), 1) {
		t.Errorf("%+v", h.wall(5))
	}
}
