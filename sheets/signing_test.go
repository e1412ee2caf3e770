package sheets

import (
	"strings"
	"testing"
)

// TestRiskBeforeSigning: what may come of the work stands above what the owner
// signs, or is said there to stand below.
func TestRiskBeforeSigning(t *testing.T) {
	above, below := 0, 0
	for name, p := range workedOf(demos(t)) {
		for _, large := range []bool{false, true} {
			got := wordsOf(must(VerdictPage(p, Options{Large: large})))
			risk, sign := strings.Index(got, "What may come of it "), strings.Index(got, "Agreed with the owner")
			said := strings.Contains(got, "What may come of it stands below: read it before you sign.")
			switch {
			case risk < 0 || sign < 0:
			case said:
				below++
			case risk > sign:
				t.Errorf("%s, large %v: the owner signs before he has read what may come of it", name, large)
			default:
				above++
			}
		}
	}
	if above == 0 || below == 0 {
		t.Errorf("%d stand above, %d below", above, below)
	}
}
