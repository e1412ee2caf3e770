package chance

import (
	"math"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/press"
	"rebush/plan/job"
	"rebush/plan/survey"
)

// pressed is a solid bush of 3 in a seat of 5, plate and bush of one metal of
// 80 GPa, 0.8 mm from an edge.
func pressed() *Fitting {
	metal := press.Elastic{E: 80000, Nu: 0.3}
	return &Fitting{Tool: "5 mm reamer", SeatMM: [2]float64{5, 5.012}, OwnMM: [2]float64{5, 5.010}, OverMM: 0.002,
		Bush:     Bush{ODMM: [2]float64{5.019, 5.027}, BoreMM: [2]float64{3.2, 3.212}, RunoutMM: 0.02, ELow: 80000, EHigh: 80000, OnHand: 2},
		WindowMM: [2]float64{0.004, 0.3}, MostUMM: 0.027, LeftMM: 0.8,
		Stress: press.Seat{D: 5, Di: 3, L: 2, Housing: metal, Bush: metal, Wall: press.Infinite{}},
		Finish: OwnAxle, BoreMM: [2]float64{3.175, 3.22}, ExpectedMM: [2]float64{3.18, 3.2}, MustPassMM: 3.17}
}

func facts(x *Fitting) Facts {
	hole := survey.Hole{Shaft: &job.Shaft{Name: "a"}, Bore: &job.Bore{Name: "a.left", Side: job.Left}, Known: true,
		Worn: survey.NewWornBore([2]float64{10, 8}, 1.6, 0.1, math.Pi/2, 0.02), By: "pins"}
	hole.Shaft.Journal.Left = length("3.16")
	return Facts{USetupMM: 0.01, UHoleMM: 0.02, Lathe: true, Compound: true, Shafts: []Shaft{{Name: "a", LoadDeg: 90}},
		Clampings: []Clamping{{"A", []string{"b.left"}}, {"B", []string{"a.left"}}},
		Holes:     []Hole{{Hole: hole, At: [2]float64{10, 8.01}, FoundMM: 0.12, Fitting: x}},
		Plate:     Plate{ELow: 80000, EHigh: 80000, Casting: true, LimitMPa: 120},
		Rules: Rules{UJournalMM: 0.005, RunLeastUM: 15, RunMostUM: 60, MaxPressShare: 0.02, GapLowMM: 0.02, GapHighMM: 0.08, CapLowMM: 0.005, CapHighMM: 0.03,
			MandrelMM: 0.05, LeastWallMM: 0.5, NoWallRadii: 0.5, CastingShare: 0.5, LeanShare: 0.25}}
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

// By hand, a bush of bore d in a seat D of a wide plate of the same metal: it
// closes by d/D of its interference, 0.6; at 1 um it presses with
// E u / 2D (1 - (d/D)^2) = 80000 x 0.001 / 10 x 0.64 = 5.12 MPa, which is the
// tension at the hole (Lame). The casting goes at 120 / 0.5.
func TestPressedByHand(t *testing.T) {
	m, ok := FromPlan(facts(pressed()))
	if !ok || len(m.Bores) != 1 || len(m.Setups) != 2 {
		t.Fatalf("%v %+v", ok, m)
	}
	b := m.Bores[0]
	if b.Kind != Cut || b.Setup != 1 || b.Right || b.SeatBy != "5 mm reamer" || b.SurveyBy != "pins" {
		t.Errorf("%+v", b)
	}
	is(t, "middle of the seat", b.Seat.Mid, 5.005)
	is(t, "half of it", b.Seat.Half, 0.005)
	is(t, "oversize", b.Seat.Over, 0.002)
	is(t, "least press", b.PressUM[0], 4)
	is(t, "most press", b.PressUM[1], 100) // 0.02 x 5 mm, not the 300 of the window
	is(t, "closure", b.Closure.Elastic, 0.6)
	is(t, "tension of 1 um", b.Wall.StressPerUM, 5.12)
	is(t, "where the casting goes", b.Wall.StressLimit, 240)
	is(t, "least wall", b.Wall.NoneBelowMM, 0.5*5.012/4)
	is(t, "clearance aimed at", b.ToolMM[0], 0.02)
	is(t, "most of it", b.ToolMM[1], 0.04)
	is(t, "of the journal", b.JournalMM, 3.16)
	is(t, "most clearance", b.RunningUM[1], 60)
	// (5.019 - 3.22)/2 of wall leaves room for an eccentric bush; two are on hand.
	if !b.Bond || !b.Eccentric || !b.Replaceable || b.NextBush {
		t.Errorf("what could be done: %+v", b)
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
			is(t, "widest gap", b.PressUM[0], -80)
			is(t, "narrowest gap", b.PressUM[1], -20)
			is(t, "least wall with compound", b.Wall.NoneBelowMM, 0.5)
			is(t, "closure", b.Closure.Elastic, 0)
		}},
		{func(x *Fitting) { x.Hold, x.Renews = Capped, true }, func(b Bore) {
			is(t, "widest slide", b.PressUM[0], -30)
			if b.Kind != OldSeat {
				t.Errorf("kind %v", b.Kind)
			}
		}},
		{func(x *Fitting) { x.Filled = true }, func(b Bore) {
			is(t, "wear to clear", b.Survey.D, 0)
			is(t, "outline", b.Survey.R, 1.25)
		}},
		{func(x *Fitting) { x.Finish = Mandrel }, func(b Bore) {
			is(t, "most by mandrels", b.MaxOpenMM, 0.05)
			is(t, "size", b.ToolMM[0], 3.18)
		}},
		{func(x *Fitting) {
			x.Bush.Porous, x.Bush.OnHand, x.Bush.ODMM[0] = true, 1, 4.4
			x.Larger = []Larger{{6.5, 0.3}, {5.5, 0.7}, {7, math.Inf(1)}}
		}, func(b Bore) {
			if b.Bond || b.Eccentric || b.Replaceable || !b.NextBush {
				t.Errorf("what could be done: %+v", b)
			}
			is(t, "next seat", b.NextSeatMM, 2.75)
			is(t, "metal left by the best", b.Wall.NextLeftMM, 0.7)
		}},
		{func(x *Fitting) { x.LeftMM = math.Inf(1) }, func(b Bore) {
			if b.Wall != (Wall{}) {
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

// Teeth of 4 on plates 20 apart at 30 degrees lose 4/20 sin 30 = 0.1 along and
// 0.1732 across for each mm of lean; a quarter of 0.04 is allowed.
func TestPair(t *testing.T) {
	p := Pair{Name: "drive", Mate: FixedMate, Towards: [2]float64{0, -1}, CentreMM: 12, LowMM: 11.98, HighMM: 12.04, ContactMM: 12.01,
		SpreadMM: []float64{-0.1, 0.2},
		Lean:     &Lean{FaceMM: 4, SpanMM: 20, AngleRad: math.Pi / 6, BacklashMM: 0.04}}
	f := facts(nil)
	g := f.gear(p)
	is(t, "along", g.LeanAlong, 0.1)
	is(t, "across", g.LeanAcross, 0.2*math.Sqrt(3)/2)
	is(t, "allowed", g.LeanLimitMM, 0.01)
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

// A bush flows at its yield at the least and at 1.155 times its highest yield at
// the most (Tresca and von Mises): with yields of 100 and 200 the second
// interference is 2.31 times the first. One oil-filled flows by the rule.
func TestFlowByHand(t *testing.T) {
	x := pressed()
	x.Bush.YieldMPa = [2]float64{100, 200}
	m, _ := FromPlan(facts(x))
	c := m.Bores[0].Closure
	is(t, "most over least", c.FlowUM[1]/c.FlowUM[0], 2.31)
	x.Bush.Porous = true
	f := facts(x)
	f.Rules.FlowLowMPa, f.Rules.FlowHighMPa = 75, 138
	m, _ = FromPlan(f)
	porous := m.Bores[0].Closure
	is(t, "porous, of its yield", porous.FlowUM[0]/c.FlowUM[0], 0.75)
	is(t, "porous, most", porous.FlowUM[1]/c.FlowUM[0], 1.38)
}

// An eccentric bush keeps 0.1 mm more than the least wall: (od - 3.22)/2 is
// 0.59 at 4.40 and 0.61 at 4.44.
func TestEccentricWall(t *testing.T) {
	for od, want := range map[float64]bool{4.40: false, 4.44: true} {
		x := pressed()
		x.Bush.ODMM[0] = od
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
