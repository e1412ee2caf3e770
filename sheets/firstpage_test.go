package sheets

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/plan"
	"rebush/plan/job"
)

// unsaidCondition plans a demo of which nobody has said that it is sound.
func unsaidCondition(t *testing.T, name string) *plan.Plan {
	t.Helper()
	j, err := job.Read("../testdata/jobs/"+name+".yaml", job.Options{})
	if err != nil {
		t.Fatal(err)
	}
	j.Chassis.Condition = "unknown"
	p, err := plan.Make(j, plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Safety.LookFor) == 0 {
		t.Fatalf("%s: nothing to look for", name)
	}
	return p
}

// The first page of a setup sheet is whole: what lies ahead is counted on it,
// and no page with two lines follows it.
func TestFirstPageIsWhole(t *testing.T) {
	for name, p := range demos(t) {
		if p.OK && !p.Machines() {
			continue // nothing lies ahead
		}
		if text := open(t, write(t, must(Setup(p, Options{})))).text(0); !strings.Contains(flat(text), countLine(p)) {
			t.Errorf("%s: page 1 does not hold %q:\n%s", name, countLine(p), text)
		}
	}
}

// What the owner signs stands on the first page of what he reads, also where
// the list of what to look for takes its room.
func TestOwnerSignsPageOne(t *testing.T) {
	for name, p := range demos(t) {
		for _, q := range []*plan.Plan{p, unsaidCondition(t, name)} {
			if text := open(t, write(t, must(VerdictPage(q, Options{})))).text(0); !strings.Contains(text, "signed") {
				t.Errorf("%s, condition %s: nothing to sign on page 1:\n%s", name, q.Job.Chassis.Condition, text)
			}
		}
	}
}

// The rules whose headings are put in other words are rules that some room
// raises.
func TestHeadsAreOfRules(t *testing.T) {
	said := map[finding.Rule]bool{}
	files, err := filepath.Glob("../plan/*.go")
	if err != nil {
		t.Fatal(err)
	}
	more, err := filepath.Glob("../plan/*/*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range append(files, more...) {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		for rule := range heads {
			if bytes.Contains(text, []byte(`"`+string(rule)+`"`)) {
				said[rule] = true
			}
		}
	}
	for rule, head := range heads {
		if !said[rule] {
			t.Errorf("%q, printed as %q, is raised nowhere", rule, head)
		}
		if headOf(rule) != head || head == rule.Name() {
			t.Errorf("%q is printed as %q, want %q", rule, headOf(rule), head)
		}
	}
}
