package world

import (
	"fmt"
	"math"
)

// edgesEntry measures the metal to the nearest free edges.
func (m *maker) edgesEntry(s stream, b *Bore, e *node) {
	if m.missing(b.Name + "/edges") {
		return
	}
	edges := anyOrder()
	fromCentre := s.yes(0.15) && e.get("centre") != nil
	for _, edge := range b.Edges {
		s := s.of(fmt.Sprint(edge.Deg))
		if edge.Deg != 270 && !s.yes(0.25) {
			continue
		}
		away := edge.Away
		entry := record().set("at", angle(edge.Deg))
		if fromCentre {
			middle := b.Hole.Middle()
			shift := Point{middle[0] - b.Hole.Old[0], middle[1] - b.Hole.Old[1]}
			along, _ := turnedBy(edge.Deg, shift)
			if away > 60 {
				continue
			}
			entry.set("away", size(m.usual(math.Max(away-along+s.normal(0.02), b.Hole.Radius+0.15))))
		} else {
			metal := away - b.Hole.Wall(edge.Deg, 0)
			if metal > 55 {
				continue
			}
			entry.set("metal", size(m.usual(math.Max(metal+s.normal(0.02), 0.3))))
		}
		edges.items = append(edges.items, entry)
	}
	if len(edges.items) > 0 {
		e.set("edges", edges)
	}
}

// aroundIt is what else stands round a hole: oil way, boss, room for a flange,
// a cap that holds it, play felt by hand.
func (m *maker) aroundIt(s stream, shaft *Shaft, k int, b *Bore, e *node) {
	journal := shaft.Journal[k]
	if s.yes(0.25) {
		wide := math.Min(one(s, 0.8, 1, 1.2), journal/2)
		e.set("oil", record().set("at", angle(m.rails)).set("diameter", size(m.coarse(wide))))
	}
	if s.yes(0.04) {
		e.set("boss", size(m.coarse(journal+b.Hole.Depth+s.between(3, 9))))
		m.note("round boss")
	}
	if s.yes(0.06) {
		room := record().set("outside", size(m.coarse(journal+s.between(2.5, 8))))
		if s.yes(0.6) {
			room.set("inside", size(m.coarse(journal+s.between(2.5, 8))))
		}
		e.set("room", room)
		m.note("little room for a flange")
	}
	if s.yes(0.01) {
		e.set("hold", text("cap"))
		m.note("held by a cap")
	}
	if wide := e.get("widest"); s.yes(0.1) && wide != nil {
		if felt := wide.length.mm() - journal + s.normal(0.02); felt > 0.025 && felt < 0.5 {
			e.set("lift", size(m.usual(felt)))
		}
	}
}

// spans are distances to a hole of another shaft in the same plate, from edge
// to edge, as callipers take them.
func (m *maker) spans(s stream, b *Bore, e *node) {
	if !s.yes(0.08) {
		return
	}
	in, named := m.bench.take(s, "width")
	if in.bias != 0 {
		return
	}
	plate := trailingPlate(b.Name)
	for i := range m.truth.Shafts {
		for k, o := range m.truth.Shafts[i].Bores {
			if o == nil || o == b || plates[k] != plate || o.Seat > 0 || b.Seat > 0 {
				continue
			}
			p, q := b.Hole.Old, o.Hole.Old
			deg := math.Atan2(q[1]-p[1], q[0]-p[0]) * 180 / math.Pi
			apart := p.To(q)
			inside := apart - b.Hole.Support(deg) - o.Hole.Support(deg+180)
			if inside < 3.2 || apart > 100 {
				continue
			}
			outside := apart + b.Hole.Support(deg+180) + o.Hole.Support(deg)
			e.set("spans", anyOrder(record().set("to", text(o.Name)).
				set("inside", size(m.read(s, in, inside))).set("outside", size(m.read(s, in, outside)))))
			if named {
				with := e.get("with")
				if with == nil {
					with = record()
					e.set("with", with)
				}
				with.set("spans", text(in.name))
			}
			m.note("distance from edge to edge")
			return
		}
	}
}

func trailingPlate(bore string) string {
	for i := len(bore) - 1; i >= 0; i-- {
		if bore[i] == '.' {
			return bore[i+1:]
		}
	}
	return ""
}
