package plan

import (
	"math"
	"sort"

	"rebush/feeds/drills"
	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/material"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/route"
	"rebush/plan/seat"
)

// routing lays out the operations for the seats that were chosen.
func (m *maker) routing() {
	r := m.routeOf(m.bores)
	for _, t := range r.Troubles {
		m.p.Findings.Raise(t.Level, t.Rule, m.j.Place(t.Where), t.Text, t.Fix).Against(sig9(t.Have), sig9(t.Want), "mm")
	}
	for _, s := range r.Setups {
		m.p.Setups = append(m.p.Setups, Setup{Name: s.Name, Words: s.Words, Plate: s.Up, Mirrored: s.Mirrored, Bores: s.Bores, Clamping: s.Clamping})
	}
	for _, o := range r.Operations {
		m.p.Operations = append(m.p.Operations, m.operationJSON(o))
	}
	m.p.LayOut = r.LayOut
	for _, b := range r.Buy {
		m.p.Buy = append(m.p.Buy, BuyLine(b))
	}
	for _, b := range m.bores {
		if b.chosen != nil && b.chosen.Bush.ToBuy {
			m.p.Buy = append(m.p.Buy, BuyLine{What: say.F("bush %s", b.chosen.Bush.Code), Why: b.name()})
		}
	}
	for _, p := range r.Proving {
		m.p.Proving = append(m.p.Proving, Step(p))
	}
	m.hazards(r.Operations)
}

// routeOf turns seats, shop and job into the route room's terms.
func (m *maker) routeOf(bores []*bore) route.Route {
	c := m.j.Chassis
	kind := m.chassis.Kind
	j := route.Job{Width: c.Width.Float(), Length: c.Length.Float(), Plate: m.chassis.Name, Casting: m.plate.Casting,
		Unsure:    m.unsure(),
		Soft:      kind != material.Steel && kind != material.CastIron,
		Magnesium: kind == material.MagnesiumCasting, Leaded: m.chassis.Leaded,
		Current: c.Current == "axles", DatumWords: m.j.Datum}
	for _, f := range c.Features {
		j.Features = append(j.Features, f.Name)
		if f.At.Given() {
			j.Marks = append(j.Marks, route.Mark{Name: f.Name, Side: string(f.Plate), At: f.At.Float()})
		}
	}
	for _, b := range m.bores {
		if b.known && b.shaft.Leave {
			j.Marks = append(j.Marks, route.Mark{Name: b.name(), Side: string(b.b.Side), At: b.found})
		}
	}
	for i := range m.j.Shafts {
		s := &m.j.Shafts[i]
		j.Rods = j.Rods || s.Rods
		j.Shafts = append(j.Shafts, m.routeShaft(s))
		for _, p := range m.p.Shafts {
			if p.Shaft == s.Name && p.SidePlayMM != nil && !s.Leave {
				lo, hi := m.rules.Pair("side_play_mm")
				j.SidePlayWords = append(j.SidePlayWords, say.F("Side play of %s: planned %v (%v)", s.Name, say.MM(p.SidePlayMM.Min.Float(), 3), say.MMs(lo, hi, 1)))
			}
		}
	}
	for _, b := range bores {
		if b.chosen != nil {
			j.Bores = append(j.Bores, m.routeBore(b))
		}
	}
	for _, x := range m.gears {
		lo, hi := x.play(x.window.Lo), x.play(x.window.Hi)
		if !x.wish.Normal {
			lo, hi = x.wish.Lo, x.wish.Hi
		}
		j.Gears = append(j.Gears, route.GearCheck{Name: x.g.Name, Shaft: x.g.Wheel.On, Backlash: [2]float64{lo, hi}})
	}
	return route.Make(j, m.routeShop(), m.cutter(), m.routeRules())
}

// routeShaft tells how an axle goes together.
func (m *maker) routeShaft(s *job.Shaft) route.Shaft {
	out := route.Shaft{Name: s.Name, BackToBack: s.BackToBack.Float(), HubToHub: s.HubToHub.Float(),
		Wheels: s.WheelDiameter.Given() || s.BackToBack.Given() || s.ContactsApart.Given() || s.Insulated == "left" || s.Insulated == "right"}
	if s.Insulated == "left" || s.Insulated == "right" {
		out.Insulated = s.Insulated
	}
	for i, side := range job.Sides {
		out.Journal[i] = s.Journal.On(side).Float()
		if d := s.MustPass.On(side).Float(); d > 0 {
			out.MustPass[i] = d
		} else {
			out.MustPass[i] = s.Unworn.On(side).Float()
		}
	}
	for _, g := range m.j.Gears {
		out.Gear = out.Gear || g.Wheel.On == s.Name || g.Pinion != nil && g.Pinion.On == s.Name
	}
	return out
}

func (m *maker) routeBore(b *bore) route.Bore {
	a := b.chosen
	x := route.Bore{Name: b.name(), Shaft: b.shaft.Name, Side: string(b.b.Side), Plate: b.hole.Plate, At: b.target,
		Old: b.stands().O, Repaired: moved(b), Found: 2 * b.worn.R,
		S: b.hole.S, Allow: seat.Allow(b.hole, m.seatRule), Wear: b.worn.W, Ligament: a.Ligament,
		WayName: a.Way.Name, WaySize: a.Way.Size, Seat: m.seatLimits(a),
		Bush: a.Bush.Code, BushMade: a.Bush.Turned, Bushed: b.b.Bushed, BushMetal: a.Bush.Metal.Name,
		OD: [2]float64{a.Bush.ODLow, a.Bush.ODHigh}, U: [2]float64{a.ULow, a.UHigh},
		Length: a.Bush.Length, FlangeOD: a.Bush.FlangeOD, Proud: a.Proud, Porous: a.Bush.Metal.Porous, Leaded: a.Bush.Metal.Leaded,
		HeldBy: string(a.HeldBy), Second: a.Second.String(), PressN: a.Force, Finish: string(a.Finish), FinishTool: a.FinishTool, FinishSizes: a.FinishSizes, MandrelIn: a.MandrelIn, Filled: a.Filled,
		Limits: a.Bore, Expected: a.Expected, Closed: a.Closed, Journal: b.hole.Journal, LoadDeg: math.NaN(), IfLarge: m.ifLarge(b)}
	if b.load != [2]float64{} {
		x.LoadDeg = math.Atan2(b.load[1], b.load[0]) * 180 / math.Pi
	}
	if a.Filled {
		// The lobe is not cleared here: the tool stands on the old wall all
		// round it, and what the seat does not take in is filled.
		x.S, x.Allow = b.worn.R, 0
	}
	// The least that the press will need is with low friction at the least
	// interference, before the plate slackens.
	if a.HeldBy == "press" {
		low := a.Stress.At(a.ULow).P
		x.PressN[0] = m.shop.FrictionLow * math.Pi * a.SeatHigh * a.Contact * low
	}
	switch a.Way.Kind {
	case seat.Reamer:
		x.Way = "reamer"
		t := m.j.Shop.Reamers[a.Way.Index]
		x.Reach, x.Shank = t.Reach.Float(), t.Shank.Float()
	case seat.BoringHead:
		x.Way = "boring head"
	case seat.EndMill:
		x.Way = "end mill"
		t := m.j.Shop.EndMills[a.Way.Index-len(m.j.Shop.Reamers)-1]
		x.Reach, x.Shank = t.Reach.Float(), t.Shank.Float()
	case seat.OldSeatWay:
		x.Way = "old seat"
	case seat.CapWay:
		x.Way = "cap"
	}
	if a.Bush.Turned {
		x.BushSizes = say.F("outside %v, bore %v, length %v, %s", say.Limits(a.Bush.ODLow, a.Bush.ODHigh, 3),
			say.Limits(a.Bush.BLow, a.Bush.BHigh, 3), say.MM(a.Bush.Length, 2), a.Bush.Metal.Name)
		if a.Bush.FlangeOD > 0 {
			x.BushSizes += say.F(", with a shoulder of %v, %v thick", say.MM(a.Bush.FlangeOD, 1), say.MM(a.Bush.FlangeT, 2))
		}
	}
	if o := b.b.Oil; o != nil {
		x.Oil = &route.Oil{AtDeg: o.AtDeg, Diameter: o.Diameter.Float()}
	}
	return x
}

// ifLarge says what to go on with where a seat comes out too large: the best
// candidate with a larger outside, else what can be turned or glued.
func (m *maker) ifLarge(b *bore) say.Text {
	if b.chosen.Mend == seat.Renew {
		return ""
	}
	for _, a := range b.answers {
		if a.Feasible && a.SeatLow > b.chosen.SeatHigh+1e-9 && !a.Bush.Turned && !a.Bush.ToBuy {
			return say.F("too large: go on to bush %s, seat %v by %s", a.Bush.Code, say.Limits(a.SeatLow, a.SeatHigh, 3), a.Way.Name)
		}
	}
	switch {
	case m.shop.Lathe:
		return "too large: turn a bush to the hole as it is"
	case m.shop.Compound && !b.chosen.Bush.Metal.Porous:
		return say.F("too large by %v or more: retaining compound instead of the press", say.MM(0.02, 2))
	}
	return "too large: stop, and look for a bush with a larger outside"
}

func (m *maker) routeShop() route.Shop {
	sh := m.j.Shop
	s := route.Shop{Machine: sh.MachineKind, Readout: sh.Readout, Jig: sh.Jig == "pinned", ApproachX: sh.ApproachX, ApproachY: sh.ApproachY,
		Lathe: sh.Lathe, PressN: sh.PressN, MaxDrill: sh.MaxDrill.Float(), BoringFrom: sh.BoringFrom.Float(), BoringTo: sh.BoringTo.Float()}
	s.Drills = m.ownedDrills()
	for _, t := range sh.EndMills {
		s.EndMills = append(s.EndMills, route.Tool{Name: t.Name + " end mill", Size: t.Size.Float(), Reach: t.Reach.Float(), Shank: t.Shank.Float(), For: t.For.Float()})
	}
	sort.SliceStable(s.EndMills, func(i, k int) bool { return s.EndMills[i].Size < s.EndMills[k].Size })
	if p := sh.Pins; p != nil && p.Step.Float() > 0 {
		// A step that is whole in ten-thousandths of an inch and not in
		// micrometres belongs to a set in inches.
		inch := p.Step.Um().IsInteger()
		s.Pins = &route.Pins{From: p.From.Float(), To: p.To.Float(), Step: p.Step.Float(), Inch: !inch}
	}
	return s
}

// ownedDrills lists every drill of the shop, its series and its single ones.
func (m *maker) ownedDrills() []route.Tool {
	sh := m.j.Shop
	var singles []drills.Tool
	for i, t := range sh.Drills {
		singles = append(singles, drills.Tool{Name: t.Name, Size: t.Size, Index: i})
	}
	owned, err := m.drills.Owned(sh.DrillSeries, singles, sh.MaxDrill)
	if err != nil {
		pos := sh.At("drills")
		m.p.Findings.Raise(finding.Caution, "route/drills", finding.Place{Where: "", File: pos.File, Line: pos.Line, Column: pos.Column},
			say.F("%v", err),
			"correct the drills in the shop file")
	}
	var out []route.Tool
	for _, o := range owned {
		t := route.Tool{Name: o.Name + " drill", Size: o.Size.Float()}
		if o.Index >= 0 && o.Index < len(sh.Drills) {
			own := sh.Drills[o.Index]
			t.Reach, t.Shank, t.For = own.Reach.Float(), own.Shank.Float(), own.For.Float()
		}
		out = append(out, t)
	}
	return out
}

func (m *maker) routeRules() route.Rules {
	v := m.rules.V
	hand := m.j.Shop.MachineKind == "hand"
	var under [2]float64
	under[0], under[1] = m.rules.Pair("guide_under_mm")
	return route.Rules{ReachDiameters: v("reach_diameters"), SeatChamfer: v("seat_chamfer_mm"), FlangeRoot: v("flange_root_mm"), FlangeOver: v("flange_chamfer_over_root_mm"),
		DrillOversize: v("drill_oversize_mm"), HaltFactor: v("press_halt_factor"), NoJigWear: v("no_jig_wear_mm"),
		OpenStep: v("open_step_mm"), GuideUnder: under, LineUp: v("line_up_mm"), ShankUnder: m.shankUnder,
		ToolChange: v("minutes_tool_change"), Press: v("minutes_press"), Sizing: v("minutes_sizing"), Gauging: v("minutes_gauging"), TurnBush: v("minutes_turn_bush"),
		ReamStock: func(d float64, _ bool) (low, high float64, source string) {
			lo, hi, ref, err := m.cutting.ReamStock(d, hand, m.chassis.Cutting)
			if err != nil {
				return 0.1, 0.2, err.Error()
			}
			return lo, hi, ref.Address
		}}
}

// shankUnder is how much a drill's shank may be under its name: h8, for the
// drills of the usual class.
func (m *maker) shankUnder(d float64) float64 {
	c, err := m.limits.Class(dim.OfFloat(d), "h8")
	if err != nil {
		return 0
	}
	return c.WidthUm().InexactFloat64() / 1000
}

func (m *maker) operationJSON(o route.Operation) Operation {
	out := Operation{Number: o.Number, Setup: o.Setup, Bore: o.Bore, Do: o.Do, Tool: o.Tool, ToolMM: mm3(o.ToolMM), Approach: o.Approach,
		DepthMM: mmAt(o.Depth, 1), Gauge: o.Gauge, Go: o.Go, NoGo: o.NoGo, Lubricant: o.Lubricant, ThrustN: num(o.Thrust), Backing: o.Backing,
		GaugeFirst: o.GaugeFirst, MayWait: o.MayWait, Note: o.Note, Kind: string(o.Kind), HoleMM: o.HoleMM, Holding: o.Holding}
	if o.At != nil {
		out.DialMM = &XY{mm3(o.At[0]), mm3(o.At[1])}
		out.AtMM = out.DialMM
		if b := m.of(o.Bore); b != nil {
			out.AtMM = &XY{mm3(b.target[0]), mm3(b.target[1])}
		}
	}
	if c := o.Cut; c != nil {
		out.RPMIdeal, out.FeedMMRev, out.FeedWords = num(math.Round(c.Ideal)), num(c.Feed), c.FeedWords
		out.RPM = num(c.RPM)
		if c.ByHand {
			out.RPM = num(0)
		}
	}
	if o.Minutes > 0 {
		out.Minutes = num(math.Round(o.Minutes*10) / 10)
	}
	if o.Limits != nil {
		out.LimitsMM = dim.Limits(o.Limits[0], o.Limits[1])
		if o.OfSeat {
			out.LimitsMM = dim.Sizes(o.Limits[0], o.Limits[1])
		}
	}
	m.explainOperation(o, &out)
	return out
}
