package target

import (
	"math"
	"strings"
	"testing"
)

// spur and level are the two geometries, as simply as they can be put.
type spur struct{}

func (spur) Distance(p, m Point) (float64, Point) {
	d := math.Hypot(m[0]-p[0], m[1]-p[1])
	return d, Point{(m[0] - p[0]) / d, (m[1] - p[1]) / d}
}

type level struct{}

func (level) Distance(p, m Point) (float64, Point) { return m[1] - p[1], Point{0, 1} }

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.8g, want %.8g ± %g", what, got, want, tol)
	}
}

func place(t *testing.T, in Input) Output {
	t.Helper()
	out, err := Place(in)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// worm is a worm drive worked by hand. A level worm lies above the axle at
// 14.06; the wheel has 20 teeth of module 0.5, the worm 6 mm and one start, 20
// degrees, wanted backlash 0.05 to 0.12. The window of the pair under load is
// 8.068450 to 8.164279 (mesh's own test works it out).
//
//	left bore   widest 3.31, narrowest 3.21, worn to 90 degrees, middle found at
//	            (10.00, 6.05): worn 0.10 upwards, so the old centre lies half of
//	            that below the middle: (10.00, 6.00)
//	right bore  2.49, 2.41, worn to 85, middle (10.01, 6.04): worn 0.08,
//	            old centre (10.01 - 0.04 cos 85, 6.04 - 0.04 sin 85)
//	            = (10.006514, 6.000152)
//
// Both are known to 0.02, so they start at their mean (10.003257, 6.000076).
// The rails lie below: the axle is pressed up, towards the worm.
//
//	clearance   left 15 to 60 um, right: a knurl of 2.40 must pass where the
//	            journal is 2.36, 45 to 60 um. The gear stands half way between
//	            the bores: 30 to 60, so the axle lies 0.015 to 0.030 up.
//	window      tight edge at the most clearance: 8.068450 + 0.030 = 8.098450
//	            loose edge at the least:          8.164279 + 0.015 = 8.179279
//	doubt       u_setup 0.010, u_hole 0.010 over 2 bores, u_geom 0.02,
//	            u_mate 0.01: 0.0001 + 0.00005 + 0.0004 + 0.0001
//	            = 0.00065, u_a = 0.025495
//	narrowed    8.123945 to 8.153784
//	old place   14.06 - 6.000076 = 8.059924: too near by 0.064021
//	least move  y = 14.06 - 8.123945 = 5.936055, x as it was
//	in units    u of the mean 0.02/sqrt 2 = 0.014142: 4.527
//	likeliest   the distance under load at the middle clearance is 14.06 - y - 0.0225,
//	            known to sqrt(0.00065 + 0.015^2/12) = 0.025860; the least of
//	            -ln P + 0.0005 (move/0.014142)^2, found by halving in a script of its
//	            own, is at y = 5.922055, 8.115445 under load, P 0.93593; the least move
//	            has P 0.89145
//	in units    5.517
func worm() Input {
	rad := math.Pi / 180
	return Input{
		Move: 0.0005,
		Shafts: []Shaft{{Name: "front axle", TowardsDeg: 90, USetup: 0.010, UHole: 0.010, Bores: []Bore{
			{Name: "front axle.left", Original: Point{10, 6}, Found: Point{10, 6.05}, Cov: Round(0.02), CdLo: 0.015, CdHi: 0.060},
			{Name: "front axle.right", Original: Point{10.01 - 0.04*math.Cos(85*rad), 6.04 - 0.04*math.Sin(85*rad)}, Found: Point{10.01, 6.04}, Cov: Round(0.02), CdLo: 0.045, CdHi: 0.060},
		}}},
		Gears: []Gear{{Name: "front drive", Shaft: 0, Mate: -1, MateAt: Point{0, 14.06}, Geometry: level{}, Lo: 8.068450, Hi: 8.164279,
			Trusted: true, UGeom: 0.02, UMate: 0.01, Share: 0.5}},
	}
}

func TestWormByHand(t *testing.T) {
	out := place(t, worm())
	s, g := out.Shafts[0], out.Gears[0]
	near(t, "mean x", s.Mean[0], 10.003257, 1e-6)
	near(t, "mean y", s.Mean[1], 6.000076, 1e-6)
	near(t, "u mean", s.UMean, 0.014142, 1e-6)
	near(t, "fit lo", g.FitLo, 8.098450, 1e-9)
	near(t, "fit hi", g.FitHi, 8.179279, 1e-9)
	near(t, "u", g.U, 0.025495, 1e-6)
	near(t, "aim lo", g.AimLo, 8.123945, 1e-6)
	near(t, "aim hi", g.AimHi, 8.153784, 1e-6)
	near(t, "x", s.T[0], 10.003257, 1e-6)
	near(t, "least y", s.LeastMove[1], 5.936055, 1e-6)
	near(t, "least x", s.LeastMove[0], 10.003257, 1e-6)
	near(t, "y", s.T[1], 5.922055, 1e-6)
	near(t, "in u", s.InU, 5.517, 1e-3)
	near(t, "chance", s.Chance, 0.935925, 1e-6)
	near(t, "chance of the least move", s.LeastChance, 0.891450, 1e-6)
	near(t, "correction x", g.Correction[0], 0, 1e-12)
	near(t, "correction y", g.Correction[1], -0.064021, 1e-6)
	near(t, "near", g.Near, 14.06-5.922055-0.030, 1e-6)
	near(t, "far", g.Far, 14.06-5.922055-0.015, 1e-6)
	near(t, "left from original", s.Bores[0].FromOriginal[1], 5.922055-6, 1e-6)
	near(t, "left from found", s.Bores[0].FromFound[1], 5.922055-6.05, 1e-6)
	near(t, "u of the place", s.UT, math.Hypot(0.01, 0.01), 1e-12)
	if g.Bound != "near" || g.Missed != 0 || len(out.Fights) != 0 || s.Fixed {
		t.Errorf("%+v", g)
	}
}

// An untrusted pair reports and moves nothing.
func TestUntrustedReports(t *testing.T) {
	in := worm()
	in.Gears[0].Trusted = false
	out := place(t, in)
	near(t, "y", out.Shafts[0].T[1], out.Shafts[0].Mean[1], 1e-12)
	near(t, "missed", out.Gears[0].Missed, -0.064021, 1e-6)
	near(t, "outside", out.Gears[0].Outside, -(8.098450 - 8.059924), 1e-6)
	near(t, "correction", out.Gears[0].Correction[1], -0.064021, 1e-6)
	if out.Gears[0].Bound != "" {
		t.Errorf("bound %q", out.Gears[0].Bound)
	}
}

// A fixed bore keeps its place, the other goes to it; nothing moves.
func TestFixed(t *testing.T) {
	in := worm()
	in.Shafts[0].Bores[1].Fixed = true
	out := place(t, in)
	s := out.Shafts[0]
	if s.T != in.Shafts[0].Bores[1].Original || s.Bores[0].At != s.T || !s.Fixed || !out.Gears[0].Stuck {
		t.Errorf("%+v", s)
	}
	near(t, "missed", out.Gears[0].Missed, 14.06-s.T[1]-out.Gears[0].AimLo, 1e-9)
	in.Shafts[0].Bores[0].Fixed = true
	out = place(t, in)
	for i, b := range out.Shafts[0].Bores {
		if b.At != in.Shafts[0].Bores[i].Original {
			t.Errorf("bore %d moved: %+v", i, b)
		}
	}
	// The gear half way between sees the middle of both.
	near(t, "between", out.Gears[0].Centre, 14.06-(6+in.Shafts[0].Bores[1].Original[1])/2, 1e-12)
}

// pairOf is two shafts that mesh with each other, too near by 0.09: 12 apart,
// wanted 12.09 at least, no clearance, no doubt of placing.
func pairOf(u1, u2 float64) Input {
	bore := func(name string, x, u float64) []Bore {
		return []Bore{{Name: name, Original: Point{x, 0}, Found: Point{x, 0}, Cov: Round(u)}}
	}
	return Input{
		Shafts: []Shaft{{Name: "axle", Bores: bore("axle.left", 0, u1)}, {Name: "idler", Bores: bore("idler.left", 12, u2)}},
		Gears:  []Gear{{Name: "pair", Shaft: 0, Mate: 1, Geometry: spur{}, Lo: 12.09, Hi: 12.2, Trusted: true}},
	}
}

// Two shafts share a move by their u squared: 0.01 and 0.02 move 1 to 4, of the
// least move of 0.09 that is 0.018 and 0.072.
func TestShare(t *testing.T) {
	out := place(t, pairOf(0.01, 0.02))
	near(t, "axle, at least", out.Shafts[0].LeastMove[0], -0.018, 1e-9)
	near(t, "idler, at least", out.Shafts[1].LeastMove[0], 12.072, 1e-9)
	near(t, "1 to 4", out.Shafts[1].Moved[0], -4*out.Shafts[0].Moved[0], 1e-9)
	near(t, "axle across", out.Shafts[0].Moved[1], 0, 1e-9)
	in := pairOf(0.01, 0.02)
	in.Shafts[0].Bores[0].Fixed = true
	out = place(t, in)
	near(t, "fixed", out.Shafts[0].Moved[0], 0, 0)
	near(t, "all of it", out.Shafts[1].LeastMove[0], out.Gears[0].AimLo, 1e-9)
}

// A covariance makes the cheap way the way: a shaft known well along x and
// badly along y leaves the line of centres.
func TestCovariance(t *testing.T) {
	in := worm()
	in.Gears[0].Geometry, in.Gears[0].MateAt = spur{}, Point{15, 12.2} // up and to the right
	in.Gears[0].Lo, in.Gears[0].Hi = 8.068450, 8.164279
	for i := range in.Shafts[0].Bores {
		in.Shafts[0].Bores[i].Cov = Cov{{0.001 * 0.001, 0}, {0, 0.04 * 0.04}}
	}
	out := place(t, in)
	m := out.Shafts[0].Moved
	if !(math.Abs(m[0]) < 0.01*math.Abs(m[1])) || out.Gears[0].Missed != 0 || m[1] >= 0 {
		t.Errorf("moved %v, gear %+v", m, out.Gears[0])
	}
}

// The tight edge holds at whichever clearance brings the gears nearer: the
// most for a mate above, the least for one below.
func TestClearanceSigns(t *testing.T) {
	in := worm()
	below := Gear{Name: "below", Mate: -1, MateAt: Point{10, -2.2}, Geometry: spur{}, Lo: 8.0, Hi: 8.4, Share: 0.5}
	in.Gears = append(in.Gears, below)
	g := place(t, in).Gears
	near(t, "above, tight", g[0].FitLo-g[0].Lo, 0.030, 1e-9)
	near(t, "above, loose", g[0].FitHi-g[0].Hi, 0.015, 1e-9)
	near(t, "below, tight", g[1].FitLo-g[1].Lo, -0.015, 1e-6)
	near(t, "below, loose", g[1].FitHi-g[1].Hi, -0.030, 1e-6)
	in.Shafts[0].TowardsDeg = 270
	g = place(t, in).Gears
	near(t, "pressed down, tight", g[0].FitLo-g[0].Lo, -0.015, 1e-9)
	near(t, "pressed down, loose", g[0].FitHi-g[0].Hi, -0.030, 1e-9)
}

func TestTruck(t *testing.T) {
	// 0.07 over 18 is 0.223 degrees (metrology, plane geometry).
	skew, tilt, err := Skew(Point{10.07, 6}, Point{10, 6.07}, 18)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "skew", skew, 0.223, 5e-4)
	near(t, "tilt", tilt, -0.223, 5e-4)
	f, r := Ends{Point{10, 6.1}, Point{10.02, 6}}, Ends{Point{48, 6}, Point{48.02, 6.05}}
	near(t, "wheelbase", Wheelbase(f, r), 38, 1e-12)
	gap, err := Rock(f, r, 15, 30)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "rock", gap, 30*0.15/15, 1e-12)
	for _, l := range []float64{0, -1, math.NaN()} {
		if _, _, err := Skew(Point{}, Point{}, l); err == nil {
			t.Errorf("spacing %v was taken", l)
		}
		if _, err := Rock(f, r, l, 30); err == nil {
			t.Errorf("spacing %v was taken", l)
		}
	}
}

func TestBadInput(t *testing.T) {
	for want, change := range map[string]func(*Input){
		"bores":      func(in *Input) { in.Shafts[0].Bores = nil },
		"covariance": func(in *Input) { in.Shafts[0].Bores[0].Cov[0][1] = 1 },
		"plain":      func(in *Input) { in.Shafts[0].Bores[0].Original[0] = math.NaN() },
		"clearance":  func(in *Input) { in.Shafts[0].Bores[0].CdLo = 1 },
		"window":     func(in *Input) { in.Gears[0].Lo = math.Inf(1) },
		"mate":       func(in *Input) { in.Gears[0].Mate = 0 },
		"pressed":    func(in *Input) { in.Shafts[0].USetup = -1 },
	} {
		in := worm()
		change(&in)
		if _, err := Place(in); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", want, err)
		}
	}
	out := place(t, Input{})
	if len(out.Shafts)+len(out.Gears)+len(out.Fights) != 0 {
		t.Errorf("nothing in, %+v out", out)
	}
	// A doubt of nought is floored, not divided by.
	in := worm()
	in.Shafts[0].Bores[0].Cov = Cov{}
	s := place(t, in).Shafts[0]
	if math.IsNaN(s.T[1]) || math.IsInf(s.InU, 0) {
		t.Errorf("%+v", s)
	}
}

func BenchmarkPlace(b *testing.B) {
	in := worm()
	for b.Loop() {
		if _, err := Place(in); err != nil {
			b.Fatal(err)
		}
	}
}
