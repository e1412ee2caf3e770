package carry

import (
	"math"
	"strings"
	"testing"

	"rebush/plan/world"
)

// TestRings holds the press to printed answers (testdata/checks/pressfit.csv,
// PF-TB-BRZ-p and PF-TB-SH5-35-p), and the closure to two sums by hand: of one
// metal in a plate without end the bore closes by in/out of the interference,
// since the ring's walls move as those of a hole in a solid plate would; and a
// ring that has given way closes by the slope.
func TestRings(t *testing.T) {
	bronze := ring{out: 60, in: 40, wide: 120, bush: 105000, plate: 210000, nuBush: 0.3, nuPlate: 0.3}
	p, _ := bronze.press(0.1)
	near(t, "bronze in steel", p, 53.3, 0.1)
	tubes := ring{out: 50, in: 25, wide: 75, bush: 207000, plate: 207000, nuBush: 0.3, nuPlate: 0.3}
	p, _ = tubes.press(0.02)
	near(t, "tube in tube", p, 19.41, 0.02)
	same := ring{out: 5, in: 3, bush: 1e5, plate: 1e5, nuBush: 0.3, nuPlate: 0.3}
	_, closes := same.press(0.02)
	near(t, "closure of one metal", closes, 0.012, 1e-9)
	same.flow, same.slope = 100, 1.2
	p, closes = same.press(0.04)
	near(t, "pressure of a ring that gives way", p, 100*16.0/50, 1e-9)
	_, before := same.press(0.03)
	near(t, "its closure", closes-before, 0.012, 1e-9)
	if p, closes := same.press(-0.01); p != 0 || closes != 0 {
		t.Error("a loose bush presses")
	}
}

// TestClears: a seat about the old centre has to reach the deepest wear, one
// about the middle of the worn hole half of it.
func TestClears(t *testing.T) {
	h := world.Hole{Old: world.Point{2, 1}, Radius: 1.55, Journal: 1.433, Depth: 0.02, Towards: [2]float64{30, 30}}
	for _, c := range []struct{ moved, least float64 }{{0, 1.57}, {0.01, 1.56}, {-0.1, 1.67}} {
		at := [2]float64(h.Old.Plus(30, c.moved))
		if clears(h, at, c.least-1e-4) || !clears(h, at, c.least+1e-4) {
			t.Errorf("moved by %g: not cleared from %g", c.moved, c.least)
		}
	}
	b := &world.Bore{Hole: h, Edges: []world.Edge{{Deg: 270, Away: 3}, {Deg: 0, Away: 3.5}}}
	near(t, "metal left", left(b, [2]float64{2.3, 0.9}, 2), 0.9, 1e-9)
}

// TestJudged: each of the ways in which a mesh fails, alone.
func TestJudged(t *testing.T) {
	m := &Mesh{Window: &[2]length{0.05, 0.12}}
	good := turn{backlash: 0.08, tight: 0.05, contact: 1.3, wanted: 1.2}
	for want, change := range map[string]func(*turn){
		"": func(*turn) {}, "tightest tooth": func(x *turn) { x.tight = 0.009 },
		"contact of the loosest":    func(x *turn) { x.contact = 1.19 },
		"backlash below its window": func(x *turn) { x.backlash = 0.049 },
		"backlash above its window": func(x *turn) { x.backlash = 0.121 },
	} {
		x := good
		if change(&x); judged(m, x) != want {
			t.Errorf("%+v is judged %q, want %q", x, judged(m, x), want)
		}
	}
	shut := &Mesh{Window: &[2]length{0.05, 0.05}}
	if judged(shut, turn{backlash: 0.3, tight: 0.02, contact: 1.01, wanted: 1.2}) != "" {
		t.Error("a mesh that runs and has no window is not right")
	}
	if judged(m, turn{tight: math.NaN()}) == "" {
		t.Error("base circles that overlap run")
	}
}

// bench is a truck with two holes and a plan for both.
func bench() *carrying {
	t := &world.Truth{Thickness: [2]float64{2, 2}, Width: 20, Bench: world.Bench{Setup: 0.03, Hole: 0.01, Careful: true}}
	for _, name := range []string{"front", "rear"} {
		s := world.Shaft{Name: name, Journal: [2]float64{3, 3}}
		for k, plate := range []string{"left", "right"} {
			s.Bores[k] = &world.Bore{Name: name + "." + plate, Hole: world.Hole{Radius: 1.52, Journal: 1.5}}
		}
		t.Shafts = append(t.Shafts, s)
	}
	p := &Plan{}
	for _, s := range t.Shafts {
		for k, b := range s.Bores {
			p.Targets = append(p.Targets, Target{Bore: b.Name, At: &place{}})
			p.Seats = append(p.Seats, Seat{Bore: b.Name, Mend: "re-bush", Bush: "x", Tool: "5 mm reamer"})
			p.Operations = append(p.Operations, Operation{Setup: []string{"A", "B"}[k], Kind: "size seat", Bore: b.Name})
		}
	}
	c := &carrying{truth: t, plan: p, seats: map[string]*Seat{}}
	for i := range p.Seats {
		c.seats[p.Seats[i].Bore] = &p.Seats[i]
	}
	return c
}

// spreadOf is the standard deviation of a figure over many turns.
func spreadOf(n int, f func(l luck) float64) float64 {
	sum, squares := 0.0, 0.0
	for i := range n {
		x := f(luck{1, uint64(i)})
		sum, squares = sum+x, squares+x*x
	}
	mean := sum / float64(n)
	return math.Sqrt(squares/float64(n) - mean*mean)
}

// TestErrors: holes of one clamping share its error, holes of two do not, and
// each has its own; the sizes are those of the shop.
func TestErrors(t *testing.T) {
	c := bench()
	x := func(bore string) func(luck) float64 {
		return func(l luck) float64 { return c.seated(c.seats[bore], l)[0] }
	}
	apart := func(a, b string) func(luck) float64 {
		return func(l luck) float64 { return x(a)(l) - x(b)(l) }
	}
	near(t, "a hole", spreadOf(4000, x("front.left")), math.Hypot(0.03, 0.01), 0.0012)
	near(t, "two of one clamping", spreadOf(4000, apart("front.left", "rear.left")), 0.01*math.Sqrt2, 0.0006)
	near(t, "two of two clampings", spreadOf(4000, apart("front.left", "front.right")), math.Sqrt2*math.Hypot(0.03, 0.01), 0.002)
	off := func(l luck) float64 {
		return c.placed("front.left", l, nil)[0] - c.seated(c.seats["front.left"], l)[0]
	}
	near(t, "run-out of the bush", spreadOf(4000, off), bushTIR/2/math.Sqrt(6), 0.0003) // rms of half an even figure, on one axis
}

// TestScatter: the tools by their names.
func TestScatter(t *testing.T) {
	for tool, want := range map[string]float64{"5 mm H7 reamer": 0.005, "boring head": 0.01 / 3, "6 mm end mill": 0.008} {
		near(t, tool, scatter(tool, true), want, 1e-9)
	}
	near(t, "without care", scatter("5 mm H7 reamer", false), 0.025/3, 1e-9)
}

// TestRead: figures as decimal text, null as none.
func TestRead(t *testing.T) {
	p, err := Read([]byte(`{"ok": true, "seats": [{"bore": "a.left", "seat_mm": {"min": "4.763", "max": "4.772"},
"metal_left_mm": null}], "survey": [{"bore": "a.left", "centre_mm": ["1.5", "-2"]}], "ledger": {"k": {"value": 3.5}}}`))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "seat", p.Seats[0].Seat.middle(), 4.7675, 1e-9)
	near(t, "centre", p.Survey[0].Centre.mm()[1], -2, 0)
	near(t, "ledger", p.figure("k"), 3.5, 0)
	if !math.IsNaN(p.figure("none")) || p.Seats[0].MetalLeft != nil {
		t.Error("what is absent has a figure")
	}
	if _, err := Read([]byte(`{"seats": 3}`)); err == nil || !strings.Contains(err.Error(), "carry") {
		t.Errorf("no plan: %v", err)
	}
}

// TestLeant: a shaft that stands 0.09 mm nearer in the right plate than in the
// left, 18 mm apart, loses over a face of 2 mm a ninth of that times the sine of
// the working angle; one that stands so much to the side, times the cosine.
func TestLeant(t *testing.T) {
	c := bench()
	g := &world.Gear{Teeth: &world.Teeth{Module: 0.5, Pressure: 20, Wheel: 36, Pinion: 12}, At: world.Point{0, 12}, Face: 2, Left: 10}
	square := axis{}
	near(t, "square", c.leant(g, square, axis{}), 0, 1e-12)
	nearer := axis{[2][2]float64{{0, -0.045}, {0, 0.045}}}
	near(t, "in the line of centres", c.leant(g, nearer, axis{}), 0.01*math.Sin(20*degree), 1e-6)
	aside := axis{[2][2]float64{{-0.045, 0}, {0.045, 0}}}
	near(t, "square to it", c.leant(g, aside, axis{}), 0.01*math.Cos(20*degree), 1e-6)
}
