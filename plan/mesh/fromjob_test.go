package mesh

import (
	"math"
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/table"
	"rebush/plan/job"
)

// wormJob is a throated wheel of 20 teeth, axial module 0.5, under a worm of
// 6 mm: tight at (6 + 10)/2 = 8.000; its backlash grows by k a millimetre, twice
// the tangent of the axial pressure angle.
func wormJob() *job.Job {
	return &job.Job{Gears: []job.Gear{{Name: "cog", Kind: "worm", WheelForm: "throated", Module: 0.5, PressureAngle: 20,
		Backlash: [2]dim.Length{dim.Must("0.05"), dim.Must("0.12")},
		Wheel: job.Wheel{On: "drive", Teeth: 20, Tip: dim.Must("11.0"), Runout: dim.Must("0.02"),
			Face: dim.Must("4")},
		Worm: &job.Worm{Starts: 1, PitchDiameter: dim.Must("6"), Height: dim.Must("16.14")}}}}
}

var k = 2 * math.Tan(20*rad) / math.Cos(math.Atan(0.5/6))

func drives(t *testing.T, j *job.Job) ([]Drive, finding.List) {
	t.Helper()
	lib := table.BuiltIn()
	rules, err := table.ReadRules(lib)
	if err != nil {
		t.Fatal(err)
	}
	book := ledger.New()
	out, said := FromJob(Input{Job: j, Rules: rules, Tables: lib, UMate: 0.01, USetup: 0.01, UHole: 0.01,
		Shafts: []Shaft{{Name: "drive", Centre: [2]float64{10, 8}, Holes: 2, U: 0.014}, {Name: "idler",
			Centre: [2]float64{22, 8}, Holes: 1}}}, book)
	if bad := book.Recompute(); len(bad) > 0 {
		t.Errorf("the ledger does not come out again: %v", bad)
	}
	return out, said
}

func rulesOf(l finding.List) string {
	var out []string
	for _, f := range l {
		out = append(out, f.Rule.Name())
	}
	return strings.Join(out, ", ")
}

// A worm lies square over the middle of its wheel; the window of centre
// distances is that of the backlash wanted.
func TestWormFromJob(t *testing.T) {
	j := wormJob()
	got, said := drives(t, j)
	if len(got) != 1 || len(said) != 0 {
		t.Fatalf("%d drives, %s", len(got), rulesOf(said))
	}
	d := got[0]
	near(t, "least", d.Window.Lo, 8+0.05/k, 1e-7)
	near(t, "most", d.Window.Hi, 8+0.12/k, 1e-7)
	if !d.Trusted || d.OnJob() || d.MateAt != [2]float64{10, 16.14} || d.Share != 0.5 || d.Turns != 0.02 ||
		d.Geometry != (Along{}) {
		t.Errorf("%+v", d)
	}
	// sqrt(0.01^2 + 0.05^2/12): nobody measured the play of its bearings.
	near(t, "doubt of the worm", d.UMate, 0.0175594, 1e-7)
	// Half of the backlash limits' least leaves so much to a leaning shaft.
	limit, ok := d.LeanLimit(0.25)
	// square to the flank: 2 da sin 20 of a throated wheel (METHODS.md 2.3)
	near(t, "lean", limit, 0.25*2*(0.05/k)*math.Sin(20*rad), 1e-8)
	if !ok {
		t.Error("no limit of lean")
	}

	// The bearing's play is a rectangle, beside the doubt of the height.
	j.Gears[0].Worm.BearingPlay, j.Gears[0].Worm.U = dim.Must("0.12"), dim.Must("0.03")
	got, _ = drives(t, j)
	near(t, "mate", got[0].UMate, math.Sqrt(0.03*0.03+0.12*0.12/12), 1e-12)

	if j.Gears[0].Worm.Moved = true; got[0].Moved {
		t.Error("moved before it was said")
	}
	if got, _ = drives(t, j); !got[0].Moved {
		t.Error("moved is not heard")
	}

	// A worm below, its height by the top of its shaft.
	w := j.Gears[0].Worm
	w.Height, w.Top, w.ShaftDiameter = dim.Length{}, dim.Must("1.0"), dim.Must("2.3")
	got, _ = drives(t, j)
	if got[0].Geometry != (Along{Below: true}) || math.Abs(got[0].MateAt[1]+0.15) > 1e-12 {
		t.Errorf("%+v at %v", got[0].Geometry, got[0].MateAt)
	}
}

// A throated wheel 0.02 off its middle, face 4, hollow 2.5: its rim comes nearer
// by sqrt(2.5^2 - 1.98^2) - sqrt(2.5^2 - 2^2) = 0.026303.
func TestOffItsMiddle(t *testing.T) {
	j := wormJob()
	j.Gears[0].Worm.Offset = dim.Must("-0.02")
	got, said := drives(t, j)
	near(t, "closes", got[0].Closes, 0.026303, 5e-7)
	near(t, "least", got[0].Window.Lo, 8+0.05/k+0.026303, 6e-7)
	near(t, "most", got[0].Window.Hi, 8+0.12/k, 1e-7)
	if rulesOf(said) != "wheel off its middle" {
		t.Error(rulesOf(said))
	}
	// Five times as far leaves nothing of the window: its middle is aimed at.
	j.Gears[0].Worm.Offset = dim.Must("0.1")
	got, said = drives(t, j)
	w := got[0].Window
	if lo, hi := Aim(w.Lo, w.Hi); !w.Empty || lo != hi || math.Abs(lo-w.Middle()) > 1e-12 {
		t.Errorf("%+v", w)
	}
	if rulesOf(said) != "wheel off its middle, window empty" {
		t.Error(rulesOf(said))
	}
}

// A mesh that cannot be reckoned says why, in the words of the bench, and the
// others go on.
func TestUnreckoned(t *testing.T) {
	spur := job.Gear{Name: "pair", Kind: "spur", Module: 0.5, PressureAngle: 20, Backlash: wormJob().Gears[0].Backlash,
		Wheel: job.Wheel{On: "drive", Teeth: 36, Tip: dim.Must("19")}}
	for want, change := range map[string]func(g *job.Gear){
		"the tooth count of the pinion is 3": func(g *job.Gear) {
			g.Pinion = &job.Pinion{Teeth: 3,
				On: "idler"}
		},
		"the tooth count of the wheel is 2": func(g *job.Gear) {
			g.Wheel.Teeth, g.Pinion = 2,
				&job.Pinion{Teeth: 12, On: "idler"}
		},
		"the tip diameter of the pinion": func(g *job.Gear) {
			g.Pinion = &job.Pinion{Teeth: 12,
				On: "idler", Tip: dim.Must("5")}
		},
		"the place of rear, where the pinion sits": func(g *job.Gear) {
			g.Pinion = &job.Pinion{Teeth: 12,
				On: "rear"}
		},
		"a spur gear needs its mating gear":   func(g *job.Gear) {},
		"the place of its shaft is not known": func(g *job.Gear) { g.Wheel.On = "rear" },
		"the height of the worm is not given": func(g *job.Gear) {
			g.Kind, g.Worm = "worm",
				&job.Worm{Starts: 1, PitchDiameter: dim.Must("6")}
		},
		"the top of the worm's shaft needs its diameter": func(g *job.Gear) {
			g.Kind, g.Worm = "worm",
				&job.Worm{Top: dim.Must("3")}
		},
	} {
		j, g := wormJob(), spur
		change(&g)
		j.Gears = append([]job.Gear{g}, j.Gears...)
		got, said := drives(t, j)
		if len(got) != 1 || len(said) != 1 || said[0].Rule != Unreckoned || !strings.Contains(said[0].Text.String(),
			want) {
			t.Errorf("%s: %d drives, %+v", want, len(got), said)
		}
	}
}

// Two spur gears on shafts of the job, without tips: reported, not trusted.
func TestSpurFromJob(t *testing.T) {
	j := wormJob()
	j.Chassis.Width, j.Chassis.Thickness = dim.Must("22"), job.Ends{Left: dim.Must("2"), Right: dim.Must("2")}
	j.Gears = []job.Gear{{Name: "pair", Kind: "spur", Module: 0.5, PressureAngle: 20,
		Wheel:  job.Wheel{On: "drive", Teeth: 36, FromLeft: dim.Must("6"), Runout: dim.Must("0.03")},
		Pinion: &job.Pinion{On: "idler", Teeth: 12, Runout: dim.Must("0.04")}}}
	got, said := drives(t, j)
	d := got[0]
	if j.Gears[0].Pinion.Moved = true; d.Moved {
		t.Error("moved before it was said")
	}
	if again, _ := drives(t, j); !again[0].Moved {
		t.Error("moved is not heard")
	}
	if !d.OnJob() || d.Mate != 1 || d.Trusted || d.Share != 0.25 || d.MateShare != 0.25 || !d.Wish.Normal {
		t.Errorf("%+v", d)
	}
	near(t, "run-out, tightest tooth", d.Runout, 0.07, 1e-12)
	if rulesOf(said) != "backlash by handbook, gear runs out, mesh not trusted" {
		t.Error(rulesOf(said))
	}
	if text := said[2].Text.String(); !strings.Contains(text, "tip diameter of the wheel") ||
		!strings.Contains(text, "tip diameter of the pinion") {
		t.Error(text)
	}
}

// Half a run-out is held against set-up, two holes, old centre and mate:
// sqrt(0.01^2 + 0.01^2/2 + 0.014^2 + 0.01^2) = 0.0211 where the worm has no play in its bearings.
func TestRunsOut(t *testing.T) {
	near(t, "doubt", PlaceDoubt(0.01, 0.01, 2, 0.014, 0.01), 0.021119, 5e-7)
	for runout, want := range map[string]string{"0.042": "", "0.043": "gear runs out"} {
		j := wormJob()
		j.Gears[0].Wheel.Runout, j.Gears[0].Worm.BearingPlay = dim.Must(runout), dim.Must("0")
		if _, said := drives(t, j); rulesOf(said) != want {
			t.Errorf("%s: %s", runout, rulesOf(said))
		}
	}
}

// Figures that contradict what is seen take the trust of the drive that comes
// back; the one that was asked keeps its own. Nearer than 8.000 by twice
// sqrt(0.02^2 + 0.02^2) is 7.943.
func TestSeen(t *testing.T) {
	j := wormJob()
	got, _ := drives(t, j)
	for _, c := range []struct {
		binds   job.Tri
		found   float64
		trusted bool
		rule    string
	}{{job.No, 8.05, true, ""}, {job.No, 7.946, true, ""}, {job.No, 7.94, false, "mesh contradicts"}, {job.Unsaid,
		7.93, false, "mesh contradicts"}, {job.Yes, 7.93, true, "mesh tight as found"}} {
		j.Binds = c.binds
		d, said := got[0].Seen(j, 8.1, c.found, 0.02, 0.02)
		if d.Trusted != c.trusted || rulesOf(said) != c.rule || !strings.HasPrefix(d.Wear.String(),
			"closer to the worm by ") {
			t.Errorf("%+v: trusted %v, %s, %q", c, d.Trusted, rulesOf(said), d.Wear)
		}
	}
	if !got[0].Trusted || got[0].Wear != "" {
		t.Error("what was asked was written into")
	}
}

// What is printed of a drive: backlash is never below 0; its window is as it was
// wanted, and at its edge where the wish is square to the flanks or the rim
// comes closer.
func TestRow(t *testing.T) {
	row := func(change func(j *job.Job), at float64) Row {
		j := wormJob()
		change(j)
		lib := table.BuiltIn()
		rules, err := table.ReadRules(lib)
		if err != nil {
			t.Fatal(err)
		}
		book := ledger.New()
		got, _ := FromJob(Input{Job: j, Rules: rules, Tables: lib, Shafts: []Shaft{{Name: "drive",
			Centre: [2]float64{10, 8}, Holes: 2}}}, book)
		n := book.Leaf("a", "", "mm", "here", at)
		out := got[0].Row(book, Distances{n, n, n, n})
		if bad := book.Recompute(); len(bad) > 0 {
			t.Error(bad)
		}
		return out
	}
	r := row(func(*job.Job) {}, 8.1)
	near(t, "backlash", r.FoundBacklashMM.Float(), 0.1*k, 5e-5)
	near(t, "least", r.BacklashWindowMM[0].Float(), 0.05, 0)
	near(t, "most", r.BacklashWindowMM[1].Float(), 0.12, 0)
	if r = row(func(*job.Job) {}, 7.9); r.FoundBacklashMM.String() != "0.0000" || r.ContactRatio == nil {
		t.Errorf("%+v", r)
	}
	if r = row(func(*job.Job) {}, 30); r.FoundBacklashMM.Given() || r.ContactRatio != nil {
		t.Errorf("apart: %+v", r)
	}
	r = row(func(j *job.Job) { j.Gears[0].Worm.Offset = dim.Must("0.02") }, 8.1)
	near(t, "off its middle", r.BacklashWindowMM[0].Float(), 0.05+0.026303*k, 5e-5)
	// The handbook's backlash is square to the flanks: round the pitch circle it
	// is more, by cos 20 cos of the lead (METHODS.md 2.3).
	j := wormJob()
	j.Gears[0].Backlash = [2]dim.Length{}
	got, _ := drives(t, j)
	r = row(func(j *job.Job) { j.Gears[0].Backlash = [2]dim.Length{} }, 8.1)
	lead := math.Atan(0.5 / 6)
	near(t, "by handbook", r.BacklashWindowMM[0].Float(), got[0].Wish.Lo/(math.Cos(20*rad)*math.Cos(lead)), 6e-5)
}
