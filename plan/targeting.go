package plan

import (
	"fmt"
	"math"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/mesh"
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
	return b.shaft.Leave || b.b.Cap || b.b.Seat != nil && b.b.Seat.Sound
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
	words := make([]say.Text, len(gears))
	for i, x := range gears {
		words[i] = m.foundMesh(x, shafts)
		tg := target.Gear{Name: x.g.Name, Shaft: x.shaft, Mate: x.mate, MateAt: x.mateAt, Geometry: x.geometry, Lo: x.window.Lo, Hi: x.window.Hi,
			Trusted: x.trusted, UGeom: x.uGeom, UMate: x.uMate, TIR: x.tirU, Share: x.share, MateShare: x.mShare}
		if x.window.Empty {
			tg.Lo, tg.Hi = x.window.Middle(), x.window.Middle()
		}
		in.Gears = append(in.Gears, tg)
	}
	out, err := target.Place(in)
	if err != nil {
		m.p.Findings.Raise(finding.Stop, "target/target", finding.Place{},
			say.F("%v", err), "check the figures of this job")
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
		m.p.Findings.Raise(finding.Caution, "target/windows fight", m.j.Place(f.Shaft),
			say.F("%s and %s cannot both have their backlash: together they are %v short (%s by %v, %s by %v)", f.A, f.B, say.MM(gap, 3), f.A, say.MM(math.Abs(f.AMiss), 3), f.B, say.MM(math.Abs(f.BMiss), 3)),
			"wider backlash limits for one of them, a tighter set-up, or other gears").Against(gap, zero, "mm")
	}
	m.truck()
}

// placeShaft writes where the bores of one shaft go.
func (m *maker) placeShaft(s shaftState, in target.Shaft, out target.ShaftOut) {
	for k, b := range s.bores {
		p := out.Bores[k]
		b.target, b.targeted = p.At, true
		b.uPlace = out.UT
		b.touch = !s.s.Leave && (!m.wellAsIs(s) || math.Hypot(out.Moved[0], out.Moved[1]) > 1e-6)
		t := Target{Bore: b.name(), UMM: m.placeU(b, p.Fixed), LoadTowardsDeg: num(m.loadTowards(s.s))}
		m.targetLedger(b, p, &t)
		m.p.Targets = append(m.p.Targets, t)
		if p.Fixed {
			continue
		}
		move := math.Hypot(p.FromOriginal[0], p.FromOriginal[1])
		limit := m.rules.V("move_caution_mm")
		if d := math.Hypot(out.Moved[0], out.Moved[1]); move > limit+1e-9 || d > 3*out.UMean+1e-9 && d > 0.01 {
			m.used("move_caution_mm")
			m.p.Findings.Raise(finding.Caution, "target/long move", m.j.Place(b.name()),
				say.F("the new centre lies %v from the old one, and the old one is known to %v", say.MM(move, 3), say.MM(out.UMean, 3)), "measure this bore and the place of the mating gear again before cutting").Against(sig9(move), math.Min(limit, sig9(3*out.UMean)), "mm")
		}
	}
	row := Shaft{Shaft: s.s.Name, AxisMM: m.axis(s)}
	if len(s.bores) == 2 && m.spacing() > 0 {
		row.SkewDeg = m.skew(s)
	}
	m.p.Shafts = append(m.p.Shafts, row)
}

// axis is the middle of a shaft's new centres.
func (m *maker) axis(s shaftState) *XY {
	var out XY
	for i := range out {
		var in []ledger.Num
		for _, b := range s.bores {
			in = append(in, m.ledgerNum(fmt.Sprintf("targets/%s/target_mm/%d", b.name(), i)))
		}
		out[i] = mm4(m.book.Calc(fmt.Sprintf("shafts/%s/axis_mm/%d", s.s.Name, i), string("xy"[i])+" of the shaft after the job", "mm", "mean of its new centres", "plane geometry",
			func(v []float64) float64 {
				sum := 0.0
				for _, x := range v {
					sum += x
				}
				return sig9(sum / float64(len(v)))
			}, in...).V)
	}
	return &out
}

// placeU is how well the place of a bore is known after the job: that of
// cutting it, or of its old centre where it stays.
func (m *maker) placeU(b *bore, fixed bool) MM {
	l := m.book
	key := "targets/" + b.name() + "/u_mm"
	if fixed {
		return mm4(l.Calc(key, "standard uncertainty of its place", "mm", "that of its old centre: it stays", "survey", pass, m.ledgerNum("survey/"+b.name()+"/centre_u_mm")).V)
	}
	set := l.Leaf("shop/u_setup_mm", "standard uncertainty of placing one clamping", "mm", m.setupFrom, m.setupU)
	hole := l.Leaf("shop/u_hole_mm", "standard uncertainty of placing one hole", "mm", m.holeFrom, m.holeU)
	return mm4(l.Calc(key, "standard uncertainty of its place", "mm", "root of the squares of clamping and hole", "law of propagation, JCGM 100 5.1.2",
		func(in []float64) float64 { return sig9(math.Hypot(in[0], in[1])) }, set, hole).V)
}

// skew is how far a shaft is out of square in plan, as found and after.
func (m *maker) skew(s shaftState) FoundAfter {
	left, right := s.bores[0], s.bores[1]
	holes := []*bore{left, right}
	var in []ledger.Num
	for _, b := range holes {
		in = append(in, m.holeNums(b)...)
		in = append(in, m.ledgerNum("targets/"+b.name()+"/target_mm/0"), m.ledgerNum("targets/"+b.name()+"/target_mm/1"))
	}
	calc := func(k string, centre func(*bore) [2]float64, off func(*bore) float64) *float64 {
		n := m.book.Calc("shafts/"+s.s.Name+"/skew_deg/"+k, "how far the shaft is out of square in plan, "+k, "deg", "atan((x of the left end less x of the right end) / distance of the plates' middles), the shaft under load",
			"plane geometry", func(v []float64) float64 {
				return m.holesAs(holes, v, func() float64 {
					l, r := standing(s, 0, centre, off), standing(s, 1, centre, off)
					d, _, _ := target.Skew(l, r, m.spacing())
					return round6(d)
				})
			}, in...)
		return num(n.V)
	}
	return FoundAfter{Found: calc("found", foundCentre, asFound), After: calc("after", newCentre, m.lift)}
}

// wellAsIs says that no bore of a shaft is worn: round, and its clearance
// inside what is accepted. Both holes of an axle are bushed, or neither.
func (m *maker) wellAsIs(s shaftState) bool {
	for _, b := range s.bores {
		play := 2*b.worn.C + b.worn.W
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

// windowNums records the window of a mesh, once.
func (m *maker) windowNums(x *gear) []ledger.Num {
	if x.nums != nil {
		return x.nums
	}
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
		w.Lo += x.closes
		return w
	}
	const src = "exact involute and worm geometry; planning rule: backlash, contact ratio, tightest tooth"
	x.nums = []ledger.Num{
		l.Calc(key("window_mm/0"), "least centre distance under load", "mm", "where the backlash wanted begins ("+x.window.LoBy+")", src, func(in []float64) float64 { return sig9(again(in).Lo) }, lo, hi, tir, eps, tooth),
		l.Calc(key("window_mm/1"), "largest centre distance under load", "mm", "where the backlash wanted ends ("+x.window.HiBy+")", src, func(in []float64) float64 { return sig9(again(in).Hi) }, lo, hi, tir, eps, tooth),
	}
	return x.nums
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
func round4(f float64) float64 { return dim.Near(f, 4) }

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
	again := lastOf(m.placeAgain)
	var to, fo, ff XY
	for i, axis := range []string{"x", "y"} {
		k := fmt.Sprint(i)
		n := l.Calc(key("target_mm/"+k), axis+" of the new centre", "mm",
			"smallest move, each old centre weighed by how well it is known, that brings the trusted meshes within their backlash limits less the doubt; with no mesh to move it, the weighted mean of the shaft's old centres",
			"weighted least squares inside the limits: plan/target/METHODS.md 1", func(in []float64) float64 { return round4(at(again(in))[i]) }, inputs...)
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
func round6(f float64) float64 { return dim.Near(f, 6) }

// ledgerValue is what the ledger has under a key, else a value of its own.
func (m *maker) ledgerValue(key string, otherwise float64) float64 {
	if e, ok := m.book.Get(key); ok {
		return e.Value
	}
	return sig9(otherwise)
}
