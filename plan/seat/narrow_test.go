package seat

import (
	"math"
	"strings"
	"testing"

	"rebush/plan/habit"
)

// habits are those of a shop whose reamer cuts in its own middle with 5 um.
func habits() habit.Habits {
	return habit.Habits{Ways: map[habit.Way]habit.Size{habit.Reamed: {UOverUm: 4, ScatterUm: 3}, habit.Bored: {UOverUm: 2, ScatterUm: 3.5}}}
}

// A bush of 5.010 to 5.022 in a hole that a reamer leaves from 5.005 to 5.0118 is
// loose by 1.8 um at the worst. It is no stop: a seat up to 5.009 is accepted, 1 um
// under the smallest bush, and the chance says how often the reamer makes a press.
// By hand: bush less seat is 5.016 - 5.0084 - 0.0015 = 6.1 um on the whole, spread
// 6.2 um (5 of the reamer, 3.5 of the bush, 0.9 of lobes): about 0.83 lie over 0.2.
func TestLooseByLittle(t *testing.T) {
	s := scenery(t)
	s.outside(-0.009)
	s.shop.Habits = habits()
	a := s.only(t)
	if !a.Feasible || a.Slight.What != dropsLoose {
		t.Fatalf("%v, missed %q", a.Fails, a.Slight.Text())
	}
	for _, c := range []struct {
		what      string
		got, want float64
	}{{"largest seat accepted", a.SeatHigh, 5.009}, {"least", a.SeatLow, 5.005}, {"largest that the reamer leaves", a.Leaves[1], 5.0118},
		{"least press", a.ULow, 0.001}} {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
	if _, press, _ := a.Odds.Parts(); math.Abs(press-0.83) > 0.02 {
		t.Errorf("press %.3f, by hand 0.83", press)
	}
	s.outside(-0.003) // 5.007 to 5.019: now little is left between the limits
	if a = s.only(t); a.Feasible || a.Fail.What != dropsLoose {
		t.Errorf("%v %q", a.Feasible, a.Fail.Text())
	}
}

// Under the least chance it falls, with the figure said; the rule decides.
func TestLeastChanceOfASeat(t *testing.T) {
	s := scenery(t)
	s.outside(-0.009)
	s.shop.Habits = habits()
	s.r.LeastChance = 0.9
	a := s.only(t)
	if said := a.Fail.Text().String(); a.Feasible || !strings.Contains(said, "of 100, at least 90 of 100") {
		t.Errorf("%v: %s", a.Feasible, said)
	}
}

// The wall is no matter of chance: metal, tension and what must pass refuse as they
// did, whatever the least chance is.
func TestWallIsNoMatterOfChance(t *testing.T) {
	for name, change := range map[string]func(*scene){
		"metal":     func(s *scene) { s.h.Edge = 2.506 + 1.2 },
		"tension":   func(s *scene) { s.h.Plate2.Limit = 60 },
		"must pass": func(s *scene) { s.h.MustPass = 3.3 },
	} {
		s := scenery(t)
		change(&s)
		s.r.LeastChance = 0
		if a := s.only(t); a.Feasible {
			t.Errorf("%s: passes", name)
		}
	}
}

// A head that reaches from 5.0005 serves a bush that wants 5.000.
func TestReachByLittle(t *testing.T) {
	s := scenery(t)
	s.shop.Habits = habits()
	s.w = Way{Kind: BoringHead, Name: "boring head", Low: 5, High: 20}
	a := s.only(t)
	if !a.Feasible || a.Slight.What == noSuchWay {
		t.Fatalf("%v %v", a.Fails, a.Slight)
	}
	wants := (a.SeatLow + a.SeatHigh) / 2
	s.w.Low = wants + 0.0005
	near := s.only(t)
	if !near.Feasible || near.Slight.What == noFail || math.Abs(near.Chance-a.Chance) > 0.03 {
		t.Errorf("%v, chance %v and %v", near.Fails, near.Chance, a.Chance)
	}
	s.w.Low = wants + 0.05
	if far := s.only(t); far.Feasible {
		t.Error("50 um out of reach and taken")
	}
}
