package survey

import (
	"math"
	"testing"

	"rebush/fits/dim"
	"rebush/plan/job"
)

// holeOf is a bore of a shaft whose journal is 3.16.
func holeOf(t *testing.T, b job.Bore, w WornBore) Hole {
	t.Helper()
	var s job.Shaft
	s.Name, b.Name, b.Side = "drive", "drive.left", job.Left
	s.Journal.Left, s.Journal.Right = mmOf(t, "3.16"), mmOf(t, "3.16")
	return Hole{Shaft: &s, Bore: &b, Worn: w, Middle: [2]float64{10, 8.5}}
}

func mmOf(t *testing.T, s string) dim.Length {
	t.Helper()
	l, err := dim.Parse(s, dim.MM)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// A journal of 3.16 in a hole of 3.20 about (10, 8) that wore 0.10 upwards
// stands 0.02 + 0.10 from the old centre; its lobe leans 30 degrees where it is
// worn to 60: 0.12 sin 60 = 0.10392 up and 0.06 sideways.
func TestStandsInTheLobe(t *testing.T) {
	up := [2]float64{0, 1}
	for _, c := range []struct {
		name    string
		theta   float64 // degrees
		fan, d2 float64
		theta2  float64
		load    [2]float64
		off     float64
		centre  [2]float64
	}{
		{"along the load", 90, 0, 0, 0, up, 0.12, [2]float64{10, 8}},
		{"leaning", 60, 0, 0, 0, up, 0.12 * math.Sqrt(3) / 2, [2]float64{10.06, 8}},
		// Worn away from the load: across the old clearance, 0.02.
		{"against the load", 270, 0, 0, 0, up, 0.02, [2]float64{10, 8}},
		// A fan of 40 degrees either way about 60 holds the load's direction.
		{"fan", 60, 40, 0, 0, up, 0.12, [2]float64{10, 8}},
		// One of 10: its edge at 70 degrees, 0.12 sin 70, 0.12 cos 70.
		{"narrow fan", 60, 10, 0, 0, up, 0.112763, [2]float64{10.041042, 8}},
		// The second lobe, 0.05 upwards, goes further up than 0.12 along +x.
		{"second lobe", 0, 0, 0.05, 90, up, 0.05, [2]float64{10, 8}},
		{"first of two", 90, 0, 0.05, 0, up, 0.12, [2]float64{10, 8}},
	} {
		w := NewWornBore([2]float64{10, 8}, 1.6, 1.58, 0.10, c.theta*math.Pi/180)
		w.FanHalf, w.D2, w.Theta2 = c.fan*math.Pi/180, c.d2, c.theta2*math.Pi/180
		h := holeOf(t, job.Bore{}, w)
		if got := h.AsFound(c.load); math.Abs(got-c.off) > 1e-6 {
			t.Errorf("%s: stands %.6f towards the load, wanted %.6f", c.name, got, c.off)
		}
		if got := h.FoundCentre(c.load); dist(got, c.centre) > 1e-6 {
			t.Errorf("%s: reckoned from %v, wanted %v", c.name, got, c.centre)
		}
		if h.Moved() || h.Stands() != h.Worn {
			t.Errorf("%s: nobody has moved this hole", c.name)
		}
	}
}

// A hole that was moved by an earlier repair is reckoned from its own middle,
// (10, 8.5): widest 3.30 less 3.16, half of it 0.07; drawn with its wear of 0.10
// upwards about it, the old circle lies 0.05 below. With the bush out and its
// seat spoilt nothing is left to stand in.
func TestStandsWhereItWasMoved(t *testing.T) {
	w := NewWornBore([2]float64{10, 8}, 1.6, 1.58, 0.10, math.Pi/2)
	up := [2]float64{0, 1}
	h := holeOf(t,
		job.Bore{Repaired: true, Centre: job.Point{X: mmOf(t, "10"), Y: mmOf(t, "8.5")}, Widest: mmOf(t, "3.30")}, w)
	if !h.Moved() || h.Spoilt() || math.Abs(h.AsFound(up)-0.07) > 1e-12 || h.FoundCentre(up) != h.Middle {
		t.Errorf("moved %v, spoilt %v: %.4f from %v", h.Moved(), h.Spoilt(), h.AsFound(up), h.FoundCentre(up))
	}
	if got := h.Stands().O; dist(got, [2]float64{10, 8.45}) > 1e-12 {
		t.Errorf("the old circle stands at %v", got)
	}
	seat := &job.OldSeat{Centre: job.Point{X: mmOf(t, "10"), Y: mmOf(t, "8.5")}, Diameter: mmOf(t, "5")}
	h = holeOf(t, job.Bore{Seat: seat}, w)
	if !h.Spoilt() || !h.Moved() || h.AsFound(up) != 0 || h.FoundCentre(up) != h.Middle {
		t.Errorf("a seat that is not sound: %.4f from %v", h.AsFound(up), h.FoundCentre(up))
	}
	sound := *seat
	sound.Sound = true
	if h = holeOf(t, job.Bore{Seat: &sound}, w); h.Spoilt() || h.Moved() {
		t.Error("a sound seat is of use")
	}
	if h = holeOf(t, job.Bore{Seat: &sound, Repaired: true}, w); !h.Spoilt() {
		t.Error("a seat that an earlier repair put somewhere tells nothing")
	}
}

// Of two loads the first has worn its lobe less far than the wear says, which
// is that of the deeper one. Made again from its own figures the hole is the
// same, and with 10 um more of wear both go 10 um farther.
func TestTwoLoadsMadeAgain(t *testing.T) {
	h := Hole{Worn: WornBore{O: [2]float64{10, 8}, R: 1.6, JournalR: 1.58, C: 0.02, W: 0.10, D: 0.07, ThetaRad: 1, D2: 0.12, Theta2: 2}}
	same := []float64{10, 8, 1.6, 0.10, 1, 0.02}
	if w := h.With(same).Worn; math.Abs(w.D-0.07) > 1e-12 || math.Abs(w.D2-0.12) > 1e-12 {
		t.Errorf("%+v", w)
	}
	same[3] = 0.11
	if w := h.With(same).Worn; math.Abs(w.D-0.08) > 1e-12 || math.Abs(w.D2-0.13) > 1e-12 || w.W != 0.11 {
		t.Errorf("10 um more: %+v", w)
	}
	if h.Worn.D != 0.07 {
		t.Error("the hole that was asked has changed")
	}
	one := Hole{Worn: NewWornBore([2]float64{10, 8}, 1.6, 1.58, 0.1, 1)}
	if w := one.With(same).Worn; math.Abs(w.D-0.13) > 1e-12 || w.D2 != 0 {
		t.Errorf("of one load: %+v", w)
	}
}
