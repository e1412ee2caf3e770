package seat

import (
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/plan/job"
)

// said are the rules and the words of what a seat gives cause to say.
func said(t *testing.T, change func(*Input, *Seated)) map[string]string {
	t.Helper()
	in, _ := read(t, bench1, truck)
	got, _ := decide(in, sites(in.Job))
	x := got[0]
	if x.Chosen == nil {
		t.Fatal(x.Answers[0].Fail.Text())
	}
	a := *x.Chosen
	x.Chosen = &a
	change(&in, &x)
	out := map[string]string{}
	for _, f := range Findings(in, x) {
		if f.Where != "drive.left" || f.Line == 0 {
			t.Errorf("%s is about %q, line %d", f.Rule, f.Where, f.Line)
		}
		out[f.Rule.Name()] = f.Text.String() + " | " + f.Fix.String()
	}
	return out
}

// Each thing is said at its limit and not before.
func TestSaidAtTheLimit(t *testing.T) {
	for _, c := range []struct {
		name, rule, want string
		change           func(*Input, *Seated)
	}{
		{"a usual press", "heavy press", "",
			func(in *Input, x *Seated) { x.Chosen.UHigh = in.Rules.UsualShare * x.Chosen.SeatLow }},
		// 0.0062 x 5.005 = 31.0 um.
		{"a tighter one", "heavy press", "a press of up to 35.0 um is tighter than the 31.0 um",
			func(in *Input, x *Seated) { x.Chosen.UHigh = 0.035 }},
		{"not of a cap", "heavy press", "", func(in *Input, x *Seated) {
			x.Chosen.UHigh, x.Chosen.HeldBy = 0.035,
				ByCap
		}},
		{"level", "bush proud", "", func(in *Input, x *Seated) { x.Chosen.Proud = 0.005 }},
		{"proud", "bush proud", "the bush is 0.40 mm longer than the plate: face it to length before pressing, or",
			func(in *Input, x *Seated) { x.Chosen.Proud = 0.4 }},
		{"no room for it", "bush proud", "before pressing, there is no room",
			func(in *Input, x *Seated) { x.Chosen.Proud, x.Chosen.MustFace = 0.4, true }},
		{"slackens", "press slackens",
			"puts 83 MPa of tension into the casting and zinc creeps above 15 MPa: over the years it will slacken | none needed now, its flange holds it along and staking holds it in this plan; to hold it better take a larger",
			func(in *Input, x *Seated) {
				x.Chosen.Slackens, x.Chosen.Peak, x.Chosen.Second = true, 83.2, Flange|Stake
			}},
		{"short of torque", "second hold",
			"(with the largest seat and the smallest bush, bedded in, it holds 4.0 N along, needs 10 N; holds 1.0 N mm turning, needs 2.1 N mm): compound | compound goes on",
			func(in *Input, x *Seated) {
				x.Chosen.Slackens, x.Chosen.Second = false, Compound
				x.Chosen.Force[0], x.Chosen.Torque[0] = 4, 1
				x.Hole.TLow, x.Hole.THigh = 20, 20
			}},
		{"comes loose in use", "second hold", "it may come loose at 40 C", func(in *Input, x *Seated) {
			x.Chosen.Slackens, x.Chosen.Second, x.Chosen.LooseAt = false, Stake, 40
		}},
		{"partner", "partner", "measure its partner", func(in *Input, x *Seated) { x.Chosen.HeldBy = ByCap }},
		{"pv", "pv", "pv of 0.12 MPa m/s is above", func(in *Input, x *Seated) {
			x.Chosen.PV, x.Chosen.PVHigh = 0.12,
				true
		}},
	} {
		got, has := said(t, c.change)[c.rule]
		if has != (c.want != "") || !strings.Contains(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// Where no bush can be seated the nearest comes first, with what would seat it;
// where only the order of assembly is in the way, that is said.
func TestNoSeatIsSaid(t *testing.T) {
	none := func(fell ...Answer) func(*Input, *Seated) {
		return func(in *Input, x *Seated) { x.Chosen, x.Answers = nil, fell }
	}
	early := Answer{Bush: Bush{Code: "early"}, Way: Way{Name: "a reamer"}, Fail: fail(CleansUp, shortOfCleanUp, 2, 3)}
	late := Answer{Bush: Bush{Code: "late"}, Way: Way{Name: "a mill"}, Fail: fail(BearsLoad, pvHigh, 3, 2)}
	for i, a := range []*Answer{&late, &early} {
		a.Fail.Gap = float64(i)
		a.Fails = []Fail{a.Fail}
	}
	got := said(t, none(early, late))["no seat"]
	if !strings.HasPrefix(got,
		"no bush on the list can be seated here; late with a mill (pv 3.00 MPa m/s, at most 2.00); early") ||
		!strings.HasSuffix(got, "| a longer bush, or a material that bears more") {
		t.Error(got)
	}
	if got := said(t, none())["no seat"]; !strings.HasPrefix(got,
		"there is no bush to choose from | measure the bushes") {
		t.Error(got)
	}
	// The bore may be up to 3.16 + 0.06; from the right 3.19 has to pass, with
	// 5 um of room; of 3.218 there is none.
	for through, want := range map[string]string{"3.19 mm": "put the shaft in from the left: then only 3.190 mm has to pass here", "3.218 mm": "no order of assembly lets 3.300 mm through"} {
		got := said(t, func(in *Input, x *Seated) {
			none(early)(in, x)
			shaft := *x.Old.Shaft
			x.Old.Shaft, x.Hole.MustPass = &shaft, 3.3
			shaft.MustPass, shaft.Unworn = job.Ends{Right: dim.Must(through)}, job.Ends{}
		})["no seat"]
		if !strings.Contains(got, want) {
			t.Errorf("%s: %s", through, got)
		}
	}
}
