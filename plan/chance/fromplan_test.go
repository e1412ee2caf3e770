package chance

import (
	"math"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/odds"
	"rebush/plan/job"
	"rebush/plan/survey"
)

// pressed is a solid bush of 3 in a seat of 5 cut by a reamer, 0.8 mm from an edge.
func pressed() *Fitting {
	return &Fitting{Tool: "5 mm reamer", SeatMM: [2]float64{5, 5.012}, LeftMM: 0.8, Finish: OwnAxle, MustPassMM: 3.17,
		Bush: Bush{RunoutMM: 0.02, OnHand: 2},
		Odds: odds.Seat{SeatMid: 5.006, ToolU: 0.004, SeatU: 0.003, Lobes: 0.003, Slips: 0.01,
			ODMid: 5.023, ODHalf: 0.004, BoreMid: 3.206, BoreHalf: 0.006, UMin: 0.004, UMax: 0.1, Eases: 0.002,
			Tension: 5120, Strength: 240, StrengthU: 0.15, TensionMost: 300, Elastic: 0.6,
			Sized: true, OwnAxle: true, ToolLow: 0.02, ToolHigh: 0.04, SizedU: 0.001, MostOpen: 0.05,
			BoreLow: 3.175, BoreHigh: 3.22, RunLow: 0.015, RunHigh: 0.06, Journal: 3.16, JournalU: 0.005}}
}

func facts(x *Fitting) Facts {
	hole := survey.Hole{Shaft: &job.Shaft{Name: "a"}, Bore: &job.Bore{Name: "a.left", Side: job.Left}, Known: true,
		Worn: survey.NewWornBore([2]float64{10, 8}, 1.6, 0.1, math.Pi/2, 0.02), By: "pins"}
	hole.Shaft.Journal.Left = length("3.16")
	return Facts{USetupMM: 0.01, UHoleMM: 0.02, Lathe: true, Compound: true, Shafts: []Shaft{{Name: "a", LoadDeg: 90}},
		Clampings: []Clamping{{"A", []string{"b.left"}}, {"B", []string{"a.left"}}},
		Holes:     []Hole{{Hole: hole, At: [2]float64{10, 8.01}, FoundMM: 0.12, Fitting: x}},
		Rules:     Rules{UJournalMM: 0.005, RunLeastUM: 15, RunMostUM: 60, LeastWallMM: 0.5, NoWallRadii: 0.5, GaugeUM: 3}}
}

func length(s string) dim.Length {
	l, err := dim.Parse(s, dim.MM)
	if err != nil {
		panic(err)
	}
	return l
}

func is(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9 {
		t.Errorf("%s is %.9g, want %.9g", what, got, want)
	}
}

// What chose a seat is what its trials draw from, length for length.
func TestDrawnAsChosen(t *testing.T) {
	m, ok := FromPlan(facts(pressed()))
	if !ok || len(m.Bores) != 1 || len(m.Setups) != 2 {
		t.Fatalf("%v %+v", ok, m)
	}
	b := m.Bores[0]
	if b.Kind != Cut || b.Setup != 1 || b.Right || b.SeatBy != "5 mm reamer" || b.SurveyBy != "pins" {
		t.Errorf("%+v", b)
	}
	if want := (SeatSize{Mid: 5.006, ToolU: 0.004, U: 0.003, Lobes: 0.003}); b.Seat != want {
		t.Errorf("seat %+v, want %+v", b.Seat, want)
	}
	is(t, "slips", b.Slips, 0.01)
	is(t, "least outside", b.OD.Low, 5.019)
	is(t, "largest bore", b.Hole.High, 3.212)
	is(t, "least press", b.PressUM[0], 4)
	is(t, "most press", b.PressUM[1], 100)
	is(t, "or by friction less", b.EasesUM, 2)
	is(t, "gauge", b.GaugeUM, 3)
	is(t, "closure", b.Closure.Elastic, 0.6)
	is(t, "tension of 1 um", b.Wall.StressPerUM, 5.12)
	is(t, "where the casting goes", b.Wall.StressLimit, 240)
	is(t, "doubt of that", b.Wall.StressU, 0.15)
	is(t, "most that the bush can raise", b.Wall.StressCapMPa, 300)
	is(t, "least wall", b.Wall.NoneBelowMM, 0.5*5.012/4)
	is(t, "clearance aimed at", b.ToolMM[0], 0.02)
	is(t, "most of it", b.ToolMM[1], 0.04)
	is(t, "its error", b.SizedUMM, 0.001)
	is(t, "most that is opened", b.MaxOpenMM, 0.05)
	is(t, "of the journal", b.JournalMM, 3.16)
	is(t, "most clearance", b.RunningUM[1], 60)
	// (5.019 - 3.22)/2 of wall leaves room for an eccentric bush; two are on hand.
	if !b.Bond || !b.Eccentric || !b.Replaceable || b.NextBush {
		t.Errorf("what could be done: %+v", b)
	}
}

// One bore by itself: its trials and its closed form agree within noise, for seats
// of every kind. 20 blocks are 82 000 trials, of which the share wobbles by 0.0018
// at the most; the closed form is good to 0.006.
func TestClosedFormBesideTrials(t *testing.T) {
	for name, change := range map[string]func(*Fitting){
		"as it is":     func(*Fitting) {},
		"tight wall":   func(x *Fitting) { x.Odds.UMax, x.Odds.Strength = 0.020, 125 },
		"barely holds": func(x *Fitting) { x.Odds.UMin, x.Odds.Eases = 0.012, 0.004 },
		"flows": func(x *Fitting) {
			x.Odds.FlowLow, x.Odds.FlowHigh, x.Odds.SlopeLow, x.Odds.SlopeHigh = 0.008, 0.014, 1, 1.3
			x.Odds.BoreHigh, x.Finish = 3.197, AsDelivered
			x.Odds.Sized, x.Odds.OwnAxle, x.Odds.BoreLow = false, false, 3.18
		},
		"reamed bore": func(x *Fitting) {
			x.Finish, x.Odds.OwnAxle = Ream, false
			x.Odds.ToolLow, x.Odds.ToolHigh, x.Odds.SizedU = 3.200, 3.200, 0.008
		},
		"there": func(x *Fitting) {
			x.Renews, x.SetUMM = true, 0.01
			x.Odds.SeatHalf, x.Odds.ToolU, x.Odds.SeatU, x.Odds.Slips, x.Odds.UMin = 0.006, 0, 0, 0, 0.014
		},
		"slips often": func(x *Fitting) { x.Odds.Slips = 0.1 },
		"filled":      func(x *Fitting) { x.Filled, x.Odds.CleanupMargin, x.Odds.CleanupU = true, 0.02, 0.02 },
	} {
		x := pressed()
		if x.Odds.CleanupMargin = 1; name != "" {
			change(x)
		}
		f := facts(x)
		f.Holes[0].Worn.R, f.Holes[0].Worn.D = 1, 0 // the seat clears by far
		x.LeftMM = math.Inf(1)
		m, _ := FromPlan(f)
		m.Gears = nil
		got, want := run(t, m, 20*Block).FirstTimeRight, x.Odds.Chance()
		if math.Abs(got-want) > 0.008 {
			t.Errorf("%s: trials %.4f, closed form %.4f", name, got, want)
		}
		if name != "as it is" && want > 0.985 {
			t.Errorf("%s: %.4f says nothing", name, want)
		}
	}
}

// Two seats by one tool share what it does on the whole: both are right more often
// than twice one. By another tool they are not.
func TestToolIsShared(t *testing.T) {
	x := pressed()
	x.Odds.UMin, x.Odds.Slips, x.Odds.Eases = 0.014, 0, 0
	f := facts(x)
	f.Holes[0].Worn.R, f.Holes[0].Worn.D = 1, 0
	m, _ := FromPlan(f)
	one := run(t, m, 20*Block).FirstTimeRight
	right := m.Bores[0]
	right.Name, right.Right = "a.right", true
	m.Bores = append(m.Bores, right)
	both := run(t, m, 20*Block).FirstTimeRight
	m.Bores[1].SeatBy = "another reamer"
	apart := run(t, m, 20*Block).FirstTimeRight
	if both < one*one+0.02 || math.Abs(apart-one*one) > 0.01 {
		t.Errorf("one %.4f, both %.4f, by two tools %.4f", one, both, apart)
	}
}

// A seat too large, with nothing to put into it: the truck is lost, but of what its
// tool does on the whole the scrap hole tells before.
func TestScrapTells(t *testing.T) {
	x := pressed()
	x.Bush.OnHand, x.Bush.Porous = 1, true
	x.Odds.UMin, x.Odds.Slips, x.Odds.Eases, x.Odds.ToolU, x.Odds.SeatU = 0.014, 0, 0, 0.006, 0.001
	f := facts(x)
	f.Holes[0].Worn.R, f.Holes[0].Worn.D = 1, 0
	f.Lathe, f.Compound = false, false
	m, _ := FromPlan(f)
	blind := run(t, m, 10*Block)
	m.Bores[0].Tried = true
	tried := run(t, m, 10*Block)
	if tried.Right != blind.Right || tried.Lost > blind.Lost/4 || blind.Lost < 0.1 {
		t.Errorf("without scrap %.3f lost, with it %.3f; right %d and %d", blind.Lost, tried.Lost, blind.Right, tried.Right)
	}
}

// What holds is a gap under compound and a cap; a bush of which there is one,
// oil-filled and thin-walled, leaves nothing to be done.
func TestOtherHolds(t *testing.T) {
	for _, c := range []struct {
		change func(*Fitting)
		check  func(Bore)
	}{
		{func(x *Fitting) { x.Hold = Bonded }, func(b Bore) {
			is(t, "least wall with compound", b.Wall.NoneBelowMM, 0.5)
		}},
		{func(x *Fitting) { x.Hold, x.Renews = Capped, true }, func(b Bore) {
			if b.Kind != OldSeat {
				t.Errorf("kind %v", b.Kind)
			}
		}},
		{func(x *Fitting) { x.Filled = true }, func(b Bore) {
			is(t, "wear to clear", b.Survey.D, 0)
			is(t, "outline", b.Survey.R, 1.25)
		}},
		{func(x *Fitting) {
			x.Bush.Porous, x.Bush.OnHand, x.Odds.ODMid = true, 1, 4.404
			x.Larger = []Larger{{6.5, 0.3}, {5.5, 0.7}, {7, math.Inf(1)}}
		}, func(b Bore) {
			if b.Bond || b.Eccentric || b.Replaceable || !b.NextBush {
				t.Errorf("what could be done: %+v", b)
			}
			is(t, "next seat", b.NextSeatMM, 2.75)
			is(t, "metal left by the best", b.Wall.NextLeftMM, 0.7)
		}},
		{func(x *Fitting) { x.LeftMM = math.Inf(1) }, func(b Bore) {
			if b.Wall.LeftMM != 0 || b.Wall.NoneBelowMM != 0 {
				t.Errorf("no edge near, and yet %+v", b.Wall)
			}
		}},
	} {
		x := pressed()
		c.change(x)
		m, _ := FromPlan(facts(x))
		c.check(m.Bores[0])
	}
	f := facts(pressed())
	f.Turns = true
	m, _ := FromPlan(f)
	if b := m.Bores[0]; !b.NextBush || b.NextSeatMM != 0 {
		t.Errorf("a bush can be turned: %+v", b)
	}
}

// A hole that stays runs with what it has, and there is nothing to try.
func TestLeft(t *testing.T) {
	m, ok := FromPlan(facts(nil))
	if ok || m.Bores[0].Kind != Leave {
		t.Errorf("%v %+v", ok, m.Bores[0])
	}
	is(t, "bore", m.Bores[0].BoreMM[0], 3.16+0.24)
	is(t, "clearance that it has", m.Bores[0].RunningUM[0], 240)
	is(t, "and no less", m.Bores[0].RunningUM[1], 240)
}

// The wall goes towards the nearest edge, by its own metal or by its distance.
func TestEdge(t *testing.T) {
	h := facts(nil).Holes[0]
	is(t, "no edge said", edgeDeg(h), 270)
	h.Bore.Edges = []job.Edge{{AtDeg: 30, Away: length("3")}, {AtDeg: 120, Metal: length("1.3")}}
	is(t, "1.3 and a radius of 1.6 against 3", edgeDeg(h), 120)
	h.Bore.Edges[1].Metal = length("1.5")
	is(t, "1.5 and a radius of 1.6 against 3", edgeDeg(h), 30)
}

// Teeth of 4 on plates 20 apart at 30 degrees lose 4/20 sin 30 = 0.1 of normal
// backlash along and 0.1732 across for each mm of lean; at 2 sin 30 = 1 of it
// per mm of distance they come as much nearer.
func TestPair(t *testing.T) {
	p := Pair{Name: "drive", Mate: FixedMate, Towards: [2]float64{0, -1}, CentreMM: 12, LowMM: 11.98, HighMM: 12.04, ContactMM: 12.01,
		SpreadMM: []float64{-0.1, 0.2},
		Lean:     &Lean{FaceMM: 4, SpanMM: 20, AngleRad: math.Pi / 6}}
	f := facts(nil)
	g := f.gear(p)
	is(t, "along", g.LeanAlong, 0.1)
	is(t, "across", g.LeanAcross, 0.2*math.Sqrt(3)/2)
	is(t, "loosest by contact", g.LooseMM, 12.01)
	is(t, "opens", g.Open[1], 1)
	if len(g.SpreadMM) != 2 || g.Placeless {
		t.Errorf("%+v", g)
	}
	p.Empty = true
	g = f.gear(p)
	is(t, "least of no window", g.WindowMM[0], 0)
	if g.WindowMM[1] < 1000 || g.LooseMM != 12.01 {
		t.Errorf("no distance suits it, and it is right where it runs: %+v", g)
	}
}

// An eccentric bush keeps 0.1 mm more than the least wall: (od - 3.22)/2 is
// 0.59 at 4.40 and 0.61 at 4.44.
func TestEccentricWall(t *testing.T) {
	for od, want := range map[float64]bool{4.40: false, 4.44: true} {
		x := pressed()
		x.Odds.ODMid = od + x.Odds.ODHalf
		if m, _ := FromPlan(facts(x)); m.Bores[0].Eccentric != want {
			t.Errorf("outside %v: %v", od, m.Bores[0].Eccentric)
		}
	}
}

// A bush turned for a hole that is there: nothing is cut and nothing has to be
// cleared, the place of the seat is known as its middle was read, and the bore
// stands off it by how the bush was turned and set: 0.008 and 0.006 make 0.010.
func TestMadeToFit(t *testing.T) {
	x := pressed()
	x.Renews, x.PlaceU, x.SetUMM = true, 0.008, 0.006
	f := facts(x)
	f.Pairs = []Pair{{Name: "drive", Mate: FixedMate, Towards: [2]float64{0, -1}, CentreMM: 12, LowMM: 11, HighMM: 13}}
	m, _ := FromPlan(f)
	b := m.Bores[0]
	if b.Kind != OldSeat || b.USetMM != 0.006 || b.Survey.Cov != [3]float64{0.008 * 0.008, 0, 0.008 * 0.008} {
		t.Fatalf("%+v", b)
	}
	m.Bores[0].RunoutMM, m.Bores[0].Finish = 0, BoreInPlace
	c, w := m.compile(), newWorker(1, 1, len(m.Setups))
	sum, sq := 0.0, 0.0
	w.seed(1, 0)
	for k := range uint64(Block) {
		w.trial(c, k)
		sum += w.py[0]
		sq += w.py[0] * w.py[0]
	}
	if u := math.Sqrt(sq / Block); math.Abs(u-0.010) > 0.0005 || math.Abs(sum/Block) > 0.0006 {
		t.Errorf("u of the place %v, mean %v; by hand 0.010 and 0", u, sum/Block)
	}
}

// A plug takes the wear in and bears the press: of the seat in it neither is
// asked, and the plug's own chance is drawn.
func TestPlugged(t *testing.T) {
	x := pressed()
	x.Part = &Part{Chance: 0.75}
	x.Odds.Strength = 0
	m, _ := FromPlan(facts(x))
	b := m.Bores[0]
	if b.Kind != Cut || b.Survey.D != 0 || b.Wall.StressLimit != 0 {
		t.Errorf("%+v", b)
	}
	is(t, "fails", b.PartFails, 0.25)
	r := run(t, m, 8*Block)
	failed := 0
	for _, c := range r.Causes {
		if c.Cause.String() == "a.left: plug or sleeve leaves wear or does not hold" {
			failed = c.Count
		}
	}
	if share := float64(failed) / float64(r.Trials); math.Abs(share-0.25) > 0.01 {
		t.Errorf("%v of the plugs fail, want 0.25", share)
	}
}
