package plan

import (
	"slices"

	"rebush/fits/finding"
	"rebush/plan/mesh"
	"rebush/plan/route"
	"rebush/plan/safety"
	"rebush/plan/survey"
	"rebush/plan/target"
	"rebush/plan/verdict"
)

// Program is what a plan says made it.
const Program = "rebush 1"

// printed puts what the steps returned into the shape that is printed.
func printed(g *ground, s showing, odds Chanced, judged verdict.Result, asked bool, said finding.List) *Plan {
	o, j := s.of, g.own
	p := &Plan{RebushPlan: 1, Program: Program, JobNumber: j.Number, Hash: hashOf(j, nil), OK: s.ok,
		Way: s.way, Ways: judged.Rows(), Survey: g.survey.Rows, Mesh: meshRows(o.Target, o.Reach),
		Targets: some(o.Target.Targets), Shafts: shaftRows(o.Target, o.Seats), Truck: o.Target.Truck, Seats: []Seat{},
		Operations: []Operation{}, Inspect: []Inspection{}, Findings: said, Job: j, Book: o.Book,
		Holes: pictures(g.survey.Holes, o.steps), Tables: g.w.lib.Replaced(), WithoutEffect: odds.Without,
		Advised: judged.Choice, Cuts: s.cuts}
	if asked {
		p.NotAdvised = judged.Against(s.way, j.Shop.Currency)
	}
	if len(judged.Ways) > 0 {
		p.Verdict = judged.Row(j.Shop.Currency)
	}
	hurt := g.w.hazards(g.c, j)
	p.Safety = safetyOf(hurt, Routed{})
	if s.cuts {
		r := o.Route
		p.Seats, p.Operations, p.Chance, p.Setups, p.Buy = some(o.Seats.Rows), some(r.Rows), odds.Row, r.Setups, r.Buy
		p.LayOut, p.Proving, p.Safety = r.LayOut, r.Proving, safetyOf(hurt, r)
	}
	p.Ledger, p.Rules = o.Book.Entries(), rulesUsed(o.Book, g.w.rules)
	return p
}

// some is a list that prints as [] where it is empty.
func some[T any](list []T) []T { return append([]T{}, list...) }

// meshRows are the meshes with the centre distances that the finished bores
// lead to.
func meshRows(t target.Settled, reach target.Reached) []mesh.Row {
	out := some(t.Meshes)
	for i := range out {
		if i < len(reach.Centre) {
			out[i].ReachedMM = reach.Centre[i]
		}
	}
	return out
}

// shaftRows are the shafts with their side play.
func shaftRows(t target.Settled, seats Seated) []target.ShaftRow {
	out := some(t.Shafts)
	for i := range out {
		out[i].SidePlayMM = seats.SidePlay[out[i].Shaft]
	}
	return out
}

// safetyOf is what is said of hazards of the job as a whole.
func safetyOf(h route.Hazards, r Routed) Safety {
	cut := slices.ContainsFunc(r.Rows, func(o Operation) bool { return o.Kind == route.KindSizeSeat })
	return Safety{PageOne: some(r.PageOne), Before: some(r.Before), LookFor: h.LookFor(cut), Owner: h.Table.At(safety.Owner, h.Whole(cut))}
}

// pictures gathers what a drawing of each hole needs.
func pictures(holes []survey.Hole, s steps) map[string]Hole {
	out := map[string]Hole{}
	for _, b := range boredOf(holes, s.Target, s.Seats) {
		if b.Known {
			out[b.Name()] = pictured(b)
		}
	}
	return out
}

func pictured(b bored) Hole {
	old := survey.Hole(b.Hole)
	h := Hole{Outline: old.Stands().Outline(96), Old: old.Worn.O, OldRadius: old.Worn.R, Target: b.At,
		Points: old.Points, Residuals: old.Residuals, LeftOut: old.LeftOut, UMM: old.U}
	if !b.Placed {
		h.Target = old.Worn.O
	}
	if a := b.Chosen; a != nil {
		h.SeatR, h.BoreR = (a.SeatLow+a.SeatHigh)/4, (a.Bore[0]+a.Bore[1])/4
	}
	return h
}
