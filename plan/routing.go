package plan

import (
	"fmt"
	"math"
	"sort"

	"rebush/feeds/cutting"
	"rebush/feeds/drills"
	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/plan/job"
	"rebush/plan/route"
	"rebush/plan/seat"
)

// routing lays out the operations for the seats that were chosen.
func (m *maker) routing() {
	r := m.routeOf(m.bores)
	for _, t := range r.Troubles {
		level := finding.Caution
		if t.Stop {
			level = finding.Stop
		}
		m.p.Findings.Figure(level, t.Rule, t.Where, sig9(t.Have), sig9(t.Want), "mm", t.Text, t.Fix)
	}
	for _, s := range r.Setups {
		m.p.Setups = append(m.p.Setups, Setup{Name: s.Name, Words: s.Words, Plate: s.Up, Mirrored: s.Mirrored, Bores: s.Bores, Clamping: s.Clamping})
	}
	for _, o := range r.Operations {
		m.p.Operations = append(m.p.Operations, m.operationJSON(o))
	}
	m.p.LayOut = r.LayOut
	for _, b := range r.Buy {
		m.p.Buy = append(m.p.Buy, BuyLine{b[0], b[1]})
	}
	for _, b := range m.bores {
		if b.chosen != nil && b.chosen.Bush.ToBuy {
			m.p.Buy = append(m.p.Buy, BuyLine{"bush " + b.chosen.Bush.Code, b.name()})
		}
	}
	for _, p := range r.Proving {
		m.p.Proving = append(m.p.Proving, Step{p[0], p[1]})
	}
}

// routeOf turns seats, shop and job into the route room's terms.
func (m *maker) routeOf(bores []*bore) route.Route {
	c := m.j.Chassis
	j := route.Job{Width: c.Width.Float(), Length: c.Length.Float(), Plate: m.chassis.Name, Casting: m.plate.Casting,
		Current: c.Current == "axles", DatumWords: m.j.Datum}
	for _, f := range c.Features {
		j.Features = append(j.Features, f.Name)
	}
	for i := range m.j.Shafts {
		s := &m.j.Shafts[i]
		j.Rods = j.Rods || s.Rods
		if s.Insulated != "" && s.Insulated != "none" {
			j.Insulated = append(j.Insulated, s.Name+", "+s.Insulated)
		}
		for _, p := range m.p.Shafts {
			if p.Shaft == s.Name && p.SidePlayMM != nil && !s.Leave {
				lo, hi := m.rules.Pair("side_play_mm")
				j.SidePlayWords = append(j.SidePlayWords, fmt.Sprintf("Side play of %s: planned %s mm (%.1f to %.1f)", s.Name, p.SidePlayMM.Min, lo, hi))
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

func (m *maker) routeBore(b *bore) route.Bore {
	a := b.chosen
	x := route.Bore{Name: b.name(), Shaft: b.shaft.Name, Side: string(b.b.Side), Plate: b.hole.Plate, At: b.target,
		S: b.hole.S, Allow: seat.Allow(b.hole, m.seatRule), Wear: b.worn.W, Ligament: a.Ligament,
		WayName: a.Way.Name, WaySize: a.Way.Size, Seat: [2]float64{a.SeatLow, a.SeatHigh},
		Bush: a.Bush.Code, BushMade: a.Bush.Turned, Bushed: b.b.Bushed, OD: [2]float64{a.Bush.ODLow, a.Bush.ODHigh},
		Length: a.Bush.Length, FlangeOD: a.Bush.FlangeOD, Proud: a.Proud, Porous: a.Bush.Metal.Porous, Leaded: a.Bush.Metal.Leaded,
		HeldBy: a.HeldBy, Second: a.Second, PressN: a.Force, Finish: string(a.Finish), FinishTool: a.FinishTool, FinishSizes: a.FinishSizes,
		Limits: a.Bore, Expected: a.Expected, Journal: b.hole.Journal}
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
	case seat.StrapWay:
		x.Way = "strap"
	}
	if a.Bush.Turned {
		x.BushSizes = fmt.Sprintf("outside %.3f to %.3f, bore %.3f to %.3f, length %.2f mm, %s", a.Bush.ODLow, a.Bush.ODHigh, a.Bush.BLow, a.Bush.BHigh, a.Bush.Length, a.Bush.Metal.Name)
	}
	if o := b.b.Oil; o != nil {
		x.Oil = &route.Oil{AtDeg: o.AtDeg, Diameter: o.Diameter.Float()}
	}
	return x
}

func (m *maker) routeShop() route.Shop {
	sh := m.j.Shop
	s := route.Shop{Machine: sh.MachineKind, Readout: sh.Readout, Jig: sh.Jig == "pinned", ApproachX: sh.ApproachX, ApproachY: sh.ApproachY,
		Lathe: sh.Lathe, PressN: sh.PressN, MaxDrill: sh.MaxDrill.Float()}
	for _, t := range m.ownedDrills() {
		s.Drills = append(s.Drills, t)
	}
	for _, t := range sh.EndMills {
		s.EndMills = append(s.EndMills, route.Tool{Name: t.Name + " end mill", Size: t.Size.Float(), Reach: t.Reach.Float(), Shank: t.Shank.Float(), For: t.For.Float()})
	}
	sort.SliceStable(s.EndMills, func(i, k int) bool { return s.EndMills[i].Size < s.EndMills[k].Size })
	if p := sh.Pins; p != nil && p.Step.Float() > 0 {
		s.Pins = &route.Pins{From: p.From.Float(), To: p.To.Float(), Step: p.Step.Float()}
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
		m.p.Findings.Add(finding.Finding{Level: finding.Caution, Rule: "drills", Text: err.Error(), Fix: "correct the drills in the shop file", File: pos.File, Line: pos.Line, Column: pos.Column})
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
	return route.Rules{ReachDiameters: v("reach_diameters"), SeatChamfer: v("seat_chamfer_mm"), FlangeRoot: v("flange_root_mm"), FlangeOver: v("flange_chamfer_over_root_mm"),
		DrillOversize: v("drill_oversize_mm"), HaltFactor: v("press_halt_factor"), NoJigWear: v("no_jig_wear_mm"),
		ToolChange: v("minutes_tool_change"), Press: v("minutes_press"), Sizing: v("minutes_sizing"), Gauging: v("minutes_gauging"), TurnBush: v("minutes_turn_bush"),
		ReamStock: func(d float64, _ bool) (low, high float64, source string) {
			lo, hi, ref, err := m.cutting.ReamStock(d, hand, m.chassis.Cutting)
			if err != nil {
				return 0.1, 0.2, err.Error()
			}
			return lo, hi, ref.Address
		}}
}

// cutter answers the route's questions from the cutting tables and this
// shop's spindle.
func (m *maker) cutter() route.Cutter {
	sh := m.j.Shop
	return func(q route.Query) (route.Cut, error) {
		mat := m.chassis.Cutting
		if q.Material != "" {
			if bush := m.bushCutting(); bush != "" {
				mat = bush
			}
		}
		if mat == "" {
			return route.Cut{}, fmt.Errorf("no cutting speed is known for %s", m.chassis.Name)
		}
		tool := "hss"
		if q.Operation == "drill" && sh.DrillTool != "" {
			tool = sh.DrillTool
		}
		depth := q.Through
		if q.Operation == "drill" {
			depth = m.cutting.Through(q.Through, q.Dia)
		}
		cq := cutting.Query{Material: mat, Tool: tool, Operation: q.Operation, DiaMM: q.Dia, DepthMM: q.Through, Hand: true, ThinWall: q.ThinWall, Head: cutting.Head(q.Head)}
		a, err := m.cutting.Speed(cq)
		if err != nil && q.Operation == "bore" {
			cq.Tool = "carbide"
			a, err = m.cutting.Speed(cq)
		}
		if err != nil {
			return route.Cut{}, err
		}
		step := m.cutting.Step(sh.Spindle, sh.SpindleMin, sh.SpindleMax, a.RPM)
		c := route.Cut{Ideal: a.RPM, RPM: step.RPM, ByHand: step.TooFast, AtTop: step.AtTop, Feed: a.FeedMMRev, FeedWords: a.Words, Depth: depth, Lubricant: a.Lubricant, Thrust: math.NaN()}
		if a.ForcesKnown {
			c.Thrust = a.ThrustN
		}
		switch {
		case step.Unknown:
			c.RPM = a.RPM
			c.Note = "the shop file names no spindle steps"
		case step.TooFast:
			c.Note = fmt.Sprintf("the lowest step, %.0f, is too fast for %.0f: turn the spindle by hand", step.RPM, a.RPM)
		}
		if q.Operation == "ream" || q.Operation == "bore" || q.Operation == "plunge" || q.Operation == "end mill" {
			c.Depth = q.Through + m.cutting.Overrun()
		}
		point := 0.0
		if q.Operation == "drill" {
			point = cutting.PointLength(q.Dia, m.cutting.PointAngle())
		}
		rpm := c.RPM
		if c.ByHand {
			rpm = math.Min(c.RPM, a.RPM)
		}
		if rpm > 0 && a.FeedMMRev > 0 {
			c.Minutes = cutting.Minutes(q.Through, m.cutting.Approach(), point, m.cutting.Overrun(), a.FeedMMRev, rpm)
		}
		return c, nil
	}
}

func (m *maker) bushCutting() string {
	for _, b := range m.bores {
		if b.chosen != nil {
			if mat, err := m.materials.Find(b.chosen.Bush.Metal.Name); err == nil {
				return mat.Cutting
			}
		}
	}
	return ""
}

func (m *maker) operationJSON(o route.Operation) Operation {
	out := Operation{Number: o.Number, Setup: o.Setup, Bore: o.Bore, Do: o.Do, Tool: o.Tool, ToolMM: mm3(o.ToolMM), Approach: o.Approach,
		DepthMM: mmAt(o.Depth, 1), Gauge: o.Gauge, Go: o.Go, NoGo: o.NoGo, Lubricant: o.Lubricant, ThrustN: num(o.Thrust), Backing: o.Backing,
		GaugeFirst: o.GaugeFirst, MayWait: o.MayWait, Note: o.Note, Kind: o.Kind, HoleMM: o.HoleMM, Holding: o.Holding}
	if o.At != nil {
		out.AtMM = &XY{mm3(o.At[0]), mm3(o.At[1])}
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
		out.LimitsMM = &MMRange{mmUp(o.Limits[0]), mmDown(o.Limits[1])}
		if o.Kind == "size seat" || o.Kind == "gauge" {
			out.LimitsMM = &MMRange{mm3(o.Limits[0]), mm3(o.Limits[1])}
		}
	}
	return out
}

var (
	_ = dim.MM
	_ = job.Left
)
