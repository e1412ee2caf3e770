package plan

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"

	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/route"
	"rebush/plan/safety"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
	"rebush/plan/verdict"
)

// Program is what a plan says made it.
const Program = "rebush 1"

// printed puts what the steps returned into the shape that is printed.
func printed(w *books, c seat.Casting, j *job.Job, s steps, odds Chanced, way Judged, said finding.List,
	book *ledger.Ledger) *Plan {
	sum := sha256.Sum256(j.Canonical())
	r := s.Route
	return &Plan{RebushPlan: 1, Program: Program, JobNumber: j.Number, Hash: hex.EncodeToString(sum[:8]), OK: s.OK,
		Survey: s.Survey.Rows, Mesh: meshRows(s.Target, s.Reach), Targets: some(s.Target.Targets),
		Shafts: shaftRows(s.Target, s.Seats), Truck: s.Target.Truck, Seats: some(s.Seats.Rows), Operations: some(r.Rows),
		Chance: odds.Row, Verdict: way.Row, Inspect: []Inspection{}, Findings: said, Safety: safetyOf(w.hazards(c, j), r),
		Ledger: book.Entries(), Job: j, Book: book, Holes: pictures(s), Setups: r.Setups, Buy: r.Buy, LayOut: r.LayOut,
		Proving: r.Proving, Tables: w.lib.Replaced(), Rules: rulesUsed(book, w.rules), WithoutEffect: odds.Without,
		Ways: rowsOf(way.Row)}
}

// rowsOf are the options of a verdict as rows of ways.
func rowsOf(v *Verdict) []verdict.WayRow {
	out := []verdict.WayRow{}
	if v == nil {
		return out
	}
	for _, o := range v.Options {
		out = append(out, verdict.WayRow{Way: o.Name, OK: o.Feasible, Cures: o.Feasible && o.Name != verdict.Leave,
			WhyNot: o.WhyNot, Cost: o.Cost, Hours: o.Hours, FirstTimeRight: o.Chance, Loses: o.Loses, Keeps: o.Keeps})
	}
	return out
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
func pictures(s steps) map[string]Hole {
	out := map[string]Hole{}
	for _, b := range boredOf(s.Survey.Holes, s.Target, s.Seats) {
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
