package seat

import (
	"math"
	"testing"
)

// What else is called for beside a press.
func TestSecondHold(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*scene)
		want   string
	}{
		{"zinc that slackens, a flange", func(s *scene) {}, "flange"},
		{"the same, plain", func(s *scene) { s.b.FlangeOD, s.b.FlangeT, s.b.Length = 0, 0, 3 }, "stake"},
		{"the same, solid", func(s *scene) { s.b.FlangeOD, s.b.FlangeT, s.b.Length = 0, 0, 3; s.stiff() }, "compound"},
		{"no compound in the shop", func(s *scene) {
			s.b.FlangeOD, s.b.FlangeT, s.b.Length = 0, 0, 3
			s.stiff()
			s.shop.Compound = false
		}, "stake"},
		{"turning is short", func(s *scene) { s.h.Load, s.h.RPM = 60, 10 }, "flange and stake"},
		{"a thin wall of a plate that is rolled", func(s *scene) { s.h.Plate2, s.h.Edge = brass, 4.5 }, ""},
		{"a thin wall", func(s *scene) {
			s.h.Plate2.Creep = 0
			s.h.Edge = 4.5
			s.b.ODLow, s.b.ODHigh, s.w.High = 5.013, 5.0145, 5.007
		}, "flange"},
		{"brass, strong press", func(s *scene) { s.h.Plate2 = brass }, ""},
		{"comes loose at 40 C", func(s *scene) {
			s.h.Plate2 = brass
			s.h.Plate2.Alpha = 18 + 0.0072/5.0118/20*1e6
		}, "flange and stake"},
		{"plastic creeps", func(s *scene) { s.h.Plate2 = brass; s.b.Metal = nylon; s.b.BLow, s.b.BHigh = 3.21, 3.22 },
			"flange and stake"},
	} {
		s := scenery(t)
		c.change(&s)
		a := s.only(t)
		if !a.Feasible || a.Second.String() != c.want {
			t.Errorf("%s: second hold %q, want %q %s", c.name, a.Second, c.want, a.Fail.Text())
		}
	}
}

// A press that the second hold backs need not hold by itself.
func TestWindowFollowsTheSecondHold(t *testing.T) {
	s := scenery(t)
	flange := s.only(t)
	s.b.FlangeOD, s.b.FlangeT, s.b.Length = 0, 0, 3
	stake := s.only(t)
	s.h.Plate2 = brass
	alone := s.only(t)
	if stake.WindowLow != 0 || flange.WindowLow <= 0 || alone.WindowLow <= flange.WindowLow {
		t.Errorf("least press: with a stake %v, with a flange %v, alone %v", stake.WindowLow, flange.WindowLow,
			alone.WindowLow)
	}
	// At the least press of the window the bush just holds what is asked.
	j := newJudge(s.h, s.shop, s.r)
	seat := j.press(&s.b, alone.Contact, alone.SeatHigh, false, false)
	if f := seat.Force(s.shop.FrictionLow, seat.At(alone.WindowLow).P); math.Abs(f-s.r.HoldN) > 1e-6 {
		t.Errorf("holds %v N at the least press, want %v", f, s.r.HoldN)
	}
}

// Two near edges and a near hole are flagged, far ones are not.
func TestNearEdgesAndHolesAreFlagged(t *testing.T) {
	s := scenery(t)
	for _, c := range []struct {
		edge2, hole float64
		corner      bool
		near        string
	}{{0, 20, false, ""}, {6, 20, true, ""}, {20, 20, false, ""}, {0, 8, false, "x"}, {0, 12, false, ""}} {
		s.h.Edge2, s.h.Near = c.edge2, []Near{{"x", c.hole, 1.6}}
		if a := s.only(t); a.Corner != c.corner || a.NearHole != c.near {
			t.Errorf("second edge %v, hole at %v: corner %v, near %q", c.edge2, c.hole, a.Corner, a.NearHole)
		}
	}
}

// Short of clean-up a press falls; a solid bush in compound takes the seat
// where enough sound wall is left, holds as far round as it stands, and comes
// after everything that clears the wear.
func TestFilledWear(t *testing.T) {
	s := scenery(t)
	s.h.S, s.h.Fill = 2.47, 2.40
	if a := s.only(t); a.Feasible || a.Fail.What != shortOfCleanUp {
		t.Errorf("pressed: %s", a.Fail.Text())
	}
	s.slip()
	a := s.only(t)
	if !a.Feasible || !a.Filled || a.HeldBy != ByCompound {
		t.Fatalf("glued: %v %s", a.Filled, a.Fail.Text())
	}
	want := s.r.CompoundShear * math.Pi * a.SeatLow * a.Contact * 255 / 360
	if math.Abs(a.Force[0]-want) > 1e-9 {
		t.Errorf("holds %v N, want %v", a.Force[0], want)
	}
	s.h.S = 1.8
	if b := s.only(t); b.Filled || b.Force[0] <= a.Force[0] {
		t.Errorf("cleared: filled %v, holds %v N", b.Filled, b.Force[0])
	}
}

// A mandrel left in the bore keeps its size and raises the pressure: a strong
// wall takes it, a weak one does not.
func TestMandrelLeftInTheBore(t *testing.T) {
	s := scenery(t)
	s.h.Journal = 3.180 // bore 3.195 to 3.240: the free bore closes too far
	s.r.MandrelTotal = 0.01
	s.shop.Mandrels = []float64{3.205}
	s.h.Edge = 40
	s.h.Plate2 = brass
	s.h.Plate2.Yield = 2000
	free := scenery(t)
	free.h.Edge, free.h.Plate2 = 40, s.h.Plate2
	a, b := s.only(t), free.only(t)
	if a.Feasible {
		t.Fatal("the largest bush stays above the mandrel, which does not size it")
	}
	s.shop.Mandrels = []float64{3.208}
	s.b.ODLow, s.b.BHigh = 5.027, 3.216
	s.w.High = 5.008
	a = s.only(t)
	if !a.Feasible || !a.MandrelIn || a.Finish != Mandrel {
		t.Fatalf("%s %v %s", a.Finish, a.MandrelIn, a.Fail.Text())
	}
	if a.PHigh <= b.PHigh || a.Force[1] <= b.Force[1] {
		t.Errorf("pressure %v and %v N with the mandrel in, %v and %v N without", a.PHigh, a.Force[1], b.PHigh,
			b.Force[1])
	}
	if a.Closed[0] < 3.203-slack || a.Closed[1] > 3.208+slack {
		t.Errorf("bore %v", a.Closed)
	}
	s.h.Plate2, s.h.Edge = zinc, 5.928
	if a := s.only(t); a.Feasible || a.Fail.What != openedTooFar {
		t.Errorf("a zinc wall stands it: %s", a.Fail.Text())
	}
}

// How the bore gets to size, in the order in which the ways are tried.
func TestFinish(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*scene)
		want   Finish
		sizes  int
	}{
		{"the whole band inside", func(s *scene) {}, AsDelivered, 0},
		{"one mandrel", func(s *scene) { s.bore(-0.010); s.shop.Mandrels = []float64{3.185} }, Mandrel, 1},
		{"mandrels in steps", func(s *scene) { s.bore(-0.0215) }, Mandrel, 2},
		{"a gap between mandrels", func(s *scene) { s.bore(-0.032); s.shop.Mandrels = []float64{3.20} }, ToOwnAxle, 0},
		{"solid is reamed", func(s *scene) {
			s.stiff()
			s.bore(-0.05)
			s.shop.Mandrels = nil
			s.shop.BoreReamers = []Way{{Name: "3.19 mm reamer", Size: 3.19, Low: 3.19, High: 3.197}}
		}, Ream, 1},
		{"a reamer near the limit is no better than a hand", func(s *scene) {
			s.stiff()
			s.bore(-0.05)
			s.shop.Mandrels = nil
			s.shop.BoreReamers = []Way{{Name: "3.2 mm H7 reamer", Size: 3.2, Low: 3.210, High: 3.217}}
		}, ToOwnAxle, 0},
		{"porous is not reamed", func(s *scene) {
			s.bore(-0.012)
			s.shop.Mandrels = nil
			s.shop.BoreReamers = []Way{{Name: "3.2 mm H7 reamer", Size: 3.2, Low: 3.205, High: 3.212}}
		}, ToOwnAxle, 0},
		{"bored in place", func(s *scene) { s.bore(-0.2); s.shop.BoringFrom, s.shop.BoringTo = 3, 20 }, BoreInPlace, 0},
		{"bored as thin as is turned", func(s *scene) {
			s.bore(-0.4)
			s.shop.BoringFrom, s.shop.BoringTo = 3, 20
			s.r.LeastWall = (s.b.ODLow - 3.22) / 2
		}, BoreInPlace, 0},
		{"plastic takes no set", func(s *scene) {
			s.h.Plate2 = brass
			s.b.Metal = nylon
			s.bore(-0.012)
		}, ToOwnAxle, 0},
	} {
		s := scenery(t)
		c.change(&s)
		a := s.only(t)
		if !a.Feasible || a.Finish != c.want || len(a.FinishSizes) != c.sizes {
			t.Errorf("%s: %q by %v, want %q with %d sizes %s", c.name, a.Finish, a.FinishSizes, c.want, c.sizes,
				a.Fail.Text())
		}
		if a.Feasible && (a.Expected[0] < a.Bore[0]-slack || a.Expected[1] > a.Bore[1]+slack) {
			t.Errorf("%s: expected %v outside %v", c.name, a.Expected, a.Bore)
		}
	}
}

// A bush turned for its seat has its shoulder where the seat is short and there
// is room, and never a wall that cannot be turned.
func TestTurned(t *testing.T) {
	s := scenery(t)
	s.b = Bush{Code: "own turning", Turned: true, Metal: solid, OnHand: -1}
	s.shop.Compound = false
	a := s.only(t)
	if !a.Feasible || a.Bush.FlangeOD != 0 || a.Bush.Length != 3 || a.ULow <= 0 {
		t.Errorf("3 mm plate: flange %v, length %v, %s", a.Bush.FlangeOD, a.Bush.Length, a.Fail.Text())
	}
	s.h.Plate = 2
	a = s.only(t)
	if !a.Feasible || a.Bush.FlangeT != s.r.ShoulderThick || a.Bush.Length != 2+a.Bush.FlangeT || a.Short ||
		a.SideUse != a.Bush.FlangeT {
		t.Errorf("2 mm plate: shoulder %v, length %v, %s", a.Bush.FlangeT, a.Bush.Length, a.Fail.Text())
	}
	s.h.SideRoom = 0.5
	if a = s.only(t); !a.Feasible || a.Bush.FlangeOD != 0 || !a.Short {
		t.Errorf("2 mm plate without room: shoulder %v, short %v, %s", a.Bush.FlangeOD, a.Short, a.Fail.Text())
	}
	s.shop.Lathe = false
	if a = s.only(t); a.Feasible || a.Fail.What != noLathe {
		t.Errorf("without a lathe: %v", a.Fail.Text())
	}
}

// A seat bored for a bush that is turned to it is made to whole tenths; the
// bush has its least press at the unfavourable end of both sizes, and its whole
// bore is aimed inside the limits.
func TestTurnedForABoredSeat(t *testing.T) {
	s := scenery(t)
	s.b = Bush{Code: "own turning", Turned: true, Metal: solid, OnHand: -1}
	s.w = Way{Kind: BoringHead, Name: "boring head", Low: 4, High: 20}
	s.h.S, s.h.Edge, s.shop.Compound = 2.1, 40, false
	for _, change := range []func(){func() {}, func() { s.r.BoredStep, s.r.TurnPress = 0.25, 0.004 }} {
		change()
		a := s.only(t)
		if !a.Feasible {
			t.Fatal(a.Fail.Text())
		}
		mid := (a.SeatLow + a.SeatHigh) / 2
		if over := mid - (2*(s.h.S+Allow(s.h, s.r)) + s.r.BoringHead); over < 0 || over > s.r.BoredStep ||
			math.Abs(math.Remainder(mid, s.r.BoredStep)) > 1e-9 {
			t.Errorf("seat of %v, %v over the least", mid, over)
		}
		if a.ULow < s.r.TurnPress-1e-9 {
			t.Errorf("least press %v", a.ULow)
		}
		if a.Closed[0] < a.Bore[0]-1e-9 {
			t.Errorf("bore from %v, limits from %v", a.Closed[0], a.Bore[0])
		}
	}
	s.r = rules(t)
	for _, margin := range []float64{0, 0.001} {
		s.r.TurnMargin = margin
		if a := s.only(t); math.Abs(a.Closed[0]-a.Bore[0]-margin) > 0.0002 {
			t.Errorf("bore from %v, wanted %v over %v", a.Closed[0], margin, a.Bore[0])
		}
	}
}

// The running clearance at both ends of use: a plastic bush is checked hot, and
// its bore is made larger for it; a bronze one hardly changes.
func TestHotAndCold(t *testing.T) {
	s := scenery(t)
	bronze := s.only(t)
	if bronze.WarmRules || bronze.RunCold <= 0.013 || bronze.RunHot <= 0.013 {
		t.Errorf("bronze: %.4f cold, %.4f hot", bronze.RunCold, bronze.RunHot)
	}
	s.b.Metal = nylon
	s.b.Metal.Alpha = 150
	s.bore(0.0)
	s.h.THigh = 60
	a := s.only(t)
	if !a.WarmRules || a.WarmAt != 60+s.r.HotK || math.Abs(a.RunHot-s.r.RunLeast) > 1e-9 ||
		a.Bore[0] <= bronze.Bore[0] {
		t.Errorf("plastic: %.4f hot at %v C, bore from %.4f %s", a.RunHot, a.WarmAt, a.Bore[0], a.Fail.Text())
	}
}
