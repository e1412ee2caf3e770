package seat

import (
	"math"

	"rebush/fits/press"
)

// closes is question 5: where the bore lies after pressing, over the least and
// the largest interference, modulus and flow stress.
func (j *judge) closes(a *Answer) Fail {
	b := a.Bush
	if a.HeldBy == "press" {
		a.Closure = j.closure(a)
	}
	a.Closed = [2]float64{b.BLow - a.Closure[1], b.BHigh - a.Closure[0]}
	a.LooseAt = j.coolsAt(a)
	if a.HeldBy == "press" && !math.IsNaN(a.LooseAt) {
		if a.LooseAt > 20 && a.LooseAt < j.h.THigh && a.Second == "" {
			return fail(5, coolsLoose, a.LooseAt, j.h.THigh)
		}
		if a.LooseAt < 20 && a.LooseAt > j.h.TLow && a.Second == "" {
			return fail(5, coolsLoose, a.LooseAt, j.h.TLow)
		}
	}
	return Fail{}
}

// closure is the band by which the bore closes on diameter.
func (j *judge) closure(a *Answer) [2]float64 {
	m, p := a.Bush.Metal, j.h.Plate2
	lo, hi := math.Inf(1), 0.0
	flow := [2]float64{m.Yield, m.YieldHi * 1.155}
	if m.Porous {
		flow = [2]float64{j.r.FlowLow, j.r.FlowHigh}
	}
	for i, u := range [2]float64{a.ULow, a.UHigh} {
		d := [2]float64{a.SeatHigh, a.SeatLow}[i]
		for k := range 2 {
			seat := press.Seat{D: d, Di: (a.Bush.BLow + a.Bush.BHigh) / 2, L: a.Contact, Wall: j.wallShape(d),
				Housing: press.Elastic{E: [2]float64{p.ELow, p.EHigh}[k], Nu: p.Nu},
				Bush:    press.Elastic{E: [2]float64{m.EHigh, m.ELow}[k], Nu: m.Nu, Yield: flow[1-k]}}
			st := seat.At(u)
			if i == 0 && st.ClosureLow < lo {
				lo, a.ClosureAt[0] = st.ClosureLow, seat
			}
			if i == 1 && st.ClosureHigh > hi {
				hi, a.ClosureAt[1] = st.ClosureHigh, seat
			}
		}
	}
	return [2]float64{lo, hi}
}

// passes is question 6: is there a bore that lets through what must pass and
// still runs.
func (j *judge) passes(a *Answer) Fail {
	a.Bore = j.bore
	if j.bore[0] > j.bore[1]+slack {
		return fail(6, nothingPasses, j.h.MustPass, j.bore[1]-j.r.Pass)
	}
	return Fail{}
}

// finishes is question 7: how the bore gets to size. The closure's doubt
// decides: as delivered only where the whole band ends inside the limits.
func (j *judge) finishes(a *Answer) Fail {
	lo, hi := j.bore[0], j.bore[1]
	a.Expected = a.Closed
	if a.Closed[0] >= lo-slack && a.Closed[1] <= hi+slack {
		a.Finish = AsDelivered
		return Fail{}
	}
	if a.Closed[1] > hi+slack {
		return fail(7, boreTooLarge, a.Closed[1], hi)
	}
	if j.mandrels(a) {
		return Fail{}
	}
	if !a.Bush.Metal.Porous {
		if best, ok := j.reamer(a); ok {
			a.Finish, a.FinishTool, a.FinishSizes = Ream, best.Name, []float64{best.Size}
			a.Expected = [2]float64{best.Low, best.High}
			return Fail{}
		}
	}
	if from := j.shop.BoringFrom; from > 0 && from <= lo && j.shop.BoringTo >= hi {
		a.Finish, a.FinishTool = BoreInPlace, "boring head"
		mid := math.Max((lo+hi)/2, 0)
		a.Expected = [2]float64{math.Max(lo, mid-j.r.BoringHead), math.Min(hi, mid+j.r.BoringHead)}
		return Fail{}
	}
	// By hand, to the very axle: a porous bore is only stretched, a solid one
	// is cut.
	most := j.r.OpenSolid
	if a.Bush.Metal.Porous {
		most = j.r.MandrelTotal
	}
	if open := lo - a.Closed[0]; open > most+slack {
		return fail(7, openedTooFar, open, most)
	}
	a.Finish = ToOwnAxle
	a.Expected = [2]float64{math.Max(lo, j.h.Journal+j.r.AimLow), math.Min(hi, math.Max(lo, j.h.Journal+j.r.AimHigh))}
	if a.Expected[1] <= a.Expected[0] {
		a.Expected[1] = hi
	}
	return Fail{}
}

// mandrels looks for a row of sizing mandrels that opens the closed bore in
// steps no larger than allowed, the last of which leaves a bore inside the
// limits. Of several, the one whose bore lies best between them.
func (j *judge) mandrels(a *Answer) bool {
	lo, hi := j.bore[0], j.bore[1]
	bestAt := math.Inf(1)
	for i, last := range j.shop.Mandrels {
		low, high := last-j.r.SpringHigh, last-j.r.SpringLow
		if low < lo-slack || high > hi+slack || last < a.Closed[1]-slack || last-a.Closed[0] > j.r.MandrelTotal+slack {
			continue
		}
		row, ok := j.steps(a.Closed[0], i)
		if !ok {
			continue
		}
		off := math.Abs((low+high)/2 - (lo+hi)/2)
		if off < bestAt-slack {
			bestAt = off
			a.Finish, a.FinishTool, a.FinishSizes = Mandrel, "sizing mandrel", row
			a.Expected = [2]float64{low, high}
		}
	}
	return !math.IsInf(bestAt, 1)
}

// steps picks the fewest mandrels from a closed bore up to mandrel last with no
// step above what is allowed.
func (j *judge) steps(from float64, last int) ([]float64, bool) {
	var row []float64
	at := from
	for at < j.shop.Mandrels[last]-slack {
		next := -1.0
		for _, m := range j.shop.Mandrels[:last+1] {
			if m > at+slack && m <= at+j.r.MandrelStep+slack {
				next = m
			}
		}
		if next < 0 {
			return nil, false
		}
		row = append(row, next)
		at = next
	}
	return row, len(row) > 0
}

// reamer finds the reamer whose hole lies inside the bore's limits, nearest to
// the aim.
func (j *judge) reamer(a *Answer) (Way, bool) {
	lo, hi := j.bore[0], j.bore[1]
	aim := math.Max(lo, j.h.Journal+(j.r.AimLow+j.r.AimHigh)/2)
	best, off := Way{}, math.Inf(1)
	for _, w := range j.shop.BoreReamers {
		if w.Low < lo-slack || w.High > hi+slack || w.Low < a.Closed[1]-slack || w.High-a.Closed[0] > j.r.OpenSolid+slack {
			continue
		}
		if d := math.Abs((w.Low+w.High)/2 - aim); d < off-slack {
			best, off = w, d
		}
	}
	return best, !math.IsInf(off, 1)
}
