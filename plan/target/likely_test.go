package target

import (
	"math"
	"testing"
)

// one is a shaft under a level worm at 14: the distance is 14 less its y, known
// to 0.0355 in all. The old centre is known to 0.02.
func one(oldY float64) Input {
	return Input{Move: 0.0005,
		Shafts: []Shaft{{Name: "axle", TowardsDeg: 90, UHole: 0.0293428, Bores: []Bore{
			{Name: "axle.left", Original: Point{10, oldY}, Found: Point{10, oldY}, Cov: Round(0.02)}}}},
		Gears: []Gear{{Name: "cog", Mate: -1, MateAt: Point{0, 14}, Geometry: level{}, Lo: 8.074, Hi: 8.260, Trusted: true,
			UGeom: 0.02, Share: 0.5}}}
}

// A window of 8.074 to 8.260 known to 0.0355, a table of the normal distribution:
// one doubt inside its edge is right in .8413 less what comes out beyond the other
// edge, the middle in 2 Phi(2.620) - 1 = .9912. The shaft stops short of it by what
// the way weighs.
func TestLikeliest(t *testing.T) {
	s := place(t, one(5.97)).Shafts[0]
	near(t, "u", place(t, one(5.97)).Gears[0].U, 0.0355, 1e-4)
	near(t, "least move", 14-s.LeastMove[1], 8.074+0.0355, 1e-4)
	near(t, "its chance", s.LeastChance, 0.8413, 2e-4)
	near(t, "the middle", 14-s.T[1], 8.167, 0.012)
	near(t, "its chance", s.Chance, 0.9912, 3e-3)
	if a := 14 - s.T[1]; a >= 8.167 || s.T[0] != 10 {
		t.Errorf("at %v: the way weighs nothing", s.T)
	}
	in := one(5.97)
	in.Move = 0.1
	if heavy := place(t, in).Shafts[0]; heavy.T[1] <= s.T[1]+0.005 {
		t.Errorf("a move that weighs more goes to %v, not nearer the old centre than %v", heavy.T, s.T)
	}
}

// Where the window is wide nothing is gained by going on: the shaft stays where
// it was.
func TestFlat(t *testing.T) {
	in := one(5.7)
	in.Gears[0].Lo, in.Gears[0].Hi = 8.0, 8.6
	s := place(t, in).Shafts[0]
	near(t, "y", s.T[1], 5.7, 1e-6)
	near(t, "chance", s.Chance, 1, 1e-9)
}

// The place is continuous in what is known: an old centre that steps by a micron
// moves it by no more than a few, into the fight of two windows and out of it.
func TestContinuous(t *testing.T) {
	at := func(k int, lower float64) Point {
		in := one(5.7 + 0.001*float64(k))
		in.Gears = append(in.Gears, Gear{Name: "below", Mate: -1, MateAt: Point{10, lower}, Geometry: spur{}, Lo: 8.05,
			Hi: 8.15, Trusted: true, UGeom: 0.01, Share: 0.5})
		return place(t, in).Shafts[0].T
	}
	fights := 0
	for k := range 400 {
		a, b := at(k, -2.2), at(k+1, -2.2)
		if d := math.Hypot(a[0]-b[0], a[1]-b[1]); d > 0.0015 {
			t.Fatalf("old centre at step %d: a step of %v", k, d)
		}
	}
	for k := range 200 { // the lower mate comes nearer until both cannot be met
		a, b := at(150, -2.3+0.001*float64(k)), at(150, -2.3+0.001*float64(k+1))
		if d := math.Hypot(a[0]-b[0], a[1]-b[1]); d > 0.004 {
			t.Fatalf("mate at step %d: %v to %v", k, a, b)
		}
		in := one(5.85)
		in.Gears = append(in.Gears, Gear{Name: "below", Mate: -1, MateAt: Point{10, -2.3 + 0.001*float64(k)},
			Geometry: spur{}, Lo: 8.05, Hi: 8.15, Trusted: true, UGeom: 0.01, Share: 0.5})
		if len(place(t, in).Fights) > 0 {
			fights++
		}
	}
	if fights < 20 || fights > 180 {
		t.Errorf("%d of 200 fight: this shows nothing of the border", fights)
	}
}

// The order of the list decides nothing, and a clamping that both shafts of a
// mesh share changes neither place nor chance.
func TestOrderAndClamping(t *testing.T) {
	train := func(order []int, setup float64) Output {
		all := Input{Move: 0.0005, OneClamping: true}
		x := map[int]int{}
		for k, i := range order {
			o := Point{12.05 * float64(i), 0.02 * float64(i%2)}
			all.Shafts = append(all.Shafts, Shaft{Name: string(rune('a' + i)), USetup: setup, UHole: 0.01, Bores: []Bore{
				{Original: o, Found: o, Cov: Round(0.015)}}})
			x[i] = k
		}
		for i := range 2 {
			all.Gears = append(all.Gears, Gear{Name: string(rune('a' + i)), Shaft: x[i], Mate: x[i+1], Geometry: spur{},
				Lo: 12.09, Hi: 12.20, Trusted: true, UGeom: 0.02})
		}
		return place(t, all)
	}
	want, turned, clamped := train([]int{0, 1, 2}, 0), train([]int{2, 0, 1}, 0), train([]int{0, 1, 2}, 0.05)
	for i, k := range []int{1, 2, 0} {
		for _, got := range []ShaftOut{turned.Shafts[k], clamped.Shafts[i]} {
			near(t, got.Name+" x", got.T[0], want.Shafts[i].T[0], 1e-8)
			near(t, got.Name+" y", got.T[1], want.Shafts[i].T[1], 1e-8)
			near(t, got.Name+" chance", got.Chance, want.Shafts[i].Chance, 1e-9)
		}
	}
	if want.Shafts[1].Chance >= want.Shafts[0].Chance {
		t.Errorf("two meshes %v, one of them %v", want.Shafts[1].Chance, want.Shafts[0].Chance)
	}
}
