package world

import (
	"bytes"
	"math"
	"os"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"rebush/fits/table"
	"rebush/plan/job"
)

// trucks is how many every run looks at.
const trucks = 60

// reading puts a truck into a folder and reads it.
func reading(t *testing.T, w World) *job.Job {
	t.Helper()
	j, err := w.Read(t.TempDir())
	if err != nil {
		t.Fatalf("%v\n%s", err, w.Job)
	}
	return j
}

// many is how many trucks are read: as many as TRUCKS says where somebody has
// the time (.ci/world), and else those of every run.
func many(t *testing.T) uint64 {
	t.Helper()
	said := os.Getenv("TRUCKS")
	if said == "" {
		return trucks
	}
	n, err := strconv.ParseUint(said, 10, 32)
	if err != nil || n < trucks {
		t.Fatalf("TRUCKS=%s: write a number from %d", said, trucks)
	}
	return n
}

// TestTrucksRead: every truck reads, and what is read is what was made: each
// shaft, hole, mesh and bush, and a centre that lies where the truth has it.
func TestTrucksRead(t *testing.T) {
	for seed := range many(t) {
		w := Truck(seed, Options{})
		j := reading(t, w)
		if len(j.Shafts) != len(w.Truth.Shafts) || len(j.Gears) != len(w.Truth.Gears) {
			t.Errorf("truck %d: %d shafts and %d meshes are read, %d and %d were made", seed,
				len(j.Shafts), len(j.Gears), len(w.Truth.Shafts), len(w.Truth.Gears))
		}
		for _, shaft := range j.Shafts {
			for _, b := range shaft.Bores {
				truth := w.Truth.Bore(b.Name)
				if truth == nil {
					t.Errorf("truck %d: %s is not in the truth", seed, b.Name)
					continue
				}
				if !b.Centre.Given() {
					continue
				}
				// Four of the largest doubts on each axis, and the rounding.
				if d := Point(b.Centre.Float()).To(truth.Hole.Middle()); d > 4*math.Sqrt2*0.03 {
					t.Errorf("truck %d: %s is read %.3f mm from its middle", seed, b.Name, d)
				}
			}
		}
	}
}

// TestSameSeedSameTruck: the same bytes every time, and other bytes for another
// seed.
func TestSameSeedSameTruck(t *testing.T) {
	seen := map[string]uint64{}
	for seed := range uint64(trucks) {
		a, b := Truck(seed, Options{}), Truck(seed, Options{})
		if !bytes.Equal(a.Job, b.Job) || !bytes.Equal(a.Shop, b.Shop) || !reflect.DeepEqual(a.Points, b.Points) ||
			!reflect.DeepEqual(a.Truth, b.Truth) || !slices.Equal(a.Traits, b.Traits) {
			t.Errorf("truck %d comes out in two ways", seed)
		}
		body := strings.ReplaceAll(string(a.Job), strconv.FormatUint(seed, 10), "")
		if other, met := seen[body]; met {
			t.Errorf("trucks %d and %d are alike", seed, other)
		}
		seen[body] = seed
	}
}

// TestComplete: a figure that is left out changes no other. What a careless
// owner wrote stands with the same value in the job of a careful one.
func TestComplete(t *testing.T) {
	left := 0
	for seed := range uint64(trucks) {
		careless, careful := Truck(seed, Options{}), Truck(seed, Options{Complete: true})
		if !reflect.DeepEqual(careless.Truth.Shafts, careful.Truth.Shafts) {
			t.Errorf("truck %d: the truth depends on what was measured", seed)
		}
		left += missingKeys(t, seed, "", careless.job, careful.job)
	}
	if left < trucks/2 {
		t.Errorf("only %d figures were left out of %d trucks", left, trucks)
	}
}

// missingKeys counts what the second record has more than the first, and
// compares the rest.
func missingKeys(t *testing.T, seed uint64, path string, a, b *node) int {
	t.Helper()
	if a.kind != aRecord || len(a.items) == 0 {
		if a.kind != aList && !reflect.DeepEqual(a, b) && a.text != "unknown" {
			t.Errorf("truck %d: %s is %s, and %s where all was measured", seed, path, a.line("mm"), b.line("mm"))
		}
		if a.kind != aList || len(a.items) != len(b.items) {
			return 0
		}
		n := 0
		for i := range a.items {
			n += missingKeys(t, seed, path+"/"+strconv.Itoa(i), a.items[i], b.items[i])
		}
		return n
	}
	n := 0
	for i, key := range a.keys {
		other := b.get(key)
		if other == nil {
			t.Errorf("truck %d: %s/%s is lost where all was measured", seed, path, key)
			continue
		}
		n += missingKeys(t, seed, path+"/"+key, a.items[i], other)
	}
	for _, key := range b.keys {
		if a.get(key) == nil {
			n++
		}
	}
	return n
}

// ofShop are what a shop leaves out, which is no matter of measuring.
var ofShop = []string{"rate", "hours", "price", "location"}

// TestOptions: what is asked for is what is drawn.
func TestOptions(t *testing.T) {
	for i, shop := range Shops {
		for _, unit := range []string{"mm", "in"} {
			w := Truck(uint64(i), Options{Units: unit, Shop: shop, Complete: true})
			if !w.Has("shop "+shop) || !w.Has("units "+unit) || (w.Shop == nil) != (shop == "bare") {
				t.Errorf("shop %s in %s: %v", shop, unit, w.Traits)
			}
			for _, trait := range w.Traits {
				if strings.HasPrefix(trait, "missing ") && !slices.Contains(ofShop, strings.TrimPrefix(trait, "missing ")) {
					t.Errorf("all was to be measured: %s", trait)
				}
			}
			reading(t, w)
		}
	}
	defer func() {
		if recover() == nil {
			t.Error("a shop that is none is drawn")
		}
	}()
	Truck(1, Options{Shop: "palace"})
}

// TestDoubts: the doubts by which readings are simulated are those that the
// planner's tables state.
func TestDoubts(t *testing.T) {
	tab, err := table.BuiltIn().Get("instruments")
	if err != nil {
		t.Fatal(err)
	}
	reads := map[string]string{}
	for _, row := range tab.Rows {
		what, isDefault := strings.CutPrefix(row.Get("kind"), "default ")
		if u, err := strconv.ParseFloat(row.Get("u_mm"), 64); isDefault && usualDoubt[what] != 0 && u != usualDoubt[what] {
			t.Errorf("a %s that no instrument reads: %g here, %g in the table (%v)", what, usualDoubt[what], u, err)
		}
		for _, word := range strings.Split(row.Get("words"), ";") {
			if word = strings.TrimSpace(word); word != "" && reads[word] == "" {
				reads[word] = row.Get("reads")
			}
		}
	}
	for _, c := range catalogue {
		best := ""
		for word := range reads {
			if strings.Contains(c.name, word) && len(word) > len(best) {
				best = word
			}
		}
		got := strings.Fields(reads[best])
		if slices.Sort(got); best == "" {
			t.Errorf("the planner knows no %s", c.name)
		}
		want := slices.Sorted(slices.Values(c.reads))
		if !slices.Equal(got, want) {
			t.Errorf("%s reads %v here, %v in the table", c.name, want, got)
		}
	}
	pins, err := table.BuiltIn().Get("pin_classes")
	if err != nil {
		t.Fatal(err)
	}
	for class, tolerance := range classes {
		found := false
		for _, row := range pins.Rows {
			if u, err := strconv.ParseFloat(row.Get("tolerance_mm"), 64); row.Get("class") == class {
				found = err == nil && u == tolerance
			}
		}
		if !found {
			t.Errorf("pins of class %s: %g is not what the table says", class, tolerance)
		}
	}
}
