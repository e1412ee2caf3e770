package seat

import (
	"math"

	"rebush/fits/odds"
	"rebush/plan/habit"
)

// chance is the closed-form chance of this seat alone: that it cleans up, that
// the press lands in its window, and that the bore ends inside its limits.
func (j *judge) chance(a *Answer) float64 {
	a.Odds = j.odds(a)
	return j.memo.chance(&a.Odds)
}

// odds puts a judged seat into the terms of its chances, and of its trials.
func (j *judge) odds(a *Answer) odds.Seat {
	b := &a.Bush
	o := odds.Seat{
		ODMid: (b.ODLow + b.ODHigh) / 2, ODHalf: (b.ODHigh - b.ODLow) / 2,
		BoreMid: (b.BLow + b.BHigh) / 2, BoreHalf: (b.BHigh - b.BLow) / 2,
		BoreLow: a.Bore[0], BoreHigh: a.Bore[1], RunLow: j.r.OverJournal, RunHigh: j.r.ClearMax,
		Journal: j.h.Journal, JournalU: j.h.JournalU,
	}
	j.cut(a, &o)
	clears := j.h.S
	if a.Filled {
		clears = j.h.Fill // what it has to reach is the sound wall
	}
	if o.CleanupMargin, o.CleanupU = CleanUp(o.SeatMid, clears), math.Hypot(j.h.UPlace, j.h.USurvey); math.IsInf(a.CleanUp, 1) || j.h.Follows {
		o.CleanupMargin, o.CleanupU = 1, 0
	}
	j.held(a, &o)
	if a.Finish != AsDelivered {
		o.Sized, o.OwnAxle = true, a.Finish == ToOwnAxle
		if o.ToolLow, o.ToolHigh = a.made[0], a.made[1]; a.made[1] == 0 {
			o.ToolLow, o.ToolHigh = a.Expected[0], a.Expected[1]
		}
	}
	switch a.Finish {
	case ToOwnAxle: // the axle is the gauge
		o.ToolLow, o.ToolHigh = o.ToolLow-j.h.Journal, o.ToolHigh-j.h.Journal
	case Mandrel:
		o.MostOpen = j.r.MandrelTotal
	case Ream:
		j.reamed(a, &o)
	}
	runs(j.shop.Habits.Clearance, &o)
	if a.MandrelIn {
		o.Elastic, o.FlowHigh, o.MostOpen = 1, 0, 0 // it stops the bore from closing below it
	}
	if j.h.Bush != "" { // it is in, and was gauged: its press and its closing are past
		o.UMin, o.UMax, o.Eases, o.Strength, o.Slips = -j.h.Journal, j.h.Journal, 0, 0, 0
		o.BoreMid, o.BoreHalf, o.Elastic, o.FlowHigh = (j.h.Bore[0]+j.h.Bore[1])/2, (j.h.Bore[1]-j.h.Bore[0])/2, 0, 0
	}
	return o
}

// cut is what the way leaves: of a seat that is cut what this shop's tool does, of
// one that is there what was measured.
//
// Source: METHODS.md 4.
func (j *judge) cut(a *Answer, o *odds.Seat) {
	h := j.shop.Habits
	o.SeatMid, o.SeatHalf = a.SetSize(), (a.leaves()[1]-a.leaves()[0])/2
	does, ok := a.does(h)
	if !ok {
		return
	}
	o.Lobes = j.r.lobes(a.Way.Kind)
	o.SeatMid = LeavesSeat(o.SeatMid, does.OverUm)
	o.SeatHalf, o.ToolU, o.SeatU, o.Slips = 0, does.UOverUm/1000, does.ScatterUm/1000, h.Slips.Share
}

// own is the middle of a reamer's own limits.
func (w *Way) own() float64 {
	if w.Own > 0 {
		return w.Own
	}
	return (w.Low + w.High) / 2
}

// reamed is a bore that a reamer of this shop takes to size.
func (j *judge) reamed(a *Answer, o *odds.Seat) {
	for i := range j.shop.BoreReamers {
		if w := &j.shop.BoreReamers[i]; w.Name == a.FinishTool {
			does := j.shop.Habits.Seat(habit.Reamed, w.Tool)
			at := w.own() + does.OverUm/1000
			o.ToolLow, o.ToolHigh, o.SizedU = at, at, math.Hypot(does.UOverUm, does.ScatterUm)/1000
			return
		}
	}
}

// held is what holds the bush: a press that holds and that the wall stands, or a
// gap. Whether a press holds is asked with the friction and the smoothing that there
// are, since the window was reckoned with the least and the most.
func (j *judge) held(a *Answer, o *odds.Seat) {
	switch a.HeldBy {
	case ByCompound:
		o.UMin, o.UMax, o.Lobes = -j.r.GapHigh, -j.r.GapLow, 0
		return
	case ByCap:
		o.UMin, o.UMax = -j.r.CapHigh, -j.r.CapLow
		return
	}
	o.UMin, o.UMax = a.WindowLow, math.Min(a.WinHigh, j.r.MaxShare*a.SeatLow)
	if rough := j.smoothed(&a.Bush.Metal); o.UMin > rough {
		o.Eases = (o.UMin-rough)*(1-j.loF/j.hiF) + rough*(1-math.Min(1, j.r.SmoothLeast/j.r.Smoothing))
	}
	j.closing(a, o)
	p := &j.h.Plate2
	if p.Casting && j.part == nil && a.UHigh > 0 && p.Limit > 0 && j.r.CastingShare > 0 { // a plug bears the press in its place
		seat := a.Stress
		seat.Bush.Yield = 0
		o.Tension = seat.At(0.001).HousingHoopMax / 0.001
		o.Strength, o.StrengthU = p.Limit/j.r.CastingShare, j.r.StrengthU
		if a.Stress.Bush.Yield > 0 {
			f := seat.Factors()
			o.TensionMost = a.Stress.FlowPressure() * math.Max(f.HoleMax, f.EdgeMax)
		}
	}
}

// closing is how the bore closes on pressing, by the middle of the moduli.
func (j *judge) closing(a *Answer, o *odds.Seat) {
	m, p, seat := &a.Bush.Metal, &j.h.Plate2, a.Stress
	seat.Housing.E, seat.Bush.E, seat.Bush.Yield = (p.EHigh+p.ELow)/2, (m.EHigh+m.ELow)/2, 0
	const u = 0.001
	o.Elastic = seat.At(u).Closure / u
	flow := j.r.flow(m)
	if flow[0] <= 0 {
		return
	}
	var at [2]float64
	for i, y := range flow {
		seat.Bush.Yield = y
		at[i] = seat.InterferenceFor(seat.FlowPressure())
	}
	o.FlowLow, o.FlowHigh = at[0], at[1]
	o.SlopeLow, o.SlopeHigh = seat.FlowSlopes()
}
