package plan_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"rebush/fits/finding"
)

// TestMendFirst: what passes for a worn hole is a caution that the sentence
// names, and stops nothing.
func TestMendFirst(t *testing.T) {
	for _, c := range []struct{ symptoms, word string }{
		{"rims: loose, hubs: tight, gauge: correct, ohms: open", "a rim is loose"},
		{"rims: tight, hubs: loose, gauge: correct, ohms: open", "a hub is loose"},
		{"rims: tight, hubs: tight, gauge: wide, ohms: open", "too wide"},
		{"rims: tight, hubs: tight, gauge: narrow, ohms: open", "too close"},
		{"rims: tight, hubs: tight, gauge: correct, ohms: leaking", "insulation of a wheel leaks"},
		{"rims: tight, hubs: tight, gauge: correct, ohms: shorted", "insulation of a wheel is shorted"},
	} {
		p := plain(t).with("rims: tight, hubs: tight, gauge: correct, ohms: open", c.symptoms).plan()
		f := saidOf(t, p, "mend first", "")
		if f.Level != finding.Caution || !strings.Contains(f.Text.String(), c.word) || f.Fix == "" {
			t.Errorf("%s: %+v", c.symptoms, f)
		}
		if !p.OK || !strings.Contains(strings.ToLower(p.Verdict.Sentence.String()), c.word) || !strings.Contains(p.Verdict.Sentence.String(), "mend that first") {
			t.Errorf("%s: ok %v, %s", c.symptoms, p.OK, p.Verdict.Sentence)
		}
	}
	unsaid(t, plain(t).plan(), "mend first")
}

// TestSaidOfGears: the gears are called right only where they were measured,
// and nobody complains only where it was asked.
func TestSaidOfGears(t *testing.T) {
	const b = "centre: [10.00, 8.00], widest: 3.36, narrowest: 3.17, worn_to: 90"
	little := plain(t).drive(b, b)
	rough := strings.Replace(wormGear(16.20, ""), ", tip: 11.0", "", 1)
	quiet := "complaint: {binds: no, noisy: no, rubs: no}\n"
	for _, c := range []struct {
		name         string
		s            situation
		right, asked bool
	}{
		{"no gear, not asked", little, false, false},
		{"no gear, asked", little.add(quiet), false, true},
		{"gear not measured", little.gear(rough), false, false},
		{"gear measured, asked", little.gear(wormGear(16.20, "")).add(quiet), true, true},
	} {
		s := c.s.plan().Verdict.Sentence.String()
		if !strings.HasPrefix(s, "Leave it") || strings.Contains(s, "run right") != c.right || strings.Contains(s, "nobody complains") != c.asked || strings.Contains(s, "rubs") {
			t.Errorf("%s: %s", c.name, s)
		}
	}
}

// TestGrowthAsMeasured: 38.00 between old centres, the sister 38.00; measured
// at 38.21, 0.55 % more.
func TestGrowthAsMeasured(t *testing.T) {
	with := func(found string) situation {
		return plain(t).with("  current: none\n", "  current: none\n  wheelbase: {between: [drive, other], found: "+found+", sister: 38.00}\n")
	}
	f := saidOf(t, with("38.21").plan(), "growth", "chassis")
	if f.Level != finding.Stop || !strings.Contains(f.Text.String(), "38.210 mm as measured") || !strings.Contains(f.Text.String(), "between old centres it is 38.000") || len(f.Tried) != 1 || !strings.Contains(f.Tried[0].Change.String(), "measured again") {
		t.Errorf("%+v", f)
	}
	near(t, "percent", *f.Have, 100*0.21/38, 1e-6)
	f = saidOf(t, with("38.12").plan(), "growth", "chassis") // 0.316 %
	if f.Level != finding.Caution {
		t.Errorf("%+v", f)
	}
	unsaid(t, with("38.02").plan(), "growth")
	// Too short is never a stop: it was measured wrong.
	if f = saidOf(t, with("37.70").plan(), "growth", "chassis"); f.Level != finding.Caution {
		t.Errorf("%+v", f)
	}
}

// TestLittleWearMeshTooClose: a shaft with hardly any play whose gears stand
// too close is moved, so its seats are searched, and no reason speaks of bushes
// that were never tried.
func TestLittleWearMeshTooClose(t *testing.T) {
	const b = "centre: [10.00, 8.00], widest: 3.20, narrowest: 3.20"
	s := plain(t).drive(b, b)
	p := s.gear(wormGear(16.06, ", moved: yes")).add("complaint: {binds: no, noisy: yes, rubs: no}\n").plan()
	if len(p.Seats) != 2 || p.Verdict.Choice != "re-bush" {
		t.Errorf("%d seats, %s\n%s", len(p.Seats), p.Verdict.Sentence, everything(p))
	}
	// The same without a gear is left, and its bores were not searched.
	p = s.plan()
	if len(p.Seats) != 0 || p.Verdict.Choice != "leave" {
		t.Errorf("%d seats, %s", len(p.Seats), p.Verdict.Sentence)
	}
	for _, o := range p.Verdict.Options {
		if strings.Contains(o.WhyNot.String(), "no bush") {
			t.Errorf("%s: %s", o.Name, o.WhyNot)
		}
	}
}

// TestReasonsForAnOwner: where nothing can be fitted the sentence has no
// figures of the bench; they stand with the option.
func TestReasonsForAnOwner(t *testing.T) {
	thin := plain(t).with("widest: 3.30, narrowest: 3.20, worn_to: 90", "widest: 3.50, narrowest: 3.20, worn_to: 90, edges: [{at: 90, metal: 0.6}]").
		add("complaint: {binds: no, noisy: yes, rubs: no}\n")
	p := thin.plan()
	if s := p.Verdict.Sentence.String(); !strings.Contains(s, "no bearing we have fits the metal that is left") || strings.Contains(s, "drive.left") {
		t.Error(s)
	}
	if o := optionOf(t, p, "re-bush"); !strings.Contains(o.WhyNot.String(), "mm") {
		t.Errorf("%+v", o)
	}
	if s := thin.add(swapLine).plan().Verdict.Sentence.String(); !strings.Contains(s, "since no bearing we have fits the metal that is left") {
		t.Error(s)
	}
	swollen := plain(t).with("condition: sound", "condition: swollen")
	if s := swollen.plan().Verdict.Sentence.String(); !strings.Contains(s, "the casting is swollen") {
		t.Error(s)
	}
	if s := swollen.add(swapLine).plan().Verdict.Sentence.String(); !strings.Contains(s, "the casting is swollen") {
		t.Error(s)
	}
}

// TestWashersInOneSentence: two flanges of 0.7 mm and two washers of 1.0 mm on
// an axle over plates of 16.0 mm; side play from 0.1 to 0.4.
func TestWashersInOneSentence(t *testing.T) {
	flanged := func(hubs, washers string) situation {
		return plain(t).with("  - {code: solid 5, bore: 3.2, bore_class: F7, od: 5.0, od_class: s7, length: 3.0,", "  - {code: solid 5, bore: 3.2, bore_class: F7, od: 5.0, od_class: s7, length: 3.7, flange: {od: 7, thickness: 0.7},").
			with("    rpm: 400\n", "    rpm: 400\n    hub_to_hub: "+hubs+"\n    washers: ["+washers+"]\n").
			add("choose: {drive.left: solid 5, drive.right: solid 5}\n")
	}
	// 2.3 of room, 1.4 of flange: 0.9 is left, so both washers come out and one
	// of 0.9 - 0.25 = 0.65, to a tenth 0.7, goes in.
	p := flanged("18.3", "1.0, 1.0").plan()
	f := saidOf(t, p, "side play", "drive")
	if want := "put a washer of 0.7 mm in the place of the two washers of 1.00 mm"; f.Fix.String() != want {
		t.Errorf("%q, want %q\n%s", f.Fix, want, everything(p))
	}
	unsaid(t, p, "washers")
	// 2.6 - 1.4 = 1.2; one of the two comes out: 0.2 is right.
	p = flanged("18.6", "1.0, 1.0").plan()
	unsaid(t, p, "side play")
	if f = saidOf(t, p, "washers", "drive"); f.Text.String() != "the flanges take the place of one washer of 1.00 mm: leave it out" {
		t.Errorf("%+v", f)
	}
}

// TestPlayAsFound: widest 3.30 less the journal of 3.16 is 0.14 mm, 4.4 % of it.
func TestPlayAsFound(t *testing.T) {
	b := surveyed(t, plain(t).plan(), "drive.left")
	nearMM(t, "play", b.PlayMM, 0.14, 0.0005)
	if b.PlayPercent == nil {
		t.Fatal("no share of the journal")
	}
	near(t, "share", *b.PlayPercent, 100*0.14/3.16, 0.06)
}

// TestInstrumentForASeat: an instrument that tells the same reading has a u of
// its way to the nearer limit over 1.65 at the most; said is twice that.
func TestInstrumentForASeat(t *testing.T) {
	p := plain(t).inShop("{name: bore gauge, u: 0.004}", "{name: bore gauge, u: 0.03}").
		add("made:\n  drive.left: {seat: 5.008, with: bore gauge}\n").plan()
	i := inspected(t, p, "seat")
	var sure float64
	if _, err := fmt.Sscanf(i.Next[0].Do.String(), "measure again with an instrument that is good to about %f mm: the same reading by it is accepted", &sure); err != nil {
		t.Fatalf("%q", i.Next[0].Do)
	}
	u := math.Min(5.008-i.LimitsMM.Min.Float(), i.LimitsMM.Max.Float()-5.008) / 1.65
	if sure > 2*u+0.0013 || sure < 2*u-0.001 {
		t.Errorf("sure to %v, limits %v", sure, i.LimitsMM)
	}
}

// TestGearRunsOut: 0.10 mm of run-out brings the teeth 0.05 mm nearer once a
// turn. By hand: clamping 0.010, hole 0.010/sqrt 2, old centre and mate under
// 0.02 each: 0.031 at the most.
func TestGearRunsOut(t *testing.T) {
	s := plain(t).gear(wormGear(16.14, ""))
	unsaid(t, s.plan(), "gear runs out") // 0.02: half of it is 0.01
	for name, more := range map[string]string{"trusted": "", "not trusted": ", tip: 11.0"} {
		p := s.with("runout: 0.02", "runout: 0.10")
		if more != "" {
			p = p.with(more, "")
		}
		f := saidOf(t, p.plan(), "gear runs out", "d")
		if f.Level != finding.Note || !strings.Contains(f.Text.String(), "run out 0.10 mm") || !strings.Contains(f.Text.String(), "0.05 mm nearer") || f.Fix == "" {
			t.Errorf("%s: %+v", name, f)
		}
	}
}

// TestBearingUnderACap: held_by says cap, in a job that says strap too; the
// bearing is laid in, and its partner is to be measured.
func TestBearingUnderACap(t *testing.T) {
	for _, hold := range []string{"cap", "strap"} {
		under := "centre: [10.00, 8.00], widest: 3.94, narrowest: 3.90, worn_to: 90, hold: " + hold
		p := plain(t).drive(under, under).with("  - {code: solid 5, ", "  - {code: under 3.9, bore: [3.190, 3.200], od: [3.878, 3.886], length: 3.0, material: bearing bronze C93200, price: 1.00}\n  - {code: solid 5, ").plan()
		if s := seatOf(t, p, "drive.left"); s.HeldBy != "cap" || s.Bush != "under 3.9" || s.Tool != "the seat under its cap" {
			t.Errorf("%s: held by %q, bush %q, seat by %q", hold, s.HeldBy, s.Bush, s.Tool)
		}
		if f := saidOf(t, p, "partner", "drive.left"); f.Level != finding.Note || !strings.Contains(f.Text.String(), "measure its partner") {
			t.Errorf("%s: %+v", hold, f)
		}
		laid := 0
		for _, o := range p.Operations {
			if strings.Contains(strings.ToLower((o.Do + o.Note + o.Backing).String()), "strap") {
				t.Errorf("%s: %s; %s", hold, o.Do, o.Note)
			}
			if strings.HasPrefix(o.Do.String(), "Lay bearing under 3.9 into its seat at drive.") && strings.HasSuffix(o.Do.String(), "and fit the cap") {
				laid++
			}
		}
		if laid != 2 {
			t.Errorf("%s: %d bearings are laid in, want 2\n%s", hold, laid, everything(p))
		}
	}
}
