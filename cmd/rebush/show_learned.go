package main

import (
	"strings"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/plan/habit"
	"rebush/plan/job"
)

// showLearned prints it in words, and the rows for the shop file.
func showLearned(e *env, o options, shop *job.Shop, out learnAnswer, rec *job.Record, lines []habit.Line) {
	u := dim.InMM
	if got, err := o.units(); err == nil && o.has("units") {
		u = got
	} else if shop.Units() == dim.Inch {
		u = dim.InInch
	}
	pg := &page{w: e.out}
	for _, j := range out.Jobs {
		for _, f := range j.Findings {
			if f.Level != finding.Stop {
				pg.line("%s", findingLine(e, f))
			}
		}
	}
	if shop.Record == nil {
		pg.line("%s has no record yet: its plans rest on the rules alone.", shop.File)
	}
	if len(lines) == 0 {
		return
	}
	pg.line("What %s really does:\n", shop.File)
	for _, l := range lines {
		pg.pair(l.Name, "%s", l.Told.In(u))
		pg.pair("", "%s", l.Then.In(u))
	}
	pg.flush()
	pg.line("\nKnown to: one standard uncertainty. Holes of one job are no jobs of their own: each job has one voice in a mean.")
	if out.Record == "" {
		pg.line("There is nothing yet to write into the shop file.")
		return
	}
	instead := ""
	if shop.Record != nil {
		instead = ", in the place of the record that is there"
	}
	for _, r := range shop.Recorded() {
		if n := jobsOf(rec, r.Key); n < r.Jobs {
			pg.line("\n%s rests on %d jobs in the record that is there, and on %d here: name those jobs too, or keep that row.", r.Key, r.Jobs, n)
		}
	}
	pg.line("\nFor the shop file%s:\n\n%s", instead, strings.TrimRight(out.Record, "\n"))
}

// jobsOf are the jobs that a row of a record rests on, 0 where it has none.
func jobsOf(rec *job.Record, key string) int {
	of := job.Shop{Record: rec}
	for _, r := range of.Recorded() {
		if r.Key == key {
			return r.Jobs
		}
	}
	return 0
}
