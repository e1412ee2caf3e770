package sheets

import "testing"

// A bush that goes by the place it lies in is the bush from there; one that goes by
// a number of its own keeps it.
func TestBushIsFromItsDrawer(t *testing.T) {
	for s, want := range map[string]string{
		"press bush drawer 6 into each":       "press the bush from drawer 6 into each",
		"bush box A for front axle":           "the bush from box A for front axle",
		"then press bush drawer 4 into it":    "then press the bush from drawer 4 into it",
		"press bush K 12 into each":           "press bush K 12 into each",
		"the bush drawer stays shut":          "the bush drawer stays shut",
		"try the bush from box A in the hole": "try the bush from box A in the hole",
	} {
		if got := (bench{}).say(s); got != want {
			t.Errorf("%q: got %q", s, got)
		}
	}
}
