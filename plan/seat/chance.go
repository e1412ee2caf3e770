package seat

import (
	"math"

	"rebush/fits/odds"
)

// chance is the closed-form chance of this seat alone: that it cleans up, that
// the press lands in its window, and that the bore ends inside its limits.
func (j *judge) chance(a *Answer) float64 {
	o := j.odds(a)
	return o.Chance()
}

// odds puts a judged seat into the terms of its chances.
func (j *judge) odds(a *Answer) odds.Seat {
	b := a.Bush
	o := odds.Seat{
		CleanupMargin: a.SeatLow/2 + (a.SeatHigh-a.SeatLow)/4 - j.h.S,
		CleanupU:      math.Hypot(j.h.UPlace, j.h.USurvey),
		SeatMid:       (a.SeatLow + a.SeatHigh) / 2, SeatHalf: (a.SeatHigh - a.SeatLow) / 2,
		ODMid: (b.ODLow + b.ODHigh) / 2, ODHalf: (b.ODHigh - b.ODLow) / 2,
		BoreMid: (b.BLow + b.BHigh) / 2, BoreHalf: (b.BHigh - b.BLow) / 2,
		BoreLow: a.Bore[0], BoreHigh: a.Bore[1], JournalU: j.h.JournalU,
	}
	if a.Filled {
		o.CleanupMargin += j.h.S - j.h.Fill // what it has to reach is the sound wall
	}
	if math.IsInf(a.CleanUp, 1) || j.h.Follows {
		o.CleanupMargin, o.CleanupU = 1, 0
	}
	switch a.HeldBy {
	case ByCompound:
		o.UMin, o.UMax = -j.r.GapHigh, -j.r.GapLow
	case ByCap:
		o.UMin, o.UMax = -j.r.CapHigh, -j.r.CapLow
	default:
		o.UMin = a.WindowLow
		o.UMax = math.Min(a.WinHigh, j.r.MaxShare*a.SeatLow)
	}
	if a.HeldBy == ByPress && !a.MandrelIn {
		seat := a.Stress
		o.Elastic = j.elasticShare(a)
		if flow := j.r.flow(&b.Metal); flow[0] > 0 {
			seat.Bush.Yield = flow[0]
			o.FlowLow = seat.InterferenceFor(seat.FlowPressure())
			o.FlowHigh = o.FlowLow * flow[1] / flow[0]
			o.SlopeLow, o.SlopeHigh = seat.FlowSlopes()
		}
	}
	if a.Finish != AsDelivered {
		o.Sized, o.ToolLow, o.ToolHigh = true, a.made[0], a.made[1]
		if a.made[1] == 0 {
			o.ToolLow, o.ToolHigh = a.Expected[0], a.Expected[1]
		}
	}
	if a.MandrelIn {
		// The mandrel stops the bore from closing below it.
		o.Elastic = 1
	}
	if a.Finish == ToOwnAxle {
		// The very axle is the gauge: its measuring error drops out, and the
		// opening stops when it runs.
		o.JournalU = 0
	}
	return o
}
