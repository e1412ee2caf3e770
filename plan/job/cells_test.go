package job

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rebush/fits/table"
	"rebush/testdata"
)

// TestCells holds every cell of the tables of this room to what it was when
// somebody last looked at it, so that no slip of the hand goes unseen. What the
// cells mean is held by the tests of the keys, the questions and the example.
func TestCells(t *testing.T) {
	files, err := filepath.Glob("data/*.csv")
	if err != nil || len(files) < 5 {
		t.Fatalf("%v, %v", files, err)
	}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		tab, err := table.Parse(strings.TrimSuffix(filepath.Base(f), ".csv"), f, data)
		if err != nil {
			t.Fatal(err)
		}
		testdata.HoldCells(t, "testdata/tables", tab, *update)
	}
}
