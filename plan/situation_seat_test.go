package plan_test

import (
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/plan"
)

func candidate(t testing.TB, p *plan.Plan, bore, bush, tool string) plan.Candidate {
	t.Helper()
	s := seatOf(t, p, bore)
	for _, c := range s.Candidates {
		if c.Bush == bush && strings.Contains(c.Tool, tool) {
			return c
		}
	}
	t.Fatalf("no %s with %s among %+v", bush, tool, s.Candidates)
	return plan.Candidate{}
}

// TestSeatReasonsMend: a candidate that fell names its figure; mending that
// figure takes the reason away.
func TestSeatReasonsMend(t *testing.T) {
	// 5 mm reamer, seat radius at most 2.506. Edge 3.2 from the hole's wall of
	// radius 1.6: metal 5.0 - ... thin, thick.
	edge := func(metal string) situation {
		return plain(t).with("worn_to: 90}", "worn_to: 90, edges: [{at: 270, metal: "+metal+"}]}")
	}
	thin := candidate(t, edge("1.3").plan(), "drive.left", "solid 5", "reamer")
	if thin.Feasible || !strings.Contains(thin.Reason.String(), "edge") {
		t.Errorf("%+v", thin)
	}
	// Metal is measured from the wall of the hole as found: at 270 degrees that
	// is 8.05 - 1.65 = 6.40, the wall being 1.60 below the old centre at 8.00.
	// The edge lies at 6.40 - 1.3 = 5.10; from the target at 8.00 it is 2.90
	// away, less the seat's 2.506: 0.39 left, 1.25 needed.
	if !strings.Contains(thin.Reason.String(), "0.39") || !strings.Contains(thin.Reason.String(), "1.25") {
		t.Errorf("by hand 0.39 of 1.25: %s", thin.Reason)
	}
	s := seatOf(t, edge("4.4").plan(), "drive.left")
	// 6.40 - 4.4 = 2.00; 6.00 away, less 2.506.
	nearMM(t, "metal left", s.MetalLeftMM, 6.00-2.506, 2e-3)
	if c := candidate(t, edge("4.4").plan(), "drive.left", "solid 5", "reamer"); !c.Feasible {
		t.Errorf("%+v", c)
	}
	// The same edge given from the middle of the hole: 8.05 - 2.00.
	away := seatOf(t, plain(t).with("worn_to: 90}", "worn_to: 90, edges: [{at: 270, away: 6.05}]}").plan(), "drive.left")
	if away.MetalLeftMM != s.MetalLeftMM {
		t.Errorf("away leaves %s, metal %s", away.MetalLeftMM, s.MetalLeftMM)
	}
	// A boss of 12 mm about the hole: 6 - 2.506 left.
	boss := seatOf(t, plain(t).with("worn_to: 90}", "worn_to: 90, boss: 12}").plan(), "drive.left")
	nearMM(t, "metal left in the boss", boss.MetalLeftMM, 6-2.506, 2e-3)
	// Without the reamer its candidates are gone.
	for _, c := range seatOf(t, plain(t).inShop("reamers: [{size: 5, class: H7}]\n", "").plan(), "drive.left").Candidates {
		if strings.Contains(c.Tool, "reamer") {
			t.Errorf("%+v", c)
		}
	}
}

// TestSeatAsked: a bush that the job chooses is the one, or nothing is.
func TestSeatAsked(t *testing.T) {
	if got := seatOf(t, plain(t).add("choose: solid 5\n").plan(), "drive.left").Bush; got != "solid 5" {
		t.Error(got)
	}
	p := plain(t).add("choose: {drive.right: solid 5, drive.left: own turning}\n").plan()
	if a, b := seatOf(t, p, "drive.left").Bush, seatOf(t, p, "drive.right").Bush; a != "own turning" || b != "solid 5" {
		t.Error(a, b)
	}
	// Two journals on one axle get two bores: 3.16 + 0.015 and 2.36 + 0.015.
	p = plain(t).once("journal: 3.16", "journal: {left: 3.16, right: 2.36}").drive("centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20, worn_to: 90", "centre: [10.00, 8.05], widest: 2.50, narrowest: 2.40, worn_to: 90").plan()
	nearMM(t, "left bore", seatOf(t, p, "drive.left").BoreMM.Min, 3.175, 1e-9)
	nearMM(t, "right bore", seatOf(t, p, "drive.right").BoreMM.Min, 2.375, 1e-9)
	nearMM(t, "right bore", seatOf(t, p, "drive.right").BoreMM.Max, 2.420, 1e-9)
	// A knurl of 3.19 has to pass: 3.195 at least; of 3.25 nothing lets it pass.
	p = plain(t).with("    rpm: 400\n", "    rpm: 400\n    must_pass: 3.19\n").plan()
	nearMM(t, "bore for the knurl", seatOf(t, p, "drive.left").BoreMM.Min, 3.195, 1e-9)
	p = plain(t).with("    rpm: 400\n", "    rpm: 400\n    must_pass: 3.25\n").plan()
	if p.OK {
		t.Error("nothing lets 3.25 pass and run on 3.16")
	}
	// The unworn part beside a waisted journal passes too.
	p = plain(t).with("    rpm: 400\n", "    rpm: 400\n    unworn: 3.18\n").plan()
	nearMM(t, "bore for the unworn part", seatOf(t, p, "drive.left").BoreMM.Min, 3.185, 1e-9)
}

// TestSeatOnTheLiveSide: current passes from the axle into the left plate; a
// plastic bush there is no answer, on the insulated side it may be one.
func TestSeatOnTheLiveSide(t *testing.T) {
	s := plain(t).with("current: none", "current: axles").with("    rpm: 400\n", "    rpm: 400\n    insulated: right\n").
		with("  - {code: own turning", "  - {code: white, bore: [3.20, 3.21], od: [5.02, 5.03], length: 3.0, material: acetal, on_hand: 5}\n  - {code: own turning")
	p := s.plan()
	c := candidate(t, p, "drive.left", "white", "reamer")
	if c.Feasible {
		t.Errorf("plastic on the live side: %+v", c)
	}
	if d := candidate(t, p, "drive.right", "white", "reamer"); strings.Contains(d.Reason.String(), "current") {
		t.Errorf("no current on the insulated side: %+v", d)
	}
	if d := candidate(t, s.with("current: axles", "current: none").plan(), "drive.left", "white", "reamer"); strings.Contains(d.Reason.String(), "current") {
		t.Errorf("no current at all: %+v", d)
	}
}

// TestStops: each stops the plan: nothing is cut, and the verdict still speaks.
func TestStops(t *testing.T) {
	for name, s := range map[string]situation{
		"cracked":           plain(t).with("condition: sound", "condition: cracked"),
		"swollen":           plain(t).with("condition: sound", "condition: swollen"),
		"no centre":         plain(t).drive("repaired: yes", "repaired: yes"),
		"no seat":           plain(t).with("worn_to: 90}", "worn_to: 90, edges: [{at: 270, metal: 0.3}]}"),
		"no bush":           plain(t),
		"growth":            plain(t).with("  current: none\n", "  current: none\n  wheelbase: {between: [drive, other], sister: 37.8}\n"),
		"drill press, wear": plain(t).inShop("kind: mill", "kind: drill press").inShop("  readout: yes\n", ""),
	} {
		if name == "no bush" {
			s = plain(t)
			i := strings.Index(s.job, "bushes:\n")
			j := strings.Index(s.job, "symptoms:")
			s.job = s.job[:i] + s.job[j:]
			s = s.inShop("lathe: yes", "lathe: no")
		}
		t.Run(name, func(t *testing.T) {
			s.t = t
			p := s.odds()
			if name == "no bush" && p.OK {
				return // one of the built-in series is to be bought
			}
			if p.OK || !p.Findings.Stops() || len(p.Operations) != 0 || p.Chance != nil {
				t.Errorf("ok %v, %d operations, chance %v\n%s", p.OK, len(p.Operations), p.Chance, everything(p))
			}
			if p.Verdict == nil || len(p.Verdict.Options) != len(nine) || p.Verdict.Sentence == "" {
				t.Error("no verdict")
			}
			if err := wholesome(p, true); err != nil {
				t.Error(err)
			}
			stops := 0
			for _, f := range p.Findings {
				if f.Level == finding.Stop {
					stops++
					if f.Fix == "" {
						t.Errorf("a stop without a way on: %s", f.Text)
					}
				}
			}
			if stops == 0 || p.Findings[0].Level != finding.Stop {
				t.Error("stops do not come first")
			}
		})
	}
	p := plain(t).with("condition: sound", "condition: unknown").plan()
	if f := said(p, "condition"); len(f) != 1 || f[0].Level != finding.Caution || !p.OK {
		t.Errorf("%v", f)
	}
}

// TestLines: a finding about a bore or a gear names its line.
func TestLines(t *testing.T) {
	s := plain(t).gear(wormGear(16.05, "")).drive("centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20", "repaired: yes")
	j := strings.Split(s.job, "\n")
	p := s.plan()
	if len(p.Findings) < 3 {
		t.Fatalf("little is said: %s", everything(p))
	}
	for _, f := range p.Findings {
		if f.Line == 0 {
			continue
		}
		if !strings.HasSuffix(f.File, ".yaml") || f.Line > len(j) && !strings.Contains(f.File, "shop") {
			t.Errorf("%s:%d for %s", f.File, f.Line, f.Text)
		}
		_, side, isBore := strings.Cut(f.Where, ".")
		if isBore && !strings.Contains(j[f.Line-1], side+":") {
			t.Errorf("%s is said to stand in line %d: %s", f.Where, f.Line, j[f.Line-1])
		}
		if f.Where == "d" && !strings.Contains(j[f.Line-1], "name: d") {
			t.Errorf("gear d is said to stand in line %d: %s", f.Line, j[f.Line-1])
		}
	}
}
