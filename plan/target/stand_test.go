package target

import (
	"math"
	"testing"

	"rebush/fits/dim"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/survey"
)

// A shaft stands off its centre along its load, and runs straight between its
// bores and beyond them.
func TestStation(t *testing.T) {
	down, up := Stand{Point{10, 8}, 0.12, Point{0, -1}}, Stand{Point{10.4, 8}, 0.04, Point{0, 1}}
	for share, want := range map[float64]Point{0: {10, 7.88}, 1: {10.4, 8.04}, 0.25: {10.1, 7.92}, 1.5: {10.6, 8.12}} {
		got := Station([]Stand{down, up}, share)
		near(t, "x", got[0], want[0], 1e-12)
		near(t, "y", got[1], want[1], 1e-12)
	}
	if got := Station([]Stand{up}, 0.25); got != up.At() {
		t.Errorf("one bore: %v", got)
	}
}

// A worm 16.14 high over a shaft at 8 that is pressed up by 0.12: 8.02.
func TestDistance(t *testing.T) {
	worm := mesh.Drive{Mate: -1, MateAt: Point{10, 16.14}, Geometry: mesh.Along{}, Share: 0.5}
	s := Stand{Point{10, 8}, 0.12, Point{0, 1}}
	near(t, "worm", Distance(worm, []Stand{s, s}, nil), 8.02, 1e-12)
	// Two shafts 5 apart (3 along, 4 up), the mate's gear overhung.
	pair := mesh.Drive{Mate: 1, Geometry: mesh.Across{}, MateShare: 2}
	m := []Stand{{Point{13, 10}, 0, Point{}}, {Point{13, 11}, 0, Point{}}}
	near(t, "pair", Distance(pair, []Stand{{Centre: Point{10, 8}}}, m), 5, 1e-12)
}

// Two shafts 10 apart, each free by 0.01 to 0.03 along its load. Both pressed to
// each other they come 0.06 nearer at the most and 0.02 at the least; both
// pressed the same way, the one by its least and the other by its most, 0.02
// either way: two clearances are not bound to each other.
func TestSpan(t *testing.T) {
	d := mesh.Drive{Mate: 1, Geometry: mesh.Across{}}
	at := func(x, off, load float64) []Stand { return []Stand{{Point{x, 5}, off, Point{load, 0}}} }
	for _, c := range []struct{ mate, near, far float64 }{{-1, 9.94, 9.98}, {1, 9.98, 10.02}} {
		n, f := Span(d, at(0, 0.01, 1), at(0, 0.03, 1), at(10, 0.01, c.mate), at(10, 0.03, c.mate))
		near(t, "nearest", n, c.near, 1e-12)
		near(t, "farthest", f, c.far, 1e-12)
	}
	d.Mate, d.MateAt = -1, Point{10, 5}
	n, f := Span(d, at(0, 0.01, 1), at(0, 0.03, 1), nil, nil)
	near(t, "fixed mate, nearest", n, 9.97, 1e-12)
	near(t, "fixed mate, farthest", f, 9.99, 1e-12)
}

// Bores 0.1 apart across the line of centres, plates 20 apart, face 3, 20
// degrees: 3 x 0.1 x cos 20 / 20 = 0.0141.
func TestLeanLoss(t *testing.T) {
	l, r := Stand{Point{10, 8}, 0.02, Point{1, 0}}, Stand{Point{10, 8}, 0.12, Point{1, 0}}
	near(t, "loss", LeanLoss(l, r, Point{0, 1}, 20, 3, 20), 0.014095, 1e-6)
}

// hole is a bore of 3.20 and its journal of 3.16 about (10, 8), worn 0.10
// upwards: clearance 0.02 on radius, travel 0.12.
func hole(shaft *job.Shaft, i int) survey.Hole {
	return survey.Hole{Shaft: shaft, Bore: &shaft.Bores[i], Known: true, U: 0.01 * float64(1+i), Middle: Point{10,
		8.05},
		Worn: survey.NewWornBore(Point{10, 8}, 1.60, 1.58, 0.10, math.Pi/2)}
}

func shaft(name string) *job.Shaft {
	return &job.Shaft{Name: name, Journal: job.Ends{Left: dim.Must("3.16"), Right: dim.Must("3.16")},
		Bores: []job.Bore{{Name: name + ".left", Shaft: name, Side: job.Left}, {Name: name + ".right", Shaft: name,
			Side: job.Right}}}
}

// The ways to stand: as new by the clearance, as found at the end of the lobe,
// after the job by half the middle clearance from the new centre.
func TestHoleStands(t *testing.T) {
	s := shaft("drive")
	h := Hole{Survey: hole(s, 0), Load: Point{0, 1}, Clear: [2]float64{0.015, 0.060}, Target: Point{10.2, 8.3}}
	check := func(what string, got Stand, y float64) {
		t.Helper()
		near(t, what, got.At()[1], y, 1e-12)
	}
	check("new", h.New(), 8.02)
	check("found", h.Found(), 8.12)
	check("after", h.After(), 8.3+0.01875)
	check("lifted", h.Lifted(), 8.3-0.01875)
	check("kept", h.Kept(), 8.3+0.12)
	s.Leave = true
	check("left alone", h.After(), 8.12)
	check("left alone, kept", h.Kept(), 8.12)
	s.Leave = false
	// What the ledger has: moved by (1, 0), wear 0.20, a target.
	again := h.with([]float64{11, 8, 1.6, 0.2, math.Pi / 2, 0.02, 12, 9})
	near(t, "again", again.Found().At()[1], 8.22, 1e-12)
	if again.Target != (Point{12, 9}) || h.Target != (Point{10.2, 8.3}) || h.Survey.Worn.O[0] != 10 {
		t.Error("the hole that was asked is another one now")
	}
}

// A hole stays as it is where it is round, was never mended, and its play is
// accepted; a bore keeps its place where its shaft is left, under a cap, or in
// the sound seat of an old bush.
func TestHoleStays(t *testing.T) {
	s := shaft("drive")
	h := Hole{Survey: hole(s, 0)}
	h.Survey.Worn.Round = true
	if h.well(0.139) || !h.well(0.140) {
		t.Error("play 2 x 0.02 + 0.10 = 0.140")
	}
	for what, change := range map[string]func(b *job.Bore){
		"bushed": func(b *job.Bore) { b.Bushed = true }, "mended": func(b *job.Bore) { b.Repaired = true },
		"bush out": func(b *job.Bore) { b.Seat = &job.OldSeat{} },
	} {
		was := s.Bores[0]
		change(&s.Bores[0])
		if h.Keeps = Sits(h.Survey); h.well(1) || h.keepsPlace() {
			t.Errorf("%s: well %v, keeps its place %v", what, h.well(1), h.keepsPlace())
		}
		s.Bores[0] = was
	}
	h.Survey.Worn.Round = false
	if h.well(1) {
		t.Error("worn oval and well")
	}
	for what, change := range map[string]func(){
		"left": func() { s.Leave = true }, "cap": func() { s.Bores[0].Cap = true },
		"sound": func() { s.Bores[0].Seat = &job.OldSeat{Sound: true} },
	} {
		was, leave := s.Bores[0], s.Leave
		change()
		if h.Keeps = Sits(h.Survey); !h.keepsPlace() {
			t.Errorf("%s: goes elsewhere", what)
		}
		s.Bores[0], s.Leave = was, leave
	}
}

// Shafts whose holes are not known are left out; a shaft is pressed away from
// the rails unless the job says otherwise.
func TestAxlesOf(t *testing.T) {
	drive, rear, named := shaft("drive"), shaft("rear"), shaft("named")
	named.LoadTowards = new(float64)
	j := &job.Job{Shafts: []job.Shaft{*drive, *rear, *named}}
	unknown := hole(rear, 0)
	unknown.Known = false
	holes := []survey.Hole{hole(named, 1), hole(drive, 0), hole(drive, 1), unknown}
	holes[2].Worn.O = Point{10.2, 8.4}
	clear := func(h survey.Hole) [2]float64 { return [2]float64{0.01, h.U} }
	x := AxlesOf(j, holes, clear, Sits)
	if len(x) != 2 || x[0].Shaft.Name != "drive" || len(x[0].Holes) != 2 || len(x[1].Holes) != 1 ||
		x[0].TowardsDeg != 90 || x[1].TowardsDeg != 0 {
		t.Fatalf("%+v", x)
	}
	near(t, "load", x[0].Holes[1].Load[1], 1, 1e-15)
	near(t, "clearance", x[0].Holes[1].Clear[1], 0.02, 0)
	m := x.For()[0]
	if m.Name != "drive" || m.Holes != 2 || m.U != 0.02 {
		t.Errorf("%+v", m)
	}
	near(t, "mean x", m.Centre[0], 10.1, 1e-12)
	near(t, "mean y", m.Centre[1], 8.2, 1e-12)
	j.Chassis.RailsAbove = true
	if x = AxlesOf(j, holes, clear, Sits); x[0].TowardsDeg != 270 || x[1].TowardsDeg != 0 {
		t.Errorf("rails above: %v, %v", x[0].TowardsDeg, x[1].TowardsDeg)
	}
}

// Wheelbase and rock are told of the two shafts that the job names, else of the
// first and the last that carry wheels.
func TestCarriers(t *testing.T) {
	var x Axles
	for _, name := range []string{"front", "cog", "middle", "rear"} {
		x = append(x, Axle{Shaft: &job.Shaft{Name: name}, Holes: make([]Hole, 1)})
	}
	told := func(c job.Chassis) string {
		p, ok := carriers(c, x)
		if !ok {
			return ""
		}
		return p[0].Shaft.Name + " " + p[1].Shaft.Name
	}
	between := func(a, b string) job.Chassis {
		return job.Chassis{Wheelbase: &job.Wheelbase{Between: [2]string{a, b}}}
	}
	if got := told(job.Chassis{}); got != "" {
		t.Errorf("no wheels: %s", got)
	}
	x[0].Shaft.WheelDiameter = dim.Must("20")
	if got := told(job.Chassis{}); got != "" {
		t.Errorf("wheels on one: %s", got)
	}
	x[2].Shaft.ContactsApart, x[3].Shaft.WheelDiameter = dim.Must("16"), dim.Must("20")
	if got := told(job.Chassis{}); got != "front rear" {
		t.Errorf("first and last: %s", got)
	}
	if got := told(between("middle", "cog")); got != "middle cog" {
		t.Errorf("named: %s", got)
	}
	if got := told(between("middle", "gone")); got != "" {
		t.Errorf("one of them not known: %s", got)
	}
}
