package seat

import (
	"math"

	"rebush/fits/press"
)

// judge answers the questions for one hole. What does not depend on the bush
// is worked out once.
type judge struct {
	h     Hole
	shop  Shop
	r     Rules
	allow float64 // least the seat radius exceeds S
	need  float64 // least seat radius
	loF   float64
	hiF   float64
	bore  [2]float64 // limits of the finished bore
}

func newJudge(h Hole, shop Shop, r Rules) *judge {
	j := &judge{h: h, shop: shop, r: r, loF: shop.FrictionLow, hiF: shop.FrictionHigh}
	j.allow = 2*math.Hypot(h.UPlace, h.USurvey) + r.CleanUp
	j.need = h.S + j.allow
	j.bore = BoreLimits(h, r)
	return j
}

// Allow is how much larger than the worn outline a seat's radius must be: twice
// the doubt about place and old centre, and a least cut.
func Allow(h Hole, r Rules) float64 { return newJudge(h, Shop{}, r).allow }

// BoreLimits are the limits of the finished bore on diameter: the running
// clearance over the journal, and what must pass through on assembly.
func BoreLimits(h Hole, r Rules) [2]float64 {
	lo := h.Journal + r.OverJournal
	if h.MustPass > 0 {
		lo = math.Max(lo, h.MustPass+r.Pass)
	}
	return [2]float64{lo, h.Journal + r.ClearMax}
}

// answer judges one bush with one way; glued asks for a seat that retaining
// compound holds instead of a press. sensible is false where the pair is no
// answer at all and nobody would ask about it.
func (j *judge) answer(b Bush, w Way, glued bool) (a Answer, sensible bool) {
	if glued && (w.Kind == StrapWay || !b.Turned && b.Metal.Porous) {
		return a, false
	}
	if glued && !j.shop.Compound {
		return a, false
	}
	if b.Turned && !j.shop.Lathe {
		return a, false
	}
	a = Answer{Bush: b, Way: w, LooseAt: math.NaN(), PV: math.NaN(), Ligament: math.Inf(1)}
	if glued {
		a.HeldBy = "compound"
	} else {
		a.HeldBy = "press"
	}
	if w.Kind == StrapWay {
		a.HeldBy = "strap"
	}

	if b.Turned && !j.turn(&a, w, glued) {
		return a, true
	}
	if !j.seatLimits(&a, w, glued) {
		return a, true
	}
	for _, ask := range []func(*Answer) Fail{
		j.cleansUp, j.fits, j.wall, j.holds, j.closes, j.passes, j.finishes,
		j.length, j.load, j.current, j.room,
	} {
		if f := ask(&a); f.What != noFail {
			a.Fail = f
			return a, true
		}
	}
	a.Feasible = true
	a.Chance = j.chance(&a)
	return a, true
}

// cleansUp is question 1: the seat takes in the whole worn outline, with the
// doubt about place and survey.
func (j *judge) cleansUp(a *Answer) Fail {
	s := a.SeatLow / 2
	if a.Way.Kind == OldSeatWay || a.Way.Kind == StrapWay {
		// Nothing is cut: the seat is there and the bush stands on it.
		if a.Way.Kind == OldSeatWay && !j.h.Old.Sound {
			return fail(1, oldSeatSpoilt, 0, 0)
		}
		a.CleanUp = math.Inf(1)
		return Fail{}
	}
	a.CleanUp = s - j.h.S
	if s < j.need-slack {
		return fail(1, shortOfCleanUp, s, j.need)
	}
	return Fail{}
}

// fits is question 2: how tight, over the limits of bush and seat.
func (j *judge) fits(a *Answer) Fail {
	a.ULow, a.UHigh = a.Bush.ODLow-a.SeatHigh, a.Bush.ODHigh-a.SeatLow
	switch a.HeldBy {
	case "compound":
		if -a.UHigh < j.r.GapLow-slack {
			return fail(2, compoundGap, -a.UHigh, j.r.GapLow)
		}
		if -a.ULow > j.r.GapHigh+slack {
			return fail(2, compoundGap, -a.ULow, j.r.GapHigh)
		}
		if j.h.THigh > j.r.CompoundC {
			return fail(2, compoundHot, j.h.THigh, j.r.CompoundC)
		}
	case "strap":
		if -a.UHigh < j.r.StrapLow-slack {
			return fail(2, strapSlide, -a.UHigh*1000, j.r.StrapLow*1000)
		}
		if -a.ULow > j.r.StrapHigh+slack {
			return fail(2, strapSlide, -a.ULow*1000, j.r.StrapHigh*1000)
		}
	default:
		if a.ULow <= slack {
			return fail(2, dropsLoose, a.ULow*1000, 1)
		}
		if most := j.r.MaxShare * a.SeatLow; a.UHigh > most+slack {
			return fail(2, tooTight, a.UHigh*1000, most*1000)
		}
	}
	return Fail{}
}

// wall is question 3: the metal left outside, and what the press does to it.
func (j *judge) wall(a *Answer) Fail {
	h := j.h
	s := a.SeatHigh / 2
	a.Ligament = h.Edge - s
	if h.BossR > 0 {
		a.Ligament = math.Min(a.Ligament, h.BossR-h.BossE-s)
	}
	if a.Ligament <= 0 {
		return fail(3, wallTooThin, a.Ligament, math.Max(0.2, j.r.LeastWall))
	}
	a.WindowLow, a.WinHigh = 0, math.Inf(1)
	if a.HeldBy != "press" {
		if a.Ligament < j.r.LeastWall-slack {
			return fail(3, wallTooThin, a.Ligament, j.r.LeastWall)
		}
		return Fail{}
	}
	if a.Ligament < j.r.NoWall*s-slack {
		return fail(3, wallTooThinForPress, a.Ligament, j.r.NoWall*s)
	}
	light := a.Ligament < j.r.LightWall*s-slack
	if light {
		a.WinHigh = j.r.LightShare * 2 * s
		if a.UHigh > a.WinHigh+slack {
			return fail(3, pressTooHeavy, a.UHigh*1000, a.WinHigh*1000)
		}
	}
	seat := j.press(a, a.SeatLow, true)
	st := seat.At(a.UHigh)
	a.Wall, a.Stress = seat.Wall, seat
	a.PHigh, a.Peak = st.P, st.HousingHoopMax
	p := h.Plate2
	if p.Casting {
		a.PeakLimit = p.Limit
		a.WinHigh = math.Min(a.WinHigh, j.interferenceAt(seat, p.Limit))
		if a.Peak > p.Limit+slack {
			return fail(3, castingCracks, a.Peak, p.Limit)
		}
		a.Slackens = p.Creep > 0 && a.Peak > p.Creep
	} else {
		a.PeakLimit = p.Yield
		if mean := meanTension(a.PHigh, s, a.Ligament); mean > p.Yield {
			return fail(3, plateYields, mean, p.Yield)
		}
		a.OverYield = a.Peak > p.Yield
	}
	if light {
		a.Second = j.secondHold(a)
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

// interferenceAt is the interference at which the largest tension reaches a
// limit; +Inf where the bush flows first and caps it.
func (j *judge) interferenceAt(seat press.Seat, limit float64) float64 {
	lo, hi := 0.0, 0.05*seat.D
	if seat.At(hi).HousingHoopMax <= limit {
		return math.Inf(1)
	}
	for range 40 {
		mid := (lo + hi) / 2
		if seat.At(mid).HousingHoopMax <= limit {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// secondHold names what else can hold the bush: its flange, compound on a
// clean solid bush, or a stake.
func (j *judge) secondHold(a *Answer) string {
	switch {
	case a.Bush.FlangeOD > 0:
		return "flange"
	case j.shop.Compound && !a.Bush.Metal.Porous && !a.Bush.Metal.Plastic && j.h.THigh <= j.r.CompoundC:
		return "compound"
	}
	return "stake"
}

// press sets up the mechanics of the seat. stress asks for the moduli that
// give the largest tension, else those that give the least hold; slackened
// plates use their relaxed modulus for holding.
func (j *judge) press(a *Answer, d float64, stress bool) press.Seat {
	p, m := j.h.Plate2, a.Bush.Metal
	st := press.Seat{D: d, Di: (a.Bush.BLow + a.Bush.BHigh) / 2, L: a.Contact, Wall: j.wallShape(d)}
	st.Housing = press.Elastic{E: p.EHigh, Nu: p.Nu}
	st.Bush = press.Elastic{E: m.EHigh, Nu: m.Nu, Yield: m.YieldHi}
	if m.Porous {
		st.Bush.Yield = 1.155 * j.r.PorousPeak
	} else if m.YieldHi > 0 {
		st.Bush.Yield = 1.155 * m.YieldHi
	}
	if !stress {
		st.Housing.E, st.Bush.E, st.Bush.Yield = p.ELow, m.ELow, m.Yield
		if a.Slackens && p.ERelaxed > 0 {
			st.Housing.E = p.ERelaxed
		}
		if m.Porous {
			st.Bush.Yield = j.r.PorousHold
		}
	}
	return st
}
