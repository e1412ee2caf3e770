package sheets

import (
	"math"
	"strings"
	"testing"

	"rebush/plan"
	"rebush/plan/job"
)

// jigPlan is the sample on a drill press with a jig pinned in two holes.
func jigPlan() *plan.Plan {
	p := samplePlan(2)
	p.Job.Shop.MachineKind, p.Job.Shop.Jig = "drill press", "pinned"
	p.Job.Chassis.Features = []job.Feature{{Name: "front frame hole", At: pt("4", "15"), Diameter: mm("3.2")},
		{Name: "rear frame hole", At: pt("54", "15"), Diameter: mm("3.2")}}
	return p
}

// TestJigPlate reads the jig plate back from the PDF: its bush hole and its pins
// stand as on the chassis, and on its other face mirrored; slip bushes and pins
// are named with their sizes.
func TestJigPlate(t *testing.T) {
	d, err := Template(jigPlan(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	pdf := open(t, write(t, d))
	if n := pdf.pages(); n != 3 {
		t.Fatalf("%d pages, want the two sides and the jig plate", n)
	}
	// Crosses of 12 mm are bush holes: one on each face, since one axle is bushed.
	got := crosses(pdf.lines(2))
	if len(got) != 2 {
		t.Fatalf("%d crosses, want 2", len(got))
	}
	// Both faces stand in the middle of the page: the hole at 9.995 of 58 is as far
	// left of it on one face as it is right of it on the other.
	if apart := math.Abs(got[0][0] - got[1][0]); math.Abs(apart-(58-2*9.995)) > exact {
		t.Errorf("the bush holes of the two faces stand %.3f apart, want %.3f", apart, 58-2*9.995)
	}
	text := strings.Join(strings.Fields(pdf.text(2)), " ")
	for _, want := range []string{"MIRRORED", "1 front axle: x 9.995 y 6.040; slip bushes 4 mm", "P1 front frame hole: x 4.000 y 15.000; pin 3.2 mm",
		"P2 rear frame hole"} {
		if !strings.Contains(text, want) {
			t.Errorf("the jig plate lacks %q in\n%s", want, text)
		}
	}
	if strings.Contains(text, "rear axle: x") {
		t.Error("a shaft that no tool goes to has a bush hole")
	}
	plain := wordsOf(must(Template(samplePlan(2), Options{})))
	if strings.Contains(plain, "jig plate") {
		t.Error("a mill with dials gets a jig plate")
	}
}
