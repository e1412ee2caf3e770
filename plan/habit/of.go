package habit

import (
	"rebush/fits/table"
	"rebush/plan/job"
)

// Rules are the defaults about shops.
type Rules struct {
	PriorJobs float64 `rule:"record_prior_jobs"`
	LeastJobs float64 `rule:"record_least_jobs"`
	SlipFrom  float64 `rule:"record_slip_scatters"`
	Slips     float64 `rule:"habit_slips"`
}

// RulesOf reads them.
func RulesOf(r *table.Rules) (out Rules) {
	r.Fill(&out)
	return out
}

// ruled is what the rules say of a way of making a diameter.
func ruled(r *table.Rules, name string) Size {
	mean := r.Get("habit_" + name + "_um")
	over, spread := r.Pair("habit_" + name + "_um")
	return Size{OverUm: over, UOverUm: spread, ScatterUm: r.V("habit_" + name + "_scatter_um"),
		Basis: Basis{At: mean.Address + ": " + mean.Source}}
}

// Of is what a shop really does, by the rules and its record. machine is how
// well it places a clamping and a hole by its own file or by rule.
func Of(sh *job.Shop, r *table.Rules, machine Place) Habits {
	rules := RulesOf(r)
	slips := r.Get("habit_slips")
	return Habits{
		Ways:      map[Way]Size{Reamed: ruled(r, "reamed"), Bored: ruled(r, "bored"), Milled: ruled(r, "milled")},
		Reamers:   map[string]Size{},
		Place:     machine,
		Clearance: ruled(r, "clearance"),
		Slips:     Slips{Share: rules.Slips, Basis: Basis{At: slips.Address + ": " + slips.Source}},
	}
}
