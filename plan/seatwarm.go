package plan

import (
	"rebush/fits/ledger"
	"rebush/plan/seat"
)

// warmNum is the least bore that still runs at the hot or the cold end of use,
// whichever is worse for the chosen bush.
func (m *maker) warmNum(b *bore, journal ledger.Num) ledger.Num {
	a, h, l := b.chosen, b.hole, m.book
	key := func(k string) string { return "seats/" + b.name() + "/" + k }
	use := h.TLow
	if a.WarmAt > 20 {
		use = h.THigh
	}
	in := []ledger.Num{journal, m.ruleLeaf("run_least_um"),
		l.Leaf(key("expansion_bush"), "expansion of "+a.Bush.Metal.Name, "1e-6/K", m.matter(m.bushMaterial(b), "expansion", false), a.Bush.Metal.Alpha),
		l.Leaf(key("expansion_plate"), "expansion of "+m.plate.Name, "1e-6/K", m.matter(m.chassis, "expansion", false), m.plate.Alpha),
		l.Leaf(key("expansion_shaft"), "expansion of the shaft", "1e-6/K", m.shaftSource(b.shaft), h.JournalA),
		m.ledgerNum(key("bush/bore_mm/min")), m.ledgerNum(key("bush/bore_mm/max")), m.ledgerNum(key("bush/od_mm/max")), m.ledgerNum(key("seat_mm/min")),
		l.Leaf(key("use_c"), "end of use", "C", m.source("chassis/temperature"), use)}
	if a.Bush.Metal.Plastic {
		in = append(in, m.ruleLeaf("plastic_hot_k"))
	}
	return l.Calc(key("bore_warm_mm"), "least bore that runs at that end of use", "mm",
		"journal + least clearance there less what the clearance changes: bore x bush - closure share x seat x (bush - plate) - journal x shaft, each times expansion and warming", "linear expansion; the ring of the press",
		func(v []float64) float64 {
			t := v[9]
			if len(v) > 10 {
				t += v[10]
			}
			return v[0] + v[1]/1000 - seat.RunChange(a.HeldBy, seat.Expansions{Bush: v[2], Plate: v[3], Shaft: v[4]}, t, (v[5]+v[6])/2, v[0], v[8], v[7]-v[8], a.WarmShare)
		}, in...)
}
