package plan

import (
	"math"

	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/target"
)

// truck reports wheelbase and four-wheel rock, found and after.
func (m *maker) truck() {
	var ends []shaftState
	if w := m.j.Chassis.Wheelbase; w != nil {
		for _, name := range w.Between {
			for _, s := range m.shafts {
				if s.s.Name == name {
					ends = append(ends, s)
				}
			}
		}
	} else if len(m.shafts) >= 2 {
		// The two shafts that carry wheels, else the first and the last.
		for _, s := range m.shafts {
			if s.s.WheelDiameter.Given() || s.s.ContactsApart.Given() {
				ends = append(ends, s)
			}
		}
		if len(ends) < 2 {
			ends = nil
		} else {
			ends = []shaftState{ends[0], ends[len(ends)-1]}
		}
	}
	if len(ends) != 2 || len(ends[0].bores) == 0 || len(ends[1].bores) == 0 {
		return
	}
	holes := append(append([]*bore(nil), ends[0].bores...), ends[1].bores...)
	var inputs []ledger.Num
	for _, b := range holes {
		inputs = append(inputs, m.holeNums(b)...)
		inputs = append(inputs, m.ledgerNum("targets/"+b.name()+"/target_mm/0"), m.ledgerNum("targets/"+b.name()+"/target_mm/1"))
	}
	at := func(s shaftState, after bool) target.Ends {
		end := func(b *bore) [2]float64 {
			c, off := foundCentre(b), asFound(b)
			if after {
				c, off = newCentre(b), m.lift(b)
			}
			return [2]float64{c[0] + off*b.load[0], c[1] + off*b.load[1]}
		}
		return target.Ends{Left: end(s.bores[0]), Right: end(s.bores[len(s.bores)-1])}
	}
	l := m.book
	calc := func(k, what string, after bool, of func(f, r target.Ends) float64) MM {
		return mm4(l.Calc("truck/"+k, what, "mm", "from where both axles stand under load", "plane geometry", func(v []float64) float64 {
			return round6(m.holesAs(holes, v, func() float64 { return of(at(ends[0], after), at(ends[1], after)) }))
		}, inputs...).V)
	}
	m.p.Truck.WheelbaseMM = FoundAfterMM{Found: calc("wheelbase_mm/found", "wheelbase under load as found", false, target.Wheelbase),
		After: calc("wheelbase_mm/after", "wheelbase under load after the job", true, target.Wheelbase)}
	m.rods(ends)
	contacts := 0.0
	for _, s := range ends {
		if s.s.ContactsApart.Given() {
			contacts = s.s.ContactsApart.Float()
		}
	}
	if contacts > 0 && m.spacing() > 0 && len(ends[0].bores) == 2 && len(ends[1].bores) == 2 {
		rock := func(f, r target.Ends) float64 {
			g, _ := target.Rock(f, r, m.spacing(), contacts)
			return g
		}
		m.p.Truck.RockMM = FoundAfterMM{Found: calc("rock_mm/found", "four-wheel rock as found", false, rock),
			After: calc("rock_mm/after", "four-wheel rock after the job", true, rock)}
	}
}

// rods says where coupled axles would not match their rods: the sister's
// wheelbase is taken for the length of the rods.
func (m *maker) rods(ends []shaftState) {
	w := m.j.Chassis.Wheelbase
	if w == nil || !w.Sister.Given() || !ends[0].s.Rods && !ends[1].s.Rods {
		return
	}
	const most = 0.03 // mm: what rod bearings take up; common practice, no source
	off := sig9(m.p.Truck.WheelbaseMM.After.Float() - w.Sister.Float())
	if math.Abs(off) <= most+1e-9 {
		return
	}
	want := most
	pos := m.j.At("chassis/wheelbase")
	m.p.Findings.Raise(finding.Caution, "target/rods", finding.Place{Where: "chassis", File: pos.File, Line: pos.Line, Column: pos.Column},
		say.F("coupled axles: after the job the wheelbase differs from the rods by %v", say.MM(off, 3).Signed()),
		"both axles have to match the rods: move one of them (load and mesh allowing), or ease the rods").Against(off, want, "mm")
}
