package seat

import (
	"math"
	"slices"
	"strings"
	"testing"
)

// By hand: a gap of 4 um in a seat of 5.005 is 4 of the 31.03 um that a usual
// press is (0.0062 x 5.005); 0.47 of 1.25 mm at the edge misses 0.624 of it; a
// radius that is 0.3 short of the wear, beyond the doubt, wants another bush
// and another tool, 2, and 0.3 of the 0.5 mm of a least wall.
func TestGapsByHand(t *testing.T) {
	s := scenery(t)
	j := newJudge(s.h, s.shop, s.r)
	doubt := 2 * math.Hypot(0.0141, 0.0285)
	for _, c := range []struct {
		f    Fail
		want float64
	}{
		{fail(FitsTight, dropsLoose, -4, 0), 4 / 31.031},
		{fail(WallStands, wallTooThinForPress, 0.47, 1.25), 0.624},
		{fail(CleansUp, shortOfCleanUp, 2.0, 2.3), 2.6},
		{fail(CleansUp, shortOfCleanUp, 2.0, 2.0+doubt/2), 0.5},
		{fail(CleansUp, wallOfBush, 0.4, 0.5), 1.2},
		{fail(FitsTight, compoundGap, 0.01, 0.02), 0.01 / 0.06},
		{fail(BoreFinishes, boreTooLarge, 3.229, 3.22), 0.2},
		{fail(ShaftPasses, seizes, -4, 5), 0.2},
		{fail(WallStands, castingCracks, 150, 120), 0.2},
		{fail(LongEnough, sideRoom, 0.8, 0.2), 0.75},
		{fail(FitsTight, noTool, 5, 5.01), 1},
		{fail(CarriesCurrent, noCurrentPlastic, 0, 0), 1},
	} {
		if got := j.gap(c.f, 5.005); math.Abs(got-c.want) > 1e-6 {
			t.Errorf("%s: gap %v, want %v", c.f.Text(), got, c.want)
		}
	}
}

// Fewer questions answered no before more, whatever they miss by; then the
// smaller sum; then the smaller bush and the name.
func TestNearestMissFirst(t *testing.T) {
	a := func(code string, od float64, gaps ...float64) missed {
		m := missed{bush: &Bush{Code: code, ODLow: od, ODHigh: od}, fails: len(gaps)}
		for _, g := range gaps {
			m.gaps += g
		}
		return m
	}
	list := []missed{a("two", 5, 0.01, 0.01), a("far", 5, 3), a("near", 5, 0.2), a("near, larger", 6, 0.2),
		a("near, by name", 5, 0.2), a("two, farther", 5, 0.01, 0.3)}
	slices.SortStableFunc(list, missed.compare)
	got := ""
	for _, m := range list {
		got += m.bush.Code + "; "
	}
	if want := "near; near, by name; near, larger; far; two; two, farther; "; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	x := Answer{Fails: []Fail{{Gap: 0.1}, {Gap: 0.7}, {Gap: 0.2}}}
	if f := x.hardest(); f.Gap != 0.7 {
		t.Errorf("said to fall for the gap of %v", f.Gap)
	}
}

// Of several mends together the nearest miss comes first, and what goes last.
func TestNearestOfSeveralMends(t *testing.T) {
	a := func(code string, gaps ...float64) Answer {
		x := Answer{Bush: Bush{Code: code}, Feasible: len(gaps) == 0}
		for _, g := range gaps {
			x.Fails = append(x.Fails, Fail{Gap: g})
		}
		return x
	}
	got := ""
	for _, x := range Nearest([]Answer{a("goes"), a("far", 2), a("two", 0.1, 0.1), a("near", 0.5), a("also goes")}) {
		got += x.Bush.Code + "; "
	}
	if want := "near; far; two; goes; also goes; "; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// A candidate that falls at an early question is asked on: a bush that is loose,
// too thick for the edge and too short of speed has three reasons.
func TestAskedOnAfterANo(t *testing.T) {
	s := scenery(t)
	s.outside(-0.011) // 5.008 to 5.020 in 5.005 to 5.0118
	s.r.Band = 1      // no micrometre is a matter of chance
	s.h.Edge = 2.506 + 1.2
	s.h.RPM = 50000
	a := s.only(t)
	var got []string
	for _, f := range a.Fails {
		got = append(got, f.Text().String())
	}
	want := []string{"too loose to press: up to 4 um of gap, and it must be tight",
		"leaves 1.20 mm at the edge, needs 1.25 for a press", "rubbing speed 8.27 m/s, at most 6.10"}
	// The wall is judged with the seat that the bush wants, which is a little larger.
	// A light press beside a thin wall closes the bore less than this bush wants.
	if len(got) != 4 || got[0] != want[0] || !strings.HasPrefix(got[1], "leaves 1.2") || got[3] != want[2] {
		t.Errorf("%q", got)
	}
	if a.Fail.What != speedHigh {
		t.Errorf("the hardest is %q", a.Fail.Text())
	}
}

// A bush that is too short for its seat is still asked what it bears.
func TestShortBushStillBearsItsLoad(t *testing.T) {
	s := scenery(t)
	s.b.FlangeOD, s.b.FlangeT = 0, 0
	s.plate(2)
	a := s.only(t)
	if len(a.Fails) != 1 || a.Fail.What != tooShort || a.Bearing != a.Bush.Length {
		t.Errorf("%+v, bears on %v", a.Fails, a.Bearing)
	}
}

// The seats that would let a bush pass: with no tool at all, those round the 5
// H7 that it is known to go with; every seat between them passes, and by the
// usual press none can be tighter than 5.031 - 0.0062 x 5.025 = 4.9998.
func TestSeatThatWould(t *testing.T) {
	s := scenery(t)
	s.w = Way{}
	a := s.only(t)
	low, high, ok := a.SeatThatWould()
	if a.Fail.What != noTool || !ok || a.Way.Kind != NoTool {
		t.Fatalf("%s, %v", a.Fail.Text(), ok)
	}
	if low > 5.005 || high < 5.0118 || low < 4.9998-1e-6 || high > 5.019 {
		t.Errorf("a seat of %.4f to %.4f", low, high)
	}
	for i := range 5 {
		at := low + (high-low)*float64(i)/5
		s.w = Way{Kind: Reamer, Name: "bought", Low: at, High: at + (high-low)/5}
		if b := s.only(t); !b.Feasible {
			t.Errorf("a seat of %.4f to %.4f: %s", s.w.Low, s.w.High, b.Fail.Text())
		}
	}
	// A reamer whose seat is out of the way does not hide that.
	s.w = Way{Kind: Reamer, Name: "6 mm H7 reamer", Low: 6.005, High: 6.0118}
	b := s.only(t)
	if l, h, ok := b.SeatThatWould(); !ok || l != low || h != high ||
		!strings.HasSuffix(b.Fail.Text().String(), "the nearest is the 6 mm H7 reamer") {
		t.Errorf("%v to %v, %v: %s", l, h, ok, b.Fail.Text())
	}
	// Nor is there a seat for a bush that no seat lets pass.
	s.h.RPM = 50000
	b = s.only(t)
	if _, _, ok := b.SeatThatWould(); ok || len(b.Fails) != 2 {
		t.Errorf("a seat for a bush that runs too fast: %+v", b.Fails)
	}
}

// A turned bush without a tool wants a seat that clears and leaves it a wall.
func TestSeatForATurnedBush(t *testing.T) {
	s := scenery(t)
	s.w = Way{}
	s.b = Bush{Code: "own turning", Turned: true, Metal: solid, OnHand: -1}
	a := s.only(t)
	low, high, ok := a.SeatThatWould()
	least := math.Max(2*Allow(s.h, s.r)+2*s.h.S, s.h.Journal+0.03+2*s.r.LeastWall)
	if a.Fail.What != noTool || !ok || low < least-1e-9 || low > least+0.3 || high > 2*s.h.Edge/1.5+1e-9 {
		t.Errorf("%s: %.4f to %.4f, %v; least %.4f", a.Fail.Text(), low, high, ok, least)
	}
	s.w = Way{Kind: Reamer, Name: "bought", Low: low, High: low + 0.007}
	if b := s.search()[0]; !b.Feasible {
		t.Error(b.Fail.Text())
	}
}

// What an answer takes: each tool once, and what is turned and pressed beside
// the bush in minutes (25 to turn, 5 to press, by the rules).
func TestWhatAnAnswerTakes(t *testing.T) {
	a := Answer{Way: Way{Kind: Reamer, Name: "5 mm H7 reamer"}, FinishTool: "sizing mandrel",
		Bush: Bush{Turned: true, ODLow: 4.99, ODHigh: 5.01, BLow: 2.99, BHigh: 3.01}, Offset: [2]float64{0.3, 0.4}}
	if got := strings.Join(a.Tools(), ", "); got != "5 mm H7 reamer, sizing mandrel" {
		t.Error(got)
	}
	r := rules(t)
	if a.Turned() != 1 || math.Abs(a.BushWall()-0.5) > 1e-9 || a.MinutesMore(r) != 25 {
		t.Errorf("%d turned, wall %v, %v minutes", a.Turned(), a.BushWall(), a.MinutesMore(r))
	}
	a.Part = &Part{Way: Way{Kind: BoringHead, Name: "boring head"}}
	if a.Turned() != 2 || a.MinutesMore(r) != 55 || len(a.Tools()) != 3 {
		t.Errorf("%d turned, %v minutes, %v", a.Turned(), a.MinutesMore(r), a.Tools())
	}
	a.Part.Stays = true
	if a.Turned() != 1 || a.MinutesMore(r) != 25 || len(a.Tools()) != 2 {
		t.Errorf("an old bush that stays: %d turned, %v minutes", a.Turned(), a.MinutesMore(r))
	}
	old := Answer{Way: Way{Kind: OldSeatWay, Name: "the old bush's seat"}}
	if len(old.Tools()) != 0 {
		t.Errorf("a seat that is there takes %v", old.Tools())
	}
}
