package route

import (
	"testing"

	"rebush/fits/dim"
	"rebush/fits/table"
	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/survey"
)

// answered is a chosen answer in a shop with one reamer that says how far it
// reaches.
func answered(t *testing.T, a *seat.Answer, b *job.Bore) (Input, seat.Seated) {
	t.Helper()
	rules, err := table.ReadRules(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	shop := &job.Shop{Reamers: []job.Tool{{Name: "7 mm H7 reamer", Reach: dim.Must("31 mm"), Shank: dim.Must("6.5 mm")}}}
	in := Input{Seat: seat.Input{Tables: seat.Tables{Table: rules}, Job: &job.Job{Shop: shop}}}
	b.Name, b.Side = "axle.left", job.Left
	x := seat.Seated{Site: seat.Site{Old: survey.Hole{Shaft: &job.Shaft{Name: "axle"}, Bore: b}, At: [2]float64{10, 6}},
		Hole: seat.Hole{S: 2.2, Plate: 3, Plate2: seat.Plate{Casting: true}}, Chosen: a}
	return in, x
}

// What the seat room says of a mend comes through: where the seat stands, what
// stands round it and the tool that makes its hole, what the wall bears, the
// price, and the hole as the answer saw it.
func TestBoreOfAnswer(t *testing.T) {
	a := &seat.Answer{Mend: seat.Plug, Peak: 103, PeakLimit: 134, HeldBy: seat.ByPress, SeatAt: [2]float64{10.1, 6},
		Way: seat.Way{Kind: seat.BoringHead}, Bush: seat.Bush{Code: "drawer 7", Priced: true, Price: 0.85},
		Part: &seat.Part{Mend: seat.Plug, Way: seat.Way{Kind: seat.Reamer, Index: 0}}, Seen: &seat.Hole{S: 1.9}}
	in, x := answered(t, a, &job.Bore{})
	got := in.bore(x)
	if got.Mend != seat.Plug || got.Part != a.Part || got.SeatAt != a.SeatAt || got.PartReach != 31 || got.PartShank != 6.5 ||
		got.Reach != 0 || got.Tension != [2]float64{103, 134} || got.BushPrice == nil || *got.BushPrice != 0.85 || got.S != 1.9 {
		t.Errorf("%+v", got)
	}
	a.HeldBy, a.SeatAt, a.Seen, a.Bush.Priced = seat.ByCompound, [2]float64{}, nil, false
	if got = in.bore(x); got.Tension != [2]float64{0, 134} || got.SeatAt != x.At || got.S != 2.2 || got.BushPrice != nil {
		t.Errorf("in compound, nothing said of its seat: %+v", got)
	}
	x.Hole.Plate2.Casting = false
	if got = in.bore(x); got.Tension[1] != 0 {
		t.Errorf("a rolled plate is staked whatever pulls it: %v", got.Tension)
	}
}

// A seat is unknown behind an old bush that is in, that comes out, and of which
// neither outside nor seat is told.
func TestSeatUnknown(t *testing.T) {
	stays := &seat.Part{Mend: seat.BushInABush, Stays: true}
	for name, c := range map[string]struct {
		bore job.Bore
		part *seat.Part
		want bool
	}{
		"an old bush is in":                {job.Bore{Bushed: true}, nil, true},
		"it is out":                        {job.Bore{}, nil, false},
		"its outside is known":             {job.Bore{Bushed: true, BushedOD: dim.Must("5 mm")}, nil, false},
		"its seat is known":                {job.Bore{Bushed: true, Seat: &job.OldSeat{}}, nil, false},
		"it stays":                         {job.Bore{Bushed: true}, stays, false},
		"it comes out of what is plugged":  {job.Bore{Bushed: true}, &seat.Part{Mend: seat.Plug}, true},
		"a plug, and nothing was in there": {job.Bore{}, &seat.Part{Mend: seat.Plug}, false},
	} {
		in, x := answered(t, &seat.Answer{Way: seat.Way{Kind: seat.BoringHead}, Part: c.part}, &c.bore)
		if got := in.bore(x).SeatUnknown; got != c.want {
			t.Errorf("%s: %v", name, got)
		}
	}
}
