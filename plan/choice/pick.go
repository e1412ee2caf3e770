package choice

import (
	"slices"
	"strings"
)

const (
	slack    = 1e-9
	perMend  = 8  // offers of one mend that are carried on from a hole
	perAxle  = 24 // sets of offers that are carried on from an axle
	perTruck = 48 // and from each truck as far as it is put together
	liked    = 8  // of each of these, such as would be preferred though they cost more
)

// Pick returns the offer of each hole, by its place among the offers of that
// hole, with which the truck costs least; at least one hole has a mend as grave
// as has and none a graver one, and no bush is used more often than it is in
// stock (a bush that is not named there is no matter). ok is false where there
// is no such set.
//
// Sets with fewer poor seats come first. Of those whose chance lies within
// Rules.Tie of the cheapest's, or above it, the one with the fewest turned parts
// is taken, then with the fewest bushes that compound alone holds, then with the
// fewest tools, then with the most metal left, then the cheapest; last by key,
// so that no order of lists decides.
//
// Source: METHODS.md 2.
func Pick(holes []Hole, stock map[string]int, has int, r Rules) (pick []int, ok bool) {
	p := picker{r: r, has: has, stock: stock, tools: map[string]int{}}
	sets := []set{{tally: none()}}
	for _, axle := range axles(holes) {
		mine := []set{{tally: none()}}
		for _, i := range axle {
			mine = p.join(mine, p.best(i, holes[i]), perAxle)
		}
		sets = p.join(sets, mine, perTruck)
	}
	sets = slices.DeleteFunc(sets, func(s set) bool { return s.gravest != has })
	if len(sets) == 0 {
		return nil, false
	}
	best := p.preferred(sets)
	pick = make([]int, len(holes))
	for k, i := range best.at {
		pick[i] = best.index[k]
	}
	return pick, true
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
