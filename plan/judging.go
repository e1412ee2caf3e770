package plan

import (
	"math"

	"rebush/plan/seat"
	"rebush/plan/verdict"
)

// judge hands the verdict what the steps before have found.
func (m *maker) judge() {
	sh := m.j.Shop
	f := verdict.Facts{Swollen: m.grown, Metal: m.forbidden, OK: m.p.OK, Lathe: m.shop.Lathe, Rules: verdict.RulesOf(m.rules),
		Placer: sh.Jig == "pinned" || sh.MachineKind == "mill" || sh.MachineKind == "lathe", Play: map[string]float64{}}
	for _, b := range m.bores {
		h := judgedHole(b.bored(), m.seatRule, m.rules.V("sleeve_wall_mm"))
		h.PlayMM = m.playOf(b)
		f.Holes = append(f.Holes, h)
	}
	timed(f.Holes, m.p.Operations, m.p.Setups)
	for i, x := range m.gears {
		p := verdict.Pair{Name: x.g.Name, On: x.g.Wheel.On, Known: x.trusted && !x.window.Empty, LowMM: x.window.Lo, HighMM: x.window.Hi}
		if x.mate >= 0 && !m.shafts[x.mate].fixed {
			p.Mate = m.shafts[x.mate].s.Name
		}
		if i < len(m.p.Mesh) {
			p.FoundMM = m.p.Mesh[i].FoundCentreMM.Float()
		} else {
			p.LowMM, p.HighMM = math.Inf(-1), math.Inf(1) // nobody worked out how it stands
		}
		f.Meshes = append(f.Meshes, p)
	}
	for i := range m.j.Shafts {
		if s := &m.j.Shafts[i]; s.HubToHub.Given() && m.j.Chassis.Width.Given() {
			f.Play[s.Name] = s.HubToHub.Float() - m.j.Chassis.Width.Float() - seat.Washers(s)
		}
	}
	if r := m.result; r != nil {
		n := float64(max(1, r.Trials))
		f.Trials = &verdict.Trials{Rework: float64(r.Rework) / n, Spoilt: float64(r.Spoilt) / n, NextBush: float64(r.NextBush) / n, Lost: r.Lost}
	}
	row, said := judged(m.book, m.j, f)
	m.p.Verdict = row
	m.p.Findings = append(m.p.Findings, said...)
}

// playOf is the play of a hole on diameter as found, 0 where nothing tells.
func (m *maker) playOf(b *bore) float64 {
	switch {
	case b.known && !b.b.Repaired:
		return math.Max(0, 2*b.worn.C+b.worn.W)
	case b.b.Widest.Given():
		return math.Max(0, b.b.Widest.Float()-m.read(b, "widest", "width").bias-b.journal())
	}
	return 0
}

// bored is the hole as a value.
func (b *bore) bored() bored {
	old := b.old
	old.Known, old.Worn, old.Middle, old.U, old.Shaft, old.Bore = b.known, b.worn, b.found, b.u, b.shaft, b.b
	return bored{Hole: old, At: b.target, Placed: b.targeted, UPlace: b.uPlace, Worn: b.touch, Wanted: b.hole, Answers: b.answers, Chosen: b.chosen}
}
