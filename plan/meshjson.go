package plan

import (
	"fmt"
	"math"

	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/plan/mesh"
	"rebush/plan/survey"
	"rebush/plan/target"
)

// meshJSON writes one mesh, its figures through the ledger.
func (m *maker) meshJSON(x *gear, g target.GearOut, words string) Mesh {
	l := m.book
	key := func(k string) string { return "mesh/" + x.g.Name + "/" + k }
	const src = "exact involute and worm geometry (own derivations checked by flank sampling; ISO 21771, KHK from memory)"
	holes := m.meshHoles(x)
	mate := m.mateNum(x)
	centre := func(k, what, formula string, pick func([]*bore) float64) ledger.Num {
		var in []ledger.Num
		for _, b := range holes {
			in = append(in, m.holeNums(b)...)
			in = append(in, m.ledgerNum("targets/"+b.name()+"/target_mm/0"), m.ledgerNum("targets/"+b.name()+"/target_mm/1"))
		}
		in = append(in, mate)
		return l.Calc(key(k), what, "mm", formula, "plane geometry", func(v []float64) float64 {
			return round6(m.withHoles(holes, v, x, pick))
		}, in...)
	}
	play := func(k, what string, a ledger.Num) MM {
		if math.IsNaN(x.play(a.V)) {
			return ""
		}
		return mm4(l.Calc(key(k), what, "mm", "backlash round the operating pitch circle at that centre distance, not below 0", src,
			func(in []float64) float64 { return sig9(x.play(in[0])) }, a).V)
	}
	row := Mesh{Gear: x.g.Name, Trusted: x.trusted, Words: words}
	f := centre("found_centre_mm", "centre distance under load as found", "each shaft at old centre + clearance + wear towards the load, at the gear's station",
		func([]*bore) float64 { return x.distance(m.shafts, foundCentre, asFound) })
	o := centre("original_centre_mm", "centre distance under load when new", "each shaft at old centre + clearance towards the load, at the gear's station",
		func([]*bore) float64 { return x.distance(m.shafts, oldCentre, originally) })
	after := func(sign float64) func([]*bore) float64 {
		return func([]*bore) float64 {
			return x.distance(m.shafts, newCentre, func(b *bore) float64 { return sign * m.lift(b) })
		}
	}
	mid := centre("target_centre_mm", "centre distance under load at the target", "each shaft at new centre + half the middle running clearance towards the load", after(1))
	row.FoundCentreMM, row.TargetCentreMM = mm4(f.V), mm4(mid.V)
	row.FoundBacklashMM = play("found_backlash_mm", "backlash as found", f)
	row.OriginalBacklashMM = play("original_backlash_mm", "backlash when new", o)
	row.TargetBacklashMM = play("target_backlash_mm", "backlash at the target under load", mid)
	// Lifted off its wheels the shaft drops to the other side of its bore.
	lifted := centre("lifted_centre_mm", "centre distance with the truck lifted", "each shaft at new centre less half the middle running clearance", after(-1))
	row.LiftedBacklashMM = play("lifted_backlash_mm", "backlash with the truck lifted", lifted)
	lo, hi := x.window.Lo, x.window.Hi
	if x.window.Empty {
		lo, hi = x.window.Middle(), x.window.Middle()
	}
	row.BacklashWindowMM = &[2]MM{mm4(x.play(lo)), mm4(x.play(hi))}
	if !x.wish.Normal && !x.window.Empty && x.window.LoBy == "backlash" {
		row.BacklashWindowMM[0] = mm4(x.wish.Lo)
	}
	if !x.wish.Normal && !x.window.Empty && x.window.HiBy == "backlash" {
		row.BacklashWindowMM[1] = mm4(x.wish.Hi)
	}
	if _, err := x.pair.ContactRatio(mid.V); err == nil {
		row.ContactRatio = num(l.Calc(key("contact_ratio"), "teeth in contact, on the mean", "-", "path of contact over base pitch, no further than the base tangent points", src, func(in []float64) float64 {
			r, _ := x.pair.ContactRatio(in[0])
			return sig9(r)
		}, mid).V)
	}
	m.lean(x, &row, g)
	row.CorrectionMM = xy(g.Correction)
	if !x.trusted {
		row.CorrectionMM = xy([2]float64{})
	}
	return row
}

// lean works out what unlike left and right bores do to a mesh: the loss of
// normal backlash over the face, as found and after.
func (m *maker) lean(x *gear, row *Mesh, g target.GearOut) {
	s := m.shafts[x.shaft]
	face, span := x.g.Wheel.Face.Float(), m.spacing()
	if len(s.bores) != 2 || face <= 0 || span <= 0 {
		return
	}
	aw, err := x.pair.OperatingAngle(g.Centre)
	if err != nil {
		return
	}
	loss := func(centre func(*bore) [2]float64, off func(*bore) float64) MM {
		l, r := standing(s, 0, centre, off), standing(s, 1, centre, off)
		v, err := mesh.SkewLoss([2]float64{r[0] - l[0], r[1] - l[1]}, g.Towards, span, face, aw)
		if err != nil {
			return ""
		}
		return mm4(v)
	}
	row.LeanLossMM = FoundAfterMM{Found: loss(foundCentre, asFound), After: loss(newCentre, m.lift)}
	least, err := x.pair.Normal(x.window.Lo)
	if err != nil || least <= 0 {
		return
	}
	limit := sig9(m.rules.V("lean_share_of_backlash") * least)
	if have := row.LeanLossMM.After.Float(); have > limit+1e-9 {
		m.used("lean_share_of_backlash")
		pos := m.j.At("gears/" + x.g.Name)
		m.p.Findings.Add(finding.Finding{Level: finding.Caution, Rule: "lean", Where: x.g.Name, Have: &have, Want: &limit, Unit: "mm",
			Text: fmt.Sprintf("its shaft leans between unlike bores and the teeth lose %.3f mm of backlash over their face, at most %.3f", have, limit),
			Fix:  "let both bores of the shaft be bushed (do: auto), which squares it", File: pos.File, Line: pos.Line, Column: pos.Column})
	}
}

// meshFindings says where a mesh is not what was asked for.
func (m *maker) meshFindings(x *gear, g target.GearOut) {
	const near = 1e-6
	switch {
	case math.Abs(g.Missed) <= near:
		return
	case !x.trusted:
		m.sayGear(finding.Note, "mesh off", x.g, fmt.Sprintf("by its figures this mesh would stand %.3f mm %s for its window; it is not trusted and moved nothing", math.Abs(g.Missed), sideOf(g.Missed)), "")
	case g.Stuck:
		m.sayGear(finding.Caution, "mesh fixed", x.g, fmt.Sprintf("neither shaft may move and the mesh stands %.3f mm %s for its window", math.Abs(g.Missed), sideOf(g.Missed)), "let one of the shafts be bushed (do: auto), or accept it")
	case math.Abs(g.Outside) > near:
		m.sayGear(finding.Caution, "mesh window", x.g, fmt.Sprintf("the window cannot be met: the mesh stands %.3f mm %s for it", math.Abs(g.Outside), sideOf(g.Outside)), "a wider backlash window, or other gears")
	}
}

func sideOf(miss float64) string {
	if miss < 0 {
		return "too near"
	}
	return "too far apart"
}

// meshHoles are the bores that a mesh hangs on.
func (m *maker) meshHoles(x *gear) []*bore {
	holes := append([]*bore(nil), m.shafts[x.shaft].bores...)
	if x.mate >= 0 {
		holes = append(holes, m.shafts[x.mate].bores...)
	}
	return holes
}

// mateNum is the place of a fixed mate as an input; of a mate on a shaft of
// the job its bores are inputs already.
func (m *maker) mateNum(x *gear) ledger.Num {
	return m.book.Leaf("mesh/"+x.g.Name+"/mate_mm", "height of the mate (0: it sits on a shaft of the job)", "mm", m.source("gears/"+x.g.Name), x.mateAt[1])
}

// withHoles asks for a distance with the holes and the mate as the inputs have
// them.
func (m *maker) withHoles(holes []*bore, v []float64, x *gear, of func([]*bore) float64) float64 {
	was := x.mateAt
	x.mateAt[1] = v[len(v)-1]
	defer func() { x.mateAt = was }()
	return m.holesAs(holes, v, func() float64 { return of(holes) })
}

// holesAs asks a question with the holes as eight inputs each have them.
func (m *maker) holesAs(holes []*bore, v []float64, of func() float64) float64 {
	type kept struct {
		worn   survey.WornBore
		target [2]float64
	}
	was := make([]kept, len(holes))
	for i, b := range holes {
		was[i] = kept{b.worn, b.target}
		b.worn = holeAgain(b, v[8*i:8*i+6])
		b.target = [2]float64{v[8*i+6], v[8*i+7]}
	}
	out := of()
	for i, b := range holes {
		b.worn, b.target = was[i].worn, was[i].target
	}
	return out
}

// newCentre is where a bore's centre is after the job.
func newCentre(b *bore) [2]float64 {
	if b.shaft.Leave {
		return foundCentre(b)
	}
	return b.target
}

// lift is how far a shaft stands from that centre under load: half the middle
// running clearance in a new bore, clearance and wear in an old one.
func (m *maker) lift(b *bore) float64 {
	if b.shaft.Leave {
		return asFound(b)
	}
	lo, hi := m.clearances(b)
	return (lo + hi) / 4
}
