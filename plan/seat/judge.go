package seat

import (
	"cmp"
	"math"
	"slices"

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

	part *Part // what stands round the seat, nil the plate alone
	mend Mend  // what the answers are, "" by the way that makes the seat

	off    float64 // of the bore from the middle of the seat: bushes are turned with it
	wallOf float64 // least wall aimed at for a bush that is turned for a seat of any size

	walls [4]knownWall // the last few asked about
	next  int

	memo      *Memo  // of chances, nil nothing
	try, best Answer // room for the ways to finish a bore
}

type knownWall struct {
	d float64
	w press.Wall
}

// judge is one hole before the search.
func (in *Input) judge(h Hole) *judge {
	j := newJudge(h, in.Shop, in.Rules)
	j.memo = in.Memo
	return j
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
	j.bore, j.edge, j.off = BoreLimits(h, r), h.EdgeAway(), math.Hypot(h.Offset[0], h.Offset[1])
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
// retaining compound holds instead of a press. why asks on after a question
// that is answered no, as far as the rest can be asked: a bush that does not go
// with the seat is judged on in the seat that it wants. A bush that is turned for a
// seat of any size gets a good wall, and only where that does not go a thin one.
func (j *judge) answer(a *Answer, b *Bush, w *Way, glued, why bool) {
	j.wallOf = j.r.GoodWall
	j.walled(a, b, w, glued, why)
	if a.Feasible || !b.Turned || w.Kind != BoringHead && w.Kind != NoTool || j.r.LeastWall > j.r.GoodWall-slack {
		return
	}
	var thin Answer
	j.wallOf = j.r.LeastWall
	if j.walled(&thin, b, w, glued, why); thin.Feasible || thin.nearer(a) {
		*a = thin
	}
}

// walled is answer with the wall that a bush is to have which is turned for a
// seat of any size.
func (j *judge) walled(a *Answer, b *Bush, w *Way, glued, why bool) {
	*a = Answer{Bush: *b, Way: *w, Mend: w.Kind.Mend(), Seen: &j.h, SeatAt: j.h.At, Offset: j.h.Offset, HeldBy: ByPress, LooseAt: math.NaN(), PV: math.NaN(),
		RunCold: math.NaN(), RunHot: math.NaN(), Ligament: math.Inf(1), Presses: [2]float64{math.NaN(), math.NaN()}}
	if a.Part = j.part; j.mend != "" {
		a.Mend = j.mend
	}
	switch {
	case w.Kind == CapWay:
		a.HeldBy = ByCap
	case glued:
		a.HeldBy = ByCompound
	}
	if f := j.sizes(a, glued); f.What != noFail {
		a.fails(f, j)
		if !why || a.Bush.ODHigh-a.Bush.BHigh < slack {
			return
		}
	}
	a.Leaves = [2]float64{a.SeatLow, a.SeatHigh}
	a.ULow, a.UHigh = Interference(a.Bush.ODLow, a.SeatHigh), Interference(a.Bush.ODHigh, a.SeatLow)
	if !a.failed(FitsTight) {
		if f := j.fits(a); f.What != noFail && !j.narrowed(a, f) {
			a.fails(f, j)
			if !why {
				return
			}
		}
	}
	if a.failed(FitsTight) && !a.Bush.Turned {
		j.inItsSeat(a, glued)
	} else {
		j.questions(a, why)
	}
	if len(a.Fails) > 0 {
		a.Fail = a.hardest()
		return
	}
	a.Chance = j.chance(a)
	if f := a.Slight; f.What != noFail && a.Chance < j.r.LeastChance {
		f.Chance, f.Least = a.Chance, j.r.LeastChance
		a.fails(f, j)
		return
	}
	a.Feasible = true
	a.USet = SetDoubt(j.off, j.r.ClockDeg, j.r.SetOver)
	if j.part != nil {
		a.Part = j.part.about(a)
	}
	a.thin = a.Bush.Turned && a.BushWall() < j.r.GoodWall-slack
	if a.Part != nil && !a.Part.Stays {
		a.Chance *= a.Part.Chance
	}
}

// inItsSeat judges a bush on that goes with no seat there is, in the seats that it
// wants, tight to loose, and keeps what it misses least in.
func (j *judge) inItsSeat(a *Answer, glued bool) {
	var best Answer
	for i, at := range [...]float64{0.5, 0.15, 0.85} {
		x := *a
		x.Fails = slices.Clone(a.Fails)
		x.SeatLow, x.SeatHigh = j.suit(&a.Bush, glued, at)
		x.ULow, x.UHigh = Interference(a.Bush.ODLow, x.SeatHigh), Interference(a.Bush.ODHigh, x.SeatLow)
		j.questions(&x, true)
		if i == 0 || x.nearer(&best) {
			best = x
		}
		if len(best.Fails) == 1 {
			break // the fit alone
		}
	}
	*a = best
	slices.SortStableFunc(a.Fails, func(f, g Fail) int { return cmp.Compare(f.Question, g.Question) })
}

// fails notes a question that is answered no; its gap counts what is missed.
func (a *Answer) fails(f Fail, j *judge) {
	f.Gap = j.gap(f, a.SeatLow)
	a.Fails = append(a.Fails, f)
	a.Fail = a.hardest()
}

// questions are asked in this order, after that of the fit, which is the second;
// why asks them all, without those that have no meaning after another was
// answered no.
func (j *judge) questions(a *Answer, why bool) {
	for _, x := range [...]struct {
		question Question
		ask      func(*judge, *Answer) Fail
	}{
		{CleansUp, (*judge).cleansUp},
		{WallStands, (*judge).wall},
		{HoldsBush, (*judge).holds},
		{BoreCloses, (*judge).closes},
		{ShaftPasses, (*judge).passes},
		{BoreFinishes, (*judge).finishes},
		{LongEnough, (*judge).length},
		{BearsLoad, (*judge).load},
		{CarriesCurrent, (*judge).current},
		{HasRoom, (*judge).room},
	} {
		if !a.canBeAsked(x.question) {
			continue
		}
		if f := x.ask(j, a); f.What != noFail {
			a.fails(f, j)
			if !why {
				return
			}
		}
	}
}

// canBeAsked tells whether a question still means something after others were
// answered no: what a press does where no metal is left does not, nor how a bore
// is brought between limits that do not exist.
func (a *Answer) canBeAsked(q Question) bool {
	switch {
	case a.HeldBy == ByPress && a.Ligament <= 0 && (q == HoldsBush || q == BoreCloses || q == ShaftPasses):
		return false
	case q == BoreFinishes:
		return !a.failed(ShaftPasses) && !(a.HeldBy == ByPress && a.Ligament <= 0)
	}
	return true
}

func (a *Answer) failed(q Question) bool {
	for _, f := range a.Fails {
		if f.Question == q {
			return true
		}
	}
	return false
}

// cleansUp is question 1: the seat takes in the whole worn outline, with the
// doubt about place and survey.
func (j *judge) cleansUp(a *Answer) Fail {
	if f := j.clears(a.Way.Kind, a.SeatLow, a.HeldBy == ByCompound, a.Bush.Metal.Porous); f.What != noFail {
		return f
	}
	if !a.Way.Kind.takesOff() || j.part != nil && !j.part.Stays {
		a.CleanUp = math.Inf(1)
		return Fail{}
	}
	a.CleanUp = CleanUp(a.SeatLow, j.h.S)
	a.Filled = a.SeatLow/2 < j.need-slack
	return Fail{}
}

// leastRadius is that of the least seat that is cut: what clears the wear, or
// for a solid bush in compound what stands in sound wall far enough round.
func (j *judge) leastRadius(glued, porous bool) float64 {
	if glued && !porous {
		return math.Min(j.need, j.fill)
	}
	return j.need
}

// clears compares a seat with the wear. Nothing is cut in an old seat or a
// cap: the seat is there. Filled adhesive takes a solid bush also where some
// of the worn wall stays, if it is seated in sound wall far enough round.
func (j *judge) clears(kind Kind, low float64, glued, porous bool) Fail {
	switch kind {
	case CapWay, AsItIs:
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
