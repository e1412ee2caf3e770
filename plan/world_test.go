package plan_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/plan"
	"rebush/plan/world"
)

// trucks is how many trucks of the world are planned: 60 in every run, and as
// many as TRUCKS says where somebody has the time (.ci/world).
func trucks(t *testing.T) uint64 {
	t.Helper()
	said := os.Getenv("TRUCKS")
	if said == "" {
		return 60
	}
	n, err := strconv.ParseUint(said, 10, 32)
	if err != nil || n < 60 {
		t.Fatalf("TRUCKS=%s: write a number from 60", said)
	}
	return n
}

// tally counts what becomes of trucks.
type tally map[string]int

// line prints counts, the largest first.
func (c tally) line() string {
	names := slices.SortedFunc(maps.Keys(c), func(a, b string) int {
		if c[a] != c[b] {
			return c[b] - c[a]
		}
		return strings.Compare(a, b)
	})
	parts := make([]string, len(names))
	for i, name := range names {
		parts[i] = fmt.Sprintf("%s %d", name, c[name])
	}
	return strings.Join(parts, ", ")
}

// planned puts a truck into a folder, reads and plans it; nothing of it may panic, be refused, or come
// out as no number.
func planned(t *testing.T, dir string, w world.World, o plan.Options) (p *plan.Plan, data []byte) {
	t.Helper()
	j, err := w.Read(dir)
	if err != nil {
		t.Errorf("%v", err)
		return nil, nil
	}
	defer func() {
		if why := recover(); why != nil {
			t.Errorf("truck %d: a panic: %v", w.Seed, why)
			p, data = nil, nil
		}
	}()
	if p, err = plan.Make(j, o); err != nil {
		t.Errorf("truck %d: %v", w.Seed, err)
		return nil, nil
	}
	if data, err = json.Marshal(p); err != nil { // a NaN is no JSON
		t.Errorf("truck %d: %v", w.Seed, err)
	}
	return p, data
}

// TestWorld plans trucks of every kind, and says what became of them.
func TestWorld(t *testing.T) {
	n, dir := trucks(t), t.TempDir()
	ends, advice, stops := tally{}, tally{}, tally{}
	for seed := range n {
		p, _ := planned(t, dir, world.Truck(seed, world.Options{}), plan.Options{Trials: 400})
		if p == nil {
			continue
		}
		if p.OK != !p.Findings.Stops() {
			t.Errorf("truck %d: ok is %v, stops %v", seed, p.OK, p.Findings.Stops())
		}
		if !p.OK && len(p.Operations) > 0 {
			t.Errorf("truck %d: a truck that may not be machined has %d operations", seed, len(p.Operations))
		}
		if p.OK {
			ends["may be machined"]++
		} else {
			ends["stopped"]++
		}
		if p.Verdict != nil {
			for _, why := range disagrees(p) {
				t.Errorf("truck %d: %s", seed, why)
			}
			advice[string(p.Verdict.Choice)]++
		}
		met := map[string]bool{}
		for _, f := range p.Findings {
			if f.Level == finding.Stop && !met[string(f.Rule)] {
				met[string(f.Rule)] = true
				stops[string(f.Rule)]++
			}
		}
	}
	t.Logf("%d trucks: %s; advice: %s; stops: %s", n, ends.line(), advice.line(), stops.line())
	if ends["may be machined"] == 0 || ends["stopped"] == 0 || len(advice) < 2 {
		t.Errorf("%d trucks of one kind only: %s, %s", n, ends.line(), advice.line())
	}
}

// ofTheFile is what a plan says of how its files are laid out: lines, and the
// hash of figures as they were measured.
var ofTheFile = regexp.MustCompile(`"(line|column)":[0-9]+|"hash":"[0-9a-f]+"|(job|shop)\.yaml:[0-9]+(:[0-9]+)?`)

// TestWorldTwins: the same truck written in the other unit, or measured from the
// other side, gives the same plan to the last digit.
func TestWorldTwins(t *testing.T) {
	bare := func(data []byte) string { return ofTheFile.ReplaceAllString(string(data), "") }
	dir := t.TempDir()
	for seed := range max(trucks(t)/4, 15) {
		w := world.Truck(seed, world.Options{})
		other := "in"
		if w.Has("units in") {
			other = "mm"
		}
		_, plain := planned(t, dir, w, plan.Options{NoChance: true})
		for name, twin := range map[string]world.World{"in " + other: w.In(other), "from the right": w.FromTheRight()} {
			_, data := planned(t, dir, twin, plan.Options{NoChance: true})
			a, b := strings.Split(bare(plain), ","), strings.Split(bare(data), ",")
			for i := range min(len(a), len(b)) {
				if a[i] != b[i] {
					t.Errorf("truck %d %s: %s, and not %s", seed, name, b[i], a[i])
					break
				}
			}
			if len(a) != len(b) || len(a) < 20 {
				t.Errorf("truck %d %s: a plan of %d figures, and of %d", seed, name, len(b), len(a))
			}
		}
	}
}
