package world

import "math"

// owner is what the owner says, and what another truck would cost.
func (m *maker) owner() {
	s := m.stream("owner")
	if s := s.of("complaint"); !m.missing("complaint") {
		deepest := 0.0
		for _, shaft := range m.truth.Shafts {
			for _, b := range shaft.Bores {
				if b != nil {
					deepest = math.Max(deepest, b.Hole.Depth)
				}
			}
		}
		noisy := s.yes(0.2 + math.Min(0.7, 3*deepest))
		binds := s.yes(0.3)
		if m.o.Apt { // what teeth that jam do is felt
			binds = s.of("felt").yes(map[bool]float64{true: 0.9, false: 0.08}[m.jams])
		}
		said := record().set("binds", yesNo(binds)).set("noisy", yesNo(noisy)).set("rubs", yesNo(s.yes(0.15)))
		m.job.set("complaint", said)
	}
	if s := s.of("symptoms"); !m.missing("symptoms") {
		odd := func(good string, bad ...string) *node {
			if s.yes(0.88) {
				return text(good)
			}
			return text(one(s, append(bad, "unknown")...))
		}
		m.job.set("symptoms", record().set("rims", odd("tight", "loose")).set("hubs", odd("tight", "loose")).
			set("gauge", odd("correct", "wide", "narrow")).set("ohms", odd("open", "leaking", "shorted")))
	}
	if s.yes(0.7) {
		swap := record().set("price", number(float64(s.whole(4, 40)*5)))
		if s.yes(0.7) {
			swap.set("hours", number(one(s, 0.3, 0.5, 1)))
		}
		swap.set("second_hand", yesNo(s.yes(0.6)))
		if s.yes(0.2) {
			swap.set("chance", number(one(s, 0.6, 0.7, 0.9)))
		}
		m.job.set("swap", swap)
		m.note("another truck could be had")
	}
	if s.yes(0.7) {
		m.job.set("value", number(float64(s.whole(4, 60)*5)))
	}
	m.wishes(s)
}

// wishes are choices that the owner or the shop made beforehand.
func (m *maker) wishes(s stream) {
	var bores []string
	for _, shaft := range m.truth.Shafts {
		for _, b := range shaft.Bores {
			if b != nil && !shaft.Leave {
				bores = append(bores, b.Name)
			}
		}
	}
	if m.truth.Material == "magnesium" && m.stream("accept").yes(0.5) {
		m.job.set("accept", list(text("magnesium")))
		m.note("magnesium accepted")
	}
	if len(bores) == 0 {
		return
	}
	if len(m.drawer) > 0 && s.yes(0.05) {
		m.job.set("choose", record().set(one(s, bores...), text(one(s, m.drawer...).entry.get("code").text)))
		m.note("bush chosen beforehand")
	}
	if s.yes(0.04) {
		finish := one(s, "as delivered", "ream", "mandrel", "to its own axle")
		m.job.set("finish", record().set(one(s, bores...), text(finish)))
		m.note("finish chosen beforehand")
	}
}
