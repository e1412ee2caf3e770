package mesh_test

import (
	"testing"

	"rebush/fits/table"
	"rebush/plan/checked"
	"rebush/testdata"
)

// TestRows holds every row of mesh.csv: printed, remembered and our own.
func TestRows(t *testing.T) {
	figures := checked.Of("mesh.csv", testdata.All[checked.Row](t, "mesh.csv"), table.BuiltIn())
	if len(figures) < 60 {
		t.Errorf("%d figures, want 60", len(figures))
	}
	for _, f := range figures {
		if !f.Agrees() {
			t.Error(f)
		}
	}
}
