package seat

import (
	"cmp"
	"slices"
)

// Seated is one bore to be dealt with, and every candidate for it.
type Seated struct {
	Site
	Hole    Hole
	Answers []Answer // best first, then those that fell
	Chosen  *Answer  // of Answers, nil where none is feasible
}

// mostToBuy is how many bushes of the series are shown for one bore.
const mostToBuy = 12

// feasible says whether any of the answers is: the search puts those first.
func feasible(list []Answer) bool { return len(list) > 0 && list[0].Feasible }

// allowed are the bushes that may be considered for a bore: those that the job
// chooses, else all.
func (in *Input) allowed(bore string) []Bush {
	code := in.chosenCode(bore)
	if code == "" {
		return in.Stock
	}
	var out []Bush
	for _, b := range in.Stock {
		if b.Code == code {
			out = append(out, b)
		}
	}
	return out
}

// goes are the first of a search of the series that can be seated. Those that
// cannot are not told of.
func goes(list []Answer) []Answer {
	n := 0
	for n < len(list) && n < mostToBuy && list[n].Feasible {
		n++
	}
	return list[:n:n]
}

// Nearest puts those that fell before those that can be seated, the nearest
// miss of all mends first (METHODS.md 1); of misses alike the one that stood first, of
// the lesser mend.
func Nearest(list []Answer) []Answer {
	var fell, good []Answer
	for _, a := range list {
		if a.Feasible {
			good = append(good, a)
		} else {
			fell = append(fell, a)
		}
	}
	slices.SortStableFunc(fell, func(a, b Answer) int {
		return cmp.Or(cmp.Compare(len(a.Fails), len(b.Fails)), by(a.gaps(), b.gaps()))
	})
	return append(fell, good...)
}
