package seat

import (
	"math"
	"sort"
)

// slack is how far two figures may differ and still be called the same, so
// that a choice does not hang on the last bit.
const slack = 1e-9

// Search judges every bush with every way to make its seat and ranks the
// feasible ones, best first; the others follow in the order of the list, each
// with the reason why it fell.
func Search(h Hole, bushes []Bush, shop Shop, r Rules) []Answer {
	j := newJudge(h, shop, r)
	var good, fell []Answer
	for i := range bushes {
		for _, w := range shop.waysFor(h) {
			b := bushes[i]
			ways := []bool{false}
			if shop.Compound || b.Turned {
				ways = []bool{false, true}
			}
			for _, glued := range ways {
				a, sensible := j.answer(b, w, glued)
				switch {
				case !sensible:
				case a.Feasible:
					good = append(good, a)
				default:
					fell = append(fell, a)
				}
			}
		}
	}
	rank(good, r.Tie)
	return append(good, keepOneReason(good, fell)...)
}

// waysFor lists the ways to make the seat of one hole: a sound old seat and a
// strap come before anything that cuts.
func (s Shop) waysFor(h Hole) []Way {
	if h.Strap > 0 {
		return []Way{{Kind: StrapWay, Name: "the strap's own seat", Size: h.Strap, Low: h.Strap, High: h.Strap, Index: -1}}
	}
	ways := s.Ways
	if h.Old != nil && h.Old.Sound {
		old := Way{Kind: OldSeatWay, Name: "the old bush's seat", Size: (h.Old.Low + h.Old.High) / 2, Low: h.Old.Low, High: h.Old.High, Index: -1}
		ways = append([]Way{old}, ways...)
	}
	return ways
}

// rank sorts by chance; within a tie by most metal left outside, then what is
// on hand, then price, then list order. A sound old seat wins outright: it
// removes no metal and it is the best datum there is. A press comes before a
// glued seat of the same chance.
func rank(as []Answer, tie float64) {
	best := 0.0
	for _, a := range as {
		best = math.Max(best, a.Chance)
	}
	// Chances are compared in steps of the tie below the best, so that the
	// order is the same whichever pair is compared first.
	step := func(a Answer) int {
		if tie <= 0 {
			return int(math.Round((best - a.Chance) * 1e6))
		}
		return int(math.Floor((best-a.Chance)/tie + slack))
	}
	sort.SliceStable(as, func(i, k int) bool {
		a, b := as[i], as[k]
		if x, y := a.Way.Kind == OldSeatWay, b.Way.Kind == OldSeatWay; x != y {
			return x
		}
		if x, y := step(a), step(b); x != y {
			return x < y
		}
		if x, y := a.HeldBy == "compound", b.HeldBy == "compound"; x != y {
			return y
		}
		if d := a.Ligament - b.Ligament; math.Abs(d) > slack && !math.IsInf(a.Ligament, 1) {
			return d > 0
		}
		if x, y := a.Bush.stockRank(), b.Bush.stockRank(); x != y {
			return x < y
		}
		if d := a.Bush.Price - b.Bush.Price; a.Bush.Priced && b.Bush.Priced && math.Abs(d) > slack {
			return d < 0
		}
		if a.Bush.Index != b.Bush.Index {
			return a.Bush.Index < b.Bush.Index
		}
		return a.Way.Index < b.Way.Index
	})
}

// stockRank puts what is on hand before what must be made, and that before
// what must be bought.
func (b Bush) stockRank() int {
	switch {
	case b.ToBuy:
		return 3
	case b.Turned:
		return 1
	case b.OnHand == 0:
		return 2
	}
	return 0
}

// keepOneReason thins the fallen to one line for each bush once the list is
// long: the way that came furthest through the questions. A glued seat that
// fell is only told where the pressed one is not.
func keepOneReason(good, fell []Answer) []Answer {
	const long = 60
	type pair struct{ bush, way string }
	seen := map[pair]bool{}
	for _, a := range good {
		seen[pair{a.Bush.Code, a.Way.Name}] = true
	}
	var out []Answer
	for _, a := range fell {
		p := pair{a.Bush.Code, a.Way.Name}
		if seen[p] {
			continue
		}
		seen[p] = true
		out = append(out, a)
	}
	if len(out) <= long {
		return out
	}
	furthest := map[string]int{}
	var codes []string
	for i, a := range out {
		k, ok := furthest[a.Bush.Code]
		if !ok {
			codes = append(codes, a.Bush.Code)
		}
		if !ok || a.Fail.Question > out[k].Fail.Question ||
			a.Fail.Question == out[k].Fail.Question && a.Fail.gap() < out[k].Fail.gap() {
			furthest[a.Bush.Code] = i
		}
	}
	kept := make([]Answer, 0, len(codes))
	for _, c := range codes {
		kept = append(kept, out[furthest[c]])
	}
	return kept
}
