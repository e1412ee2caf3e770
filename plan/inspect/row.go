package inspect

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
)

// RuleMade is raised of sizes as made that cannot be set against a plan.
const RuleMade finding.Rule = "inspect/made"

// Row sets one made size against the plan.
type Row struct {
	Bore         string       `json:"bore"`
	What         What         `json:"what"`
	MadeMM       dim.Gauged   `json:"made_mm"`
	LimitsMM     *dim.MMRange `json:"limits_mm"`      // what works; null: nothing does, with the others as they are
	ToolLimitsMM *dim.MMRange `json:"tool_limits_mm"` // what the tool or the machine leaves
	GuardUM      *float64     `json:"guard_um"`
	Result       Result       `json:"result"`
	By           []By         `json:"by"` // what a place was judged by
	Next         []Next       `json:"next"`

	Rule say.Text `json:"decision_rule"`
}

// By is one thing that a place was judged by, with all places as they are.
type By struct {
	What     say.Text     `json:"what"`
	MadeMM   dim.Gauged   `json:"made_mm"`
	LimitsMM *dim.MMRange `json:"limits_mm"`
	GuardUM  *float64     `json:"guard_um"`
	Result   Result       `json:"result"`
	Decides  bool         `json:"decides"` // it counts against this hole
	Words    say.Text     `json:"words"`
}

// Next is one way on from a size as made: what is done, with which bush, and how
// likely the whole job comes right with it, planned so.
type Next struct {
	Do             say.Text `json:"do"`
	Bush           string   `json:"bush"`
	FirstTimeRight *float64 `json:"first_time_right"`
}

// Of sets the size of a seat or of a bore against what works. A bore is judged
// by the clearance that it leaves its journal, so that the doubt of both counts.
// Errors: those of Decide.
func Of(h Hole, made job.Made, what What, g Gauge, s Shop) (Row, error) {
	size, limits, u := made.Seat.Float(), h.Seat, g.UMM
	if what == Bore {
		size, limits, u = made.Diameter.Float(), h.Bore, math.Hypot(g.UMM, h.UJournalMM)
	}
	m := Made{MM: size - g.BiasMM, Low: limits.Works[0], High: limits.Works[1], UMM: u, GuardK: s.GuardK}
	d, err := Decide(m)
	if err != nil {
		return Row{}, err
	}
	row := Row{Bore: h.Name, What: what, MadeMM: dim.Size(size), LimitsMM: dim.Limits(limits.Works[0], limits.Works[1]),
		GuardUM: dim.Number(d.GuardMM * 1000), Result: d.Result, By: []By{}, Next: []Next{}, Rule: d.Rule}
	if limits.Tool != nil {
		row.ToolLimitsMM = dim.Sizes(limits.Tool[0], limits.Tool[1])
	}
	if d.Result == CannotTell {
		row.Next = append(row.Next, h.measure(what, m)...)
	}
	return row, nil
}

// Places sets the places of a truck against what works, all together: a row for
// each that was gauged. how says of each hole what the plan has. Errors: those
// of Decide.
func Places(places []Site, checks []Check, s Shop, how func(name string) Hole) ([]Row, error) {
	all, err := together(places, checks, s.GuardK)
	if err != nil {
		return nil, err
	}
	var out []Row
	for i, p := range places {
		if p.Gauged {
			out = append(out, placeRow(i, places, all, s, how(p.Name)))
		}
	}
	return out, nil
}

func placeRow(i int, places []Site, all []Outcome, s Shop, h Hole) Row {
	p := places[i]
	row := Row{Bore: p.Name, What: Place, MadeMM: dim.Size(math.Hypot(p.At[0]-p.Target[0], p.At[1]-p.Target[1])),
		ToolLimitsMM: dim.Sizes(0, h.OffMM), Result: worst(i, all), By: []By{}, Next: []Next{}}
	if low, high, ok := reach(i, places, all, false); ok {
		row.LimitsMM = dim.Limits(low, high)
		row.GuardUM = dim.Number(1000 * high)
		if _, sure, ok := reach(i, places, all, true); ok {
			row.GuardUM = dim.Number(1000 * (high - sure))
		}
	}
	for k := range all {
		o := &all[k]
		if !o.hangsOn(i) {
			continue
		}
		if !o.Tells {
			row.Rule = o.Decision.Rule
		}
		by := By{What: o.Name, MadeMM: dim.Size(o.MM), LimitsMM: &dim.MMRange{}, GuardUM: dim.Number(o.Decision.GuardMM * 1000),
			Result: o.Decision.Result, Decides: o.concerns(i)}
		if !math.IsInf(o.Low, -1) {
			by.LimitsMM.Min = dim.LimitUp(o.Low)
		}
		if !math.IsInf(o.High, 1) {
			by.LimitsMM.Max = dim.LimitDown(o.High)
		}
		if o.Words != nil {
			by.Words = o.Words(o.MM)
		}
		row.By = append(row.By, by)
	}
	if row.Result == CannotTell {
		row.Next = append(row.Next, h.better(i, places, all, s)...)
	}
	return row
}
