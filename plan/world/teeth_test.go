package world

import (
	"fmt"
	"math"
	"testing"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.6f, want %.6f within %g", what, got, want, within)
	}
}

// TestTeethPublished holds the geometry to figures that others printed.
func TestTeethPublished(t *testing.T) {
	// Gear technical reference of a maker of stock gears, profile-shifted spur
	// gears: module 3, 12 on 24, shifts 0.6 and 0.36, distance 56.4999 (from memory).
	khk := Teeth{Module: 3, Pressure: 20, Wheel: 24, Pinion: 12, Shift: [2]float64{0.36, 0.6}}
	near(t, "distance without backlash", khk.At(0), 56.4999, 1e-4)
	// A textbook of machine design, spur gears, first example: 6 to the inch,
	// 19 on 37 at the standard distance, contact ratio 1.62 (from memory).
	norton := Teeth{Module: 25.4 / 6, Pressure: 20, Wheel: 37, Pinion: 19}
	near(t, "contact ratio", norton.Contact(25.4/6*28), 1.62, 0.005)
	// Handbook of Metric Gears, section 14, equation 14-2: near the standard
	// distance the gap square to the flank grows by 2 sin of the angle.
	for _, q := range []float64{14.5, 20} {
		pair := Teeth{Module: 1, Pressure: q, Wheel: 40, Pinion: 20}
		near(t, "gap per distance", pair.Backlash(30.001)/0.001, 2*math.Sin(q*math.Pi/180), 1e-3)
	}
}

// TestTeeth: by hand from the closed form in the operating pressure angle,
// which is another way round than the line of action; module 0.5, 12 on 36.
func TestTeeth(t *testing.T) {
	pair := Teeth{Module: 0.5, Pressure: 20, Wheel: 36, Pinion: 12}
	near(t, "standard distance", pair.Backlash(12), 0, 1e-12)
	near(t, "0.1 wider", pair.Backlash(12.1), 0.07050, 5e-6)
	near(t, "0.1 wider, found again", pair.At(0.07050), 12.1, 1e-5)
	thin := pair
	thin.Thinned = 0.03
	near(t, "thinned by 0.03", thin.Backlash(12), 0.03*math.Cos(20*math.Pi/180), 1e-12)
	near(t, "contact at the standard distance", pair.Contact(12), 1.405, 5e-4)
	near(t, "contact lost", pair.Contact(12.3051), 1.0, 5e-5)
	shifted := Teeth{Module: 0.5, Pressure: 20, Wheel: 36, Pinion: 12, Shift: [2]float64{-0.2, 0.2}}
	near(t, "equal and opposite shifts", shifted.Backlash(12), 0, 1e-12)
	if !math.IsNaN(pair.Backlash(11)) {
		t.Error("base circles that overlap give a backlash")
	}
}

// TestScrewStraight: the distance at which a straight-cut wheel is tight is
// larger than half the sum of the pitch diameters; figures found by sampling
// flanks of 24 teeth against the thread.
func TestScrewStraight(t *testing.T) {
	for _, c := range []struct {
		module       float64
		starts       int
		dia, farther float64
	}{{0.3, 1, 4, 0.041}, {0.5, 1, 6, 0.075}, {0.8, 1, 8, 0.142}, {1, 1, 10, 0.178}, {0.5, 2, 6, 0.268}} {
		s := Screw{Module: c.module, Pressure: 20, Starts: c.starts, Wheel: 24, Diameter: c.dia, Straight: true}
		near(t, fmt.Sprint(c), s.At(0)-(c.dia+24*c.module)/2, c.farther, 6e-4)
	}
	helical := Screw{Module: 0.5, Pressure: 20, Starts: 1, Wheel: 24, Diameter: 6}
	near(t, "helical 0.05 wider, square to the flank", helical.Backlash(9.05), 0.0342, 5e-5)
	near(t, "found again", helical.At(0.0342), 9.05, 1e-4)
}
