package habit

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/table"
	"rebush/plan/job"
)

// Rules are the defaults about shops.
type Rules struct {
	PriorJobs float64 `rule:"record_prior_jobs"`
	LeastJobs float64 `rule:"record_least_jobs"`
	SlipFrom  float64 `rule:"record_slip_scatters"`
	OtherMM   float64 `rule:"record_other_mm"`
}

// RulesOf reads them.
func RulesOf(r *table.Rules) (out Rules) {
	r.Fill(&out)
	return out
}

// Ruled is what the rules say of shops, before any record. machine is how well
// this one places a clamping and a hole by its own file or by rule.
func Ruled(r *table.Rules, machine Place) Habits {
	slips := r.Get("habit_slips")
	return Habits{
		Ways:  map[Way]Size{Reamed: ruled(r, "reamed"), Bored: ruled(r, "bored"), Milled: ruled(r, "milled")},
		Place: machine, Clearance: ruled(r, "clearance"),
		Slips: Slips{Share: slips.Low, Basis: Basis{At: slips.Address + ": " + slips.Source}},
	}
}

// ruled is what the rules say of a way of making a diameter.
func ruled(r *table.Rules, name string) Size {
	mean := r.Get("habit_" + name + "_um")
	over, spread := r.Pair("habit_" + name + "_um")
	return Size{OverUm: over, UOverUm: spread, ScatterUm: r.V("habit_" + name + "_scatter_um"),
		Basis: Basis{At: mean.Address + ": " + mean.Source}}
}

// Of is what a shop really does: the rules joined with its record. A figure
// whose record rests on too few jobs is that of the rules (METHODS.md 1).
func Of(sh *job.Shop, r *table.Rules, machine Place) Habits {
	h := Ruled(r, machine)
	if sh.Record == nil {
		return h
	}
	rec, rules := *sh.Record, RulesOf(r)
	at := func(key string) string { return sh.At("record/" + key).Source("record/" + key) }
	reamers := h.Ways[Reamed]
	for w, of := range map[Way]*job.Recorded{Reamed: rec.Reamed, Bored: rec.Bored, Milled: rec.Milled} {
		h.Ways[w] = h.Ways[w].joined(of, at(string(w)), rules)
	}
	for name, of := range rec.Reamers {
		if s := reamers.joined(&of, at("reamers/"+name), rules); s.Recorded() {
			if h.Reamers == nil {
				h.Reamers, h.unnamed = map[string]Size{}, h.Ways[Reamed]
				h.unnamed.OverUm, h.unnamed.UOverUm = reamers.OverUm, reamers.UOverUm
			}
			h.Reamers[name] = s
		}
	}
	h.Clearance = h.Clearance.joined(rec.Clearance, at("clearance"), rules)
	if p := rec.Place; p != nil && float64(p.Jobs) >= rules.LeastJobs {
		n := float64(p.Jobs)
		h.Place = Place{SetupMM: dim.Near(JoinScatter(machine.SetupMM, rules.PriorJobs, p.Setup.Float(), n), 5),
			HoleMM: dim.Near(JoinScatter(machine.HoleMM, rules.PriorJobs, p.Hole.Float(), n), 5), Basis: Basis{p.Jobs, at("place")}}
	}
	if s := rec.Slips; s != nil && float64(s.Jobs) >= rules.LeastJobs {
		h.Slips = Slips{Share: JoinShare(h.Slips.Share, rules.PriorJobs, float64(s.Slipped)/float64(s.Holes),
			float64(s.Jobs)), Basis: Basis{s.Jobs, at("slips")}}
	}
	return h
}

// joined is what the rules say of a size, joined with what is recorded of it.
func (s Size) joined(rec *job.Recorded, at string, r Rules) Size {
	if rec == nil || float64(rec.Jobs) < r.LeastJobs {
		return s
	}
	um := func(l dim.Length) float64 { return 1000 * l.Float() }
	n := float64(rec.Jobs)
	out := Size{ScatterUm: s.ScatterUm, Basis: Basis{rec.Jobs, at}}
	if rec.Scatter.Given() {
		out.ScatterUm = JoinScatter(s.ScatterUm, r.PriorJobs, um(rec.Scatter), n)
	}
	u := um(rec.U)
	if u <= 0 {
		u = out.ScatterUm / math.Sqrt(n)
	}
	m, uBoth := JoinMean(s.OverUm, s.UOverUm, um(rec.Over), u)
	out.OverUm, out.UOverUm, out.ScatterUm = dim.Near(m, 3), dim.Near(uBoth, 3), dim.Near(out.ScatterUm, 3)
	return out
}
