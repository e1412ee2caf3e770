package survey_test

import (
	"testing"

	"rebush/fits/table"
	"rebush/plan/checked"
	"rebush/testdata"
)

// TestPrintedCircles holds the answers that were printed with their points, to
// half the last digit printed, and those remembered.
func TestPrintedCircles(t *testing.T) {
	figures := 0
	for _, kind := range []string{"checks", "remembered"} {
		for _, f := range checked.Of("circles.csv", testdata.Rows[checked.Row](t, kind+"/circles.csv"), table.BuiltIn()) {
			figures++
			if !f.Agrees() {
				t.Error(f)
			}
		}
	}
	if figures != 28 {
		t.Errorf("%d figures, want 28", figures)
	}
}
