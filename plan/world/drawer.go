package world

import (
	"fmt"
	"math"
	"slices"
)

// bush is one entry of the drawer: what is written of it, and its outside for
// the tools of the shop.
type bush struct {
	entry *node
	od    float64
}

// openDrawer fills the drawer: nothing at all, a few that may fit, or rows of
// them. A shop that prepared has bushes for every end that is worn, and the
// tools for them.
func (m *maker) openDrawer() {
	s := m.stream("drawer")
	if m.prepared = m.stream("prepared").yes(0.45) || m.o.Apt; m.prepared {
		m.note("a shop that prepared")
		m.fitting()
	}
	kind := words{{12, "empty"}, {30, "a few"}, {38, "usual"}, {20, "full"}}.of(s)
	m.note("drawer " + kind)
	n := map[string]int{"a few": s.whole(1, 2), "usual": s.whole(2, 5), "full": s.whole(6, 10)}[kind]
	for i := range n {
		m.drawer = append(m.drawer, m.bush(i))
	}
	if m.prepared {
		m.drawer = shuffle(s.of("order"), m.drawer)
	}
	if kind != "empty" && s.yes(0.4) || kind == "empty" && s.yes(0.3) {
		m.drawer = append(m.drawer, m.turnedBush(s))
	}
}

// journals are the ends that want a bush, of those shafts that may be touched.
func (m *maker) journals() (d []float64, thick []float64) {
	for _, shaft := range m.truth.Shafts {
		if shaft.Leave {
			continue
		}
		for k, b := range shaft.Bores {
			if b != nil {
				d, thick = append(d, math.Max(shaft.Journal[k], shaft.MustPass[k])), append(thick, m.truth.Thickness[k])
			}
		}
	}
	return d, thick
}

// fitting lays in bushes for this truck: for each end, unless one that is there
// goes on it too, a bore a little over it, a wall that leaves room for a press.
func (m *maker) fitting() {
	d, thick := m.journals()
	var have []float64
	for i := range d {
		if slices.ContainsFunc(have, func(h float64) bool { return abs(h-d[i]) < 0.02 }) {
			continue
		}
		have = append(have, d[i])
		s := m.stream(fmt.Sprintf("fitting bush %d", i))
		wall := one(s, 0.8, 0.9, 1, 1.1)
		od := math.Ceil(2*(d[i]+2*wall)-0.2) / 2
		if m.inch {
			od = math.Ceil(32*(d[i]+2*wall)/25.4-0.2) / 32 * 25.4
		}
		b := bush{record().set("code", text(fmt.Sprintf("laid in %d", len(have)))), od}
		porous := s.yes(0.5)
		low := d[i] + s.between(0.025, 0.05)
		over := s.between(0.018, 0.028)
		b.entry.set("bore", list(size(m.fine(low)), size(m.fine(low+s.between(0.006, 0.012)))))
		b.entry.set("od", list(size(m.fine(od+over)), size(m.fine(od+over+s.between(0.004, 0.008)))))
		m.flange(s, b.entry, thick[i], od, thick[i] < 0.55*od)
		b.entry.set("material", text(map[bool]string{true: "sintered bronze", false: "bearing bronze C93200"}[porous]))
		m.price(s, b.entry, 0.3, 3)
		least := 2
		if m.o.Apt {
			least = 8
		}
		b.entry.set("on_hand", number(float64(s.whole(least, 12))))
		m.drawer = append(m.drawer, b)
	}
}

func (m *maker) bush(i int) bush {
	s := m.stream(fmt.Sprintf("bush %d", i))
	d, thick := m.journals()
	if len(d) == 0 {
		d, thick = []float64{3}, []float64{2}
	}
	end := i % len(d)
	if s.yes(0.3) {
		end = s.whole(0, len(d)-1)
	}
	kind := words{{45, "porous"}, {35, "solid"}, {12, "plastic"}, {8, "brass"}}.of(s)
	material := map[string]string{
		"porous": one(s, "sintered bronze", "SAE 841", "porous bronze"), "brass": "free-cutting brass",
		"solid":   one(s, "bearing bronze C93200", "phosphor bronze", "bearing bronze"),
		"plastic": one(s, "acetal", "nylon", "PTFE"),
	}[kind]
	m.note("bush " + kind)
	// A bore over the journal: of its size, a step over it, or one of a set that
	// is none of its.
	bore := math.Ceil(10*(d[end]+0.005)) / 10
	switch {
	case m.inch:
		bore = math.Ceil(64*(d[end]-0.02)/25.4) / 64 * 25.4
	case s.yes(0.35):
		bore = math.Ceil(2*(d[end]-0.06)) / 2
	case s.yes(0.2):
		bore += one(s, -0.5, 0.5, 1)
	}
	wall := one(s, 0.75, 0.9, 1.0, 1.0, 1.25, 1.5)
	od := math.Ceil(2*(bore+2*wall)-0.01) / 2
	if m.inch {
		od = math.Ceil(32*(bore+2*wall)/25.4-0.01) / 32 * 25.4
	}
	b := bush{record().set("code", text(fmt.Sprintf("drawer %d", i+1))), od}
	m.sizes(s, b.entry, kind, bore, od)
	m.flange(s, b.entry, thick[end], od, s.yes(0.6))
	b.entry.set("material", text(material))
	m.price(s, b.entry, 0.3, 3)
	if f := s.of("finish"); f.yes(0.1) {
		b.entry.set("wall_finish_um", number(one(f, 2.5, 4, 6.3)))
	}
	if s.yes(0.8) {
		on := among(s, share[int]{1, 0}, share[int]{2, 1}, share[int]{2, 2}, share[int]{5, s.whole(3, 20)})
		b.entry.set("on_hand", number(float64(on)))
		if on < 2 {
			m.note("fewer than two on hand")
		}
	}
	return b
}

// sizes writes bore and outside: nominal with a class, measured limits, or one
// measured size.
func (m *maker) sizes(s stream, entry *node, kind string, bore, od float64) {
	how := words{{50, "class"}, {35, "limits"}, {15, "one size"}}.of(s)
	if m.inch && how == "class" {
		how = "limits"
	}
	m.note("bushes by " + how)
	switch how {
	case "class":
		inside := map[string]string{
			"porous": one(s, "F7", "G7"), "solid": one(s, "E6", "F7", "H7"), "plastic": "E9", "brass": "H8",
		}[kind]
		outside := map[string]string{
			"porous": one(s, "r6", "s7"), "solid": one(s, "s6", "r6", "p6"), "plastic": "h9", "brass": one(s, "p6", "k6"),
		}[kind]
		entry.set("bore", size(m.usual(bore))).set("bore_class", text(inside))
		entry.set("od", size(m.usual(od))).set("od_class", text(outside))
	case "limits":
		low, high := bore+s.between(0, 0.02), od+s.between(0.005, 0.03)
		entry.set("bore", list(size(m.fine(low)), size(m.fine(low+s.between(0.006, 0.015)))))
		entry.set("od", list(size(m.fine(high)), size(m.fine(high+s.between(0.006, 0.015)))))
	default:
		entry.set("bore", size(m.fine(bore+s.between(0, 0.03))))
		entry.set("od", size(m.fine(od+s.between(0, 0.03))))
	}
}

func (m *maker) flange(s stream, entry *node, thick, od float64, flanged bool) {
	if !flanged {
		length := math.Max(thick*one(s, 0.8, 1, 1, 1.3), 0.35*od)
		entry.set("length", size(m.coarse(length)))
		m.note("bush without a flange")
		return
	}
	t := one(s, 0.5, 0.8, 1)
	length := math.Max(math.Max(thick*s.between(0.8, 1.1)+t, 2*t), 0.3*od)
	entry.set("length", size(m.coarse(length)))
	entry.set("flange", record().set("od", size(m.coarse(od+s.between(1.2, 2.5)))).set("thickness", size(m.coarse(t))))
	if s.yes(0.6) {
		entry.set("runout", size(m.usual(s.between(0.01, 0.05))))
	}
	m.note("bush with a flange")
}

func (m *maker) price(s stream, entry *node, low, high float64) {
	if s.yes(0.75) {
		entry.set("price", number(math.Round(100*s.between(low, high))/100))
		return
	}
	m.note("missing price")
}

// turnedBush is an offer to turn any size.
func (m *maker) turnedBush(s stream) bush {
	m.note("bush turned")
	entry := record().set("code", text("own turning")).set("make", text("turned"))
	entry.set("material", text(one(s, "bearing bronze C93200", "phosphor bronze", "free-cutting brass", "acetal")))
	m.price(s, entry, 0.8, 5)
	return bush{entry, 0}
}
