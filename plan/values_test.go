package plan

import (
	"math"
	"slices"
	"testing"

	"rebush/fits/dim"
	"rebush/plan/chance"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/route"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
	"rebush/plan/verdict"
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

// By hand: the seat takes 5.012/2 - 1.6 = 0.906 off; with a wall of 1 a sleeve
// stands at 3.506; the rim of the boss is 5 - 0.5 from the centre, the hole
// beside it 12 - 2.
func TestJudgedHoleByHand(t *testing.T) {
	holes, s, seats := twoHoles()
	h := judgedHole(boredOf(holes, s, seats)[0], seat.Rules{}, 1)
	if math.Abs(h.Seat.MetalMM-0.906) > 1e-9 || h.Seat.Chance != 0.9 || *h.Seat.Price != 0.85 || h.Seat.Renews {
		t.Errorf("%+v", h.Seat)
	}
	if math.Abs(h.SleeveMM-3.506) > 1e-9 || h.PlugMM < h.SleeveMM {
		t.Errorf("sleeve %v, plug %v", h.SleeveMM, h.PlugMM)
	}
	if want := []verdict.Room{{Name: "the edge", MM: 6}, {Name: "the rim of the boss", MM: 4.5}, {Name: "b.left", MM: 10}}; !slices.Equal(h.Room, want) {
		t.Errorf("%v", h.Room)
	}
}

// Minutes of a hole: 12 of its own and half of the 6 that serve both; lining up
// belongs to the rebuild, whose hours the shop gives.
func TestTimedByHand(t *testing.T) {
	m := func(v float64) *float64 { return &v }
	holes := []verdict.Hole{{Name: "a.left", Seat: &verdict.Seat{}}, {Name: "a.right", Seat: &verdict.Seat{}}, {Name: "b.left"}}
	timed(holes, []Operation{{Bore: "a.left", Minutes: m(12)}, {Kind: route.KindWash, Minutes: m(6)}, {Kind: route.KindLineUp, Minutes: m(100)}, {Bore: "a.left"}},
		[]Setup{{Name: "A", Clamping: true, Bores: []string{"a.left"}}, {Name: "bench", Bores: []string{"a.left"}}})
	if holes[0].Minutes != 15 || holes[1].Minutes != 3 || holes[2].Minutes != 0 || !slices.Equal(holes[0].Setups, []string{"A"}) || holes[1].Setups != nil {
		t.Errorf("%+v", holes)
	}
}

// A mesh that nobody worked out is not wrong; a mate that is left alone would
// not be moved.
func TestJudgedPair(t *testing.T) {
	_, s, _ := twoHoles()
	d := s.Drives[0]
	if p := judgedPair(d, s, 0); !p.Known || !math.IsInf(p.LowMM, -1) || p.Mate != "" {
		t.Errorf("%+v", p)
	}
	s.Axles = append(s.Axles, target.Axle{Shaft: &job.Shaft{Name: "b"}})
	s.Meshes = []mesh.Row{{FoundCentreMM: dim.Size(11.8)}}
	d.Mate = 1
	if p := judgedPair(d, s, 0); p.Mate != "b" || p.FoundMM != 11.8 || p.LowMM != 11.9 || p.HighMM != 12.1 {
		t.Errorf("%+v", p)
	}
	s.Axles[1].Shaft.Leave = true
	if p := judgedPair(d, s, 0); p.Mate != "" {
		t.Errorf("%+v", p)
	}
}

// The trials are told of what could be seated that is wholly larger.
func TestFittedByHand(t *testing.T) {
	holes, s, seats := twoHoles()
	f := fitted(&books{}, &job.Job{Shop: &job.Shop{}}, boredOf(holes, s, seats)[0])
	if want := []chance.Larger{{SeatMM: 5.5, LeftMM: 1.2}}; !slices.Equal(f.Larger, want) {
		t.Errorf("larger %v", f.Larger)
	}
	if f.Hold != chance.Bonded || f.Finish != chance.Ream {
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
