package plan

import (
	"sync"

	"rebush/fits/finding"
	"rebush/plan/chance"
	"rebush/plan/inspect"
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

// trials are the settings of the runs of a plan; none where they are left out.
func (o Options) trials() chance.Settings {
	if o.NoChance {
		return chance.Settings{}
	}
	return chance.Settings{Trials: int64(o.Trials), Seed: int64(o.Seed)}
}

// Make plans a job: every way that cuts, each by the same chain; the verdict
// over them; and of the way that is advised, or asked for, all that is printed.
// Where a step fails it says so in a finding and the plan is made as far as it
// can be; an error means that nothing can be planned at all (a shop's own table
// that cannot be read, a chassis of no known material). A job with sizes as made
// is planned from the truck as it now is.
func Make(j *job.Job, o Options) (*Plan, error) {
	if len(j.Made) == 0 {
		return whole(j, o)
	}
	now, made, err := asMade(j, o.Way, o.trials())
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
	g := surveyedGround(w, c, j)
	t := tour(g, o.trials())
	of, judged, err := t.judgedAfter(nil, sync.OnceValue(func() []verdict.Before { return t.before(o.trials()) }))
	said := finding.List{}
	if err != nil {
		said = noVerdict(err)
	}
	d := t.tries(judged, o.trials())
	judged = judged.First(of, d.forVerdict())
	s := shown(t, judged, o.Way)
	var odds Chanced
	if s.cuts {
		odds = t.chances(s.of, o.trials())
	}
	costs(of, j, s.of.Book)
	layOut, axles := s.newAxles(j)
	said = join(opening(w, c, j), axles, d.beside(s.findings()), odds.Findings, said, judged.Findings)
	p := printed(g, s, odds, judged, o.Way != "", closing(w, j, said))
	p.LayOut = append(layOut, p.LayOut...)
	if s.cuts && s.ok && !o.NoChance {
		x := afterwards{w: w, c: c, trial: o.trials(), bench: inspect.ShopOf(w.rules)}
		p.ifLarge = func() map[string]Next { return x.ifLarge(j, s.of.steps) }
	}
	return p, nil
}
