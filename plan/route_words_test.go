package plan_test

import (
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/plan/job"
)

// The words of proving name what was measured before.
func TestProving(t *testing.T) {
	all := ""
	for _, name := range []string{"insulated", "oil-way"} {
		for _, s := range routed(t, name, nil).Proving {
			all += s.Text.String() + "\n"
			if s.Twice {
				all += "twice: " + s.Text.String() + "\n"
			}
		}
	}
	for _, w := range []string{"back to back", "megohm", "twice: Runs forward", "twice: Runs backward", "twice: Live wheel", "two turns by hand", "spoilt thread", "rubs nowhere", "oil reaches the journal", "insulated wheel on the right"} {
		if !strings.Contains(all, w) {
			t.Errorf("nothing in proving about %q", w)
		}
	}
	plastic := routed(t, "wexmarrow", nil) // no current through its axles
	for _, s := range plastic.Proving {
		if s.Blank == "ohm" {
			t.Errorf("no current goes through these axles: %s", s.Text)
		}
	}
}

// A thick plate under a small drill is pecked.
func TestRoutePecksDeepHoles(t *testing.T) {
	pecked := func(thick string) bool {
		p := routed(t, "plain", func(j *job.Job) {
			j.Chassis.Thickness = job.Ends{Left: dim.Must(thick), Right: dim.Must(thick)}
			j.Chassis.Width = dim.Must("48 mm")
			for i := range j.Shafts {
				if j.Shafts[i].HubToHub.Given() {
					j.Shafts[i].HubToHub = dim.Must("50 mm")
				}
			}
			for i := range j.Bushes {
				j.Bushes[i].Length = dim.Must(thick).Add(dim.Must("0.8 mm"))
			}
		})
		drills := 0
		for _, o := range ops(p, "open") {
			drills++
			if strings.Contains(o.Note.String(), "withdraw it") {
				return true
			}
		}
		if drills == 0 {
			t.Fatalf("no drill in plates of %s", thick)
		}
		return false
	}
	if pecked("3 mm") || !pecked("20 mm") {
		t.Errorf("pecked at 3 mm: %v, at 20 mm: %v", pecked("3 mm"), pecked("20 mm"))
	}
}

// A porous bush is drilled for its oil way at the speed of a solid bronze, and
// dry.
func TestRouteOilWayThroughPorousBush(t *testing.T) {
	ways := ops(routed(t, "oil-way", nil), "oil")
	if len(ways) == 0 {
		t.Fatal("the oil way is not cleared")
	}
	for _, o := range ways {
		if !strings.Contains(o.Lubricant.String(), "no liquid") || !strings.Contains(o.Note.String(), "speed of bearing bronze") || o.RPMIdeal == nil {
			t.Errorf("%s: %s; %s", o.Do, o.Lubricant, o.Note)
		}
	}
}
