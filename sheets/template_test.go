package sheets

import (
	"math"
	"strings"
	"testing"

	"rebush/plan"
)

// exact is how true the template has to be: half of what a good eye sees on a
// rule.
const exact = 0.05 // mm

// crosses finds pairs of lines of 12 mm that cut each other in the middle.
func crosses(lines [][2][2]float64) [][2]float64 {
	var level, upright [][2]float64
	for _, l := range lines {
		dx, dy := math.Abs(l[1][0]-l[0][0]), math.Abs(l[1][1]-l[0][1])
		mid := [2]float64{(l[0][0] + l[1][0]) / 2, (l[0][1] + l[1][1]) / 2}
		switch {
		case math.Abs(dx-12) < 0.02 && dy < 0.02:
			level = append(level, mid)
		case math.Abs(dy-12) < 0.02 && dx < 0.02:
			upright = append(upright, mid)
		}
	}
	var out [][2]float64
	for _, a := range level {
		for _, b := range upright {
			if math.Hypot(a[0]-b[0], a[1]-b[1]) < 0.02 {
				out = append(out, a)
			}
		}
	}
	return out
}

// TestTemplateIsTrue reads the crosses and the bars back from the PDF: their
// distances are those of the plan, in both directions, on both papers; the
// right plate is the mirror of the left.
func TestTemplateIsTrue(t *testing.T) {
	for _, o := range []Options{{Paper: "A4"}, {Paper: "Letter", Large: true, Units: "both"}} {
		p := samplePlan(2)
		p.Targets[2].TargetMM = xy("48.0000", "13.7310")
		d, err := Template(p, o)
		if err != nil {
			t.Fatal(err)
		}
		pdf := open(t, write(t, d))
		for page, want := range [][2][2]float64{{{9.995, 6.04}, {48, 13.731}}, {{10.005, 6.04}, {48.01, 6}}} {
			lines := pdf.lines(page)
			got := crosses(lines)
			if len(got) != 2 {
				t.Fatalf("page %d: %d crosses, want 2", page+1, len(got))
			}
			dx, dy := got[1][0]-got[0][0], got[1][1]-got[0][1]
			wantX, wantY := want[1][0]-want[0][0], want[1][1]-want[0][1]
			if page == 1 {
				wantX = -wantX
			}
			if math.Abs(dx-wantX) > exact || math.Abs(dy-wantY) > exact {
				t.Errorf("%s page %d: crosses are %.3f, %.3f apart, want %.3f, %.3f", o.Paper, page+1, dx, dy, wantX, wantY)
			}
			bars := map[float64]bool{150: false, 127: false}
			var tall float64
			for _, l := range lines {
				for w := range bars {
					if math.Abs(math.Abs(l[1][0]-l[0][0])-w) < exact {
						bars[w] = true
					}
				}
				tall = max(tall, math.Abs(l[1][1]-l[0][1]))
			}
			for w, seen := range bars {
				if !seen {
					t.Errorf("%s page %d: no bar of %v mm", o.Paper, page+1, w)
				}
			}
			if tall < 100 || math.Abs(tall-math.Round(tall/10)*10) > exact {
				t.Errorf("%s page %d: the upright bar is %.3f mm, want a whole number of cm", o.Paper, page+1, tall)
			}
		}
	}
}

// A plate that is turned to fit keeps its distances and its hand.
func TestTemplateTurned(t *testing.T) {
	p := samplePlan(2)
	p.Job.Chassis.Length = mm("175")
	p.Targets[2].TargetMM = xy("165.0000", "13.0000")
	d, err := Template(p, Options{Paper: "Letter"})
	if err != nil {
		t.Fatal(err)
	}
	got := crosses(open(t, write(t, d)).lines(0))
	if len(got) != 2 {
		t.Fatalf("%d crosses, want 2", len(got))
	}
	// x of the plate runs up the paper and y to the left: a quarter
	// anticlockwise, not a mirror.
	dx, dy := got[1][0]-got[0][0], got[1][1]-got[0][1]
	if math.Abs(dy-(165-9.995)) > exact || math.Abs(dx+(13-6.04)) > exact {
		t.Errorf("crosses are %.3f, %.3f apart, want %.3f, %.3f", dx, dy, -(13 - 6.04), 165-9.995)
	}
}

func TestTemplateRefuses(t *testing.T) {
	big := samplePlan(2)
	big.Job.Chassis.Length = mm("400")
	stop := samplePlan(2)
	stop.OK = false
	none := samplePlan(2)
	none.Targets = nil
	for _, c := range []struct {
		p    *plan.Plan
		want string
	}{{big, "dial figures"}, {stop, "do not machine"}, {none, "no new centre"}} {
		if _, err := Template(c.p, Options{}); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("error is %v, want one that says %q", err, c.want)
		}
	}
}
