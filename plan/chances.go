package plan

import (
	"math"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/chance"
	"rebush/plan/job"
	"rebush/plan/seat"
)

// chances runs the trials over the plan that was chosen, tries what would
// improve it and names what it hangs on. It returns the model for others to
// ask.
func (m *maker) chances() {
	if m.opt.NoChance || !m.p.OK {
		return
	}
	model, ok := m.model()
	if !ok {
		return
	}
	s := chance.Settings{Trials: int64(m.opt.Trials), Seed: int64(m.opt.Seed)}
	r, err := chance.Run(model, s)
	if err != nil {
		m.p.Findings.Raise(finding.Caution, "chance/chance", finding.Place{},
			say.F("%v", err), "")
		return
	}
	m.result = &r
	c := &Chance{FirstTimeRight: sig9(r.FirstTimeRight), Low: sig9(r.Low), High: sig9(r.High), Saved: sig9(r.Saved), Lost: sig9(r.Lost), Trials: r.Trials, Seed: r.Seed,
		Causes: []Cause{}, Improve: []Improve{}, MostSensitiveTo: []string{}}
	for _, x := range r.Causes {
		c.Causes = append(c.Causes, Cause{x.Cause, x.Share})
	}
	if gains, err := chance.Improve(model, m.variants(), s); err == nil {
		for _, g := range gains {
			c.Improve = append(c.Improve, Improve{g.Change, g.FirstTimeRight, sig9(g.Gain)})
		}
	}
	if sens, err := chance.Sensitive(model, s); err == nil {
		c.MostSensitiveTo = append(c.MostSensitiveTo, sens.Most...)
		m.p.WithoutEffect = sens.Without
	}
	m.p.Chance = c
	trials := m.book.Leaf("chance/trials", "trials", "-", "command line: --trials", float64(r.Trials))
	seed := m.book.Leaf("chance/seed", "seed of the random numbers", "-", "command line: --seed", float64(r.Seed))
	again := lastOf(func(in []float64) chance.Result {
		r, _ := chance.Run(model, chance.Settings{Trials: int64(in[0]), Seed: int64(in[1])})
		return r
	})
	for _, f := range []struct {
		key, what, formula string
		of                 func(chance.Result) float64
	}{
		{"first_time_right", "share of trials that come right first time", "every doubt of this plan drawn anew in each simulated job: an estimate", func(r chance.Result) float64 { return r.FirstTimeRight }},
		{"low", "least share right first time, 95 %", "Wilson interval of that share", func(r chance.Result) float64 { return r.Low }},
		{"high", "most share right first time, 95 %", "Wilson interval of that share", func(r chance.Result) float64 { return r.High }},
		{"saved", "share right after rework or another bush", "the same trials", func(r chance.Result) float64 { return r.Saved }},
		{"lost", "share of trials in which the truck is lost", "the same trials", func(r chance.Result) float64 { return r.Lost }},
	} {
		m.book.Calc("chance/"+f.key, f.what, "-", f.formula, "Monte Carlo after JCGM 101; Wilson 1927", func(in []float64) float64 {
			return f.of(again(in))
		}, trials, seed)
	}
}

// model turns the plan into the numbers of its trials. ok is false where
// nothing is cut or pressed.
func (m *maker) model() (chance.Model, bool) {
	var model chance.Model
	clamp := map[string]int{}
	for _, s := range m.p.Setups {
		if !s.Clamping {
			continue
		}
		for _, b := range s.Bores {
			clamp[b] = len(model.Setups)
		}
		model.Setups = append(model.Setups, chance.Setup{Name: s.Name, UMM: m.setupU})
	}
	if len(model.Setups) == 0 {
		model.Setups = []chance.Setup{{Name: "bench"}}
	}
	shaftAt := map[string]int{}
	any := false
	for i, s := range m.shafts {
		shaftAt[s.s.Name] = i
		model.Shafts = append(model.Shafts, chance.Shaft{Name: s.s.Name, LoadDeg: m.loadTowards(s.s)})
	}
	for _, s := range m.shafts {
		for _, b := range s.bores {
			x := m.chanceBore(b)
			x.Shaft, x.Setup = shaftAt[s.s.Name], clamp[b.name()]
			any = any || x.Kind != chance.Leave
			model.Bores = append(model.Bores, x)
		}
	}
	for i, x := range m.gears {
		model.Gears = append(model.Gears, m.chanceGear(x, i))
	}
	return model, any
}

func (m *maker) chanceBore(b *bore) chance.Bore {
	w := b.worn
	x := chance.Bore{Name: b.name(), Right: b.b.Side == job.Right, Kind: chance.Leave, TargetMM: b.target, UHoleMM: m.holeU,
		Survey: chance.Survey{Centre: w.O, Cov: [3]float64{w.Cov[0][0], w.Cov[0][1], w.Cov[1][1]}, R: w.R, JournalR: math.Min(w.JournalR, w.R), D: w.D,
			UDepthMM: w.WU, TowardsDeg: w.ThetaRad / deg, FanDeg: math.Min(w.FanHalf/deg, 89)},
		SurveyBy: b.old.By, JournalMM: b.journal(), UJournalMM: m.rules.V("u_journal_mm"), JournalBy: "journal measurement"}
	x.RunningUM = [2]float64{m.rules.V("bore_over_journal_um"), m.rules.V("clearance_max_um")}
	if b.chosen == nil {
		// It stays in its worn hole: what it runs with is what it has.
		now := 2 * asFound(b) * 1000
		x.RunningUM = [2]float64{0, math.Max(now, 1)}
		x.BoreMM = [2]float64{b.journal() + 2*asFound(b), b.journal() + 2*asFound(b)}
		return x
	}
	a, h := b.chosen, b.hole
	x.Kind = chance.Cut
	if a.Mend == seat.Renew {
		x.Kind = chance.OldSeat
	}
	over := 0.0
	lo, hi := a.SeatLow, a.SeatHigh
	if a.Way.Kind == seat.Reamer {
		r := m.j.Shop.Reamers[a.Way.Index]
		if rl, rh, err := m.reamerOwn(r); err == nil {
			lo, hi, over = rl, rh, a.SeatHigh-rh
		}
	}
	if a.Way.Kind == seat.EndMill {
		// A spindle lets the mill cut larger by its run-out at the most; the
		// spread of the rule holds that of an ordinary one already.
		over = m.j.Shop.Runout.Float() - m.rules.V("end_mill_mm")
	}
	x.Seat = chance.SeatSize{Mid: (lo + hi) / 2, Half: (hi - lo) / 2, Over: math.Max(0, over)}
	x.SeatBy = a.Way.Name
	x.OD, x.Hole = chance.Size{Low: a.Bush.ODLow, High: a.Bush.ODHigh}, chance.Size{Low: a.Bush.BLow, High: a.Bush.BHigh}
	x.RunoutMM, x.RunoutEven = a.Bush.Runout, true
	x.PressUM = [2]float64{a.WindowLow * 1000, math.Min(a.WinHigh, m.seatRule.MaxShare*a.SeatLow) * 1000}
	switch a.HeldBy {
	case "compound":
		x.PressUM = [2]float64{-m.seatRule.GapHigh * 1000, -m.seatRule.GapLow * 1000}
	case "cap":
		x.PressUM = [2]float64{-m.seatRule.CapHigh * 1000, -m.seatRule.CapLow * 1000}
	default:
		x.Closure = m.chanceClosure(a)
	}
	x.Finish = map[seat.Finish]chance.Finish{seat.AsDelivered: chance.AsDelivered, seat.Mandrel: chance.Mandrel, seat.Ream: chance.Ream,
		seat.BoreInPlace: chance.BoreInPlace, seat.ToOwnAxle: chance.OwnAxle}[a.Finish]
	x.BoreMM = a.Bore
	x.ToolMM = a.Expected
	switch a.Finish {
	case seat.ToOwnAxle:
		x.ToolMM = [2]float64{a.Expected[0] - h.Journal, a.Expected[1] - h.Journal}
	case seat.Mandrel:
		x.MaxOpenMM = m.seatRule.MandrelTotal
	}
	if a.Filled {
		// Nothing has to be cleared: compound fills what the seat leaves.
		x.Survey.D, x.Survey.UDepthMM, x.Survey.R, x.Survey.JournalR = 0, 0, a.SeatLow/4, a.SeatLow/4
	}
	x.MustPassMM = h.MustPass
	x.Wall = m.chanceWall(b)
	m.wayOut(b, &x)
	return x
}

// reamerOwn are a reamer's own limits, before what it may cut oversize.
func (m *maker) reamerOwn(r job.Tool) (low, high float64, err error) {
	if r.Low.Given() && r.High.Given() {
		return r.Low.Float(), r.High.Float(), nil
	}
	class := r.Class
	if class == "" {
		class = "H7"
	}
	lo, hi, err := m.limits.Reamer(r.Size, class)
	return lo.Float(), hi.Float(), err
}

// chanceClosure straightens the closure about the middle of the moduli.
func (m *maker) chanceClosure(a *seat.Answer) chance.Closure {
	s := a.Stress
	s.Housing.E = (m.plate.EHigh + m.plate.ELow) / 2
	s.Bush.E = (a.Bush.Metal.EHigh + a.Bush.Metal.ELow) / 2
	s.Bush.Yield = 0
	const u = 0.001
	c := chance.Closure{Elastic: s.At(u).Closure / u}
	flow := [2]float64{a.Bush.Metal.Yield, 1.155 * a.Bush.Metal.YieldHi}
	if a.Bush.Metal.Porous {
		flow = [2]float64{m.seatRule.FlowLow, m.seatRule.FlowHigh}
	}
	for i, y := range flow {
		if y > 0 {
			s.Bush.Yield = y
			c.FlowUM[i] = s.InterferenceFor(s.FlowPressure()) * 1000
		}
	}
	lo, hi := s.FlowSlopes()
	c.Slope = [2]float64{math.Min(1, lo), hi}
	return c
}

func (m *maker) chanceWall(b *bore) chance.Wall {
	a := b.chosen
	if math.IsInf(a.Ligament, 1) {
		return chance.Wall{}
	}
	s := a.SeatHigh / 2
	w := chance.Wall{LeftMM: a.Ligament, NoneBelowMM: m.seatRule.LeastWall, EdgeDeg: m.edgeDeg(b)}
	if a.HeldBy == "press" {
		w.NoneBelowMM = m.seatRule.NoWall * s / 2
		if a.UHigh > 0 && m.plate.Casting {
			f := a.Stress
			f.Bush.Yield = 0
			w.StressPerUM = f.At(0.001).HousingHoopMax
			// Half of the strength is allowed; the wall goes at the whole of it.
			w.StressLimit = m.plate.Limit / m.rules.V("casting_stress_share")
			if a.Stress.Bush.Yield > 0 {
				fac := f.Factors()
				w.StressCapMPa = a.Stress.FlowPressure() * math.Max(fac.HoleMax, fac.EdgeMax)
			}
		}
	}
	return w
}

// edgeDeg is the direction of the nearest free edge.
func (m *maker) edgeDeg(b *bore) float64 {
	best, at := math.Inf(1), 270.0
	for _, e := range b.b.Edges {
		d := e.Away.Float()
		if e.Metal.Given() {
			d = e.Metal.Float() + b.worn.R
		}
		if d < best {
			best, at = d, e.AtDeg
		}
	}
	if y := b.target[1]; y < best && !math.IsInf(b.hole.Edge, 1) && len(b.b.Edges) == 0 {
		at = 270
	}
	return at
}

// wayOut says what could still be done when this bore goes wrong.
func (m *maker) wayOut(b *bore, x *chance.Bore) {
	a := b.chosen
	next := math.Inf(1)
	for i := range b.answers {
		o := &b.answers[i]
		if !o.Feasible || o.SeatLow <= a.SeatHigh+1e-9 {
			continue
		}
		next = math.Min(next, o.SeatLow/2)
		if math.IsInf(o.Ligament, 1) {
			continue
		}
		x.Wall.NextLeftMM = math.Max(x.Wall.NextLeftMM, o.Ligament)
	}
	if !math.IsInf(next, 1) {
		x.NextBush, x.NextSeatMM = true, next
	}
	turns := m.shop.Lathe
	for _, s := range m.stock {
		if s.Turned && turns {
			x.NextBush = true
			x.NextSeatMM = 0
		}
	}
	x.Bond = m.shop.Compound && !a.Bush.Metal.Porous && !b.hole.Live
	x.Eccentric = turns && (a.Bush.ODLow-a.Bore[1])/2 > m.seatRule.LeastWall+0.1
	x.Replaceable = a.Bush.Turned || a.Bush.OnHand != 1 && a.Bush.OnHand != 0
}

func (m *maker) chanceGear(x *gear, i int) chance.Gear {
	g := m.targetOut.Gears[i]
	c := chance.Gear{Name: x.g.Name, On: x.shaft, Station: x.share, MateOn: chance.FixedMate, MateStation: x.mShare,
		Open: [2]float64{-g.Towards[0], -g.Towards[1]}, CentreMM: g.Centre, WindowMM: [2]float64{x.window.Lo, x.window.Hi},
		UGeomMM: x.uGeom, UMateMM: x.uMate, ReportOnly: !x.trusted, RunoutMM: [2]float64{x.g.Wheel.Runout.Float(), 0}}
	if x.mate >= 0 {
		c.MateOn = x.mate
	}
	if x.g.Pinion != nil {
		c.RunoutMM[1] = x.g.Pinion.Runout.Float()
	}
	if x.window.Empty {
		c.ReportOnly = true
		mid := x.window.Middle()
		c.WindowMM = [2]float64{mid - 0.001, mid + 0.001}
	}
	if a, err := x.pair.CentreForNormal(m.rules.V("tight_tooth_backlash_mm")); err == nil {
		c.TightMM = a
	}
	if a, err := x.pair.CentreForContactRatio(x.window.Contact); err == nil {
		c.LooseMM = math.Max(a, c.WindowMM[1])
	}
	if span := m.spacing(); span > 0 && x.g.Kind == "spur" && x.g.Wheel.Face.Given() {
		if aw, err := x.pair.OperatingAngle(g.Centre); err == nil {
			sin, cos := math.Sincos(aw * deg)
			face := x.g.Wheel.Face.Float()
			if j, err := x.pair.Normal(x.window.Lo); err == nil && j > 0 && m.shafts[x.shaft].fixed {
				// Only a shaft that stays as it is is judged by its lean: a
				// bushed one is set square, and what is left of it is in the
				// places of its bores.
				c.LeanAlong, c.LeanAcross, c.LeanLimitMM = face/span*sin, face/span*cos, m.rules.V("lean_share_of_backlash")*j
			}
		}
	}
	return c
}
