package plan_test

import (
	"os"
	"strings"
	"testing"
)

// tableWith is a built-in table with rows more, as a shop would write it.
func tableWith(t *testing.T, name, rows string) string {
	t.Helper()
	b, err := os.ReadFile("../fits/table/data/" + name + ".csv")
	if err != nil {
		t.Fatal(err)
	}
	return strings.TrimRight(string(b), "\n") + "\n" + rows
}

// TestRecipeMaterial follows "How to add" for a material: two tables, and a bush
// of it is seated, cut, explained and called by its other name.
func TestRecipeMaterial(t *testing.T) {
	s := demo(t, "plain.yaml").with("material: sintered bronze", "material: bell metal").
		inShop("paper: A4", "paper: A4\ntables: {materials_kinds: kinds.csv, materials: figures.csv}")
	s.files["kinds.csv"] = tableWith(t, "materials_kinds",
		`tin bronze of ours,bell metal,,solid bronze,"bearing bronze (cast, leaded)",yes,made up for this test`+"\n")
	s.files["figures.csv"] = tableWith(t, "materials", strings.Join([]string{
		"tin bronze of ours,E,97,97,GPa,,,made up for this test",
		"tin bronze of ours,poisson,0.34,0.34,-,,,made up for this test",
		"tin bronze of ours,yield_tension,140,140,MPa,,,made up for this test",
		"tin bronze of ours,expansion,17.5,17.5,1e-6/K,,,made up for this test",
		"tin bronze of ours,pv_limit,2,2,MPa m/s,,,made up for this test",
	}, "\n")+"\n")
	p := s.plan()
	seat := seatOf(t, p, "front axle.left")
	if !p.OK || seat.Bush != "drawer 7" || seat.PressureMPa == nil || !(*seat.PressureMPa.Max > 0) {
		t.Fatalf("may be machined %v, bush %q, pressure %v: %v", p.OK, seat.Bush, seat.PressureMPa, p.Findings)
	}
	e, _ := p.Book.Get("seats/front axle.left/bush_e_high")
	if e.Value != 97000 || !strings.Contains(e.Source, "made up for this test") {
		t.Errorf("modulus of the bush: %v by %q", e.Value, e.Source)
	}
	if len(p.Operations) == 0 {
		t.Error("nothing is cut")
	}
}
