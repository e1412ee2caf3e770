package plan

import (
	"slices"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
)

// placing is a truck whose new centres are settled for some holes that keep
// their place, with what could be done at each hole there.
type placing struct {
	keeps  []string // bores whose place is given, sorted
	book   *ledger.Ledger
	target target.Settled
	in     seat.Input
	offers []seat.Offered
	said   finding.List
}

// placings are the sets of holes that may keep their place, one for each
// choice: the seats of an axle that are sound are kept or given up together. A
// bearing under a cap keeps its place always; what the job asks for of a hole is
// done.
func (g *ground) placings() [][]string {
	sets := [][]string{nil}
	for i := range g.j.Shafts {
		var always, may []string
		for _, h := range g.survey.Holes {
			if h.Shaft.Name != g.j.Shafts[i].Name || h.Shaft.Leave || !target.Sits(h) {
				continue
			}
			switch m := fixedMend(g.j, h.Name()); {
			case h.Bore.Cap, h.Bore.Now != nil, m == seat.Renew, m == seat.Keep:
				always = append(always, h.Name())
			case m == "":
				may = append(may, h.Name())
			}
		}
		var grown [][]string
		for _, s := range sets {
			with := append(slices.Clone(s), always...)
			grown = append(grown, append(slices.Clone(with), may...))
			if len(may) > 0 {
				grown = append(grown, with)
			}
		}
		sets = grown
	}
	return sets
}

// place settles where everything goes with some holes that keep their place, and
// offers what could be done at each hole there. from hands on the placing of
// another plan of the same job that differs in what the shop can buy or make
// alone.
func (g *ground) place(keeps []string, from *placing) *placing {
	s := &placing{keeps: slices.Sorted(slices.Values(keeps))}
	if from != nil {
		s.book, s.target = from.book, from.target
	} else {
		s.book = g.book.Copy()
		axles := g.meshes.Axles.Keeping(func(h survey.Hole) bool { return slices.Contains(keeps, h.Name()) })
		s.target = target.Settle(g.j, g.w.rules, s.book, g.shop, axles, g.meshes.Drives)
	}
	where, unread := sites(g.w, g.j, g.survey.Holes, s.target)
	for i := range where {
		if fixedMend(g.j, where[i].Name()) == seat.Keep {
			where[i].Touch = false
		}
	}
	var said finding.List
	s.in, s.said = seat.FromJob(g.j, g.w.forSeat(), g.c)
	s.offers, said = seat.Offer(s.in, where)
	s.said = join(unread, s.said, said)
	return s
}

func (s *placing) key() string { return strings.Join(s.keeps, "\x00") }

// keepsPlace says whether a bore's place is given.
func (s *placing) keepsPlace(bore string) bool {
	_, ok := slices.BinarySearch(s.keeps, bore)
	return ok
}
