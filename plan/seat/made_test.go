package seat

import (
	"math"
	"testing"

	"rebush/plan/job"
)

// made is the left hole of the truck with a seat of 6.00 that this job has made
// 0.05 beside where the bore belongs, or where it is.
func made(t *testing.T, placed bool) (Input, []Site) {
	in, all := moved(t, bench1+"lathe: yes\n")
	b := all[0].Old.Bore
	b.Seat, b.Repaired = nil, false
	at := all[0].At
	if !placed {
		at = [2]float64{at[0] + 0.04, at[1] - 0.03}
	}
	b.Now = &job.Now{SeatMM: 6, USeatMM: 0.004, At: at, UAtMM: 0.01, Placed: placed}
	return in, all
}

// A seat that this job has made takes a bush where it stands; off place it takes
// one turned with its bore back where it belongs. What is cut has to take the
// seat in: in its place a tool follows it, off place it goes 0.05 farther.
func TestSeatThatWasMade(t *testing.T) {
	for _, placed := range []bool{true, false} {
		in, all := made(t, placed)
		offers, _ := Offer(in, all)
		o := offers[0]
		if o.Of(Renew).OK() != placed || o.Of(MadeToFit).OK() == placed {
			t.Errorf("placed %v: renewed %v (%s), made to fit %v (%s)", placed, o.Of(Renew).OK(), o.Of(Renew).WhyNot,
				o.Of(MadeToFit).OK(), o.Of(MadeToFit).WhyNot)
		}
		want := 3.0
		if !placed {
			want = 3.05
			a := o.Of(MadeToFit).Answers[0]
			near(t, "offset", []float64{a.Offset[0], a.Offset[1]}, []float64{-0.04, 0.03})
			if a.Way.Name != "the seat as made" {
				t.Errorf("in %s", a.Way.Name)
			}
		}
		if h := o.Hole; math.Abs(h.S-want) > 1e-9 || (Allow(h, in.Rules) == 0) != placed || h.Old.Low != 5.996 || h.Old.High != 6.004 {
			t.Errorf("placed %v: takes in %v and %v more, seat %+v", placed, h.S, Allow(h, in.Rules), h.Old)
		}
	}
}

// A bush that is in already is the only one that is asked about, with the bore
// that was gauged; once it is out any bush is.
func TestBushThatIsIn(t *testing.T) {
	in, all := made(t, true)
	n := all[0].Old.Bore.Now
	offers, _ := Offer(in, all)
	first := offers[0].Of(Renew).Answers[0]
	n.Bush, n.BoreMM, n.UBore = first.Bush.Code, 3.15, 0.002
	offers, _ = Offer(in, all)
	for _, a := range offers[0].Of(Renew).Answers {
		if a.Bush.Code != n.Bush || a.Feasible && math.Abs(a.Closed[0]-3.148)+math.Abs(a.Closed[1]-3.152) > 1e-9 {
			t.Errorf("%s, closed to %v", a.Bush.Code, a.Closed)
		}
	}
	n.Out = true
	offers, _ = Offer(in, all)
	if a := offers[0].Of(Renew).Answers[0]; math.Abs(a.Closed[0]-3.148) < 1e-9 {
		t.Errorf("the bush that is out still counts: %+v", a.Closed)
	}
}

// What works is wider than what the tool leaves. With a stake beside the press
// the seat may be as large as the least bush; the most that is pressed at all,
// 2 hundredths of the seat, ends it below: by hand ODHigh / 1.02. A press that
// has to hold by itself ends sooner, one whose plate stands less later.
func TestWorks(t *testing.T) {
	in, all := made(t, true)
	offers, _ := Offer(in, all)
	a := offers[0].Of(Renew).Answers[0]
	if a.Second != Stake || in.Rules.MaxShare != 0.02 {
		t.Fatalf("%v, most press %v", a.Second, in.Rules.MaxShare)
	}
	lim := Works(offers[0].Hole, &a, in.Shop, in.Rules)
	if math.Abs(lim[0]-a.Bush.ODHigh/1.02)+math.Abs(lim[1]-a.Bush.ODLow) > 3e-5 {
		t.Errorf("works %v, by hand %v to %v", lim, a.Bush.ODHigh/1.02, a.Bush.ODLow)
	}
	if !(lim[0] < a.SeatLow && lim[1] > a.SeatHigh) {
		t.Errorf("%v round %v to %v", lim, a.SeatLow, a.SeatHigh)
	}
	alone := a
	alone.Second = 0
	if got := Works(offers[0].Hole, &alone, in.Shop, in.Rules); got[1] >= lim[1]-1e-3 {
		t.Errorf("without a stake up to %v, with one %v", got[1], lim[1])
	}
	weak := offers[0].Hole
	weak.Plate2.Limit, weak.Plate2.Yield = weak.Plate2.Limit/4, weak.Plate2.Yield/4
	if got := Works(weak, &a, in.Shop, in.Rules); got[0] <= lim[0]+1e-3 {
		t.Errorf("in a weak plate from %v, in a strong one %v", got[0], lim[0])
	}
}
