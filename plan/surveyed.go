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
	s.Holes, s.Findings = survey.Holes(survey.FromJob(j, w.instr, w.rules, w.holes))
	survey.Explain(book, s.Holes)
	for _, h := range s.Holes {
		s.Rows = append(s.Rows, h.Row(book))
	}
	var said finding.List
	s.Growth, said = survey.Grown(j, s.Holes, w.rules, w.instr)
	if s.Growth.Rule != "" {
		book.Cite("rules/" + s.Growth.Rule)
	}
	s.Findings = append(s.Findings, said...)
	return s
}
