package plan

import (
	"maps"
	"slices"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/chance"
	"rebush/plan/verdict"
)

// toured are all ways of a truck that cut, and how it stands where none of them
// is open.
type toured struct {
	on       *ground
	placings []*placing
	Ways     []outcome
	Base     outcome // nothing picked
}

// tour plans every way that cuts.
func tour(g *ground, trials chance.Settings) toured {
	return tourOf(g, g.placed(nil), nil, trials)
}

// tourOf plans every way over some placings. bought are bushes of the series that
// are to be had.
func tourOf(g *ground, all []*placing, bought map[string]bool, trials chance.Settings) toured {
	t := toured{on: g, placings: all}
	t.Ways = g.ways(all, bought, trials)
	if nearest(t.Ways) == nil {
		t.Base = g.standsStill(all[0])
		if slices.ContainsFunc(all, func(s *placing) bool { return len(s.offers) > 0 }) {
			t.shut()
		}
		for i := range t.Ways {
			if t.Ways[i].OK = t.Base.OK && t.Ways[i].Name == verdict.Rebush; t.Ways[i].OK {
				t.Ways[i].Why, t.Ways[i].Owner = "", "" // nothing is to be cut, and nothing stops that
			}
			if !t.Base.OK && t.Ways[i].Why == "" {
				t.Ways[i].Why, t.Ways[i].Owner = t.Base.stopped(g.w)
			}
		}
	}
	return t
}

// shut stops a truck whose holes want something and are open to no way: the one
// that the job asks for is none of theirs.
func (t *toured) shut() {
	why := say.Text("no hole of this truck is open to any way")
	asked := slices.Collect(maps.Values(t.on.own.Way))
	for _, o := range t.Ways {
		if slices.Contains(asked, string(o.Name)) && o.Why != "" {
			why = say.F("the job asks for %s, and %v", string(o.Name), o.Why)
			break
		}
	}
	t.Base.OK, t.Base.steps.OK = false, false
	t.Base.Findings.Raise(finding.Stop, verdict.RuleWay, t.on.own.PlaceAt("", "way"), why, "another way, or what the reason names")
}

// named is the outcome of one way, nil where there is no such plan.
func (t toured) named(name verdict.Name) *outcome {
	for i := range t.Ways {
		if o := &t.Ways[i]; o.Name == name && o.placing != nil {
			return o
		}
	}
	return nil
}

// nearest is the way that comes nearest to being machined; the truck as it
// stands where no way is open.
func (t toured) nearest() *outcome {
	if o := nearest(t.Ways); o != nil {
		return o
	}
	return &t.Base
}

// ok says whether any way may be machined.
func (t toured) ok() bool {
	if nearest(t.Ways) == nil {
		return t.Base.OK
	}
	for i := range t.Ways {
		if t.Ways[i].OK {
			return true
		}
	}
	return false
}

// judged is the verdict over the ways of a truck, and the case that it is of. extra
// is what has to be bought beside what each of them needs.
func (t toured) judged(extra []verdict.Part) (of verdict.Case, r verdict.Result, err error) {
	return t.judgedAfter(extra, nil)
}

// judgedAfter is judged with what may come first.
func (t toured) judgedAfter(extra []verdict.Part, first func() []verdict.Before) (verdict.Case, verdict.Result, error) {
	of := t.on.weighing(works(t.Ways, extra))
	of.First = first
	r, err := verdict.Decide(of)
	return of, r, err
}

// showing is what is printed of a truck.
type showing struct {
	way    verdict.Name
	of     *outcome // whose targets, meshes and ledger are printed
	cuts   bool     // and whose seats, operations and chance
	ok     bool
	closed finding.List // why the way that is asked for is none
}

// shown is the way that is printed: the one that is asked for, else that which
// is advised.
func shown(t toured, r verdict.Result, asked verdict.Name) showing {
	s := showing{way: asked, of: t.nearest(), ok: t.ok()}
	if asked == "" {
		s.way = r.Choice
		if s.way == verdict.MeasureFirst || s.way == verdict.BuyFirst {
			s.way = verdict.Leave
		}
	}
	if !s.way.Cuts() {
		return s
	}
	name := s.way
	if base, ok := r.Plans[name]; ok {
		name = base
	}
	s.ok = false
	if o := t.named(name); o != nil {
		s.of, s.cuts, s.ok = o, true, o.OK
		return s
	}
	if s.way == verdict.Rebush && nearest(t.Ways) == nil && t.Base.OK {
		s.ok = true // nothing is to be cut
		return s
	}
	for _, w := range r.Ways {
		if w.Way == s.way {
			s.closed.Raise(finding.Stop, verdict.RuleWay, finding.Place{}, say.F("%s: %v", string(w.Way), w.WhyNot), "another way, or what the reason names")
		}
	}
	return s
}

// findings are those of the way that is printed. Where nothing is cut though
// something could be, what concerns seats, operations and trials is no matter.
func (s showing) findings() finding.List {
	if s.closed != nil {
		return join(s.closed, s.of.Findings)
	}
	if s.cuts || !s.ok || s.of.Name == "" {
		return s.of.Findings
	}
	var out finding.List
	for _, f := range s.of.Findings {
		switch f.Rule.Stage() {
		case "seat", "route", "chance", "target":
		default:
			out = append(out, f)
		}
	}
	return out
}
