package target

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
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
//	            u_mate 0.01, run-out 0.02: 0.0001 + 0.00005 + 0.0004 + 0.0001
//	            + 0.01^2/4 = 0.000675, u_a = 0.025981
//	narrowed    8.124431 to 8.153298
//	old place   14.06 - 6.000076 = 8.059924: too near by 0.064507
//	target      y = 14.06 - 8.124431 = 5.935569, x as it was
//	in units    u of the mean 0.02/sqrt 2 = 0.014142: 4.561
func worm() Input {
	rad := math.Pi / 180
	return Input{
		Shafts: []Shaft{{Name: "front axle", TowardsDeg: 90, USetup: 0.010, UHole: 0.010, Bores: []Bore{
			{Name: "front axle.left", Original: Point{10, 6}, Found: Point{10, 6.05}, Cov: Round(0.02), CdLo: 0.015, CdHi: 0.060},
			{Name: "front axle.right", Original: Point{10.01 - 0.04*math.Cos(85*rad), 6.04 - 0.04*math.Sin(85*rad)}, Found: Point{10.01, 6.04}, Cov: Round(0.02), CdLo: 0.045, CdHi: 0.060},
		}}},
		Gears: []Gear{{Name: "front drive", Shaft: 0, Mate: -1, MateAt: Point{0, 14.06}, Geometry: level{}, Lo: 8.068450, Hi: 8.164279,
			Trusted: true, UGeom: 0.02, UMate: 0.01, TIR: 0.02, Share: 0.5}},
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
	near(t, "u", g.U, 0.025981, 1e-6)
	near(t, "aim lo", g.AimLo, 8.124431, 1e-6)
	near(t, "aim hi", g.AimHi, 8.153298, 1e-6)
	near(t, "x", s.T[0], 10.003257, 1e-6)
	near(t, "y", s.T[1], 5.935569, 1e-6)
	near(t, "in u", s.InU, 4.561, 1e-3)
	near(t, "correction x", g.Correction[0], 0, 1e-12)
	near(t, "correction y", g.Correction[1], -0.064507, 1e-6)
	near(t, "near", g.Near, 14.06-5.935569-0.030, 1e-6)
	near(t, "far", g.Far, 14.06-5.935569-0.015, 1e-6)
	near(t, "left from original", s.Bores[0].FromOriginal[1], -0.064431, 1e-6)
	near(t, "left from found", s.Bores[0].FromFound[1], -0.114431, 1e-6)
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
	near(t, "missed", out.Gears[0].Missed, -0.064507, 1e-6)
	near(t, "outside", out.Gears[0].Outside, -(8.098450 - 8.059924), 1e-6)
	near(t, "correction", out.Gears[0].Correction[1], -0.064507, 1e-6)
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

// Two shafts share a move by their u squared: 0.01 and 0.02 move 1 to 4 of
// 0.09, that is 0.018 and 0.072.
func TestShare(t *testing.T) {
	out := place(t, pairOf(0.01, 0.02))
	near(t, "axle", out.Shafts[0].Moved[0], -0.018, 1e-9)
	near(t, "idler", out.Shafts[1].Moved[0], 0.072, 1e-9)
	near(t, "axle across", out.Shafts[0].Moved[1], 0, 1e-9)
	in := pairOf(0.01, 0.02)
	in.Shafts[0].Bores[0].Fixed = true
	out = place(t, in)
	near(t, "fixed", out.Shafts[0].Moved[0], 0, 0)
	near(t, "all of it", out.Shafts[1].Moved[0], out.Gears[0].AimLo-12, 1e-9)
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

// Two worms, above and below, want the shaft 0.1 down and 0.1 up. Windows of
// widths 0.1 and 0.2, no doubt: the miss that is least in widths squared is
// v1/0.01 = v2/0.04 with v1 + v2 = 0.2, 0.04 and 0.16.
func TestFight(t *testing.T) {
	in := Input{
		Shafts: []Shaft{{Name: "axle", Bores: []Bore{{Name: "axle.left", Original: Point{10, 6}, Found: Point{10, 6}, Cov: Round(0.02)}}}},
		Gears: []Gear{
			{Name: "upper", Mate: -1, MateAt: Point{0, 14}, Geometry: level{}, Lo: 8.1, Hi: 8.2, Trusted: true},
			{Name: "lower", Mate: -1, MateAt: Point{10, -2}, Geometry: spur{}, Lo: 8.1, Hi: 8.3, Trusted: true},
		},
	}
	out := place(t, in)
	near(t, "upper", out.Gears[0].Missed, -0.04, 1e-6)
	near(t, "lower", out.Gears[1].Missed, -0.16, 1e-6)
	if len(out.Fights) != 1 || out.Fights[0].A != "upper" || out.Fights[0].B != "lower" || out.Fights[0].Shaft != "axle" {
		t.Fatalf("fights %+v", out.Fights)
	}
	near(t, "gap", out.Fights[0].Gap(), 0.2, 1e-6)
	near(t, "x stays", out.Shafts[0].Moved[0], 0, 1e-9)
}

// One pair that asks for a move of a tenth of its distance is not an answer but
// a contradiction: the shaft goes as far as it may and the rest is told.
func TestTooFar(t *testing.T) {
	in := worm()
	in.MostMove = 0.05
	out := place(t, in)
	m := -out.Shafts[0].Moved[1]
	if out.AllMet || len(out.Fights) != 0 || !(m > 0.01 && m <= 0.05) {
		t.Errorf("moved %v, %+v", m, out)
	}
	near(t, "rest", out.Gears[0].Missed, m-0.064507, 1e-6)
}

// A shaft between two mates that stand too near each other is not sent aside
// to gain by the bend of its circle.
func TestNoBuckling(t *testing.T) {
	in := pairOf(0.02, 0.02)
	in.Shafts[1].Bores[0].Fixed = true
	in.Gears = append(in.Gears, Gear{Name: "other", Mate: -1, MateAt: Point{-12, 0.01}, Geometry: spur{}, Lo: 12.09, Hi: 12.19, Trusted: true})
	out := place(t, in)
	if len(out.Fights) != 1 || math.Hypot(out.Shafts[0].Moved[0], out.Shafts[0].Moved[1]) > 0.165 {
		t.Errorf("%+v", out)
	}
}

// An empty window, and one that the spread of the clearance empties, is aimed
// at in its middle.
func TestEmptyWindow(t *testing.T) {
	in := worm()
	in.Gears[0].Lo, in.Gears[0].Hi = 8.15, 8.05
	out := place(t, in)
	g := out.Gears[0]
	if !g.Empty || g.NoRoom || len(out.Fights) != 0 {
		t.Errorf("%+v", g)
	}
	near(t, "middle", (g.Near+g.Far)/2, 8.10, 1e-9)
	in.Gears[0].Lo, in.Gears[0].Hi = 8.10, 8.11
	out = place(t, in)
	if g = out.Gears[0]; g.Empty || !g.NoRoom {
		t.Errorf("%+v", g)
	}
	near(t, "middle", (g.Near+g.Far)/2, 8.105, 1e-9)
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
	p := worm().Shafts[0].Pressed([]Point{{10, 6}, {10, 6}}, false)
	near(t, "left", p[0][1], 6.0075, 1e-12)
	near(t, "right", p[1][1], 6.0225, 1e-12)
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

// draw makes a train of shafts with gears between neighbours and to fixed mates.
func draw(t *rapid.T) Input {
	n := rapid.IntRange(1, 5).Draw(t, "shafts")
	f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	var in Input
	for i := range n {
		s := Shaft{Name: string(rune('a' + i)), TowardsDeg: f("towards", 0, 360), USetup: f("setup", 0, 0.02), UHole: f("hole", 0, 0.02)}
		fixed := rapid.IntRange(0, 4).Draw(t, "fixed") == 0
		for range rapid.IntRange(1, 2).Draw(t, "bores") {
			o := Point{float64(i)*12 + f("x", -0.1, 0.1), f("y", -0.1, 0.1)}
			u, v, r := f("u", 0.005, 0.05), f("v", 0.005, 0.05), f("rho", -0.9, 0.9)
			lo := f("cd", 0.01, 0.03)
			s.Bores = append(s.Bores, Bore{Original: o, Found: o, Cov: Cov{{u * u, r * u * v}, {r * u * v, v * v}}, CdLo: lo, CdHi: lo + f("spread", 0, 0.03), Fixed: fixed})
		}
		in.Shafts = append(in.Shafts, s)
		g := Gear{Name: s.Name, Shaft: i, Mate: i - 1, Geometry: spur{}, Trusted: rapid.Bool().Draw(t, "trusted"),
			UGeom: 0.02, TIR: f("tir", 0, 0.05), Share: f("share", -0.2, 1.2), MateShare: f("mate share", -0.2, 1.2)}
		if i == 0 {
			g.MateAt = Point{f("mx", -3, 3), 12}
		}
		g.Lo = 11.9 + f("lo", 0, 0.2)
		g.Hi = g.Lo + f("width", 0.02, 0.2)
		in.Gears = append(in.Gears, g)
	}
	return in
}

func TestProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := draw(t)
		out, err := Place(in)
		if err != nil {
			t.Fatal(err)
		}
		loose := true
		for i, g := range out.Gears {
			if bad(g) && out.AllMet {
				t.Fatalf("%s missed by %v and no fight told", g.Name, g.Missed)
			}
			if g.Bound != "" {
				loose = false
			}
			if !in.Gears[i].Trusted && g.Bound != "" {
				t.Fatalf("an untrusted pair moved a shaft: %+v", g)
			}
		}
		unmoved := Judge(in, newProblem(in).mean)
		wants := false
		for _, g := range unmoved {
			wants = wants || bad(g)
		}
		for i, s := range out.Shafts {
			if d := math.Hypot(s.Moved[0], s.Moved[1]); (loose || !wants || s.Fixed) && d > 1e-9 {
				t.Fatalf("shaft %s moved %v without need", s.Name, d)
			}
			if math.IsNaN(s.T[0]+s.T[1]) || in.Shafts[i].Name != s.Name {
				t.Fatalf("%+v", s)
			}
		}
		// No small step from the answer costs less and still meets the windows.
		if out.AllMet {
			base := cost(out)
			for i := range in.Shafts {
				if out.Shafts[i].Fixed {
					continue
				}
				for k := range 8 {
					sin, cos := math.Sincos(float64(k) * math.Pi / 4)
					at := make([]Point, len(out.Shafts))
					for j, s := range out.Shafts {
						at[j] = s.T
					}
					at[i] = Point{at[i][0] + 1e-4*cos, at[i][1] + 1e-4*sin}
					ok := true
					for _, g := range Judge(in, at) {
						ok = ok && (g.Missed == 0 || !g.Trusted || g.Stuck)
					}
					d := Point{at[i][0] - out.Shafts[i].Mean[0], at[i][1] - out.Shafts[i].Mean[1]}
					w := newProblem(in).weight[i]
					c := base - out.Shafts[i].InU*out.Shafts[i].InU + d[0]*(w[0][0]*d[0]+w[0][1]*d[1]) + d[1]*(w[1][0]*d[0]+w[1][1]*d[1])
					if ok && c < base-1e-6*(1+base) {
						t.Fatalf("shaft %d: a step costs %v, the answer %v", i, c, base)
					}
				}
			}
		}
	})
}

func cost(o Output) float64 {
	c := 0.
	for _, s := range o.Shafts {
		c += s.InU * s.InU
	}
	return c
}

// Mirrored along x the answer is mirrored; three times as large it is three
// times as large.
func TestMirrorAndScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := draw(t)
		out, err := Place(in)
		if err != nil {
			t.Fatal(err)
		}
		change := func(k float64, f func(Point) Point, deg func(float64) float64, rho float64) Input {
			var c Input
			for _, s := range in.Shafts {
				s.TowardsDeg, s.USetup, s.UHole = deg(s.TowardsDeg), k*s.USetup, k*s.UHole
				bores := append([]Bore(nil), s.Bores...)
				for i := range bores {
					b := &bores[i]
					b.Original, b.Found, b.CdLo, b.CdHi = f(b.Original), f(b.Found), k*b.CdLo, k*b.CdHi
					b.Cov = Cov{{k * k * b.Cov[0][0], rho * k * k * b.Cov[0][1]}, {rho * k * k * b.Cov[1][0], k * k * b.Cov[1][1]}}
				}
				s.Bores = bores
				c.Shafts = append(c.Shafts, s)
			}
			for _, g := range in.Gears {
				g.MateAt, g.Lo, g.Hi, g.UGeom, g.UMate, g.TIR = f(g.MateAt), k*g.Lo, k*g.Hi, k*g.UGeom, k*g.UMate, k*g.TIR
				c.Gears = append(c.Gears, g)
			}
			return c
		}
		for _, c := range []struct {
			in   Input
			back func(Point) Point
		}{
			{change(1, func(p Point) Point { return Point{-p[0], p[1]} }, func(d float64) float64 { return 180 - d }, -1), func(p Point) Point { return Point{-p[0], p[1]} }},
			{change(3, func(p Point) Point { return Point{3 * p[0], 3 * p[1]} }, func(d float64) float64 { return d }, 1), func(p Point) Point { return Point{p[0] / 3, p[1] / 3} }},
		} {
			o, err := Place(c.in)
			if err != nil {
				t.Fatal(err)
			}
			if len(o.Fights) != len(out.Fights) {
				t.Fatalf("fights %v, were %v", o.Fights, out.Fights)
			}
			for i, s := range o.Shafts {
				b, w := c.back(s.T), out.Shafts[i].T
				if math.Hypot(b[0]-w[0], b[1]-w[1]) > 2e-6 {
					t.Fatalf("shaft %d at %v, want %v", i, b, w)
				}
			}
		}
	})
}

func BenchmarkPlace(b *testing.B) {
	in := worm()
	for b.Loop() {
		if _, err := Place(in); err != nil {
			b.Fatal(err)
		}
	}
}
