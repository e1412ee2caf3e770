package plan

import (
	"slices"

	"rebush/fits/finding"
	"rebush/fits/material"
	"rebush/fits/say"
	"rebush/fits/table"
)

// burning stops a job whose chips would burn: a chassis of magnesium before any
// figure is looked at.
func (m *maker) burning() {
	if m.chassis.Kind != material.MagnesiumCasting {
		return
	}
	m.p.Findings.Raise(finding.Stop, "job/magnesium", m.j.PlaceAt("chassis", "chassis/material"),
		"the casting is magnesium: its chips burn, and water, foam and CO2 feed the fire", say.Words(m.stops["magnesium"].Instead))
	if !m.accepts("magnesium") {
		m.forbidden = "magnesium"
	}
}

// burningBush stops a job that would turn, face or bore a bush of magnesium.
func (m *maker) burningBush() {
	for _, b := range m.bores {
		if b.chosen == nil {
			continue
		}
		if mat, err := m.materials.Find(b.chosen.Bush.Metal.Name); err == nil && mat.Kind == material.MagnesiumCasting {
			m.say(finding.Stop, "job/magnesium", b, say.F("bush %s is magnesium: its chips burn, and water, foam and CO2 feed the fire", b.chosen.Bush.Code),
				say.Words(m.stops["magnesium"].Instead))
		}
	}
}

// accepts says whether the job takes a stop upon itself.
func (m *maker) accepts(rule string) bool {
	return m.stops[rule].Accept && slices.Contains(m.j.Accept, rule)
}

// lower makes a caution of each stop that the job takes upon itself, and says
// whether any stop is left.
func (m *maker) lower() (stops bool) {
	for i := range m.p.Findings {
		f := &m.p.Findings[i]
		if f.Level == finding.Stop && m.accepts(f.Rule.Name()) {
			f.Level = finding.Caution
			f.Text += "; the job accepts it"
			f.Fix = say.F("take `%s` out of accept: and the job stops here", f.Rule)
		}
	}
	return m.p.Findings.Stops()
}

// nothingToAccept says where a job accepts a stop that did not come.
func (m *maker) nothingToAccept() {
	for _, rule := range m.j.Accept {
		if !slices.ContainsFunc(m.p.Findings, func(f finding.Finding) bool { return f.Rule.Name() == rule }) {
			m.p.Findings.Raise(finding.Note, "job/accept", m.j.PlaceAt("", "accept"), say.F("the job accepts %s, and nothing here is stopped by it", rule),
				"take it out of accept:")
		}
	}
}

// readStops reads what forbids machining, by name.
func readStops() (map[string]table.StopRule, error) {
	list, err := table.Stops()
	if err != nil {
		return nil, err
	}
	out := map[string]table.StopRule{}
	for _, s := range list {
		out[s.Name] = s
	}
	return out, nil
}
