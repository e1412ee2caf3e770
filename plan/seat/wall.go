package seat

import (
	"math"

	"rebush/fits/press"
)

// wall is question 3: the metal left outside, and what the press does to it.
func (j *judge) wall(a *Answer) Fail {
	s := a.SeatHigh / 2
	a.Ligament = MetalLeft(j.edge, a.SeatHigh)
	a.WindowLow, a.WinHigh = 0, math.Inf(1)
	if a.HeldBy == ByCap {
		return Fail{} // nothing is cut and nothing presses
	}
	if a.HeldBy != ByPress {
		if a.Ligament < j.r.LeastWall-slack {
			return fail(WallStands, wallTooThin, a.Ligament, j.r.LeastWall)
		}
		return Fail{}
	}
	if least := j.r.leastMetal(ByPress, a.SeatHigh); a.Ligament < least-slack {
		return fail(WallStands, wallTooThinForPress, a.Ligament, least)
	}
	light := a.Ligament < j.r.LightWall*s-slack
	if light {
		a.WinHigh = j.r.LightShare * 2 * s
		if a.UHigh > a.WinHigh+slack {
			return fail(WallStands, pressTooHeavy, a.UHigh*1000, a.WinHigh*1000)
		}
	}
	seat := j.press(&a.Bush, 0, a.SeatLow, true, false)
	st := seat.At(a.UHigh)
	a.Wall, a.Stress = seat.Wall, seat
	a.PHigh, a.Peak = st.P, st.HousingHoopMax
	a.PeakLimit, a.WinHigh = j.plateLimit(), math.Min(a.WinHigh, j.mostInterference(seat, a.Ligament))
	if f := j.plateStands(a.PHigh, a.Peak, s, a.Ligament); f.What != noFail {
		return f
	}
	p := &j.h.Plate2
	a.Slackens = p.Casting && p.Creep > 0 && a.Peak > p.Creep+slack
	a.OverYield = !p.Casting && a.Peak > p.Yield+slack
	if light {
		a.Second = j.secondHold(a)
	}
	near := j.r.NearRadii * s
	a.Corner = j.h.Edge2 > 0 && j.h.Edge2-s < near && a.Ligament < near
	return Fail{}
}

func (j *judge) plateLimit() float64 {
	if j.h.Plate2.Casting {
		return j.h.Plate2.Limit
	}
	return j.h.Plate2.Yield
}

// plateStands holds a pressure against the plate: a casting by its largest
// tension, a wrought plate by the mean over the metal left at the edge.
func (j *judge) plateStands(p, peak, s, ligament float64) Fail {
	limit := j.plateLimit()
	if j.h.Plate2.Casting {
		if peak > limit+slack {
			return fail(WallStands, castingCracks, peak, limit)
		}
		return Fail{}
	}
	if mean := meanTension(p, s, ligament); mean > limit+slack {
		return fail(WallStands, plateYields, mean, limit)
	}
	return Fail{}
}

// meanTension is the pull over the metal left at the edge, averaged: p s / t.
func meanTension(p, s, ligament float64) float64 {
	if math.IsInf(ligament, 1) {
		return 0
	}
	return p * s / ligament
}

// mostInterference is the interference at which the plate reaches its limit;
// +Inf where the bush flows first and caps the pressure, or where no edge is
// known.
func (j *judge) mostInterference(seat press.Seat, ligament float64) float64 {
	limit := j.plateLimit()
	if j.h.Plate2.Casting {
		f := seat.Factors()
		limit /= math.Max(f.HoleMax, f.EdgeMax)
	} else {
		limit *= ligament / (seat.D / 2)
	}
	return interferenceFor(seat, limit)
}

// interferenceFor is the interference that makes a pressure; +Inf where the
// bush flows before it is reached.
func interferenceFor(seat press.Seat, p float64) float64 {
	if seat.Bush.Yield > 0 && p >= seat.FlowPressure() || math.IsInf(p, 1) {
		return math.Inf(1)
	}
	return seat.InterferenceFor(p)
}

// press sets up the mechanics of a bush in a seat of diameter d. stress asks
// for the moduli that give the largest tension, else those that give the least
// hold; a plate that slackens then has its relaxed modulus.
func (j *judge) press(b *Bush, contact, d float64, stress, slackens bool) press.Seat {
	p, m := &j.h.Plate2, &b.Metal
	st := pressed(j.wallShape(d), d, b.thin(d), press.Elastic{}, press.Elastic{})
	st.L = contact
	if stress {
		st.Di = b.thick()
		st.Housing = press.Elastic{E: p.EHigh, Nu: p.Nu}
		st.Bush = press.Elastic{E: m.EHigh, Nu: m.Nu, Yield: press.MisesOverTresca * m.YieldHi}
		if m.Porous {
			st.Bush.Yield = press.MisesOverTresca * j.r.PorousPeak
		}
		return st
	}
	st.Housing = press.Elastic{E: p.ELow, Nu: p.Nu}
	st.Bush = press.Elastic{E: m.ELow, Nu: m.Nu, Yield: m.Yield}
	if slackens && p.ERelaxed > 0 {
		st.Housing.E = p.ERelaxed
	}
	if m.Porous {
		st.Bush.Yield = j.r.PorousHold
	}
	return st
}

// thick and thin are the bores of the round bushes whose walls are everywhere
// that of the thick or of the thin side of a bush turned eccentric: the one is
// stiffer than it, the other softer (METHODS.md 2). Of a bush that is not they
// are its bore. d is the diameter of the seat.
func (b *Bush) thick() float64         { return ThickBore((b.BLow+b.BHigh)/2, b.Off) }
func (b *Bush) thin(d float64) float64 { return ThinBore((b.BLow+b.BHigh)/2, b.Off, d) }

// wallShape is the wall of a seat of diameter d; the last few are remembered.
func (j *judge) wallShape(d float64) press.Wall {
	for i := range j.walls {
		if j.walls[i].w != nil && j.walls[i].d == d {
			return j.walls[i].w
		}
	}
	w := j.h.wall(d)
	j.walls[j.next] = knownWall{d, w}
	j.next = (j.next + 1) % len(j.walls)
	return w
}
