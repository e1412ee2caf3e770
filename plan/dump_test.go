package plan_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"rebush/plan"
	"rebush/plan/job"
)

// demos are the jobs that the project ships.
func demos(t testing.TB) []string {
	t.Helper()
	list, err := filepath.Glob("../testdata/jobs/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, f := range list {
		if b := filepath.Base(f); b != "shop.yaml" && !regexp.MustCompile(`^shop-`).MatchString(b) {
			out = append(out, f)
		}
	}
	if len(out) < 3 {
		t.Fatalf("only %d demo jobs", len(out))
	}
	return out
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
