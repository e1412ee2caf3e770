package plan

import (
	"slices"
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/table"
	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/survey"
)

func mm(t *testing.T, s string) dim.Length {
	t.Helper()
	l, err := dim.Parse(s, dim.MM)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// handShop is a job in a shop that could do something of every kind.
func handShop(t *testing.T) (*job.Job, *survey.Instruments, []bored) {
	t.Helper()
	lib := table.BuiltIn()
	j := &job.Job{Choose: map[string]string{"": "drawer 1"}, Shafts: []job.Shaft{{Name: "a", Bores: []job.Bore{
		{Name: "a.left", With: map[string]string{"centre": "calliper"}}, {Name: "a.right", With: map[string]string{"centre": "dial indicator"}}}}},
		Shop: &job.Shop{MachineKind: "hand", Currency: "GBP", Pins: &job.PinSet{}, SendOut: &job.SendOut{LocationU: mm(t, "0.005"), Price: 30},
			Instruments: []job.Instrument{{Name: "calliper", U: mm(t, "0.023")}, {Name: "dial indicator", U: mm(t, "0.006")}}}}
	instr, err := survey.ReadInstruments(lib, j.Shop)
	if err != nil {
		t.Fatal(err)
	}
	answers := []seat.Answer{{Feasible: true, Bush: seat.Bush{Code: "drawer 1"}}, {Bush: seat.Bush{Code: "drawer 2"}},
		{Feasible: true, Bush: seat.Bush{Code: "drawer 1"}}, {Feasible: true, Bush: seat.Bush{Code: "drawer 3"}}, {Feasible: true, Bush: seat.Bush{Code: "drawer 4"}}}
	hole := survey.Hole{Shaft: &j.Shafts[0], Bore: &j.Shafts[0].Bores[0]}
	return j, instr, []bored{{Hole: hole, Answers: answers, Chosen: &answers[0]}, {Hole: hole}}
}

// Every kind of change is listed, in the words in which it is printed; each does
// what it says to a copy, once, and leaves the job as it was.
func TestChanges(t *testing.T) {
	j, instr, holes := handShop(t)
	did := map[string]func(*job.Job) bool{
		"measure the narrowest with pins":          func(j *job.Job) bool { return j.Shafts[0].Bores[1].With["narrowest"] == "pins" },
		"take the middles with the dial indicator": func(j *job.Job) bool { return j.Shafts[0].Bores[0].With["centre"] == "dial indicator" },
		"make a jig plate pinned in sound holes":   func(j *job.Job) bool { return j.Shop.Jig == "pinned" },
		"send the boring out": func(j *job.Job) bool {
			return j.Shop.SetupU.Float() == 0.005 && j.Shop.HoleU.Float() == 0.005
		},
		"open the bores to their own axles": func(j *job.Job) bool { return j.Finish[""] == "to its own axle" },
		"ream the bores after pressing":     func(j *job.Job) bool { return j.Finish[""] == "ream" },
		"bush drawer 3 in a.left":           func(j *job.Job) bool { return j.Choose["a.left"] == "drawer 3" && j.Choose[""] == "drawer 1" },
	}
	var kinds []changeKind
	for _, c := range better(j, &books{instr: instr}, nil, holes) {
		check := did[c.Words.String()]
		if check == nil {
			t.Errorf("%q was not expected", c.Words)
			continue
		}
		delete(did, c.Words.String())
		edited := editable(j)
		if !c.Do(edited) || !check(edited) {
			t.Errorf("%q does not do what it says", c.Words)
		}
		if check(j) {
			t.Errorf("%q changed the job itself", c.Words)
		}
		kinds = append(kinds, c.Kind)
		if c.Kind == measure || strings.HasPrefix(c.Key, "finish") {
			if c.Do(edited) {
				t.Errorf("%q changes something a second time", c.Words)
			}
		}
	}
	for words := range did {
		t.Errorf("%q is missing", words)
	}
	if want := []changeKind{measure, measure, makeIt, sendOut, makeIt, makeIt, rule}; !slices.Equal(kinds, want) {
		t.Errorf("kinds %v", kinds)
	}
}

// What nobody can expect is asked by itself, and is no part of what is measured
// together.
func TestAtOnce(t *testing.T) {
	of := func(key string, do func(*job.Job) bool) change {
		return change{Kind: measure, Key: key, Missing: true, Do: do}
	}
	yes := func(*job.Job) bool { return true }
	for name, c := range map[string]struct {
		list []change
		want string
	}{
		"one":             {[]change{of("a", yes)}, ""},
		"two":             {[]change{of("a", yes), of("b", yes)}, "a\x00b"},
		"one is unknown":  {[]change{of("a", yes), of("b", nil)}, ""},
		"two and unknown": {[]change{of("a", yes), of("b", nil), of("c", yes)}, "a\x00c"},
	} {
		got := ""
		if all := atOnce(c.list); len(all) == 1 {
			got = all[0].Key
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}
