package main

import (
	"fmt"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/verdict"
)

// showNeeds prints what is measured or bought before anything is decided, and
// what would be chosen then.
func showNeeds(pg *page, v *plan.Verdict) {
	for _, n := range v.Needs {
		s := n.Do.String()
		if n.What != "" {
			s += ": " + n.What.String()
		}
		if n.Cost != nil {
			s += ", " + money(n.Cost, v.Currency)
		}
		if n.Expected != nil {
			s += ", expected " + coarse(*n.Expected)
		}
		pg.line("  - %s", s)
	}
	switch t := v.Then; {
	case t != nil:
		pg.line("  Then: %s.", thenWords(t, v.Currency))
	case len(v.Needs) > 0:
		pg.line("  What is chosen then, nobody can tell before.")
	}
}

func thenWords(t *verdict.Then, currency string) string {
	s := string(t.Way)
	if t.Cost != nil {
		s += ", about " + money(t.Cost, currency)
	}
	if t.FirstTimeRight != nil {
		s += ", right first time " + say.InHundred(*t.FirstTimeRight).String()
	}
	return s
}

// showTried prints changes with which the job was planned again. already says
// that it may be machined as it stands.
func showTried(pg *page, list []finding.Tried, currency string, already bool) {
	for _, t := range list {
		pg.line("  - %s", t.Said(currency, already))
	}
}

// showWays prints the ways side by side, that of this plan marked.
func showWays(pg *page, p *plan.Plan) {
	currency := ""
	if p.Verdict != nil {
		currency = p.Verdict.Currency
	}
	number := func(f *float64, format string) string {
		if f == nil {
			return "-"
		}
		return fmt.Sprintf(format, *f)
	}
	share := func(f *float64) string {
		if f == nil {
			return "-"
		}
		return percent(*f)
	}
	yes := map[bool]string{true: "yes", false: "no"}
	var rows [][]string
	for _, w := range p.Ways {
		mark := "  "
		if w.Way == p.Goes() {
			mark = "> "
		}
		rows = append(rows, []string{mark + string(w.Way), yes[w.OK], yes[w.Cures], money(w.Cost, currency),
			number(w.Hours, "%.1f"), share(w.FirstTimeRight), share(w.Lost)})
	}
	pg.table([]string{"  way", "possible", "cures", "cost", "hours", "right first time", "lost"}, rows)
	pg.line("")
	for _, w := range p.Ways {
		pg.pair(string(w.Way), "%s", wayWordsOf(w))
	}
	pg.flush()
}

// wayWordsOf says why a way cannot be, or what it keeps and what is lost by it.
func wayWordsOf(w verdict.WayRow) string {
	var s []string
	switch {
	case w.WhyNot != "" && w.OK:
		s = append(s, w.WhyNot.String())
	case w.WhyNot != "":
		s = append(s, "no: "+w.WhyNot.String())
	}
	if w.OK {
		if len(w.Keeps) > 0 {
			s = append(s, "keeps "+say.Join(", ", w.Keeps...).String())
		}
		if len(w.Loses) > 0 {
			s = append(s, "loses "+say.Join(", ", w.Loses...).String())
		}
	}
	return strings.Join(s, "; ")
}
