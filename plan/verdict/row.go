package verdict

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
)

// Row is the verdict as it is printed.
type Row struct {
	Choice   Name      `json:"choice"`
	Sentence say.Text  `json:"sentence"`
	Currency string    `json:"currency"`
	RunnerUp *RunnerUp `json:"runner_up"`
	Bores    []BoreWay `json:"bores"`
	Options  []Option  `json:"options"`

	Cures bool            `json:"cures"` // the choice cures what is the matter
	Needs []Need          `json:"needs"` // what is measured or bought before anything is decided
	Then  *Then           `json:"then"`  // what would be chosen then; nil where nobody can expect it
	Tried []finding.Tried `json:"tried"` // changes with which the whole job was planned again
}

// Need is one thing to measure or to buy first, with what it costs and the
// figure that it is expected to give.
type Need struct {
	Do       say.Text `json:"do"`
	What     say.Text `json:"what"`
	Cost     *float64 `json:"cost"`     // nil where no price is known
	Expected *float64 `json:"expected"` // nil where nobody can expect one
}

// Then is the way that would be chosen once the needs are met.
type Then struct {
	Way            Name     `json:"way"`
	Cost           *float64 `json:"cost"`
	FirstTimeRight *float64 `json:"first_time_right"`

	Unpriced []say.Text `json:"unpriced"` // what is not in the cost, since no price is given
}

// WayRow is one way of the truck as its own plan makes it.
type WayRow struct {
	Way            Name       `json:"way"`
	OK             bool       `json:"ok"`    // free of stops
	Cures          bool       `json:"cures"` // what is the matter
	WhyNot         say.Text   `json:"why_not"`
	WhyOwner       say.Text   `json:"why_owner"` // the same for an owner
	Cost           *float64   `json:"cost"`      // expected; nil where no rate is given or it cannot be done
	Hours          *float64   `json:"hours"`     // planned
	FirstTimeRight *float64   `json:"first_time_right"`
	Lost           *float64   `json:"lost"` // share of such jobs that end in a lost part
	Loses          []say.Text `json:"loses"`
	Keeps          []say.Text `json:"keeps"`
	Bill           []Charge   `json:"bill"` // what the cost is made of; empty without a rate

	Unpriced []say.Text `json:"unpriced"` // what is not in the cost, since no price is given
}

// RunnerUp is the second-best option and what would make it win.
type RunnerUp struct {
	Name   Name     `json:"name"`
	WinsIf say.Text `json:"wins_if"`
}

// BoreWay is the way that one bore goes under the choice.
type BoreWay struct {
	Bore string `json:"bore"`
	Way  Name   `json:"way"`
}

// Option is one of the ways that the job can go, with its figures.
type Option struct {
	Name     Name       `json:"name"`
	Feasible bool       `json:"feasible"` // can be done and cures what is the matter
	WhyNot   say.Text   `json:"why_not"`
	Cost     *float64   `json:"cost"`   // expected; nil where no rate is given or it cannot be done
	Hours    *float64   `json:"hours"`  // planned
	Chance   *float64   `json:"chance"` // of coming right first time
	Loses    []say.Text `json:"loses"`
	Keeps    []say.Text `json:"keeps"`
}

// Row is the result with money and hours to a hundredth and chances to a
// millionth.
func (r Result) Row(currency string) *Row {
	out := &Row{Choice: r.Choice, Sentence: r.Sentence, Currency: currency, RunnerUp: r.RunnerUp,
		Bores: append([]BoreWay{}, r.Bores...), Cures: r.Cures, Needs: append([]Need{}, r.Needs...), Then: r.Then,
		Tried: append([]finding.Tried{}, r.Tried...)}
	for i := range out.Needs {
		out.Needs[i].Cost = rounded(out.Needs[i].Cost, 100)
	}
	if t := r.Then; t != nil {
		out.Then = &Then{Way: t.Way, Cost: rounded(t.Cost, 100), FirstTimeRight: rounded(t.FirstTimeRight, 1e6),
			Unpriced: append([]say.Text{}, t.Unpriced...)}
	}
	for _, w := range r.Rows() {
		out.Options = append(out.Options, Option{Name: w.Way, Feasible: w.OK && w.Cures, WhyNot: w.WhyNot,
			Cost: w.Cost, Hours: w.Hours, Chance: w.FirstTimeRight, Loses: w.Loses, Keeps: w.Keeps})
	}
	return out
}

// Rows are the ways as they are printed.
func (r Result) Rows() []WayRow {
	out := make([]WayRow, len(r.Ways))
	for i, w := range r.Ways {
		w.Cost, w.Hours = rounded(w.Cost, 100), rounded(w.Hours, 100)
		w.Bill = billRounded(w.Bill, w.Cost)
		w.FirstTimeRight, w.Lost = rounded(w.FirstTimeRight, 1e6), rounded(w.Lost, 1e6)
		out[i] = w
	}
	return out
}

func rounded(v *float64, per float64) *float64 {
	if v == nil {
		return nil
	}
	return dim.Number(math.Round(dim.Sig9(*v*per)) / per)
}
