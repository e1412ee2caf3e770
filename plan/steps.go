package plan

import (
	"fmt"

	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/plan/chance"
	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/target"
)

// ready reads the handbooks for a job and what its chassis is made of. from
// hands on what another plan has read from the same tables and rules.
func ready(j *job.Job, from *books) (*books, seat.Casting, error) {
	w, err := booksFor(j.Shop, from)
	if err != nil {
		return nil, seat.Casting{}, err
	}
	c, err := seat.CastingOf(j, w.materials, w.rules)
	if err != nil {
		at := j.At("chassis/material")
		return nil, c, fmt.Errorf("%s:%d:%d: %w", at.File, at.Line, at.Column, err)
	}
	return w, c, nil
}

// steps are what the steps up to the route return.
type steps struct {
	Survey   Surveyed
	Shop     target.Shop
	Target   target.Settled
	Seats    Seated
	Reach    target.Reached
	Route    Routed
	Findings finding.List
	OK       bool // may be machined
}

// run strings the steps together: each takes what earlier ones returned, and
// nothing is written into what one of them made.
func run(w *books, c seat.Casting, j *job.Job, book *ledger.Ledger) steps {
	s := steps{Shop: target.ShopOf(j.Shop, w.rules)}
	s.Survey = surveyed(w, j, book)
	meshes := meshed(w, j, book, s.Shop, s.Survey.Holes, seat.RulesOf(w.rules))
	s.Target = target.Settle(j, w.rules, book, s.Shop, meshes.Axles, meshes.Drives)
	where, unread := sites(w, j, s.Survey.Holes, s.Target)
	s.Seats = seated(w, j, c, where, book)
	s.Reach = s.Target.Reach(j, w.rules, book, reachable(s.Seats, book))
	s.Findings = lowered(w, j, join(condition(w, c, j), s.Survey.Findings, meshes.Findings, s.Target.Findings,
		unread, s.Seats.Findings, burning(w, j, s.Seats), s.Reach.Findings))
	if s.Findings.Stops() {
		return s
	}
	route := routed(w, forRoute(s.Survey.Holes, s.Target, s.Seats), book)
	s.Findings = lowered(w, j, join(s.Findings, route.Findings))
	if s.OK = !s.Findings.Stops(); s.OK {
		s.Route = route
	}
	return s
}

// against is what the steps have said against cutting.
func (s steps) against(metal string) casting {
	return casting{Swollen: s.Survey.Growth.Level == finding.Stop, Metal: metal, OK: s.OK}
}

// trialFacts is the plan as its trials read it.
func (s steps) trialFacts(w *books, j *job.Job) chance.Facts {
	return trialFacts(w, j, s.Shop, s.Survey.Holes, s.Target, s.Seats, s.Route.Setups)
}

// join is several lists of findings in one.
func join(lists ...finding.List) finding.List {
	out := finding.List{}
	for _, l := range lists {
		out = append(out, l...)
	}
	return out
}
