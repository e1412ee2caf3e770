package plan

import (
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/plan/job"
	"rebush/plan/survey"
)

// What the survey prints.
type (
	SurveyedBore = survey.Row
	Evidence     = survey.EvidenceRow
)

// Surveyed is what is known of the truck before anything is planned.
type Surveyed struct {
	Holes    []survey.Hole // in the job's order
	Rows     []SurveyedBore
	Growth   survey.Growth
	Findings finding.List
}

// surveyed finds where every old centre was.
func surveyed(w *books, j *job.Job, book *ledger.Ledger) Surveyed {
	s := Surveyed{Rows: []SurveyedBore{}}
	s.Holes, s.Findings = survey.Holes(survey.FromJob(j, w.instr.Instruments, w.rules))
	survey.Explain(book, s.Holes)
	for _, h := range s.Holes {
		s.Rows = append(s.Rows, h.Row(book))
	}
	var said finding.List
	s.Growth, said = survey.Grown(j, s.Holes, w.rules)
	if s.Growth.Rule != "" {
		book.Cite("rules/" + s.Growth.Rule)
	}
	s.Findings = append(s.Findings, said...)
	return s
}

// surveyAll keeps the survey where the later steps look for it.
func (m *maker) surveyAll() {
	s := surveyed(m.books, m.j, m.book)
	m.p.Survey, m.p.Findings = s.Rows, append(m.p.Findings, s.Findings...)
	m.holes, m.grown = s.Holes, s.Growth.Level == finding.Stop
	for _, h := range s.Holes {
		m.bores = append(m.bores, &bore{shaft: h.Shaft, b: h.Bore, old: h, known: h.Known, worn: h.Worn,
			found: h.Middle, u: h.U, method: h.Method.String(),
			points: h.Points, leftOut: h.LeftOut, residual: h.Residuals})
	}
	for _, name := range m.book.Cited("rules/") {
		m.used(name)
	}
}
