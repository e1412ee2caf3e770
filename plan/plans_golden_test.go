package plan_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rebush/fits/ledger"
	"rebush/plan"
)

// TestPlans holds the whole plan of every shipped job, as JSON, against what it
// was: a change that moves a figure shows here which, and in which jobs. Read
// the difference, and its cause, before -update.
func TestPlans(t *testing.T) {
	for _, f := range demos(t) {
		name := strings.TrimSuffix(filepath.Base(f), ".yaml")
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			got := planText(t, makePlan(t, f, plan.Options{Trials: 2048, Seed: 1}))
			file := filepath.Join("../testdata/plans", name+".json")
			if *update {
				if err := os.WriteFile(file, got, 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(want, got) {
				t.Errorf("%s (-want +got):\n%s", file, cmp.Diff(strings.Split(string(want), "\n"), strings.Split(string(got), "\n")))
			}
		})
	}
}

// planText is a plan as JSON, an element of a list on each line, and of its
// ledger the key and the value of each entry.
func planText(t *testing.T, p *plan.Plan) []byte {
	t.Helper()
	raw, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	top := map[string]json.RawMessage{}
	if err := json.Unmarshal(raw, &top); err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	sep := "{\n"
	for _, k := range slices.Sorted(maps.Keys(top)) {
		fmt.Fprintf(&b, "%s%q: ", sep, k)
		sep = ",\n"
		switch v := top[k]; {
		case k == "ledger":
			entries := map[string]ledger.Entry{}
			if err := json.Unmarshal(v, &entries); err != nil {
				t.Fatal(err)
			}
			lines := []string{}
			for _, key := range slices.Sorted(maps.Keys(entries)) {
				lines = append(lines, fmt.Sprintf("%q: [%v, %q]", key, entries[key].Value, entries[key].Unit))
			}
			b.WriteString("{\n" + strings.Join(lines, ",\n") + "}")
		case v[0] == '[' && len(v) > 2:
			var list []json.RawMessage
			if err := json.Unmarshal(v, &list); err != nil {
				t.Fatal(err)
			}
			b.WriteString("[\n" + string(bytes.Join(slices.Collect(func(yield func([]byte) bool) {
				for _, e := range list {
					if !yield(e) {
						return
					}
				}
			}), []byte(",\n"))) + "]")
		default:
			b.Write(v)
		}
	}
	b.WriteString("}\n")
	if !json.Valid(b.Bytes()) {
		t.Fatal("the golden of a plan is no JSON")
	}
	return b.Bytes()
}
