package world

import (
	"math"
	"testing"
)

// TestHole: an old hole of 3.10 in which a journal of 3.06 sank 0.10 into the
// wall, by hand. Along the wear the hole is wider by all of it, square to the
// wear it is as it was, and flat jaws feel the journal's round.
func TestHole(t *testing.T) {
	h := Hole{Radius: 1.55, Journal: 1.53, Depth: 0.1, Towards: [2]float64{90, 90}}
	wide, deg := h.Widest()
	near(t, "widest", wide, 3.20, 1e-9)
	near(t, "its direction", deg, 90, 1e-3)
	narrow, _ := h.Narrowest()
	near(t, "narrowest", narrow, 3.10, 1e-9)
	// At 45 degrees: 0.12 cos 45 + sqrt(1.53^2 - (0.12 sin 45)^2) + 1.55.
	near(t, "at 45 degrees", h.Across(45), 0.084853+1.527645+1.55, 2e-6)
	near(t, "middle", h.Middle()[1], 0.05, 1e-9)
	h.Towards = [2]float64{30, 30}
	for _, c := range []struct{ deg, want float64 }{
		{0, 0.12*math.Sqrt(3)/2 + 1.53}, {90, 0.06 + 1.53}, {180, 1.55}, {270, 1.55},
	} {
		near(t, "flat jaw", h.Support(c.deg), c.want, 1e-9)
	}
	near(t, "a ball of 0.5 against the worn wall", h.Wall(30, 0.25), 1.65-0.25, 1e-9)
	near(t, "and against the sound one", h.Wall(210, 0.25), 1.55-0.25, 1e-9)
}

// TestHoleDeep: a journal that sank deeper than its own hole leaves straight
// flanks as far apart as itself.
func TestHoleDeep(t *testing.T) {
	h := Hole{Radius: 1.5, Journal: 1.5, Depth: 0.6, Towards: [2]float64{0, 0}}
	for _, deg := range []float64{70, 75, 80, 89} {
		sin := math.Sin(deg * math.Pi / 180)
		near(t, "height of the flank", h.Wall(deg, 0)*sin, 1.5, 1e-9)
	}
	near(t, "end of the groove", h.Wall(0, 0), 2.1, 1e-12)
}

// TestHoleFan: between two loads the whole fan is worn to the full depth, and
// outside it the hole is as one load would leave it.
func TestHoleFan(t *testing.T) {
	fan := Hole{Radius: 2, Journal: 1.97, Depth: 0.1, Towards: [2]float64{60, 120}}
	single := fan
	single.Towards = [2]float64{60, 60}
	for deg := 60.0; deg <= 120; deg += 7.5 {
		near(t, "inside the fan", fan.Wall(deg, 0), 2.1, 1e-12)
	}
	for deg := -120.0; deg <= 60; deg += 7.5 {
		near(t, "outside it", fan.Wall(deg, 0), single.Wall(deg, 0), 1e-12)
	}
}

// TestHoleNeverGrowsInward: wear takes metal away and puts none on.
func TestHoleNeverGrowsInward(t *testing.T) {
	for seed := range uint64(200) {
		s := streamOf(seed, "holes")
		h := Hole{Radius: s.between(1, 4), Depth: s.between(0, 0.8)}
		h.Journal = h.Radius - s.between(0, 0.1)
		h.Towards[0] = s.between(0, 360)
		h.Towards[1] = h.Towards[0] + s.between(0, 90)
		for deg := 0.0; deg < 360; deg += 3 {
			if w := h.Wall(deg, 0); w < h.Radius-1e-12 || w > h.Radius+h.Depth+1e-9 {
				t.Fatalf("seed %d at %g: the wall lies at %g, old radius %g, depth %g", seed, deg, w, h.Radius, h.Depth)
			}
			if h.Support(deg) < h.Wall(deg, 0)-1e-9 {
				t.Fatalf("seed %d at %g: a flat jaw stops inside the hole", seed, deg)
			}
		}
	}
}
