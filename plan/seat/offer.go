package seat

import (
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
	Asks    string   // what has to be measured before anything is cut: "seat", "outside of the old bush"; "" nothing
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
			if m != Keep {
				o.Mends = append(o.Mends, in.mended(m, s, sites, o, series))
			}
		}
		out = append(out, o)
	}
	return out, said
}

// mended is one mend of a hole; o holds the lesser ones.
func (in *Input) mended(m Mend, s Site, sites []Site, o Offered, series []Bush) Mended {
	out, h := Mended{Mend: m}, o.Hole
	list := in.allowed(s.Name())
	search := func(list []Bush, why bool) []Answer {
		return in.judge(h).search([]Mend{m}, list, why)
	}
	switch m {
	case Renew:
		out.WhyNot, out.Owner = noRenewal(s, h)
	case Rebush:
		out.WhyNot, out.Owner = underCap(h)
	case MadeToFit:
		h, out.WhyNot, out.Owner = in.asItIs(s, sites, h)
		if list = in.turned(list); out.WhyNot == "" && len(list) == 0 {
			out.WhyNot, out.Owner = "the job chooses a bush that is not turned for its hole", "another bearing was asked for"
		}
	default:
		out.WhyNot, out.Owner = in.shutWithin(m, s, h, o.Of(Rebush))
		search = func(list []Bush, why bool) []Answer { return in.within(m, s, sites, h, list, why) }
		if m == BushInABush && s.Old.Bore.Bushed {
			search = func(list []Bush, why bool) []Answer { return in.stays(s, sites, h, list, why) }
		}
	}
	out.Asks = asked(m, s, h)
	if out.WhyNot != "" {
		return out
	}
	out.Answers = search(list, !in.Brief)
	if in.chosenCode(s.Name()) == "" && (m == Renew || m == Rebush || m != MadeToFit && !feasible(out.Answers)) {
		out.Buy = goes(search(series, false))
	}
	return out
}

// asked is what has to be measured before a hole is mended so: of an old bush that
// is still in its seat, which only shows when it is out, or its outside where it
// stays. Where both are not known a mend that takes it out is planned by the worn
// hole, and its seat may want a larger one.
func asked(m Mend, s Site, h Hole) string {
	b := s.Old.Bore
	switch {
	case h.Cap > 0 || !b.Bushed || b.BushedOD.Given() && m != Renew:
		return ""
	case m == BushInABush:
		return "outside of the old bush"
	}
	return "seat"
}

// underCap says why no hole is cut that a cap holds a bearing in.
func underCap(h Hole) (whyNot, owner say.Text) {
	if h.Cap > 0 {
		return "its bearing lies under a cap, and no hole is cut", "the bearing lies under a cap"
	}
	return "", ""
}

// noRenewal says why nothing can be renewed, to whoever plans and to an owner.
func noRenewal(s Site, h Hole) (whyNot, owner say.Text) {
	switch old := h.Old; {
	case h.Cap > 0:
	case s.Old.Bore.Bushed:
		return "the old bush is still in: whether its seat is sound shows when it is out",
			"nobody has seen the seat of the old bearing"
	case old == nil:
		return "there is no seat of an old bush, and no cap", "there is no bearing to renew"
	case !old.Sound:
		return "the old seat is not sound", "the seat of the old bearing is spoilt"
	case old.Off > inPlace:
		return say.F("the old seat stands %v off where the bore belongs: a bush in its middle would keep that",
			say.MM(old.Off, 3)), "the old bearing stood in the wrong place"
	}
	return "", ""
}
