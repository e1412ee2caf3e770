package plan_test

import (
	"strings"
	"testing"

	"rebush/plan"
)

// dull plans one of the jobs without a story, each of which shows one or two
// things, and the figures here are worked by hand.
func dull(t *testing.T, name string) *plan.Plan {
	t.Helper()
	return makePlan(t, fileOf(t, name+".yaml"), plan.Options{Trials: 2048, Seed: 1})
}

// Something of 2.98 has to pass the end whose journal is 2.94: with 0.005 of
// room the bore is at least 2.985, and by 0.060 of clearance at most 3.000. The
// other end takes a bush from the drawer, this one a bush that is turned; and
// the thicker end goes in last.
func TestDullSteppedAxle(t *testing.T) {
	p := dull(t, "stepped")
	left, right := seatOf(t, p, "axle.left"), seatOf(t, p, "axle.right")
	nearMM(t, "least bore", right.BoreMM.Min, 2.985, 1e-9)
	nearMM(t, "largest bore", right.BoreMM.Max, 3.000, 1e-9)
	if left.Bush != "drawer 7" || right.Bush != "own turning" {
		t.Errorf("left %q, right %q", left.Bush, right.Bush)
	}
	in := ops(p, "assemble") // the axle, then motor and drive
	if len(in) != 2 || !strings.Contains(in[0].Note.String(), "larger end last") || !strings.Contains(in[0].Note.String(), "2.98 mm must pass the right bore") {
		t.Errorf("put in as %+v", in)
	}
}

// The insulated wheel is named where the ohms are proved, and porous bronze,
// which conducts, may carry the current of the other side.
func TestDullInsulatedWheel(t *testing.T) {
	p := dull(t, "insulated")
	ohms := 0
	for _, s := range p.Proving {
		if s.Blank == "ohm" {
			ohms++
			if strings.Contains(s.Text.String(), "left") && strings.Contains(s.Text.String(), "insulated wheel") {
				t.Errorf("the wheel on the right is the insulated one: %s", s.Text)
			}
		}
	}
	if ohms == 0 {
		t.Error("no ohms are proved")
	}
	other := demo(t, "insulated.yaml").with("material: sintered bronze", "material: POM").plan()
	if seatOf(t, other, "axle.left").Bush != "" {
		t.Error("plastic is taken where the current goes through")
	}
	if s := seatOf(t, other, "axle.right"); !strings.Contains(s.Bush, "drawer") {
		for _, c := range s.Candidates {
			if strings.Contains(c.Reason.String(), "current") {
				t.Errorf("no current goes through the insulated side: %s", c.Reason)
			}
		}
	}
}

// The worm has a new place since the wear was made. It stands at 20.25, half of
// the pitch diameters of 12 and 6.4 is 9.2: the old centre at 11.000 is 9.250
// away, so that the middle of the window of backlash lies below it. Said to
// stand where it always did, it is not believed: the axle would have jammed.
func TestDullWormMoved(t *testing.T) {
	p := dull(t, "worm-moved")
	down := targetOf(t, p, "axle.left").FromOriginalMM[1].Float()
	if !(down < -0.05 && down > -0.15) || !p.Mesh[0].Trusted {
		t.Errorf("moved by %.3f, trusted %v", down, p.Mesh[0].Trusted)
	}
	unmoved := demo(t, "worm-moved.yaml").with(", moved: yes", "").plan()
	if unmoved.Mesh[0].Trusted {
		t.Error("a worm that always stood there is believed")
	}
	nearXY(t, "unmoved", targetOf(t, unmoved, "axle.left").FromOriginalMM, 0, 0, 1e-9)
}

// One hole has an oil way of 1.4: it alone is drilled on, with its own size.
func TestDullOilWay(t *testing.T) {
	ways := ops(dull(t, "oil-way"), "oil")
	if len(ways) != 1 || ways[0].Bore != "axle.left" || ways[0].ToolMM.Float() != 1.4 {
		t.Errorf("oil ways: %+v", ways)
	}
}

// Sound seats of old bushes are used as they are: the press is the bush, 6.019
// to 6.031 (6 s7), over 6.006 and 6.008 as measured by pins, and nothing cuts.
func TestDullRenew(t *testing.T) {
	p := dull(t, "renew")
	for _, o := range p.Operations {
		if o.RPM != nil {
			t.Errorf("%s turns a tool", o.Do)
		}
	}
	for bore, seat := range map[string]float64{"axle.left": 6.006, "axle.right": 6.008} {
		s := seatOf(t, p, bore)
		near(t, bore+" least press", *s.InterferenceUM.Min, 1000*(6.019-seat), 3.5) // pins and what they leave open
		near(t, bore+" largest press", *s.InterferenceUM.Max, 1000*(6.031-seat), 3.5)
		nearXY(t, bore+" stays", targetOf(t, p, bore).FromOriginalMM, 0, 0, 1e-9)
	}
}

// A used truck at 30 and 0.4 hours of 40 is 46; one in five turns out bad and
// the same is spent again: 55.20.
func TestDullSwapAndValue(t *testing.T) {
	p := dull(t, "swap-value")
	near(t, "cost of another truck", *optionOf(t, p, "swap").Cost, 55.20, 0.005)
	if c := *optionOf(t, p, "re-bush").Cost; c <= 55.20 || p.Verdict.Choice != "swap" {
		t.Errorf("re-bush at %.2f, and the choice is %s", c, p.Verdict.Choice)
	}
	kept := demo(t, "swap-value.yaml").with("rails: below", "original: keep\n  rails: below").make(plan.Options{Trials: 2048, Seed: 1})
	if kept.Verdict.Choice != "re-bush" {
		t.Errorf("who keeps the original is told to %s", kept.Verdict.Choice)
	}
}

// A bush of 5.5 h7 (5.488 to 5.500) drops into what a 7/32 in reamer leaves
// (5.558 to 5.568): 58 to 80 um of gap, which retaining compound fills and no
// press can. Without compound nothing holds it.
func TestDullOddReamer(t *testing.T) {
	for _, s := range dull(t, "odd-reamer").Seats {
		near(t, s.Bore+" least gap", -*s.InterferenceUM.Max, 58, 0.01)
		near(t, s.Bore+" largest gap", -*s.InterferenceUM.Min, 80, 0.25) // a reamer cuts a little large
		if s.HeldBy != "compound" || !strings.HasPrefix(s.Tool, "7/32 in") {
			t.Errorf("%s: held by %s, %s", s.Bore, s.HeldBy, s.Tool)
		}
	}
	if p := demo(t, "odd-reamer.yaml").inShop("compounds: [gap-filling]\n", "").plan(); p.OK {
		t.Error("a loose bush is taken where there is no compound")
	}
}

// Bores that are to be sized by mandrels get one above the least bore of 3.475
// and not above the largest, 3.520.
func TestDullMandrels(t *testing.T) {
	p := dull(t, "mandrels")
	sized := 0
	for _, o := range ops(p, "size bore") {
		sized++
		if d := o.ToolMM.Float(); d <= 3.475 || d > 3.520 || !strings.HasPrefix(o.Tool.String(), "sizing mandrel") {
			t.Errorf("%s: %s, %v mm", o.Do, o.Tool, d)
		}
	}
	if sized != 2 {
		t.Errorf("%d bores are sized", sized)
	}
	if p := demo(t, "mandrels.yaml").inShop("mandrels: [3.49, 3.50, 3.51]\n", "").plan(); p.OK {
		t.Error("sized by mandrels that the shop does not have")
	}
}
