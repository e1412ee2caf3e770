package plan

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/habit"
	"rebush/plan/inspect"
	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/survey"
)

// Rules of what a past job tells of its shop.
const (
	RuleNothingMade finding.Rule = "learn/nothing made"
	RuleOtherPlan   finding.Rule = "learn/other plan"
	RuleSlip        finding.Rule = "learn/slip"
)

// waysOf are the ways of making a seat of which a shop has habits.
var waysOf = map[seat.Kind]habit.Way{seat.Reamer: habit.Reamed, seat.BoringHead: habit.Bored, seat.EndMill: habit.Milled}

// Past is one past job: its sizes as made, less what its plan without them
// expected. A size that tells nothing of the shop is left out and said. Errors
// are those of Make.
func Past(j *job.Job, o Options) (habit.Job, finding.List, error) {
	out, said := habit.Job{}, finding.List{}
	if len(j.Made) == 0 {
		said.Raise(finding.Note, RuleNothingMade, j.PlaceAt("", "made"), "the job has no sizes as made: it tells nothing", "")
		return out, said, nil
	}
	before := *j
	before.Made = nil
	w, c, err := ready(&before, nil)
	if err != nil {
		return out, nil, err
	}
	t := tour(surveyedGround(w, c, &before), o.trials())
	_, judged, err := t.judged(nil)
	if err != nil {
		return out, nil, err
	}
	s := shown(t, judged, o.Way)
	p := past{w: w, j: j, of: map[string]bored{}, clamping: map[string]string{}, rules: habit.RulesOf(w.rules)}
	for _, b := range boredOf(s.of.Survey.Holes, s.of.Target, s.of.Seats) {
		p.of[b.Name()] = b // also where it is advised to leave it now: it was made
	}
	for _, x := range s.of.Route.Setups {
		for _, b := range x.Bores {
			if x.Clamping {
				p.clamping[b] = x.Name
			}
		}
	}
	for _, m := range j.Made {
		h := p.hole(m, &said)
		if h.Seat != nil || h.Clearance != nil || h.Place != nil {
			out.Holes = append(out.Holes, h)
		}
	}
	return out, said, nil
}

// past is a past job with what its plan has of every hole.
type past struct {
	w        *books
	j        *job.Job
	of       map[string]bored
	clamping map[string]string
	rules    habit.Rules
}

// hole is one hole as it was made, less what the plan expected.
func (p *past) hole(m job.Made, said *finding.List) habit.Hole {
	b := p.of[m.Bore]
	a := b.Chosen
	out := habit.Hole{Bore: m.Bore}
	at := p.j.PlaceAt(m.Bore, "made/"+m.Bore)
	if a == nil {
		said.Raise(finding.Caution, inspect.RuleMade, at, "its plan does not bush this bore: its sizes tell nothing",
			"plan the way that was gone with --way, or see what stops the plan")
		return out
	}
	if m.With != "" {
		if _, err := gaugeOf(p.w.instr, m.With, inspect.Seat); err != nil {
			said.Raise(finding.Caution, survey.RuleInstrument, at, say.F("%v", err),
				"name it under instruments in the shop file with its u")
		}
	}
	seatOff := math.NaN() // of the seat as made from the middle that was planned, mm
	if m.Seat.Given() && a.Way.Kind.Cuts() {
		g, _ := gaugeOf(p.w.instr, m.With, inspect.Seat)
		size := m.Seat.Float() - g.BiasMM
		if over := size - a.SetSize(); p.belongs("seat", size, over, at, said) {
			out.Way, out.Seat = waysOf[a.Way.Kind], &habit.Over{Um: 1000 * over, UUm: 1000 * g.UMM}
			if a.Way.Kind == seat.Reamer {
				out.Reamer = a.Way.Tool
			}
			seatOff = size - (a.SeatLow+a.SeatHigh)/2
		}
	}
	if m.Diameter.Given() {
		g, _ := gaugeOf(p.w.instr, m.With, inspect.Bore)
		size := m.Diameter.Float() - g.BiasMM
		if over := size - (a.Expected[0]+a.Expected[1])/2 - opens(a, seatOff); p.belongs("bore", size, over, at, said) {
			out.Clearance = &habit.Over{Um: 1000 * over, UUm: 1000 * g.UMM}
		}
	}
	if m.Centre.Given() && a.Way.Kind.Cuts() {
		out.Place = p.off(m, b)
	}
	return out
}

// opens is by how much the bore of a bush comes out larger because its seat did,
// mm: the part of that which would have closed it. A bore that is sized after
// the press does not know its seat.
func opens(a *seat.Answer, seatOff float64) float64 {
	width := a.UHigh - a.ULow
	if math.IsNaN(seatOff) || a.Finish != seat.AsDelivered || a.HeldBy != seat.ByPress || width <= 0 {
		return 0
	}
	return seatOff * (a.Closure[1] - a.Closure[0]) / width
}

// belongs says whether a size as made can be one of this plan.
func (p *past) belongs(what string, size, over float64, at finding.Place, said *finding.List) bool {
	if math.Abs(over) <= p.rules.OtherMM {
		return true
	}
	said.Raise(finding.Caution, RuleOtherPlan, at, say.F("the %s as made, %v, is %v from what its plan expects: it was made "+
		"by another plan, or its figure is a slip, and tells nothing", what, say.MM(size, 3), say.MM(math.Abs(over), 3)),
		"plan the way that was gone with --way, or correct the figure").Against(dim.Sig9(size), dim.Sig9(size-over), "mm")
	return false
}

// off is a place as made less its target. Of a bore whose bush was pressed in
// and not bored in place, what the bush runs out counts as doubt.
func (p *past) off(m job.Made, b bored) *habit.Off {
	g, _ := gaugeOf(p.w.instr, m.With, inspect.Place)
	to, u := seatPlace(b), g.UMM
	if m.Diameter.Given() {
		to = b.At
		if b.Chosen.Finish != seat.BoreInPlace {
			u = math.Hypot(u, bushRunout(p.w, p.j, b.Chosen.Bush)/2/math.Sqrt2)
		}
	}
	at := m.Centre.Float()
	return &habit.Off{MM: [2]float64{at[0] - to[0], at[1] - to[1]}, UMM: u, Clamping: p.clamping[m.Bore]}
}

// Prior is what the rules say of a shop, before any record, and the rules by
// which it learns.
func Prior(sh *job.Shop) (habit.Habits, habit.Rules, error) {
	w, err := booksFor(sh, nil)
	if err != nil {
		return habit.Habits{}, habit.Rules{}, err
	}
	return habit.Ruled(w.rules, machineOf(w, sh)), habit.RulesOf(w.rules), nil
}

// With is what a shop does by the rules with another record in the place of its
// own.
func With(sh *job.Shop, rec *job.Record) habit.Habits {
	other := *sh
	other.Record = rec
	w := &books{rules: sh.Rules}
	return habitsOf(w, &other)
}
