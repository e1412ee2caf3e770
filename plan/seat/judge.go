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
	fill  float64 // least seat radius where the rest of the wear is filled, +Inf none
	needT float64 // torque that a bush must hold, N mm
	loF   float64
	hiF   float64
	bore  [2]float64 // limits of the finished bore
	edge  float64    // from the new centre to what is nearest

	walls [4]knownWall // the last few asked about
	next  int
}

type knownWall struct {
	d float64
	w press.Wall
}

func newJudge(h Hole, shop Shop, r Rules) *judge {
	j := &judge{h: h, shop: shop, r: r, loF: shop.FrictionLow, hiF: shop.FrictionHigh}
	doubt := Doubt(h.UPlace, h.USurvey)
	if j.allow = doubt + r.CleanUp; h.Follows {
		j.allow = 0
	}
	j.need = h.S + j.allow
	j.fill = math.Inf(1)
	if h.Fill > 0 {
		j.fill = h.Fill + doubt
	}
	j.needT = NeededTorque(r.HoldFactor, r.HoldFriction, h.Load, h.Journal)
	j.bore, j.edge = BoreLimits(h, r), h.EdgeAway()
	return j
}

// Allow is how much larger than the worn outline a seat's radius must be: twice
// the doubt about place and old centre, and a least cut.
func Allow(h Hole, r Rules) float64 { return newJudge(h, Shop{}, r).allow }

// BoreLimits are the limits of the finished bore on diameter: the running
// clearance over the journal, and what must pass through on assembly.
func BoreLimits(h Hole, r Rules) [2]float64 {
	return [2]float64{LeastBore(h.Journal, r.OverJournal, h.MustPass, r.Pass), MostBore(h.Journal, r.ClearMax)}
}

// answer judges one bush with one way into a; glued asks for a seat that
// retaining compound holds instead of a press.
func (j *judge) answer(a *Answer, b *Bush, w *Way, glued bool) {
	*a = Answer{Bush: *b, Way: *w, Mend: w.Kind.Mend(), HeldBy: ByPress, LooseAt: math.NaN(), PV: math.NaN(),
		RunCold: math.NaN(), RunHot: math.NaN(), Ligament: math.Inf(1)}
	switch {
	case w.Kind == CapWay:
		a.HeldBy = ByCap
	case glued:
		a.HeldBy = ByCompound
	}
	if a.Fail = j.sizes(a, glued); a.Fail.What != noFail {
		return
	}
	if a.Fail = j.questions(a); a.Fail.What != noFail {
		return
	}
	a.Feasible = true
	a.Chance = j.chance(a)
}

// questions are asked in this order; the first that is answered no is the
// reason.
func (j *judge) questions(a *Answer) Fail {
	for _, ask := range [...]func(*judge, *Answer) Fail{
		(*judge).cleansUp,
		(*judge).fits,
		(*judge).wall,
		(*judge).holds,
		(*judge).closes,
		(*judge).passes,
		(*judge).finishes,
		(*judge).length,
		(*judge).load,
		(*judge).current,
		(*judge).room,
	} {
		if f := ask(j, a); f.What != noFail {
			return f
		}
	}
	return Fail{}
}

// cleansUp is question 1: the seat takes in the whole worn outline, with the
// doubt about place and survey.
func (j *judge) cleansUp(a *Answer) Fail {
	if f := j.clears(a.Way.Kind, a.SeatLow, a.HeldBy == ByCompound, a.Bush.Metal.Porous); f.What != noFail {
		return f
	}
	if a.Mend == Renew {
		a.CleanUp = math.Inf(1)
		return Fail{}
	}
	a.CleanUp = CleanUp(a.SeatLow, j.h.S)
	a.Filled = a.SeatLow/2 < j.need-slack
	return Fail{}
}

// clears compares a seat with the wear. Nothing is cut in an old seat or a
// cap: the seat is there. Filled adhesive takes a solid bush also where some
// of the worn wall stays, if it is seated in sound wall far enough round.
func (j *judge) clears(kind Kind, low float64, glued, porous bool) Fail {
	switch kind {
	case CapWay:
		return Fail{}
	case OldSeatWay:
		if !j.h.Old.Sound {
			return fail(CleansUp, oldSeatSpoilt, 0, 0)
		}
		return Fail{}
	}
	s := low / 2
	if s >= j.need-slack {
		return Fail{}
	}
	if !glued || porous || math.IsInf(j.fill, 1) {
		return fail(CleansUp, shortOfCleanUp, s, j.need)
	}
	if s < j.fill-slack {
		return fail(CleansUp, shortOfFill, s, j.fill)
	}
	return Fail{}
}

// fits is question 2: how tight, over the limits of bush and seat.
func (j *judge) fits(a *Answer) Fail {
	a.ULow, a.UHigh = Interference(a.Bush.ODLow, a.SeatHigh), Interference(a.Bush.ODHigh, a.SeatLow)
	return j.fitsIn(a.Way.Kind, a.SeatLow, a.ULow, a.UHigh, a.HeldBy == ByCompound)
}

func (j *judge) fitsIn(kind Kind, seat, uLow, uHigh float64, glued bool) Fail {
	r := &j.r
	switch {
	case kind == CapWay:
		if -uHigh < r.CapLow-slack {
			return fail(FitsTight, capSlide, -uHigh*1000, r.CapLow*1000)
		}
		if -uLow > r.CapHigh+slack {
			return fail(FitsTight, capSlide, -uLow*1000, r.CapHigh*1000)
		}
	case glued:
		if -uHigh < r.GapLow-slack {
			return fail(FitsTight, compoundGap, -uHigh, r.GapLow)
		}
		if -uLow > r.GapHigh+slack {
			return fail(FitsTight, compoundGap, -uLow, r.GapHigh)
		}
	default:
		if uLow <= slack {
			return fail(FitsTight, dropsLoose, uLow*1000, 0)
		}
		if most := r.MaxShare * seat; uHigh > most+slack {
			return fail(FitsTight, tooTight, uHigh*1000, most*1000)
		}
	}
	return Fail{}
}
