package plan

import (
	"rebush/plan/chance"
	"rebush/plan/job"
	"rebush/plan/seat"
)

// chances hands the trials what the steps before have chosen, and the plans in
// which one thing is changed.
func (m *maker) chances() {
	if m.opt.NoChance || !m.p.OK {
		return
	}
	model, ok := chance.FromPlan(m.trialFacts())
	if !ok {
		return
	}
	again := func(j *job.Job) (attempt, error) {
		v, err := newMaker(j, Options{NoChance: true}, m.books)
		if err != nil {
			return attempt{}, err
		}
		v.chain()
		a := attempt{Plan: v.p}
		a.Model, a.Cuts = chance.FromPlan(v.trialFacts())
		return a, nil
	}
	better := variants(m.j, model, changes(m.j, m.instr, m.bored()), again)
	got := chanced(m.book, model, better, chance.Settings{Trials: int64(m.opt.Trials), Seed: int64(m.opt.Seed)})
	m.p.Chance, m.p.WithoutEffect, m.result = got.Row, got.Without, got.Result
	m.p.Findings = append(m.p.Findings, got.Findings...)
}

func (m *maker) bored() []bored {
	out := make([]bored, len(m.bores))
	for i, b := range m.bores {
		out[i] = b.bored()
	}
	return out
}

// trialFacts is the plan as its trials read it.
func (m *maker) trialFacts() chance.Facts {
	f := chance.Facts{USetupMM: m.setupU, UHoleMM: m.holeU, Lathe: m.shop.Lathe, Compound: m.shop.Compound, Rules: chance.RulesOf(m.rules),
		Plate: chance.Plate{ELow: m.plate.ELow, EHigh: m.plate.EHigh, Casting: m.plate.Casting, LimitMPa: m.plate.Limit}}
	for _, s := range m.stock {
		f.Turns = f.Turns || s.Turned && m.shop.Lathe
	}
	for _, s := range m.p.Setups {
		if s.Clamping {
			f.Clampings = append(f.Clampings, chance.Clamping{Name: s.Name, Bores: s.Bores})
		}
	}
	for i, s := range m.shafts {
		f.Shafts = append(f.Shafts, chance.Shaft{Name: s.s.Name, LoadDeg: m.loadTowards(s.s)})
		for _, b := range s.bores {
			h := b.bored()
			own, over := [2]float64{}, 0.0
			if h.Chosen != nil {
				own, over = m.toolOf(h.Chosen)
			}
			f.Holes = append(f.Holes, chance.Hole{Hole: h.Hole, On: i, At: h.At, FoundMM: h.AsFound(b.load), Fitting: fitted(h, own, over)})
		}
	}
	for i, x := range m.gears {
		f.Pairs = append(f.Pairs, m.trialPair(x, i))
	}
	return f
}

// toolOf are the limits of the tool that makes a seat, before what it may cut
// over, and the most that it does. A spindle lets an end mill cut larger by its
// run-out at the most; the spread of the rule holds that of an ordinary one
// already.
func (m *maker) toolOf(a *seat.Answer) (own [2]float64, over float64) {
	own = [2]float64{a.SeatLow, a.SeatHigh}
	switch a.Way.Kind {
	case seat.Reamer:
		if lo, hi, err := m.reamerOwn(m.j.Shop.Reamers[a.Way.Index]); err == nil {
			return [2]float64{lo, hi}, a.SeatHigh - hi
		}
	case seat.EndMill:
		over = m.j.Shop.Runout.Float() - m.rules.V("end_mill_mm")
	}
	return own, over
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

// trialPair is one mesh as the target left it.
func (m *maker) trialPair(x *gear, i int) chance.Pair {
	g := m.targetOut.Gears[i]
	p := chance.Pair{Name: x.g.Name, On: x.shaft, Station: x.share, Mate: chance.FixedMate, MateStation: x.mShare,
		Towards: g.Towards, CentreMM: g.Centre, LowMM: x.window.Lo, HighMM: x.window.Hi, Empty: x.window.Empty, Trusted: x.trusted,
		UGeomMM: x.uGeom, UMateMM: x.uMate, RunoutMM: [2]float64{x.g.Wheel.Runout.Float(), 0}}
	if x.mate >= 0 {
		p.Mate = x.mate
	}
	if x.g.Pinion != nil {
		p.RunoutMM[1] = x.g.Pinion.Runout.Float()
	}
	if a, err := x.pair.CentreForNormal(m.rules.V("tight_tooth_backlash_mm")); err == nil {
		p.TightMM = a
	}
	if a, err := x.pair.CentreForContactRatio(x.window.Contact); err == nil {
		p.ContactMM = a
	}
	span := m.spacing()
	if span <= 0 || x.g.Kind != "spur" || !x.g.Wheel.Face.Given() || !m.shafts[x.shaft].fixed {
		return p
	}
	angle, err := x.pair.OperatingAngle(g.Centre)
	if err != nil {
		return p
	}
	if j, err := x.pair.Normal(x.window.Lo); err == nil && j > 0 {
		p.Lean = &chance.Lean{FaceMM: x.g.Wheel.Face.Float(), SpanMM: span, AngleRad: angle * deg, BacklashMM: j}
	}
	return p
}
