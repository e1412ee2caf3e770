package plan

import (
	"math"
	"slices"

	"rebush/fits/say"
	"rebush/plan/chance"
	"rebush/plan/route"
	"rebush/plan/seat"
	"rebush/plan/verdict"
)

// works are the ways that cut as the verdict weighs them. extra is what has to
// be bought beside what each of them needs.
func works(list []outcome, extra []verdict.Part) []verdict.Work {
	var out []verdict.Work
	near := nearest(list)
	for i := range list {
		w := list[i].work()
		w.Near = &list[i] == near
		w.Parts = append(w.Parts, extra...)
		out = append(out, w)
	}
	return out
}

// work is one way as the verdict weighs it.
func (o *outcome) work() verdict.Work {
	w := verdict.Work{Name: o.Name, OK: o.OK, WhyNot: o.Why, Owner: o.Owner}
	if o.placing == nil {
		return w
	}
	for _, x := range o.bores {
		if a := x.Chosen; a != nil {
			w.Mended = append(w.Mended, verdict.BoreWay{Bore: x.Name(), Way: mendNames[a.Mend]})
			w.MetalMM += takenOff(x)
			part := verdict.Part{Name: say.Words("bush of " + x.Name()), Bush: true}
			if a.Bush.Priced {
				price := a.Bush.Price
				part.Price = &price
			}
			w.Parts = append(w.Parts, part)
		}
	}
	for _, b := range o.Route.Buy {
		if b.Kind != route.BuyBush { // those stand above, priced
			w.Parts = append(w.Parts, verdict.Part{Name: b.Name, Price: b.Price})
		}
	}
	time := route.TimeOf(o.Route.Rows, o.Route.Setups)
	w.Minutes, w.Clampings = time.Minutes, time.Setups
	w.Trials = ended(o.Result)
	if w.Asks = asked(o.steps.Asks); w.Asks != "" {
		w.Unknown = "the old bearing is still in, and nobody knows the hole behind it"
	}
	return w
}

// asked says what has to be known before the way can be judged.
func asked(bores []string) say.Text {
	if len(bores) == 0 {
		return ""
	}
	return say.F("%s: the old bush is still in, and nobody knows the seat behind it", slices.Min(bores))
}

// takenOff is the metal that a seat takes off on radius.
func takenOff(x seat.Seated) float64 {
	a := x.Chosen
	off := 0.0
	if a.Way.Kind != seat.OldSeatWay && a.Way.Kind != seat.CapWay {
		off = a.SeatHigh/2 - x.Old.Worn.R
	}
	if p := a.Part; p != nil {
		off = 0
		if !p.Stays {
			off = p.SeatHigh/2 - x.Old.Worn.R
		}
	}
	return math.Max(0, off)
}

// ended are the shares of the trials by what became of them; nil where none were
// run.
func ended(r *chance.Result) *verdict.Trials {
	if r == nil {
		return nil
	}
	n := float64(max(1, r.Trials))
	return &verdict.Trials{Right: r.FirstTimeRight, Rework: float64(r.Rework) / n, Spoilt: float64(r.Spoilt) / n,
		NextBush: float64(r.NextBush) / n, Lost: r.Lost}
}
