package plan

import (
	"cmp"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/chance"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/verdict"
)

// outcome is one way of a truck that cuts, planned to the end.
type outcome struct {
	Name verdict.Name
	picked
	steps
	OK     bool // there is such a plan, and it is free of stops
	Why    say.Text
	Owner  say.Text
	Model  chance.Model
	Cuts   bool           // something is cut or pressed: Model can be tried
	Result *chance.Result // nil where nothing was tried
}

// mendNames are the ways that are named after the gravest mend in them.
var mendNames = map[seat.Mend]verdict.Name{seat.Renew: verdict.Renew, seat.Rebush: verdict.Rebush,
	seat.MadeToFit: verdict.MadeToFit, seat.BushInABush: verdict.BushInABush, seat.Plug: verdict.Plug}

// ways plans every way that cuts over some placings. bought are bushes of the
// series that are to be had.
func (g *ground) ways(all []*placing, bought map[string]bool, trials chance.Settings) []outcome {
	var out []outcome
	for _, m := range seat.MendsRising()[1:] {
		out = append(out, g.way(m, all, bought, trials))
	}
	return out
}

// standsStill is a truck at which nothing is done.
func (g *ground) standsStill(s *placing) outcome {
	o := outcome{picked: picked{placing: s, OK: true}}
	o.steps = g.follow(o.picked)
	o.OK = o.steps.OK
	return o
}

// way is the cheapest plan with a mend in one hole at least: over the placings
// whichever has a seat for most holes, fewest poor ones, and costs least.
func (g *ground) way(m seat.Mend, all []*placing, bought map[string]bool, trials chance.Settings) outcome {
	o := outcome{Name: mendNames[m]}
	found := false
	for _, s := range all {
		p := g.pick(s, m, bought)
		if p.shut {
			if o.Why == "" {
				o.Why, o.Owner = p.why, p.owner
			}
			continue
		}
		if !found || p.before(o.picked) {
			o.picked, found = p, true
		}
	}
	if !found {
		if o.Why == "" {
			o.Why, o.Owner = "there is no hole that it would mend", "there is no hole that new bearings would mend"
		}
		return o
	}
	o.Why, o.Owner = "", ""
	o.steps = g.follow(o.picked)
	o.OK = o.steps.OK
	if !o.OK {
		o.Why, o.Owner = o.stopped(g.w)
		return o
	}
	if len(o.steps.Asks) > 0 {
		return o
	}
	o.Model, o.Cuts = chance.FromPlan(g.trialFacts(o.steps))
	if o.Cuts && trials.Trials > 0 {
		if r, err := chance.Run(o.Model, trials); err == nil {
			o.Result = &r
		}
	}
	return o
}

// before says whether a set of seats is the better one.
func (p picked) before(q picked) bool {
	switch {
	case p.OK != q.OK:
		return p.OK
	case p.lacks != q.lacks:
		return p.lacks < q.lacks
	case p.poor != q.poor:
		return p.poor < q.poor
	case p.cost < q.cost-1e-9 || q.cost < p.cost-1e-9:
		return p.cost < q.cost
	}
	return p.key() < q.key()
}

// stopped says what stops a way in one reason: of holes without a seat the one
// whose nearest miss is the largest, since that has to go before anything can;
// else the first stop by rule and place, whatever the order of the job. owner is
// the same for an owner.
func (o outcome) stopped(w *books) (why, owner say.Text) {
	var first *finding.Finding
	for i := range o.Findings {
		f := &o.Findings[i]
		if f.Level == finding.Stop && (first == nil || cmp.Or(strings.Compare(f.Rule.Name(), first.Rule.Name()),
			strings.Compare(f.Where, first.Where)) < 0) {
			first = f
		}
	}
	if first == nil {
		return "", ""
	}
	why, owner = first.Text, say.Words(w.stops[first.Rule.Name()].Owner)
	if first.Rule == survey.RuleGrowth && !o.steps.Survey.Growth.Swollen() {
		owner = "two ways of measuring the wheelbase do not agree"
	}
	at, miss := first.Where, o.miss
	if first.Rule == seat.RuleNoSeat {
		at, miss = o.hardest()
	}
	if (first.Rule == seat.RuleNoSeat || first.Rule == verdict.RuleWay) && miss != nil {
		return say.F("%s: %v", at, miss.Missed()), miss.Fail.Owner()
	}
	if first.Where != "" {
		why = say.F("%s: %v", first.Where, why)
	}
	return why, owner
}

// hardest is the hole without a seat whose nearest miss is the largest, with
// that miss; nil where none has one. Of equals it is the first by name.
func (o outcome) hardest() (at string, miss *seat.Answer) {
	for _, x := range o.bores {
		if x.Chosen != nil || len(x.Answers) == 0 {
			continue
		}
		a := &seat.Nearest(x.Answers)[0]
		if miss == nil || a.Fail.Gap > miss.Fail.Gap+1e-9 || a.Fail.Gap > miss.Fail.Gap-1e-9 && x.Name() < at {
			at, miss = x.Name(), a
		}
	}
	return at, miss
}

// nearest is the way that comes nearest to being machined: that which is free of
// stops and cheapest, else with the fewest stops, the lesser mend first.
func nearest(list []outcome) *outcome {
	var best *outcome
	for i := range list {
		o := &list[i]
		if o.placing == nil {
			continue
		}
		if best == nil || o.nearer(best) {
			best = o
		}
	}
	return best
}

func (o *outcome) nearer(than *outcome) bool {
	if o.OK != than.OK {
		return o.OK
	}
	if o.OK {
		return o.before(than.picked)
	}
	return o.Findings.Count(finding.Stop) < than.Findings.Count(finding.Stop)
}
