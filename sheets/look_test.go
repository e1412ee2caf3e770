package sheets

import (
	"os"
	"testing"
)

func TestLook(t *testing.T) {
	dir := os.Getenv("SHEETS_OUT")
	if dir == "" {
		t.Skip("SHEETS_OUT names no folder")
	}
	d, err := Setup(samplePlan(2), Options{Large: os.Getenv("SHEETS_LARGE") != "", Units: os.Getenv("SHEETS_UNITS")})
	if err != nil {
		t.Fatal(err)
	}
	if err := d.Save(dir + "/setup.pdf"); err != nil {
		t.Fatal(err)
	}
}
