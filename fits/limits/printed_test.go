package limits_test

import (
	"testing"

	"rebush/fits/table"
	"rebush/plan/checked"
	"rebush/testdata"
)

// TestPublished holds every row of checks/fits.csv and checks/reaming.csv,
// exactly; the row names where it is printed.
func TestPublished(t *testing.T) {
	for name, want := range map[string]int{"fits.csv": 129, "reaming.csv": 40} {
		figures := checked.Of(name, testdata.Rows[checked.Row](t, "checks/"+name), table.BuiltIn())
		if len(figures) != want {
			t.Errorf("%s: %d figures, want %d", name, len(figures), want)
		}
		for _, f := range figures {
			if !f.Agrees() {
				t.Error(f)
			}
		}
	}
}
