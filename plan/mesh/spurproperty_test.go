package mesh

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func genSpur(t *rapid.T) Spur {
	return Spur{
		Module: rapid.Float64Range(0.2, 1.5).Draw(t, "m"),
		Z1:     rapid.IntRange(5, 60).Draw(t, "z1"), Z2: rapid.IntRange(5, 90).Draw(t, "z2"),
		Angle: rapid.SampledFrom([]float64{14.5, 17.5, 20, 25}).Draw(t, "alpha"),
		X1:    rapid.Float64Range(0, 0.6).Draw(t, "x1"), X2: rapid.Float64Range(0, 0.4).Draw(t, "x2"),
		Thinned: rapid.Float64Range(0, 0.05).Draw(t, "T"),
	}
}

// Backlash from tooth thicknesses, the long way round, equals the closed form;
// it rises with the distance; the inverses come back; gear order is no matter.
func TestSpurProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := genSpur(t)
		if s.Validate() != nil {
			t.Skip()
		}
		j := rapid.Float64Range(0, 0.3).Draw(t, "j") * s.Module
		a, err := s.CentreForNormal(j)
		if err != nil {
			t.Fatal(err)
		}
		got, err := s.Normal(a)
		var de *DistanceError
		if errors.As(err, &de) && de.Far {
			t.Skip() // so few teeth do not reach that far
		}
		if err != nil || math.Abs(got-j) > 1e-9 {
			t.Fatalf("normal backlash at %v: %v, want %v (%v)", a, got, j, err)
		}
		jwt, _ := s.Backlash(a)
		back, err := s.CentreForBacklash(math.Max(0, jwt))
		if err != nil || math.Abs(back-a) > 1e-9 {
			t.Fatalf("centre for %v: %v, want %v (%v)", jwt, back, a, err)
		}
		aw, _ := s.OperatingAngle(a)
		rw1, rw2 := a*float64(s.Z1)/s.teeth(), a*float64(s.Z2)/s.teeth()
		thick := func(z int, x, rw float64) float64 {
			r := s.Module * float64(z) / 2
			sr := s.Module*(math.Pi/2+2*x*math.Tan(s.alpha())) - s.Thinned/2
			return 2 * rw * (sr/(2*r) + Involute(s.alpha()) - Involute(aw*rad))
		}
		if long := 2*math.Pi*rw1/float64(s.Z1) - thick(s.Z1, s.X1, rw1) - thick(s.Z2, s.X2, rw2); math.Abs(long-jwt) > 1e-9 {
			t.Fatalf("backlash %v, by tooth thickness %v", jwt, long)
		}
		if more, err := s.Backlash(a + 1e-3); err == nil && more <= jwt {
			t.Fatalf("backlash falls from %v to %v as the axles part", jwt, more)
		}
		swapped := Spur{Module: s.Module, Z1: s.Z2, Z2: s.Z1, Angle: s.Angle, X1: s.X2, X2: s.X1,
			Thinned: s.Thinned, Tip1: s.Tip2, Tip2: s.Tip1}
		if other, _ := swapped.Backlash(a); math.Abs(other-jwt) > 1e-12 {
			t.Fatalf("order of the gears matters: %v, %v", jwt, other)
		}
		c, err := s.ContactRatio(a)
		u, _ := s.ContactRatioUncapped(a)
		if err != nil || c > u+1e-12 || c < 0 {
			t.Fatalf("contact ratio %v, uncapped %v (%v)", c, u, err)
		}
	})
}

// Never NaN, never Inf, whatever is typed.
func TestSpurBadInput(t *testing.T) {
	good := full(0.5, 12, 36)
	for name, change := range map[string]func(*Spur){
		"angle 0":      func(s *Spur) { s.Angle = 0 },
		"angle 90":     func(s *Spur) { s.Angle = 90 },
		"angle NaN":    func(s *Spur) { s.Angle = math.NaN() },
		"teeth 0":      func(s *Spur) { s.Z1 = 0 },
		"teeth 1":      func(s *Spur) { s.Z2 = 1 },
		"teeth 4":      func(s *Spur) { s.Z1 = 4 },
		"teeth -12":    func(s *Spur) { s.Z1 = -12 },
		"teeth 100000": func(s *Spur) { s.Z2 = 100000 },
		"module 0":     func(s *Spur) { s.Module = 0 },
		"module Inf":   func(s *Spur) { s.Module = math.Inf(1) },
		"shift 9":      func(s *Spur) { s.X1 = 9 },
		"thinned -1":   func(s *Spur) { s.Thinned = -1 },
		"too thin":     func(s *Spur) { s.Z1, s.Z2, s.Thinned = 12, 12, 0.4 },
		"tip 3":        func(s *Spur) { s.Tip1 = 3 },
		"tip 70":       func(s *Spur) { s.Tip1 = 70 },
	} {
		s := good
		change(&s)
		err := s.Validate()
		var re *RangeError
		if !errors.As(err, &re) || strings.Contains(err.Error(), "%!") {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, a := range []float64{0, -3, 5, good.leastBase(), 14, 1e9, math.NaN(), math.Inf(1), math.Inf(-1)} {
		for what, f := range map[string]func(float64) (float64, error){
			"normal": good.Normal, "backlash": good.Backlash, "angle": good.OperatingAngle, "eps": good.ContactRatio,
			"uncapped": good.ContactRatioUncapped, "path": good.PathOfContact} {
			v, err := f(a)
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("%s at %v is %v", what, a, v)
			}
			if err == nil && !(what == "angle" && a > 12) {
				t.Errorf("%s at %v: no error", what, a)
			}
		}
	}
	if _, err := good.Normal(9); err == nil || !strings.Contains(err.Error(), "must be more than 11.2763") {
		t.Errorf("too near: %v", err)
	}
	if _, err := good.Normal(14); err == nil || !strings.Contains(err.Error(), "no longer reach") {
		t.Errorf("too far: %v", err)
	}
	for _, dp := range []float64{0, -48, math.NaN(), math.Inf(1)} {
		if _, err := ModuleFromDP(dp); err == nil {
			t.Errorf("DP %v was taken", dp)
		}
	}
	for _, j := range []float64{-0.1, 5, math.NaN(), math.Inf(1)} {
		if v, err := good.CentreForBacklash(j); err == nil || math.IsNaN(v) {
			t.Errorf("backlash %v: %v, %v", j, v, err)
		}
	}
}

func TestFillet(t *testing.T) {
	// A full-depth pair at its standard distance never digs into a fillet: the
	// rack that cut it reached deeper (standard generation geometry).
	for _, z := range [][2]int{{8, 24}, {12, 36}, {17, 34}, {20, 40}, {30, 90}} {
		s := full(0.5, z[0], z[1])
		if low := s.Lowest(0); low.At != s.Tight() || low.By != "flanks" {
			t.Errorf("%v: %+v, want the flanks at %v", z, low, s.Tight())
		}
	}
	// A tip a module and a half high does.
	s := full(0.5, 20, 40)
	s.Tip2 = 21.5
	if low := s.Lowest(0); low.By == "flanks" || low.At <= s.Tight() {
		t.Errorf("a long tip: %+v", low)
	}
	// Thinned teeth let the tip reach the root first.
	s = full(0.5, 16, 32)
	s.Thinned = 0.2
	if low := s.Lowest(0); low.By == "flanks" {
		t.Errorf("thinned teeth: %+v, tight %v", low, s.Tight())
	}
}

// The series for small angles joins the closed form.
func TestInverseInvolute(t *testing.T) {
	for _, deg := range []float64{1e-3, 0.1, 0.5, 1, 1.145, 1.2, 5, 14.5, 20, 45, 80, 89.9} {
		x := deg * rad
		y := Involute(x)
		if deg < 1 { // tan t - t loses its figures there
			y = x * x * x * (1./3 + x*x*(2./15+x*x*17./315))
		}
		near(t, "inverse involute", InverseInvolute(y)/x, 1, 1e-12)
	}
	for _, y := range []float64{0, -1, math.NaN(), math.Inf(1), 1e300} {
		if v := InverseInvolute(y); math.IsNaN(v) || v < 0 || v > math.Pi/2 {
			t.Errorf("inverse involute of %v is %v", y, v)
		}
	}
	near(t, "14.5", Involute(14.5*rad), 0.005544843, 5e-10)
}
