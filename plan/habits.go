package plan

import (
	"slices"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/habit"
	"rebush/plan/job"
	"rebush/plan/seat"
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

// restsOn is what of the shop's record the trials of some seats rest on.
func restsOn(h habit.Habits, seats []seat.Seated) (out []say.Text) {
	add := func(what string, b habit.Basis) {
		t := say.F("%s, %d jobs", what, b.Jobs)
		if b.Recorded() && !slices.Contains(out, t) {
			out = append(out, t)
		}
	}
	cuts := false
	for _, x := range seats {
		a := x.Chosen
		if a == nil || !a.Way.Kind.Cuts() {
			continue
		}
		cuts = true
		of := h.Seat(waysOf[a.Way.Kind], a.Way.Tool)
		add("seats by "+a.Way.Name, of.Basis)
	}
	if cuts {
		add("places of holes", h.Place.Basis)
		add("slips", h.Slips.Basis)
	}
	if slices.ContainsFunc(seats, func(x seat.Seated) bool { return x.Chosen != nil }) {
		add("clearances", h.Clearance.Basis)
	}
	return out
}
