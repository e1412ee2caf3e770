package plan

import (
	"math"

	"rebush/fits/ledger"
	"rebush/fits/material"
	"rebush/plan/seat"
)

// matter says which table row a figure of a material stands in: the highest
// published one, or the lowest.
func (m *maker) matter(mat *material.Material, property string, high bool) string {
	v, ok := mat.Low(property)
	if high {
		v, ok = mat.High(property)
	}
	if !ok {
		return "materials:1: no figure for " + mat.Name
	}
	return v.Address + ": " + v.Source
}

func (m *maker) bushMaterial(b *bore) *material.Material {
	mat, err := m.materials.Find(b.chosen.Bush.Metal.Name)
	if err != nil {
		panic("plan: the chosen bush has no material: " + err.Error())
	}
	return mat
}

// flowSource says where the flow stress of the chosen bush comes from.
func (m *maker) flowSource(b *bore, rule string, high bool) string {
	if b.chosen.Bush.Metal.Porous {
		m.used(rule)
		r := m.rules.Get(rule)
		return r.Address + ": " + r.Source
	}
	return m.matter(m.bushMaterial(b), "yield_tension", high)
}

// holdSource says which modulus of the plate holds: the lowest, or what is
// left of it under lasting tension.
func (m *maker) holdSource(a *seat.Answer) string {
	if a.Slackens {
		return m.matter(m.creepsLike(m.chassis), "creep_pseudo_modulus_100d", false)
	}
	return m.matter(m.chassis, "E", false)
}

// clearsNum is the seat radius that just takes in the worn outline, from the
// hole and the target.
func (m *maker) clearsNum(b *bore) ledger.Num {
	in := append(m.holeNums(b), m.ledgerNum("targets/"+b.name()+"/target_mm/0"), m.ledgerNum("targets/"+b.name()+"/target_mm/1"))
	return m.book.Calc("seats/"+b.name()+"/clears_mm", "seat radius that just clears the worn outline about the new centre", "mm",
		"the larger of |T-O| + R and |T-D| + r, D being O moved by clearance and wear", howWorn,
		func(v []float64) float64 {
			return round6(m.holesAs([]*bore{b}, v, func() float64 { return b.stands().SeatRadius(b.target) }))
		}, in...)
}

// edgeNum is the distance from the target to the nearest free edge.
func (m *maker) edgeNum(b *bore) ledger.Num {
	l := m.book
	in := append(m.holeNums(b), m.ledgerNum("targets/"+b.name()+"/target_mm/0"), m.ledgerNum("targets/"+b.name()+"/target_mm/1"))
	path := "shafts/" + b.shaft.Name + "/bores/" + string(b.b.Side) + "/edges"
	for i, e := range b.b.Edges {
		v := e.Metal
		if !v.Given() {
			v = e.Away
		}
		in = append(in, l.Leaf("seats/"+b.name()+"/edges/"+string(rune('0'+i%10)), "metal measured to an edge", "mm", m.source(path), v.Float()))
	}
	boss := b.b.Boss.Float()
	return l.Calc("seats/"+b.name()+"/edge_mm", "new centre to "+orText(b.hole.EdgeName, "the outside of the boss"), "mm",
		"least of: edge as measured from the hole less the move towards it, outline, outside of the boss", "plane geometry", func(v []float64) float64 {
			out := m.holesAs([]*bore{b}, v[:8], func() float64 {
				d, _ := m.nearestEdge(b)
				if boss > 0 {
					d = math.Min(d, boss/2-math.Hypot(b.target[0]-b.worn.O[0], b.target[1]-b.worn.O[1]))
				}
				return d
			})
			return round6(out)
		}, in...)
}

// contactNum is the length of seat that the bush touches.
func (m *maker) contactNum(b *bore) ledger.Num {
	l, a := m.book, b.chosen
	key := func(k string) string { return "seats/" + b.name() + "/" + k }
	body := a.Bush.Length - a.Bush.FlangeT
	if a.Bush.Turned || a.Bush.Length == 0 {
		body = b.hole.Plate
	}
	plate := l.Leaf(key("plate_mm"), "thickness of the plate", "mm", m.source("chassis/plates/"+string(b.b.Side)), b.hole.Plate)
	long := l.Leaf(key("body_mm"), "length of the bush without its flange", "mm", m.bushSource(b, "length"), body)
	cs := m.ruleLeaf("seat_chamfer_mm")
	r := m.rules.Get("bush_chamfer_mm")
	lead := m.seatRule.BushChamferThin
	if (a.Bush.ODLow-a.Bush.BHigh)/2 > 1+1e-9 {
		lead = m.seatRule.BushChamferThick
	}
	cb := l.Leaf(key("lead_mm"), "lead chamfer of the bush", "mm", r.Address+": "+r.Source, lead)
	return l.Calc(key("contact_mm"), "length of seat in contact", "mm", "the shorter of plate and bush less both lead chamfers", "plane geometry",
		func(in []float64) float64 { return math.Min(in[0], in[1]) - in[2] - in[3] }, plate, long, cs, cb)
}
