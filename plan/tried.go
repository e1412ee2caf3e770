package plan

import (
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/chance"
	"rebush/plan/job"
	"rebush/plan/seat"
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

// attempt is a plan that was made to see what a change gives.
type attempt struct {
	Plan  *Plan
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
		if ok && a.Plan.OK && a.Cuts && len(a.Model.Bores) == len(base.Bores) {
			out = append(out, chance.Variant{Change: c.Words, Model: a.Model})
		}
	}
	return out
}

// finishes are the finishes of a seat as the trials know them.
var finishes = map[seat.Finish]chance.Finish{seat.AsDelivered: chance.AsDelivered, seat.Mandrel: chance.Mandrel,
	seat.Ream: chance.Ream, seat.BoreInPlace: chance.BoreInPlace, seat.ToOwnAxle: chance.OwnAxle}

// holds are what holds a bush, as the trials know it.
var holds = map[seat.Hold]chance.Hold{seat.ByPress: chance.Pressed, seat.ByCompound: chance.Bonded, seat.ByCap: chance.Capped}

// fitted is what the trials want to know of the seat that was chosen for a
// hole; nil where it stays as it is. own are the limits of the tool by itself
// and over is the most that it cuts over them.
func fitted(b bored, own [2]float64, over float64) *chance.Fitting {
	a := b.Chosen
	if a == nil {
		return nil
	}
	m := a.Bush.Metal
	f := &chance.Fitting{
		Renews: a.Mend == seat.Renew, Hold: holds[a.HeldBy], Filled: a.Filled,
		Tool: a.Way.Name, SeatMM: [2]float64{a.SeatLow, a.SeatHigh}, OwnMM: own, OverMM: over,
		Bush: chance.Bush{ODMM: [2]float64{a.Bush.ODLow, a.Bush.ODHigh}, BoreMM: [2]float64{a.Bush.BLow, a.Bush.BHigh},
			RunoutMM: a.Bush.Runout, ELow: m.ELow, EHigh: m.EHigh, YieldMPa: [2]float64{m.Yield, m.YieldHi}, Porous: m.Porous,
			Turned: a.Bush.Turned, OnHand: a.Bush.OnHand},
		WindowMM: [2]float64{a.WindowLow, a.WinHigh}, MostUMM: a.UHigh, Stress: a.Stress, LeftMM: a.Ligament,
		Finish: finishes[a.Finish], BoreMM: a.Bore, ExpectedMM: a.Expected, MustPassMM: b.Wanted.MustPass, Live: b.Wanted.Live,
	}
	for i := range b.Answers {
		if o := &b.Answers[i]; o.Feasible && o.SeatLow > a.SeatHigh+1e-9 {
			f.Larger = append(f.Larger, chance.Larger{SeatMM: o.SeatLow, LeftMM: o.Ligament})
		}
	}
	return f
}
