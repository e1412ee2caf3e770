package choice

import (
	"math"
	"slices"
	"strings"
)

const (
	slack    = 1e-9
	perMend  = 8  // offers of one mend that are carried on from a hole
	perAxle  = 24 // sets of offers that are carried on from an axle
	perTruck = 48 // and from each truck as far as it is put together
)

// Pick returns the offer of each hole, by its place among the offers of that
// hole, with which the truck costs least; at least one hole has a mend as grave
// as has, and no bush is used more often than it is in stock (a bush that is
// not named there is no matter). ok is false where there is no such set.
//
// Sets with fewer poor seats come first. Of those whose chance lies within
// Rules.Tie of the cheapest's, or above it, the one with the fewest turned parts
// is taken, then with the fewest tools, then with the most metal left, then the
// cheapest; last by key, so that no order of lists decides.
func Pick(holes []Hole, stock map[string]int, has int, r Rules) (pick []int, ok bool) {
	sets := []set{{}}
	for _, axle := range axles(holes) {
		mine := []set{{}}
		for _, i := range axle {
			mine = grow(mine, i, holes[i].best(), stock, r)
		}
		mine = cheapest(mine, perAxle, has)
		var joined []set
		for _, a := range sets {
			for _, b := range mine {
				if s, ok := a.join(b, stock, r); ok {
					joined = append(joined, s)
				}
			}
		}
		sets = cheapest(joined, perTruck, has)
	}
	var good []set
	for _, s := range sets {
		if s.gravest == has {
			good = append(good, s)
		}
	}
	if len(good) == 0 {
		return nil, false
	}
	best := preferred(good, r)
	pick = make([]int, len(holes))
	for k, i := range best.at {
		pick[i] = best.index[k]
	}
	return pick, true
}

// set is what is done at some holes of a truck.
type set struct {
	at, index []int // holes, and which of their offers
	offers    []Offer
	gravest   int
	cost      float64
	chance    float64
	poor      int
	key       string
}

// axles gathers the holes by axle, in the order of their names, so that the
// order of the job does not decide.
func axles(holes []Hole) [][]int {
	by := make([]int, len(holes))
	for i := range by {
		by[i] = i
	}
	slices.SortStableFunc(by, func(a, b int) int {
		if c := strings.Compare(holes[a].Axle, holes[b].Axle); c != 0 {
			return c
		}
		return strings.Compare(holes[a].Name, holes[b].Name)
	})
	var out [][]int
	for k, i := range by {
		if k == 0 || holes[i].Axle != holes[by[k-1]].Axle {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], i)
	}
	return out
}

// best are the offers of a hole that are carried on: of each mend the cheapest
// few, and the best of those that need nothing turned.
func (h Hole) best() []indexed {
	byMend := map[int][]indexed{}
	for i, o := range h.Offers {
		byMend[o.Mend] = append(byMend[o.Mend], indexed{i, o})
	}
	var out []indexed
	for _, list := range byMend {
		slices.SortFunc(list, func(a, b indexed) int { return a.before(b) })
		out = append(out, list[:min(len(list), perMend)]...)
	}
	slices.SortFunc(out, func(a, b indexed) int { return a.before(b) })
	return out
}

type indexed struct {
	i int
	o Offer
}

func (a indexed) before(b indexed) int {
	one := Rules{Rate: 1, ToolMinutes: 3, SpoiltMinutes: 20}
	switch x, y := Cost([]Offer{a.o}, one), Cost([]Offer{b.o}, one); {
	case a.o.Poor != b.o.Poor:
		return less(b.o.Poor)
	case math.Abs(x-y) > slack:
		return less(x < y)
	case math.Abs(a.o.Parts-b.o.Parts) > slack:
		return less(a.o.Parts < b.o.Parts)
	}
	return strings.Compare(a.o.Key, b.o.Key)
}

func less(yes bool) int {
	if yes {
		return -1
	}
	return 1
}

// grow puts every offer of one more hole to every set.
func grow(sets []set, hole int, offers []indexed, stock map[string]int, r Rules) []set {
	var out []set
	for _, s := range sets {
		for _, o := range offers {
			one := set{at: []int{hole}, index: []int{o.i}, offers: []Offer{o.o}}
			if t, ok := s.join(one, stock, r); ok {
				out = append(out, t)
			}
		}
	}
	return out
}

// join is two sets carried out together; false where the drawer runs short.
func (s set) join(t set, stock map[string]int, r Rules) (set, bool) {
	out := set{at: append(slices.Clone(s.at), t.at...), index: append(slices.Clone(s.index), t.index...),
		offers: append(slices.Clone(s.offers), t.offers...), chance: 1}
	used := map[string]int{}
	var keys []string
	for _, o := range out.offers {
		if left, counted := stock[o.Bush]; counted && o.Bush != "" {
			if used[o.Bush]++; used[o.Bush] > left {
				return set{}, false
			}
		}
		out.gravest = max(out.gravest, o.Mend)
		out.chance *= o.Chance
		if o.Poor {
			out.poor++
		}
		keys = append(keys, o.Key)
	}
	out.cost, out.key = Cost(out.offers, r), strings.Join(keys, "\x00")
	return out, true
}

// cheapest keeps the cheapest sets, of those with the gravest mend that is
// wanted and of the others.
func cheapest(sets []set, most, has int) []set {
	slices.SortFunc(sets, func(a, b set) int {
		switch {
		case a.poor != b.poor:
			return less(a.poor < b.poor)
		case math.Abs(a.cost-b.cost) > slack:
			return less(a.cost < b.cost)
		}
		return strings.Compare(a.key, b.key)
	})
	var out []set
	kept := map[bool]int{}
	for _, s := range sets {
		if with := s.gravest == has; kept[with] < most {
			kept[with]++
			out = append(out, s)
		}
	}
	return out
}

// preferred is the best of some sets.
func preferred(sets []set, r Rules) set {
	first := sets[0]
	for _, s := range sets {
		if s.poor < first.poor || s.poor == first.poor && (s.cost < first.cost-slack ||
			s.cost <= first.cost+slack && s.key < first.key) {
			first = s
		}
	}
	var like []set
	most := math.Inf(-1)
	for _, s := range sets {
		if s.poor == first.poor && s.chance >= first.chance-r.Tie-slack {
			like = append(like, s)
			if left := s.left(); !math.IsInf(left, 1) {
				most = math.Max(most, left)
			}
		}
	}
	best := like[0]
	for _, s := range like[1:] {
		if s.better(best, most, r.MetalTie) {
			best = s
		}
	}
	return best
}

// better tells two sets of like chance apart. Metal is counted in ties from the
// most that any of them leaves, so that the order is the same whichever pair is
// compared first.
func (s set) better(t set, most, tie float64) bool {
	if a, b := s.turned(), t.turned(); a != b {
		return a < b
	}
	if a, b := s.glued(), t.glued(); a != b {
		return a < b
	}
	if a, b := distinct(s.offers), distinct(t.offers); a != b {
		return a < b
	}
	if a, b := steps(s.left(), most, tie), steps(t.left(), most, tie); a != b {
		return a < b
	}
	if math.Abs(s.cost-t.cost) > slack {
		return s.cost < t.cost
	}
	return s.key < t.key
}

func (s set) turned() int {
	n := 0
	for _, o := range s.offers {
		n += o.Turned
	}
	return n
}

func (s set) glued() int {
	n := 0
	for _, o := range s.offers {
		n += o.Glued
	}
	return n
}

// left is the least metal that any hole keeps.
func (s set) left() float64 {
	least := math.Inf(1)
	for _, o := range s.offers {
		least = math.Min(least, o.LeftMM)
	}
	return least
}

// steps is how many ties less metal is left than the most.
func steps(left, most, tie float64) int {
	if math.IsInf(left, 1) || tie <= 0 {
		return 0
	}
	return int(math.Floor((most-left)/tie + slack))
}
