package world

import (
	"fmt"
	"math"
)

// shaftEntry measures one shaft.
func (m *maker) shaftEntry(shaft *Shaft) *node {
	s := m.stream("shaft " + shaft.Name)
	e := record().set("name", text(shaft.Name))
	if shaft.Leave {
		e.set("do", text("leave"))
	} else if s.yes(0.2) {
		e.set("do", text("auto"))
	}
	micrometer := instrument{u: 0.004, stepMM: 0.005, stepInch: 0.0002}
	if in, _ := m.bench.take(s, "outside"); in.name == "micrometer" {
		micrometer = in
	}
	journal := [2]ticks{}
	for k := range 2 {
		journal[k] = m.read(s, micrometer, shaft.Journal[k])
	}
	ends := func(t [2]ticks, given [2]bool) *node {
		r := record()
		for k, plate := range plates {
			if given[k] {
				r.set(plate, size(t[k]))
			}
		}
		return r
	}
	if journal[0] == journal[1] || abs(shaft.Journal[0]-shaft.Journal[1]) < 0.01 && s.yes(0.5) {
		journal[1] = journal[0]
		e.set("journal", size(journal[0]))
	} else {
		e.set("journal", ends(journal, [2]bool{true, true}))
	}
	m.ends[shaft.Name] = journal
	for k, b := range shaft.Bores {
		if b != nil {
			m.journal[b.Name] = journal[k]
		}
	}
	pass := [2]ticks{}
	for k := range 2 {
		pass[k] = max(m.read(s, micrometer, shaft.MustPass[k]), journal[k])
	}
	if given := [2]bool{shaft.MustPass[0] > 0, shaft.MustPass[1] > 0}; given[0] || given[1] {
		e.set("must_pass", ends(pass, given))
	}
	if !m.missing(shaft.Name + "/state") {
		states := words{{80, "good"}, {8, "ridged"}, {5, "pitted"}, {4, "out of round"}, {3, "bent"}}
		e.set("journal_state", text(states.of(s.of("state"))))
	}
	m.inUse(s, shaft, e)
	bores := record()
	bores.block = true
	for k, b := range shaft.Bores {
		if b != nil {
			bores.set(plates[k], m.boreEntry(shaft, k, b))
		}
	}
	return e.set("bores", bores)
}

// inUse is what a shaft carries, how fast it turns, and what sits on it.
func (m *maker) inUse(s stream, shaft *Shaft, e *node) {
	axle := m.isAxle(shaft.Name)
	if axle && s.yes(0.5) {
		e.set("insulated", text(one(s, "left", "right", "none")))
	}
	rpm := math.Round(s.between(30, 500))
	if !axle {
		rpm *= 6
	}
	if !m.missing(shaft.Name + "/rpm") {
		e.set("rpm", number(rpm))
	}
	if !m.missing(shaft.Name + "/load") {
		force := math.Round(10*s.of("load").between(0.8, 9)) / 10
		e.set("load", text(fmt.Sprintf("%g N", force)))
		if m.unit == "in" && s.of("ounces").yes(0.7) {
			e.set("load", text(fmt.Sprintf("%g ozf", math.Round(force/0.278))))
		}
	}
	if abs(math.Remainder(shaft.Load-m.rails, 360)) > 25 && s.yes(0.7) {
		e.set("load_towards", angle(5*math.Round(shaft.Load/5)))
	}
	if !axle {
		return
	}
	wide := m.truth.Width
	if s.yes(0.7) {
		e.set("contacts_apart", size(m.coarse(wide+s.between(4, 20))))
		e.set("wheel_diameter", size(m.coarse(shaft.Journal[0]*s.between(3, 6))))
	}
	if s.yes(0.6) {
		play := s.between(0.2, 0.6) + one(s, 0, 0, 1, 2.0)
		washers := anyOrder()
		for range s.whole(0, 4) {
			thick := one(s, 0.25, 0.5, 0.8, 1, 1)
			washers.items = append(washers.items, size(m.usual(thick)))
			play += thick
		}
		e.set("hub_to_hub", size(m.usual(wide+play)))
		if len(washers.items) > 0 {
			e.set("washers", washers)
		}
	}
	m.frames(s, shaft, e)
	m.seldom(s.of("seldom"), shaft, e)
}

// seldom is what few write down of an axle.
func (m *maker) seldom(s stream, shaft *Shaft, e *node) {
	if s.of("material").yes(0.12) {
		e.set("material", text(one(s.of("which steel"), "silver steel", "mild steel", "stainless steel")))
	}
	if s.of("pull").yes(0.12) {
		e.set("pull", text(fmt.Sprintf("%g N", math.Round(10*s.of("how much").between(0.2, 4))/10)))
	}
	if s.of("gauge").yes(0.2) {
		e.set("back_to_back", size(m.usual(m.truth.Width+s.of("gauge read").between(2, 14))))
	}
	if len(m.truth.Shafts) > 1 && s.of("rods").yes(0.04) {
		e.set("rods", yesNo(true))
		m.note("coupled by rods")
	}
	if s.of("unworn").yes(0.12) {
		ends := record()
		for k, plate := range plates {
			beside := shaft.Journal[k] + s.of("beside "+plate).between(0.005, 0.06)
			ends.set(plate, size(max(m.fine(beside), m.ends[shaft.Name][k])))
			shaft.MustPass[k] = math.Max(shaft.MustPass[k], beside) // the same end goes in through the hole
		}
		e.set("unworn", ends)
		m.note("thickness beside the worn run")
	}
}

// frames are the centre by the drawing and on a sound sister.
func (m *maker) frames(s stream, shaft *Shaft, e *node) {
	if s.yes(0.15) {
		e.set("design", m.point(shaft.Design, m.usual))
		m.note("centre by the drawing")
	}
	if s.yes(0.1) {
		e.set("sister", m.point(Point{shaft.Design[0] + s.normal(0.015), shaft.Design[1] + s.normal(0.015)}, m.usual))
		m.note("centre on a sister")
	}
}

// readPoint reads a place; both coordinates err alike.
func (m *maker) readPoint(s stream, in instrument, p Point) *node {
	return list(placeX(m.read(s, in, p[0])), placeY(m.read(s, in, p[1])))
}
