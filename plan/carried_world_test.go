package plan_test

import (
	"fmt"
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

// planOfTruck is a truck with the plan of it as anybody reads it.
type planOfTruck struct {
	truck  world.World
	public []byte
}

// carriedTruck is a truck of those: most can be bushed, by shops of every kind.
func carriedTruck(seed uint64) world.World {
	return world.Truck(carriedFrom+seed, world.Options{Apt: true, Complete: seed%3 == 0})
}

// plansToCarry plans trucks as the command does; a truck that is advised not to
// be cut is planned in the first way that would cut it.
func plansToCarry(t *testing.T, from, n uint64) (out []planOfTruck) {
	t.Helper()
	dir := t.TempDir()
	for seed := from; seed < from+n; seed++ {
		w := carriedTruck(seed)
		p, data := planned(t, dir, w, plan.Options{Trials: 4000})
		if p == nil {
			continue
		}
		for _, way := range p.Ways {
			if p.Chance != nil || !way.OK || !way.Way.Cuts() {
				continue
			}
			if q, other := planned(t, dir, w, plan.Options{Trials: 4000, Way: way.Way}); q != nil && q.Chance != nil {
				data = other
				break
			}
		}
		out = append(out, planOfTruck{w, data})
	}
	return out
}

// carried carries plans out on the truth, each as it is printed or changed.
func carried(t *testing.T, plans []planOfTruck, change func(*carry.Plan)) *carry.Tally {
	t.Helper()
	all := &carry.Tally{}
	for _, p := range plans {
		public, err := carry.Read(p.public)
		if err != nil {
			t.Fatal(err)
		}
		change(public)
		all.Add(carry.Out(p.truck.Seed, &p.truck.Truth, public, turns))
	}
	return all
}

// unlike says what of a tally is not as it was stated. The bounds are wide, since
// 60 trucks are few: what is stated comes right within a tenth and twice the
// error of that figure; the planned place holds the backlash more often than the
// middle of the worn hole, and nearly always where the window has room for it;
// and old centres lie where they were said to.
func unlike(all *carry.Tally) (out []string) {
	say := func(format string, a ...any) { out = append(out, fmt.Sprintf(format, a...)) }
	cut := all.Of(func(carry.Carried) bool { return true })
	if len(cut) < all.Trucks/5 {
		say("only %d of %d trucks are cut", len(cut), all.Trucks)
	}
	if off, u := carry.Off(cut); math.Abs(off) > 0.1+2*u {
		say("what came right is %+.3f beside what was stated, standard error %.3f", off, u)
	}
	if b := all.Held(func(m carry.Meshing) bool { return m.Trusted }); b.Planned < b.Middle {
		say("bored as planned %.2f hold the backlash, in the middle of the worn hole %.2f", b.Planned, b.Middle)
	}
	if b := all.Held(func(m carry.Meshing) bool { return m.Trusted && m.Wide }); b.Planned < 0.85 {
		say("of windows with room enough %.2f hold the backlash", b.Planned)
	}
	if in, axis := all.Covered(); in < 0.9 || axis < 0.9 || in > 0.99 {
		say("%.3f of old centres lie in their ellipse of 95 %%, %.3f within 2 u along it", in, axis)
	}
	return out
}

// TestCarriedOut carries plans out on the truth that their readings were taken
// from and prints what came of them; the same trucks with a fault in every plan
// are told apart.
func TestCarriedOut(t *testing.T) {
	n, from := trucks(t), uint64(0)
	if s := os.Getenv("FROM"); s != "" {
		var err error
		if from, err = strconv.ParseUint(s, 10, 32); err != nil {
			t.Fatalf("FROM=%s: write the number of the first truck", s)
		}
	}
	plans := plansToCarry(t, from, n)
	all := carried(t, plans, func(*carry.Plan) {})
	t.Logf("\n%s%s%s%s%s", all.Chances(), all.Backlash(), all.Surveyed(), all.Closed(), all.Worst(12))
	for _, what := range unlike(all) {
		t.Error(what)
	}
	for fault, change := range map[string]func(*carry.Plan){
		"all is stated to come right": func(p *carry.Plan) {
			if p.Chance != nil {
				p.Chance.Right = 0.99
			}
		},
		"new centres 0.1 mm aside": func(p *carry.Plan) {
			for i := range p.Targets {
				if p.Targets[i].At != nil {
					p.Targets[i].At[1] += 0.1
				}
			}
		},
		"old centres 0.03 mm aside": func(p *carry.Plan) {
			for i := range p.Survey {
				if p.Survey[i].Centre != nil {
					p.Survey[i].Centre[1] += 0.03
				}
			}
		},
		"doubts of old centres halved": func(p *carry.Plan) {
			for i := range p.Survey {
				if c := p.Survey[i].Cov; c != nil {
					*c = [3]float64{c[0] / 4, c[1] / 4, c[2] / 4}
				}
			}
		},
	} {
		if len(unlike(carried(t, plans[:60], change))) == 0 {
			t.Errorf("%s, and nobody sees it", fault)
		}
	}
}
