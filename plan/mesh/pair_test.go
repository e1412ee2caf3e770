package mesh

import (
	"errors"
	"math"
	"testing"

	"rebush/fits/table"
)

var limits = Limits{ContactRatio: 1.2, ContactHard: 1, TightTooth: 0.01, TipModules: 0.1}

// A worm drive of 20 teeth, module 0.5, worm of 6 mm, wished backlash 0.05 to
// 0.12, by hand:
//
//	tan gamma = 0.5/6 = 0.0833333, gamma = 4.76364 degrees, cos gamma = 0.996546
//	tan ax = tan 20/cos gamma = 0.3639702/0.996546 = 0.365232
//	a0 = (6 + 20 x 0.5)/2 = 8
//	lo = 8 + 0.05/(2 x 0.365232) = 8.068450
//	hi = 8 + 0.12/(2 x 0.365232) = 8.164279
//	tightest tooth: 8 + 0.01/(2 sin 20) + 0.02/2 = 8.024619, below lo: no matter
func TestWindowByHand(t *testing.T) {
	w := Worm{Form: Throated, Module: 0.5, Starts: 1, Teeth: 20, PitchDiameter: 6, Angle: 20, WheelTip: 11}
	win := must[Window](t)(WindowOf(w, 0.5, Wish{Lo: 0.05, Hi: 0.12}, 0.02, limits))
	near(t, "lo", win.Lo, 8.068450, 1e-6)
	near(t, "hi", win.Hi, 8.164279, 1e-6)
	if win.LoBy != "backlash" || win.HiBy != "backlash" || win.Empty || win.FewTeeth {
		t.Errorf("%+v", win)
	}
	// A run-out of 0.2 takes over: 8.014619 + 0.1.
	win = must[Window](t)(WindowOf(w, 0.5, Wish{Lo: 0.05, Hi: 0.12}, 0.2, limits))
	near(t, "run-out", win.Lo, 8.114619, 1e-6)
	if win.LoBy != "run-out" {
		t.Errorf("%+v", win)
	}
	// And a run-out of 0.5 leaves nothing.
	win = must[Window](t)(WindowOf(w, 0.5, Wish{Lo: 0.05, Hi: 0.12}, 0.5, limits))
	if !win.Empty || !(win.Width() < 0) {
		t.Errorf("%+v", win)
	}
}

func TestWindowContactRatio(t *testing.T) {
	// 12/36, module 0.5: contact ratio 1.2 at 12.1900 (METHODS.md 1.6).
	win := must[Window](t)(WindowOf(full(0.5, 12, 36), 0.5, Wish{Lo: 0.05, Hi: 0.2}, 0, limits))
	near(t, "hi", win.Hi, 12.19, 6e-5)
	if win.HiBy != "contact ratio" {
		t.Errorf("%+v", win)
	}
	// With a run-out of 0.05 the loosest tooth stands 0.025 farther.
	win = must[Window](t)(WindowOf(full(0.5, 12, 36), 0.5, Wish{Lo: 0.05, Hi: 0.2}, 0.05, limits))
	near(t, "hi, run-out", win.Hi, 12.165, 6e-5)
	// Eight teeth never have 1.2: the hard limit then, and it is said.
	win = must[Window](t)(WindowOf(full(0.5, 8, 24), 0.5, Wish{Lo: 0.05, Hi: 0.4}, 0, limits))
	if !win.FewTeeth || win.Contact != 1 {
		t.Errorf("%+v", win)
	}
	eps := must[float64](t)(full(0.5, 8, 24).ContactRatio(win.Hi))
	if win.HiBy == "contact ratio" {
		near(t, "eps", eps, 1, 1e-9)
	}
	// A wish in the normal plane is wider than the same figures along the circle.
	n := must[Window](t)(WindowOf(full(0.5, 20, 40), 0.5, Wish{Lo: 0.05, Hi: 0.1, Normal: true}, 0, limits))
	c := must[Window](t)(WindowOf(full(0.5, 20, 40), 0.5, Wish{Lo: 0.05, Hi: 0.1}, 0, limits))
	if !(n.Lo > c.Lo && n.Hi > c.Hi) {
		t.Errorf("normal %+v, circumferential %+v", n, c)
	}
}

func TestWindowBadInput(t *testing.T) {
	for _, wish := range []Wish{{Lo: 0.2, Hi: 0.1}, {Lo: -0.1, Hi: 0.1}, {Lo: math.NaN(), Hi: 1}, {Lo: 0, Hi: math.Inf(1)}, {Lo: 0, Hi: 9}} {
		if w, err := WindowOf(full(0.5, 12, 36), 0.5, wish, 0, limits); err == nil {
			t.Errorf("%+v gave %+v", wish, w)
		}
	}
	var re *RangeError
	if _, err := WindowOf(full(0.5, 12, 36), 0.5, Wish{Hi: 0.1}, -1, limits); !errors.As(err, &re) {
		t.Errorf("run-out -1: %v", err)
	}
	if _, err := WindowOf(full(0.5, 0, 36), 0.5, Wish{Hi: 0.1}, 0, limits); !errors.As(err, &re) {
		t.Errorf("no teeth: %v", err)
	}
}

// The default of the handbook rows in mm, rounded to whole thousandths, by
// pitch (AGMA 390.03 / 2000-A88 as tabled in Machinery's Handbook, from
// memory): least of class B, most of class A.
func TestHandbookWish(t *testing.T) {
	lib := table.BuiltIn()
	for _, r := range []struct {
		module, lo, hi float64
		outside        bool
	}{
		{0.8, 0.051, 0.203, false}, // 31.75 DP
		{0.5, 0.051, 0.178, false}, // 50.8 DP
		{25.4 / 48, 0.051, 0.178, false},
		{0.3, 0.038, 0.140, false}, // 84.7 DP
		{25.4 / 60, 0.051, 0.178, false},
		{25.4 / 60.5, 0.038, 0.178, false}, // between two rows: the finer
		{0.2, 0.038, 0.076, true},          // 127 DP: class B ends at 120
		{1.5, 0.051, 0.203, true},          // 16.9 DP
	} {
		d := must[Default](t)(HandbookWish(lib, r.module))
		near(t, "least", d.Lo, r.lo, 5e-4)
		near(t, "most", d.Hi, r.hi, 5e-4)
		if d.Outside != r.outside || !d.Normal || d.Least.Source == "" || d.Most.Address == "" {
			t.Errorf("module %v: %+v", r.module, d)
		}
	}
	if _, err := HandbookWish(lib, math.NaN()); err == nil {
		t.Error("module NaN was taken")
	}
	classes := must[[]Class](t)(Classes(lib))
	if len(classes) < 10 {
		t.Errorf("%d rows", len(classes))
	}
	for _, c := range classes {
		if !(c.LeastMM < c.MostMM && c.MostMM < 0.3) {
			t.Errorf("%s: %+v", c.Address, c)
		}
	}
}

// mesh.csv has the level of one side; these hold the other sides (plane
// geometry, no published value).
func TestPlace(t *testing.T) {
	above, below := Along{SlopeDeg: 3}, Along{SlopeDeg: 3, Below: true}
	a, n := above.Distance([2]float64{10, 6}, [2]float64{0, 14})
	near(t, "above", a, 8*math.Cos(3*rad)+10*math.Sin(3*rad), 1e-12)
	near(t, "unit", math.Hypot(n[0], n[1]), 1, 1e-15)
	b, _ := below.Distance([2]float64{10, 6}, [2]float64{0, -2})
	near(t, "below", b, 8*math.Cos(3*rad)-10*math.Sin(3*rad), 1e-12)
	// A bore moved down under a worm above opens the mesh, over one it closes it.
	up, _ := Along{}.Distance([2]float64{10, 5.9}, [2]float64{0, 14})
	near(t, "moved down", up, 8.1, 1e-12)
	down, _ := Along{Below: true}.Distance([2]float64{10, 5.9}, [2]float64{0, -2})
	near(t, "moved down, worm below", down, 7.9, 1e-12)
	// L (0, 0.05), R (0.05, -0.03), 30 apart, gear at 10.
	p := Station([2]float64{0, 0.05}, [2]float64{0.05, -0.03}, 10.0/30)
	near(t, "x", p[0], 0.0167, 5e-5)
	near(t, "y", p[1], 0.0233, 5e-5)
	// B 20, b 3: 0.10 across the line of centres costs 0.014, along it 0.005.
	near(t, "across", must[float64](t)(SkewLoss([2]float64{0.1, 0}, [2]float64{0, 1}, 20, 3, 20)), 0.014, 5e-4)
	near(t, "along", must[float64](t)(SkewLoss([2]float64{0, 0.1}, [2]float64{0, 1}, 20, 3, 20)), 0.005, 5e-4)
	if _, err := SkewLoss(p, p, 0, 1, 20); err == nil {
		t.Error("bores in one place were taken")
	}
}
