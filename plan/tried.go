package plan

import (
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/chance"
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
func (g *ground) chances(o *outcome, s chance.Settings) (out Chanced) {
	if !o.OK || !o.Cuts || s.Trials == 0 || o.Result == nil {
		return out
	}
	var most []say.Text
	gains, err := chance.Improve(o.Model, g.variants(o), s)
	if err != nil {
		out.Findings.Raise(finding.Caution, chance.RuleChance, finding.Place{}, say.F("%v", err), "")
		return out
	}
	if sens, err := chance.Sensitive(o.Model, s); err == nil {
		most, out.Without = sens.Most, sens.Without
	}
	out.Row = o.Result.Row(gains, most)
	o.Model.Explain(o.Book, *o.Result)
	return out
}

// variants are the changes with which the same way can be planned and leaves the
// same holes to try.
func (g *ground) variants(o *outcome) []chance.Variant {
	var out []chance.Variant
	for _, c := range changes(g.own, g.w.instr, boredOf(g.survey.Holes, o.Target, o.Seats)) {
		t, _, ok := g.with(c, chance.Settings{})
		if !ok {
			continue
		}
		for i := range t.Ways {
			if a := &t.Ways[i]; a.Name == o.Name && a.OK && a.Cuts && len(a.Model.Bores) == len(o.Model.Bores) {
				out = append(out, chance.Variant{Change: c.Words, Model: a.Model})
			}
		}
	}
	return out
}

// with plans every way of the job with one thing changed; ok is false where the
// change changes nothing, or nothing can be planned with it.
func (g *ground) with(c change, trials chance.Settings) (t toured, on *ground, ok bool) {
	edited := editable(g.own)
	if !c.Do(edited) {
		return t, nil, false
	}
	w, metal, err := ready(edited, g.w)
	if err != nil {
		return t, nil, false
	}
	on = surveyedGround(w, metal, edited)
	return tour(on, nil, trials, nil), on, true
}

// tried are the changes with which a job was planned again.
type tried struct{ list []verdict.Try }

func (t tried) forVerdict() []verdict.Try { return t.list }

func (g *ground) tries(t toured, r verdict.Result, trials chance.Settings) tried { return tried{} }
