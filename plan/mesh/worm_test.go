package mesh

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A straight wheel of 24 teeth under an involute worm: METHODS.md 2.4,
// no published value.
func TestStraightWheel(t *testing.T) {
	for _, r := range []struct {
		m              float64
		z1             int
		d1             float64
		g, al, rb, off float64
	}{
		{0.3, 1, 4, 4.301, 20.439, 0.404, 0.041},
		{0.4, 1, 5, 4.589, 20.499, 0.537, 0.058},
		{0.5, 1, 6, 4.780, 20.541, 0.670, 0.075},
		{0.6, 1, 7, 4.917, 20.572, 0.802, 0.093},
		{0.8, 1, 8, 5.739, 20.775, 1.060, 0.142},
		{1.0, 1, 10, 5.739, 20.775, 1.325, 0.178},
		{0.5, 2, 6, 9.594, 22.097, 1.249, 0.268},
	} {
		w := Worm{Form: Straight, Module: r.m, Starts: r.z1, Teeth: 24, PitchDiameter: r.d1, Angle: 20}
		if err := w.Validate(); err != nil {
			t.Fatal(err)
		}
		near(t, "lead angle", w.LeadAngle(), r.g, 6e-4)
		near(t, "working angle", must[float64](t)(w.OperatingAngle(w.Tight())), r.al, 6e-4)
		near(t, "half face", w.FaceNeeded()/2, r.rb, 6e-4)
		near(t, "tight", w.Tight()-w.Standard(), r.off, 6e-4)
	}
}

// Normal backlash by shaft angle, module 0.5 normal, one start, d1 6, 24
// teeth; flank sampling, no published value.
func TestShaftAngle(t *testing.T) {
	mx := 0.5 / math.Cos(math.Asin(0.5/6)) // sin of the lead angle: normal module x starts over diameter
	helical := Worm{Form: Helical, Module: mx, Starts: 1, Teeth: 24, PitchDiameter: 6, Angle: 20}
	straight := Worm{Form: Straight, Module: 0.5, Starts: 1, Teeth: 24, PitchDiameter: 6, Angle: 20}
	for _, r := range []struct{ sigma, helical, straight float64 }{
		{88, 0.0235, 0.0169}, {89, 0.0314, 0.0018}, {89.5, 0.0334, math.NaN()}, {90, 0.0342, -0.0177},
		{90.5, 0.0338, math.NaN()}, {91, 0.0322, -0.0420}, {92, 0.0255, -0.0709},
	} {
		helical.ShaftAngle, straight.ShaftAngle = r.sigma, r.sigma
		near(t, "helical", must[float64](t)(helical.Normal(helical.Standard()+0.05)), r.helical, 6e-5)
		if !math.IsNaN(r.straight) {
			near(t, "straight", must[float64](t)(straight.Normal(9.05)), r.straight, 6e-5)
		}
	}
	// 90 degrees is no seam.
	straight.ShaftAngle = 90
	mid := straight.Tight()
	for _, d := range []float64{-1e-7, 1e-7} {
		straight.ShaftAngle = 90 + d
		near(t, "seam", straight.Tight(), mid, 1e-7)
	}
}

func TestThroated(t *testing.T) {
	w := Worm{Form: Throated, Module: 0.5, Starts: 1, Teeth: 24, PitchDiameter: 6, Angle: 20}
	near(t, "standard", w.Standard(), 9, 1e-12)
	near(t, "tight", w.Tight(), 9, 1e-12)
	// Contact ratios: rack and pinion in the middle plane, no published value.
	near(t, "eps 0", must[float64](t)(w.ContactRatio(9)), 1.787, 6e-4)
	near(t, "eps 0.10", must[float64](t)(w.ContactRatio(9.10)), 1.590, 6e-4)
	near(t, "eps 1.2", must[float64](t)(w.CentreForContactRatio(1.2)), 9.297, 6e-4)
	near(t, "eps 1.0", must[float64](t)(w.CentreForContactRatio(1.0)), 9.399, 6e-4)
	near(t, "play 0.1", must[float64](t)(w.Angular(9.1)), 0.70, 6e-3)
	// Friction at the limit: cos 20 tan gamma, Shigley, from memory.
	for _, r := range [][2]float64{{3, 0.049}, {5, 0.082}, {7, 0.115}, {9.6, 0.159}, {14, 0.234}} {
		g := w
		g.PitchDiameter = 0.5 / math.Tan(r[0]*rad)
		near(t, "self-locking", g.SelfLocking(), r[1], 6e-4)
	}
	// Moved along its axle: METHODS.md 2.5, no published value.
	for _, r := range []struct{ throat, e, closes float64 }{{2.5, 0.1, 0.071}, {2.5, 0.3, 0.193}, {3.5, 0.2, 0.087}} {
		g := w
		g.ThroatRadius = r.throat
		near(t, "offset", must[float64](t)(g.OffsetClosure(r.e, 3)), r.closes, 6e-4)
		near(t, "other way", must[float64](t)(g.OffsetClosure(-r.e, 3)), r.closes, 6e-4)
	}
	if _, err := w.OffsetClosure(0.1, 9); err == nil {
		t.Error("a face wider than the throat was taken")
	}
	w.Form = Helical
	if c, err := w.OffsetClosure(0.3, 3); c != 0 || err != nil {
		t.Errorf("a helical wheel does not mind: %v %v", c, err)
	}
}

func TestWormProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := Worm{
			Form:   rapid.SampledFrom([]Form{Throated, Helical, Straight, Unknown}).Draw(t, "form"),
			Module: rapid.Float64Range(0.2, 1.5).Draw(t, "m"),
			Starts: rapid.IntRange(1, 4).Draw(t, "z1"), Teeth: rapid.IntRange(8, 60).Draw(t, "z2"),
			Angle:      rapid.SampledFrom([]float64{14.5, 20, 25}).Draw(t, "an"),
			Thinned:    rapid.Float64Range(0, 0.05).Draw(t, "T"),
			ShaftAngle: rapid.SampledFrom([]float64{0, 89, 90, 91}).Draw(t, "sigma"),
		}
		w.PitchDiameter = w.Module * rapid.Float64Range(7, 20).Draw(t, "q")
		if err := w.Validate(); err != nil {
			t.Fatal(err)
		}
		a0 := w.Tight()
		if w.Form == Straight && a0+0.5*w.Module >= w.wheelTip()+w.wormTip() {
			t.Skip() // a lead so steep lifts the wheel out of the threads
		}
		if n, err := w.Normal(a0); err != nil || math.Abs(n) > 1e-9 {
			t.Fatalf("tight %v has backlash %v (%v)", a0, n, err)
		}
		j := rapid.Float64Range(0, 0.3).Draw(t, "j") * w.Module
		a, err := w.CentreForBacklash(j)
		if err != nil {
			t.Fatal(err)
		}
		if got, err := w.Backlash(a); err != nil || math.Abs(got-j) > 1e-9 {
			t.Fatalf("backlash %v, want %v (%v)", got, j, err)
		}
		jn, _ := w.Normal(a)
		back, err := w.CentreForNormal(math.Max(0, jn))
		if err != nil || math.Abs(back-a) > 1e-9 {
			t.Fatalf("back to %v, want %v (%v)", back, a, err)
		}
		e1, err1 := w.ContactRatio(a0)
		if err1 != nil || !(e1 >= 0 && e1 < 6) {
			t.Fatalf("contact ratio %v (%v)", e1, err1)
		}
		// Thinned teeth may go deeper, and to a scale drawing the same applies.
		big := w
		big.Module, big.PitchDiameter, big.Thinned = w.Module*3, w.PitchDiameter*3, w.Thinned*3
		if math.Abs(big.Tight()-3*a0) > 1e-8 {
			t.Fatalf("three times as large: %v, want %v", big.Tight(), 3*a0)
		}
	})
}

func TestWormBadInput(t *testing.T) {
	good := Worm{Form: Throated, Module: 0.5, Starts: 1, Teeth: 20, PitchDiameter: 6, Angle: 20}
	for name, change := range map[string]func(*Worm){
		"angle 0": func(w *Worm) { w.Angle = 0 }, "angle 90": func(w *Worm) { w.Angle = 90 },
		"teeth 0": func(w *Worm) { w.Teeth = 0 }, "teeth 4": func(w *Worm) { w.Teeth = 4 },
		"teeth 100000": func(w *Worm) { w.Teeth = 100000 }, "starts 0": func(w *Worm) { w.Starts = 0 },
		"d1 0": func(w *Worm) { w.PitchDiameter = 0 }, "d1 0.4": func(w *Worm) { w.PitchDiameter = 0.4 },
		"d1 NaN": func(w *Worm) { w.PitchDiameter = math.NaN() }, "sigma 0.1": func(w *Worm) { w.ShaftAngle = 0.1 },
		"tip": func(w *Worm) { w.WheelTip = 5 }, "throat": func(w *Worm) { w.ThroatRadius = -1 },
	} {
		w := good
		change(&w)
		var re *RangeError
		if err := w.Validate(); !errors.As(err, &re) {
			t.Errorf("%s: %v", name, err)
		}
	}
	w := good
	w.Form = "globoid"
	var fe *FormError
	if err := w.Validate(); !errors.As(err, &fe) {
		t.Errorf("form: %v", err)
	}
	for _, a := range []float64{0, -1, 2, 20, 1e9, math.NaN(), math.Inf(1)} {
		for what, f := range map[string]func(float64) (float64, error){"normal": good.Normal, "backlash": good.Backlash, "eps": good.ContactRatio, "angular": good.Angular} {
			if v, err := f(a); err == nil || math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("%s at %v: %v, %v", what, a, v, err)
			}
		}
	}
	if good.Measured() {
		t.Error("no tip was measured")
	}
	good.WheelTip = 11
	if !good.Measured() {
		t.Error("a tip of the right size should be trusted")
	}
	good.Form = Unknown
	if good.Measured() {
		t.Error("an unknown form is never trusted")
	}
}
