package target

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/table"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/survey"
)

// bench is a truck of two shafts 30 apart, each in two holes as hole makes them,
// the first under a throated worm wheel that runs tight at 8.000, and a ledger
// with what the survey and the meshes leave in it.
type bench struct {
	j      *job.Job
	rules  *table.Rules
	book   *ledger.Ledger
	axles  Axles
	drives []mesh.Drive
	shop   Shop
}

// window is the backlash window of the bench's worm, far above what its shaft
// stands at: 16.14 less 8.12 is 8.02 as found.
func newBench(t *testing.T, lo, hi float64) bench {
	t.Helper()
	rules, err := table.ReadRules(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	b := bench{rules: rules, shop: Shop{Setup: Doubt{0.010, "shop:1"}, Hole: Doubt{0.010, "shop:2"}}}
	b.j = &job.Job{File: "bench.yaml", Shafts: []job.Shaft{*shaft("drive"), *shaft("rear")}}
	b.j.Chassis.Width, b.j.Chassis.Thickness = dim.Must("22"), job.Ends{Left: dim.Must("2"), Right: dim.Must("2")}
	var holes []survey.Hole
	for i := range b.j.Shafts {
		s := &b.j.Shafts[i]
		s.WheelDiameter = dim.Must("20")
		for k := range s.Bores {
			h := hole(s, k)
			h.Worn.O[0] += 30 * float64(i)
			h.Middle[0] += 30 * float64(i)
			h.Worn.Cov = Round(0.014)
			holes = append(holes, h)
		}
	}
	b.axles = AxlesOf(b.j, holes, func(survey.Hole) [2]float64 { return [2]float64{0.015, 0.060} }, Sits)
	b.book = ledgerOf(b.axles)
	d := mesh.Drive{Name: "cog", Kind: mesh.WormDrive, Wheel: "drive", Module: 0.5, Shaft: 0, Mate: -1,
		MateAt: Point{10, 16.14}, Share: 0.5,
		Geometry: mesh.Along{}, Pair: mesh.Worm{Form: mesh.Throated, Module: 0.5, Starts: 1, Teeth: 20,
			PitchDiameter: 6, Angle: 20, WheelTip: 11},
		Trusted: true, Runout: 0.02, Window: mesh.Window{Lo: lo, Hi: hi, LoBy: mesh.ByRunout,
			HiBy: mesh.ByContact}, Limits: mesh.Limits{TightTooth: 0.01}}
	b.book.Leaf("mesh/cog/window_mm/0", "", "mm", "mesh", lo)
	b.book.Leaf("mesh/cog/window_mm/1", "", "mm", "mesh", hi)
	b.axles.Seen(b.book, "bench.yaml:1", d)
	b.drives = []mesh.Drive{d}
	return b
}

// ledgerOf is what the survey leaves in the ledger of these holes.
func ledgerOf(x Axles) *ledger.Ledger {
	book := ledger.New()
	for _, a := range x {
		for _, h := range a.Holes {
			w, page := h.Survey.Worn, book.Page("survey/"+h.Name())
			for k, v := range map[string]float64{"centre_mm/0": w.O[0], "centre_mm/1": w.O[1],
				"old_radius_mm/found": w.R, "wear_mm": w.W,
				"wear_rad": w.ThetaRad, "clearance_mm": w.C, "centre_u_mm": 0.014} {
				page.Leaf(k, "", "mm", "survey", v)
			}
		}
	}
	return book
}

func (b bench) settle() Settled { return Settle(b.j, b.rules, b.book, b.shop, b.axles, b.drives) }

func said(l finding.List) string {
	var out []string
	for _, f := range l {
		out = append(out, f.Rule.Name())
	}
	return strings.Join(out, ", ")
}

// The shaft of the wheel goes to the middle of a window too narrow for its
// doubt, 8.10 +- 0.01: the bore centres then stand 8.10 + 0.01875 from the worm,
// the middle of the clearances, so at 16.14 - 8.11875 = 8.02125. The other
// shaft stays at its old centre.
func TestSettle(t *testing.T) {
	b := newBench(t, 8.09, 8.11)
	got := b.settle()
	if !got.OK || len(got.Targets) != 4 || len(got.Shafts) != 2 || len(got.Meshes) != 1 {
		t.Fatalf("%+v", got)
	}
	for i, want := range []string{"8.0213", "8.0213", "8.0000", "8.0000"} {
		r := got.Targets[i]
		if r.TargetMM[1].String() != want || *r.LoadTowardsDeg != 90 || r.UMM.String() != "0.0141" {
			t.Errorf("%s: %v, load %v, u %v", r.Bore, r.TargetMM, *r.LoadTowardsDeg, r.UMM)
		}
		h := got.Axles[i/2].Holes[i%2]
		if fmt.Sprintf("%.4f", h.Target[1]) != want || !h.Touch {
			t.Errorf("%s: %v, touch %v", h.Name(), h.Target, h.Touch)
		}
	}
	if r := got.Targets[0]; r.FromOriginalMM[1].String() != "0.0213" || r.FromFoundMM[1].String() != "-0.0287" {
		t.Errorf("from the old centre %v, from the hole %v", r.FromOriginalMM, r.FromFoundMM)
	}
	m := got.Meshes[0]
	near(t, "found", m.FoundCentreMM.Float(), 8.02, 1e-9)
	near(t, "target", m.TargetCentreMM.Float(), 16.14-8.0213-0.01875, 1e-4)
	near(t, "correction", m.CorrectionMM[1].Float(), 0.0213, 1e-9)
	near(t, "wheelbase as found", got.Truck.WheelbaseMM.Found.Float(), 30, 1e-9)
	if s := got.Shafts[0]; s.AxisMM[1].String() != "8.0213" || *s.SkewDeg.Found != 0 || got.Truck.RockMM.Found.Given() {
		t.Errorf("%+v, rock %+v", s, got.Truck.RockMM)
	}
	// What was handed in is as it was, and the ledger comes out again.
	if h := b.axles[0].Holes[0]; h.Target != (Point{10, 8}) || h.Touch || h.UPlace != 0 {
		t.Errorf("an earlier value was written into: %+v", h)
	}
	if bad := b.book.Recompute(); len(bad) > 0 {
		t.Error(bad)
	}
	if e, _ := b.book.Get("mesh/cog/found_centre_mm"); strings.Contains(strings.Join(e.Inputs, " "), "targets/") {
		t.Errorf("as found hangs on the new centre: %v", e.Inputs)
	}
}

// A move is long above 0.15, or above three doubts of the old centre, which two
// holes of 0.014 know to 0.0099: 0.0297. Both are rows of the rules.
func TestLongMove(t *testing.T) {
	b := newBench(t, 8.09, 8.11)
	if got := said(b.settle().Findings); got != "" {
		t.Errorf("0.021: %s", got)
	}
	if got := said(newBench(t, 8.08, 8.10).settle().Findings); got != "long move, long move" {
		t.Errorf("0.031: %s", got)
	}
	b = newBench(t, 8.08, 8.10)
	if err := b.rules.Set("move_doubts", 4, math.NaN(), "shop:3"); err != nil {
		t.Fatal(err)
	}
	if got := said(b.settle().Findings); got != "" {
		t.Errorf("0.031 against four doubts: %s", got)
	}
}

// A move that is many doubts long but shorter than 0.01 is no matter.
func TestShortMove(t *testing.T) {
	for window, want := range map[[2]float64]string{{8.104, 8.124}: "", {8.100, 8.120}: "long move, long " +
		"move"} { // 0.0073, 0.0113
		b := newBench(t, window[0], window[1])
		for i := range b.axles[0].Holes {
			b.axles[0].Holes[i].Survey.Worn.Cov = Round(0.001)
		}
		if got := said(b.settle().Findings); got != want {
			t.Errorf("%v: %q, want %q", window, got, want)
		}
	}
}

// What the search is asked of: of a shaft that is left alone its place in the
// worn hole, 2 x 0.12. What is worn beyond what is
// accepted is touched, and what has to move.
func TestAsked(t *testing.T) {
	b := newBench(t, 8.09, 8.11)
	b.j.Shafts[1].Leave = true
	got := b.settle()
	if r := got.Input.Shafts[1].Bores[0]; math.Abs(r.CdLo-0.24) > 1e-12 || r.CdHi != r.CdLo || !r.Fixed ||
		got.Axles[1].Holes[0].Touch {
		t.Errorf("%+v", r)
	}
	near(t, "u of the place", got.Axles[0].Holes[0].UPlace, 0.010*math.Sqrt2, 1e-12)

	b = newBench(t, 8.09, 8.11)
	for i := range b.axles {
		for k := range b.axles[i].Holes {
			w := &b.axles[i].Holes[k].Survey.Worn
			w.Round, w.W = true, 0.01 // play 0.05
		}
	}
	got = b.settle()
	if !got.Axles[0].Holes[0].Touch || got.Axles[1].Holes[0].Touch {
		t.Error("sound holes: the shaft that has to move is bushed, the other is not")
	}
	if err := b.rules.Set("clearance_max_um", 49, math.NaN(), "shop:4"); err != nil {
		t.Fatal(err)
	}
	b.book = ledgerOf(b.axles)
	b.book.Leaf("mesh/cog/window_mm/0", "", "mm", "mesh", 8.09)
	b.book.Leaf("mesh/cog/window_mm/1", "", "mm", "mesh", 8.11)
	b.axles.Seen(b.book, "bench.yaml:1", b.drives[0])
	if got = b.settle(); !got.Axles[1].Holes[0].Touch {
		t.Error("0.05 of play where 0.049 are accepted stays")
	}
}

// A shaft that is left where an earlier repair put its holes, at (40.2, 8.05),
// and not about their old centres at (40, 8): the search takes its mate from
// there, as what is printed does. The holes of 3.20 leave 0.02 of 3.16, upwards.
// The wheel's shaft, bores 0.015 to 0.060 over, meets the middle of a window of
// 30.10 +- 0.01: from (x, 8.01875) to (40.2, 8.07) that is x = 10.10004.
func TestLeftAside(t *testing.T) {
	b := newBench(t, 30.09, 30.11)
	b.drives[0].Geometry, b.drives[0].Mate = mesh.Across{}, 1
	s := &b.j.Shafts[1]
	s.Leave = true
	for i := range s.Bores {
		s.Bores[i].Repaired, s.Bores[i].Widest = true, dim.Must("3.20")
		s.Bores[i].Centre = job.Point{X: dim.Must("40.2"), Y: dim.Must("8.05")}
		b.axles[1].Holes[i].Survey.Middle = Point{40.2, 8.05}
	}
	got := b.settle()
	for _, r := range got.Input.Shafts[1].Bores {
		near(t, "aside, x", r.Aside[0], 0.2, 1e-12)
		near(t, "aside, y", r.Aside[1], 0.05, 1e-12)
		near(t, "clearance", r.CdLo, 0.04, 1e-12)
	}
	near(t, "target", got.Targets[0].TargetMM[0].Float(), 10.1000, 2e-4)
	near(t, "centre distance", got.Meshes[0].TargetCentreMM.Float(), 30.10, 2e-4)
	if bad := b.book.Recompute(); len(bad) > 0 {
		t.Error(bad)
	}
}

// What is said of a mesh that misses its window.
func TestMeshFindings(t *testing.T) {
	for _, c := range []struct {
		trusted bool
		g       GearOut
		want    string
	}{
		{true, GearOut{Missed: 1e-7, Outside: 1e-7}, ""},
		{false, GearOut{Missed: 0.02, Stuck: true}, "mesh off"},
		{true, GearOut{Missed: -0.02, Stuck: true, Outside: -0.02}, "mesh fixed"},
		{true, GearOut{Missed: -0.02, Outside: -0.01}, "mesh window"},
		{true, GearOut{Missed: 0.02}, ""},
	} {
		s := settling{j: &job.Job{}, out: &Settled{}}
		s.meshFindings(mesh.Drive{Name: "cog", Trusted: c.trusted}, c.g)
		if got := said(s.out.Findings); got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
}

// Coupled axles match their rods to 0.03, a row of the rules.
func TestRods(t *testing.T) {
	for sister, want := range map[string]string{"30.03": "", "29.969": "rods", "30.031": "rods"} {
		b := newBench(t, 8.09, 8.11)
		b.j.Chassis.Wheelbase = &job.Wheelbase{Between: [2]string{"drive", "rear"}, Sister: dim.Must(sister)}
		if got := said(b.settle().Findings); got != "" {
			t.Errorf("%s without rods: %s", sister, got)
		}
		b = newBench(t, 8.09, 8.11)
		b.j.Shafts[1].Rods = true
		b.j.Chassis.Wheelbase = &job.Wheelbase{Between: [2]string{"drive", "rear"}, Sister: dim.Must(sister)}
		if got := said(b.settle().Findings); got != want {
			t.Errorf("%s: %q, want %q", sister, got, want)
		}
	}
}

// Four wheels rock by what unlike left and right centres lift: contacts 16
// apart, plates 20: left bores of the drive 0.10 higher, 16 x 0.10 / 20 = 0.08;
// both shafts square after.
func TestRock(t *testing.T) {
	b := newBench(t, 8.0, 8.4)
	b.j.Shafts[0].ContactsApart = dim.Must("16")
	for i := range b.axles[0].Holes {
		h := &b.axles[0].Holes[i]
		if i == 0 {
			h.Survey.Worn.O[1] += 0.10
		}
	}
	b.book, b.drives = ledgerOf(b.axles), nil
	got := b.settle().Truck
	near(t, "as found", got.RockMM.Found.Float(), 0.08, 1e-9)
	near(t, "after", got.RockMM.After.Float(), 0, 1e-9)
}

// fittedIn is what the seats leave in the ledger of a bore: 3.18 to 3.20 on a
// journal of 3.16.
func fittedIn(book *ledger.Ledger, name string) Fitted {
	leaf := func(k string, v float64) ledger.Num { return book.Page("seats/"+name).Leaf(k, "", "mm", "seat", v) }
	return Fitted{Least: leaf("least", 3.18), Most: leaf("most", 3.20), Journal: leaf("journal", 3.16)}
}

// Reached: bores of 3.18 to 3.20 on a journal of 3.16 leave the shaft 0.01 to
// 0.02 off its centre, here at 8.0213: 8.0987 to 8.1087 from the worm. The
// tightest tooth stands half the run-out nearer.
func TestReach(t *testing.T) {
	for _, c := range []struct {
		runout float64
		mended string // shafts that got a bush
		says   string
		level  finding.Level
	}{
		{0.02, "drive rear", "", ""},
		{0.20, "drive rear", "tightest tooth", finding.Stop},
		{0.02, "rear", "nothing", ""},
	} {
		b := newBench(t, 8.09, 8.11)
		b.drives[0].Runout = c.runout
		p := b.settle()
		fitted := map[string]Fitted{}
		for _, a := range p.Axles {
			for _, h := range a.Holes {
				if strings.Contains(c.mended, a.Shaft.Name) {
					fitted[h.Name()] = fittedIn(b.book, h.Name())
				}
			}
		}
		got := p.Reach(b.j, b.rules, b.book, fitted)
		if c.says == "nothing" {
			if got.Centre[0] != nil || len(got.Findings) > 0 {
				t.Errorf("a shaft that was to be bushed and is not: %+v", got)
			}
			continue
		}
		if r := got.Centre[0]; r.Min.String() != "8.0987" || r.Max.String() != "8.1087" {
			t.Errorf("reached %v to %v", r.Min, r.Max)
		}
		if said(got.Findings) != c.says || c.says != "" && got.Findings[0].Level != c.level {
			t.Errorf("run-out %v: %+v", c.runout, got.Findings)
		}
		if bad := b.book.Recompute(); len(bad) > 0 {
			t.Error(bad)
		}
	}
	// Without any new bush on the mesh, in holes that stay worn, the teeth bind
	// as before: to be known, no stop. A window that the clearances run out of is
	// said.
	b := newBench(t, 8.1, 8.105)
	p := b.settle()
	for i := range p.Axles[0].Holes {
		p.Axles[0].Holes[i].Touch = false
	}
	if got := p.Reach(b.j, b.rules, b.book, nil); said(got.Findings) != "tightest tooth" ||
		got.Findings[0].Level != finding.Caution || got.Centre[0] == nil {
		t.Errorf("no bush: %+v", got)
	}
	var l Reached
	l.judge(p.Drives[0], finding.Place{}, 8.0987, 8.1087, 0.01, true)
	if said(l.Findings) != "mesh after fitting" || *l.Findings[0].Have != 8.1087 || *l.Findings[0].Want != 8.105 {
		t.Errorf("%+v", l.Findings)
	}
}

// Two shafts of the job 30 apart, pressed to each other, each 0.01 to 0.02 off:
// 29.96 to 29.98.
func TestReachOfTwo(t *testing.T) {
	b := newBench(t, 8.09, 8.11)
	right, left := 0.0, 180.0
	b.j.Shafts[0].LoadTowards, b.j.Shafts[1].LoadTowards = &right, &left
	var holes []survey.Hole
	for _, a := range b.axles {
		for _, h := range a.Holes {
			holes = append(holes, h.Survey)
		}
	}
	x := AxlesOf(b.j, holes, func(survey.Hole) [2]float64 { return [2]float64{0.015, 0.060} }, Sits)
	fitted := map[string]Fitted{}
	for _, h := range holes {
		fitted[h.Name()] = fittedIn(b.book, h.Name())
		for i, v := range h.Worn.O {
			b.book.Page("targets/"+h.Name()).Leaf(fmt.Sprintf("target_mm/%d", i), "", "mm", "here", v)
		}
	}
	lo, hi := x.reach(b.book, "bench.yaml:1", mesh.Drive{Name: "pair", Shaft: 0, Mate: 1, Geometry: mesh.Across{}},
		fitted)
	near(t, "nearest", lo.V, 29.96, 1e-9)
	near(t, "farthest", hi.V, 29.98, 1e-9)
}
