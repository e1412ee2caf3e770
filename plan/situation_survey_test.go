package plan_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/plan"
)

// wornWall is a ring of points on the wall of a bore of radius R about (x, y)
// that a journal of radius r has worn to depth w towards theta: the edge of the
// old circle joined with the journal at its end, c + w from the old centre.
func wornWall(x, y, R, r, w, thetaDeg float64, n int) string {
	d := R - r + w
	th := thetaDeg * math.Pi / 180
	var b strings.Builder
	for i := range n {
		a := 2 * math.Pi * float64(i) / float64(n)
		rho := R
		// Far side of the journal's circle along this ray.
		if q := r*r - math.Pow(d*math.Sin(a-th), 2); q >= 0 {
			rho = math.Max(rho, d*math.Cos(a-th)+math.Sqrt(q))
		}
		if i > 0 {
			b.WriteString(", ")
		}
		fmt.Fprintf(&b, "[%.5f, %.5f]", x+rho*math.Cos(a), y+rho*math.Sin(a))
	}
	return b.String()
}

// TestOldCentres works the old centre of one bore from every kind of evidence
// by the decisions and formulas of plan/survey/METHODS.md 3.
func TestOldCentres(t *testing.T) {
	const good = "centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20, worn_to: 90"
	features := "  features:\n" +
		"    - {name: a, at: [5.10, 14.95], diameter: 2.0, design: [5.00, 15.00]}\n" +
		"    - {name: b, at: [30.10, 14.95], diameter: 2.0, design: [30.00, 15.00]}\n" +
		"    - {name: c, at: [55.10, 11.95], diameter: 2.0, design: [55.00, 12.00]}\n"
	for _, c := range []struct {
		name  string
		s     situation
		rank  int
		x, y  float64 // old centre
		u     float64 // 0: not looked at
		wear  float64 // NaN: not looked at
		dia   float64
		tol   float64
		doubt bool
	}{
		// Rank 1: the seat as measured, u the instrument's for a middle: 0.010.
		{"seat of the old bush", plain(t).drive("seat: {diameter: 5.006, centre: [10.00, 8.00], sound: yes}", good), 1, 10, 8, 0.010, 0, 5.006, 1e-4, false},
		// Rank 2: all round with journal and side. It is a mean over all outlines that
		// points good to 0.01 allow, and hangs to a tenth of its u on the depth expected.
		{"probed, journal and side", plain(t).drive("worn_to: 90, probed: ["+wornWall(10, 8, 1.6, 1.58, 0.1, 90, 16)+"]", good), 2, 10, 8, 0, 0.1, 3.2, 1e-3, false},
		{"probed, worn to 200", plain(t).drive("worn_to: 200, probed: ["+wornWall(10, 8, 1.6, 1.58, 0.2, 200, 24)+"]", good), 2, 10, 8, 0, 0.2, 3.2, 1e-3, false},
		// Rank 4: O = M - (w/2) along the wear: 8.05 - 0.05. u along:
		// hypot(0.010, hypot(0.004, 0.004)/2) = 0.01039; across:
		// hypot(0.010, 0.05 x 10 degrees = 0.00873) = 0.01327, the larger.
		{"widest and narrowest", plain(t), 4, 10, 8, 0.01327, 0.1, 3.2, 1e-4, false},
		// Worn forwards: widest along x, side 0.
		{"worn forwards", plain(t).drive("centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20, worn_to: 0", good), 4, 9.95, 8.05, 0.01327, 0.1, 3.2, 1e-4, false},
		// The measured line of the widest rules, on the stated side: 80 degrees,
		// O = (10 - 0.05 cos 80, 8.05 - 0.05 sin 80) = (9.99132, 8.00076).
		{"line of the widest", plain(t).drive(good+", widest_at: 260", good).once("worn_to: 90, widest_at: 260", "worn_to: 85, widest_at: 260"), 4, 9.99132, 8.00076, 0.01327, 0.1, 3.2, 1e-4, false},
		// Pins 3.19 goes, 3.20 stops: 2R = 3.195, w = 3.30 - 3.195 = 0.105,
		// O = 8.05 - 0.0525.
		{"widest and pins", plain(t).drive("centre: [10.00, 8.05], widest: 3.30, pins: {goes: 3.19, stops: 3.20}, worn_to: 90", good), 4, 10, 7.9975, 0, 0.105, 3.195, 1e-4, false},
		// Four walls: plan/survey/METHODS.md 3.4 moved by (10, 8): R 1.55, r 1.53, w 0.10
		// towards 30 degrees. u of the wall 0.010, of R 0.002, common to both
		// axes: along the diagonal sqrt(0.0001 + 2 x 0.000004) = 0.01039. That the upper
		// wall may not be worn, 2.8 of its doubts, takes half a micron off.
		{"four walls", plain(t).with("name: drive\n    journal: 3.16", "name: drive\n    journal: 3.06").
			drive("walls: {left: 8.4500, right: 11.6339, bottom: 6.4500, top: 9.5900}, narrowest: 3.10, worn_to: 30", "centre: [10.00, 8.05], widest: 3.20, narrowest: 3.10, worn_to: 90"), 4, 10, 8, 0.01039, 0.1, 3.10, 6e-4, false},
		// Rank 5: the other plate's, and 0.05 for two drillings:
		// hypot(0.01327, 0.05) = 0.05173; drilled together 0.02: 0.0240.
		{"the other plate", plain(t).drive("edges: [{at: 270, metal: 6}]", good), 5, 10, 8, 0.05173, math.NaN(), 3.16, 1e-4, false},
		{"the other plate, drilled together", plain(t).drive("edges: [{at: 270, metal: 6}]", good).with("  current: none\n", "  current: none\n  drilled_together: yes\n"), 5, 10, 8, 0.02400, math.NaN(), 3.16, 1e-4, false},
		// Rank 6: the drawing through three unworn holes that all stand
		// (+0.10, -0.05) from it.
		{"the drawing", plain(t).drive("repaired: yes, centre: [10.1, 8.2], widest: 3.5, narrowest: 3.3, worn_to: 90", "repaired: yes, centre: [10.1, 8.2], widest: 3.5, narrowest: 3.3, worn_to: 90").
			with("  current: none\n", "  current: none\n"+features).with("    rpm: 400\n", "    rpm: 400\n    design: [9.90, 8.05]\n"), 6, 10, 8, 0, math.NaN(), math.NaN(), 1e-4, false},
		// An earlier repair drops ranks 1 to 4: the other plate speaks.
		{"repaired", plain(t).drive("repaired: yes, centre: [10.1, 8.2], widest: 3.5, narrowest: 3.3, worn_to: 90", good), 5, 10, 8, 0.05173, math.NaN(), math.NaN(), 1e-4, false},
		// Round within 2u (2 x hypot(0.004, 0.004) = 0.0113), yet half of what it
		// reads lies on the stated side: 8.05 - 0.005; u hypot(0.010, 0.00283).
		{"round", plain(t).drive("centre: [10.00, 8.05], widest: 3.21, narrowest: 3.20, worn_to: 90", good), 4, 10, 8.045, 0.01039, 0.01, 3.2, 1e-4, false},
		// No side: the middle, doubtful.
		{"side not known", plain(t).drive("centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20", "centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20"), 4, 10, 8.05, 0, 0.1, 3.2, 1e-4, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.s.t = t
			p := c.s.plan()
			s := surveyed(t, p, "drive.left")
			// What that kind of evidence says; the whole of it is TestEvidenceTogether.
			var e plan.Evidence
			for _, k := range s.Evidence {
				if k.Rank == c.rank && e.What == "" {
					e = k
				}
				if k.Weight > 0.5 && k.Rank != c.rank {
					t.Errorf("rank %d (%s) makes %v of it, wanted %d", k.Rank, k.What, k.Weight, c.rank)
				}
			}
			nearXY(t, "old centre", e.CentreMM, c.x, c.y, c.tol)
			if c.u > 0 {
				nearMM(t, "u", e.UMM, c.u, 2e-4)
			}
			if !e.Used {
				t.Errorf("it is not used")
			}
			if !math.IsNaN(c.wear) {
				nearMM(t, "wear", s.WearMM, c.wear, 2*c.tol)
			}
			if !math.IsNaN(c.dia) {
				nearMM(t, "diameter", s.DiameterMM, c.dia, 2*c.tol)
			}
			cautioned := false
			for _, f := range said(p, "old centre") {
				cautioned = cautioned || f.Level == finding.Caution && f.Where == "drive.left"
			}
			if cautioned != c.doubt {
				t.Errorf("caution about the old centre: %v, wanted %v\n%s", cautioned, c.doubt, everything(p))
			}
		})
	}
}

// TestEvidenceTogether: the seat of one plate is known to 0.010, that of the other
// to 0.010 and stands 0.02 higher, drilled with it to 0.02: hypot(0.010, 0.02) =
// 0.02236. Their weights go by 1/u^2, 10000 to 2000, so 8 + 0.02/6, known to
// 1/sqrt(12000) = 0.00913.
func TestEvidenceTogether(t *testing.T) {
	p := plain(t).with("  current: none\n", "  current: none\n  drilled_together: yes\n").
		drive("seat: {diameter: 5.006, centre: [10.00, 8.00], sound: yes}",
			"seat: {diameter: 5.006, centre: [10.00, 8.02], sound: yes}").plan()
	s := surveyed(t, p, "drive.left")
	nearXY(t, "together", s.CentreMM, 10, 8.00333, 1e-4)
	nearMM(t, "u", s.CentreUMM, 0.00913, 1e-4)
	for i, want := range []float64{5.0 / 6, 1.0 / 6} {
		if near(t, s.Evidence[i].What, s.Evidence[i].Weight, want, 1e-3); !s.Evidence[i].Used {
			t.Errorf("%s is not used", s.Evidence[i].What)
		}
	}
}

// TestEvidenceDisagrees: the seat says (10, 8), the diameters (10.2, 8.0); they
// may differ by 2 hypot(0.010, 0.0133) = 0.033.
func TestEvidenceDisagrees(t *testing.T) {
	p := plain(t).drive("seat: {diameter: 5.006, centre: [10.00, 8.00], sound: yes}, centre: [10.20, 8.05], widest: 3.30, narrowest: 3.20, worn_to: 90",
		"centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20, worn_to: 90").plan()
	f := saidOf(t, p, "evidence disagrees", "drive.left")
	if f.Level != finding.Caution || !strings.Contains(f.Text.String(), "seat") || !strings.Contains(f.Text.String(), "widest and narrowest") || !strings.Contains(f.Text.String(), "0.200") {
		t.Error(f.Text)
	}
	if n := len(surveyed(t, p, "drive.left").Evidence); n < 3 {
		t.Errorf("only %d kinds of evidence shown", n)
	}
	unsaid(t, plain(t).plan(), "evidence disagrees")
}

// TestInstruments: a bias counts only where its instrument is named; without a
// name the worst instrument of the shop for that reading gives the doubt.
func TestInstruments(t *testing.T) {
	s := plain(t).inShop("{name: bore gauge, u: 0.004}", "{name: bore gauge, u: 0.004}, {name: nibs calliper inside, u: 0.020, bias: -0.015}")
	// Not named: diameters as read, u of w = hypot(0.02, 0.02) = 0.0283; the
	// middle by the read-out, so along hypot(0.010, 0.01414) = 0.01732.
	a := surveyed(t, s.once("worn_to: 90}", "worn_to: 90, with: {centre: read-out}}").plan(), "drive.left")
	nearMM(t, "diameter as read", a.DiameterMM, 3.200, 1e-9)
	nearMM(t, "u by the worst", a.Evidence[0].UMM, 0.01732, 1e-4)
	// Named: both read 0.015 small, so 3.215 and the same wear.
	b := surveyed(t, s.once("worn_to: 90}", "worn_to: 90, with: {widest: nibs calliper inside, narrowest: nibs calliper inside}}").plan(), "drive.left")
	nearMM(t, "diameter with the bias off", b.DiameterMM, 3.215, 1e-9)
	nearMM(t, "wear", b.WearMM, 0.100, 1e-9)
	nearMM(t, "clearance", b.ClearanceMM, 0.0275, 1e-9)
	// The good one named: its own u, no bias; now across is the larger:
	// hypot(0.010, 0.05 x 10 degrees) = 0.01327.
	g := surveyed(t, s.once("worn_to: 90}", "worn_to: 90, with: {widest: bore gauge, narrowest: bore gauge, centre: read-out}}").plan(), "drive.left")
	nearMM(t, "u by the bore gauge", g.Evidence[0].UMM, 0.01327, 1e-4)
}

// TestNothingTells: repaired in both plates and no drawing is a stop that says
// what could be measured; of a shaft that is left alone it is none.
func TestNothingTells(t *testing.T) {
	const gone = "repaired: yes, centre: [10.1, 8.2], widest: 3.5, narrowest: 3.3, worn_to: 90"
	p := plain(t).drive(gone, gone).plan()
	if p.OK || len(p.Operations) != 0 {
		t.Error("a plan without a centre may be machined")
	}
	f := saidOf(t, p, "no centre", "drive.left")
	if f.Level != finding.Stop || !strings.Contains(f.Fix.String(), "measure") || f.Line == 0 {
		t.Errorf("%+v", f)
	}
	s := surveyed(t, p, "drive.left")
	if s.CentreMM != nil || s.CentreUMM.Given() || s.WearMM.Given() {
		t.Errorf("a centre out of nothing: %+v", s)
	}
	left := plain(t).with("      left: {centre: [48.00, 8.00], widest: 3.20, narrowest: 3.20}\n", "      left: {}\n").
		with("      right: {centre: [48.00, 8.00], widest: 3.20, narrowest: 3.20}\n", "      right: {}\n")
	if q, err := left.read(); err == nil && q != nil {
		if r := left.plan(); !r.OK {
			t.Errorf("a shaft that is left alone and was not measured stops the job:\n%s", everything(r))
		}
	}
}

// TestGrowth: 38.00 between old centres; the sister decides.
func TestGrowth(t *testing.T) {
	for _, c := range []struct {
		sister string
		level  finding.Level
	}{
		{"38.00", ""}, {"37.97", ""}, // +0.08 %
		// +0.132 %, but within twice hypot(0.0126 of the centres, sqrt(2) hypot(0.010,
		// 0.020) of the sister) = 0.0340.
		{"37.95", ""},
		{"37.92", finding.Note},    // +0.211 %
		{"37.88", finding.Caution}, // +0.317 %
		{"37.80", finding.Stop},    // +0.529 %
		{"38.20", finding.Caution}, // -0.524 %: no casting shrinks; measure again
	} {
		p := plain(t).with("  current: none\n", "  current: none\n  wheelbase: {between: [drive, other], sister: "+c.sister+"}\n").plan()
		got := said(p, "growth")
		switch {
		case c.level == "" && len(got) > 0, c.level != "" && len(got) != 1:
			t.Errorf("sister %s: %v", c.sister, got)
		case c.level != "" && got[0].Level != c.level:
			t.Errorf("sister %s: %s, wanted %s", c.sister, got[0].Level, c.level)
		}
		if p.OK != (c.level != finding.Stop) {
			t.Errorf("sister %s: ok is %v", c.sister, p.OK)
		}
		if c.level == finding.Stop {
			for _, o := range p.Verdict.Options {
				if o.Feasible && o.Name != "swap" && o.Name != "leave" && o.Name != "shim" {
					t.Errorf("%s is offered for a casting that has grown", o.Name)
				}
			}
		}
	}
}
