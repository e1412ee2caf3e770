package plan

import (
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/chance"
	"rebush/plan/job"
)

// What is printed of the chance.
type (
	Chance  = chance.Row
	Cause   = chance.Cause
	Improve = chance.Improvement
)

// Chanced is how likely a plan comes right.
type Chanced struct {
	Row      *Chance        // nil where nothing was tried
	Result   *chance.Result // likewise
	Without  []say.Text     // sources of error that change nothing when doubled
	Findings finding.List
}

// chanced runs the trials of a plan, sets beside it what would improve it and
// names what it hangs on.
func chanced(book *ledger.Ledger, model chance.Model, better []chance.Variant, s chance.Settings) Chanced {
	var out Chanced
	r, err := chance.Run(model, s)
	if err != nil {
		out.Findings.Raise(finding.Caution, chance.RuleChance, finding.Place{}, say.F("%v", err), "")
		return out
	}
	var most []say.Text
	gains, _ := chance.Improve(model, better, s) // the model and the settings have just run
	if sens, err := chance.Sensitive(model, s); err == nil {
		most, out.Without = sens.Most, sens.Without
	}
	out.Row, out.Result = r.Row(gains, most), &r
	model.Explain(book, r)
	return out
}

// chances hands the trials what the steps have chosen, and beside it the plans
// in which one thing is changed.
func chances(w *books, j *job.Job, s steps, book *ledger.Ledger, trials chance.Settings) Chanced {
	model, ok := chance.FromPlan(s.trialFacts(w, j))
	if !ok {
		return Chanced{}
	}
	again := func(j *job.Job) (attempt, error) {
		w, c, err := ready(j, w)
		if err != nil {
			return attempt{}, err
		}
		s := run(w, c, j, ledger.New())
		a := attempt{OK: s.OK}
		a.Model, a.Cuts = chance.FromPlan(s.trialFacts(w, j))
		return a, nil
	}
	better := variants(j, model, changes(j, w.instr, boredOf(s.Survey.Holes, s.Target, s.Seats)), again)
	return chanced(book, model, better, trials)
}

// attempt is what came of a plan that was made to see what a change gives.
type attempt struct {
	OK    bool // it may be machined
	Model chance.Model
	Cuts  bool // something is cut or pressed: Model can be tried
}

// tried makes the plan of a job again with one thing changed. ok is false where
// the change changes nothing, or nothing can be planned with it.
func tried(j *job.Job, c change, again func(*job.Job) (attempt, error)) (a attempt, ok bool) {
	edited := editable(j)
	if !c.Do(edited) {
		return attempt{}, false
	}
	a, err := again(edited)
	return a, err == nil
}

// variants are the changes that can be planned and leave the same holes to try.
func variants(j *job.Job, base chance.Model, list []change, again func(*job.Job) (attempt, error)) []chance.Variant {
	var out []chance.Variant
	for _, c := range list {
		a, ok := tried(j, c, again)
		if ok && a.OK && a.Cuts && len(a.Model.Bores) == len(base.Bores) {
			out = append(out, chance.Variant{Change: c.Words, Model: a.Model})
		}
	}
	return out
}
