package sheets

import (
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/plan"
)

// Page one counts what the sheet has: clampings, not the bench; findings as they are
// printed, two of one kind at two holes as one.
func TestCountsAreOfWhatIsPrinted(t *testing.T) {
	at := func(where string) finding.Place { return finding.Place{Where: where} }
	five := 5.0
	p := &plan.Plan{OK: true, Setups: []plan.Setup{{Name: "A", Clamping: true, Plate: "left"}, {Name: "bench"}, {Name: "press"}},
		Operations: []plan.Operation{{Minutes: &five}}}
	for _, hole := range []string{"front axle.left", "front axle.right"} {
		p.Findings.Raise(finding.Caution, "seat/heavy press", at(hole), "a press", "slowly")
		p.Findings.Raise(finding.Note, "seat/pv", at(hole), "warm", "")
	}
	p.Findings.Raise(finding.Caution, "seat/corner", at("front axle.left"), "two edges", "")
	want := "1 operation in 1 set-up, about 5 minutes beside strip and set-up; 2 cautions, 1 note."
	if got := countLine(p); got != want {
		t.Errorf("got  %q\nwant %q", got, want)
	}
}

// What is as found and what is after the work stand with their own words, and a
// line type is called by more than its dots.
func TestFoundAndAfterHaveTheirWords(t *testing.T) {
	said := map[string]bool{}
	for _, p := range workedOf(demos(t)) {
		text := wordsOf(must(Setup(p, Options{})))
		for _, want := range []string{"heelbase: found ", ", after ", "chain line, two dots: new seat"} {
			said[want] = said[want] || strings.Contains(text, want)
		}
		if strings.Contains(text, "found; after") || strings.Contains(text, "; two dots") {
			t.Error("says found; after, or two dots alone")
		}
	}
	if len(said) != 3 {
		t.Errorf("%v", said)
	}
	for want, has := range said {
		if !has {
			t.Errorf("nothing says %q", want)
		}
	}
}
