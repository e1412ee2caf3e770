package plan

import (
	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/seat"
)

// Seated is how the bores of a job are bushed.
type Seated struct {
	In       seat.Input
	Bores    []seat.Seated // those to be dealt with, in job order
	Rows     []Seat        // likewise, as printed
	SidePlay map[string]*MMRange
	Findings finding.List
}

// seated searches a bush for every bore that is to be dealt with, and explains
// what it chose.
func seated(w *books, j *job.Job, c seat.Casting, sites []seat.Site, book *ledger.Ledger) Seated {
	var out Seated
	var said finding.List
	out.In, out.Findings = seat.FromJob(j, w.forSeat(), c)
	out.Bores, said = seat.Decide(out.In, sites)
	out.Findings = append(out.Findings, said...)
	for _, x := range out.Bores {
		out.Rows = append(out.Rows, seat.Explain(book, out.In, x))
		out.Findings = append(out.Findings, seat.Findings(out.In, x)...)
	}
	out.SidePlay, said = seat.SidePlays(book, out.In, out.Bores)
	out.Findings = append(out.Findings, said...)
	return out
}

// forSeat are the tables that the seat reads, and how well a bush is measured
// in this shop.
func (w *books) forSeat() seat.Tables {
	u := func(what string) dim.Length {
		r, err := w.instr.named("", what)
		if err != nil {
			r, _ = w.instr.named("micrometer", what)
		}
		return dim.OfFloat(r.u)
	}
	return seat.Tables{Library: w.lib, Table: w.rules, Metals: w.materials, Limits: w.limits, UBore: u("width"), UOutside: u("outside")}
}

// seatAll hands the step what the maker holds, and keeps what it returns.
func (m *maker) seatAll() {
	var sites []seat.Site
	for _, b := range m.bores {
		s := seat.Site{Old: b.surveyed(), At: b.target, UPlace: b.uPlace, Touch: b.touch && b.targeted}
		if old := b.b.Seat; s.Touch && old != nil {
			r := m.read(b, "seat", "width")
			s.Seat, s.USeat = old.Diameter.Float()-r.bias, r.u
		}
		sites = append(sites, s)
	}
	out := seated(m.books, m.j, m.casting, sites, m.book)
	m.seated = out
	m.stock, m.shop, m.seatRule = out.In.Stock, out.In.Shop, out.In.Rules
	m.p.Seats = append(m.p.Seats, out.Rows...)
	m.p.Findings = append(m.p.Findings, out.Findings...)
	for i := range out.Bores {
		x := &out.Bores[i]
		b := m.of(x.Name())
		b.hole, b.answers, b.chosen = x.Hole, x.Answers, x.Chosen
	}
	for i := range m.p.Shafts {
		m.p.Shafts[i].SidePlayMM = out.SidePlay[m.p.Shafts[i].Shaft]
	}
}

// say adds a finding about a bore, pointing at its line in the job.
func (m *maker) say(level finding.Level, rule finding.Rule, b *bore, text, fix say.Text) {
	m.p.Findings.Raise(level, rule, m.j.Place(b.name()), text, fix)
}
