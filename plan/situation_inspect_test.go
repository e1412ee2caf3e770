package plan_test

import (
	"strings"
	"testing"

	"rebush/plan"
)

func madeAs(t testing.TB, made string) situation {
	return plain(t).inShop("{name: bore gauge, u: 0.004}", "{name: bore gauge, u: 0.004}, {name: fine bore gauge, u: 0.001}").add("made:\n  drive.left: {" + made + "}\n")
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
// a gauge of 0.001 guards 1.65 um inside and outside each limit.
func TestInspectBothSides(t *testing.T) {
	for _, c := range []struct {
		made, result, next string
	}{
		{"3.1767", "accept", ""}, {"3.2000", "accept", ""}, {"3.2183", "accept", ""},
		{"3.1763", "cannot tell", "size the bore again"}, {"3.1735", "cannot tell", "size the bore again"},
		{"3.1732", "reject", "size the bore again"},
		{"3.2187", "cannot tell", "accept it"}, {"3.2215", "cannot tell", "accept it"},
		{"3.2218", "reject", "new bush"},
	} {
		p := madeAs(t, "bore: "+c.made+", with: fine bore gauge").plan()
		i := inspected(t, p, "bore")
		if string(i.Result) != c.result {
			t.Errorf("%s: %s, wanted %s", c.made, i.Result, c.result)
		}
		near(t, "guard", *i.GuardUM, 1.65, 1e-6)
		nearMM(t, "low", i.LimitsMM.Min, 3.175, 1e-9)
		nearMM(t, "high", i.LimitsMM.Max, 3.220, 1e-9)
		if !strings.Contains(does(i), c.next) || (c.result == "accept") != (len(i.Next) == 0) {
			t.Errorf("%s: next %q, wanted %q", c.made, does(i), c.next)
		}
		if c.result == "cannot tell" && !strings.Contains(does(i), "measure again") {
			t.Errorf("%s: %q", c.made, does(i))
		}
		if !strings.Contains(i.Rule.String(), "1.65") {
			t.Errorf("rule %q", i.Rule)
		}
	}
	// A gauge of 0.020 guards 33 um on either side of 45: it can accept nothing.
	s := madeAs(t, "bore: 3.1975, with: old gauge for a bore").inShop("{name: fine bore gauge, u: 0.001}", "{name: old gauge for a bore, u: 0.020}")
	i := inspected(t, s.plan(), "bore")
	if i.Result != "cannot tell" || !strings.Contains(does(i), "can accept nothing") {
		t.Errorf("%s: %s", i.Result, does(i))
	}
}

// TestInspectSeat: a seat 0.02 large has ways on that name a bush; one too
// small is opened; each is offered before anything is pressed.
func TestInspectSeat(t *testing.T) {
	seat := seatOf(t, plain(t).plan(), "drive.left")
	large := seat.SeatMM.Max.Float() + 0.02
	p := madeAs(t, "seat: "+seat.SeatMM.Max.String()+", with: fine bore gauge").with(seat.SeatMM.Max.String(), decimalOf(large)).plan()
	i := inspected(t, p, "seat")
	if i.Result != "reject" || !strings.Contains(does(i), "turn a bush to the seat as made ("+decimalOf(large)+" mm) [own turning]") {
		t.Errorf("%s: %s", i.Result, does(i))
	}
	for _, n := range i.Next {
		if n.FirstTimeRight != nil && !(*n.FirstTimeRight >= 0 && *n.FirstTimeRight <= 1) {
			t.Errorf("%+v", n)
		}
	}
	// Without a lathe there is no turned bush to offer.
	p = madeAs(t, "seat: "+decimalOf(large)+", with: fine bore gauge").inShop("lathe: yes", "lathe: no").plan()
	if i := inspected(t, p, "seat"); strings.Contains(does(i), "turn a bush") || len(i.Next) == 0 {
		t.Error(does(i))
	}
	// With compound the solid bush can be set: 5.019 to 5.031 in 5.070 leaves
	// 0.039 to 0.051. Nothing closes its bore, so it must be small enough as it is.
	p = madeAs(t, "seat: 5.070, with: fine bore gauge").inShop("lathe: yes", "lathe: yes\ncompounds: [gap-filling]").with("bore: 3.2, bore_class: F7", "bore: [3.190, 3.200]").plan()
	if i := inspected(t, p, "seat"); !strings.Contains(does(i), "compound [solid 5]") {
		t.Error(does(i))
	}
	p = madeAs(t, "seat: 4.990, with: fine bore gauge").plan()
	if i := inspected(t, p, "seat"); i.Result != "reject" || !strings.Contains(does(i), "open the seat") {
		t.Errorf("%s: %s", i.Result, does(i))
	}
}

func decimalOf(f float64) string { return strings.TrimRight(strings.TrimRight(fmtMM(f), "0"), ".") }

// TestInspectPlace: target (10, 8); a hole may stand 2 x hypot(0.010, 0.010) =
// 0.0283 off. 0.06 off with a lathe: an eccentric bush of that offset, thin side
// named, packing 1.5 e + ... of plan/inspect/METHODS.md 3.
func TestInspectPlace(t *testing.T) {
	s := madeAs(t, "centre: [10.06, 8.00], with: read-out").gear(wormGear(16.14, ""))
	i := inspected(t, s.plan(), "place")
	nearMM(t, "how far off", i.MadeMM, 0.06, 1e-9)
	nearMM(t, "may be off", i.LimitsMM.Max, 0.0283, 5e-4)
	if i.Result != "reject" || !strings.Contains(does(i), "eccentric bush: offset 0.060 mm") || !strings.Contains(does(i), "accept it: d would have") {
		t.Errorf("%s: %s", i.Result, does(i))
	}
	if i := inspected(t, madeAs(t, "centre: [10.005, 8.00], with: read-out").plan(), "place"); i.Result != "accept" {
		t.Errorf("%s: %s", i.Result, does(i))
	}
	i = inspected(t, s.inShop("lathe: yes", "lathe: no").plan(), "place")
	if strings.Contains(does(i), "eccentric") {
		t.Error(does(i))
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
