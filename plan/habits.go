package plan

import (
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/habit"
	"rebush/plan/job"
	"rebush/plan/target"
)

// habitsOf is what the shop of these tables really does.
func habitsOf(w *books, sh *job.Shop) habit.Habits { return habit.Of(sh, w.rules, machineOf(w, sh)) }

// machineOf is how well a shop places a clamping and a hole by its file or by
// rule, before its record.
func machineOf(w *books, sh *job.Shop) habit.Place {
	m := target.ShopOf(sh, w.rules)
	return habit.Place{SetupMM: m.Setup.U, HoleMM: m.Hole.U}
}

// places is how well a shop places a clamping and a hole, its record with it.
func (w *books) places(sh *job.Shop) target.Shop {
	s := target.ShopOf(sh, w.rules)
	if p := w.habits.Place; p.Recorded() {
		s.Setup, s.Hole = target.Doubt{U: p.SetupMM, From: p.Source()}, target.Doubt{U: p.HoleMM, From: p.Source()}
	}
	return s
}

// forgetPlaces is a shop that places holes otherwise than it has done until now:
// what its record says of places is no matter.
func forgetPlaces(sh *job.Shop) {
	if sh.Record != nil {
		r := *sh.Record
		r.Place = nil
		sh.Record = &r
	}
}

// RuleRecord is raised of a row of the shop's record that changes nothing.
const RuleRecord finding.Rule = "shop/record"

// fewJobs names the rows of a shop's record that rest on too few jobs.
func fewJobs(w *books, sh *job.Shop) (out finding.List) {
	least := w.rules.V("record_least_jobs")
	for _, x := range sh.Recorded() {
		if float64(x.Jobs) < least {
			out.Raise(finding.Note, RuleRecord, sh.PlaceAt("the shop", "record/"+x.Key),
				say.F("the shop's record of %s rests on %d of the %d jobs that it takes: the rules stand in its place",
					x.Key, x.Jobs, int(least)), "")
		}
	}
	return out
}
