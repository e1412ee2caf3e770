package plan_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/fits/table"
	"rebush/plan"
	"rebush/plan/job"
)

// burns is a job whose chassis is magnesium; accepted says that the job takes
// it upon itself.
func burns(t *testing.T, accepted bool) *plan.Plan {
	t.Helper()
	return routed(t, "stepped", func(j *job.Job) {
		j.Chassis.Material = "magnesium"
		if accepted {
			j.Accept = []string{"magnesium"}
		}
	})
}

func ruled(p *plan.Plan, rule string) (out []finding.Finding) {
	for _, f := range p.Findings {
		if f.Rule.Name() == rule {
			out = append(out, f)
		}
	}
	return out
}

// Magnesium is a stop, no operation is laid out and nobody is advised to have
// it cut; the job alone lowers that to a caution.
func TestMagnesiumStops(t *testing.T) {
	p := burns(t, false)
	f := ruled(p, "magnesium")
	if p.OK || len(f) != 1 || f[0].Level != finding.Stop || f[0].Line == 0 || !strings.Contains(f[0].Fix.String(), "accept: [magnesium]") {
		t.Errorf("machined: %v; %+v", p.OK, f)
	}
	if len(p.Operations) > 0 {
		t.Errorf("%d operations although it must not be cut", len(p.Operations))
	}
	for _, o := range p.Verdict.Options {
		switch o.Name {
		case "renew", "re-bush", "bush in a bush", "plug", "new axle too":
			if o.Feasible || !strings.Contains(o.WhyNot.String(), "magnesium") {
				t.Errorf("%s: feasible %v, %q", o.Name, o.Feasible, o.WhyNot)
			}
		}
	}
	p = burns(t, true)
	f = ruled(p, "magnesium")
	if !p.OK || len(f) != 1 || f[0].Level != finding.Caution || len(p.Operations) == 0 {
		t.Errorf("accepted: machined %v, %d operations, %+v", p.OK, len(p.Operations), f)
	}
	if len(ruled(p, "accept")) > 0 {
		t.Error("the job is told that it accepted nothing")
	}
}

// A bush of magnesium is a stop too.
func TestMagnesiumBushStops(t *testing.T) {
	change := func(j *job.Job) {
		for i := range j.Bushes {
			j.Bushes[i].Material = "magnesium"
		}
	}
	p := routed(t, "stepped", change)
	if f := ruled(p, "magnesium"); p.OK || len(f) == 0 || f[0].Level != finding.Stop {
		t.Errorf("machined: %v; %+v", p.OK, f)
	}
}

// Accepting magnesium lowers nothing else, and where there is none the job is
// told so.
func TestAcceptLowersItsOwnStopOnly(t *testing.T) {
	p := routed(t, "thin-edge", func(j *job.Job) { j.Chassis.Material, j.Accept = "magnesium", []string{"magnesium"} })
	if p.OK || p.Findings.Count(finding.Stop) == 0 {
		t.Error("a wall that is too thin was accepted along with the metal")
	}
	p = routed(t, "stepped", func(j *job.Job) { j.Accept = []string{"magnesium"} })
	if f := ruled(p, "accept"); len(f) != 1 || f[0].Level != finding.Note {
		t.Errorf("nothing says that there was nothing to accept: %+v", f)
	}
	p = routed(t, "stepped", func(j *job.Job) { j.Chassis.Condition, j.Accept = "cracked", []string{"condition"} })
	if p.OK {
		t.Error("a crack was accepted")
	}
}

// On every machine each cut in magnesium has a step of the spindle.
func TestMagnesiumHasTurns(t *testing.T) {
	for machine, change := range machines {
		p := routed(t, "stepped", func(j *job.Job) {
			j.Chassis.Material, j.Accept = "magnesium", []string{"magnesium"}
			if change != nil {
				change(j)
			}
		})
		n := 0
		for _, o := range p.Operations {
			switch o.Kind {
			case "locate", "open", "size seat":
				n++
				if o.RPM == nil || !(*o.RPM > 0) {
					t.Errorf("%s: %d %s has no turns: %s", machine, o.Number, o.Do, o.Note)
				}
			}
			if strings.Contains(o.Note.String(), "no cutting figures") {
				t.Errorf("%s: %d %s: %s", machine, o.Number, o.Do, o.Note)
			}
			if o.Kind != "oil" && o.Kind != "size bore" && strings.Contains(o.Lubricant.String(), "soluble") {
				t.Errorf("%s: %d %s: %s on magnesium", machine, o.Number, o.Do, o.Lubricant)
			}
		}
		least := 4
		if machine == "lathe" {
			least = 3 // one stroke of the reamer for both seats
		}
		if n < least {
			t.Errorf("%s: %d cuts", machine, n)
		}
	}
}

// stopCall finds the rule of a stop that is said in a line of the program: its
// words, or the constant of the room, which ruleConst finds.
var (
	stopCall  = regexp.MustCompile(`(?:\w\(finding\.Stop, |Level: finding\.Stop, Rule: )(?:"[a-z]+/([a-z ]+)"|(?:\w+\.)?([A-Z]\w*))`)
	ruleConst = regexp.MustCompile(`(?m)^\s*([A-Z]\w*)\s+finding\.Rule\s+= "[a-z]+/([a-z ]+)"`)
)

// Each stop that the program says is a row of the table of stops, and each row
// is said somewhere.
func TestStopsStandInTheTable(t *testing.T) {
	stops, err := table.Stops()
	if err != nil {
		t.Fatal(err)
	}
	said, text, names := map[string]string{}, "", map[string][]string{}
	var calls [][2]string // file, constant
	for _, pattern := range []string{"*.go", "*/*.go"} {
		files, _ := filepath.Glob(pattern)
		for _, f := range files {
			if strings.HasSuffix(f, "_test.go") {
				continue
			}
			data, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			text += string(data)
			for _, g := range stopCall.FindAllStringSubmatch(string(data), -1) {
				if g[1] != "" {
					said[g[1]] = f
				} else {
					calls = append(calls, [2]string{f, g[2]})
				}
			}
			for _, g := range ruleConst.FindAllStringSubmatch(string(data), -1) {
				here := filepath.Dir(f) + "." + g[1]
				names[here], names[g[1]] = []string{g[2]}, append(names[g[1]], g[2])
			}
		}
	}
	for _, c := range calls {
		// A constant of the room itself, else of the room that is named.
		rules := names[filepath.Dir(c[0])+"."+c[1]]
		if rules == nil {
			rules = names[c[1]]
		}
		if len(rules) == 0 {
			t.Errorf("%s stops by %s, which no room has", c[0], c[1])
		}
		for _, r := range rules {
			said[r] = c[0]
		}
	}
	if len(said) < 4 {
		t.Fatalf("only %v are found", said)
	}
	known := map[string]bool{}
	for _, s := range stops {
		known[s.Name] = true
		if !strings.Contains(text, "/"+s.Name+`"`) {
			t.Errorf("%s: no step says a stop %q", s.Address, s.Name)
		}
		if s.What == "" || s.Instead == "" {
			t.Errorf("%s lacks words", s.Address)
		}
	}
	for rule, file := range said {
		if !known[rule] {
			t.Errorf("%s stops by %q, which the table of stops does not have", file, rule)
		}
	}
}
