package plan

import (
	"slices"

	"rebush/fits/finding"
	"rebush/fits/material"
	"rebush/fits/table"
)

// burning stops a job whose chips would burn: a chassis of magnesium before any
// figure is looked at.
func (m *maker) burning() {
	if m.chassis.Kind != material.MagnesiumCasting {
		return
	}
	pos := m.j.At("chassis/material")
	m.p.Findings.Add(finding.Finding{Level: finding.Stop, Rule: "magnesium", Where: "chassis",
		Text: "the casting is magnesium: its chips burn, and water, foam and CO2 feed the fire",
		Fix:  m.stops["magnesium"].Instead, File: pos.File, Line: pos.Line, Column: pos.Column})
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
			m.say(finding.Stop, "magnesium", b, "bush "+b.chosen.Bush.Code+" is magnesium: its chips burn, and water, foam and CO2 feed the fire",
				m.stops["magnesium"].Instead)
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
		if f.Level == finding.Stop && m.accepts(f.Rule) {
			f.Level = finding.Caution
			f.Text += "; the job accepts it"
			f.Fix = "take `" + f.Rule + "` out of accept: and the job stops here"
		}
	}
	return m.p.Findings.Stops()
}

// nothingToAccept says where a job accepts a stop that did not come.
func (m *maker) nothingToAccept() {
	for _, rule := range m.j.Accept {
		if !slices.ContainsFunc(m.p.Findings, func(f finding.Finding) bool { return f.Rule == rule }) {
			pos := m.j.At("accept")
			m.p.Findings.Add(finding.Finding{Level: finding.Note, Rule: "accept", Text: "the job accepts " + rule + ", and nothing here is stopped by it",
				Fix: "take it out of accept:", File: pos.File, Line: pos.Line, Column: pos.Column})
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
