package survey

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"rebush/testdata"
)

// TestCircles holds every kind of fit to own/circles.csv, to 1e-6 of R. What
// makes those figures right is shown in circle_own_test.go.
func TestCircles(t *testing.T) {
	passed := 0
	for _, r := range testdata.Rows[row](t, "own/circles.csv") {
		id, pts := r["id"], r.points(t)
		ok := true
		is := func(what string, c Circle, err error, cols ...string) {
			t.Helper()
			if err != nil {
				t.Errorf("%s %s: %v", id, what, err)
				ok = false
				return
			}
			for i, got := range []float64{c.Centre[0], c.Centre[1], c.R} {
				want := r.num(t, cols[i])
				ok = near(t, id+" "+cols[i], got, want, 1e-6*math.Max(c.R, 1)) && ok
			}
		}
		ls, err := Least(pts, 0)
		is("least", ls.Circle, err, "lsci_x", "lsci_y", "lsci_r")
		ok = near(t, id+" rms", ls.RMS, r.num(t, "lsci_rms"), 1e-6*ls.R) && ok
		k, err := Kasa(pts)
		is("kasa", k, err, "kasa_x", "kasa_y", "kasa_r")
		p, err := Pratt(pts)
		is("pratt", p, err, "pratt_x", "pratt_y", "pratt_r")
		tb, err := Taubin(pts)
		is("taubin", tb, err, "taubin_x", "taubin_y", "taubin_r")
		c, err := Circumscribed(pts)
		is("circumscribed", c, err, "mcci_x", "mcci_y", "mcci_r")
		if r.has("mzci_x") {
			z, err := MinimumZone(pts)
			is("zone", z.Circle, err, "mzci_x", "mzci_y", "mzci_rmid")
			ok = near(t, id+" zone", z.Width, r.num(t, "mzci_zone"), 1e-6*z.R) && ok
		}
		if r.has("mici_x") {
			i, err := Inscribed(pts)
			is("inscribed", i, err, "mici_x", "mici_y", "mici_r")
		} else if _, err := Inscribed(pts); !errors.Is(err, ErrOneSide) {
			t.Errorf("%s: inscribed: %v, want ErrOneSide", id, err)
			ok = false
		}
		if ok {
			passed++
		}
	}
	t.Logf("own/circles.csv: %d rows passed", passed)
	if passed != 17 {
		t.Errorf("%d rows passed, want 17", passed)
	}
}

func TestCircleErrors(t *testing.T) {
	line := [][2]float64{{0, 0}, {1, 1}, {2, 2}, {3, 3}}
	twice := [][2]float64{{1, 2}, {1, 2}, {4, 5}, {4, 5}}
	arc := [][2]float64{{1, 0}, {0.9, 0.435889894}, {0.9, -0.435889894}, {0.95, 0.3122499}}
	fits := map[string]func([][2]float64) error{
		"least":     func(p [][2]float64) error { _, err := Least(p, 0); return err },
		"kasa":      func(p [][2]float64) error { _, err := Kasa(p); return err },
		"pratt":     func(p [][2]float64) error { _, err := Pratt(p); return err },
		"taubin":    func(p [][2]float64) error { _, err := Taubin(p); return err },
		"zone":      func(p [][2]float64) error { _, err := MinimumZone(p); return err },
		"inscribed": func(p [][2]float64) error { _, err := Inscribed(p); return err },
	}
	for name, fit := range fits {
		if err := fit(line); !errors.Is(err, ErrCollinear) {
			t.Errorf("%s of a line: %v", name, err)
		}
		if err := fit(line[:2]); !errors.Is(err, ErrTooFew) {
			t.Errorf("%s of two points: %v", name, err)
		}
		if err := fit(twice); !errors.Is(err, ErrTooFew) {
			t.Errorf("%s of two points given twice: %v", name, err)
		}
		if err := fit(nil); !errors.Is(err, ErrTooFew) {
			t.Errorf("%s of nothing: %v", name, err)
		}
		if err := fit([][2]float64{{0, 0}, {1, math.NaN()}, {1, 3}}); !errors.Is(err, ErrNotFinite) {
			t.Errorf("%s of no number: %v", name, err)
		}
	}
	if _, err := Inscribed(arc); !errors.Is(err, ErrOneSide) {
		t.Errorf("inscribed of an arc: %v", err)
	}
}

// TestArcFactors holds the factors against the derived table (METHODS.md 5;
// worked out independently by brute force).
func TestArcFactors(t *testing.T) {
	for _, c := range [][5]float64{
		{90, 11.366, 2.346, 10.282, 1.105}, {120, 6.618, 1.847, 5.564, 1.190}, {150, 4.429, 1.572, 3.418, 1.296},
		{180, 3.249, 1.414, 2.298, 1.414}, {210, 2.548, 1.327, 1.675, 1.522}, {240, 2.105, 1.287, 1.326, 1.588},
		{270, 1.814, 1.284, 1.139, 1.593}, {300, 1.620, 1.310, 1.047, 1.548}, {360, 1.414, 1.414, 1.000, 1.414},
	} {
		a, b, r, k := arcFactors(c[0] / 2 * math.Pi / 180)
		for i, got := range []float64{a, b, r, k} {
			near(t, "factor", got, c[i+1], 0.0006)
		}
	}
}

// TestLeastCovariance compares the covariance of the fit with the closed form.
func TestLeastCovariance(t *testing.T) {
	const n, s = 2000, 0.01
	for _, arc := range []float64{120, 180, 300} {
		half := arc / 2 * math.Pi / 180
		var pts [][2]float64
		for i := range n {
			a := -half + 2*half*(float64(i)+0.5)/n
			pts = append(pts, [2]float64{3 + 1.5*math.Cos(a), 2 + 1.5*math.Sin(a)})
		}
		f, err := Least(pts, s)
		if err != nil {
			t.Fatal(err)
		}
		along, across, r, _ := arcFactors(half)
		k := s / math.Sqrt(n)
		near(t, "along", math.Sqrt(f.Cov[0][0])/k, along, 0.002*along)
		near(t, "across", math.Sqrt(f.Cov[1][1])/k, across, 0.002*across)
		near(t, "radius", f.UR/k, r, 0.002*r)
	}
}

// TestCirclesMove: a set moved, turned and scaled moves its circles likewise,
// the zone is never wider than about the least-squares centre, and the circles
// nest. Many points take the way of growing sets.
func TestCirclesMove(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(5, 60).Draw(t, "n")
		var pts, moved [][2]float64
		dx, turn := rapid.Float64Range(-50, 50).Draw(t, "dx"), rapid.Float64Range(0, 6).Draw(t, "turn")
		sin, cos := math.Sincos(turn)
		for i := range n {
			a := 2 * math.Pi * float64(i) / float64(n)
			r := 2 + rapid.Float64Range(-0.1, 0.1).Draw(t, "e")
			p := [2]float64{r * math.Cos(a), r * math.Sin(a)}
			pts = append(pts, p)
			moved = append(moved, [2]float64{dx + 2*(cos*p[0]-sin*p[1]), 2 * (sin*p[0] + cos*p[1])})
		}
		a, err1 := Least(pts, 0)
		b, err2 := Least(moved, 0)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		if math.Abs(b.R-2*a.R) > 1e-8 || math.Abs(b.Centre[0]-dx-2*(cos*a.Centre[0]-sin*a.Centre[1])) > 1e-8 {
			t.Fatalf("moved: %v %v", a, b)
		}
		z, err := MinimumZone(pts)
		if err != nil {
			t.Fatal(err)
		}
		in, err := Inscribed(pts)
		if err != nil {
			t.Fatal(err)
		}
		out, err := Circumscribed(pts)
		if err != nil {
			t.Fatal(err)
		}
		lo, hi := reach(pts, a.Centre)
		if z.Width > hi-lo+1e-9 {
			t.Fatalf("zone %v, about the least-squares centre %v", z.Width, hi-lo)
		}
		if zl, zh := reach(pts, z.Centre); math.Abs(zh-zl-z.Width) > 1e-9 {
			t.Fatalf("zone %v holds %v", z.Width, zh-zl)
		}
		if il, _ := reach(pts, in.Centre); il < in.R-1e-8 || in.R < lo-1e-9 {
			t.Fatalf("inscribed %v, nearest point %v", in, il)
		}
		if _, oh := reach(pts, out.Centre); oh > out.R+1e-8 || out.R > hi+1e-9 {
			t.Fatalf("circumscribed %v, farthest %v", out, oh)
		}
	})
}

// TestKasaBias is the simulation of METHODS.md 5.1: mean error of the radius in micrometres, R 1.55, noise 0.02, 16
// points. Arc 120: Kasa -4.5, least squares +0.2.
func TestKasaBias(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 13))
	const runs = 4000
	var k, l float64
	for range runs {
		var pts [][2]float64
		for i := range 16 {
			a := (float64(i)/15 - 0.5) * 120 * deg
			r := 1.55 + 0.02*rng.NormFloat64()
			pts = append(pts, [2]float64{r * math.Cos(a), r * math.Sin(a)})
		}
		kasa, err1 := Kasa(pts)
		ls, err2 := Least(pts, 0)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		k += (kasa.R - 1.55) / runs
		l += (ls.R - 1.55) / runs
	}
	t.Logf("arc 120: Kasa %+.1f, least squares %+.1f micrometres", 1000*k, 1000*l)
	if k > -0.002 || math.Abs(l) > 0.003 {
		t.Errorf("Kasa %v, least squares %v", k, l)
	}
}
