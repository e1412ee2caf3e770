package seat

import (
	"math"

	"rebush/fits/press"
)

// closes is question 5: where the bore lies after pressing, over the least and
// the largest interference, modulus and flow stress. It refuses nothing: 6 and 7
// judge what it finds.
func (j *judge) closes(a *Answer) Fail {
	if a.HeldBy == ByPress {
		j.closure(a)
	}
	a.Closed = [2]float64{ClosedBore(a.Bush.BLow, a.Closure[1]), ClosedBore(a.Bush.BHigh, a.Closure[0])}
	if j.h.Bush != "" {
		a.Closed = j.h.Bore // it is in, and was gauged
	}
	return Fail{}
}

// closure fills in the band by which the bore closes on diameter, and the
// mechanics at either end. A stiff plate round a soft bush closes it most; a
// bush that flows early gives more and, as it flows, closes by the steeper
// slope, so each end is sought over both.
func (j *judge) closure(a *Answer) {
	m, p := &a.Bush.Metal, &j.h.Plate2
	flow := j.r.flow(m)
	lo, hi := math.Inf(1), 0.0
	thick, thin := a.Bush.thick(), a.Bush.thin(a.SeatLow)
	// A stiff bush flows earlier and then closes more, a soft one closes more
	// before it flows: every pair of moduli is asked.
	for k := range 8 {
		if k&1 > 0 && p.ELow == p.EHigh || k&2 > 0 && m.ELow == m.EHigh || k&4 > 0 && flow[0] == flow[1] {
			continue // it was asked
		}
		plate, bush, yield := [2]float64{p.ELow, p.EHigh}[k&1], [2]float64{m.ELow, m.EHigh}[k>>1&1], flow[k>>2]
		least := pressed(j.wallShape(a.SeatHigh), a.SeatHigh, thick,
			press.Elastic{E: plate, Nu: p.Nu}, press.Elastic{E: bush, Nu: m.Nu, Yield: yield})
		if c := least.At(a.ULow).ClosureLow; c < lo {
			lo, a.ClosureAt[0] = c, least
		}
		most := least
		most.D, most.Di, most.Wall = a.SeatLow, thin, j.wallShape(a.SeatLow)
		if c := most.At(a.UHigh).ClosureHigh; c > hi {
			hi, a.ClosureAt[1] = c, most
		}
	}
	a.Closure = [2]float64{lo, hi}
}

// flow is the band of a bush's flow stress when it closes.
func (r *Rules) flow(m *Metal) [2]float64 {
	if m.Porous {
		return [2]float64{r.FlowLow, r.FlowHigh}
	}
	return [2]float64{m.Yield, m.YieldHi * press.MisesOverTresca}
}

// passes is question 6: is there a bore that lets through what must pass and
// still runs, at the bench and at the hot and the cold end of use.
func (j *judge) passes(a *Answer) Fail {
	a.Bore = j.bore
	if j.bore[0] > j.bore[1]+slack {
		return fail(ShaftPasses, nothingPasses, j.h.MustPass, j.bore[1]-j.r.Pass)
	}
	hot := j.h.THigh
	if a.Bush.Metal.Plastic {
		hot += j.r.HotK
	}
	share := j.elasticShare(a)
	a.WarmShare = share
	cold, hotChange := j.change(a, j.h.TLow, share), j.change(a, hot, share)
	worst := hotChange
	a.WarmAt = hot
	if !a.Bush.Metal.Plastic && cold < hotChange {
		worst, a.WarmAt = cold, j.h.TLow
	}
	if least := WarmBore(j.h.Journal, j.r.RunLeast, worst); least > a.Bore[0]+slack {
		if least > a.Bore[1]+slack {
			return fail(ShaftPasses, seizes, (Running(a.Bore[1], j.h.Journal)+worst)*1000, j.r.RunLeast*1000)
		}
		a.Bore[0], a.WarmRules = least, true
	}
	a.RunCold = Running(a.Bore[0], j.h.Journal) + cold
	a.RunHot = Running(a.Bore[0], j.h.Journal) + hotChange
	return Fail{}
}

// change is how much running clearance is gained, or lost below zero, from the
// bench to a temperature; NaN where an expansion is not known.
func (j *judge) change(a *Answer, t, share float64) float64 {
	m, p := &a.Bush.Metal, &j.h.Plate2
	if m.Alpha <= 0 || p.Alpha <= 0 {
		return math.NaN()
	}
	return RunChange(a.HeldBy, Expansions{m.Alpha, p.Alpha, j.h.JournalA}, t,
		(a.Bush.BLow+a.Bush.BHigh)/2, j.h.Journal, a.SeatLow, a.UHigh, share)
}

// elasticShare is how much a bore closes for each bit of interference while
// nothing flows.
func (j *judge) elasticShare(a *Answer) float64 {
	seat := j.press(&a.Bush, a.Contact, a.SeatLow, true, false)
	seat.Di = a.Bush.thin(a.SeatLow)
	if t, known := seat.Ligament(); known && t <= 0 {
		return 1
	}
	seat.Bush.Yield = 0
	const u = 0.001
	return seat.At(u).Closure / u
}
