package plan

import (
	"fmt"
	"math"

	"rebush/fits/finding"
	"rebush/fits/ledger"
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
	found := make([][3]float64, len(gears))
	words := make([]string, len(gears))
	for i, x := range gears {
		f, was, w := m.foundMesh(x, shafts)
		found[i], words[i] = [3]float64{f, was}, w
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
		m.p.Mesh = append(m.p.Mesh, m.meshJSON(x, out.Gears[i], found[i][0], found[i][1], words[i]))
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

// targetLedger records a target and its moves.
func (m *maker) targetLedger(b *bore, p target.Placed, t *Target) {
	l := m.book
	key := func(k string) string { return "targets/" + b.name() + "/" + k }
	var at, fo, ff XY
	for i, axis := range []string{"x", "y"} {
		k := fmt.Sprint(i)
		n := l.Leaf(key("target_mm/"+k), axis+" of the new centre", "mm",
			"least move, in units of what is known, that brings the trusted meshes into their narrowed windows (see mesh); else the weighted mean of the shaft's old centres", sig9(p.At[i]))
		o := l.Leaf("survey/"+b.name()+"/centre_mm/"+k, axis+" of the old centre", "mm", "survey", m.ledgerValue("survey/"+b.name()+"/centre_mm/"+k, b.worn.O[i]))
		f := l.Leaf("survey/"+b.name()+"/found_mm/"+k, axis+" of the middle of the hole as found", "mm", m.source("shafts/"+b.shaft.Name+"/bores/"+string(b.b.Side)+"/centre"), m.ledgerValue("survey/"+b.name()+"/found_mm/"+k, b.found[i]))
		less := func(in []float64) float64 { return sig9(in[0] - in[1]) }
		fo[i] = mm4(l.Calc(key("from_original_mm/"+k), axis+" move from the old centre", "mm", "new centre less old centre", "plane geometry", less, n, o).V)
		ff[i] = mm4(l.Calc(key("from_found_mm/"+k), axis+" move from the hole as found", "mm", "new centre less middle of the hole as found", "plane geometry", less, n, f).V)
		at[i] = mm4(n.V)
	}
	t.TargetMM, t.FromOriginalMM, t.FromFoundMM = &at, &fo, &ff
}

// ledgerValue is what the ledger has under a key, else a value of its own.
func (m *maker) ledgerValue(key string, otherwise float64) float64 {
	if e, ok := m.book.Get(key); ok {
		return e.Value
	}
	return sig9(otherwise)
}

// meshJSON writes one mesh, its figures through the ledger.
func (m *maker) meshJSON(x *gear, g target.GearOut, found, was float64, words string) Mesh {
	l := m.book
	key := func(k string) string { return "mesh/" + x.g.Name + "/" + k }
	const src = "exact involute and worm geometry (own derivations checked by flank sampling; ISO 21771, KHK from memory)"
	centre := func(k, what string, a float64) ledger.Num {
		return l.Leaf(key(k), what, "mm", m.source("gears/"+x.g.Name)+", survey and target of its shafts", sig9(a))
	}
	play := func(k, what string, a ledger.Num) MM {
		if math.IsNaN(x.play(a.V)) {
			return ""
		}
		return mm4(l.Calc(key(k), what, "mm", "backlash round the operating pitch circle at that centre distance, not below 0", src,
			func(in []float64) float64 { return sig9(x.play(in[0])) }, a).V)
	}
	row := Mesh{Gear: x.g.Name, Trusted: x.trusted, Words: words}
	f := centre("found_centre_mm", "centre distance under load as found", found)
	o := centre("original_centre_mm", "centre distance under load when new", was)
	mid := centre("target_centre_mm", "centre distance under load at the target, middle of the running clearance", (g.Near+g.Far)/2)
	row.FoundCentreMM, row.TargetCentreMM = mm4(f.V), mm4(mid.V)
	row.FoundBacklashMM = play("found_backlash_mm", "backlash as found", f)
	row.OriginalBacklashMM = play("original_backlash_mm", "backlash when new", o)
	row.TargetBacklashMM = play("target_backlash_mm", "backlash at the target under load", mid)
	// Lifted off its wheels the shaft drops to the other side of its bore.
	lifted := centre("lifted_centre_mm", "centre distance with the truck lifted", 2*g.Centre-(g.Near+g.Far)/2)
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
	at := func(s shaftState, after bool) target.Ends {
		end := func(b *bore) [2]float64 {
			c, off := b.worn.O, asFound(b)
			if after && !s.s.Leave {
				lo, hi := m.clearances(b)
				c, off = b.target, (lo+hi)/4
			}
			return [2]float64{c[0] + off*b.load[0], c[1] + off*b.load[1]}
		}
		return target.Ends{Left: end(s.bores[0]), Right: end(s.bores[len(s.bores)-1])}
	}
	f0, r0 := at(ends[0], false), at(ends[1], false)
	f1, r1 := at(ends[0], true), at(ends[1], true)
	l := m.book
	leaf := func(k, what string, v float64) MM {
		return mm4(l.Leaf("truck/"+k, what, "mm", "survey and target of both axles", sig9(v)).V)
	}
	m.p.Truck.WheelbaseMM = FoundAfterMM{Found: leaf("wheelbase_mm/found", "wheelbase under load as found", target.Wheelbase(f0, r0)),
		After: leaf("wheelbase_mm/after", "wheelbase under load after the job", target.Wheelbase(f1, r1))}
	contacts := 0.0
	for _, s := range ends {
		if s.s.ContactsApart.Given() {
			contacts = s.s.ContactsApart.Float()
		}
	}
	if contacts > 0 && m.spacing() > 0 && len(ends[0].bores) == 2 && len(ends[1].bores) == 2 {
		if g0, err := target.Rock(f0, r0, m.spacing(), contacts); err == nil {
			g1, _ := target.Rock(f1, r1, m.spacing(), contacts)
			m.p.Truck.RockMM = FoundAfterMM{Found: leaf("rock_mm/found", "four-wheel rock as found", g0), After: leaf("rock_mm/after", "four-wheel rock after the job", g1)}
		}
	}
}
