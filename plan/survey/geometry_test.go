package survey

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rebush/testdata"
)

// The example of METHODS.md 3.4 and METHODS.md 4: R 1.55, r 1.53, w 0.10.
func example() WornBore { return NewWornBore([2]float64{0, 0}, 1.55, 1.53, 0.10, 0) }

func TestExampleReadings(t *testing.T) {
	b := example()
	near(t, "largest", b.TwoPoint(0), 3.200, 1e-9)
	near(t, "largest", b.Largest(), 3.200, 1e-9)
	near(t, "smallest", b.TwoPoint(math.Pi/2), 3.100, 1e-9)
	near(t, "at 45", b.TwoPoint(math.Pi/4), 3.1625, 5e-5)
	// The notes print 3.146 to 3.168 as the gauge is turned. Those are the
	// circles through three walls seen 120 degrees apart from the old centre; a
	// gauge that centres itself stands off and reads 3.1652 at the most.
	three := func(turn float64) float64 {
		w := func(k float64) [2]float64 { a := turn + k*2*math.Pi/3; return toward(b.O, b.Reach(a), a) }
		c, _ := through(w(0), w(1), w(2))
		return 2 * c.R
	}
	lo, hi, loG, hiG := 9.0, 0.0, 9.0, 0.0
	for i := range 480 {
		a := float64(i) / 4 * deg
		lo, hi = math.Min(lo, three(a)), math.Max(hi, three(a))
		loG, hiG = math.Min(loG, b.ThreePoint(a)), math.Max(hiG, b.ThreePoint(a))
	}
	near(t, "three walls, least", lo, 3.146, 5.5e-4)
	near(t, "three walls, most", hi, 3.168, 5.5e-4)
	near(t, "three-point, least", loG, 3.146, 5.5e-4)
	near(t, "three-point, on the wear", hiG, 2*b.R+2*b.W/3, 2e-3)
	near(t, "cusp", b.CuspAngle()/deg, 78.2, 0.05)
	near(t, "unworn", b.UnwornArc(), 360-2*b.CuspAngle()/deg, 0.06)
	near(t, "flat jaws along", b.FlatJaws(0), 3.2, 1e-9)
	c := math.Acos(b.C / (b.C + b.W))
	near(t, "flat jaws where the wear ends", b.FlatJaws(c), 3.1, 1e-9)

	for _, n := range [][3]float64{{3, 0.3, -0.015}, {3, 0.5, -0.042}, {2, 0.3, -0.023}} {
		near(t, "nibs", NibRead(n[0], n[1])-n[0], n[2], 5e-4)
		near(t, "nibs back", NibTrue(NibRead(n[0], n[1]), n[1]), n[0], 1e-12)
	}
	near(t, "three pins", ThreePins(1, 1, 1), 2.1547, 5e-5)

	away, towards := b.PinSlide(0.005)
	near(t, "pin away", away, 0.005, 1e-12)
	near(t, "pin towards", towards, 0.0255, 5e-4)
	_, towards = NewWornBore([2]float64{}, 1.55, 1.545, 0.10, 0).PinSlide(0.005)
	near(t, "pin towards, close journal", towards, 0.105, 5e-4)
	if _, drop := NewWornBore([2]float64{}, 1.5, 1.5, 0.2, 0).PinSlide(0.01); !math.IsInf(drop, 1) {
		t.Errorf("a pin smaller than a slot drops in, got %v", drop)
	}

	for _, n := range [][4]float64{{1.55, 1.52, 0.05, 0.02136}, {2, 2, 0.3, 0.15}} {
		shift, _ := NaiveShift(n[0]-n[1], n[2])
		near(t, "naive shift", shift, n[3], 5e-6)
		w := NewWornBore([2]float64{}, n[0], n[1], n[2], 0)
		f, err := Least(w.Outline(4000), 0)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "naive exact", f.Centre[0], map[float64]float64{1.55: 0.02110, 2: 0.14767}[n[0]], 6e-6)
	}
}

// TestWornColumns holds the geometry columns of wornbores.csv.
func TestWornColumns(t *testing.T) {
	for _, r := range testdata.Rows[row](t, "own/wornbores.csv") {
		n := func(c string) float64 { return r.num(t, c) }
		b := NewWornBore([2]float64{n("x0"), n("y0")}, n("R"), n("r"), n("w"), n("theta_deg")*deg)
		near(t, r["id"]+" d", b.D, n("d"), 1e-6)
		if r.has("dmax") {
			near(t, r["id"]+" largest", b.Largest(), n("dmax"), 1e-6)
			near(t, r["id"]+" smallest", b.Smallest(), n("dmin"), 1e-6)
		}
		b.FanHalf = n("fan_half_deg") * deg
		near(t, r["id"]+" seat", b.SeatRadius(b.O), n("seat_r_at_old_centre"), 1e-6)
		near(t, r["id"]+" unworn", b.UnwornArc(), n("unworn_arc_deg"), 0.12)
		if r.has("mcci_r") {
			near(t, r["id"]+" mcci", b.FoundR(), n("mcci_r"), 2e-5)
		}
		if b.FanHalf > 0 {
			continue
		}
		near(t, r["id"]+" found", dist(b.Found(), [2]float64{n("mcci_x"), n("mcci_y")}), 0, 1e-6)
		near(t, r["id"]+" area", b.AreaWorn(), n("area_added"), 2e-6)
		if b.W > 0 {
			near(t, r["id"]+" cusp", b.CuspAngle()/deg, n("phi_cusp_deg"), 0.0001)
		}
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
	e := b.EccentricSeat(b.O)
	near(t, "eccentric seat", e.R, 1.60, 1e-9)
	near(t, "offset", e.Offset, 0.05, 1e-9)
	p, err := b.EccentricSeatFor(b.O, 1.625, 0)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "offset of a larger bush", p.Offset, 0.025, 1e-9)
	if _, err := b.EccentricSeatFor(b.O, 1.59, 0); !errors.Is(err, ErrNoRoom) {
		t.Errorf("a bush below R + w/2: %v", err)
	}
	plug := b.PlugCentre(b.O, 0.02, 3, 0.4)
	near(t, "plug", plug.SeatR, 1.62, 1e-9)
	near(t, "plug OD", plug.LeastOD, 2*(0.05+1.5+0.4), 1e-9)
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
		if b.FoundR() > b.SeatRadius(T)+1e-4 {
			t.Fatalf("the middle needs %v, T only %v", b.FoundR(), b.SeatRadius(T))
		}
		if p, err := b.EccentricSeatFor(T, b.FoundR()+0.03, 0); err != nil || b.SeatRadius(p.E) > b.FoundR()+0.03+1e-8 {
			t.Fatalf("eccentric seat: %v %v", p, err)
		}
	})
}
