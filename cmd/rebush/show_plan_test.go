package main

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"rebush/plan"
)

// TestWorthShowing: every bush of the drawer is heard of, with the reason of
// the tool that cuts the seat, and no more than four ways that can be.
func TestWorthShowing(t *testing.T) {
	c := func(bush, tool string, ok bool) plan.Candidate {
		return plan.Candidate{Bush: bush, Tool: tool, Feasible: ok}
	}
	s := plan.Seat{Tool: "5 mm", Candidates: []plan.Candidate{
		c("a", "5 mm", true), c("a", "6 mm", true), c("b", "5 mm", true), c("b", "6 mm", true), c("b", "7 mm", true),
		c("a", "4 mm", false), c("c", "4 mm", false), c("c", "5 mm", false), c("c", "6 mm", false),
		c("d", "9 mm", false),
	}}
	var got []string
	for _, x := range worthShowing(s) {
		got = append(got, x.Bush+" "+x.Tool)
	}
	if d := cmp.Diff([]string{"a 5 mm", "a 6 mm", "b 5 mm", "b 6 mm", "c 5 mm", "d 9 mm"}, got); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
	for range 40 {
		s.Candidates = append(s.Candidates, c(string(rune('A'+len(s.Candidates))), "x", false))
	}
	if n := len(worthShowing(s)); n > 12 {
		t.Errorf("%d lines", n)
	}
}
