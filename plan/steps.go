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

// steps are what the steps up to the route return, for one way.
type steps struct {
	Survey   Surveyed
	Target   target.Settled
	Seats    Seated
	Reach    target.Reached
	Route    Routed
	Asks     []string // bores at which something is to be measured before any cut: the route ends there
	Findings finding.List
	Book     *ledger.Ledger
	OK       bool // may be machined
}

// follow strings the steps together for what was picked: each takes what earlier
// ones returned, and nothing is written into what one of them made.
func (g *ground) follow(p picked) steps {
	s := steps{Survey: g.survey, Target: p.target, Asks: p.asks, Book: p.book.Copy()}
	w, j := g.w, g.j
	s.Seats = seated(p, s.Book)
	s.Reach = s.Target.Reach(j, w.rules, s.Book, reachable(s.Seats, s.Book))
	s.Findings = lowered(w, j, join(condition(w, g.c, j), g.survey.Findings, g.meshes.Findings, s.Target.Findings,
		p.said, s.Seats.Findings, p.short, burning(w, j, s.Seats), s.Reach.Findings))
	if s.Findings.Stops() {
		return s
	}
	route := routed(w, forRoute(g.survey.Holes, s.Target, s.Seats), s.Book)
	s.Findings = lowered(w, j, join(s.Findings, route.Findings))
	if s.OK = !s.Findings.Stops(); s.OK {
		s.Route = route
	}
	return s
}

// trialFacts is a plan as its trials read it.
func (g *ground) trialFacts(s steps) chance.Facts {
	return trialFacts(g.w, g.j, g.shop, g.survey.Holes, s.Target, s.Seats, s.Route)
}

// reachable are the clearances that the chosen finishes lead to, by bore: what
// the meshes are looked at again with.
func reachable(seats Seated, book *ledger.Ledger) map[string]target.Fitted {
	out := map[string]target.Fitted{}
	for _, x := range seats.Bores {
		if x.Chosen != nil {
			page := book.Page("seats/" + x.Name())
			out[x.Name()] = target.Fitted{Least: page.Num("expected_mm/min"), Most: page.Num("expected_mm/max"),
				Journal: page.Num("journal_mm")}
		}
	}
	return out
}
