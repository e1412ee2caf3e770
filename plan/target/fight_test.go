package target

import (
	"math"
	"testing"
)

// Two worms, above and below, want the shaft 0.1 down and 0.1 up. Windows of
// widths 0.1 and 0.2, no doubt: the miss that is least in widths squared is
// v1/0.01 = v2/0.04 with v1 + v2 = 0.2, 0.04 and 0.16.
func TestFight(t *testing.T) {
	in := Input{
		Shafts: []Shaft{{Name: "axle", Bores: []Bore{{Name: "axle.left", Original: Point{10, 6}, Found: Point{10, 6}, Cov: Round(0.02)}}}},
		Gears: []Gear{
			{Name: "upper", Mate: -1, MateAt: Point{0, 14}, Geometry: level{}, Lo: 8.1, Hi: 8.2, Trusted: true},
			{Name: "lower", Mate: -1, MateAt: Point{10, -2}, Geometry: spur{}, Lo: 8.1, Hi: 8.3, Trusted: true},
		},
	}
	out := place(t, in)
	near(t, "upper", out.Gears[0].Missed, -0.04, 1e-6)
	near(t, "lower", out.Gears[1].Missed, -0.16, 1e-6)
	if len(out.Fights) != 1 || out.Fights[0].A != "upper" || out.Fights[0].B != "lower" || out.Fights[0].Shaft != "axle" {
		t.Fatalf("fights %+v", out.Fights)
	}
	near(t, "gap", out.Fights[0].Gap(), 0.2, 1e-6)
	near(t, "x stays", out.Shafts[0].Moved[0], 0, 1e-9)
}

// One pair that asks for a move of a tenth of its distance is not an answer but
// a contradiction: the shaft goes as far as it may and the rest is told.
func TestTooFar(t *testing.T) {
	in := worm()
	in.MostMove = 0.05
	out := place(t, in)
	m := -out.Shafts[0].Moved[1]
	if out.AllMet || len(out.Fights) != 0 || !(m > 0.01 && m <= 0.05) {
		t.Errorf("moved %v, %+v", m, out)
	}
	near(t, "rest", out.Gears[0].Missed, m-0.064021, 1e-6)
}

// A shaft between two mates that stand too near each other is not sent aside
// to gain by the bend of its circle.
func TestNoBuckling(t *testing.T) {
	in := pairOf(0.02, 0.02)
	in.Shafts[1].Bores[0].Fixed = true
	in.Gears = append(in.Gears, Gear{Name: "other", Mate: -1, MateAt: Point{-12, 0.01}, Geometry: spur{}, Lo: 12.09, Hi: 12.19, Trusted: true})
	out := place(t, in)
	if len(out.Fights) != 1 || math.Hypot(out.Shafts[0].Moved[0], out.Shafts[0].Moved[1]) > 0.165 {
		t.Errorf("%+v", out)
	}
}

// An empty window, and one that the spread of the clearance empties, is aimed
// at in its middle.
func TestEmptyWindow(t *testing.T) {
	in := worm()
	in.Gears[0].Lo, in.Gears[0].Hi = 8.15, 8.05
	out := place(t, in)
	g := out.Gears[0]
	if !g.Empty || g.NoRoom || len(out.Fights) != 0 {
		t.Errorf("%+v", g)
	}
	near(t, "middle", (g.Near+g.Far)/2, 8.10, 1e-9)
	in.Gears[0].Lo, in.Gears[0].Hi = 8.10, 8.11
	out = place(t, in)
	if g = out.Gears[0]; g.Empty || !g.NoRoom {
		t.Errorf("%+v", g)
	}
	near(t, "middle", (g.Near+g.Far)/2, 8.105, 1e-9)
}
