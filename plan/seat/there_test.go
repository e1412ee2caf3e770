package seat

import (
	"math"
	"testing"

	"rebush/fits/dim"
	"rebush/plan/job"
	"rebush/plan/survey"
)

// By hand: an old seat of 6.20 about (10, 7.95) with the new centre at (10.1,
// 7.9) wants 3.1 + sqrt(0.1^2 + 0.05^2) = 3.2118 of a seat's radius, where the
// worn hole wants far less. Sound or not: a hole is a hole.
func TestAnOldSeatIsAHole(t *testing.T) {
	for _, sound := range []bool{true, false} {
		in, _ := read(t, bench1, truck)
		all := sites(in.Job)
		bare := in.hole(all[0], all).S
		all[0].Old.Bore.Seat = &job.OldSeat{Diameter: dim.Must("6.2 mm"), Sound: sound}
		all[0].Seat, all[0].USeat = 6.2, 0.004
		h := in.hole(all[0], all)
		near(t, "clears", []float64{h.S, h.There, h.Fill}, []float64{3.1 + math.Hypot(0.1, 0.05), 6.2, 0})
		if bare > 2 {
			t.Errorf("without the seat %v", bare)
		}
		for _, a := range Search(h, []Mend{Rebush}, in.Stock, in.Shop, in.Rules) {
			if a.Feasible && a.SeatLow < 6.4 {
				t.Errorf("%s seated in %.3f inside a hole of 6.2", a.Bush.Code, a.SeatLow)
			}
		}
	}
}

// The same of an old bush that is still in, by its outside; and the metal to an
// edge is measured from the wall of what is there: 3.1 + 4.0 below the middle of
// the hole as found, which lies at 8.0, 0.05 above that of the seat.
func TestOldBushAndEdgeBesideASeat(t *testing.T) {
	in, _ := read(t, bench1, truck)
	all := sites(in.Job)
	b := all[0].Old.Bore
	b.Bushed, b.BushedOD = true, dim.Must("5 mm")
	near(t, "bushed", []float64{in.hole(all[0], all).S}, []float64{2.5 + math.Hypot(0.1, 0.05)})
	// Its outside is not seen: the metal below is measured from the worn bore, which
	// stands 1.6 below the old centre.
	edges := freeEdges(all[0].Old, [2]float64{10, 8}, 5, measured(b), job.Chassis{})
	near(t, "edge beside an old bush", []float64{edges[0].away}, []float64{0.05 + 1.6 + 4})
	b.Bushed, b.BushedOD = false, dim.Length{}
	b.Seat = &job.OldSeat{Diameter: dim.Must("6.2 mm")}
	near(t, "wall below", []float64{wallAt(all[0].Old, 6.2, -math.Pi/2), wallAt(all[0].Old, 6.2, math.Pi/2)},
		[]float64{3.15, 3.05})
	edges = freeEdges(all[0].Old, [2]float64{10, 8}, 6.2, measured(b), job.Chassis{})
	near(t, "edge", []float64{edges[0].away}, []float64{7.15})
}

// A spoilt seat that stands off place is taken in where it stands.
func TestSpoiltSeatOffPlace(t *testing.T) {
	seat := job.OldSeat{Diameter: dim.Must("6 mm"), Centre: job.Point{X: dim.Must("10.3 mm"), Y: dim.Must("8.4 mm")}}
	old := survey.Hole{Bore: &job.Bore{Seat: &seat, Repaired: true}, Worn: survey.NewWornBore([2]float64{10, 8}, 3, 3, 0, 0),
		Middle: [2]float64{10.3, 8.4}}
	near(t, "clears", []float64{clears(old, [2]float64{10, 8}, 6)}, []float64{3.5})
}

// Of several neighbours the nearest is the reason, in whatever order they stand.
func TestNearestNeighbourIsTheReason(t *testing.T) {
	in, _ := read(t, bench1, truck)
	for _, order := range [][2]int{{0, 1}, {1, 0}} {
		holes := []job.Feature{
			{Name: "far screw", Plate: job.Left, At: job.Point{X: dim.Must("14.0 mm"), Y: dim.Must("7.9 mm")}, Diameter: dim.Must("2 mm")},
			{Name: "near screw", Plate: job.Left, At: job.Point{X: dim.Must("6.5 mm"), Y: dim.Must("7.9 mm")}, Diameter: dim.Must("2 mm")},
		}
		in.Job.Chassis.Features = []job.Feature{holes[order[0]], holes[order[1]]}
		all := sites(in.Job)
		in.Job.Choose = map[string]string{"": "solid 5"}
		got, _ := Offer(in, all)
		if a := got[0].Of(Rebush).Nearest(); a == nil || a.Fail.Name != "near screw" {
			t.Errorf("%v: %+v", order, a)
		}
	}
}

// Screw holes, the old seat and the oil hole of another bore are holes beside a
// seat. The oil hole of the bore at (10, 7.95) runs along 90 degrees: 3 mm beside
// it passes at 3 less its radius; one that runs away does not pass at all.
func TestHolesBeside(t *testing.T) {
	in, _ := read(t, bench1, truck)
	in.Job.Chassis.Features = []job.Feature{
		{Name: "screw", Plate: job.Left, At: job.Point{X: dim.Must("14.1 mm"), Y: dim.Must("7.9 mm")}, Diameter: dim.Must("2 mm")},
		{Name: "no size", Plate: job.Left, At: job.Point{X: dim.Must("15 mm"), Y: dim.Must("7.9 mm")}},
		{Name: "far plate", Plate: job.Right, At: job.Point{X: dim.Must("15 mm"), Y: dim.Must("7.9 mm")}, Diameter: dim.Must("2 mm")},
		{Name: "the bore itself", Plate: job.Left, At: job.Point{X: dim.Must("10 mm"), Y: dim.Must("8 mm")}, Diameter: dim.Must("3.2 mm")},
	}
	all := sites(in.Job)
	h := in.hole(all[0], all)
	if len(h.Near) != 1 || h.Near[0].Name != "screw" {
		t.Fatalf("%+v", h.Near)
	}
	near(t, "screw", []float64{h.Near[0].At, h.Near[0].R}, []float64{4, 1})

	other := all[0]
	bore := job.Bore{Name: "other.left", Side: job.Left, Oil: &job.Oil{AtDeg: 90, Diameter: dim.Must("1 mm")},
		Seat: &job.OldSeat{Diameter: dim.Must("5 mm")}}
	other.Old.Bore = &bore
	s := Site{Old: survey.Hole{Bore: &job.Bore{Name: "here.left", Side: job.Left}}, At: [2]float64{13, 12}}
	got := neighbours(s, []Site{s, other})
	if len(got) != 3 {
		t.Fatalf("%+v", got)
	}
	near(t, "worn", []float64{got[0].At, got[0].R}, []float64{math.Hypot(3, 4.05), 1.7})
	near(t, "seat", []float64{got[1].At, got[1].R}, []float64{math.Hypot(3, 4.05), 2.5})
	near(t, "oil", []float64{got[2].At, got[2].R}, []float64{3, 0.5})
	s.At = [2]float64{13, 7}
	if got = neighbours(s, []Site{s, other}); len(got) != 2 {
		t.Errorf("an oil hole that runs away: %+v", got)
	}
}
