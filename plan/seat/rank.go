package seat

import (
	"math"
	"sort"
)

// order is what candidates are ranked by: the best chance and the most metal
// left, from which ties are measured, so that the order is the same whichever
// pair is compared first.
type order struct {
	tie, metal float64 // chances and metal that differ by less are the same
	best, most float64
}

// rank sorts by chance; within a tie a press before compound, what is on hand
// before what is turned or bought, then most metal left outside, then price, size
// and name: never by where a thing stands in a list. Which tools serve several
// holes is no matter of one hole. A
// sound old seat wins outright: it removes no metal and it is the best datum
// there is. A seat that leaves some of the worn wall comes last: it is taken only
// where nothing clears it. So does a turned bush whose wall is under good_wall_mm,
// behind all others of its kind.
func rank(as []Answer, r *Rules) {
	o := order{tie: math.Max(r.Tie, 1e-6), metal: math.Max(r.MetalTie, slack)}
	for i := range as {
		o.best = math.Max(o.best, as[i].Chance)
	}
	for i := range as {
		if o.step(&as[i]) == 0 && !math.IsInf(as[i].Ligament, 1) {
			o.most = math.Max(o.most, as[i].Ligament)
		}
	}
	by := make([]int, len(as))
	for i := range by {
		by[i] = i
	}
	sort.SliceStable(by, func(i, k int) bool { return o.before(&as[by[i]], &as[by[k]]) })
	sorted := make([]Answer, len(as))
	for i, k := range by {
		sorted[i] = as[k]
	}
	copy(as, sorted)
}

func (o *order) step(a *Answer) int { return int(math.Floor((o.best-a.Chance)/o.tie + slack)) }

// metalStep is how many ties less metal a candidate leaves than the most.
func (o *order) metalStep(a *Answer) int {
	if math.IsInf(a.Ligament, 1) {
		return 0
	}
	return int(math.Floor((o.most-a.Ligament)/o.metal + slack))
}

func (o *order) before(a, b *Answer) bool {
	if x, y := a.class(), b.class(); x != y {
		return x < y
	}
	if a.thin != b.thin {
		return b.thin
	}
	if x, y := o.step(a), o.step(b); x != y {
		return x < y
	}
	if x, y := a.HeldBy == ByCompound, b.HeldBy == ByCompound; x != y {
		// A press can be felt going in and be pressed out again: of the same
		// chance it comes before a seat that glue alone holds.
		return y
	}
	if x, y := a.Bush.stockRank(), b.Bush.stockRank(); x != y {
		return x < y
	}
	if x, y := o.metalStep(a), o.metalStep(b); x != y {
		return x < y
	}
	if a.Bush.Priced != b.Bush.Priced {
		return a.Bush.Priced
	}
	if d := a.Bush.Price - b.Bush.Price; math.Abs(d) > slack {
		return d < 0
	}
	return compareSizes(&a.Bush, &b.Bush, &a.Way, &b.Way, a.HeldBy == ByCompound, b.HeldBy == ByCompound) < 0
}

// class puts what is there before what is cut, and that before what is filled.
func (a *Answer) class() int {
	switch {
	case a.Mend == Renew:
		return 0
	case a.Filled:
		return 2
	}
	return 1
}

// stockRank puts what is on hand before what must be made, and that before
// what must be bought.
func (b *Bush) stockRank() int {
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
