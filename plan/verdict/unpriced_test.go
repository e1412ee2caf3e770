package verdict

import (
	"strings"
	"testing"

	"rebush/fits/say"
)

// A sum that leaves something out says so where it stands, in place of "all
// told": up to two things by name, more by their number.
func TestSumSaysWhatIsNotInIt(t *testing.T) {
	for said, names := range map[string][]say.Text{
		" all told":                         nil,
		" without test rod, no price given": {"test rod"},
		" without dummy axle and test rod, no price given": {"test rod", "dummy axle"},
		" without 3 things that no price is given for":     {"a", "b", "c"},
	} {
		c := tram()
		c.Other.Price = 90
		for _, n := range names {
			c.Works[1].Parts = append(c.Works[1].Parts, Part{Name: n})
		}
		r := decide(t, c)
		if r.Choice != Rebush {
			t.Fatalf("the case is none: %s", r.Choice)
		}
		words := r.Sentence.String()
		if !strings.Contains(words, " USD"+said+", against ") {
			t.Errorf("%v: %s", names, words)
		}
		if got := rowOf(t, r, Rebush).Unpriced; len(got) != len(names) {
			t.Errorf("%v: the row has %v", names, got)
		}
	}
}

// Where something has no price the repair may cost more than it says: the
// sentence does not call another truck as dear without saying that, and the note
// of the value does not tell to take the truck that the advice declines.
func TestNoteOfValueIsNoOtherAdvice(t *testing.T) {
	c := tram()
	c.Other.Price = 70 // dearer by less than a tenth: a tie
	worth := 100.0
	c.Value = &worth
	c.Works[1].Parts = append(c.Works[1].Parts, Part{Name: "test rod"})
	r := decide(t, c)
	if want := "or less once those have a price; the original is kept."; !strings.Contains(r.Sentence.String(), want) {
		t.Errorf("%s", r.Sentence)
	}
	for _, f := range r.Findings {
		if f.Rule == RuleValue && !strings.HasPrefix(f.Fix.String(), "none needed where the owner wants the original kept") {
			t.Errorf("%s", f.Fix)
		}
	}
	if !has(r, "value") {
		t.Error("nothing is said of the value")
	}
}
