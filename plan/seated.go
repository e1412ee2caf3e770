package plan

import (
	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
)

// Seated is how the bores of a job are bushed.
type Seated struct {
	In       seat.Input
	Bores    []seat.Seated // those to be dealt with, in job order
	Rows     []Seat        // likewise, as printed
	SidePlay map[string]*MMRange
	Findings finding.List
}

// seated explains the seats that were picked, and says what is to be said of
// them.
func seated(p picked, book *ledger.Ledger) Seated {
	out := Seated{In: p.in, Bores: p.bores}
	for _, x := range out.Bores {
		out.Rows = append(out.Rows, seat.Explain(book, out.In, x))
		out.Findings = append(out.Findings, seat.Findings(out.In, x)...)
	}
	var said finding.List
	out.SidePlay, said = seat.SidePlays(book, out.In, out.Bores)
	out.Findings = append(out.Findings, said...)
	return out
}

// forSeat are the tables that the seat reads, and how well a bush is measured
// in this shop.
func (w *books) forSeat() seat.Tables {
	u := func(q survey.Quantity) dim.Length {
		r, err := w.instr.Named("", q)
		if err != nil {
			r, _ = w.instr.Named("micrometer", q)
		}
		return dim.OfFloat(r.U)
	}
	return seat.Tables{Library: w.lib, Table: w.rules, Metals: w.materials, Limits: w.limits, UBore: u(survey.Width),
		UOutside: u("outside"), Habits: w.habits, Memo: w.seats}
}

// sites are the holes as the seat wants them: with their new centres, and with
// the size of an old seat where there is one. A name that no shop and no table
// knows is told, and the default instrument taken.
func sites(w *books, j *job.Job, holes []survey.Hole, t target.Settled) (out []seat.Site, said finding.List) {
	for _, b := range boredOf(holes, t, Seated{}) {
		s := seat.Site{Old: b.Hole, At: b.At, UPlace: b.UPlace, Touch: b.Worn && b.Placed}
		if old := b.Bore.Seat; s.Touch && b.Bore.Now == nil && old != nil {
			r, err := w.instr.Of(b.Bore, "seat", survey.Width)
			if err != nil {
				said.Raise(finding.Caution, survey.RuleInstrument, j.Place(b.Name()), say.F("%v", err),
					"name it under instruments in the shop file with its u")
				r = w.instr.Default(survey.Width)
			}
			s.Seat, s.USeat = old.Diameter.Float()-r.Bias, r.U
		}
		out = append(out, s)
	}
	return out, said
}
