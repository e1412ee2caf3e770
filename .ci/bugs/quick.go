package main

import (
	"slices"
	"strings"
)

// slow are tests that go over many trucks. A small sample goes without them.
const slow = "TestCarried.*|TestEveryKeyMayBeMissing|TestFiguresFarOff|TestFresh.*|TestHazardsOf.*|TestMeasuringLess.*|" +
	"TestMixedJobs|TestRoutesOfTrucks|TestRunnerUpIsTrue|TestTrucks.*|TestUnitsMake.*|TestWorld.*|TestDrift.*"

// everywhere are the tests that see nearly all of the program, quickest first.
var everywhere = []batch{
	{room: "plan", names: []string{"TestPlans", "TestRouteText"}, seconds: 10},
	{room: "cmd/rebush", names: []string{"TestScripts"}, seconds: 10},
	{room: "sheets", names: []string{"TestDemoText", "TestSampleText"}, seconds: 10},
}

// quickBatches are the tests of a bug in a small sample, where it was not found
// out what each test reaches: all of its own room, then those that see nearly
// everything.
func (g ground) quickBatches(b bug) []batch {
	rooms := []string{"fits/table", "plan/job", "feeds/drills", "feeds/cutting", "fits/material", "fits/limits"}
	if b.code != nil {
		rooms = []string{b.code.room}
	}
	var out []batch
	for _, r := range rooms {
		if slices.Contains(g.rooms, r) && !slices.ContainsFunc(everywhere, func(e batch) bool { return e.room == r }) {
			out = append(out, batch{room: r, names: []string{".*"}, seconds: 10})
		}
	}
	out = append(out, everywhere...)
	for _, e := range everywhere {
		if b.code != nil && e.room == b.code.room {
			out = append(out, batch{room: e.room, names: []string{".*"}, seconds: 30})
		}
	}
	return out
}

// houses are the tests that look at the source, which is changed; they fail
// without a bug.
const houses = "TestDocsNameRoomsAndModules|TestHouse.*"

func skipped(quick bool) string {
	if quick {
		return strings.Join([]string{slow, houses}, "|")
	}
	return houses
}
