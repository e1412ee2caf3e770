package plan

import (
	"fmt"
	"math"

	"rebush/fits/dim"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/seat"
)

// seatJSON writes one bore's seat as it is printed, with its numbers computed
// through the ledger.
func (m *maker) seatJSON(b *bore) Seat {
	s := Seat{Bore: b.name(), HeldBy: "press", Finish: string(seat.ToOwnAxle)}
	for _, a := range b.answers {
		c := Candidate{Bush: a.Bush.Code, Tool: a.Way.Name, Feasible: a.Feasible}
		if a.HeldBy == "compound" {
			c.Tool += ", with compound"
		}
		if a.Feasible {
			c.Chance = num(math.Round(a.Chance*1e6) / 1e6)
			c.Reason = chosenWords(a)
		} else {
			c.Chance = num(0)
			c.Reason = a.Fail.Text()
		}
		s.Candidates = append(s.Candidates, c)
	}
	if b.chosen == nil {
		lim := seat.BoreLimits(b.hole, m.seatRule)
		s.HeldBy, s.Finish = "", ""
		if lim[0] <= lim[1] {
			s.BoreMM = dim.Limits(lim[0], lim[1])
		}
		return s
	}
	a := b.chosen
	s.Bush, s.HeldBy, s.Finish, s.Tool, s.Second = a.Bush.Code, string(a.HeldBy), string(a.Finish), a.Way.Name, a.Second.String()
	m.explainSeat(b, &s)
	return s
}

func chosenWords(a seat.Answer) say.Text {
	if math.IsInf(a.Ligament, 1) {
		return ""
	}
	return say.F("leaves %v at the edge", say.MM(a.Ligament, 2))
}

// explainSeat computes the chosen seat's figures through the ledger.
func (m *maker) explainSeat(b *bore, s *Seat) {
	a, l := b.chosen, m.book
	key := func(k string) string { return "seats/" + b.name() + "/" + k }
	odLow, odHigh, boLow, boHigh := m.bushLeaves(b)
	way := m.wayLeaf(b)

	seatLow := l.Calc(key("seat_mm/min"), "least diameter of the seat", "mm", "least hole that "+a.Way.Name+" leaves", wayRule(a.Way), pass, way[0])
	seatHigh := l.Calc(key("seat_mm/max"), "largest diameter of the seat", "mm", "largest hole that "+a.Way.Name+" leaves", wayRule(a.Way), pass, way[1])
	s.SeatMM = dim.Limits(seatLow.V, seatHigh.V)
	if a.Way.Kind == seat.Reamer || a.Way.Kind == seat.OldSeatWay {
		s.SeatMM = dim.Sizes(seatLow.V, seatHigh.V)
	}

	if !math.IsInf(a.CleanUp, 1) {
		needR := m.clearsNum(b)
		c := l.Calc(key("cleanup_mm"), "seat radius less what the wear needs", "mm", "half the least seat less the radius that clears the wear", "plane geometry",
			func(in []float64) float64 { return in[0]/2 - in[1] }, seatLow, needR)
		s.CleanupMM = mm3(c.V)
	}
	uLow := l.Calc(key("interference_um/min"), "least interference on diameter", "um", "smallest bush less largest seat", "limits of bush and seat", lessUm, odLow, seatHigh)
	uHigh := l.Calc(key("interference_um/max"), "largest interference on diameter", "um", "largest bush less smallest seat", "limits of bush and seat", lessUm, odHigh, seatLow)
	s.InterferenceUM = minMax(uLow.V, uHigh.V)

	if !math.IsInf(a.Ligament, 1) {
		edge := m.edgeNum(b)
		left := l.Calc(key("metal_left_mm"), "metal left between seat and edge", "mm", "distance of the edge less half the largest seat", "plane geometry",
			func(in []float64) float64 { return in[0] - in[1]/2 }, edge, seatHigh)
		s.MetalLeftMM = mm3(left.V)
	}
	if a.HeldBy == "press" {
		m.explainPress(b, s, uLow, uHigh, seatLow, seatHigh)
	} else {
		s.PressureMPa = minMax(0, 0)
		s.ClosureUM = minMax(0, 0)
		s.ForceN, s.TorqueNmm = minMax(a.Force[0], a.Force[1]), minMax(a.Torque[0], a.Torque[1])
		if a.HeldBy == "compound" {
			tau := m.ruleLeaf("compound_shear_mpa")
			con := m.contactNum(b)
			in := []ledger.Num{tau, seatLow, con}
			if a.Filled {
				in = append(in, m.ruleLeaf("fill_contact_deg"))
			}
			f := l.Calc(key("force_n/min"), "force along the axle that the compound holds", "N", "shear strength times the seat's surface, as far round as its wall is sound", "rule compound_shear_mpa",
				func(in []float64) float64 {
					f := in[0] * math.Pi * in[1] * in[2]
					if len(in) > 3 {
						f *= in[3] / 360
					}
					return f
				}, in...)
			s.ForceN = minMax(f.V, f.V)
			t := l.Calc(key("torque_nmm/min"), "torque that the compound holds", "N mm", "that force at half the seat's diameter", "statics",
				func(in []float64) float64 { return in[0] * in[1] / 2 }, f, seatLow)
			s.TorqueNmm = minMax(t.V, t.V)
		}
	}
	m.explainBore(b, s, boLow, boHigh)
	if !math.IsNaN(a.LooseAt) {
		al := l.Leaf(key("expansion_plate"), "expansion of "+m.plate.Name, "1e-6/K", m.matter(m.chassis, "expansion", false), m.plate.Alpha)
		be := l.Leaf(key("expansion_bush"), "expansion of "+a.Bush.Metal.Name, "1e-6/K", m.matter(m.bushMaterial(b), "expansion", false), a.Bush.Metal.Alpha)
		smooth := m.smoothLeaf(b)
		at := l.Calc(key("loose_at_c"), "temperature at which the least press is gone", "C", "20 + (least interference less smoothing) / (seat diameter x difference of expansion)", "linear expansion",
			func(in []float64) float64 { return 20 + (in[0]-in[1])/1000/(in[2]*(in[3]-in[4])*1e-6) }, uLow, smooth, seatHigh, al, be)
		s.LooseAtC = num(at.V)
	}
	if !math.IsNaN(a.PV) {
		load := l.Leaf(key("load_n"), "load on this bearing", "N", m.source("shafts/"+b.shaft.Name+"/load")+", shared between the bearings of the shaft", b.hole.Load)
		rpm := l.Leaf(key("rpm"), "speed of the shaft", "rev/min", m.source("shafts/"+b.shaft.Name+"/rpm"), b.hole.RPM)
		ln := l.Leaf(key("length_mm"), "length of the bearing", "mm", m.bushSource(b, "length"), a.Bearing)
		pv := l.Calc(key("pv"), "pressure times rubbing speed", "MPa m/s", "load / (journal x length) x pi x journal x speed / 60000", "projected area, plain bearing practice",
			func(in []float64) float64 { return in[0] / in[1] * math.Pi * in[2] / 60000 }, load, ln, rpm)
		s.PV = num(pv.V)
	}
}

// explainBore records the limits of the finished bore and the clearance.
func (m *maker) explainBore(b *bore, s *Seat, boLow, boHigh ledger.Num) {
	l, h := m.book, b.hole
	key := func(k string) string { return "seats/" + b.name() + "/" + k }
	journal := l.Leaf(key("journal_mm"), "journal", "mm", m.source("shafts/"+b.shaft.Name+"/journal"), h.Journal)
	over := m.ruleLeaf("bore_over_journal_um")
	top := m.ruleLeaf("clearance_max_um")
	through := l.Leaf(key("must_pass_mm"), "largest diameter that has to go through (0: nothing larger)", "mm", m.source("shafts/"+b.shaft.Name+"/must_pass"), h.MustPass)
	room := m.ruleLeaf("pass_um")
	in := []ledger.Num{journal, over, through, room}
	if b.chosen.WarmRules {
		in = append(in, m.warmNum(b, journal))
	}
	lo := l.Calc(key("bore_mm/min"), "least finished bore", "mm", "the largest of journal + least clearance, what must pass + room, and what still runs at the hot or cold end of use", "rules bore_over_journal_um, pass_um and run_least_um",
		func(in []float64) float64 {
			v := in[0] + in[1]/1000
			if in[2] > 0 {
				v = math.Max(v, in[2]+in[3]/1000)
			}
			if len(in) > 4 {
				v = math.Max(v, in[4])
			}
			return v
		}, in...)
	hi := l.Calc(key("bore_mm/max"), "largest finished bore", "mm", "journal + largest clearance accepted", "rule clearance_max_um",
		func(in []float64) float64 { return in[0] + in[1]/1000 }, journal, top)
	s.BoreMM = dim.Limits(lo.V, hi.V)
	rl := l.Calc(key("running_um/min"), "least running clearance on diameter", "um", "least finished bore less journal", "rule bore_over_journal_um", lessUm, lo, journal)
	rh := l.Calc(key("running_um/max"), "largest running clearance on diameter", "um", "largest finished bore less journal", "rule clearance_max_um", lessUm, hi, journal)
	s.RunningUM = minMax(rl.V, rh.V)
	if s.ClosureUM != nil && s.ClosureUM.Min != nil && b.chosen.HeldBy == "press" {
		cMin := ledger.Num{Key: key("closure_um/min"), V: *s.ClosureUM.Min}
		cMax := ledger.Num{Key: key("closure_um/max"), V: *s.ClosureUM.Max}
		if e, ok := l.Get(cMin.Key); ok {
			cMin.V = e.Value
		}
		if e, ok := l.Get(cMax.Key); ok {
			cMax.V = e.Value
		}
		after := func(in []float64) float64 { return in[0] - in[1]/1000 }
		cl := l.Calc(key("closed_mm/min"), "least bore after pressing", "mm", "smallest bore of the bush less the largest closure", "as the closure", after, boLow, cMax)
		ch := l.Calc(key("closed_mm/max"), "largest bore after pressing", "mm", "largest bore of the bush less the least closure", "as the closure", after, boHigh, cMin)
		s.ClosedMM = dim.Sizes(cl.V, ch.V)
	} else {
		s.ClosedMM = dim.Sizes(b.chosen.Closed[0], b.chosen.Closed[1])
	}
	s.ExpectedMM = m.expected(b)
}

func pass(in []float64) float64   { return in[0] }
func lessUm(in []float64) float64 { return (in[0] - in[1]) * 1000 }

func orText[T ~string](s, otherwise T) T {
	if s == "" {
		return otherwise
	}
	return s
}

func slackWords(a *seat.Answer) string {
	if a.Slackens {
		return ", after it has given way over the years"
	}
	return ""
}

func wayRule(w seat.Way) string {
	switch w.Kind {
	case seat.Reamer:
		return "ISO 522 / DIN 1420 reamer limits, rule oversize_share_of_tolerance"
	case seat.BoringHead:
		return "rule boring_head_mm"
	case seat.EndMill:
		return "rule end_mill_mm"
	}
	return "as measured"
}

// bushLeaves records the limits of the chosen bush.
func (m *maker) bushLeaves(b *bore) (odLow, odHigh, boLow, boHigh ledger.Num) {
	a, l := b.chosen, m.book
	key := func(k string) string { return "seats/" + b.name() + "/bush/" + k }
	od, bo := m.bushSource(b, "od"), m.bushSource(b, "bore")
	return l.Leaf(key("od_mm/min"), "least outside of the bush", "mm", od, a.Bush.ODLow), l.Leaf(key("od_mm/max"), "largest outside of the bush", "mm", od, a.Bush.ODHigh),
		l.Leaf(key("bore_mm/min"), "least bore of the bush", "mm", bo, a.Bush.BLow), l.Leaf(key("bore_mm/max"), "largest bore of the bush", "mm", bo, a.Bush.BHigh)
}

func (m *maker) bushSource(b *bore, what string) string {
	a := b.chosen
	if a.Bush.Turned {
		return m.rules.Get("turned_bush_mm").Address + ": turned for this seat"
	}
	if a.Bush.Source != "" {
		return a.Bush.Source
	}
	src := m.source(fmt.Sprintf("bushes/%d", a.Bush.Index))
	for i := range m.j.Bushes {
		if m.j.Bushes[i].Code != a.Bush.Code {
			continue
		}
		size := m.j.Bushes[i].OD
		if what == "bore" {
			size = m.j.Bushes[i].Bore
		}
		if size.Class != "" {
			if d, err := m.limits.Class(size.Nominal, size.Class); err == nil {
				src += fmt.Sprintf(": %s %s, ISO 286 (%s)", size.Nominal, size.Class, join(d.Sources))
			}
		}
	}
	return src
}

func join(list []string) string {
	out := ""
	for i, s := range list {
		if i > 0 {
			out += ", "
		}
		out += s
	}
	return out
}

// wayLeaf records the limits that the seat's tool leaves.
func (m *maker) wayLeaf(b *bore) [2]ledger.Num {
	a, l := b.chosen, m.book
	src := m.source("shafts/"+b.shaft.Name+"/bores/"+string(b.b.Side)+"/seat") + ", as measured"
	switch a.Way.Kind {
	case seat.BoringHead:
		src = m.rules.Get("boring_head_mm").Address + " about the size that was chosen"
	case seat.EndMill:
		src = m.rules.Get("end_mill_mm").Address + ", " + place(m.j.Shop.At("end_mills"), "built-in small shop:1")
	case seat.Reamer:
		src = place(m.j.Shop.At(fmt.Sprintf("reamers/%d", a.Way.Index)), "built-in small shop:1") + ", " + wayRule(a.Way)
	}
	key := func(k string) string { return "seats/" + b.name() + "/tool/" + k }
	return [2]ledger.Num{
		l.Leaf(key("hole_mm/min"), "least hole that "+a.Way.Name+" leaves", "mm", src, a.SeatLow),
		l.Leaf(key("hole_mm/max"), "largest hole that "+a.Way.Name+" leaves", "mm", src, a.SeatHigh),
	}
}

func (m *maker) smoothLeaf(b *bore) ledger.Num {
	if met := b.chosen.Bush.Metal; met.Porous || met.Plastic {
		return m.book.Leaf("rules/no smoothing", "smoothing of a porous or plastic bush", "um", m.rules.Get("smoothing_factor").Address+": not meant for a porous face", 0)
	}
	k, rb, rs := m.ruleLeaf("smoothing_factor"), m.ruleLeaf("rz_bush_um"), m.ruleLeaf("rz_seat_um")
	return m.book.Calc("rules/smoothing", "what roughness takes off a press", "um", "factor x (Rz of the bush + Rz of the seat)", "DIN 7190 smoothing rule: fits/press/METHODS.md 5",
		func(in []float64) float64 { return in[0] * (in[1] + in[2]) }, k, rb, rs)
}

// ruleLeaf records a rule as a leaf and keeps it for the list of the rules
// that decided something.
func (m *maker) ruleLeaf(name string) ledger.Num {
	r := m.rules.Get(name)
	m.used(name)
	return m.book.Leaf("rules/"+name, r.What, r.Unit, r.Address+": "+r.Source, r.Low)
}

func (m *maker) used(name string) {
	for _, u := range m.p.Rules {
		if u.Name == name {
			return
		}
	}
	r := m.rules.Get(name)
	m.p.Rules = append(m.p.Rules, RuleUsed{Name: name, What: r.What, Value: valueOf(r), Source: r.Source})
}

func (m *maker) source(path string) string { return place(m.j.At(path), m.j.File) }

func (m *maker) limitSource() string {
	if m.plate.Casting {
		m.used("casting_stress_share")
		weakest, _ := m.chassis.Weakest()
		return m.rules.Get("casting_stress_share").Address + " of the least tensile strength, as cast or aged (" +
			weakest.Address + ": " + weakest.Source + "), never above yield"
	}
	if !m.plate.YieldKnown {
		return m.rules.Get("plate_unknown_yield_mpa").Address + ": yield of a temper that is not said"
	}
	return m.matter(m.chassis, "yield_tension", false) + ": yield; at the rim only a caution"
}

func (m *maker) frictionSource() string {
	if m.j.Shop.FrictionLow > 0 {
		return place(m.j.Shop.At("friction"), "shop file")
	}
	m.used("friction")
	return m.rules.Get("friction").Address + ": " + m.rules.Get("friction").Source
}

// expected records where the finished bore will lie: as it closed, or as the
// tool that sizes it leaves it.
func (m *maker) expected(b *bore) *MMRange {
	a, l := b.chosen, m.book
	at := func(k string) string { return "seats/" + b.name() + "/" + k }
	calc := func(i int, k string) MM {
		if a.Finish == seat.AsDelivered {
			if _, ok := l.Get(at("closed_mm/" + k)); ok {
				return mm3(l.Calc(at("expected_mm/"+k), k+" finished bore expected", "mm", "as the bush closes", "as the closure", pass, m.ledgerNum(at("closed_mm/"+k))).V)
			}
		}
		src := place(m.j.Shop.At("machine"), "built-in small shop:1") + ", " + string(a.Finish)
		switch a.Finish {
		case seat.Mandrel:
			src = place(m.j.Shop.At("mandrels"), "built-in small shop:1") + ", rule mandrel_spring_um"
		case seat.Ream:
			src = place(m.j.Shop.At("reamers"), "built-in small shop:1") + ", reamer limits by ISO 522 / DIN 1420"
		case seat.ToOwnAxle:
			src = m.rules.Get("clearance_aim_um").Address + " over the journal: eased until its own axle runs"
		}
		return mm3(l.Leaf(at("expected_mm/"+k), k+" finished bore expected", "mm", src, a.Expected[i]).V)
	}
	return &MMRange{Min: calc(0, "min"), Max: calc(1, "max")}
}
