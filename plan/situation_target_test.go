package plan_test

import (
	"math"
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/plan"
)

// TestTargetIsTheWeightedMean: without a gear to move it the shaft goes to the
// mean of its two old centres, weighted by 1/u^2 along each axis.
func TestTargetIsTheWeightedMean(t *testing.T) {
	// Both by the same instruments: the plain mean of (10, 8) and (10.04, 8.02),
	// square in both plates.
	p := plain(t).drive("centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20, worn_to: 90", "centre: [10.04, 8.07], widest: 3.30, narrowest: 3.20, worn_to: 90").plan()
	across := 0.0001 + math.Pow(0.05*10*math.Pi/180, 2)
	along := 0.0001 + 0.000008
	// Each plate lends the other its own, with 0.05 for two drillings: of what they
	// differ by that takes v/(v + v + 0.05^2).
	lent := func(v, of float64) float64 { return v / (v + of + 0.0025) }
	for i, b := range []string{"drive.left", "drive.right"} {
		tg := targetOf(t, p, b)
		nearXY(t, "target", tg.TargetMM, 10.02, 8.01, 1e-4)
		sign := []float64{1, -1}[i]
		nearXY(t, "from the old centre", tg.FromOriginalMM, sign*(0.02-0.04*lent(across, across)),
			sign*(0.01-0.02*lent(along, along)), 1e-4)
		nearXY(t, "from the hole as found", tg.FromFoundMM, sign*0.02, sign*0.01-0.05, 1e-4)
	}
	for _, s := range p.Shafts {
		if s.Shaft == "drive" {
			// 0.04 along, 13 mm between the middles of the plates; the shaft lies
			// as high in both: atan(hypot(0.04, 0.02)/13).
			near(t, "skew found", math.Abs(*s.SkewDeg.Found), math.Atan(0.04/13)*180/math.Pi, 0.03)
			near(t, "skew after", *s.SkewDeg.After, 0, 1e-9)
		}
	}
	// The left with an edge finder's 0.010, the right a seat taken with the
	// same: along y 1/u^2 of left 1/(0.0001 + 0.000008), of right 1/0.0001;
	// along x 1/(0.0001 + 0.0000761).
	p = plain(t).drive("centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20, worn_to: 90", "centre: [10.04, 8.02], widest: 3.20, narrowest: 3.20").plan()
	mean := func(a, va, b, vb float64) float64 { return (a/va + b/vb) / (1/va + 1/vb) }
	// The old centre of each is its own with what the other lends it.
	old := func(a, va, b, vb float64) float64 { return mean(a, va, b, vb+0.0025) }
	both := func(a, va, b, vb float64) float64 {
		// What their errors have in common is va vb/(va + vb + 0.0025): without it
		// they are as va to vb.
		return mean(old(a, va, b, vb), va, old(b, vb, a, va), vb)
	}
	nearXY(t, "weighted", targetOf(t, p, "drive.left").TargetMM, both(10, across, 10.04, 0.0001), both(8, along, 8.02, 0.0001), 1e-4)
}

// TestSeenFromRight: figures taken from the right side, mirrored over the plate
// of 60 mm, give the same plan.
func TestSeenFromRight(t *testing.T) {
	s := plain(t).drive("centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20, widest_at: 80, worn_to: 80, edges: [{at: 200, metal: 5.0}]",
		"centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20, widest_at: 80, worn_to: 80, edges: [{at: 200, metal: 5.0}]")
	m := plain(t).drive("centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20, widest_at: 80, worn_to: 80, edges: [{at: 200, metal: 5.0}]",
		"seen_from: right, centre: [50.00, 8.05], widest: 3.30, narrowest: 3.20, widest_at: 100, worn_to: 100, edges: [{at: 340, metal: 5.0}]")
	a, b := s.plan(), m.plan()
	for _, bore := range []string{"drive.left", "drive.right"} {
		x, y := targetOf(t, a, bore), targetOf(t, b, bore)
		if *x.TargetMM != *y.TargetMM || *surveyed(t, a, bore).CentreMM != *surveyed(t, b, bore).CentreMM || seatOf(t, a, bore).MetalLeftMM != seatOf(t, b, bore).MetalLeftMM {
			t.Errorf("%s: %v and %v, metal %s and %s", bore, *x.TargetMM, *y.TargetMM, seatOf(t, a, bore).MetalLeftMM, seatOf(t, b, bore).MetalLeftMM)
		}
	}
}

// TestShaftsThatStay: a shaft left alone keeps its place although the worm asks
// for another, and so does a bush renewed in its sound seat; both are said.
func TestShaftsThatStay(t *testing.T) {
	left := plain(t).with("  - name: drive\n", "  - name: drive\n    do: leave\n").gear(wormGear(16.02, ", moved: yes")).plan()
	nearXY(t, "left alone", targetOf(t, left, "drive.left").FromOriginalMM, 0, 0, 0)
	if f := saidOf(t, left, "mesh fixed", "d"); f.Level != finding.Caution {
		t.Errorf("%+v", f)
	}
	const seat = "seat: {diameter: 5.003, centre: [10.00, 8.00], sound: yes}, with: {seat: bore gauge}"
	renewed := plain(t).drive(seat, seat).gear(wormGear(16.02, ", moved: yes")).make(plan.Options{NoChance: true, Way: "renew"})
	nearXY(t, "renewed", targetOf(t, renewed, "drive.left").FromOriginalMM, 0, 0, 0)
	saidOf(t, renewed, "mesh fixed", "d")
}

// TestWindowsThatFight: a worm above that wants the shaft 0.10 lower, one below
// that wants it 0.10 higher: both are named with what is missing.
func TestWindowsThatFight(t *testing.T) {
	s := plain(t).with("8.05", "12.05")
	s = s.gear(wormGear(20.04, ", moved: yes") + strings.NewReplacer("name: d", "name: e").Replace(wormGear(3.98, ", moved: yes")))
	p := s.plan()
	f := saidOf(t, p, "windows fight", "")
	if f.Level != finding.Caution || f.Have == nil || !strings.Contains(f.Text.String(), "d and e") && !strings.Contains(f.Text.String(), "e and d") {
		t.Errorf("%+v", f)
	}
	// Bare distances 8.04 above and 8.02 below sum to 16.06 whatever the height.
	// Wanted at least 8 + 0.05/k + 0.030 + u above (the load closes it) and
	// 8 + 0.05/k - 0.0075 + u below.
	want := 16 + 2*0.05/perMM() + 0.030 - 0.0075 + 2*doubtWorm
	near(t, "short by", *f.Have, want-16.06, 2e-3)
}

// TestLongMoves: a move of 0.20 is cautioned, with the figure.
func TestLongMoves(t *testing.T) {
	p := plain(t).gear(wormGear(15.92, ", moved: yes")).plan()
	move := aimed(8+0.05/perMM()+0.030, 8+0.12/perMM()+0.0075, doubtWorm, 7.92) - 7.92
	f := saidOf(t, p, "long move", "drive.left")
	near(t, "move", *f.Have, move, 4e-3)
	unsaid(t, plain(t).gear(wormGear(16.14, "")).plan(), "long move")
}

// TestTruck: wheelbase under load and four-wheel rock, found and after.
func TestTruck(t *testing.T) {
	s := plain(t).with("  current: none\n", "  current: none\n  wheelbase: {between: [drive, other], sister: 38.0}\n").with("    load: 2.5 N\n", "    load: 2.5 N\n    contacts_apart: 26\n").
		drive("centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20, worn_to: 90", "centre: [10.00, 8.02], widest: 3.24, narrowest: 3.20, worn_to: 90")
	p := s.plan()
	// Found: left at 8 + 0.12, right at 8 + 0.06, the other axle level at 8.02:
	// rock = 26/13 x 0.06 = 0.12; after, level.
	nearMM(t, "rock found", p.Truck.RockMM.Found, 0.12, 1e-4)
	nearMM(t, "rock after", p.Truck.RockMM.After, 0, 1e-4)
	nearMM(t, "wheelbase", p.Truck.WheelbaseMM.Found, 38, 1e-3)
	nearMM(t, "wheelbase", p.Truck.WheelbaseMM.After, 38, 1e-3)
}
