package survey

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rebush/testdata"
)

// The example of METHODS.md 3.4 and METHODS.md 4: R 1.55, r 1.53, w 0.10.
func example() WornBore { return NewWornBore([2]float64{0, 0}, 1.55, 1.53, 0.10, 0) }

// What gauges read of the example, by METHODS.md 2: two points along the wear
// 2R + w, square to it 2R; and the middle as found w/2 towards the wear.
func TestExampleReadings(t *testing.T) {
	b := example()
	across := func(psi float64) float64 { return b.Reach(psi) + b.Reach(psi+math.Pi) }
	near(t, "largest", across(0), 3.200, 1e-9)
	near(t, "smallest", across(math.Pi/2), 3.100, 1e-9)
	near(t, "at 45", across(math.Pi/4), 3.1625, 5e-5)
	near(t, "found", dist(b.Found(), [2]float64{0.05, 0}), 0, 1e-12)
	near(t, "unworn", b.unwornArc(), 360-2*78.2, 0.2)
	// From 0.5 along the wear: to its end at 1.65, and back across to -1.55.
	near(t, "ray", b.Ray([2]float64{0.5, 0}, 0), 1.15, 1e-9)
	near(t, "ray back", b.Ray([2]float64{0.5, 0}, math.Pi), 2.05, 1e-9)
}

// TestWornColumns holds the geometry columns of wornbores.csv.
func TestWornColumns(t *testing.T) {
	for _, r := range testdata.Rows[row](t, "own/wornbores.csv") {
		n := func(c string) float64 { return r.num(t, c) }
		b := NewWornBore([2]float64{n("x0"), n("y0")}, n("R"), n("r"), n("w"), n("theta_deg")*deg)
		near(t, r["id"]+" d", b.D, n("d"), 1e-6)
		if r.has("dmax") {
			near(t, r["id"]+" largest", b.Reach(b.ThetaRad)+b.Reach(b.ThetaRad+math.Pi), n("dmax"), 1e-6)
			near(t, r["id"]+" smallest", 2*b.R, n("dmin"), 1e-6)
		}
		b.FanHalf = n("fan_half_deg") * deg
		near(t, r["id"]+" seat", b.SeatRadius(b.O), n("seat_r_at_old_centre"), 1e-6)
		near(t, r["id"]+" unworn", b.unwornArc(), n("unworn_arc_deg"), 0.12)
		if r.has("mcci_r") {
			near(t, r["id"]+" mcci", b.foundR(), n("mcci_r"), 2e-5)
		}
		if b.FanHalf > 0 {
			continue
		}
		near(t, r["id"]+" found", dist(b.Found(), [2]float64{n("mcci_x"), n("mcci_y")}), 0, 1e-6)
	}
}

func TestCleanUp(t *testing.T) {
	b := example()
	for _, c := range [][3]float64{{0, 0, 1.650}, {0.03, 0, 1.620}, {-0.03, 0, 1.680}, {0, 0.05, 1.660}} {
		near(t, "S(T)", b.SeatRadius([2]float64{c[0], c[1]}), c[2], 5e-4)
	}
	arc, depth := b.UncutArc(b.O, 1.60)
	near(t, "uncut", arc, 105.1, 0.05)
	near(t, "void", depth, 0.05, 1e-9)
	if arc, depth = b.UncutArc(b.O, 1.651); arc != 0 || depth != 0 {
		t.Errorf("a seat that clears leaves %v degrees, %v deep", arc, depth)
	}
	// Nowhere does a smaller hole take it in than about its middle: where a plug goes.
	near(t, "plug", b.SeatRadius(b.Found()), 1.60, 1e-9)
}

// TestOutlineAgrees: the outline lies on the zero of Gap, a seat of S(T)
// clears it and one a little smaller does not, and no place needs less than
// the middle of the hole.
func TestOutlineAgrees(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		R := f("R", 1, 4)
		b := NewWornBore([2]float64{f("x", -9, 9), f("y", -9, 9)}, R, R-f("c", 0, 0.1), f("w", 0.01, 0.5), f("theta", 0, 6.28))
		switch rapid.IntRange(0, 2).Draw(t, "shape") {
		case 1:
			b.FanHalf = f("fan", 0.01, 1.2)
		case 2:
			b.D2, b.Theta2 = b.D*f("d2", 0.3, 1), b.ThetaRad+f("t2", 0.3, 3)
		}
		T := [2]float64{b.O[0] + f("dx", -0.2, 0.2), b.O[1] + f("dy", -0.2, 0.2)}
		pts := b.Outline(720)
		for _, p := range pts {
			if g := b.Gap(p); math.Abs(g) > 1e-9 {
				t.Fatalf("outline point off by %v", g)
			}
		}
		_, far := reach(pts, T)
		if s := b.SeatRadius(T); far > s+1e-9 || far < s-1e-3 {
			t.Fatalf("S(T) %v, farthest of the outline %v", s, far)
		}
		if b.foundR() > b.SeatRadius(T)+1e-4 {
			t.Fatalf("the middle needs %v, T only %v", b.foundR(), b.SeatRadius(T))
		}
	})
}
