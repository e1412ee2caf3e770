package sheets

import (
	"rebush/plan"
	"rebush/plan/verdict"
	"rebush/sheets/draw"
)

// needs are what is measured or bought before anything is decided, each with a
// box, a line to write on and what it is expected to be, and the way that would
// be chosen then.
func needs(p *paper, v *plan.Verdict) {
	if v == nil || len(v.Needs) == 0 {
		return
	}
	p.follow("What is needed first", "needs")
	for _, n := range v.Needs {
		b := p.block()
		s := sentence(n.Do.String())
		if n.What != "" {
			s += ": " + n.What.String()
		}
		if n.Cost != nil {
			s += ". Cost: " + cost(*n.Cost, v.Currency)
		}
		b.ticked(ended(s), draw.Regular)
		b.y -= 1
		line := []blankLine{{"done or found", "", 1.4}, {"date", "", 0.8}}
		if n.Expected != nil {
			line[0].name = "expected " + number(*n.Expected) + ", found"
		}
		b.blanks(b.st.tick+3.5, b.Width-b.st.tick-3.5, line)
		p.tight(b)
	}
	b := p.block()
	b.para(thenLine(v), draw.Bold, p.st.body)
	p.add(b)
}

// thenLine is what would be chosen once the needs are met.
func thenLine(v *plan.Verdict) string {
	t := v.Then
	if t == nil {
		return "What is chosen then nobody can tell before."
	}
	s := "If it comes out so: " + t.Way.Owner()
	if t.Cost != nil {
		s += ", about " + cost(*t.Cost, v.Currency) + verdict.AllTold(t.Unpriced).String()
	}
	if t.FirstTimeRight != nil {
		s += ", right first time " + percent(*t.FirstTimeRight) + ", an estimate"
	}
	return s + "."
}
