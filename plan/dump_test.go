package plan_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"rebush/plan"
	"rebush/plan/job"
)

// demos are the jobs that the project ships, and the dull ones of the tests.
func demos(t testing.TB) []string {
	t.Helper()
	var out []string
	for _, dir := range jobFolders {
		list, err := filepath.Glob(dir + "/*.yaml")
		if err != nil {
			t.Fatal(err)
		}
		n := 0
		for _, f := range list {
			if !strings.HasPrefix(filepath.Base(f), "shop") {
				out = append(out, f)
				n++
			}
		}
		if n < 2 {
			t.Fatalf("only %d jobs in %s", n, dir)
		}
	}
	return out
}

// jobFolders hold the demos, and the dull jobs that show one thing each.
var jobFolders = []string{"../testdata/jobs", "../testdata/situations"}

// fileOf finds a file of either folder by its name.
func fileOf(t testing.TB, name string) string {
	t.Helper()
	for _, dir := range jobFolders {
		if _, err := os.Stat(filepath.Join(dir, name)); err == nil {
			return filepath.Join(dir, name)
		}
	}
	t.Fatalf("%s is in none of %v", name, jobFolders)
	return ""
}

func makePlan(t testing.TB, file string, o plan.Options) *plan.Plan {
	t.Helper()
	j, err := job.Read(file, job.Options{})
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Make(j, o)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// cutPlan is the plan of a job by the way that cuts it: the advised one, else
// the first that is free of stops, else to re-bush.
func cutPlan(t testing.TB, file string, o plan.Options) *plan.Plan {
	t.Helper()
	p := makePlan(t, file, o)
	if !p.Cuts {
		o.Way = cuttingWay(p)
		p = makePlan(t, file, o)
	}
	return p
}

// source is what a leaf must point at: a line of a file, or a row of a table.
var source = regexp.MustCompile(`^[^:]+:[0-9]+|^command line`)

// TestLedgerTellsTheTruth works every figure of every demo out again from its
// recorded inputs, and sees that every leaf is a line or a row.
func TestLedgerTellsTheTruth(t *testing.T) {
	for _, f := range demos(t) {
		p := makePlan(t, f, plan.Options{Trials: 5000, Seed: 1})
		if out := os.Getenv("REBUSH_DUMP"); out != "" {
			b, _ := json.MarshalIndent(p, "", " ")
			if err := os.WriteFile(filepath.Join(out, filepath.Base(f)+".json"), b, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if len(p.Ledger) < 50 {
			t.Errorf("%s: only %d entries", f, len(p.Ledger))
		}
		for _, bad := range p.Book.Recompute() {
			t.Errorf("%s: %s", f, bad)
		}
		for _, k := range p.Book.Keys() {
			e, _ := p.Book.Get(k)
			if e.Leaf && !source.MatchString(e.Source) {
				t.Errorf("%s: leaf %s has source %q", f, k, e.Source)
			}
			if !e.Leaf && (len(e.Inputs) == 0 || e.Formula == "" || e.Source == "") {
				t.Errorf("%s: %s lacks inputs, formula or source", f, k)
			}
		}
	}
}
