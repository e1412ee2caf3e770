package plan

import (
	"math"
	"slices"
	"testing"

	"rebush/fits/table"
	"rebush/plan/chance"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/route"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
)

// twoHoles is an axle with a wheel a quarter of the way from the left, both
// holes 3.2 and bushed in seats of 5.000 to 5.012.
func twoHoles() ([]survey.Hole, target.Settled, Seated) {
	shaft := &job.Shaft{Name: "a"}
	answers := []seat.Answer{
		{Feasible: true, Bush: seat.Bush{Code: "drawer 1", Price: 0.85, Priced: true}, SeatLow: 5, SeatHigh: 5.012, Chance: 0.9,
			Way: seat.Way{Kind: seat.BoringHead}, HeldBy: seat.ByCompound, Finish: seat.Ream},
		{Feasible: true, Bush: seat.Bush{Code: "drawer 2"}, SeatLow: 5.005, SeatHigh: 5.02, Ligament: 2},
		{Feasible: true, Bush: seat.Bush{Code: "drawer 3"}, SeatLow: 5.5, SeatHigh: 5.512, Ligament: 1.2},
		{Bush: seat.Bush{Code: "drawer 4"}, SeatLow: 6, SeatHigh: 6.1},
	}
	var holes []survey.Hole
	var placed []target.Hole
	var sat []seat.Seated
	for _, side := range []job.Side{job.Left, job.Right} {
		h := survey.Hole{Shaft: shaft, Bore: &job.Bore{Name: "a." + string(side), Side: side}, Known: true,
			Worn: survey.NewWornBore([2]float64{10, 8}, 1.6, 0.1, math.Pi/2, 0.02)}
		holes = append(holes, h)
		placed = append(placed, target.Hole{Survey: h, Target: target.Point{10, 8.02}, UPlace: 0.01, Touch: true})
		sat = append(sat, seat.Seated{Site: seat.Site{Old: h}, Hole: seat.Hole{Edge: 6, BossR: 5, BossE: 0.5, Near: []seat.Near{{Name: "b.left", At: 12, R: 2}}},
			Answers: answers, Chosen: &answers[0]})
	}
	s := target.Settled{OK: true, Axles: target.Axles{{Shaft: shaft, Holes: placed}},
		Drives: []mesh.Drive{{Name: "drive", Wheel: "a", Mate: -1, Share: 0.25, Trusted: true, Geometry: mesh.Along{}, Window: mesh.Window{Lo: 11.9, Hi: 12.1}}},
		Output: target.Output{Gears: []target.GearOut{{Near: 11.98, Far: 12.04, Towards: [2]float64{0, 1}}}}}
	return holes, s, Seated{Bores: sat}
}

// What each step found of a hole is joined under its name; without a target a
// hole has no place.
func TestBored(t *testing.T) {
	holes, s, seats := twoHoles()
	b := boredOf(holes, s, seats)
	if len(b) != 2 || b[1].Name() != "a.right" || b[1].At != (target.Point{10, 8.02}) || !b[1].Placed || !b[1].Worn || b[1].UPlace != 0.01 ||
		b[1].Chosen.Bush.Code != "drawer 1" || b[1].Wanted.Edge != 6 {
		t.Errorf("%+v", b)
	}
	s.OK = false
	if b = boredOf(holes, s, Seated{}); b[0].Placed || b[0].At != (target.Point{}) || b[0].Chosen != nil {
		t.Errorf("nothing was placed: %+v", b[0])
	}
}

// By hand: the seat takes 5.012/2 - 1.6 = 0.906 off; in a plug that stands in a
// hole of 7.012 it is 7.012/2 - 1.6 = 1.906; in an old bush that stays nothing.
func TestTakenOffByHand(t *testing.T) {
	_, _, seats := twoHoles()
	x := seats.Bores[0]
	for _, c := range []struct {
		part *seat.Part
		want float64
	}{{nil, 0.906}, {&seat.Part{SeatHigh: 7.012}, 1.906}, {&seat.Part{SeatHigh: 7.012, Stays: true}, 0}} {
		a := *x.Chosen
		a.Part = c.part
		x.Chosen = &a
		if got := takenOff(x); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%+v: %v", c.part, got)
		}
	}
}

// Minutes of a route: 12 and 6; lining up belongs to the rebuild, whose hours
// the shop gives. What is done on the bench is no clamping.
func TestTimedByHand(t *testing.T) {
	m := func(v float64) *float64 { return &v }
	got := route.TimeOf([]Operation{{Bore: "a.left", Minutes: m(12)}, {Kind: route.KindWash, Minutes: m(6)},
		{Kind: route.KindLineUp, Minutes: m(100)}, {Bore: "a.left"}},
		[]Setup{{Name: "A", Clamping: true, Bores: []string{"a.left"}}, {Name: "bench", Bores: []string{"a.left"}}})
	if got.Minutes != 18 || got.Setups != 1 {
		t.Errorf("%+v", got)
	}
}

// A mesh that nobody worked out is not wrong; a mate that is left alone would
// not be moved.
func TestJudgedPair(t *testing.T) {
	_, s, _ := twoHoles()
	d := s.Drives[0]
	b := &job.Shaft{Name: "b"}
	g := &ground{own: &job.Job{Shafts: []job.Shaft{{Name: "a"}, {Name: "b"}}}}
	g.meshes.Axles = append(s.Axles, target.Axle{Shaft: b})
	if p := g.judgedPair(d, math.NaN()); !p.Known || !math.IsInf(p.LowMM, -1) || p.Mate != "" {
		t.Errorf("%+v", p)
	}
	d.Mate = 1
	if p := g.judgedPair(d, 11.8); p.Mate != "b" || p.FoundMM != 11.8 || p.LowMM != 11.9 || p.HighMM != 12.1 {
		t.Errorf("%+v", p)
	}
	g.own.Shafts[1].Leave = true
	if p := g.judgedPair(d, 11.8); p.Mate != "" {
		t.Errorf("%+v", p)
	}
}

// The trials are told of what could be seated that is wholly larger.
func TestFittedByHand(t *testing.T) {
	holes, s, seats := twoHoles()
	rules, err := table.ReadRules(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	f := fitted(&books{rules: rules}, &job.Job{Shop: &job.Shop{}}, boredOf(holes, s, seats)[0], nil)
	if want := []chance.Larger{{SeatMM: 5.5, LeftMM: 1.2}}; !slices.Equal(f.Larger, want) {
		t.Errorf("larger %v", f.Larger)
	}
	if f.Hold != chance.Bonded || f.Finish != chance.Ream || f.Bush.RunoutMM != 0.03 {
		t.Errorf("%+v", f)
	}
}

// The wheel a quarter of the way from the left makes three quarters of the left
// hole's move and a quarter of the right one's.
func TestMeshOfAHoleByHand(t *testing.T) {
	holes, s, seats := twoHoles()
	of := map[string]bored{}
	for _, b := range boredOf(holes, s, seats) {
		of[b.Name()] = b
	}
	x := newTogether(&books{}, &job.Job{}, of, s, seats)
	c := x.mesh(s.Drives[0], s.Output.Gears[0])
	at := [][2]float64{x.sites[0].At, x.sites[1].At}
	before := c.Figure(at)
	for i, share := range []float64{0.75, 0.25} {
		moved := append([][2]float64(nil), at...)
		moved[i][1] += 0.04
		if got := math.Abs(c.Figure(moved) - before); math.Abs(got-0.04*share) > 1e-9 {
			t.Errorf("hole %d: the centre distance changes by %v", i, got)
		}
	}
}
