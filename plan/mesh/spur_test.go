package mesh

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.7g, want %.7g ± %g", what, got, want, tol)
	}
}

func must[T any](t *testing.T) func(v T, err error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func full(m float64, z1, z2 int) Spur { return Spur{Module: m, Z1: z1, Z2: z2, Angle: 20} }

// Contact ratios and limits of full-depth pairs at 20 degrees, printed to the
// digits given by an independent computation by flank sampling and plane
// geometry; no published value.
func TestContactAndLimits(t *testing.T) {
	for _, r := range []struct {
		z1, z2           int
		uncapped, capped float64
	}{{8, 24, 1.454, 1.117}, {10, 30, 1.512, 1.264}, {12, 36, 1.556, 1.405}, {14, 28, 1.550, 1.542}} {
		s := full(0.5, r.z1, r.z2)
		near(t, "uncapped", must[float64](t)(s.ContactRatioUncapped(s.Standard())), r.uncapped, 6e-4)
		near(t, "capped", must[float64](t)(s.ContactRatio(s.Standard())), r.capped, 6e-4)
	}
	for _, r := range []struct {
		m              float64
		z1, z2         int
		root, e12, e10 float64
	}{
		{0.3, 12, 30, 6.2250, 6.4082, 6.4781},
		{0.4, 14, 28, 8.3000, 8.5503, 8.6439},
		{0.5, 12, 36, 11.8750, 12.1900, 12.3051},
		{0.5, 20, 40, 14.8750, 15.2317, 15.3460},
		{0.8, 15, 30, 17.8000, 18.3150, 18.5013},
		{1.0, 12, 24, 17.7500, 18.3345, 18.5703},
	} {
		s := full(r.m, r.z1, r.z2)
		near(t, "tight", s.Tight(), s.Standard(), 1e-12)
		c1, c2 := s.TipClearance(r.root)
		near(t, "root", math.Min(c1, c2), 0, 1e-9)
		near(t, "eps 1.2", must[float64](t)(s.CentreForContactRatio(1.2)), r.e12, 6e-5)
		near(t, "eps 1.0", must[float64](t)(s.CentreForContactRatio(1.0)), r.e10, 6e-5)
	}
	if _, err := full(0.5, 8, 24).CentreForContactRatio(1.2); err == nil {
		t.Error("8 teeth never reach a contact ratio of 1.2")
	}
}

// The estimate of the handbooks reads low by these shares (own derivation, no
// published value).
func TestHandbookEstimateReadsLow(t *testing.T) {
	for _, r := range []struct {
		m      float64
		z1, z2 int
		share  [4]float64 // percent at 0.02, 0.1, 0.3, 0.5 modules
	}{
		{0.3, 12, 30, [4]float64{-0.45, -2.2, -6.2, -9.8}},
		{0.5, 12, 36, [4]float64{-0.40, -1.9, -5.5, -8.8}},
		{0.8, 15, 30, [4]float64{-0.42, -2.1, -5.9, -9.3}},
		{1.0, 12, 24, [4]float64{-0.53, -2.6, -7.2, -11.2}},
	} {
		s := full(r.m, r.z1, r.z2)
		for i, k := range []float64{0.02, 0.1, 0.3, 0.5} {
			da := k * r.m
			j := must[float64](t)(s.Backlash(s.Standard() + da))
			near(t, "share", 100*(HandbookBacklash(da, 20)/j-1), r.share[i], 0.06)
		}
	}
}

// 14/20/30 and 12/36 then 14/42: own derivation, no published value.
func TestTrains(t *testing.T) {
	first, second := full(0.5, 14, 20), full(0.5, 20, 30)
	near(t, "idler +0.05", must[float64](t)(IdlerPlay(first, first.Standard()+0.05, second, second.Standard()+0.05)), 0.566, 6e-4)
	near(t, "idler +0.10", must[float64](t)(IdlerPlay(first, first.Standard()+0.10, second, second.Standard()+0.10)), 1.152, 6e-4)
	a, b := full(0.4, 12, 36), full(0.5, 14, 42)
	_, pa, err := a.Angular(a.Standard() + 0.05)
	if err != nil {
		t.Fatal(err)
	}
	_, pb, err := b.Angular(b.Standard() + 0.05)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "first mesh", pa, 0.2952, 6e-5)
	near(t, "second mesh", pb, 0.2013, 6e-5)
	near(t, "compound", must[float64](t)(TrainPlay(Stage{pa, 3}, Stage{pb, 1})), 0.2997, 6e-5)
	if _, err := IdlerPlay(first, 8.55, full(0.5, 21, 30), 12.8); err == nil {
		t.Error("an idler with two tooth counts was taken")
	}
	if _, err := TrainPlay(Stage{1, 0}); err == nil {
		t.Error("a ratio of 0 was taken")
	}
	if _, _, err := Circles([2]float64{}, 1, [2]float64{5, 0}, 2); err == nil || !strings.Contains(err.Error(), "2.0000 mm too far") {
		t.Errorf("circles that miss: %v", err)
	}
	if _, _, err := Circles([2]float64{}, 9, [2]float64{5, 0}, 2); err == nil || !strings.Contains(err.Error(), "2.0000 mm too near") {
		t.Errorf("circles inside each other: %v", err)
	}
}

// The first axle positions of an axle below its mate, m 0.5, 12/36, wanted
// normal backlash 0.04 (own derivation, no published value).
func TestCorrections(t *testing.T) {
	s, m := full(0.5, 12, 36), [2]float64{0, 12}
	at := must[float64](t)(s.CentreForNormal(0.04))
	near(t, "a_t", at, 12.0575, 6e-5)
	near(t, "jwt", must[float64](t)(s.Backlash(at)), 0.0428, 6e-5)
	for _, r := range []struct {
		p    [2]float64
		a    float64
		move [2]float64
	}{
		{[2]float64{0.15, 0.06}, 11.9409, [2]float64{0.0015, -0.1165}},
		{[2]float64{0.15, -0.20}, 12.2009, [2]float64{-0.0018, 0.1434}},
		{[2]float64{-0.10, -0.12}, 12.1204, [2]float64{0.0005, 0.0630}},
		{[2]float64{0.30, 0.00}, 12.0037, [2]float64{0.0013, -0.0537}},
	} {
		a, _ := Across{}.Distance(r.p, m)
		near(t, "a", a, r.a, 6e-5)
		c := Correction(Across{}, r.p, m, at)
		near(t, "dx", c[0], r.move[0], 6e-5)
		near(t, "dy", c[1], r.move[1], 6e-5)
		a, _ = Across{}.Distance([2]float64{r.p[0] + c[0], r.p[1] + c[1]}, m)
		near(t, "moved", a, at, 1e-9)
	}
	// Running clearance, mate above, Cd 0.06, bush placed for 12.0575.
	c := [2]float64{0, 12 - at}
	for _, r := range []struct {
		f [2]float64
		a float64
	}{{[2]float64{0, 1}, 12.0275}, {[2]float64{0, -1}, 12.0875}, {[2]float64{1, -0.364}, 12.0678}, {[2]float64{1, 0.3}, 12.0489}} {
		a, _ := Across{}.Distance(Under(c, 0.06, r.f), m)
		near(t, "under load", a, r.a, 1.1e-4)
	}
}

func TestTips(t *testing.T) {
	s := Spur{Module: 0.5, Z1: 12, Z2: 36, Angle: 20, Tip1: 7.0, Tip2: 19.0}
	if !s.Measured() {
		t.Error("tips of one module should agree")
	}
	s.Tip1 = 7.25 // half a tooth more
	tips := s.Tips()
	near(t, "virtual", tips[0].VirtualTeeth, 12.5, 1e-12)
	near(t, "shift", tips[0].Shift, 0.25, 1e-12)
	if s.Measured() || tips[0].Agrees {
		t.Error("a blank of half a tooth more should not be trusted as it stands")
	}
	as := s.AsTipped()
	if !as.Measured() || as.X1 != 0.25 || as.X2 != 0 {
		t.Errorf("as tipped: %+v", as)
	}
	// Half a tooth more opens the pair by close to a quarter of a module.
	near(t, "opened", as.Tight()-s.Tight(), 0.125, 0.01)
	s.Tip1 = 0
	if s.Measured() {
		t.Error("one tip is not enough")
	}
}

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
		swapped := Spur{s.Module, s.Z2, s.Z1, s.Angle, s.X2, s.X1, s.Thinned, s.Tip2, s.Tip1}
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
	if g1, g2 := full(0.5, 16, 18).Undercut(); !g1 || g2 {
		t.Errorf("16 teeth are undercut at 20 degrees, 18 are not: %v %v", g1, g2)
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
