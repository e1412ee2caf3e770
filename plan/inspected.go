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

// inspected sets every size as made against the plan.
func inspected(w *books, j *job.Job, book *ledger.Ledger, holes []survey.Hole, s target.Settled,
	seats Seated) Inspected {
	out := Inspected{Rows: []Inspection{}}
	bench := inspect.ShopOf(seats.In.Shop.Lathe, w.rules)
	of := map[string]bored{}
	for _, b := range boredOf(holes, s, seats) {
		of[b.Name()] = b
	}
	for _, made := range j.Made {
		b := of[made.Bore]
		if b.Chosen == nil {
			out.Findings.Raise(finding.Caution, inspect.RuleMade, j.PlaceAt(made.Bore, "made/"+made.Bore),
				"sizes as made are given for a bore that the plan does not bush", "take them out, or see what stops the plan")
			continue
		}
		h := toInspect(book, b, s, seats.In)
		for _, what := range inspect.Whats(made) {
			g, err := gaugeOf(w.instr, made.With, what)
			if err != nil {
				out.Findings.Raise(finding.Caution, survey.RuleInstrument, j.Place(h.Name), say.F("%v", err),
					"name it under instruments in the shop file with its u")
			}
			book.Cite("rules/guard_k")
			row, err := inspect.Of(h, made, what, g, bench)
			if err != nil {
				out.Findings.Raise(finding.Caution, inspect.RuleMade, j.Place(h.Name), say.F("%v", err), "")
				continue
			}
			out.Rows = append(out.Rows, row)
		}
	}
	return out
}

// gaugeOf is the instrument that gauged a thing. A place is read by what can
// read one, whatever gauged the rest. An error says what is wrong with the one
// that was named; the usual one stands in for it.
func gaugeOf(instr *survey.Instruments, with string, what inspect.What) (inspect.Gauge, error) {
	kind := survey.Width
	if what == inspect.Place {
		kind = survey.Middle
	}
	r, err := instr.Named(with, kind)
	if err != nil || what == inspect.Place && instr.Known(with) && !instr.CanRead(with, kind) {
		r = instr.Default(kind)
	}
	return inspect.Gauge{BiasMM: r.Bias, UMM: r.U}, err
}

// toInspect is what can be set against sizes as made at a hole that is bushed.
func toInspect(book *ledger.Ledger, b bored, s target.Settled, in seat.Input) inspect.Hole {
	a := b.Chosen
	h := inspect.Hole{Name: b.Name(), SeatMM: gauged(book, a, in.Rules), BoreMM: a.Bore, At: b.At, OffMM: 2 * b.UPlace,
		JournalMM: b.Wanted.Journal, Bush: a.Bush.Code, BushMM: a.Bush.ODHigh, Chance: a.Chance,
		Uncut: a.Mend == seat.Renew, Capped: a.HeldBy == seat.ByCap,
		Here: func(least, most float64) []inspect.Offer {
			there, as := b.Wanted, in.Shop
			there.Old, as.Ways = &seat.OldSeat{Low: least, High: most, Sound: true}, nil
			return offers(seat.Search(there, []seat.Mend{seat.Renew}, in.Stock, as, in.Rules))
		},
		Larger: func(size float64) []inspect.Offer {
			anew := b.Wanted
			anew.S, anew.Old = max(anew.S, size/2), nil
			return offers(seat.Search(anew, []seat.Mend{seat.Rebush}, in.Stock, in.Shop, in.Rules))
		}}
	for i, d := range s.Drives {
		if d.Wheel != b.Shaft.Name {
			continue
		}
		g := s.Output.Gears[i]
		share := 1 - d.Share
		if b.Bore.Side == job.Right {
			share = d.Share
		}
		h.Meshes = append(h.Meshes, inspect.Mesh{Name: d.Name, Towards: g.Towards, Share: share, MidMM: (g.Near + g.Far) / 2,
			LowMM: d.Window.Lo, HighMM: d.Window.Hi, Play: d.Play})
	}
	return h
}

// offers are the bushes that could be seated, best first.
func offers(list []seat.Answer) []inspect.Offer {
	var out []inspect.Offer
	for _, x := range list {
		if x.Feasible {
			out = append(out, inspect.Offer{Bush: x.Bush.Code, Bonded: x.HeldBy == seat.ByCompound, Turned: x.Bush.Turned,
				SeatMM: x.SeatLow, Chance: x.Chance})
		}
	}
	return out
}

// gauged are the limits that the seat of an answer is gauged against.
func gauged(book *ledger.Ledger, a *seat.Answer, r seat.Rules) [2]float64 {
	if a.Way.Kind == seat.CapWay {
		book.Cite("rules/cap_slide_um")
	}
	return seat.Gauged(a, r)
}
