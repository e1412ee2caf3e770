package seat

import "math"

// leastMetal is the least metal that may stand beside a seat of that diameter,
// by what holds the bush in it, mm.
func (r *Rules) leastMetal(by Hold, seat float64) float64 {
	if by == ByPress {
		return r.NoWall * seat / 2
	}
	return r.LeastWall
}

// LeastMetal is the least metal that may stand beside the seat of an answer, mm.
func LeastMetal(a *Answer, r Rules) float64 { return r.leastMetal(a.HeldBy, a.SeatHigh) }

// About is what stands round another centre of a bore, with the other holes as
// they stand: of the hole its S, edges, boss and neighbours, and no more.
func (in *Input) About(s Site, sites []Site, at [2]float64) Hole {
	s.At = at
	h := Hole{Name: s.Name()}
	in.around(&h, s, sites)
	return h
}

// MetalLeft is the least metal round a seat of that diameter about the centre
// of a hole, to an edge or to another hole, mm, and what stands there; +Inf
// where nothing is known to be near.
func (h *Hole) MetalLeft(seat float64) (left float64, what string) {
	left, what = MetalLeft(h.EdgeAway(), seat), h.EdgeName
	if h.BossR > 0 && h.BossR-h.BossE < h.Edge {
		what = "the rim of the boss"
	}
	for _, n := range h.Near {
		if m := MetalLeft(n.At-n.R, seat); m < left {
			left, what = m, n.Name
		}
	}
	return left, what
}

// works is how far from the planned seat its works limits are looked for, mm.
const works = 0.25

// Works are the limits of a seat in which the bush of an answer works, mm on
// diameter: with what holds it beside its press, and so that every question
// that was asked of the planned seat is answered yes of one of that size too.
// Under a cap they are those of its play. They hold the limits of the planned
// seat, or what of them works.
func Works(h Hole, a *Answer, shop Shop, r Rules) [2]float64 {
	if a.HeldBy == ByCap {
		return Gauged(a, r)
	}
	if a.Part != nil || a.Mend == MadeToFit {
		h = *a.Seen // about its own seat, with what stands round it
	}
	h.Old = &OldSeat{Sound: true}
	j := newJudge(h, shop, r)
	j.part = a.Part
	j.wallOf = r.LeastWall
	fits := func(s float64) bool {
		x := Answer{Bush: a.Bush, Way: Way{Kind: OldSeatWay, Low: s, High: s}, Mend: Renew, HeldBy: a.HeldBy, Second: a.Second,
			SeatLow: s, SeatHigh: s, Ligament: math.Inf(1), LooseAt: math.NaN(), PV: math.NaN(), RunCold: math.NaN(),
			RunHot: math.NaN()}
		x.ULow, x.UHigh = Interference(a.Bush.ODLow, s), Interference(a.Bush.ODHigh, s)
		if j.fits(&x).What != noFail {
			return false
		}
		j.questions(&x, false)
		return len(x.Fails) == 0 && x.Second&^a.Second == 0
	}
	mid := (a.SeatLow + a.SeatHigh) / 2
	out := [2]float64{mid, mid}
	for i, sign := range []float64{-1, 1} {
		yes, no := 0.0, works
		if fits(mid + sign*works) {
			yes = works
		}
		for no-yes > 1e-5 {
			if m := (yes + no) / 2; fits(mid + sign*m) {
				yes = m
			} else {
				no = m
			}
		}
		out[i] = mid + sign*yes
	}
	return out
}

// name is a seat that is there, in words.
func (o *OldSeat) name() string {
	if o.Made {
		return "the seat as made"
	}
	return "the old bush's seat"
}
