package plan

import (
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/inspect"
	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
)

// What is printed of sizes as made.
type (
	Inspection = inspect.Row
	Next       = inspect.Next
)

// Inspected are the sizes as made, set against the plan.
type Inspected struct {
	Rows     []Inspection
	Findings finding.List
}

// inspected sets every size as made against the plan without them: seats and
// bores each by itself, places all together.
func inspected(w *books, j *job.Job, book *ledger.Ledger, holes []survey.Hole, s target.Settled,
	seats Seated) Inspected {
	out := Inspected{Rows: []Inspection{}}
	bench := inspect.ShopOf(w.rules)
	of := map[string]bored{}
	for _, b := range boredOf(holes, s, seats) {
		of[b.Name()] = b
	}
	say1 := func(bore string, err error) {
		out.Findings.Raise(finding.Caution, inspect.RuleMade, j.Place(bore), say.F("%v", err), "")
	}
	how := func(name string) inspect.Hole { return toInspect(w, book, of[name], seats.In) }
	book.Cite("rules/guard_k")
	placed := map[string]Inspection{}
	x := newTogether(w, j, of, s, seats)
	rows, err := inspect.Places(x.sites, x.checks(), bench, how)
	if err != nil {
		say1("", err)
	}
	for _, r := range rows {
		placed[r.Bore] = r
	}
	for _, made := range j.Made {
		b := of[made.Bore]
		if b.Chosen == nil {
			out.Findings.Raise(finding.Caution, inspect.RuleMade, j.PlaceAt(made.Bore, "made/"+made.Bore),
				"sizes as made are given for a bore that the plan does not bush", "take them out, or see what stops the plan")
			continue
		}
		for _, what := range inspect.Whats(made) {
			g, err := gaugeOf(w.instr, made.With, what)
			if err != nil {
				out.Findings.Raise(finding.Caution, survey.RuleInstrument, j.Place(b.Name()), say.F("%v", err),
					"name it under instruments in the shop file with its u")
			}
			row, ok := placed[b.Name()]
			if what != inspect.Place {
				if row, err = inspect.Of(how(b.Name()), made, what, g, bench); err != nil {
					say1(b.Name(), err)
				}
				ok = err == nil
			}
			if ok {
				out.Rows = append(out.Rows, row)
			}
		}
	}
	return out
}

// toInspect is what can be set against sizes as made at a hole that is bushed.
func toInspect(w *books, book *ledger.Ledger, b bored, in seat.Input) inspect.Hole {
	a := b.Chosen
	h := inspect.Hole{Name: b.Name(), OffMM: 2 * b.UPlace, UJournalMM: b.Wanted.JournalU, Bush: a.Bush.Code,
		Uncut: a.Mend == seat.Renew,
		Seat:  inspect.Limits{Works: seat.Works(b.Wanted, a, in.Shop, in.Rules)},
		Bore:  inspect.Limits{Works: a.Bore, Tool: &a.Expected},
		Instruments: func(what inspect.What) []inspect.Instrument {
			var out []inspect.Instrument
			for _, i := range in.Job.Shop.Instruments {
				if w.instr.CanRead(i.Name, quantity(what)) {
					out = append(out, inspect.Instrument{Name: i.Name, UMM: i.U.Float()})
				}
			}
			return out
		}}
	if a.Way.Kind == seat.CapWay {
		book.Cite("rules/cap_slide_um")
	}
	if !h.Uncut {
		h.Seat.Tool = &[2]float64{a.SeatLow, a.SeatHigh}
	}
	return h
}
