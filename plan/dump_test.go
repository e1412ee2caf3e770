package plan

import (
	"encoding/json"
	"os"
	"testing"

	"rebush/plan/job"
)

func TestDump(t *testing.T) {
	f := os.Getenv("DUMP")
	if f == "" {
		t.Skip()
	}
	j, err := job.Read(f, job.Options{})
	if err != nil {
		t.Fatal(err)
	}
	p, err := Make(j, Options{Trials: 20000, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	p.Ledger = nil
	b, err := json.MarshalIndent(p, "", " ")
	if err != nil {
		t.Fatal(err)
	}
	os.WriteFile(os.Getenv("OUT"), b, 0o644)
	for _, k := range p.Book.Recompute() {
		t.Error(k)
	}
}
