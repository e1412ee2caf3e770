package plan

import (
	"rebush/fits/ledger"
	"rebush/plan/chance"
	"rebush/plan/job"
	"rebush/plan/verdict"
)

// Options are what the command line can set.
type Options struct {
	Trials   int
	Seed     uint64
	NoChance bool // leave the Monte Carlo out

	Way verdict.Name // the way to plan; "" the advised one
}

// Make plans a job. Where a step fails it says so in a finding and the plan is
// made as far as it can be; an error means that nothing can be planned at all
// (a shop's own table that cannot be read, a chassis of no known material). A job
// with sizes as made is planned from the truck as it now is.
func Make(j *job.Job, o Options) (*Plan, error) {
	if len(j.Made) == 0 {
		return whole(j, o)
	}
	now, made, err := asMade(j, o)
	if err != nil {
		return nil, err
	}
	p, err := whole(now, o)
	if err == nil {
		p.left(j, made)
	}
	return p, err
}

// whole plans a job from the truck as it stands.
func whole(j *job.Job, o Options) (*Plan, error) {
	w, c, err := ready(j, nil)
	if err != nil {
		return nil, err
	}
	book := ledger.New()
	s := run(w, c, j, book)
	var odds Chanced
	if s.OK && !o.NoChance {
		odds = chances(w, j, s, book, chance.Settings{Trials: int64(o.Trials), Seed: int64(o.Seed)})
	}
	way := judged(w, j, book, s.against(forbidden(w, c, j)), s.Survey.Holes, s.Target, s.Seats, s.Route.Rows, s.Route.Setups, odds)
	said := join(opening(w, c, j), s.Findings, odds.Findings, way.Findings)
	return printed(w, c, j, s, odds, way, closing(w, j, said), book), nil
}
