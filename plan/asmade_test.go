package plan_test

import (
	"slices"
	"strings"
	"testing"

	"rebush/plan"
	"rebush/plan/route"
)

// kinds are the kinds of operation at a bore, in their order.
func kinds(p *plan.Plan, bore string) []route.Kind {
	var out []route.Kind
	for _, o := range p.Operations {
		if o.Bore == bore {
			out = append(out, o.Kind)
		}
	}
	return out
}

func hasKind(p *plan.Plan, bore string, k route.Kind) bool {
	for _, x := range kinds(p, bore) {
		if x == k {
			return true
		}
	}
	return false
}

// A seat that was made is not made again: its bush goes into it where it
// stands, and the other bore of the shaft is cut in line with it. The plan of
// the whole job, and its hash, are another.
func TestPlannedAsMade(t *testing.T) {
	before := plain(t).plan()
	p := madeAs(t, "seat: 5.008, centre: [10.004, 8.003], with: fine bore gauge").plan()
	if !p.AsMade || before.AsMade || p.Hash == before.Hash || len(p.Job.Made) != 1 {
		t.Errorf("as made %v and %v, hash %s and %s", p.AsMade, before.AsMade, p.Hash, before.Hash)
	}
	if whole := gauged(t).plan(); p.Replaces != whole.Hash || whole.Replaces != "" {
		t.Errorf("it replaces %q, want %q; that one replaces %q", p.Replaces, whole.Hash, whole.Replaces)
	}
	if !hasKind(before, "drive.left", route.KindSizeSeat) || hasKind(p, "drive.left", route.KindSizeSeat) ||
		!hasKind(p, "drive.left", route.KindPress) || !hasKind(p, "drive.right", route.KindSizeSeat) {
		t.Errorf("%v", kinds(p, "drive.left"))
	}
	for _, x := range p.Targets {
		if x.Bore == "drive.left" || x.Bore == "drive.right" {
			nearMM(t, "x", x.TargetMM[0], 10.004, 1e-9)
			nearMM(t, "y", x.TargetMM[1], 8.003, 1e-9)
		}
	}
	s := seatOf(t, p, "drive.left")
	nearMM(t, "least seat", s.SeatMM.Min, 5.007, 1e-9)
	nearMM(t, "most seat", s.SeatMM.Max, 5.009, 1e-9)
	// What was surveyed stays what it was: the seat tells nothing of the old centre.
	for i, x := range p.Survey {
		if *x.CentreMM != *before.Survey[i].CentreMM {
			t.Errorf("%s: the old centre is said to be %v, was %v", x.Bore, *x.CentreMM, *before.Survey[i].CentreMM)
		}
	}
}

// A finished bore is left alone; one that came out small is sized again and
// nothing else; one that is too large has its bush pressed out first.
func TestFinishedAsMade(t *testing.T) {
	for _, c := range []struct {
		bore                    string
		out, press, size, gauge bool
	}{
		{"3.1900", false, false, false, false},
		{"3.1500", false, false, true, false},
		{"3.3000", true, true, false, true},
	} {
		p := madeAs(t, "seat: 5.008, bore: "+c.bore+", with: fine bore gauge").plan()
		got := [4]bool{hasKind(p, "drive.left", route.KindTakeOut), hasKind(p, "drive.left", route.KindPress),
			hasKind(p, "drive.left", route.KindSizeBore), hasKind(p, "drive.left", route.KindGauge)}
		if want := [4]bool{c.out, c.press, c.size, c.gauge}; got != want || !p.OK {
			t.Errorf("%s: %v, wanted %v: %v\n%v", c.bore, got, want, kinds(p, "drive.left"), p.Findings)
		}
		if !hasKind(p, "drive.right", route.KindPress) {
			t.Errorf("%s: the other bore is forgotten", c.bore)
		}
		if !hasKind(p, "", route.KindLineUp) {
			t.Errorf("%s: the shaft is not lined up", c.bore)
		}
	}
}

// A truck whose holes are all finished needs nothing more, and says so; its side
// play is that with the flanges which are in it: 20.0 less 18.0 and twice 0.8.
func TestAllFinished(t *testing.T) {
	p := demo(t, "plain.yaml").add("made:\n  front axle.left: {bore: 3.49, with: pins}\n" +
		"  front axle.right: {bore: 3.49, with: pins}\n").plan()
	if p.Verdict.Choice != "leave" || len(p.Operations) > 0 || !p.OK ||
		!strings.HasPrefix(p.Verdict.Sentence.String(), "The bearings that were made are finished") {
		t.Errorf("%s: %s", p.Verdict.Choice, p.Verdict.Sentence)
	}
	// The right bore came out 0.09 large: it is done again, and the axle lined up with both.
	p = demo(t, "plain.yaml").add("made:\n  front axle.left: {bore: 3.49, with: pins}\n" +
		"  front axle.right: {bore: 3.61, with: pins}\n").plan()
	if !hasKind(p, "front axle.right", route.KindTakeOut) || len(kinds(p, "front axle.left")) > 0 || !hasKind(p, "", route.KindLineUp) {
		t.Errorf("%v; %v", kinds(p, "front axle.right"), kinds(p, "front axle.left"))
	}
	for _, s := range p.Shafts {
		if s.Shaft == "front axle" {
			nearMM(t, "side play", s.SidePlayMM.Min, 20.0-18.0-2*0.8, 1e-9)
		}
	}
}

// A seat that came out small is opened where it stands by the tool that made
// it, and no drill smaller than it goes through again.
func TestSmallSeatIsOpened(t *testing.T) {
	p := madeAs(t, "seat: 4.930, with: fine bore gauge").inShop("lathe: yes", "lathe: no").plan()
	sized := slices.ContainsFunc(ops(p, "size seat"), func(o plan.Operation) bool { // it may go through both
		return strings.Contains(o.Do.String(), "drive.left")
	})
	if !p.OK || !sized || hasKind(p, "drive.left", route.KindLocate) || hasKind(p, "drive.left", route.KindOpen) {
		t.Errorf("%v %v", kinds(p, "drive.left"), p.Findings)
	}
	if s := seatOf(t, p, "drive.left"); s.Bush != seatOf(t, plain(t).plan(), "drive.left").Bush {
		t.Errorf("bush %s", s.Bush)
	}
}
