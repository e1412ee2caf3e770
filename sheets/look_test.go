package sheets

import (
	"os"
	"testing"
)

// TestLook saves every kind of paper into the folder that SHEETS_OUT names, for
// the eye.
func TestLook(t *testing.T) {
	dir := os.Getenv("SHEETS_OUT")
	if dir == "" {
		t.Skip("SHEETS_OUT names no folder")
	}
	o := Options{Large: os.Getenv("SHEETS_LARGE") != "", Units: os.Getenv("SHEETS_UNITS"), Paper: os.Getenv("SHEETS_PAPER")}
	for name, p := range demos(t) {
		if err := must(Setup(p, o)).Save(dir + "/" + name + ".pdf"); err != nil {
			t.Fatal(name, err)
		}
	}
	for name, d := range allPaper(t, samplePlan(2), o) {
		if err := d.Save(dir + "/" + name + ".pdf"); err != nil {
			t.Fatal(name, err)
		}
	}
}
