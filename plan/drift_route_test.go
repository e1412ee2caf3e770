package plan

import (
	"math"
	"testing"

	"rebush/plan/route"
	"rebush/plan/seat"
)

// routeDrift sets what is printed of a route against the cuts that it was laid
// out with, and the forces at the press against those of the seats.
func routeDrift(t *testing.T, name string, w *books, got steps, count map[string]int) {
	t.Helper()
	differ := func(where, what string, printed *float64, want, by float64) {
		if math.IsNaN(want) {
			if printed != nil {
				t.Errorf("%s %s %s: printed %v, nothing decided it", name, where, what, *printed)
			}
			return
		}
		if printed == nil || !(math.Abs(*printed-want) <= by) {
			if count["route "+what]++; count["route "+what] < 4 {
				t.Errorf("%s %s %s: printed %v, decided by %v", name, where, what, printed, want)
			}
		}
	}
	tables, in := w.forRoute(), forRoute(got.Survey.Holes, got.Target, got.Seats)
	seats := map[string]*seat.Answer{}
	for _, x := range got.Seats.Bores {
		seats[x.Name()] = x.Chosen
	}
	j, shop, rules, _ := route.FromJob(tables, in)
	for _, x := range j.Bores {
		if a := seats[x.Name]; a.HeldBy == seat.ByPress {
			differ(x.Name, "force at the press", &x.PressN[1], a.Force[1], 0)
			differ(x.Name, "least force at the press", &x.PressN[0], a.PressIn, 0)
		}
	}
	if len(got.Route.Rows) == 0 {
		return
	}
	ops := route.Make(j, shop, tables.Handbook(in).Cut, rules).Operations
	if len(ops) != len(got.Route.Rows) {
		t.Fatalf("%s: %d operations, printed %d", name, len(ops), len(got.Route.Rows))
	}
	for i, o := range ops {
		row, c := got.Route.Rows[i], o.Cut
		if o.Minutes > 0 {
			differ(o.Bore, "minutes", row.Minutes, o.Minutes, 0.05+1e-6)
		}
		if c == nil {
			continue
		}
		turns := c.RPM
		if c.ByHand {
			turns = 0
		}
		near := func(v float64) float64 { return 1e-8 * math.Max(1, math.Abs(v)) }
		differ(o.Bore, "rpm", row.RPM, turns, near(turns))
		differ(o.Bore, "ideal rpm", row.RPMIdeal, c.Ideal, 0.5+near(c.Ideal))
		differ(o.Bore, "feed", row.FeedMMRev, c.Feed, near(c.Feed))
		differ(o.Bore, "thrust", row.ThrustN, o.Thrust, near(o.Thrust))
		if row.DepthMM.Given() != !math.IsNaN(o.Depth) {
			t.Errorf("%s %s: depth %v of %v", name, o.Bore, row.DepthMM, o.Depth)
		} else if v, _ := row.DepthMM.Exact(); row.DepthMM.Given() {
			differ(o.Bore, "depth", &v, o.Depth, near(o.Depth))
		}
	}
}
