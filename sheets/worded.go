package sheets

import (
	"regexp"
	"slices"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/job"
)

// Worded is a plan whose sentences carry lengths in the units of the reader,
// for paper and for the screen. The plan itself always says them in mm, so that
// a job typed in inches plans to the same bytes; it stays as it is. Figures
// with a key of their own, names and what a tool is stamped with are not
// touched.
func Worded(pl *plan.Plan, u dim.Units) *plan.Plan {
	if pl == nil || u == dim.InMM {
		return pl
	}
	names := stampedNames(pl)
	w := wording(func(s string) string { return dim.InWords(s, u, names...) })
	out := *pl
	out.Survey = each(pl.Survey, func(s *plan.SurveyedBore) {
		s.Method = w(s.Method)
		s.Evidence = each(s.Evidence, func(e *plan.Evidence) { e.What = w(e.What) })
	})
	out.Mesh = each(pl.Mesh, func(m *plan.Mesh) { w.said(u, &m.Words) })
	out.Seats = each(pl.Seats, func(s *plan.Seat) {
		w.all(&s.Tool, &s.Second, &s.Finish)
		s.Candidates = each(s.Candidates, func(c *plan.Candidate) { w.all(&c.Tool); w.said(u, &c.Reason) })
	})
	out.Operations, out.Setups = say.Printed(pl.Operations, u), say.Printed(pl.Setups, u)
	out.Inspect = say.Printed(pl.Inspect, u)
	out.Findings = each(pl.Findings, func(f *finding.Finding) { w.said(u, &f.Text, &f.Fix) })
	out.Chance, out.Verdict = say.Printed(pl.Chance, u), say.Printed(pl.Verdict, u)
	out.Buy, out.LayOut, out.Proving = say.Printed(pl.Buy, u), say.Printed(pl.LayOut, u), say.Printed(pl.Proving, u)
	out.WithoutEffect = say.Printed(pl.WithoutEffect, u)
	return &out
}

// wording puts one sentence into the units of the reader.
type wording func(string) string

func (w wording) all(texts ...*string) {
	for _, s := range texts {
		*s = w(*s)
	}
}

// said prints texts that carry their figures.
func (w wording) said(u dim.Units, texts ...*say.Text) {
	for _, t := range texts {
		*t = say.Words(w(t.In(u)))
	}
}

func (w wording) list(texts []string) []string {
	return each(texts, func(s *string) { *s = w(*s) })
}

// each changes a copy of a list.
func each[L ~[]T, T any](list L, change func(*T)) L {
	out := slices.Clone(list)
	for i := range out {
		change(&out[i])
	}
	return out
}

// stampedNames are the names given by people that have a length in them. What is
// no more than a length ("5 mm", a reamer) says by the word beside it what it is.
func stampedNames(pl *plan.Plan) []string {
	var out []string
	add := func(n string) {
		if aLength.MatchString(n) && !onlyLength.MatchString(n) {
			out = append(out, n)
		}
	}
	for _, s := range pl.Seats {
		add(s.Bush)
		for _, c := range s.Candidates {
			add(c.Bush)
		}
	}
	if pl.Job != nil {
		namesOf(pl.Job, add)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func namesOf(j *job.Job, add func(string)) {
	for _, f := range j.Chassis.Features {
		add(f.Name)
	}
	for _, s := range j.Shafts {
		add(s.Name)
	}
	for _, g := range j.Gears {
		add(g.Name)
	}
	if j.Shop == nil {
		return
	}
	for _, list := range [][]job.Tool{j.Shop.Drills, j.Shop.Reamers, j.Shop.EndMills, j.Shop.Mandrels} {
		for _, t := range list {
			add(t.Name)
		}
	}
	for _, in := range j.Shop.Instruments {
		add(in.Name)
	}
	for _, c := range j.Shop.Compounds {
		add(c)
	}
}

var (
	aLength    = regexp.MustCompile(`\d (?:mm|um)\b`)
	onlyLength = regexp.MustCompile(`^[\d.]+ (?:mm|um)$`)
)
