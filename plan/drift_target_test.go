package plan

import (
	"testing"

	"rebush/fits/dim"
)

// targetDrift sets what is printed of places and meshes against what the search
// for the targets decided: places and corrections to their last decimal, and
// each centre distance under load between those that the search reckoned with,
// at the clearances that bring its gears nearest and farthest.
func targetDrift(t *testing.T, name string, got steps, count map[string]int) {
	t.Helper()
	s := got.Target
	const last = 0.5e-4 + near
	differ := func(where, what string, printed, least, most, by float64) {
		if !(printed >= least-by && printed <= most+by) {
			if count["target "+what]++; count["target "+what] < 4 {
				t.Errorf("%s %s %s: printed %v, decided by %v to %v", name, where, what, printed, least, most)
			}
		}
	}
	both := func(where, what string, printed *dim.XY, want [2]float64, by float64) {
		for i := range want {
			differ(where, what, printed[i].Float(), want[i], want[i], by)
		}
	}
	n := 0
	for _, a := range s.Output.Shafts {
		for _, b := range a.Bores {
			both(b.Name, "new centre", s.Targets[n].TargetMM, b.At, last)
			// Moves are those to the place that is printed.
			both(b.Name, "move from the old centre", s.Targets[n].FromOriginalMM, b.FromOriginal, 2*last)
			both(b.Name, "move from the hole", s.Targets[n].FromFoundMM, b.FromFound, 2*last)
			if r := s.Targets[n]; r.LeastMove != nil {
				both(b.Name, "least move", r.LeastMove.TargetMM, a.LeastMove, last)
				differ(b.Name, "chance of the meshes", *r.Chance, a.Chance, a.Chance, last)
				differ(b.Name, "chance of the least move", *r.LeastMove.Chance, a.LeastChance, a.LeastChance, last)
			} else if a.Counts && !b.Fixed {
				t.Errorf("%s %s: the least move is not told", name, b.Name)
			}
			n++
		}
	}
	for i, d := range s.Drives {
		g, row := s.Output.Gears[i], s.Meshes[i]
		if d.Trusted {
			both(d.Name, "correction", row.CorrectionMM, g.Correction, last)
		}
		if row.Trusted != d.Trusted || g.Trusted != d.Trusted {
			t.Errorf("%s %s: printed trusted %v, decided by %v", name, d.Name, row.Trusted, g.Trusted)
		}
		// Both bores of both shafts go to a printed place, each a half of the last
		// decimal off in x and y.
		differ(d.Name, "centre distance", row.TargetCentreMM.Float(), g.Near, g.Far, 4*last)
		if !d.Window.Empty {
			differ(d.Name, "window, least", d.Window.Lo, g.Lo, g.Lo, 0)
			differ(d.Name, "window, most", d.Window.Hi, g.Hi, g.Hi, 0)
		}
		differ(d.Name, "doubt", row.UMM.Float(), g.U, g.U, last)
		if row.TargetBacklashMM.Given() {
			play := d.Play(row.TargetCentreMM.Float())
			differ(d.Name, "backlash", row.TargetBacklashMM.Float(), play, play, 3*last)
		}
		if r := got.Reach.Centre; len(r) > 0 && r[i] != nil {
			differ(d.Name, "nearest reached", r[i].Min.Float(), 0, r[i].Max.Float(), 0)
		}
	}
}
