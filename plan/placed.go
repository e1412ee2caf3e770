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

// place settles where everything goes with some holes that keep their place,
// unless that is settled, and offers what could be done at each hole there.
func (g *ground) place(s *placing) {
	if s.book == nil {
		s.book = g.book.Copy()
		axles := g.meshes.Axles.Keeping(func(h survey.Hole) bool { return s.keepsPlace(h.Name()) })
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
}

// placed are the placings of a truck. from are those of another plan of the same
// job that differs in what the shop can buy or make alone: each is made again only
// as far as it has to be.
func (g *ground) placed(from []*placing) []*placing {
	var out []*placing
	for _, keeps := range g.placings() {
		s := &placing{keeps: slices.Sorted(slices.Values(keeps))}
		if k := slices.IndexFunc(from, func(f *placing) bool { return f.key() == s.key() }); k >= 0 {
			s.book, s.target = from[k].book, from[k].target
		}
		g.place(s)
		out = append(out, s)
	}
	return out
}

func (s *placing) key() string { return strings.Join(s.keeps, "\x00") }

// keepsPlace says whether a bore's place is given.
func (s *placing) keepsPlace(bore string) bool {
	_, ok := slices.BinarySearch(s.keeps, bore)
	return ok
}
