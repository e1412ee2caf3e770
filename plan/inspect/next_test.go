package inspect

import (
	"math"
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/plan/job"
)

var shop = Shop{Lathe: true, GuardK: 1.65, LeastWallMM: 0.5, LetPassMM: 0.04}

// reamed is a seat of 5.000 to 5.012 for a bush of 5.03 whose bore ends at
// 3.175 to 3.220 about a journal of 3.16, in a hole whose wheel meshes.
func reamed() Hole {
	return Hole{Name: "a.left", SeatMM: [2]float64{5, 5.012}, BoreMM: [2]float64{3.175, 3.22}, At: [2]float64{10, 8}, OffMM: 0.03,
		JournalMM: 3.16, Bush: "drawer 1", BushMM: 5.03, Chance: 0.9,
		Meshes: []Mesh{{Name: "drive", Towards: [2]float64{0, 1}, Share: 0.5, MidMM: 12, LowMM: 11.98, HighMM: 12.04,
			Play: func(a float64) float64 { return a - 11.9 }}},
		Here: func(lo, hi float64) []Offer {
			return []Offer{{Bush: "glued", Bonded: true, Chance: 0.71}, {Bush: "turned", Turned: true, Chance: 0.83333}, {Bush: "turned too", Turned: true}}
		},
		Larger: func(size float64) []Offer {
			return []Offer{{Bush: "as small", SeatMM: size}, {Bush: "drawer 5", SeatMM: size + 0.4, Chance: 0.8}}
		}}
}

func gauged(t *testing.T, key, size string) (job.Made, What) {
	t.Helper()
	l, err := dim.Parse(size, dim.MM)
	if err != nil {
		t.Fatal(err)
	}
	if key == "seat" {
		return job.Made{Bore: "a.left", Seat: l}, Seat
	}
	return job.Made{Bore: "a.left", Diameter: l}, Bore
}

// What is said of each size, in the order of the ways on. The guard of 1 um is
// 1.65 um; a bore over 3.260 is let pass no more; 3.24 runs with 80 um where 60
// were wanted.
func TestWaysOn(t *testing.T) {
	for _, c := range []struct {
		key, size string
		change    func(*Hole, *Gauge)
		result    Result
		ways      []string
	}{
		{"seat", "5.006", nil, Accept, nil},
		{"seat", "4.990", nil, Reject, []string{"open the seat to size with the same tool [drawer 1] 0.9"}},
		{"seat", "4.990", func(h *Hole, _ *Gauge) { h.Uncut = true }, Reject, []string{"look for dirt or a burr and measure again; then a bush with a smaller outside: nothing is cut in this seat []"}},
		{"seat", "5.030", func(h *Hole, _ *Gauge) { h.Uncut, h.Capped = true, true }, Reject, []string{"fit a bearing with a larger outside, or turn one to this seat: nothing is pressed under a cap []"}},
		{"seat", "5.030", nil, Reject, []string{"turn a bush to the seat as made (5.030 mm) [turned] 0.8333",
			"set the bush with retaining compound [glued] 0.71", "make the next larger seat [drawer 5] 0.8"}},
		{"seat", "5.030", func(h *Hole, _ *Gauge) { h.Here, h.Larger = none2, none1 }, Reject, []string{"nothing on the list fits this seat: plug it and bore again, or send it out []"}},
		// Read 2 um too much: 5.028, 0.028 less the bias.
		{"seat", "5.032", func(_ *Hole, g *Gauge) { g.BiasMM = 0.002 }, Reject, []string{"turn a bush to the seat as made (5.030 mm) [turned] 0.8333",
			"set the bush with retaining compound [glued] 0.71", "make the next larger seat [drawer 5] 0.8"}},
		{"bore", "3.170", nil, Reject, []string{"size the bore again, or ease it to its own axle [drawer 1] 0.9"}},
		{"bore", "3.240", nil, Reject, []string{"accept it: the axle runs with 80 um of clearance, 60 at the most was wanted [drawer 1]",
			"press it out and fit a new bush into the same seat [drawer 1] 0.9"}},
		{"bore", "3.2601", nil, Reject, []string{"press it out and fit a new bush into the same seat [drawer 1] 0.9"}},
		{"bore", "3.1755", nil, CannotTell, []string{"measure again with a better instrument []", "size the bore again, or ease it to its own axle [drawer 1] 0.9"}},
		// 45 um wide; 45 / 3.3 = 13.6 um would do, said as twice that: 0.027.
		{"bore", "3.180", func(_ *Hole, g *Gauge) { g.UMM = 0.02 }, CannotTell, []string{"this instrument can accept nothing here: take one that is good to about 0.027 mm []",
			"size the bore again, or ease it to its own axle [drawer 1] 0.9"}},
	} {
		h, g := reamed(), Gauge{UMM: 0.001}
		if c.change != nil {
			c.change(&h, &g)
		}
		made, what := gauged(t, c.key, c.size)
		row, err := Of(h, made, what, g, shop)
		if err != nil {
			t.Fatal(err)
		}
		if row.Result != c.result || row.Bore != "a.left" || row.What != what {
			t.Errorf("%s %s: %+v", c.key, c.size, row)
		}
		if got, want := ways(row), strings.Join(c.ways, "\n"); got != want {
			t.Errorf("%s %s:\n%s\nwant\n%s", c.key, c.size, got, want)
		}
	}
}

func none1(float64) []Offer      { return nil }
func none2(_, _ float64) []Offer { return nil }

func ways(r Row) string {
	var out []string
	for _, n := range r.Next {
		s := n.Do.String() + " [" + n.Bush + "]"
		if n.FirstTimeRight != nil {
			s += " " + strings.TrimRight(dim.Places(*n.FirstTimeRight, 4).String(), "0")
		}
		out = append(out, s)
	}
	return strings.Join(out, "\n")
}

// A seat 0.06 above its place: by hand the bush keeps 5.03/2 - 0.06 - 3.22/2 =
// 0.845 of wall, its thin side is towards the target, at 270 degrees; the
// wheel between two bores moves half of it, 0.03, and the centres come so much
// nearer: 11.97, 0.07 of backlash, which is outside.
func TestPlaceByHand(t *testing.T) {
	made := job.Made{Bore: "a.left"}
	made.Centre = point(t, "10", "8.06")
	row, err := Of(reamed(), made, Place, Gauge{UMM: 0.001}, shop)
	if err != nil {
		t.Fatal(err)
	}
	if row.Result != Reject || math.Abs(row.MadeMM.Float()-0.06) > 1e-9 || len(row.Next) != 2 {
		t.Fatalf("%+v", row)
	}
	for i, want := range []string{"thin side at 270 degrees", "accept it: drive would have 0.070 mm of backlash, outside its limits"} {
		if got := row.Next[i].Do.String(); !strings.Contains(got, want) {
			t.Errorf("%q lacks %q", got, want)
		}
	}
	if got := row.Next[0].Do.String(); !strings.Contains(got, "offset 0.060 mm") || !strings.HasSuffix(got, "on 7 mm bar, least wall 0.84 mm") && !strings.HasSuffix(got, "least wall 0.85 mm") {
		t.Error(got)
	}
	thin := shop
	thin.LeastWallMM = 0.85
	if row, _ = Of(reamed(), made, Place, Gauge{UMM: 0.001}, thin); len(row.Next) != 1 {
		t.Errorf("a wall of 0.845 where 0.85 is wanted: %+v", row.Next)
	}
	if row, _ = Of(reamed(), made, Place, Gauge{UMM: 0.001}, Shop{GuardK: 1.65}); len(row.Next) != 1 {
		t.Errorf("an eccentric bush without a lathe: %+v", row.Next)
	}
	if _, err = Of(Hole{SeatMM: [2]float64{2, 1}}, made, Seat, Gauge{}, shop); err == nil {
		t.Error("limits the wrong way round are judged")
	}
}

func point(t *testing.T, x, y string) job.Point {
	t.Helper()
	var p job.Point
	for i, s := range []string{x, y} {
		l, err := dim.Parse(s, dim.MM)
		if err != nil {
			t.Fatal(err)
		}
		if i == 0 {
			p.X = l
		} else {
			p.Y = l
		}
	}
	return p
}

// What was made of a hole is looked at in the order of the work.
func TestWhats(t *testing.T) {
	made, _ := gauged(t, "seat", "5")
	made.Diameter, made.Centre = made.Seat, point(t, "1", "2")
	if got := Whats(made); len(got) != 3 || got[0] != Seat || got[1] != Bore || got[2] != Place {
		t.Errorf("%v", got)
	}
	if got := Whats(job.Made{}); len(got) != 0 {
		t.Errorf("%v of nothing", got)
	}
}

// A seat above the middle of its limits that cannot be told is offered a bush
// for what it may be: its size less and more the doubt.
func TestRefitAsksForWhatItMayBe(t *testing.T) {
	h := reamed()
	var asked [2]float64
	h.Here = func(lo, hi float64) []Offer { asked = [2]float64{lo, hi}; return nil }
	made, what := gauged(t, "seat", "5.0115")
	row, err := Of(h, made, what, Gauge{UMM: 0.001}, shop)
	if err != nil || row.Result != CannotTell {
		t.Fatalf("%+v %v", row, err)
	}
	if math.Abs(asked[0]-5.0105) > 1e-9 || math.Abs(asked[1]-5.0125) > 1e-9 {
		t.Errorf("asked for %v", asked)
	}
	asked = [2]float64{}
	made, what = gauged(t, "seat", "5.0005")
	if row, _ = Of(h, made, what, Gauge{UMM: 0.001}, shop); asked != [2]float64{} || len(row.Next) != 2 {
		t.Errorf("below the middle: asked for %v, %+v", asked, row.Next)
	}
}
