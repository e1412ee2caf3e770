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
	if math.IsInf(a.CleanUp, 1) {
		o.CleanupMargin, o.CleanupU = 1, 0
	}
	switch a.HeldBy {
	case "compound":
		o.UMin, o.UMax = -j.r.GapHigh, -j.r.GapLow
	case "strap":
		o.UMin, o.UMax = -j.r.StrapHigh, -j.r.StrapLow
	default:
		o.UMin = math.Min(a.WindowLow, a.UHigh)
		o.UMax = math.Min(a.WinHigh, 0.05*a.SeatLow)
	}
	if a.UHigh > 0 {
		o.Elastic = a.Closure[1] / a.UHigh
		if a.ULow > 0 {
			o.Elastic = (a.Closure[0]/a.ULow + a.Closure[1]/a.UHigh) / 2
		}
	}
	if a.Finish != AsDelivered {
		o.Sized, o.ToolLow, o.ToolHigh = true, a.Expected[0], a.Expected[1]
	}
	if a.Finish == ToOwnAxle {
		// The very axle is the gauge: its measuring error drops out, and the
		// opening stops when it runs.
		o.JournalU = 0
	}
	return o
}
