package seat

import (
	"math"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/press"
	"rebush/plan/job"
	"rebush/plan/survey"
)

// moved is the left hole of the truck with a sound seat of 6.00 whose middle an
// earlier repair put at (10.3, 8.1); the bore belongs at (10.1, 7.9).
func moved(t *testing.T, shop string) (Input, []Site) {
	in, _ := read(t, shop, truck)
	all := sites(in.Job)
	b := all[0].Old.Bore
	b.Seat = &job.OldSeat{Diameter: dim.Must("6 mm"), Sound: true,
		Centre: job.Point{X: dim.Must("10.3 mm"), Y: dim.Must("8.1 mm")}}
	b.Repaired, b.Edges = true, nil
	all[0].Old.Worn = survey.NewWornBore([2]float64{10, 7.95}, 3, 3, 0, 0)
	all[0].Old.Middle = [2]float64{10.3, 8.1}
	all[0].Seat, all[0].USeat = 6, 0.004
	return in, all
}

// By hand: the offset is (-0.2, -0.2), 0.2828; 3.19 must pass with 5 um of room and
// a bush is turned to 4, so the bore aims at 3.199 and the thin side is (6 -
// 3.199)/2 - 0.2828 = 1.118, and the bush is set to the root
// of 0.01^2 and (0.2828 x 2 degrees = 0.00987)^2, 0.01405. Nothing is cut. A
// bush in the middle of that seat is not offered.
func TestSeatOffPlaceGetsAnEccentricBush(t *testing.T) {
	in, all := moved(t, bench1+"lathe: yes\n")
	got, _ := Offer(in, all)
	o := got[0]
	if r := o.Of(Renew); r.OK() || r.WhyNot == "" {
		t.Errorf("renewed in a seat off place: %+v", r.Answers)
	}
	m := o.Of(MadeToFit)
	if !m.OK() {
		t.Fatalf("%s; %v", m.WhyNot, m.Nearest())
	}
	a := m.Answers[0]
	near(t, "place", []float64{a.SeatAt[0], a.SeatAt[1], a.Offset[0], a.Offset[1], a.SeatLow, a.SeatHigh},
		[]float64{10.3, 8.1, -0.2, -0.2, 5.996, 6.004})
	near(t, "set", []float64{a.USet}, []float64{math.Hypot(0.01, math.Hypot(0.2, 0.2)*2*math.Pi/180)})
	if a.Mend != MadeToFit || !a.Bush.Turned || !math.IsInf(a.CleanUp, 1) || len(a.Tools()) > 1 {
		t.Errorf("%+v", a)
	}
	if w := a.BushWall(); math.Abs(w-1.118) > 0.015 {
		t.Errorf("thin side %v", w)
	}
	// The datum edge lies 8.1 from the middle of the seat, and 7.9 from where the bore belongs.
	near(t, "nothing is cut", []float64{a.Seen.UPlace}, []float64{0})
	near(t, "edge", []float64{a.Seen.Edge, got[0].Hole.Edge}, []float64{8.1, 7.9})
	// Both ends of the press hold, and the plate stands it.
	if a.ULow <= 0 || a.UHigh > 0.02*6 || a.Peak > a.PeakLimit {
		t.Errorf("press %v to %v, tension %v of %v", a.ULow, a.UHigh, a.Peak, a.PeakLimit)
	}

	in.Job.Choose = map[string]string{"": "solid 5"}
	got, _ = Offer(in, all)
	if m := got[0].Of(MadeToFit); m.WhyNot == "" || m.Answers != nil {
		t.Errorf("turned though the job chooses a bush: %+v", m)
	}
	in, all = moved(t, bench1)
	got, _ = Offer(in, all)
	if m := got[0].Of(MadeToFit); m.WhyNot == "" {
		t.Error("turned without a lathe")
	}
}

// Where the wall of the thin side is too thin that is the reason, and says what is
// wanted.
func TestEccentricBushNeedsAWall(t *testing.T) {
	in, all := moved(t, bench1+"lathe: yes\n")
	all[0].Old.Middle = [2]float64{11.1, 8.6}
	got, _ := Offer(in, all)
	m := got[0].Of(MadeToFit)
	if m.OK() || m.Nearest() == nil || m.Nearest().Fail.What != wallOfBush {
		t.Fatalf("%+v", m)
	}
	near(t, "thin side", []float64{m.Nearest().Fail.Have, m.Nearest().Fail.Want},
		[]float64{(6-3.199)/2 - math.Hypot(1, 0.7), 0.5})
}

// A hole that was found round takes a bush as it is where it leaves one a wall:
// by hand (4.50 - 3.199)/2 less an offset of 0.112 is 0.539, more than 0.5. One
// worn oval does not, nor one of 4.1.
func TestRoundHoleTakesABush(t *testing.T) {
	in, _ := read(t, bench1+"lathe: yes\n", truck)
	all := sites(in.Job)
	all[0].Old.Bore.Edges = nil
	w := &all[0].Old.Worn
	w.R, w.W, w.D, w.Round, w.RU, w.C = 2.25, 0, 0.67, true, 0.002, 0.67
	got, _ := Offer(in, all)
	m := got[0].Of(MadeToFit)
	if !m.OK() {
		t.Fatalf("%s %+v", m.WhyNot, m.Nearest())
	}
	a := m.Answers[0]
	near(t, "hole", []float64{a.SeatLow, a.SeatHigh, a.Offset[0], a.Offset[1]}, []float64{4.496, 4.504, 0.1, -0.05})
	for _, spoil := range []func(){func() { w.Round = false }, func() { w.Round, w.R = true, 2.05 }} {
		spoil()
		if got, _ = Offer(in, all); got[0].Of(MadeToFit).WhyNot == "" {
			t.Errorf("made to fit: %+v", w)
		}
	}
}

// Jeffery's closure of an eccentric ring lies between those of the round rings
// that are taken for it, over many rings.
func TestRoundRingsBoundAnEccentricOne(t *testing.T) {
	near(t, "by hand", []float64{ThickBore(3.2, 0.2), ThinBore(3.2, 0.2, 5), ThinBore(3.2, 0.9, 5)}, []float64{2.8, 3.6, 4.99})
	for _, d := range []float64{4.5, 5, 6, 8} {
		for _, e := range []float64{0, 0.05, 0.2, 0.4} {
			const di, p, E = 3.2, 30.0, 100000.0
			if (d-di)/2-e < 0.2 {
				continue
			}
			h := press.Seat{D: di, Wall: press.Boss{OD: d, Ecc: e}}.Factors().MeanHoop
			exact := p * di * (1 + h) / E
			closes := func(bore float64) float64 { q := bore / d; return 2 * p * bore / (E * (1 - q*q)) }
			low, high := closes(ThickBore(di, e)), closes(ThinBore(di, e, d))
			if low > exact+1e-12 || high < exact-1e-12 {
				t.Errorf("%v over %v, off by %v: %v is not between %v and %v", d, di, e, exact, low, high)
			}
			if e == 0 && math.Abs(high-exact) > 1e-9 {
				t.Errorf("a round ring: %v, by Lame %v", exact, high)
			}
		}
	}
}

// What is explained of an eccentric bush is what decided.
func TestEccentricExplained(t *testing.T) {
	in, all := moved(t, bench1+"lathe: yes\n")
	got, _ := Offer(in, all)
	m := got[0].Of(MadeToFit)
	x := Seated{Site: got[0].Site, Hole: got[0].Hole, Answers: m.Answers, Chosen: &m.Answers[0]}
	a := x.Chosen
	book, row := explained(t, in, all[0], x)
	at := book.Page("seats/" + x.Name())
	for k, v := range map[string]float64{"offset_mm": math.Hypot(0.2, 0.2), "offset_mm/1": -0.2, "set_u_mm": a.USet,
		"bush_bore_mm/stiff": a.Stress.Di, "bush_bore_mm/soft": a.Hold.Di, "hoop_mpa": a.Peak, "edge_mm": a.Seen.EdgeAway(),
		"metal_left_mm": a.Ligament, "pressure_mpa/min": a.PLow, "force_n/max": a.Force[1],
		"closure_um/min": 1000 * a.Closure[0], "closure_um/max": 1000 * a.Closure[1]} {
		if e := at.Num(k).V; math.Abs(e-v) > 2e-6*math.Max(1, math.Abs(v)) {
			t.Errorf("%s is explained as %v, decided by %v", k, e, v)
		}
	}
	if bad := book.Recompute(); len(bad) > 0 {
		t.Error(bad)
	}
	if row.Mend != MadeToFit || row.OffsetMM == nil || row.SeatAtMM == nil || row.CleanupMM.Given() {
		t.Errorf("%+v", row)
	}
}
