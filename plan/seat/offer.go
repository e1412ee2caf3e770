package seat

import (
	"slices"

	"rebush/fits/finding"
	"rebush/fits/say"
)

// Offered is one bore to be dealt with and what could be done at it.
type Offered struct {
	Site
	Hole  Hole     // about its new centre
	Mends []Mended // every mend but Keep, in rising order
}

// Mended is one mend of a hole with its answers.
type Mended struct {
	Mend    Mend
	WhyNot  say.Text // "" where the hole is open to it
	Owner   say.Text // the same for an owner, without figures
	Answers []Answer // feasible, best first; then those that fell, the nearest miss first
	Buy     []Answer // feasible bushes of the series that are sold, best first; none where the job chooses its bush
	Asks    string   // what has to be measured before anything is cut, "seat"; "" nothing
}

// OK says that the mend has a feasible answer, of the list or to buy.
func (m Mended) OK() bool { return feasible(m.Answers) || len(m.Buy) > 0 }

// Of is what an offer holds of one mend; the zero Mended where it is not
// offered.
func (o Offered) Of(m Mend) Mended {
	for _, x := range o.Mends {
		if x.Mend == m {
			return x
		}
	}
	return Mended{Mend: m}
}

// Nearest is the answer of a mend that missed by least, nil where none fell.
func (m Mended) Nearest() *Answer {
	for i := range m.Answers {
		if !m.Answers[i].Feasible {
			return &m.Answers[i]
		}
	}
	return nil
}

// Offer searches every mend of every bore that is to be dealt with. A mend that
// a hole is not open to says why; one that it is open to has its answers, of the
// job's list or of what the job chooses of it, and beside them the bushes of
// the series that are sold which would go. The new centres are the caller's:
// a sound seat is renewed only where its new centre is that of the seat.
func Offer(in Input, sites []Site) ([]Offered, finding.List) {
	var out []Offered
	var said finding.List
	series := in.series(&said)
	for _, s := range sites {
		if !s.Touch {
			continue
		}
		o := Offered{Site: s, Hole: in.hole(s, sites)}
		for _, m := range MendsRising() {
			if mended, open := in.mended(m, s, o.Hole, series); open {
				o.Mends = append(o.Mends, mended)
			}
		}
		out = append(out, o)
	}
	return out, said
}

// mended is one mend of a hole; false where it is none of those that are
// searched.
func (in *Input) mended(m Mend, s Site, h Hole, series []Bush) (Mended, bool) {
	out := Mended{Mend: m}
	if m != Renew && m != Rebush {
		return out, false
	}
	if out.WhyNot, out.Owner = shut(m, h); out.WhyNot != "" {
		return out, true
	}
	if s.Old.Bore.Bushed {
		out.Asks = "seat"
	}
	out.Answers = Search(h, []Mend{m}, in.allowed(s.Name()), in.Shop, in.Rules)
	if in.chosenCode(s.Name()) == "" {
		out.Buy = in.toBuy(h, []Mend{m}, series)
	}
	return out, true
}

// shut says why a hole is not open to a mend, to whoever plans and to an owner.
func shut(m Mend, h Hole) (whyNot, owner say.Text) {
	if slices.Contains(h.Mends(), m) {
		return "", ""
	}
	if m == Renew {
		return "there is no seat of an old bush, and no cap", "there is no bearing to renew"
	}
	return "its bearing lies under a cap, and no hole is cut", "the bearing lies under a cap"
}
