package plan_test

import (
	"fmt"
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/plan"
	"rebush/plan/inspect"
	"rebush/plan/job"
	"rebush/plan/world"
)

// sizesAsPlanned are the sizes as made of a truck whose holes came out exactly as
// planned, those of its first axle only or of all.
func sizesAsPlanned(p *plan.Plan, all bool) string {
	at := map[string]string{}
	for _, x := range p.Targets {
		if x.TargetMM != nil {
			at[x.Bore] = fmt.Sprintf("[%s mm, %s mm]", x.TargetMM[0], x.TargetMM[1])
		}
	}
	var b strings.Builder
	first := ""
	for _, s := range p.Seats {
		if s.SeatMM == nil || s.Bush == "" {
			continue
		}
		axle, _, _ := strings.Cut(s.Bore, ".")
		if first == "" {
			first = axle
		}
		if all || axle == first {
			fmt.Fprintf(&b, "  %s: {seat: %.4f mm, centre: %s}\n", s.Bore, (s.SeatMM.Min.Float()+s.SeatMM.Max.Float())/2, at[s.Bore])
		}
	}
	return b.String()
}

// TestMadeAsPlanned: no job rejects a place where the plan put it, nor a seat in
// the middle of what its tool leaves; what is left of it can be done, cuts none
// of the seats that were made, and has a bush for each of them.
func TestMadeAsPlanned(t *testing.T) {
	tried := 0
	for _, name := range demoNames(t) {
		s := demo(t, name)
		if strings.Contains(s.job, "\nmade:") {
			continue
		}
		was := s.plan()
		if !was.OK || !was.Machines() {
			continue
		}
		for _, all := range []bool{true, false} {
			made := sizesAsPlanned(was, all)
			if made == "" {
				continue
			}
			tried++
			now, err := s.add("made:\n" + made).read()
			if err != nil {
				t.Errorf("%s: %v", name, err)
				continue
			}
			p, err := plan.Make(now, plan.Options{NoChance: true})
			if err != nil {
				t.Fatal(err)
			}
			for _, i := range p.Inspect {
				if i.Result == inspect.Reject || i.What == inspect.Place && i.Result != inspect.Accept {
					t.Errorf("%s: %s %s made %v of %v: %s %+v", name, i.Bore, i.What, i.MadeMM, i.LimitsMM, i.Result, i.By)
				}
			}
			for _, m := range now.Made {
				if k := kinds(p, m.Bore); len(p.Operations) > 0 && strings.Contains(fmt.Sprint(k), "size seat") {
					t.Errorf("%s: the seat of %s is cut again: %v", name, m.Bore, k)
				}
			}
			if p.Findings.Stops() {
				t.Errorf("%s, all %v: %v", name, all, p.Findings)
			}
		}
	}
	if tried < 8 {
		t.Errorf("only %d jobs were tried", tried)
	}
}

// Nobody is told what to do by a plan that is not the plan.
func TestNextIsThePlan(t *testing.T) {
	for _, seat := range []string{"5.040", "5.100", "4.900"} {
		p := madeAs(t, "seat: "+seat+", with: fine bore gauge").make(plan.Options{Trials: 1024, Seed: 3})
		i := inspected(t, p, "seat")
		got := seatOf(t, p, "drive.left")
		if p.Cuts && (len(i.Next) == 0 || i.Next[0].Bush != got.Bush || p.Chance == nil || i.Next[0].FirstTimeRight == nil ||
			*i.Next[0].FirstTimeRight != dimNear(p.Chance.FirstTimeRight)) {
			t.Errorf("%s: %+v, the plan has %s", seat, i.Next, got.Bush)
		}
	}
}

// TestWorldMadeAsPlanned: the same over trucks that were drawn, in whatever unit
// and from whichever side they were measured.
func TestWorldMadeAsPlanned(t *testing.T) {
	tried := 0
	for seed := range uint64(40) {
		name := fmt.Sprintf("truck %d", seed)
		j, err := world.Truck(seed, world.Options{}).Read(t.TempDir())
		if err != nil {
			t.Fatal(err)
		}
		was, err := plan.Make(j, plan.Options{NoChance: true})
		if err != nil || !was.OK || !was.Machines() {
			continue
		}
		now := *j
		targets := map[string]job.Point{}
		for _, x := range was.Targets {
			if x.TargetMM != nil {
				targets[x.Bore] = job.Point{X: x.TargetMM[0].Length(), Y: x.TargetMM[1].Length()}
			}
		}
		for _, s := range was.Seats {
			if s.SeatMM != nil && s.Bush != "" {
				at := targets[s.Bore]
				if s.SeatAtMM != nil {
					at = job.Point{X: s.SeatAtMM[0].Length(), Y: s.SeatAtMM[1].Length()}
				}
				now.Made = append(now.Made, job.Made{Bore: s.Bore, Centre: at,
					Seat: dim.OfFloat((s.SeatMM.Min.Float() + s.SeatMM.Max.Float()) / 2)})
			}
		}
		if len(now.Made) == 0 {
			continue
		}
		tried++
		p, err := plan.Make(&now, plan.Options{NoChance: true})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for _, i := range p.Inspect {
			if i.Result == inspect.Reject || i.What == inspect.Place && i.Result != inspect.Accept {
				t.Errorf("%s: %s %s made %v of %v: %s %+v", name, i.Bore, i.What, i.MadeMM, i.LimitsMM, i.Result, i.By)
			}
		}
		if p.Findings.Stops() {
			t.Errorf("%s: %v", name, p.Findings)
		}
	}
	if tried < 5 {
		t.Errorf("only %d trucks were tried", tried)
	}
}
