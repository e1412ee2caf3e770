package plan

import (
	"fmt"
	"math"

	"rebush/fits/finding"
)

// sidePlay works out the side play of each shaft with the chosen bushes, and
// says which washer or what to face off where it is outside its limits.
func (m *maker) sidePlay() {
	lo, hi := m.rules.Pair("side_play_mm")
	for i := range m.j.Shafts {
		s := &m.j.Shafts[i]
		if !s.HubToHub.Given() || !m.j.Chassis.Width.Given() {
			continue
		}
		used := 0.0
		for _, b := range m.on(s.Name) {
			if b.chosen != nil {
				used += b.chosen.SideUse
			}
		}
		l := m.book
		key := func(k string) string { return "shafts/" + s.Name + "/" + k }
		hub := l.Leaf(key("hub_to_hub_mm"), "hub to hub", "mm", m.source("shafts/"+s.Name+"/hub_to_hub"), s.HubToHub.Float())
		wid := l.Leaf(key("width_mm"), "width over both plates", "mm", m.source("chassis/width"), m.j.Chassis.Width.Float())
		fla := l.Leaf(key("flanges_mm"), "flanges outside the plates", "mm", m.source("bushes"), used)
		was := l.Leaf(key("washers_mm"), "washers", "mm", m.source("shafts/"+s.Name), m.washers(s))
		play := l.Calc(key("side_play_mm"), "side play", "mm", "hub to hub less width, flanges and washers", "plane geometry",
			func(in []float64) float64 { return in[0] - in[1] - in[2] - in[3] }, hub, wid, fla, was)
		for k := range m.p.Shafts {
			if m.p.Shafts[k].Shaft == s.Name {
				m.p.Shafts[k].SidePlayMM = &MMRange{mm3(play.V), mm3(play.V)}
			}
		}
		if s.Leave {
			continue
		}
		m.used("side_play_mm")
		switch v := sig9(play.V); {
		case v < lo-1e-9:
			m.p.Findings.Figure(finding.Caution, "side play", s.Name, v, lo, "mm",
				fmt.Sprintf("side play would be %.2f mm, least %.2f", v, lo), fmt.Sprintf("face %.2f mm off the flanges, or a thinner washer", lo-v))
		case v > hi+1e-9:
			m.p.Findings.Figure(finding.Caution, "side play", s.Name, v, hi, "mm",
				fmt.Sprintf("side play would be %.2f mm, most %.2f", v, hi), fmt.Sprintf("add a washer of %.1f mm", math.Round((v-(lo+hi)/2)*10)/10))
		}
	}
}
