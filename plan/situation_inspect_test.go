package plan_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"rebush/plan"
)

func madeAs(t testing.TB, made string) situation {
	return gauged(t).add("made:\n  drive.left: {" + made + "}\n")
}

// gauged is the plain job in a shop with a fine bore gauge.
func gauged(t testing.TB) situation {
	return plain(t).inShop("{name: bore gauge, u: 0.004}",
		"{name: bore gauge, u: 0.004}, {name: fine bore gauge, u: 0.001}")
}

func inspected(t testing.TB, p *plan.Plan, what string) plan.Inspection {
	t.Helper()
	for _, i := range p.Inspect {
		if string(i.What) == what {
			return i
		}
	}
	t.Fatalf("no inspection of a %s\n%s", what, everything(p))
	return plan.Inspection{}
}

func does(i plan.Inspection) string {
	var out []string
	for _, n := range i.Next {
		out = append(out, n.Do.String()+" ["+n.Bush+"]")
	}
	return strings.Join(out, "; ")
}

// TestInspectBothSides: the finished bore may be 3.160 + 0.015 to 3.160 + 0.060;
// a gauge of 0.001 and a journal known to 0.005 guard 1.65 x root(1 + 25) = 8.413
// um inside and outside each limit.
func TestInspectBothSides(t *testing.T) {
	const axle = "its own axle"
	for _, c := range []struct {
		made, result, next string
	}{
		{"3.1835", "accept", ""}, {"3.2000", "accept", ""}, {"3.2115", "accept", ""},
		{"3.1833", "cannot tell", axle}, {"3.1667", "cannot tell", axle},
		{"3.1665", "reject", "size the bore again"},
		{"3.2117", "cannot tell", axle}, {"3.2283", "cannot tell", axle},
		{"3.2285", "reject", "leave it so: the axle runs with 69 um of clearance, 60 at the most was wanted"},
		{"3.2610", "reject", "press bush solid 5 out"},
	} {
		p := madeAs(t, "bore: "+c.made+", with: fine bore gauge").plan()
		i := inspected(t, p, "bore")
		if string(i.Result) != c.result {
			t.Errorf("%s: %s, wanted %s", c.made, i.Result, c.result)
		}
		near(t, "guard", *i.GuardUM, 8.4134, 1e-4)
		nearMM(t, "low", i.LimitsMM.Min, 3.175, 1e-9)
		nearMM(t, "high", i.LimitsMM.Max, 3.220, 1e-9)
		if !strings.Contains(does(i), c.next) || (c.result == "accept") != (len(i.Next) == 0) {
			t.Errorf("%s: next %q, wanted %q", c.made, does(i), c.next)
		}
		if strings.Contains(does(i), "leave it so") != (c.made == "3.2285") {
			t.Errorf("%s: 0.04 over its limit a bore is let pass no more: %q", c.made, does(i))
		}
		if !strings.Contains(i.Rule.String(), "1.65") {
			t.Errorf("rule %q", i.Rule)
		}
	}
	// A gauge of 0.020 guards 34 um on either side of 45; the gauge of 0.004 tells.
	s := madeAs(t, "bore: 3.1975, with: old gauge for a bore").inShop("{name: fine bore gauge, u: 0.001}", "{name: old gauge for a bore, u: 0.020}")
	i := inspected(t, s.plan(), "bore")
	if i.Result != "cannot tell" || !strings.Contains(does(i), "measure again with the bore gauge: the same reading by it is accepted") {
		t.Errorf("%s: %s", i.Result, does(i))
	}
}

// TestInspectSeat: what works is wider than what the reamer leaves, and inside
// it nothing else is offered. A seat 0.02 larger than works has ways on that were
// planned; each names its bush, and what is cut its tool, limits and place.
func TestInspectSeat(t *testing.T) {
	before := seatOf(t, plain(t).plan(), "drive.left")
	for _, size := range []string{"5.008", "4.995", before.SeatMM.Max.String()} {
		i := inspected(t, madeAs(t, "seat: "+size+", with: fine bore gauge").plan(), "seat")
		if i.Result != "accept" || len(i.Next) > 0 || !i.ToolLimitsMM.Min.Equal(before.SeatMM.Min) ||
			i.LimitsMM.Min.Float() >= i.ToolLimitsMM.Min.Float() || i.LimitsMM.Max.Float() <= i.ToolLimitsMM.Max.Float() {
			t.Errorf("%s: %s, works %v, the tool leaves %v: %s", size, i.Result, i.LimitsMM, i.ToolLimitsMM, does(i))
		}
		// The largest that works leaves the least bush, 5.019, some press.
		if most := i.LimitsMM.Max.Float(); most >= 5.019 {
			t.Errorf("works up to %v", most)
		}
	}
	large := before.SeatMM.Max.Float() + 0.02
	p := madeAs(t, "seat: "+decimalOf(large)+", with: fine bore gauge").make(plan.Options{Trials: 1024, Seed: 3})
	i := inspected(t, p, "seat")
	if i.Result != "reject" || !strings.Contains(i.Next[0].Do.String(), "turn a bush of ") ||
		!strings.Contains(i.Next[0].Do.String(), "press it into the seat as it was made") || i.Next[0].Bush != "own turning" {
		t.Errorf("%s: %s", i.Result, does(i))
	}
	if got := seatOf(t, p, "drive.left"); got.Bush != i.Next[0].Bush || *i.Next[0].FirstTimeRight != dimNear(p.Chance.FirstTimeRight) {
		t.Errorf("the first way on is that of the plan, %s %v: %+v", got.Bush, p.Chance.FirstTimeRight, i.Next[0])
	}
	if !strings.Contains(does(i), "by boring head about x 10.000, y 8.000 mm, then turn a bush of ") {
		t.Errorf("a larger seat names its tool and its place: %s", does(i))
	}
	// Without a lathe there is no turned bush to offer, and no other bush is large enough.
	p = madeAs(t, "seat: "+decimalOf(large)+", with: fine bore gauge").inShop("lathe: yes", "lathe: no").plan()
	if i := inspected(t, p, "seat"); strings.Contains(does(i), "turn a bush") || len(i.Next) != 1 ||
		!strings.Contains(does(i), "nothing of this shop goes on from here") || p.OK {
		t.Error(does(i))
	}
	// With compound the solid bush can be set: 5.019 to 5.031 in 5.070 leaves
	// 0.039 to 0.051. Nothing closes its bore, so it must be small enough as it is.
	p = madeAs(t, "seat: 5.070, with: fine bore gauge").inShop("lathe: yes", "lathe: no\ncompounds: [gap-filling]").with("bore: 3.2, bore_class: F7", "bore: [3.190, 3.200]").plan()
	if i := inspected(t, p, "seat"); !strings.Contains(does(i), "set bush solid 5 into the seat as it was made with retaining compound [solid 5]") {
		t.Error(does(i))
	}
	p = madeAs(t, "seat: 4.900, with: fine bore gauge").inShop("lathe: yes", "lathe: no").plan()
	if i := inspected(t, p, "seat"); i.Result != "reject" || !strings.Contains(does(i), "open the seat where it stands by 5 mm H7 reamer to ") {
		t.Errorf("%s: %s", i.Result, does(i))
	}
}

func dimNear(f float64) float64 { return math.Round(f*1e4) / 1e4 }

func decimalOf(f float64) string { return strings.TrimRight(strings.TrimRight(fmtMM(f), "0"), ".") }

// TestInspectPlace: target (10, 8); the machine may leave a hole 2 x hypot(0.010,
// 0.010) = 0.0283 off. What works is what the truck stands: the bores of a shaft
// 0.06 out of line at the most.
func TestInspectPlace(t *testing.T) {
	i := inspected(t, madeAs(t, "centre: [10.09, 8.00], with: read-out").gear(wormGear(16.14, "")).plan(), "place")
	nearMM(t, "how far off", i.MadeMM, 0.09, 1e-9)
	nearMM(t, "the machine may leave it off", i.ToolLimitsMM.Max, 0.0283, 5e-4)
	nearMM(t, "may be off", i.LimitsMM.Max, 0.06, 1.1e-3)
	// The other hole counts at its target with the doubt of the placing: 1.65 x root(0.01^2 + 0.0141^2).
	for _, by := range i.By {
		if strings.Contains(by.What.String(), "out of line") {
			near(t, "guard of the line", *by.GuardUM, 1650*math.Hypot(0.010, math.Hypot(0.010, 0.010)), 0.2)
			if !by.Decides || by.Result != "reject" || !strings.Contains(by.Words.String(), "leans 0.40 degrees along the truck") {
				t.Errorf("%+v", by)
			}
		}
	}
	if i.Result != "reject" || len(i.Next) == 0 || strings.Contains(does(i), "accept") {
		t.Errorf("%s: %s", i.Result, does(i))
	}
	if i := inspected(t, madeAs(t, "centre: [10.005, 8.00], with: read-out").plan(), "place"); i.Result != "accept" || len(i.Next) > 0 {
		t.Errorf("%s: %s", i.Result, does(i))
	}
}

// Backlash by hand, of a wheel half way between both bores under a worm: 20
// degrees change it by 2 tan 20 = 0.7279 for each mm. Planned 0.0784, wanted 0.050
// to 0.120. Both bores 0.05 towards the worm leave 0.0784 - 0.0364 = 0.042, 0.07
// leave 0.027, 0.11 away 0.159; one bore alone counts half. The far bore of a
// leaning shaft is judged by what its teeth lose.
func TestInspectTogether(t *testing.T) {
	// Geometry 0.02, the worm read to 0.01 with the usual play of 0.05 in its bearings, each place 0.01 and each
	// clearance, 0.015 to 0.060 of which half stands off, even; two holes share.
	even := (0.060 - 0.015) / 2 / math.Sqrt(12)
	guard := math.Sqrt(0.02*0.02 + 0.01*0.01 + 0.05*0.05/12 + (0.01*0.01+even*even)/2)
	for _, c := range []struct {
		left, right, backlash float64
		results               [2]string
	}{
		{0, 0, 0.0784, [2]string{"accept", "accept"}},
		{0.05, 0.05, 0.0420, [2]string{"cannot tell", "cannot tell"}},
		{0.07, 0.07, 0.0274, [2]string{"cannot tell", "cannot tell"}},
		{0.09, 0.09, 0.0129, [2]string{"reject", "reject"}},
		{-0.11, -0.11, 0.1585, [2]string{"reject", "reject"}},
		{0.05, -0.05, 0.0784, [2]string{"reject", "reject"}}, // it leans, and the mesh does not show it
	} {
		p := demo(t, "plain.yaml").with("height: 17.33", "height: 17.326").add(fmt.Sprintf(
			"made:\n  front axle.left: {centre: [12.0035, %.4f], with: indicator}\n  front axle.right: {centre: [12.0035, %.4f], with: indicator}\n",
			7.9999+c.left, 7.9999+c.right)).plan()
		for k, i := range p.Inspect {
			if string(i.Result) != c.results[k] {
				t.Errorf("%v and %v: %s %s, wanted %s: %+v", c.left, c.right, i.Bore, i.Result, c.results[k], i.By)
			}
			said := false
			for _, by := range i.By {
				if what := by.What.String(); what == "centre distance of front drive" {
					said = true
					near(t, "guard of the mesh", *by.GuardUM, 1650*guard, 0.05)
					if want := fmt.Sprintf("%.3f mm of backlash, wanted 0.050 to 0.120 mm", c.backlash); by.Words.String() != want {
						t.Errorf("%v and %v: %s, by hand %s", c.left, c.right, by.Words, want)
					}
				}
			}
			if !said {
				t.Errorf("the mesh is not asked: %+v", i.By)
			}
		}
		if len(p.Inspect) != 2 {
			t.Errorf("%d sizes", len(p.Inspect))
		}
	}
}

// TestInspectHalfDone: only seats made, of one side; a bore that the plan does
// not bush; a bore that is not in the job is refused by the reader.
func TestInspectHalfDone(t *testing.T) {
	seat := seatOf(t, plain(t).plan(), "drive.right")
	mid := (seat.SeatMM.Min.Float() + seat.SeatMM.Max.Float()) / 2
	p := plain(t).inShop("{name: bore gauge, u: 0.004}", "{name: bore gauge, u: 0.001}").add("made:\n  drive.right: {seat: " + decimalOf(mid) + ", with: bore gauge}\n").plan()
	if len(p.Inspect) != 1 || p.Inspect[0].Bore != "drive.right" || p.Inspect[0].Result != "accept" {
		t.Errorf("%+v", p.Inspect)
	}
	p = plain(t).add("made:\n  other.left: {seat: 5.01}\n").plan()
	f := saidOf(t, p, "made", "other.left")
	if f.Line == 0 {
		t.Errorf("%+v", f)
	}
	if _, err := plain(t).add("made:\n  third.left: {seat: 5.01}\n").read(); err == nil || !strings.Contains(err.Error(), "third.left") {
		t.Errorf("%v", err)
	}
}
