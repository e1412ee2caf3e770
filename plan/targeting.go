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

// clearances are the least and most running clearance that a finished bore may
// have, mm.
func (m *maker) clearances(b *bore) (lo, hi float64) {
	lo = m.rules.V("bore_over_journal_um") / 1000
	hi = m.rules.V("clearance_max_um") / 1000
	if p := m.mustPass(b); p > 0 {
		lo = math.Max(lo, p+m.rules.V("pass_um")/1000-b.journal())
	}
	return lo, math.Max(lo, hi)
}

// untouched says that a bore keeps its place: its shaft is left alone, or its
// bush is renewed in a sound seat.
func untouched(b *bore) bool {
	return b.shaft.Leave || b.b.Strap || b.b.Seat != nil && b.b.Seat.Sound
}

// targets decides where each bore goes.
func (m *maker) targets() {
	shafts := m.placeable()
	gears := m.gearsOf(shafts)
	m.shafts, m.gears = shafts, gears
	in := target.Input{}
	for _, s := range shafts {
		t := target.Shaft{Name: s.s.Name, TowardsDeg: m.loadTowards(s.s), USetup: m.setupU, UHole: m.holeU}
		for _, b := range s.bores {
			tb := target.Bore{Name: b.name(), Original: b.worn.O, Cov: b.worn.Cov, Found: b.found, Fixed: untouched(b)}
			if s.s.Leave {
				tb.CdLo, tb.CdHi = 2*asFound(b), 2*asFound(b)
			} else {
				tb.CdLo, tb.CdHi = m.clearances(b)
			}
			t.Bores = append(t.Bores, tb)
		}
		in.Shafts = append(in.Shafts, t)
	}
	words := make([]string, len(gears))
	for i, x := range gears {
		words[i] = m.foundMesh(x, shafts)
		tg := target.Gear{Name: x.g.Name, Shaft: x.shaft, Mate: x.mate, MateAt: x.mateAt, Geometry: x.geometry, Lo: x.window.Lo, Hi: x.window.Hi,
			Trusted: x.trusted, UGeom: x.uGeom, UMate: x.uMate, TIR: x.tir, Share: x.share, MateShare: x.mShare}
		if x.window.Empty {
			tg.Lo, tg.Hi = x.window.Middle(), x.window.Middle()
		}
		in.Gears = append(in.Gears, tg)
	}
	out, err := target.Place(in)
	if err != nil {
		m.p.Findings.Say(finding.Stop, "target", "", err.Error(), "check the figures of this job")
		return
	}
	m.targetIn, m.targetOut = in, out
	for i, s := range shafts {
		m.placeShaft(s, in.Shafts[i], out.Shafts[i])
	}
	for i, x := range gears {
		m.p.Mesh = append(m.p.Mesh, m.meshJSON(x, out.Gears[i], words[i]))
		m.meshFindings(x, out.Gears[i])
	}
	for _, f := range out.Fights {
		gap := sig9(f.Gap())
		zero := 0.0
		m.p.Findings.Add(finding.Finding{Level: finding.Caution, Rule: "windows fight", Where: f.Shaft, Have: &gap, Want: &zero, Unit: "mm",
			Text: fmt.Sprintf("%s and %s cannot both have their backlash: together they are %.3f mm short (%s by %.3f, %s by %.3f)", f.A, f.B, gap, f.A, math.Abs(f.AMiss), f.B, math.Abs(f.BMiss)),
			Fix:  "a wider backlash window for one of them, a tighter set-up, or other gears"})
	}
	m.truck()
}

// placeShaft writes where the bores of one shaft go.
func (m *maker) placeShaft(s shaftState, in target.Shaft, out target.ShaftOut) {
	for k, b := range s.bores {
		p := out.Bores[k]
		b.target, b.targeted = p.At, true
		b.uPlace = out.UT
		b.touch = !s.s.Leave && !m.wellAsIs(s)
		t := Target{Bore: b.name(), UMM: mm4(out.UT), LoadTowardsDeg: num(m.loadTowards(s.s))}
		if p.Fixed {
			t.UMM = mm4(b.u)
		}
		m.targetLedger(b, p, &t)
		m.p.Targets = append(m.p.Targets, t)
		if p.Fixed {
			continue
		}
		move := math.Hypot(p.FromOriginal[0], p.FromOriginal[1])
		limit := m.rules.V("move_caution_mm")
		if d := math.Hypot(out.Moved[0], out.Moved[1]); move > limit+1e-9 || d > 3*out.UMean+1e-9 && d > 0.01 {
			m.used("move_caution_mm")
			m.p.Findings.Figure(finding.Caution, "long move", b.name(), sig9(move), math.Min(limit, sig9(3*out.UMean)), "mm",
				fmt.Sprintf("the new centre lies %.3f mm from the old one", move), "check the survey of this bore and the place of the mate before cutting")
		}
	}
	row := Shaft{Shaft: s.s.Name, AxisMM: xy(out.T)}
	if len(s.bores) == 2 && m.spacing() > 0 {
		now := func(off func(*bore) float64, c func(*bore) [2]float64) *float64 {
			l, r := c(s.bores[0]), c(s.bores[1])
			ol, or := off(s.bores[0]), off(s.bores[1])
			for i := range 2 {
				l[i] += ol * s.bores[0].load[i]
				r[i] += or * s.bores[1].load[i]
			}
			d, _, err := target.Skew(l, r, m.spacing())
			if err != nil {
				return nil
			}
			return num(d)
		}
		row.SkewDeg.Found = now(asFound, oldCentre)
		row.SkewDeg.After = now(func(*bore) float64 { return 0 }, func(b *bore) [2]float64 { return b.target })
		if s.s.Leave {
			row.SkewDeg.After = row.SkewDeg.Found
		}
	}
	m.p.Shafts = append(m.p.Shafts, row)
}

// wellAsIs says that no bore of a shaft is worn: round, and its clearance
// inside what is accepted. Both holes of an axle are bushed, or neither.
func (m *maker) wellAsIs(s shaftState) bool {
	for _, b := range s.bores {
		play := 2 * b.worn.C
		if !b.worn.Round || b.b.Bushed || b.b.Seat != nil || b.b.Repaired || play > m.rules.V("clearance_max_um")/1000+1e-9 {
			return false
		}
	}
	return true
}

// placeInputs are the figures that decide the targets: every old centre and
// every window of a trusted mesh.
func (m *maker) placeInputs() []ledger.Num {
	var in []ledger.Num
	for _, s := range m.shafts {
		for _, b := range s.bores {
			in = append(in, m.ledgerNum("survey/"+b.name()+"/centre_mm/0"), m.ledgerNum("survey/"+b.name()+"/centre_mm/1"))
		}
	}
	for _, x := range m.gears {
		in = append(in, m.windowNums(x)...)
	}
	return in
}

// windowNums records the window of a mesh.
func (m *maker) windowNums(x *gear) []ledger.Num {
	l := m.book
	key := func(k string) string { return "mesh/" + x.g.Name + "/" + k }
	lo := l.Leaf(key("wish_mm/0"), "least backlash wanted", "mm", m.source("gears/"+x.g.Name+"/backlash"), x.wish.Lo)
	hi := l.Leaf(key("wish_mm/1"), "most backlash wanted", "mm", m.source("gears/"+x.g.Name+"/backlash"), x.wish.Hi)
	tir := l.Leaf(key("runout_mm"), "run-out of both gears, total indicator reading", "mm", m.source("gears/"+x.g.Name), x.tir)
	eps, tooth := m.ruleLeaf("contact_ratio_min"), m.ruleLeaf("tight_tooth_backlash_mm")
	again := func(in []float64) mesh.Window {
		wish := x.wish
		wish.Lo, wish.Hi = in[0], in[1]
		w, _ := mesh.WindowOf(x.pair, x.g.Module, wish, in[2], m.meshLimits(in[3], in[4]))
		return w
	}
	const src = "exact involute and worm geometry; planning rule: backlash, contact ratio, tightest tooth"
	return []ledger.Num{
		l.Calc(key("window_mm/0"), "least centre distance under load", "mm", "where the backlash wanted begins ("+x.window.LoBy+")", src, func(in []float64) float64 { return sig9(again(in).Lo) }, lo, hi, tir, eps, tooth),
		l.Calc(key("window_mm/1"), "largest centre distance under load", "mm", "where the backlash wanted ends ("+x.window.HiBy+")", src, func(in []float64) float64 { return sig9(again(in).Hi) }, lo, hi, tir, eps, tooth),
	}
}

// placeAgain works the targets out from those inputs.
func (m *maker) placeAgain(in []float64) target.Output {
	again := m.targetIn
	again.Shafts = append([]target.Shaft(nil), again.Shafts...)
	again.Gears = append([]target.Gear(nil), again.Gears...)
	n := 0
	for i := range again.Shafts {
		again.Shafts[i].Bores = append([]target.Bore(nil), again.Shafts[i].Bores...)
		for k := range again.Shafts[i].Bores {
			again.Shafts[i].Bores[k].Original = [2]float64{in[n], in[n+1]}
			n += 2
		}
	}
	for i := range again.Gears {
		again.Gears[i].Lo, again.Gears[i].Hi = in[n], in[n+1]
		if in[n] > in[n+1] {
			mid := (in[n] + in[n+1]) / 2
			again.Gears[i].Lo, again.Gears[i].Hi = mid, mid
		}
		n += 2
	}
	out, _ := target.Place(again)
	return out
}

// round4 rounds a place to what is printed of it, so that a dial figure of three
// places and the target of four never tell two stories.
func round4(f float64) float64 { return math.Round(f*1e4) / 1e4 }

// targetLedger records a target and its moves.
func (m *maker) targetLedger(b *bore, p target.Placed, t *Target) {
	l := m.book
	key := func(k string) string { return "targets/" + b.name() + "/" + k }
	inputs := m.placeInputs()
	at := func(out target.Output) [2]float64 {
		for _, s := range out.Shafts {
			for _, x := range s.Bores {
				if x.Name == b.name() {
					return x.At
				}
			}
		}
		return [2]float64{}
	}
	var to, fo, ff XY
	for i, axis := range []string{"x", "y"} {
		k := fmt.Sprint(i)
		n := l.Calc(key("target_mm/"+k), axis+" of the new centre", "mm",
			"least move, in units of what is known of the old centres, that brings the trusted meshes into their windows narrowed by the doubt; with none to move it, the weighted mean of the shaft's old centres",
			"planning rule: weighted least squares with active windows, own derivation", func(in []float64) float64 { return round4(at(m.placeAgain(in))[i]) }, inputs...)
		b.target[i] = n.V
		o := m.ledgerNum("survey/" + b.name() + "/centre_mm/" + k)
		f := l.Leaf("survey/"+b.name()+"/found_mm/"+k, axis+" of the middle of the hole as found", "mm", m.source("shafts/"+b.shaft.Name+"/bores/"+string(b.b.Side)+"/centre"), m.ledgerValue("survey/"+b.name()+"/found_mm/"+k, b.found[i]))
		less := func(in []float64) float64 { return sig9(in[0] - in[1]) }
		fo[i] = mm4(l.Calc(key("from_original_mm/"+k), axis+" move from the old centre", "mm", "new centre less old centre", "plane geometry", less, n, o).V)
		ff[i] = mm4(l.Calc(key("from_found_mm/"+k), axis+" move from the hole as found", "mm", "new centre less middle of the hole as found", "plane geometry", less, n, f).V)
		to[i] = mm4(n.V)
	}
	t.TargetMM, t.FromOriginalMM, t.FromFoundMM = &to, &fo, &ff
}

// round6 rounds a place to a millionth of a millimetre, below anything that is
// printed and above what two ways of summing differ by.
func round6(f float64) float64 { return math.Round(f*1e6) / 1e6 }

// ledgerValue is what the ledger has under a key, else a value of its own.
func (m *maker) ledgerValue(key string, otherwise float64) float64 {
	if e, ok := m.book.Get(key); ok {
		return e.Value
	}
	return sig9(otherwise)
}

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
		func([]*bore) float64 { return x.distance(m.shafts, oldCentre, asFound) })
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
	if e, err := x.pair.ContactRatio(mid.V); err == nil {
		row.ContactRatio = num(e)
	}
	row.CorrectionMM = xy(g.Correction)
	if !x.trusted {
		row.CorrectionMM = xy([2]float64{})
	}
	return row
}

// meshFindings says where a mesh is not what was asked for.
func (m *maker) meshFindings(x *gear, g target.GearOut) {
	const near = 1e-6
	switch {
	case math.Abs(g.Missed) <= near:
		return
	case !x.trusted:
		m.sayGear(finding.Note, "mesh off", x.g, fmt.Sprintf("by its figures this mesh would stand %.3f mm %s its window; it is not trusted and moved nothing", math.Abs(g.Missed), sideOf(g.Missed)), "")
	case g.Stuck:
		m.sayGear(finding.Caution, "mesh fixed", x.g, fmt.Sprintf("neither shaft may move and the mesh stands %.3f mm %s its window", math.Abs(g.Missed), sideOf(g.Missed)), "let one of the shafts be bushed (do: auto), or accept it")
	case math.Abs(g.Outside) > near:
		m.sayGear(finding.Caution, "mesh window", x.g, fmt.Sprintf("the window cannot be met: %.3f mm %s it", math.Abs(g.Outside), sideOf(g.Outside)), "a wider backlash window, or other gears")
	}
}

func sideOf(miss float64) string {
	if miss < 0 {
		return "inside (too near)"
	}
	return "outside (too far)"
}

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
			c, off := b.worn.O, asFound(b)
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
		return b.worn.O
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
