package world

import "math"

// wear lets the truck run: journals thin, holes grow towards the load, and some
// were repaired or got other mates since.
func (m *maker) wear() {
	t := &m.truth
	for i := range t.Shafts {
		m.wearShaft(&t.Shafts[i])
	}
	for i := range t.Gears {
		m.mate(&t.Gears[i])
	}
	if m.o.Apt {
		m.held()
	}
	for i := range t.Shafts {
		for _, b := range t.Shafts[i].Bores {
			if b != nil {
				m.edges(b)
			}
		}
	}
}

func (m *maker) wearShaft(shaft *Shaft) {
	s := m.stream("wear " + shaft.Name)
	class := words{{10, "none"}, {25, "light"}, {38, "middling"}, {20, "heavy"}, {7, "very heavy"}}.of(s)
	if shaft.Leave {
		class = words{{3, "none"}, {1, "light"}}.of(s)
	}
	limits := map[string][2]float64{"none": {0, 0.004}, "light": {0.01, 0.035}, "middling": {0.035, 0.12},
		"heavy": {0.12, 0.3}, "very heavy": {0.3, 0.65}}[class]
	deepest := s.between(limits[0], limits[1])
	m.note("wear " + class)
	// The pull of the teeth and of the track turns the load out of the upright.
	shaft.Load = turned(m.rails + s.normal(12))
	if s.yes(0.05) {
		shaft.Load = turned(m.rails + s.between(-60, 60))
		m.note("load to one side")
	}
	opposite, lonely, fan := s.yes(0.06), s.yes(0.07), s.yes(0.07)
	if class == "none" {
		opposite, lonely, fan = false, false, false
	}
	if opposite {
		m.note("worn on opposite sides")
	}
	if lonely {
		m.note("one hole of two is worn")
	}
	if fan {
		m.note("two loads")
	}
	for k, b := range shaft.Bores {
		side := m.stream("wear " + shaft.Name + "." + plates[k])
		lost := side.between(0, 0.25) * math.Min(deepest, 0.12)
		shaft.Journal[k] -= lost
		if b == nil {
			continue
		}
		b.Hole.Journal = shaft.Journal[k] / 2
		b.Hole.Depth = deepest * side.between(0.7, 1.15)
		if lonely && k == 1 {
			b.Hole.Depth = side.between(0, 0.01)
		}
		deg := shaft.Load + side.normal(6)
		if opposite && k == 1 {
			deg += 180
		}
		b.Hole.Towards = [2]float64{deg, deg}
		if fan {
			b.Hole.Towards[1] = deg + side.between(25, 70)
		}
		m.repair(b, shaft.Journal[k]/2)
	}
	m.passes(shaft)
}

// repair puts some holes elsewhere: somebody bushed or drilled them, and they
// wore again.
func (m *maker) repair(b *Bore, journal float64) {
	s := m.stream("repair " + b.Name)
	if b.Seat > 0 || !s.yes(0.06) {
		return
	}
	b.Repaired = true
	b.Hole.Old = Point{b.Centre[0] + s.normal(0.12), b.Centre[1] + s.normal(0.12)}
	b.Hole.Radius = journal + s.between(0.01, 0.05)
	b.Hole.Depth *= s.between(0.1, 0.7)
	m.note("repaired before")
}

// passes decides what has to go through a hole beside the journal.
func (m *maker) passes(shaft *Shaft) {
	s := m.stream("passes " + shaft.Name)
	for k := range 2 {
		if s.yes(0.15) {
			shaft.MustPass[k] = shaft.Journal[k] + s.between(0.005, 0.05)
			m.note("something thicker must pass")
		}
	}
}

// mate moves some mates after the holes wore: a new worm, other bearings.
func (m *maker) mate(g *Gear) {
	if g.Mate != "" {
		return
	}
	s := m.stream("mate " + g.Name)
	if !s.yes(0.12) {
		return
	}
	g.Moved = true
	g.At[1] += s.normal(0.05)
	if g.Screw == nil {
		g.At[0] += s.normal(0.05)
	}
	m.note("mate moved since")
}

// edges are the free edges round a hole: the outline, and sometimes a slot that
// comes nearer.
func (m *maker) edges(b *Bore) {
	s := m.stream("edges " + b.Name)
	for _, deg := range []float64{270, 90, 0, 180} {
		away := reach(m.truth.Outline, b.Hole.Old, deg)
		if deg == 270 && s.yes(0.04) {
			if cut := b.Hole.Radius + b.Hole.Depth + s.between(0.5, 3); cut < away {
				away = cut
				m.note("slot near the hole")
			}
		}
		b.Edges = append(b.Edges, Edge{deg, away})
	}
}

// reach is how far a closed outline lies from a point in a direction.
func reach(outline []Point, from Point, deg float64) float64 {
	best := math.Inf(1)
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		// Along the ray and square to it, the side runs from (ua, va) to (ub, vb).
		ua, va := turnedBy(deg, Point{a[0] - from[0], a[1] - from[1]})
		ub, vb := turnedBy(deg, Point{b[0] - from[0], b[1] - from[1]})
		if va*vb > 0 || va == vb {
			continue
		}
		if u := ua + (ub-ua)*va/(va-vb); u >= 0 {
			best = math.Min(best, u)
		}
	}
	return best
}

// turnedBy gives a vector along a direction and square to it.
func turnedBy(deg float64, v Point) (along, square float64) {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	return v[0]*cos + v[1]*sin, v[1]*cos - v[0]*sin
}
