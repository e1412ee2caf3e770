package plan

import (
	"cmp"
	"slices"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/chance"
	"rebush/plan/seat"
	"rebush/plan/verdict"
)

// What is printed of the chance.
type (
	Chance  = chance.Row
	Cause   = chance.Cause
	Improve = chance.Improvement
)

// Chanced is how likely a plan comes right.
type Chanced struct {
	Row      *Chance    // nil where nothing was tried
	Without  []say.Text // sources of error that change nothing when doubled
	Findings finding.List
}

// chances sets beside the trials of a plan what would improve it, and names what
// it hangs on.
func (t toured) chances(o *outcome, s chance.Settings) (out Chanced) {
	if !o.OK || !o.Cuts || s.Trials == 0 || o.Result == nil {
		return out
	}
	var most []say.Text
	gains, err := chance.Improve(o.Model, t.variants(o), s)
	if err != nil {
		out.Findings.Raise(finding.Caution, chance.RuleChance, finding.Place{}, say.F("%v", err), "")
		return out
	}
	if sens, err := chance.Sensitive(o.Model, s); err == nil {
		most, out.Without = sens.Most, sens.Without
	}
	gains = slices.DeleteFunc(gains, func(g chance.Gain) bool { return g.Gain < leastGain-1e-9 })
	out.Row = o.Result.Row(gains, most)
	out.Row.RestsOn = append(out.Row.RestsOn, restsOn(t.on.w.habits, o.Seats.Bores)...)
	o.Model.Explain(o.Book, *o.Result)
	return out
}

// variants are the changes with which the same way can be planned and leaves the
// same holes to try.
func (t toured) variants(o *outcome) []chance.Variant {
	var out []chance.Variant
	g := t.on
	for _, c := range better(g.own, g.w, g.meshes.Drives, boredOf(g.survey.Holes, o.Target, o.Seats)) {
		next, ok := t.changed(c)
		if !ok {
			continue
		}
		a := next.on.way(o.mend, next.placings, next.bought, chance.Settings{})
		if a.OK && a.Cuts && len(a.Model.Bores) == len(o.Model.Bores) {
			out = append(out, chance.Variant{Change: c.priced(g.own.Shop.Currency), Model: a.Model})
		}
	}
	return out
}

// with plans every way of a truck with one thing changed; ok is false where the
// change changes nothing, or nothing can be planned with it.
func (t toured) with(c change, trials chance.Settings) (out toured, ok bool) {
	next, ok := t.changed(c)
	if !ok {
		return out, false
	}
	return tourOf(next.on, next.placings, next.bought, trials), true
}

// start is what the ways of a truck are planned from.
type start struct {
	on       *ground
	placings []*placing
	bought   map[string]bool // bushes of the series that are to be had
}

// changed is where a truck with one thing changed is planned from. What the
// change does not touch is not found out again.
func (t toured) changed(c change) (s start, ok bool) {
	s = start{on: t.on, placings: t.placings, bought: map[string]bool{}}
	for _, code := range c.Bought {
		s.bought[code] = true
	}
	if c.Do == nil {
		return s, len(c.Bought) > 0
	}
	edited := editable(t.on.own)
	if !c.Do(edited) {
		return s, false
	}
	w, metal, err := ready(edited, t.on.w)
	if err != nil {
		return s, false
	}
	if c.Shelf {
		s.on = t.on.restocked(w, metal, edited)
		s.placings = s.on.placed(t.placings)
	} else {
		s.on = surveyedGround(w, metal, edited)
		s.placings = s.on.placed(nil)
	}
	return s, true
}

// A job is planned again with so many changes, one at a time, and with so many
// pairs of them.
const (
	mostSingles = 60
	mostPairs   = 20
)

// tried are the changes with which a truck was planned again.
type tried struct {
	list []attempt
	left int // changes that were not tried, for time
}

// attempt is a change and what came of it.
type attempt struct {
	change
	verdict.Try
	removes []string     // stops that are gone with it
	of      verdict.Case // what was judged then
}

// tries plans a truck again with the changes that could help it: where every way
// is stopped, or where the verdict is no repair though something is wrong.
func (t toured) tries(r verdict.Result, trials chance.Settings) (out tried) {
	if r.Repairs() || t.ok() && r.Choice != verdict.Swap && r.Cures {
		return out
	}
	out = t.attempts(trials)
	if o := t.nearest(); t.ok() {
		out.list = slices.DeleteFunc(out.list, func(a attempt) bool { return !a.tells(r, o) })
	}
	slices.SortStableFunc(out.list, before)
	return out
}

// before are the changes that may come before a choice, each with the truck as it
// then is.
func (t toured) before(trials chance.Settings) (out []verdict.Before) {
	for _, a := range t.attempts(trials).list {
		if b, ok := a.Try.Before(a.of); ok {
			out = append(out, b)
		}
	}
	return out
}

// attempts are all changes that could help a truck, and what came of each.
func (t toured) attempts(trials chance.Settings) (out tried) {
	var list []change
	if t.ok() {
		g, o := t.on, t.nearest()
		list = better(g.own, g.w, g.meshes.Drives, boredOf(g.survey.Holes, o.Target, o.Seats))
	}
	list = append(list, t.fixes()...)
	if len(list) > mostSingles {
		out.left = len(list) - mostSingles
		list = list[:mostSingles]
	}
	for _, c := range list {
		out.list = append(out.list, t.attempt(c, trials))
	}
	out.pairs(t, trials)
	return out
}

// leastGain is the least gain of a chance that is worth telling.
const leastGain = 0.01

// tells says whether a change to a truck that may be machined is worth telling:
// it would make a repair the choice, a figure is asked, or it comes right more
// often by a point or more.
func (a attempt) tells(r verdict.Result, o *outcome) bool {
	switch {
	case a.OK == nil || a.Then != nil && a.Then.Repairs() && !r.Repairs():
		return true
	case a.FirstTimeRight == nil || !*a.OK || o.Result == nil:
		return false
	}
	return *a.FirstTimeRight >= o.Result.FirstTimeRight+leastGain
}

// before puts what lets the truck be machined first, the likeliest to come right
// first.
func before(a, b attempt) int {
	return cmp.Or(cmp.Compare(a.rank(), b.rank()), -cmp.Compare(right(a), right(b)), strings.Compare(a.change.Key, b.change.Key))
}

// pairs tries two changes together that each take away a stop, and not all.
func (d *tried) pairs(t toured, trials chance.Settings) {
	for _, a := range d.list {
		if a.OK != nil && *a.OK {
			return // one alone does it
		}
	}
	singles := slices.Clone(d.list)
	slices.SortStableFunc(singles, func(a, b attempt) int { return strings.Compare(a.change.Key, b.change.Key) })
	n := 0
	for i, a := range singles {
		for _, b := range singles[i+1:] {
			if len(a.removes) == 0 || len(b.removes) == 0 || slices.Equal(a.removes, b.removes) {
				continue
			}
			if n == mostPairs {
				d.left++
				continue
			}
			n++
			d.list = append(d.list, t.attempt(both(a.change, b.change), trials))
		}
	}
}

// attempt plans a truck again with one change.
func (t toured) attempt(c change, trials chance.Settings) attempt {
	a := attempt{change: c}
	a.Try = verdict.Try{Key: c.Key, Do: c.Verb, What: c.What, Expected: c.Expected, Missing: c.Missing,
		Tried: finding.Tried{Change: c.Words, Kind: string(c.Kind), Cost: c.Cost}}
	with, ok := t.with(c, trials)
	if !ok {
		if !c.Missing {
			no := false
			a.OK = &no
		}
		return a
	}
	may := with.ok()
	a.OK = &may
	left := stopsOf(with.nearest().Findings)
	for _, k := range stopsOf(t.nearest().Findings) {
		if !slices.Contains(left, k) {
			a.removes = append(a.removes, k)
		}
	}
	var extra []verdict.Part
	if c.Kind != measure && c.Kind != mend && c.Kind != rule {
		extra = []verdict.Part{{Name: c.What, Price: c.Cost}}
	}
	of, r, err := with.judged(extra)
	if err != nil {
		return a
	}
	a.of, a.Then = of, &r
	if !may {
		return a
	}
	for _, w := range r.Ways {
		if w.Way == r.Choice && w.Way.Cuts() {
			a.FirstTimeRight = w.FirstTimeRight
		}
	}
	if o := with.nearest(); a.FirstTimeRight == nil && o.Result != nil {
		p := o.Result.FirstTimeRight
		a.FirstTimeRight = &p
	}
	return a
}

// stopsOf are the stops among some findings.
func stopsOf(list finding.List) []string {
	var out []string
	for _, f := range list {
		if f.Level == finding.Stop {
			out = append(out, stopKey(f))
		}
	}
	return out
}

// forVerdict are the tries as the verdict weighs them.
func (d tried) forVerdict() []verdict.Try {
	var out []verdict.Try
	for _, a := range d.list {
		out = append(out, a.Try)
	}
	return out
}

// most is how many tries stand beside one stop.
const most = 4

// beside puts beside each stop what was tried for it: what lets the truck be
// machined first, then what takes that stop away alone, then what is asked for.
func (d tried) beside(list finding.List) finding.List {
	out := slices.Clone(list)
	for i := range out {
		f := &out[i]
		if f.Level != finding.Stop {
			continue
		}
		var mine []attempt
		n := 0
		for _, a := range d.list {
			if !slices.Contains(a.For, stopKey(*f)) {
				continue
			}
			n++
			if a.OK == nil || *a.OK || slices.Contains(a.removes, stopKey(*f)) {
				mine = append(mine, a)
			}
		}
		for _, a := range mine[:min(len(mine), most)] {
			f.Tried = append(f.Tried, a.Tried)
		}
		if !slices.ContainsFunc(mine, func(a attempt) bool { return a.OK == nil }) {
			f.Fix = d.said(*f, n, len(mine))
		}
	}
	return out
}

func (a attempt) rank() int {
	switch {
	case a.OK == nil:
		return 2
	case *a.OK:
		return 0
	}
	return 1
}

func right(a attempt) float64 {
	if a.FirstTimeRight == nil {
		return 0
	}
	return *a.FirstTimeRight
}

// said tells how many changes were tried for a stop, where any could be thought
// of.
func (d tried) said(f finding.Finding, n, help int) say.Text {
	left := say.Text("")
	if d.left > 0 {
		left = say.F("; %d more were not tried, for time", d.left)
	}
	switch {
	case n == 0 && f.Rule != seat.RuleNoSeat:
		return f.Fix
	case n == 0:
		return "nothing to buy, to make or to measure was found that could be tried"
	case n == 1 && help == 0:
		return "the one change that was tried does not take this away" + left
	case help == 0:
		return say.F("%d changes were tried, and none takes this away%v", n, left)
	case n == 1:
		return "one change was tried, with the whole job planned again" + left
	}
	return say.F("%d changes were tried, each with the whole job planned again%v", n, left)
}
