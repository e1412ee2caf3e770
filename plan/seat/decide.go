package seat

import (
	"cmp"
	"slices"

	"rebush/fits/finding"
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

// Decide searches a bush for every bore that is to be dealt with: of the job's
// list or what it chooses of it, and where nothing of the list can be seated
// and nothing is chosen, of what can be bought.
func Decide(in Input, sites []Site) ([]Seated, finding.List) {
	var out []Seated
	var said finding.List
	var series []Bush
	for _, s := range sites {
		if !s.Touch {
			continue
		}
		h := in.hole(s, sites)
		x := Seated{Site: s, Hole: h, Answers: Search(h, h.Mends(), in.allowed(s.Name()), in.Shop, in.Rules)}
		if !feasible(x.Answers) && in.chosenCode(s.Name()) == "" {
			if series == nil {
				series = in.series(&said)
			}
			x.Answers = append(in.toBuy(h, h.Mends(), series), x.Answers...)
		}
		if feasible(x.Answers) {
			x.Chosen = &x.Answers[0]
		}
		out = append(out, x)
	}
	return out, said
}

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

// toBuy searches the series.
func (in *Input) toBuy(h Hole, mends []Mend, series []Bush) []Answer {
	return goes(newJudge(h, in.Shop, in.Rules).search(mends, series, false))
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
// miss of all mends first; of misses alike the one of the lesser mend.
func Nearest(list []Answer) []Answer {
	n := 0
	for n < len(list) && list[n].Feasible {
		n++
	}
	fell := slices.Clone(list[n:])
	slices.SortStableFunc(fell, func(a, b Answer) int {
		return cmp.Or(cmp.Compare(len(a.Fails), len(b.Fails)), by(a.gaps(), b.gaps()))
	})
	return append(fell, list[:n]...)
}
