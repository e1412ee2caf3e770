package seat

import (
	"math"

	"rebush/fits/say"
)

// turnedOf is what a bush is turned of that no list names.
const turnedOf = "bearing bronze C93200"

// turned are the bushes of a list that are turned; where it has none, one of
// bearing bronze.
func (in *Input) turned(list []Bush) []Bush {
	var out []Bush
	for _, b := range list {
		if b.Turned {
			out = append(out, b)
		}
	}
	if len(out) > 0 || len(list) < len(in.Stock) { // or the job has chosen another
		return out
	}
	metal, err := metalOf(in.Metals, turnedOf)
	if err != nil {
		return nil
	}
	return []Bush{{Code: "turned to fit", Turned: true, OnHand: -1, Metal: metal, Index: -1}}
}

// asItIs is a hole that a bush is turned for and that is not cut, as the search
// sees it: about its own middle, with the way from there to where the bore
// belongs. It is the sound seat of an old bush that stands off place, or a hole
// that is round and leaves a bush a wall. Else it says why there is none.
func (in *Input) asItIs(s Site, sites []Site, h Hole) (out Hole, whyNot, owner say.Text) {
	if !in.Shop.Lathe {
		return h, "its bush has to be turned, and there is no lathe", "the bearing would have to be turned"
	}
	low, high, at, name, whyNot := in.round(s, h)
	if whyNot != "" {
		return h, whyNot, "the hole does not take a bearing as it is"
	}
	here := s
	here.At, here.UPlace = at, 0
	out = in.hole(here, sites)
	out.Offset = [2]float64{micro(s.At[0] - at[0]), micro(s.At[1] - at[1])}
	out.AsIs = Way{Kind: AsItIs, Name: name, Size: (low + high) / 2, Low: low, High: high, Index: -1}
	return out, "", ""
}

// round is the hole that is there, where it is round and can be used as it is:
// its limits and its middle, mm.
func (in *Input) round(s Site, h Hole) (low, high float64, at [2]float64, name string, whyNot say.Text) {
	w, b := s.Old.Stands(), s.Old.Bore
	switch old := h.Old; {
	case h.Cap > 0:
		whyNot = "its bearing lies under a cap"
	case old != nil && !old.Sound:
		whyNot = "the old seat is not sound"
	case old != nil && old.Off <= inPlace:
		whyNot = "the old seat is sound and in its place: a bush is renewed in it"
	case old != nil:
		return old.Low, old.High, thereAt(s.Old), old.name(), ""
	case b.Bushed:
		whyNot = "the old bush is still in"
	case !w.Round:
		whyNot = "the hole is worn oval"
	case 2*w.R < BoreLimits(h, in.Rules)[0]+2*in.Rules.LeastWall:
		whyNot = say.F("a hole of %v leaves a bush on a journal of %v no wall", say.MM(2*w.R, 2), say.MM(h.Journal, 2))
	default:
		// The diameter with twice its doubt; what is left of wear makes it larger.
		return 2 * (w.R - w.RU), 2*(w.R+w.RU) + math.Max(0, w.W), w.Found(), "the hole as it is", ""
	}
	return 0, 0, at, "", whyNot
}
