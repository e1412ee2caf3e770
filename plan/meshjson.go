package plan

import (
	"fmt"
	"math"

	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/mesh"
	"rebush/plan/survey"
	"rebush/plan/target"
)

// meshJSON writes one mesh, its figures through the ledger.
func (m *maker) meshJSON(x *gear, g target.GearOut, words say.Text) Mesh {
	l := m.book
	key := func(k string) string { return "mesh/" + x.g.Name + "/" + k }
	const src = "exact involute and worm geometry: ISO 21771, KHK, and plan/mesh/METHODS.md 1"
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
	mid := centre("target_centre_mm", "centre distance under load at the new centre", "each shaft at new centre + half the middle running clearance towards the load", after(1))
	row.FoundCentreMM, row.TargetCentreMM = mm4(f.V), mm4(mid.V)
	row.FoundBacklashMM = play("found_backlash_mm", "backlash as found", f)
	row.OriginalBacklashMM = play("original_backlash_mm", "backlash when new", o)
	row.TargetBacklashMM = play("target_backlash_mm", "backlash at the new centre under load", mid)
	// Lifted off its wheels the shaft drops to the other side of its bore.
	lifted := centre("lifted_centre_mm", "centre distance with the truck lifted", "each shaft at new centre less half the middle running clearance", after(-1))
	row.LiftedBacklashMM = play("lifted_backlash_mm", "backlash with the truck lifted", lifted)
	row.BacklashWindowMM = m.backlashWindow(x)
	if _, err := x.pair.ContactRatio(mid.V); err == nil {
		row.ContactRatio = num(l.Calc(key("contact_ratio"), "teeth in contact, on the mean", "-", "path of contact over base pitch, no further than the base tangent points", src, func(in []float64) float64 {
			r, _ := x.pair.ContactRatio(in[0])
			return sig9(r)
		}, mid).V)
	}
	m.lean(x, &row, g)
	row.CorrectionMM = m.correction(x)
	return row
}

// backlashWindow is the backlash that the window of centre distances stands
// for: as it was wanted, or less where another limit cuts in.
func (m *maker) backlashWindow(x *gear) *[2]MM {
	l := m.book
	nums := m.windowNums(x)
	lo, hi := nums[0].V, nums[1].V
	if lo > hi {
		lo, hi = (lo+hi)/2, (lo+hi)/2
	}
	var out [2]MM
	for i, by := range []string{x.window.LoBy, x.window.HiBy} {
		key := fmt.Sprintf("mesh/%s/backlash_window_mm/%d", x.g.Name, i)
		what := []string{"least", "most"}[i] + " backlash limit"
		if by == "backlash" && !x.wish.Normal && !x.window.Empty && x.closes == 0 {
			out[i] = mm4(l.Calc(key, what, "mm", "as it is wanted", "job file or handbook row", pass, m.ledgerNum(fmt.Sprintf("mesh/%s/wish_mm/%d", x.g.Name, i))).V)
			continue
		}
		if v := x.play([]float64{lo, hi}[i]); math.IsNaN(v) {
			continue
		}
		out[i] = mm4(l.Calc(key, what, "mm", "backlash at that limit", "exact involute and worm geometry", func(in []float64) float64 {
			ends := [2]float64{in[0], in[1]}
			if in[0] > in[1] {
				ends[0] = (in[0] + in[1]) / 2
				ends[1] = ends[0]
			}
			return sig9(x.play(ends[i]))
		}, nums...).V)
	}
	return &out
}

// correction is the move of its shaft that a trusted mesh asks for by itself.
func (m *maker) correction(x *gear) *XY {
	var out XY
	if !x.trusted {
		return xy([2]float64{})
	}
	again := lastOf(m.placeAgain)
	for i, axis := range []string{"x", "y"} {
		out[i] = mm4(m.book.Calc(fmt.Sprintf("mesh/%s/correction_mm/%d", x.g.Name, i), axis+" move that this mesh asks of its shaft's old centre", "mm",
			"shortest way along the line of centres into the narrowed limits", "plane geometry", func(in []float64) float64 {
				for _, g := range again(in).Gears {
					if g.Name == x.g.Name {
						return round4(g.Correction[i])
					}
				}
				return 0
			}, m.placeInputs()...).V)
	}
	return &out
}

// reached records the centre distances that the chosen finishes lead to.
func (m *maker) reached(x *gear, of func() (near, far float64)) *MMRange {
	holes := m.meshHoles(x)
	var in []ledger.Num
	for _, b := range holes {
		in = append(in, m.holeNums(b)...)
		in = append(in, m.ledgerNum("targets/"+b.name()+"/target_mm/0"), m.ledgerNum("targets/"+b.name()+"/target_mm/1"))
	}
	in = append(in, m.mateNum(x))
	calc := func(k string, far bool) MM {
		return mm4(m.book.Calc("mesh/"+x.g.Name+"/reached_mm/"+k, k+" centre distance with the clearances that the finished bores reach", "mm",
			"each shaft at its new centre, pressed to the side by half the clearance expected in its bores", "plane geometry", func(v []float64) float64 {
				return round6(m.withHoles(holes, v, x, func([]*bore) float64 {
					n, f := of()
					if far {
						return f
					}
					return n
				}))
			}, in...).V)
	}
	return &MMRange{Min: calc("min", false), Max: calc("max", true)}
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
	var in []ledger.Num
	for _, b := range s.bores {
		in = append(in, m.holeNums(b)...)
		in = append(in, m.ledgerNum("targets/"+b.name()+"/target_mm/0"), m.ledgerNum("targets/"+b.name()+"/target_mm/1"))
	}
	loss := func(k string, centre func(*bore) [2]float64, off func(*bore) float64) MM {
		return mm4(m.book.Calc("mesh/"+x.g.Name+"/lean_loss_mm/"+k, "normal backlash lost by lean, "+k, "mm", "face x (in the line of centres x sin + across it x cos of the working angle) of the difference of both ends, over the distance of the plates",
			"plane geometry; the same combination as ISO/TR 10064-3", func(v []float64) float64 {
				return round6(m.holesAs(s.bores, v, func() float64 {
					l, r := standing(s, 0, centre, off), standing(s, 1, centre, off)
					lost, _ := mesh.SkewLoss([2]float64{r[0] - l[0], r[1] - l[1]}, g.Towards, span, face, aw)
					return lost
				}))
			}, in...).V)
	}
	row.LeanLossMM = FoundAfterMM{Found: loss("found", foundCentre, asFound), After: loss("after", newCentre, m.lift)}
	least, err := x.pair.Normal(x.window.Lo)
	if err != nil || least <= 0 {
		return
	}
	limit := sig9(m.rules.V("lean_share_of_backlash") * least)
	if have := row.LeanLossMM.After.Float(); have > limit+1e-9 {
		m.used("lean_share_of_backlash")
		pos := m.j.At("gears/" + x.g.Name)
		m.p.Findings.Raise(finding.Caution, "target/lean", finding.Place{Where: x.g.Name, File: pos.File, Line: pos.Line, Column: pos.Column},
			say.F("its shaft leans between unlike bores and the teeth lose %v of backlash over their face, at most %v", say.MM(have, 3), say.MM(limit, 3)),
			"let both bores of the shaft be bushed (do: auto), which squares it").Against(have, limit, "mm")
	}
}

// meshFindings says where a mesh is not what was asked for.
func (m *maker) meshFindings(x *gear, g target.GearOut) {
	const near = 1e-6
	switch {
	case math.Abs(g.Missed) <= near:
		return
	case !x.trusted:
		m.sayGear(finding.Note, "target/mesh off", x.g,
			say.F("by its figures this mesh would stand %v %s for its backlash limits; it is not trusted and moved nothing", say.MM(math.Abs(g.Missed), 3), sideOf(g.Missed)), "")
	case g.Stuck:
		m.sayGear(finding.Caution, "target/mesh fixed", x.g,
			say.F("neither shaft may move and the mesh stands %v %s for its backlash limits", say.MM(math.Abs(g.Missed), 3), sideOf(g.Missed)), "let one of the shafts be bushed (do: auto), or accept it")
	case math.Abs(g.Outside) > near:
		m.sayGear(finding.Caution, "target/mesh window", x.g,
			say.F("the backlash limits cannot be met: the mesh stands %v %s for them", say.MM(math.Abs(g.Outside), 3), sideOf(g.Outside)), "wider backlash limits, or other gears")
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
	return m.book.Leaf("mesh/"+x.g.Name+"/mate_mm", "height of the mating gear (0: it sits on a shaft of the job)", "mm", m.source("gears/"+x.g.Name), x.mateAt[1])
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
