package plan

import (
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
)

// bored is one hole as survey, target and seat left it.
type bored struct {
	survey.Hole
	At      target.Point // its new centre
	Placed  bool         // it has one
	UPlace  float64      // standard uncertainty of where it will be cut, mm
	Worn    bool         // it is to be dealt with
	Wanted  seat.Hole    // as the search saw it
	Answers []seat.Answer
	Chosen  *seat.Answer
}

// boredOf joins what the steps know of each hole of a job, in its order.
func boredOf(holes []survey.Hole, s target.Settled, seats Seated) []bored {
	placed, sat := map[string]target.Hole{}, map[string]seat.Seated{}
	for _, a := range s.Axles {
		for _, h := range a.Holes {
			placed[h.Name()] = h
		}
	}
	for _, x := range seats.Bores {
		sat[x.Name()] = x
	}
	out := make([]bored, len(holes))
	for i, h := range holes {
		b := bored{Hole: h}
		if p, ok := placed[h.Name()]; ok {
			b.UPlace, b.Worn, b.Placed = p.UPlace, p.Touch, s.OK
			if s.OK {
				b.At = p.Target
			}
		}
		if x, ok := sat[h.Name()]; ok {
			b.Wanted, b.Answers, b.Chosen = x.Hole, x.Answers, x.Chosen
		}
		out[i] = b
	}
	return out
}

// seatPlace is where the seat of a hole belongs: where its bore does, but of a
// bush whose bore stands off its middle.
func seatPlace(b bored) [2]float64 {
	if b.Chosen == nil {
		return b.At
	}
	return [2]float64{b.At[0] - b.Chosen.Offset[0], b.At[1] - b.Chosen.Offset[1]}
}

// eccentricIn says whether the bore of a bush stands off its middle.
func eccentricIn(b bored) bool { return b.Chosen != nil && b.Chosen.Offset != [2]float64{} }
