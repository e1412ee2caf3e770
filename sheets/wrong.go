package sheets

import (
	"strconv"
	"strings"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/route"
	"rebush/plan/seat"
	"rebush/sheets/draw"
)

// wrong says what to do when a step goes wrong, from the figures of the plan.
func wrong(p *paper, pl *plan.Plan) {
	lines := wrongLines(p, pl)
	if len(lines) == 0 {
		return
	}
	p.part("If it goes wrong", "wrong", false, func() {
		for _, l := range lines {
			b := p.block()
			b.y = 0.6
			b.st.mind = b.st.aside() + 0.5
			b.flowing([]run{{sentence(b.bench.say(l.what)) + ":", draw.Bold}, {l.do, draw.Regular}}, b.Width, 0)
			p.tight(b)
		}
	})
}

type wrongLine struct{ what, do string }

// wrongLines groups bores to which the same words apply.
func wrongLines(p *paper, pl *plan.Plan) []wrongLine {
	var out []wrongLine
	bores := map[wrongLine][]string{}
	add := func(bore, what, do string) {
		k := wrongLine{what, do}
		if bores[k] == nil {
			out = append(out, k)
		}
		bores[k] = append(bores[k], bore)
	}
	large := pl.IfLarge()
	for _, s := range pl.Seats {
		if s.SeatMM == nil || s.Bush == "" {
			continue
		}
		if s.HeldBy == "cap" {
			capWrong(p, pl, s, add)
			continue
		}
		if s.SeatMM.Max.Given() {
			_, top := say.Ends(*seatLimits(pl, s))
			add(s.Bore, "seat larger than "+top.In(p.u.said()), sentence(stillHolds(p, s)+"do not press the bush")+
				". Give the size to who planned this; cut nothing before the rework sheet is there. "+ifLarge(p, large, s.Bore))
		}
		if _, ok := pressOf(pl, s.Bore); ok && s.HeldBy == "compound" {
			add(s.Bore, "the bush does not slide in",
				"Do not press it: the compound needs its gap. Look for a burr, measure bush and seat.")
		} else if ok {
			add(s.Bore, "the bush goes in harder than its operation expects",
				"Stop where the operation says halt. Draw the bush out again, look for a burr or a bush that went in askew, and measure the seat.")
			add(s.Bore, "the bush pushes in by hand, or nearly", "It will not hold by the press alone. "+secondHold(s))
		}
		boreWrong(p, s, "press it out towards the side it came from", add)
	}
	for i, k := range out {
		out[i].what = strings.Join(bores[k], ", ") + ": " + k.what
	}
	return append(sameCure(out), causes(pl)...)
}

// sameCure puts together what is done alike.
func sameCure(list []wrongLine) []wrongLine {
	var out []wrongLine
	at := map[string]int{}
	for _, l := range list {
		if i, ok := at[l.do]; ok {
			out[i].what += "; " + l.what
			continue
		}
		at[l.do] = len(out)
		out = append(out, l)
	}
	return out
}

// capWrong is what can go wrong with a bearing under a cap: nothing is cut and
// nothing pressed there.
func capWrong(p *paper, pl *plan.Plan, s plan.Seat, add func(bore, what, do string)) {
	for _, op := range pl.Operations {
		if op.Bore == s.Bore && op.Kind == route.KindGauge && op.LimitsMM != nil {
			low, high := say.Ends(*op.LimitsMM)
			add(s.Bore, "seat under "+low.In(p.u.said())+" or over "+high.In(p.u.said()),
				"Cut nothing. Look for dirt or a burr and measure again; then fit a bearing whose outside has its play in the seat as it is.")
			break
		}
	}
	boreWrong(p, s, "take it out from under its cap", add)
}

// boreWrong is what to do about a finished bore out of its limits.
func boreWrong(p *paper, s plan.Seat, out string, add func(bore, what, do string)) {
	if s.BoreMM != nil && s.BoreMM.Min.Given() && s.BoreMM.Max.Given() {
		low, high := say.Ends(*s.BoreMM)
		add(s.Bore, "bore under "+low.In(p.u.said())+" or over "+high.In(p.u.said()),
			"Under: size it again, one small step at a time, and gauge after each. Over: the bush is spoilt; "+out+" and fit another of its kind.")
	}
}

// ifLarge says what is done where a seat comes out too large, as it was planned
// from there; all is nil where nobody asked.
func ifLarge(p *paper, all map[string]plan.Next, bore string) string {
	n, ok := all[bore]
	if !ok && all == nil {
		return ""
	}
	if !ok {
		return "As large as that nothing of this shop goes on from it."
	}
	s := sentence(say.Printed(n.Do, p.u.said()).String())
	if n.FirstTimeRight != nil {
		s += " (first time right " + percent(*n.FirstTimeRight) + ")"
	}
	return s + "."
}

// stillHolds is what is done with a seat that is too large for its limits by less
// than the bushes differ among themselves: one that measures large enough still has
// its press.
func stillHolds(p *paper, s plan.Seat) string {
	u := s.InterferenceUM
	if s.HeldBy != string(seat.ByPress) || s.Mend == seat.MadeToFit || u == nil || u.Min == nil || u.Max == nil || *u.Min <= 0 {
		return ""
	}
	return "Measure the bushes by micrometer: one that is still " +
		say.Limits(*u.Min/1000, *u.Max/1000, 3).In(p.u.said()) + " larger than the seat as made goes in as planned. None is: "
}

// pressOf is the operation that puts the bush of a bore in.
func pressOf(pl *plan.Plan, bore string) (plan.Operation, bool) {
	for _, op := range pl.Operations {
		if op.Kind == route.KindPress && op.Bore == bore {
			return op, true
		}
	}
	return plan.Operation{}, false
}

func secondHold(s plan.Seat) string {
	if s.Second != "" {
		return "The plan has a second hold: " + s.Second + ". Do not run it without."
	}
	return "Press it out, measure seat and bush, and take a bush that is larger outside."
}

// causes repeats what the trials failed on, most often first.
func causes(pl *plan.Plan) []wrongLine {
	if pl.Chance == nil {
		return nil
	}
	var each []string
	do := ""
	for i, c := range pl.Chance.Causes {
		if i == 3 || c.Share < 0.05 {
			break
		}
		each = append(each, c.Cause.String()+" ("+strconv.Itoa(int(c.Share*100+0.5))+")")
		if better := gains(pl.Chance); i == 0 && len(better) > 0 {
			m := better[0]
			do = "What would help most: " + m.Change.String() + " (first time right " + percent(m.FirstTimeRight) + ")."
		}
	}
	if len(each) == 0 {
		return nil
	}
	return []wrongLine{{"Most likely to go wrong", "Of each 100 trials that went wrong so many failed here first: " +
		strings.Join(each, "; ") + ". " + do}}
}
