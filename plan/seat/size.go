package seat

import (
	"math"

	"rebush/fits/press"
)

// wallShape is the housing of a seat of diameter d as the mechanics know it: a
// round boss, a straight edge, or a plate without a near edge.
func (j *judge) wallShape(d float64) press.Wall {
	h := j.h
	if h.BossR > 0 && h.BossR-h.BossE < h.Edge {
		return press.Boss{OD: 2 * h.BossR, Ecc: h.BossE}
	}
	if math.IsInf(h.Edge, 1) {
		return press.Infinite{}
	}
	return press.Edge{Ligament: h.Edge - d/2}
}

// seatLimits works out the limits of the seat on diameter for a way. It fills
// a.Fail and answers false where the way reaches no such seat.
func (j *judge) seatLimits(a *Answer, w Way, glued bool) bool {
	b := a.Bush
	switch w.Kind {
	case OldSeatWay, StrapWay:
		a.SeatLow, a.SeatHigh = w.Low, w.High
	case Reamer, EndMill:
		a.SeatLow, a.SeatHigh = w.Low, w.High
	case BoringHead:
		mid := (b.ODLow+b.ODHigh)/2 - j.aim(a, glued)
		// A boring head can be set to clean up as well, where the bush is
		// large enough for both.
		mid = math.Max(mid, math.Min(2*j.need+j.r.BoringHead, (b.ODLow+b.ODHigh)/2))
		if mid < w.Low-slack || mid > w.High+slack {
			a.SeatLow, a.SeatHigh = mid-j.r.BoringHead, mid+j.r.BoringHead
			a.Fail = fail(2, noSuchWay, w.Low, w.High)
			a.Fail.Name = w.Name
			return false
		}
		a.SeatLow, a.SeatHigh = mid-j.r.BoringHead, mid+j.r.BoringHead
	}
	return true
}

// aim is the interference on diameter that a seat of free size is cut for: the
// middle between what holds and what the wall stands, and no more than the
// usual press for such a bush.
func (j *judge) aim(a *Answer, glued bool) float64 {
	if glued {
		return -(j.r.GapLow + j.r.GapHigh) / 2
	}
	d := (a.Bush.ODLow + a.Bush.ODHigh) / 2
	lo, hi := j.window(a, d)
	if hi < lo {
		return hi
	}
	return (lo + hi) / 2
}

// window is the interference that a seat of diameter d can have: from what the
// press needs to hold to what the wall stands. It is what a seat of free size
// is aimed into.
func (j *judge) window(a *Answer, d float64) (lo, hi float64) {
	probe := *a
	probe.SeatLow, probe.SeatHigh = d, d
	probe.Contact = j.contact(probe.Bush)
	hi = j.r.UsualShare * d
	lig := j.h.Edge - d/2
	if j.h.BossR > 0 {
		lig = math.Min(lig, j.h.BossR-j.h.BossE-d/2)
	}
	if lig <= 0 {
		return 0, 0
	}
	if lig < j.r.LightWall*d/2 {
		hi = math.Min(hi, j.r.LightShare*d)
	}
	if j.h.Plate2.Casting {
		hi = math.Min(hi, j.interferenceAt(j.press(&probe, d, true), j.h.Plate2.Limit))
	}
	needT := j.r.HoldFactor * j.r.HoldFriction * j.h.Load * j.h.Journal / 2
	lo = math.Min(j.pressThatHolds(&probe, d, needT), hi)
	return lo, hi
}

// turn chooses the sizes of a bush that is made for the seat: the outside for
// the middle of the press window, the bore so that it closes to where it
// should run. It answers false where no such bush can be made.
func (j *judge) turn(a *Answer, w Way, glued bool) bool {
	r, half := j.r, j.r.Turned/2
	var mid float64
	switch w.Kind {
	case BoringHead:
		// The smallest seat that clears, with a wall that can be turned.
		mid = math.Max(2*j.need+r.BoringHead, w.Low)
		mid = math.Max(mid, j.bore[0]+2*r.LeastWall)
		mid = math.Ceil(mid*10-slack) / 10
		if mid > w.High {
			a.Fail = fail(2, noSuchWay, w.Low, w.High)
			a.Fail.Name = w.Name
			return false
		}
	case Reamer, EndMill, OldSeatWay, StrapWay:
		mid = (w.Low + w.High) / 2
	}
	bush := a.Bush
	bush.Length = j.h.Plate
	aimBore := math.Max((r.AimLow+r.AimHigh)/2+j.h.Journal, j.bore[0]+half)
	bush.BLow, bush.BHigh = aimBore-half, aimBore+half
	bush.ODLow, bush.ODHigh = mid-half, mid+half
	a.Bush = bush
	if (mid-aimBore)/2 < r.LeastWall-slack {
		a.Fail = fail(1, wallOfBush, (mid-aimBore)/2, r.LeastWall)
		return false
	}
	u := -(r.StrapLow + r.StrapHigh) / 2
	switch {
	case w.Kind == StrapWay:
	case glued:
		u = -(r.GapLow + r.GapHigh) / 2
	default:
		// The least press that is sure to hold: everything above it only
		// strains the wall.
		lo, hi := j.window(a, mid)
		spread := half + (w.High-w.Low)/2
		if w.Kind == BoringHead {
			spread = half + r.BoringHead
		}
		u = math.Max(math.Min(lo+spread+0.001, hi-spread), spread+0.001)
	}
	a.Bush.ODLow, a.Bush.ODHigh = mid+u-half, mid+u+half
	if u > 0 {
		// Open the bore by what the press will close, and so that the whole
		// band of it ends inside the limits where they are wide enough.
		spread := half + (w.High-w.Low)/2
		if w.Kind == BoringHead {
			spread = half + r.BoringHead
		}
		probe := *a
		probe.Contact = j.contact(probe.Bush)
		probe.ULow, probe.UHigh, probe.SeatLow, probe.SeatHigh = math.Max(u-spread, 1e-6), u+spread, mid, mid
		c := j.closure(&probe)
		at := aimBore + (c[0]+c[1])/2
		const margin = 0.002
		if least := j.bore[0] + c[1] + half + margin; at < least && least-c[0]+half <= j.bore[1]-margin {
			at = least
		}
		a.Bush.BLow, a.Bush.BHigh = at-half, at+half
	}
	if w.Kind == BoringHead {
		a.SeatLow, a.SeatHigh = mid-r.BoringHead, mid+r.BoringHead
		a.Way.Low, a.Way.High = w.Low, w.High
	}
	return true
}
