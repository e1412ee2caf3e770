package inspect

import (
	"math"

	"rebush/fits/say"
)

// measure is what a size asks for that its instrument cannot tell: the same size
// by another instrument of the shop that can, or how good one has to be. Of a
// seat that is cut here the bush itself can be tried in scrap.
func (h *Hole) measure(what What, m Made) []Next {
	return append(h.another(what, m.UMM, func(u float64) Result {
		other := m
		if other.UMM = u; what == Bore {
			other.UMM = math.Hypot(u, h.UJournalMM)
		}
		d, _ := Decide(other) // m itself has just been decided
		return d.Result
	}), h.inScrap(what)...)
}

// another names the roughest instrument of the shop, finer than one of
// uncertainty u, by which the same reading tells; without one, how good it has
// to be.
func (h *Hole) another(what What, u float64, by func(u float64) Result) []Next {
	words := map[Result]say.Text{Accept: "is accepted", Reject: "is rejected"}
	var best Instrument
	for _, in := range h.Instruments(what) {
		if in.UMM < u && by(in.UMM) != CannotTell && (best.Name == "" || in.UMM > best.UMM) {
			best = in
		}
	}
	if best.Name != "" {
		return []Next{{Do: say.F("measure again with the %s: the same reading by it %v", best.Name, words[by(best.UMM)])}}
	}
	yes, no := 0.0, u // the largest uncertainty that tells
	for no-yes > 1e-6 {
		if mid := (yes + no) / 2; by(mid) != CannotTell {
			yes = mid
		} else {
			no = mid
		}
	}
	switch {
	case what == Bore && yes < h.UJournalMM/2:
		return []Next{{Do: "the doubt is that of the journal: try its own axle in it, oiled"}}
	case by(0) == CannotTell:
		return nil
	case 2*yes < 5e-4:
		return []Next{{Do: "it lies so near its limit that no gauge of a bench tells: decide by what it runs or holds like"}}
	}
	return []Next{{Do: say.F("measure again with an instrument that is good to about %v: the same reading by it %v",
		sureTo(yes), words[by(yes)])}}
}

// inScrap is the bush itself as a gauge.
func (h *Hole) inScrap(what What) []Next {
	if what != Seat || h.Uncut {
		return nil
	}
	return []Next{{Do: "try the bush itself in a hole made in scrap by the same tool", Bush: h.Bush}}
}

// better is what a place asks for that cannot be told: the same place by an
// instrument that tells.
func (h *Hole) better(i int, places []Site, all []Outcome, s Shop) []Next {
	checks := make([]Check, len(all))
	for k := range all {
		checks[k] = all[k].Check
	}
	out := h.another(Place, places[i].UMM, func(u float64) Result {
		sites := append([]Site(nil), places...)
		for k := range sites {
			if sites[k].Gauged {
				sites[k].UMM = math.Min(sites[k].UMM, u)
			}
		}
		finer, err := together(sites, checks, s.GuardK)
		if err != nil {
			return CannotTell
		}
		return worst(i, finer)
	})
	for k := range all {
		if all[k].concerns(i) && all[k].Try != "" && len(out) == 0 {
			out = append(out, Next{Do: all[k].Try})
		}
	}
	if other := ungauged(i, places, all); other != "" && len(out) == 0 {
		out = append(out, Next{Do: say.F("gauge the place of %s too: it counts where it belongs, with the doubt of its placing", other)})
	}
	return out
}

// ungauged is a place that nobody gauged and that what is in doubt of another
// hangs on, "" none.
func ungauged(i int, places []Site, all []Outcome) string {
	for k := range all {
		if !all[k].concerns(i) {
			continue
		}
		for _, h := range all[k].Holes {
			if !places[h].Gauged && all[k].own[h] > all[k].own[i] {
				return places[h].Name
			}
		}
	}
	return ""
}

// sureTo is what is said of an instrument of standard uncertainty u: twice it,
// rounded down to a figure that can be read off a box.
func sureTo(u float64) say.Figure {
	if um := math.Floor(2000*u + 1e-9); um >= 1 {
		return say.MM(um/1000, 3).About()
	}
	return say.MM(math.Max(1, math.Floor(20000*u+1e-9))/10000, 4).About()
}
