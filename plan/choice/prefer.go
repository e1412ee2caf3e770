package choice

import (
	"cmp"
	"math"
	"slices"
)

// preferred is the best of some sets.
func (p *picker) preferred(sets []set) set {
	first := slices.MinFunc(sets, func(s, t set) int {
		return cmp.Or(cmp.Compare(s.poor, t.poor), by(s.price, t.price), slices.Compare(s.keys, t.keys))
	})
	sets = slices.DeleteFunc(sets, func(s set) bool { return !p.like(&s.tally, &first.tally) })
	most := math.Inf(-1)
	for i := range sets {
		most = sets[i].more(most)
	}
	return slices.MinFunc(sets, func(s, t set) int {
		return cmp.Or(s.order(&t.tally, most, p.r.MetalTie), by(s.price, t.price), slices.Compare(s.keys, t.keys))
	})
}

// like says whether what is done has as few poor seats as the cheapest and a
// chance that is no worse.
func (p *picker) like(t, cheapest *tally) bool {
	return t.poor == cheapest.poor && t.chance >= cheapest.chance-p.r.Tie-slack
}

// mostLeft is the most metal that any pair like the cheapest leaves.
func (p *picker) mostLeft(cheapest *pair, may func(*pair) bool) float64 {
	most := math.Inf(-1)
	for n := range p.pairs {
		if x := &p.pairs[n]; may(x) && p.like(&x.tally, &cheapest.tally) {
			most = x.more(most)
		}
	}
	return most
}

// more is the greater of an amount of metal and of what is left here, where an
// edge is near.
func (t *tally) more(than float64) float64 {
	if math.IsInf(t.left, 1) {
		return than
	}
	return math.Max(than, t.left)
}

// order puts what is preferred of like chance first: fewer turned parts, fewer
// bushes that compound alone holds, fewer tools, more metal left. Metal is
// counted in ties from the most that any leaves, so that the order is the same
// whichever two are compared first.
func (t *tally) order(u *tally, most, tie float64) int {
	return cmp.Or(t.turned-u.turned, t.glued-u.glued, t.tools-u.tools, steps(t.left, most, tie)-steps(u.left, most, tie))
}

// steps is how many ties less metal is left than the most.
func steps(left, most, tie float64) int {
	if math.IsInf(left, 1) || tie <= 0 {
		return 0
	}
	return int(math.Floor((most-left)/tie + slack))
}
