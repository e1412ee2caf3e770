package world

import (
	"fmt"
)

// measure writes the job: what somebody with these instruments found.
func (m *maker) measure() {
	s := m.stream("head")
	m.job = record().set("rebush", number(1)).set("job", text(fmt.Sprintf("W-%d", m.seed)))
	m.job.set("title", text(fmt.Sprintf("Truck %d of the trial yard", m.seed)))
	if s.yes(0.5) {
		m.job.set("date", text("2026-11-25"))
	}
	m.job.set("units", text(m.unit))
	if m.shop != nil {
		m.job.set("shop", text(shopFile))
	}
	if s.yes(0.7) {
		m.job.set("datum", text("lower left corner of the left plate"))
	}
	m.job.set("chassis", m.chassis())
	shafts := anyOrder()
	for i := range m.truth.Shafts {
		shafts.items = append(shafts.items, m.shaftEntry(&m.truth.Shafts[i]))
	}
	m.job.set("shafts", shafts)
	if len(m.truth.Gears) > 0 {
		gears := anyOrder()
		for i := range m.truth.Gears {
			gears.items = append(gears.items, m.gearEntry(&m.truth.Gears[i]))
		}
		m.job.set("gears", gears)
	} else {
		m.note("no gears")
	}
	if len(m.drawer) > 0 {
		bushes := anyOrder()
		for _, b := range m.drawer {
			bushes.items = append(bushes.items, b.entry)
		}
		m.job.set("bushes", bushes)
	}
	m.owner()
	if m.care > 0 && len(m.traits) > 0 {
		m.note("carelessly measured")
	}
}

func (m *maker) chassis() *node {
	t := &m.truth
	s := m.stream("chassis")
	c := record().set("material", text(t.Material))
	switch {
	case m.missing("chassis/condition"):
		if s.of("unknown").yes(0.5) {
			c.set("condition", text("unknown"))
		}
	case t.Condition == "swollen" && s.of("seen").yes(0.4): // nobody saw it
		c.set("condition", text("sound"))
		m.note("swollen and not seen")
	default:
		c.set("condition", text(t.Condition))
	}
	if t.RailsAbove || s.yes(0.7) {
		c.set("rails", text(map[bool]string{true: "above", false: "below"}[t.RailsAbove]))
	}
	thick := record()
	for k, plate := range plates {
		thick.set(plate, record().set("thickness", size(m.usual(t.Thickness[k]+s.normal(0.01)))))
	}
	c.set("plates", thick)
	outline := record().set("length", size(m.coarse(t.Length))).set("height", size(m.coarse(t.Height)))
	if len(t.Outline) > 4 {
		corners := list()
		for _, p := range t.Outline {
			corners.items = append(corners.items, m.point(p, m.usual))
		}
		outline.set("corners", corners)
	}
	c.set("outline", outline)
	c.set("width", size(m.usual(t.Width)))
	if !m.missing("chassis/current") {
		c.set("current", text(words{{6, "none"}, {4, "axles"}}.of(s.of("current"))))
	}
	if s.yes(0.7) {
		said := map[bool]string{true: "yes", false: "no"}[t.DrilledAsPair]
		if s.yes(0.2) {
			said = "unknown"
		}
		c.set("drilled_together", text(said))
	}
	if s.yes(0.25) {
		c.set("original", text("keep"))
		m.note("the original is to be kept")
	}
	if s.yes(0.25) {
		c.set("temperature", list(number(float64(s.whole(-5, 12))), number(float64(s.whole(25, 60)))))
	}
	m.ties(c)
	return c
}

// ties are what holds this truck against its drawing and a sound sister: unworn
// holes and the wheelbase.
func (m *maker) ties(c *node) {
	t := &m.truth
	s := m.stream("ties")
	in, _ := m.bench.take(s, "centre")
	if len(t.Features) > 0 {
		features := anyOrder()
		design, sister := s.yes(0.6), s.yes(0.4)
		for _, f := range t.Features {
			e := record().set("name", text(f.Name))
			if f.Plate == 1 || s.yes(0.5) {
				e.set("plate", text(plates[f.Plate]))
			}
			e.set("at", m.readPoint(s, in, f.At)).set("diameter", size(m.usual(f.Diameter)))
			if design {
				e.set("design", m.point(f.Design, m.usual))
			}
			if sister {
				e.set("sister", m.point(Point{f.Design[0] + s.normal(0.015), f.Design[1] + s.normal(0.015)}, m.usual))
			}
			features.items = append(features.items, e)
		}
		c.set("features", features)
	}
	if !s.yes(0.5) || m.missing("chassis/wheelbase") {
		return
	}
	var axles []*Shaft
	for i := range t.Shafts {
		if shaft := &t.Shafts[i]; m.isAxle(shaft.Name) && shaft.Bores[0] != nil && shaft.Bores[1] != nil {
			axles = append(axles, shaft)
		}
	}
	if len(axles) < 2 {
		return
	}
	a, b := axles[0], axles[len(axles)-1]
	found := a.Bores[0].Hole.Middle().To(b.Bores[0].Hole.Middle()) + s.normal(1.4*in.u)
	w := record().set("between", anyOrder(text(a.Name), text(b.Name))).set("found", size(m.usual(found)))
	if s.yes(0.7) {
		w.set("sister", size(m.usual(a.Design.To(b.Design)+s.normal(0.02))))
		m.note("a sound sister")
	}
	c.set("wheelbase", w)
}

// isAxle tells an axle from the shafts of its drive.
func (m *maker) isAxle(name string) bool {
	for _, g := range m.truth.Gears {
		if g.Mate == name {
			return false
		}
	}
	return true
}
