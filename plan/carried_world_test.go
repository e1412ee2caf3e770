package plan_test

import (
	"encoding/json"
	"math"
	"os"
	"strconv"
	"testing"

	"rebush/plan"
	"rebush/plan/world"
	"rebush/plan/world/carry"
)

// carriedFrom is the first seed of the trucks that are carried out: no other
// test looks at them.
const carriedFrom = 40_000_000

// turns is how often each plan is carried out.
const turns = 16

// carriedTruck is a truck of those: most can be bushed, by shops of every kind.
func carriedTruck(seed uint64) world.World {
	o := world.Options{Apt: true, Complete: seed%3 == 0}
	return world.Truck(carriedFrom+seed, o)
}

// carriedOut plans trucks as the command does, and carries out what is planned.
func carriedTrucks(t *testing.T, from, n uint64) *carry.Tally {
	t.Helper()
	dir, all := t.TempDir(), &carry.Tally{}
	for seed := from; seed < from+n; seed++ {
		w := carriedTruck(seed)
		p, _ := planned(t, dir, w, plan.Options{Trials: 4000})
		if p == nil {
			continue
		}
		if p.Chance == nil {
			for _, way := range p.Ways {
				if way.OK && way.Way.Cuts() {
					if q, _ := planned(t, dir, w, plan.Options{Trials: 4000, Way: way.Way}); q != nil && q.Chance != nil {
						p = q
						break
					}
				}
			}
		}
		data, err := json.Marshal(p)
		if err != nil {
			t.Fatal(err)
		}
		public, err := carry.Read(data)
		if err != nil {
			t.Fatal(err)
		}
		all.Add(carry.Out(w.Seed, &w.Truth, public, turns))
	}
	return all
}

// TestCarriedOut carries out plans on the truth that their readings were taken
// from, and prints what came of them. The bounds are wide, since 60 trucks are
// few: what is stated comes right within a tenth and twice the error of that
// figure; the planned place holds the backlash more often than the middle of the
// worn hole, and nearly always where the window has room for it; and old centres
// lie where they were said to.
func TestCarriedOut(t *testing.T) {
	n, from := trucks(t), uint64(0)
	if s := os.Getenv("FROM"); s != "" {
		var err error
		if from, err = strconv.ParseUint(s, 10, 32); err != nil {
			t.Fatalf("FROM=%s: write the number of the first truck", s)
		}
	}
	all := carriedTrucks(t, from, n)
	t.Logf("\n%s%s%s%s%s", all.Chances(), all.Backlash(), all.Surveyed(), all.Closed(), all.Worst(12))
	cut := all.Of(func(carry.Carried) bool { return true })
	if len(cut) < int(n)/5 {
		t.Errorf("only %d of %d trucks are cut", len(cut), n)
	}
	if off, u := carry.Off(cut); math.Abs(off) > 0.1+2*u {
		t.Errorf("what came right is %+.3f beside what was stated, standard error %.3f", off, u)
	}
	b := all.Held(func(m carry.Meshing) bool { return m.Trusted })
	if b.Planned < b.Middle {
		t.Errorf("bored as planned %.2f hold the backlash, in the middle of the worn hole %.2f", b.Planned, b.Middle)
	}
	if b = all.Held(func(m carry.Meshing) bool { return m.Trusted && m.Wide }); b.Planned < 0.8 {
		t.Errorf("of windows with room enough %.2f hold the backlash", b.Planned)
	}
	if in, axis := all.Covered(); in < 0.88 || axis < 0.88 || in > 0.995 {
		t.Errorf("%.3f of old centres lie in their ellipse of 95 %%, %.3f within 2 u along it", in, axis)
	}
}
