package world

import (
	"fmt"
	"math"
)

// plate materials, with the thickness that they come in.
type plateKind struct {
	name        string
	low, high   float64
	factoryBush float64 // how often such a truck was bushed when it was made
}

var plateKinds = []share[plateKind]{
	{30, plateKind{"zinc die casting", 2, 4, 0.1}},
	{6, plateKind{"zinc die-casting alloy 3", 2, 4, 0.1}},
	{4, plateKind{"zinc alloy 5", 2, 4, 0.1}},
	{18, plateKind{"brass sheet", 1.2, 3, 0.1}},
	{5, plateKind{"free-cutting brass", 1.5, 3.5, 0.1}},
	{14, plateKind{"mild steel", 0.9, 2, 0.2}},
	{8, plateKind{"aluminium plate", 1.5, 3, 0.3}},
	{5, plateKind{"aluminium die casting", 2, 4, 0.2}},
	{4, plateKind{"grey cast iron", 2.5, 4, 0.1}},
	{2, plateKind{"acetal", 2, 4, 0}},
	{2, plateKind{"magnesium", 2, 4, 0.1}},
	{1, plateKind{"stainless steel", 1, 2, 0.2}},
}

// layOut draws the truck as it was made: plates, shafts, drives.
func (m *maker) layOut() {
	s := m.stream("plates")
	kind := among(s, plateKinds...)
	t := &m.truth
	t.Material = kind.name
	m.note("plates " + kind.name)
	thick := s.between(kind.low, kind.high)
	t.Thickness = [2]float64{thick, thick}
	if s.yes(0.15) {
		t.Thickness[1] = s.between(kind.low, kind.high)
		m.note("plates of two thicknesses")
	}
	t.RailsAbove = s.yes(0.2)
	m.rails = 90
	if t.RailsAbove {
		m.rails = 270
		m.note("rails above")
	}
	t.DrilledAsPair = s.yes(0.6)
	t.Width = t.Thickness[0] + t.Thickness[1] + s.between(6, 24)
	m.condition(kind.name)
	m.bushed = s.yes(kind.factoryBush) && !m.o.Apt
	m.axles()
	m.drives()
	m.outline()
	m.grow()
	m.holes()
	m.features()
}

func (m *maker) condition(material string) {
	s := m.stream("condition")
	m.truth.Condition = "sound"
	switch zinc := len(material) > 3 && material[:4] == "zinc"; {
	case m.o.Apt:
	case s.yes(0.02):
		m.truth.Condition = "cracked"
	case zinc && s.yes(0.06):
		m.truth.Condition = "swollen"
		m.truth.Growth = s.between(0.003, 0.012)
	case zinc && s.yes(0.15):
		m.truth.Growth = s.between(0.0003, 0.002)
	}
	m.note("condition " + m.truth.Condition)
}

// axles stands the axles on one line.
func (m *maker) axles() {
	s := m.stream("axles")
	n := among(s, share[int]{30, 1}, share[int]{55, 2}, share[int]{15, 3})
	m.note(fmt.Sprintf("%d axles", n))
	nominal := one(s, 2.0, 2.5, 3, 3, 3.2, 3.5, 4, 4, 5, 6)
	if m.inch {
		nominal = 25.4 * one(s, 3.0/32, 1.0/8, 1.0/8, 5.0/32, 3.0/16, 3.0/16, 1.0/4)
	}
	base := s.between(18, 45) + 2*nominal
	if s.yes(0.2) {
		base = s.between(10.5+2*nominal, 20+2*nominal)
	}
	names := [][]string{{"drive axle"}, {"front axle", "rear axle"}, {"front axle", "middle axle", "rear axle"}}[n-1]
	for i, name := range names {
		journal := [2]float64{nominal, nominal}
		if s.yes(0.18) {
			journal[s.whole(0, 1)] -= math.Min(0.8, 0.25*nominal)
			m.note("stepped axle")
		}
		m.shaft(name, Point{base * float64(i), 0}, journal, i > 0 && s.yes(0.4))
	}
}

// shaft adds a shaft; its journals are still as they were made.
func (m *maker) shaft(name string, at Point, journal [2]float64, leave bool) {
	m.truth.Shafts = append(m.truth.Shafts, Shaft{Name: name, Design: at, Journal: journal, Leave: leave, Load: m.rails})
	if leave {
		m.note("a shaft that is left alone")
	}
}

// outline lays plates round all that was placed, and moves the frame to their
// lower left corner.
func (m *maker) outline() {
	s := m.stream("outline")
	t := &m.truth
	low, high := Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, shaft := range t.Shafts {
		r := math.Max(shaft.Journal[0], shaft.Journal[1])/2 + 0.1
		if m.bushed {
			r += 1.25
		}
		for k := range 2 {
			low[k], high[k] = math.Min(low[k], shaft.Design[k]-r), math.Max(high[k], shaft.Design[k]+r)
		}
	}
	metal := func() float64 {
		if m.o.Apt {
			return s.between(6, 14)
		}
		if s.yes(0.03) {
			m.note("thin edge")
			return s.between(0.6, 1.4)
		}
		return s.between(2.5, 11)
	}
	left, right, below, above := metal()+1, metal()+1, metal(), metal()
	t.Length = math.Max(math.Ceil(high[0]-low[0]+left+right), 14)
	t.Height = math.Max(math.Ceil(2*(high[1]-low[1]+below+above))/2, 7)
	t.Outline = []Point{{0, 0}, {t.Length, 0}, {t.Length, t.Height}, {0, t.Height}}
	shift := Point{left - low[0], below - low[1]}
	for i := range t.Shafts {
		t.Shafts[i].Design = Point{t.Shafts[i].Design[0] + shift[0], t.Shafts[i].Design[1] + shift[1]}
	}
	for i := range t.Gears {
		g := &t.Gears[i]
		g.At = Point{g.At[0] + shift[0], g.At[1] + shift[1]}
		g.Was = g.At
	}
	if s.yes(0.3) { // upper corners taken off
		cut := 0.5 * math.Min(math.Min(left, right), above)
		low, in := t.Height-cut, t.Length-cut
		t.Outline = []Point{{0, 0}, {t.Length, 0}, {t.Length, low}, {in, t.Height}, {cut, t.Height}, {0, low}}
		m.cut = cut
		m.note("outline by corners")
	}
}

// grow swells everything that is cast, mates too, since they stand in the same
// casting. Designs stay.
func (m *maker) grow() {
	t := &m.truth
	by := 1 + t.Growth
	for i := range t.Outline {
		t.Outline[i] = Point{t.Outline[i][0] * by, t.Outline[i][1] * by}
	}
	t.Length, t.Height = t.Length*by, t.Height*by
	for i := range t.Gears {
		g := &t.Gears[i]
		g.At = Point{g.At[0] * by, g.At[1] * by}
		g.Was = g.At
	}
}

// holes drills both plates and takes the journals to size.
func (m *maker) holes() {
	t := &m.truth
	for i := range t.Shafts {
		shaft := &t.Shafts[i]
		s := m.stream("holes " + shaft.Name)
		first := Point{s.normal(0.012), s.normal(0.012)}
		apart := m.stream("plates apart").between(0.02, 0.06)
		if t.DrilledAsPair {
			apart = m.stream("drilled as a pair").between(0.004, 0.025)
		}
		single := len(t.Shafts) > 2 && i == len(t.Shafts)-1 && s.yes(0.06) // runs in one plate only
		only := s.whole(0, 1)
		for k, plate := range plates {
			off := Point{first[0] + float64(k)*s.normal(apart), first[1] + float64(k)*s.normal(apart)}
			play, round := s.between(0.01, 0.05), s.between(0, 0.002)
			b := &Bore{Name: shaft.Name + "." + plate}
			b.Centre = Point{(shaft.Design[0] + off[0]) * (1 + t.Growth), (shaft.Design[1] + off[1]) * (1 + t.Growth)}
			b.Hole = Hole{Old: b.Centre, Radius: (shaft.Journal[k] + play) / 2, Lobes: round, LobesAt: s.between(0, 120)}
			if m.bushed {
				wall := one(s, 0.75, 1.0, 1.25)
				b.Seat = math.Round(20*(shaft.Journal[k]+2*wall))/20 + s.between(0, 0.02)
			}
			if single && k != only {
				continue
			}
			shaft.Bores[k] = b
		}
		if single {
			m.note("a shaft with one hole")
		}
	}
	if m.bushed {
		m.note("bushed when it was made")
	}
}

// features adds unworn holes that tie plates, drawing and sister together.
func (m *maker) features() {
	s := m.stream("features")
	if !s.yes(0.35) {
		return
	}
	m.note("unworn holes")
	t := &m.truth
	for i, x := range []float64{0, 1} {
		r := s.between(0.8, 1.2)
		in := r + 0.5 + m.cut
		at := Point{in + x*(t.Length/(1+t.Growth)-2*in), t.Height/(1+t.Growth) - in}
		f := Feature{Name: []string{"first frame hole", "second frame hole"}[i], Design: at, Diameter: 2 * r}
		f.At = Point{at[0]*(1+t.Growth) + s.normal(0.01), at[1]*(1+t.Growth) + s.normal(0.01)}
		if s.yes(0.2) {
			f.Plate = 1
		}
		t.Features = append(t.Features, f)
	}
}
