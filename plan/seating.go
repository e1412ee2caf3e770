package plan

import (
	"math"
	"slices"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/seat"
)

// rulesForSeat reads the defaults of the seat search once.
func (m *maker) rulesForSeat() seat.Rules {
	v := m.rules.V
	r := seat.Rules{
		CleanUp: v("cleanup_mm"), BoringHead: v("boring_head_mm"), Turned: v("turned_bush_mm"),
		NoWall: v("wall_none_radii"), LightWall: v("wall_light_radii"), LightShare: v("light_press_share"), UsualShare: v("usual_press_share"),
		PorousPeak: v("porous_peak_mpa"), PorousHold: v("porous_hold_mpa"),
		Smoothing: v("smoothing_factor"), RzSeat: v("rz_seat_um"), RzBush: v("rz_bush_um"),
		HoldN: v("hold_axial_n"), HoldFriction: v("hold_friction"), HoldFactor: v("hold_torque_factor"),
		CompoundShear: v("compound_shear_mpa"), CompoundC: v("compound_c"),
		MandrelStep: v("mandrel_step_mm"), MandrelTotal: v("mandrel_total_mm"),
		OverJournal: v("bore_over_journal_um") / 1000, Pass: v("pass_um") / 1000, ClearMax: v("clearance_max_um") / 1000,
		SeatChamfer: v("seat_chamfer_mm"), ShortShare: v("short_seat_share"),
		Tie: v("seat_chance_tie"), HotK: v("plastic_hot_k"), LeastWall: v("least_wall_mm"), MaxShare: v("most_press_share"), OpenSolid: v("open_solid_mm"),
	}
	r.RunLeast, r.NearRadii, r.FillDeg, r.MetalTie = v("run_least_um")/1000, v("near_radii"), v("fill_contact_deg"), v("seat_metal_tie_mm")
	r.ShoulderOver, r.ShoulderThick = m.rules.Pair("turned_shoulder_mm")
	r.FlowLow, r.FlowHigh = m.rules.Pair("porous_flow_mpa")
	r.GapLow, r.GapHigh = m.rules.Pair("compound_gap_mm")
	lo, hi := m.rules.Pair("mandrel_spring_um")
	r.SpringLow, r.SpringHigh = lo/1000, hi/1000
	lo, hi = m.rules.Pair("clearance_aim_um")
	r.AimLow, r.AimHigh = lo/1000, hi/1000
	r.BushChamferThin, r.BushChamferThick = m.rules.Pair("bush_chamfer_mm")
	r.SideLow, r.SideHigh = m.rules.Pair("side_play_mm")
	lo, hi = m.rules.Pair("cap_slide_um")
	r.CapLow, r.CapHigh = lo/1000, hi/1000
	return r
}

// placing sets how well this shop places a clamping and a hole: by the shop
// file, else by rule for its machine.
func (m *maker) placing() {
	sh := m.j.Shop
	kind := "dials"
	switch {
	case sh.MachineKind == "drill press" && sh.Jig == "pinned", sh.MachineKind == "hand" && sh.Jig == "pinned":
		kind = "jig"
	case sh.MachineKind == "drill press":
		kind = "drill_press"
	case sh.MachineKind == "hand":
		kind = "hand"
	case sh.MachineKind == "lathe":
		kind = "lathe"
	case sh.Readout:
		kind = "readout"
	}
	set := m.rules.Get("setup_u_" + kind + "_mm")
	m.setupU, m.setupFrom = set.Low, set.Address+": "+set.Source
	hole := "hole_u_" + kind + "_mm"
	if kind == "drill_press" {
		hole = "hole_u_jig_mm" // the hole itself; the place is the set-up's
	}
	rule := m.rules.Get(hole)
	m.holeU, m.holeFrom = rule.Low, rule.Address+": "+rule.Source
	at := place(sh.At("machine/location"), "built-in small shop:1")
	if sh.SetupU.Given() {
		m.setupU, m.setupFrom = sh.SetupU.Float(), at
	}
	if sh.HoleU.Given() {
		m.holeU, m.holeFrom = sh.HoleU.Float(), at
	}
}

// seat searches a bush for every bore that is to be dealt with.
func (m *maker) seatAll() {
	m.seatRule = m.rulesForSeat()
	m.stock = m.bushes()
	m.shop = m.seatShop()
	for _, b := range m.bores {
		if !b.touch || !b.targeted {
			continue
		}
		b.hole = m.holeOf(b)
		bushes := m.allowed(b)
		b.answers = seat.Search(b.hole, b.hole.Mends(), bushes, m.shop, m.seatRule)
		if !anyFeasible(b.answers) && m.free(b) {
			b.answers = append(m.fromSeries(b), b.answers...)
		}
		for i := range b.answers {
			if b.answers[i].Feasible {
				b.chosen = &b.answers[i]
				break
			}
		}
		m.p.Seats = append(m.p.Seats, m.seatJSON(b))
		m.seatFindings(b)
	}
	m.sidePlay()
}

// allowed are the bushes that may be considered for a bore: those the job
// chooses, else all.
func (m *maker) allowed(b *bore) []seat.Bush {
	code := m.j.Choose[b.name()]
	if code == "" {
		code = m.j.Choose[""]
	}
	if code == "" {
		return m.stock
	}
	var out []seat.Bush
	for _, s := range m.stock {
		if s.Code == code {
			out = append(out, s)
		}
	}
	return out
}

// holeOf describes a bore to the search.
func (m *maker) holeOf(b *bore) seat.Hole {
	side := b.b.Side
	h := seat.Hole{
		Name: b.name(), S: b.stands().SeatRadius(b.target), UPlace: b.uPlace, USurvey: b.u,
		Journal: b.shaft.Journal.On(side).Float(), JournalU: m.rules.V("u_journal_mm"),
		MustPass: m.mustPass(b), Plate: m.j.Chassis.Thickness.On(side).Float(),
		RoomIn: b.b.RoomIn.Float(), RoomOut: b.b.RoomOut.Float(), SideRoom: math.NaN(),
		TLow: 5, THigh: 45, Plate2: m.plate,
	}
	if m.j.Chassis.TemperatureGiven {
		h.TLow, h.THigh = m.j.Chassis.TemperatureLow, m.j.Chassis.TemperatureHigh
	}
	if b.shaft.LoadN != nil {
		h.Load = *b.shaft.LoadN / float64(max(1, len(b.shaft.Bores)))
	}
	if b.shaft.RPM != nil {
		h.RPM = *b.shaft.RPM
	}
	h.Live = m.j.Chassis.Current == "axles" && b.shaft.Insulated != string(side)
	h.Finish = seat.Finish(m.wantedFinish(b))
	h.Edge, h.EdgeName = m.nearestEdge(b)
	h.Edge2 = m.secondEdge(b)
	h.JournalA = m.shaftExpansion(b.shaft)
	if b.b.Boss.Given() {
		h.BossR = b.b.Boss.Float() / 2
		h.BossE = math.Hypot(b.target[0]-b.worn.O[0], b.target[1]-b.worn.O[1])
	}
	if s := b.b.Seat; s != nil {
		r := m.read(b, "seat", "width")
		d := s.Diameter.Float() - r.bias
		h.Old = &seat.OldSeat{Low: d - r.u, High: d + r.u, Sound: s.Sound}
	}
	if b.b.Cap {
		h.Cap = 2 * b.worn.R
	}
	if b.shaft.HubToHub.Given() && m.j.Chassis.Width.Given() {
		lo, _ := m.rules.Pair("side_play_mm")
		// Washers can come out where a flange goes in.
		h.SideRoom = b.shaft.HubToHub.Float() - m.j.Chassis.Width.Float() - lo
		// A flange in the other plate takes as much.
		sharing := 0
		for _, o := range m.on(b.shaft.Name) {
			if o.touch && o.targeted {
				sharing++
			}
		}
		h.SideRoom /= float64(max(1, sharing))
	}
	if m.shop.Compound && !h.Live {
		h.Fill = fillRadius(b, m.seatRule.FillDeg)
	}
	for _, o := range m.bores {
		if o == b || o.b.Side != side || !o.known {
			continue
		}
		at, r := o.stands().O, o.stands().R+o.worn.W
		h.Near = append(h.Near, seat.Near{Name: o.name(), At: math.Hypot(at[0]-b.target[0], at[1]-b.target[1]), R: r})
	}
	return h
}

// wantedFinish is how the job wants a bore to come to its size, "" any way.
func (m *maker) wantedFinish(b *bore) string {
	if f := m.j.Finish[b.name()]; f != "" {
		return f
	}
	return m.j.Finish[""]
}

func (m *maker) mustPass(b *bore) float64 { return b.shaft.Through(b.b.Side) }

func (m *maker) washers(s *job.Shaft) float64 {
	sum := 0.0
	for _, w := range s.Washers {
		sum += w.Float()
	}
	return sum
}

// reachFrom is how far the wall of the hole lies from a point inside it in a
// direction.
func (m *maker) reachFrom(b *bore, from [2]float64, deg float64) float64 {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	lo, hi := 0.0, 4*(b.worn.R+b.worn.D)
	for range 60 {
		mid := (lo + hi) / 2
		if b.stands().Gap([2]float64{from[0] + mid*cos, from[1] + mid*sin}) < 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// nearest puts the bushes that cannot be seated in the order of how many
// questions they passed, so that the first reason is not that of a bush held
// against a tool which was never meant for it.
func nearest(fell []seat.Answer) []seat.Answer {
	out := slices.Clone(fell)
	slices.SortStableFunc(out, func(a, b seat.Answer) int { return int(b.Fail.Question - a.Fail.Question) })
	return out
}

// seatFindings says what the chosen seat wants said, or that there is none.
func (m *maker) seatFindings(b *bore) {
	f := &m.p.Findings
	if b.chosen == nil {
		text := say.Text("no bush on the list can be seated here")
		if len(b.answers) == 0 {
			text = "there is no bush to choose from"
		}
		for i, a := range nearest(b.answers) {
			if i == 3 {
				break
			}
			text += say.F("; %s with %s (%v)", a.Bush.Code, a.Way.Name, a.Fail.Text())
		}
		fix := say.Text("")
		if len(b.answers) > 0 {
			fix = nearest(b.answers)[0].Fail.Question.WouldSeat()
		}
		if len(b.answers) == 0 {
			fix = "measure the bushes in the drawer into bushes:, or add {make: turned} there and lathe: yes to the shop file"
		}
		if order := m.assembly(b); order != "" {
			fix = order
		}
		m.say(finding.Stop, "seat/no seat", b,
			text, fix)
		return
	}
	a := b.chosen
	if b.b.Bushed {
		m.say(finding.Caution, "seat/old bush in", b,
			"the old bush is still in and its seat is not known: the new one may not clear it", "push it out, measure the diameter and the middle of its seat, and plan again: a sound one is renewed and nothing is cut")
	}
	if a.Slackens {
		f.Raise(finding.Caution, "seat/press slackens", m.j.Place(b.name()),
			say.F("this press puts %.0f MPa of tension into the casting and zinc creeps above %.0f: over the years it will slacken", a.Peak, m.plate.Creep), say.F("hold it %s as well, or take a larger seat or a lighter press", heldBy[a.Second.String()])).Against(sig9(a.Peak), m.plate.Creep, "MPa")
	}
	if a.OverYield {
		f.Raise(finding.Caution, "seat/rim yields", m.j.Place(b.name()),
			"the rim of the seat yields a little: ordinary practice in clock plates", "a smaller bush or a lighter press").Against(sig9(a.Peak), sig9(a.PeakLimit), "MPa")
	}
	if a.Unproven && a.Second == 0 {
		m.say(finding.Note, "seat/holding unproven", b,
			say.F("a porous bush: its holding of %.0f N is worked out without roughness and is not proven", a.Force[0]), "")
	}
	if a.Second != 0 && !a.Slackens {
		m.say(finding.Caution, "seat/second hold", b,
			say.F("the press alone is not enough here (%v): %s", m.holdWords(b), a.Second), secondFix(a))
	}
	if a.UHigh > m.seatRule.UsualShare*a.SeatLow+1e-9 && a.HeldBy == "press" {
		f.Raise(finding.Caution, "seat/heavy press", m.j.Place(b.name()),
			say.F("a press of up to %v is tighter than the %v of the makers' tightest fit for such a bush", say.Um(a.UHigh*1000, 0), say.Um(m.seatRule.UsualShare*a.SeatLow*1000, 0)), "a larger seat or a smaller bush").Against(sig9(a.UHigh*1000), sig9(m.seatRule.UsualShare*a.SeatLow*1000), "um")
	}
	m.wallFindings(b)
	if a.PVHigh {
		m.say(finding.Caution, "seat/pv", b,
			say.F("pv of %.2f MPa m/s is above the cautious figure for %s", a.PV, a.Bush.Metal.Name), "oil it often, or a longer bush")
	}
	if a.Bush.ToBuy {
		m.say(finding.Note, "seat/to buy", b,
			say.F("bush %s is not on the shelf: it has to be bought", a.Bush.Code), "")
	}
	if a.Proud > 0.005 {
		m.say(finding.Note, "seat/bush proud", b,
			say.F("the bush is %v longer than the plate: %s", say.MM(a.Proud, 2), proudWords(a)), "")
	}
}

// holdWords says by how much a press falls short, or why it is not counted on.
func (m *maker) holdWords(b *bore) say.Text {
	a, r := b.chosen, m.seatRule
	var out []say.Text
	if a.Force[0] < r.HoldN-1e-9 {
		out = append(out, say.F("holds %v along, needs %v", say.Force(a.Force[0], "N"), say.Num(r.HoldN, 0, "N")))
	}
	if need := r.HoldFactor * r.HoldFriction * b.hole.Load * b.hole.Journal / 2; a.Torque[0] < need-1e-9 {
		out = append(out, say.F("holds %v turning, needs %v", say.Force(a.Torque[0], "N mm"), say.Force(need, "N mm")))
	}
	if t := a.LooseAt; t > b.hole.TLow && t < b.hole.THigh {
		out = append(out, say.F("it may come loose at %v", say.Num(t, 0, "C")))
	}
	if a.Bush.Metal.Plastic {
		out = append(out, "plastic gives way in time")
	}
	if len(out) == 0 {
		out = append(out, say.F("only a light press may go beside %v of metal", say.MM(a.Ligament, 2)))
	}
	return say.Join("; ", out...)
}

// heldBy says a second hold in a sentence.
var heldBy = map[string]string{"flange": "by its flange", "compound": "with retaining compound", "stake": "by staking it",
	"flange and compound": "by its flange and with retaining compound", "flange and stake": "by its flange and by staking it"}

// secondFix is how a second hold is made, and what would do without it.
func secondFix(a *seat.Answer) say.Text {
	var how []string
	for _, h := range strings.Split(a.Second.String(), " and ") {
		how = append(how, map[string]string{"flange": "the flange takes the thrust",
			"compound": "compound goes on a clean, degreased outside",
			"stake":    "stake it with three light punch marks round the edge of the seat"}[h])
	}
	return say.Words(strings.Join(how, " and ")) + "; a longer bush or a larger seat holds more by itself"
}

// say adds a finding about a bore, pointing at its line in the job.
func (m *maker) say(level finding.Level, rule finding.Rule, b *bore, text, fix say.Text) {
	m.p.Findings.Raise(level, rule, m.j.Place(b.name()), text, fix)
}
