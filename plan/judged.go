package plan

import (
	"math"
	"slices"

	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/route"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/verdict"
)

// What is printed of the verdict.
type (
	Verdict  = verdict.Row
	RunnerUp = verdict.RunnerUp
	BoreWay  = verdict.BoreWay
	Option   = verdict.Option
)

// bored is one hole as survey, target and seat left it.
type bored struct {
	survey.Hole
	At      [2]float64 // its new centre
	Placed  bool       // it has one
	UPlace  float64    // standard uncertainty of where it will be cut, mm
	Worn    bool       // it is to be dealt with
	Wanted  seat.Hole  // as the search saw it
	Answers []seat.Answer
	Chosen  *seat.Answer
}

// judged sets the ways that a job can go side by side and picks one. No verdict
// comes where the figures are none; the finding says which.
func judged(book *ledger.Ledger, j *job.Job, f verdict.Facts) (*Verdict, finding.List) {
	c := verdict.FromJob(j, f)
	r, err := verdict.Decide(c)
	if err != nil {
		var said finding.List
		said.Raise(finding.Caution, verdict.RuleVerdict, finding.Place{}, say.F("%v", err), "")
		return nil, said
	}
	const otherwise = "built-in small shop:1"
	c.Explain(book, place(j.Shop.At("hours"), otherwise), place(j.Shop.At("rates"), otherwise))
	return r.Row(c.Currency), r.Findings
}

// judgedHole is what the verdict needs of one hole.
func judgedHole(b bored, s seat.Rules, sleeveWallMM float64) verdict.Hole {
	old := b.Bore.Seat
	h := verdict.Hole{Name: b.Name(), Shaft: b.Shaft.Name, Fixed: b.Shaft.Leave,
		BushOut: old != nil, SoundSeat: old != nil && old.Sound, Bushed: b.Bore.Bushed || b.Bore.Repaired, Capped: b.Bore.Cap,
		Known: b.Known, Placed: b.Placed, Worn: b.Worn, RadiusMM: b.Hole.Worn.R}
	if len(b.Answers) > 0 {
		fell := seat.Nearest(b.Answers)[0].Fail
		h.Nearest = &verdict.Reason{Text: fell.Text(), Owner: fell.Question.Owner()}
	}
	seatR := 0.0
	if b.Known && b.Placed {
		seatR = b.Stands().SeatRadius(b.At) + seat.Allow(b.Wanted, s)
	}
	if a := b.Chosen; a != nil {
		seatR = a.SeatHigh / 2
		h.Seat = &verdict.Seat{Renews: a.Mend == seat.Renew, Chance: a.Chance}
		if a.Way.Kind != seat.OldSeatWay {
			h.Seat.MetalMM = math.Max(0, seatR-h.RadiusMM)
		}
		if a.Bush.Priced {
			price := a.Bush.Price
			h.Seat.Price = &price
		}
	}
	if b.Known && b.Placed {
		h.MustPassMM, h.BoreMM = b.Wanted.MustPass, seat.BoreLimits(b.Wanted, s)
		plug := b.Stands().PlugCentre(b.At, seat.Allow(b.Wanted, s), 2*seatR, sleeveWallMM)
		h.SleeveMM, h.PlugMM = seatR+sleeveWallMM, math.Max(plug.SeatR, plug.LeastOD/2)
		h.Room = roomOf(b.Wanted)
	}
	return h
}

// roomOf is what stands round the new centre of a hole.
func roomOf(h seat.Hole) []verdict.Room {
	out := []verdict.Room{{Name: "the edge", MM: h.Edge}}
	if h.BossR > 0 {
		out = append(out, verdict.Room{Name: "the rim of the boss", MM: h.BossR - h.BossE})
	}
	for _, n := range h.Near {
		out = append(out, verdict.Room{Name: n.Name, MM: n.At - n.R})
	}
	return out
}

// rebuilding are the kinds of operation that belong to strip and rebuild, whose
// hours the shop gives.
var rebuilding = map[route.Kind]bool{route.KindLineUp: true, route.KindAssemble: true, route.KindWheels: true}

// timed gives each hole the minutes of its operations, with its share of those
// that serve several (washing, trying a bush in scrap, trying the mesh), and
// the clampings that it is worked in.
func timed(holes []verdict.Hole, work []Operation, setups []Setup) {
	seated, shared := 0.0, 0.0
	for _, h := range holes {
		if h.Seat != nil {
			seated++
		}
	}
	for _, o := range work {
		if o.Bore == "" && o.Minutes != nil && !rebuilding[o.Kind] {
			shared += *o.Minutes
		}
	}
	for i := range holes {
		h := &holes[i]
		if h.Seat != nil {
			h.Minutes = shared / seated
		}
		for _, o := range work {
			if o.Bore == h.Name && o.Minutes != nil {
				h.Minutes += *o.Minutes
			}
		}
		for _, s := range setups {
			if s.Clamping && slices.Contains(s.Bores, h.Name) {
				h.Setups = append(h.Setups, s.Name)
			}
		}
	}
}
