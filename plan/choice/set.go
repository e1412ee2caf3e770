package choice

import (
	"cmp"
	"math/bits"
	"slices"
)

// picker puts sets of offers together.
type picker struct {
	r     Rules
	has   int
	stock map[string]int
	tools map[string]int // tools by number, as they are met
	pairs []pair         // of one join, used again by the next
}

// set is what is done at some holes of a truck.
type set struct {
	tally
	price     float64  // what it costs
	at, index []int    // holes, and which of their offers
	with      []uint64 // the tools that it needs, a bit each
	bushes    []string // that it takes out of a drawer that was counted
	keys      []string
}

// pair is two sets carried out together, by their places in two lists.
type pair struct {
	tally
	price float64
	a, b  int
}

// one is what is done at a single hole.
func (p *picker) one(hole, index int, o *Offer) set {
	s := set{tally: tallyOf(o, p.r), at: []int{hole}, index: []int{index}, keys: []string{o.Key}}
	for _, name := range o.Tools {
		n, ok := p.tools[name]
		if !ok {
			n = len(p.tools)
			p.tools[name] = n
		}
		for len(s.with) <= n/64 {
			s.with = append(s.with, 0)
		}
		s.with[n/64] |= 1 << (n % 64)
	}
	s.tools = distinct(s.with, nil)
	s.price = s.cost(p.r)
	if _, counted := p.stock[o.Bush]; counted && o.Bush != "" {
		s.bushes = []string{o.Bush}
	}
	return s
}

// best are the offers of a hole that are carried on, by mend.
func (p *picker) best(hole int, h Hole) []set {
	byMend := map[int][]set{}
	for i := range h.Offers {
		o := &h.Offers[i]
		byMend[o.Mend] = append(byMend[o.Mend], p.one(hole, i, o))
	}
	nothing := []set{{tally: none()}}
	var out []set
	for mend := range p.has + 1 {
		out = append(out, p.join(nothing, byMend[mend], perMend)...)
	}
	return out
}

// join is every set of one list with every set of another, as far as the drawer
// goes: the cheapest, of those with the gravest mend that is wanted and of the
// others, and of the rest of each those that would be preferred.
func (p *picker) join(a, b []set, most int) []set {
	p.pairs = p.pairs[:0]
	for i := range a {
		for k := range b {
			if !p.lasts(&a[i], &b[k]) {
				continue
			}
			t := a[i].and(b[k].tally)
			t.tools = distinct(a[i].with, b[k].with)
			p.pairs = append(p.pairs, pair{t, t.cost(p.r), i, k})
		}
	}
	keys := func(x, y *pair) int {
		return cmp.Or(slices.Compare(a[x.a].keys, a[y.a].keys), slices.Compare(b[x.b].keys, b[y.b].keys))
	}
	var out []set
	for _, with := range [2]bool{true, false} {
		mine := func(x *pair) bool { return (x.gravest == p.has) == with }
		cheap := p.first(most, mine, func(x, y *pair) int { return cmp.Or(x.cheaper(y), keys(x, y)) })
		if len(cheap) == 0 {
			continue
		}
		metal := p.mostLeft(&p.pairs[cheap[0]], mine)
		like := p.first(liked, func(x *pair) bool { return mine(x) && p.like(&x.tally, &p.pairs[cheap[0]].tally) },
			func(x, y *pair) int {
				return cmp.Or(x.order(&y.tally, metal, p.r.MetalTie), by(x.price, y.price), keys(x, y))
			})
		for _, n := range like {
			if !slices.Contains(cheap, n) {
				cheap = append(cheap, n)
			}
		}
		for _, n := range cheap {
			x := &p.pairs[n]
			out = append(out, together(x, &a[x.a], &b[x.b]))
		}
	}
	return out
}

// together is a pair as a set of its own.
func together(x *pair, a, b *set) set {
	s := set{tally: x.tally, price: x.price, at: slices.Concat(a.at, b.at), index: slices.Concat(a.index, b.index),
		bushes: slices.Concat(a.bushes, b.bushes), keys: slices.Concat(a.keys, b.keys), with: slices.Clone(a.with)}
	for i, w := range b.with {
		if i == len(s.with) {
			s.with = append(s.with, 0)
		}
		s.with[i] |= w
	}
	return s
}

// lasts says whether the drawer holds what two sets take out of it.
func (p *picker) lasts(a, b *set) bool {
	for _, list := range [2][]string{a.bushes, b.bushes} {
		for _, code := range list {
			if count(a.bushes, code)+count(b.bushes, code) > p.stock[code] {
				return false
			}
		}
	}
	return true
}

func count(list []string, code string) (n int) {
	for _, c := range list {
		if c == code {
			n++
		}
	}
	return n
}

// distinct is how many tools stand in one of two sets at least.
func distinct(a, b []uint64) (n int) {
	for i := range max(len(a), len(b)) {
		w := uint64(0)
		if i < len(a) {
			w = a[i]
		}
		if i < len(b) {
			w |= b[i]
		}
		n += bits.OnesCount64(w)
	}
	return n
}

// first are the places of the few of all pairs that come first in an order,
// in that order.
func (p *picker) first(most int, may func(*pair) bool, order func(a, b *pair) int) []int {
	var out []int
	for n := range p.pairs {
		x := &p.pairs[n]
		if !may(x) || len(out) == most && order(x, &p.pairs[out[most-1]]) >= 0 {
			continue
		}
		at, _ := slices.BinarySearchFunc(out, x, func(k int, x *pair) int { return order(&p.pairs[k], x) })
		if len(out) == most {
			out = out[:most-1]
		}
		out = slices.Insert(out, at, n)
	}
	return out
}

// cheaper puts pairs with fewer poor seats first, then those that cost less.
func (x *pair) cheaper(y *pair) int { return cmp.Or(cmp.Compare(x.poor, y.poor), by(x.price, y.price)) }

// by compares two figures that the last bit must not decide between.
func by(a, b float64) int {
	if d := a - b; d > -slack && d < slack {
		return 0
	}
	return cmp.Compare(a, b)
}
