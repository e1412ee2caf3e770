package world

import (
	"fmt"
	"math"
)

// boreEntry measures one hole in one of the ways there are.
func (m *maker) boreEntry(shaft *Shaft, k int, b *Bore) *node {
	s := m.stream("bore " + b.Name)
	e := record()
	way := m.way(s, shaft, b)
	m.note("measured by " + way)
	with := record()
	s = s.of(way)
	switch way {
	case "points", "a file of points":
		m.probed(s, b, e, with, way)
	case "four walls":
		m.fourWalls(s, b, e, with)
	case "its old seat":
		m.oldSeat(s, b, e, with)
	default:
		m.diameters(s, b, e, with, way)
	}
	m.direction(s, b, e)
	if b.Repaired && !m.missing(b.Name+"/repaired") {
		e.set("repaired", yesNo(true))
	}
	if way == "a bush still in" {
		e.set("bushed", yesNo(true))
	}
	if len(with.items) > 0 {
		e.set("with", with)
	}
	m.edgesEntry(s.of("edges"), b, e)
	m.aroundIt(s.of("around it"), shaft, k, b, e)
	m.spans(s.of("spans"), b, e)
	return e
}

// way chooses how a hole was measured.
func (m *maker) way(s stream, shaft *Shaft, b *Bore) string {
	if b.Seat > 0 {
		if m.stream("bush out " + shaft.Name).yes(0.5) { // both of a shaft, or none
			return "its old seat"
		}
		return "a bush still in"
	}
	if shaft.Leave {
		return "diameters"
	}
	return words{{55, "diameters"}, {13, "points"}, {7, "a file of points"}, {9, "four walls"},
		{10, "pins"}, {6, "diameters alone"}}.of(s)
}

// diameters are the centre as found with the widest and the narrowest, or the
// pins that go and stop.
func (m *maker) diameters(s stream, b *Bore, e, with *node, way string) {
	h := b.Hole
	if way != "diameters alone" && !m.missing(b.Name+"/centre") {
		in, named := m.bench.take(s.of("centre"), "centre")
		if named {
			with.set("centre", text(in.name))
		}
		e.set("centre", m.readPoint(s.of("centre read"), in, h.Middle()))
	}
	wide, _ := h.Widest()
	narrow, _ := h.Narrowest()
	in, named := m.bench.take(s, "width")
	widest, narrowest := m.readBore(s.of("widest"), in, wide, b), m.readBore(s.of("narrowest"), in, narrow, b)
	if widest < narrowest { // nobody writes the larger one down as the smaller
		widest, narrowest = narrowest, widest
	}
	if !m.missing(b.Name + "/widest") {
		e.set("widest", size(widest))
		if named {
			with.set("widest", text(in.name))
		}
	}
	if way == "pins" && m.pinned(s.of("pins"), e, narrow) {
		return
	}
	if !m.missing(b.Name + "/narrowest") {
		e.set("narrowest", size(narrowest))
		if named {
			with.set("narrowest", text(in.name))
		}
	}
	if h.Depth > 0.01 && !m.missing(b.Name+"/widest_at") {
		e.set("widest_at", angle(m.widestAt(s, h)))
		m.note("direction of the widest")
	}
}

// readBore reads a diameter; what comes out smaller than the journal that turns
// in it is measured again.
func (m *maker) readBore(s stream, in instrument, mm float64, b *Bore) ticks {
	least := m.journal[b.Name] - ticks(0.019*float64(perMM))
	for range 20 {
		if t := m.read(s, in, mm); t >= least {
			return t
		}
		m.note("a reading refused at the bench")
	}
	return m.rounded(mm, in.stepMM, in.stepInch)
}

// pinned tries the pins of the shop: the largest that goes in, and the next.
func (m *maker) pinned(s stream, e *node, narrow float64) bool {
	p := m.bench.pins
	if p == nil || narrow < p.from+p.step || narrow > p.to-p.step {
		return false
	}
	n := math.Floor((narrow + s.normal(p.u) - p.from) / p.step)
	goes := ticks(math.Round((p.from + n*p.step) * float64(perMM)))
	stops := goes + ticks(math.Round(p.step*float64(perMM)))
	e.set("pins", record().set("goes", size(goes)).set("stops", size(stops)))
	return true
}

// widestAt is the direction of the widest as an eye judges it.
func (m *maker) widestAt(s stream, h Hole) float64 {
	_, deg := h.Widest()
	return turned(5 * math.Round((deg+s.of("widest at").normal(8))/5))
}

// direction is the side that the hole has worn to, as an eye judges it.
func (m *maker) direction(s stream, b *Bore, e *node) {
	h := b.Hole
	if h.Depth < 0.008 || m.missing(b.Name+"/worn_to") {
		return
	}
	at := m.widestAt(s, h)
	s = s.of("worn to")
	step := one(s, 5.0, 5, 15, 15, 45)
	seen := func(deg float64) float64 { return turned(step * math.Round((deg+s.normal(8))/step)) }
	from, to := seen(h.Towards[0]), seen(h.Towards[1])
	if h.Towards[0] == h.Towards[1] && abs(math.Remainder(from-at, 180)) > 40 {
		// The eye that saw the one sees the other at one of its ends.
		from = turned(at)
		if abs(math.Remainder(from-h.Towards[0], 360)) > 90 {
			from = turned(at + 180)
		}
	}
	if from != to && h.Towards[0] != h.Towards[1] {
		e.set("worn_to", anyOrder(angle(from), angle(to)))
		return
	}
	e.set("worn_to", angle(from))
}

// probed touches the wall all round.
func (m *maker) probed(s stream, b *Bore, e, with *node, way string) {
	in, named := m.bench.take(s, "probe")
	if named {
		with.set("probed", text(in.name))
	}
	n := one(s, 8, 12, 16, 16, 24)
	if way == "a file of points" {
		n = one(s, 16, 24, 36)
	}
	ball := 0.0
	if way == "a file of points" && s.yes(0.7) {
		ball = one(s, 0.5, 1)
	}
	stylus := m.rounded(ball, 0.1, 0.005)
	ball = stylus.mm()
	first := s.between(0, 360)
	var pairs []*node
	for i := range n {
		deg := first + 360*float64(i)/float64(n)
		p := b.Hole.Old.Plus(deg, b.Hole.Wall(deg, ball/2)+s.normal(in.u))
		pairs = append(pairs, m.point(p, func(mm float64) ticks { return m.rounded(mm, in.stepMM, in.stepInch) }))
	}
	if way == "points" {
		e.set("probed", anyOrder(pairs...))
		return
	}
	name := fmt.Sprintf("points-%d.csv", len(m.points)+1)
	m.points[name] = pairs
	file := record().set("file", text(name))
	if ball > 0 {
		file.set("stylus", size(stylus))
	}
	e.set("probed", file)
}

// fourWalls are the places at which the wall is met from within, with the old
// diameter beside them.
func (m *maker) fourWalls(s stream, b *Bore, e, with *node) {
	h := b.Hole
	in, named := m.bench.take(s, "centre")
	if named {
		with.set("walls", text(in.name))
	}
	at := [4]ticks{}
	for i, deg := range []float64{180, 0, 270, 90} {
		at[i] = m.read(s, in, h.Old[i/2]+float64(2*(i%2)-1)*h.Support(deg))
	}
	for i := 0; i < 4; i += 2 { // no two walls are nearer than the journal between them
		at[i+1] = max(at[i+1], at[i]+m.journal[b.Name]-ticks(0.04*float64(perMM)))
	}
	e.set("walls", record().set("left", placeX(at[0])).set("right", placeX(at[1])).
		set("bottom", placeY(at[2])).set("top", placeY(at[3])))
	narrow, _ := h.Narrowest()
	if s.yes(0.5) && m.pinned(s.of("pins"), e, narrow) {
		return
	}
	width, named := m.bench.take(s, "width")
	e.set("narrowest", size(m.readBore(s, width, narrow, b)))
	if named {
		with.set("narrowest", text(width.name))
	}
}

// oldSeat is the seat of a bush that is out.
func (m *maker) oldSeat(s stream, b *Bore, e, with *node) {
	in, named := m.bench.take(s, "centre")
	width, _ := m.bench.take(s, "width")
	seat := record().set("diameter", size(m.read(s, width, b.Seat))).set("centre", m.readPoint(s, in, b.Centre))
	if !m.missing(b.Name + "/sound") {
		seat.set("sound", yesNo(s.of("sound").yes(0.85)))
	}
	e.set("seat", seat)
	if named {
		with.set("seat", text(in.name))
	}
}
