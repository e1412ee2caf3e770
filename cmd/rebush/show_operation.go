package main

import (
	"fmt"
	"strings"

	"rebush/fits/dim"
	"rebush/fits/say"
	"rebush/plan"
)

// showOperation prints one operation: what to gauge first, what to do, and how.
func showOperation(pg *page, op plan.Operation, u dim.Units) {
	if op.GaugeFirst != "" {
		pg.line("     GAUGE FIRST [ ] %s", op.GaugeFirst)
	}
	pg.line("%3d  %s", op.Number, op.Do)
	var facts []string
	add := func(format string, a ...any) { facts = append(facts, fmt.Sprintf(format, a...)) }
	if op.Tool != "" {
		add("%s", op.Tool)
	}
	if op.DialMM != nil {
		add("dials %s", place(op.DialMM, u))
	}
	if op.RPM != nil {
		s := fmt.Sprintf("%.0f rpm", *op.RPM)
		if op.RPMIdeal != nil {
			s += fmt.Sprintf(" (ideal %.0f)", *op.RPMIdeal)
		}
		add("%s", s)
	}
	if op.FeedWords != "" {
		add("%s", op.FeedWords)
	}
	if op.DepthMM.Given() {
		add("depth %s", say.Size(op.DepthMM, 1).About().In(u)) // as on paper
	}
	if op.LimitsMM != nil {
		add("limits %s", ranged(op.LimitsMM, u))
	}
	if op.Go != "" || op.NoGo != "" {
		add("go %s, no-go %s", op.Go, op.NoGo)
	}
	if op.Lubricant != "" {
		add("%s", op.Lubricant)
	}
	if op.Note != "" {
		add("%s", op.Note)
	}
	pg.prose("     ", 95, strings.Join(facts, "; "))
}

// showSafety prints what can hurt in an operation and was not said before it.
func showSafety(pg *page, p *plan.Plan, i int) {
	lines, at := p.FreshSafety(i)
	var words []string
	for _, l := range lines {
		words = append(words, l.Words)
	}
	if at > 0 {
		words = append(words, fmt.Sprintf("as at %d", at))
	}
	if len(words) == 0 {
		return
	}
	pg.prose("     ", 95, "SAFETY "+strings.Join(words, "; "))
}
