package job

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestInputs: a job names every file that it was read from.
func TestInputs(t *testing.T) {
	dir := t.TempDir()
	put := func(name, text string) {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	plain, err := os.ReadFile("../../testdata/jobs/pellinthwaite.yaml")
	if err != nil {
		t.Fatal(err)
	}
	points, err := os.ReadFile("../../testdata/jobs/pellinthwaite-left.csv")
	if err != nil {
		t.Fatal(err)
	}
	rules, err := os.ReadFile("../../fits/table/data/rules.csv")
	if err != nil {
		t.Fatal(err)
	}
	put("truck.yaml", string(plain))
	put("pellinthwaite-left.csv", string(points))
	put("my-rules.csv", string(rules))
	put("shop-pellinthwaite.yaml", "rebush_shop: 1\nmachine: {kind: drill press}\ninstruments: [{name: edge finder, u: 0.01}, {name: caliper, u: 0.02}, {name: pins, u: 0.01}, {name: indicator, u: 0.01}, {name: micrometer, u: 0.01}]\ntables: {rules: my-rules.csv}\n")
	j, err := Read(filepath.Join(dir, "truck.yaml"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, n := range j.Inputs() {
		rel, err := filepath.Rel(dir, n)
		if err != nil {
			t.Fatal(err)
		}
		got = append(got, rel)
	}
	want := []string{"truck.yaml", "pellinthwaite-left.csv", "shop-pellinthwaite.yaml", "my-rules.csv"}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
}
