package world

import (
	"bytes"
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"rebush/fits/dim"
	"rebush/plan/job"
)

// alike compares what two files mean: lengths within a margin in mm, lists in
// their order, and nothing of the files themselves.
func alike(margin float64) cmp.Options {
	return cmp.Options{
		cmp.Comparer(func(a, b dim.Length) bool {
			return a.Given() == b.Given() && math.Abs(a.Float()-b.Float()) <= margin
		}),
		cmpopts.IgnoreUnexported(job.Job{}, job.Bore{}, job.Shop{}),
		cmpopts.IgnoreFields(job.Job{}, "File", "Folder", "Units"),
		cmpopts.IgnoreFields(job.Shop{}, "File", "Tables", "Rules"),
		cmpopts.IgnoreFields(job.Tool{}, "Name", "Index"),
		cmpopts.IgnoreFields(job.Bush{}, "Index"),
		cmpopts.SortSlices(func(a, b float64) bool { return a < b }), // directions of two loads
	}
}

// anyWay brings lists whose order decides nothing into one order.
var anyWay = cmp.Options{
	cmpopts.SortSlices(func(a, b job.Shaft) bool { return a.Name < b.Name }),
	cmpopts.SortSlices(func(a, b job.Gear) bool { return a.Name < b.Name }),
	cmpopts.SortSlices(func(a, b job.Bush) bool { return a.Code < b.Code }),
	cmpopts.SortSlices(func(a, b job.Feature) bool { return a.Name < b.Name }),
	cmpopts.SortSlices(func(a, b job.Edge) bool { return a.AtDeg < b.AtDeg }),
	cmpopts.SortSlices(func(a, b job.Instrument) bool { return a.Name < b.Name }),
	cmpopts.SortSlices(func(a, b job.Tool) bool { return a.Size.Less(b.Size) }),
	cmpopts.SortSlices(func(a, b job.Point) bool { return a.X.Less(b.X) || a.X.Equal(b.X) && a.Y.Less(b.Y) }),
	cmpopts.SortSlices(dim.Length.Less),
	cmpopts.SortSlices(func(a, b string) bool { return a < b }),
	cmpopts.IgnoreFields(job.Wheelbase{}, "Between"),
}

// TestTwins: in the other unit a truck is the same to the last digit, so that
// even the bytes that its hash is taken of are the same; with bare figures
// throughout it is the same within a few millionths of a mm.
func TestTwins(t *testing.T) {
	bare := 0
	for seed := range uint64(trucks) {
		w := Truck(seed, Options{})
		j := reading(t, w)
		for _, unit := range []string{"mm", "in"} {
			twin := reading(t, w.In(unit))
			if !bytes.Equal(twin.Canonical(), j.Canonical()) {
				d := cmp.Diff(string(j.Canonical()), string(twin.Canonical()))
				t.Errorf("truck %d in %s is another truck:\n%s", seed, unit, d)
			}
			rough := w.Converted(unit)
			if d := cmp.Diff(j, reading(t, rough), alike(3e-6)); d != "" {
				t.Errorf("truck %d converted to %s: %s", seed, unit, d)
			}
			if unit == "in" && w.unit == "mm" && !strings.Contains(string(w.In("in").Job), " mm") {
				bare++
			}
			if unit == "in" && strings.Contains(string(rough.Job), " mm") {
				t.Errorf("truck %d converted to inches still has figures in mm:\n%s", seed, rough.Job)
			}
		}
	}
	if bare > trucks/2 {
		t.Errorf("%d trucks in mm came out exact in inches", bare)
	}
}

// TestShuffled: only the order of lists changes, and it does change.
func TestShuffled(t *testing.T) {
	changed := 0
	for seed := range uint64(trucks) {
		w := Truck(seed, Options{})
		s := w.Shuffled(7)
		if !bytes.Equal(s.Job, w.Job) {
			changed++
		}
		lines := func(data []byte) map[string]int {
			n := map[string]int{}
			mark := func(r rune) bool { return strings.ContainsRune(" \n,[]{}-", r) }
			for _, c := range strings.FieldsFunc(string(data), mark) {
				n[c]++
			}
			return n
		}
		if !reflect.DeepEqual(lines(s.Job), lines(w.Job)) || !reflect.DeepEqual(lines(s.Shop), lines(w.Shop)) {
			t.Errorf("truck %d: shuffled, it holds other words", seed)
		}
		if d := cmp.Diff(reading(t, w), reading(t, s), alike(0), anyWay); d != "" {
			t.Errorf("truck %d: %s", seed, d)
		}
	}
	if changed < trucks*9/10 {
		t.Errorf("only %d of %d jobs were brought into another order", changed, trucks)
	}
}

// TestFromTheRight: measured from the other side, the holes are where they were.
func TestFromTheRight(t *testing.T) {
	for seed := range uint64(trucks) {
		w := Truck(seed, Options{})
		r := w.FromTheRight()
		if bytes.Equal(r.Job, w.Job) {
			t.Errorf("truck %d: nothing was measured from the right", seed)
		}
		if d := cmp.Diff(reading(t, w), reading(t, r), alike(0)); d != "" {
			t.Errorf("truck %d: %s", seed, d)
		}
	}
}

// TestMirrored: turned end for end twice a truck is as it was; once, every
// centre lies as far from the other end, in the job and in the truth.
func TestMirrored(t *testing.T) {
	for seed := range uint64(trucks) {
		w := Truck(seed, Options{})
		m := w.Mirrored()
		if twice := m.Mirrored(); !bytes.Equal(twice.Job, w.Job) || !reflect.DeepEqual(twice.Points, w.Points) {
			t.Errorf("truck %d: turned twice it is another:\n%s", seed, cmp.Diff(string(w.Job), string(twice.Job)))
		}
		a, b := reading(t, w), reading(t, m)
		wide := a.Chassis.Length.Float()
		for i, shaft := range a.Shafts {
			for k, bore := range shaft.Bores {
				other := b.Shafts[i].Bores[k]
				if bore.Centre.Given() {
					near(t, bore.Name, other.Centre.X.Float(), wide-bore.Centre.X.Float(), 1e-9)
				}
				for n, p := range bore.Probed {
					near(t, bore.Name, other.Probed[n].X.Float(), wide-p.X.Float(), 1e-9)
				}
				truth, turned := w.Truth.Bore(bore.Name), m.Truth.Bore(bore.Name)
				near(t, bore.Name, turned.Centre[0], wide-truth.Centre[0], 1e-9)
				for deg := 0.0; deg < 360; deg += 15 {
					near(t, bore.Name+" wall", turned.Hole.Wall(180-deg, 0), truth.Hole.Wall(deg, 0), 1e-9)
				}
			}
		}
		for i, g := range w.Truth.Gears {
			worm, other := a.Gears[i].Worm, b.Gears[i].Worm
			if worm != nil && (other.Slope != -worm.Slope || worm.Hand != "" && other.Hand == worm.Hand) {
				t.Errorf("truck %d: the worm of %s is not turned", seed, g.Name)
			}
			at, turned := Point{5, 5}, m.Truth.Gears[i]
			near(t, g.Name, turned.Distance(Point{wide - at[0], at[1]}, turned.At), g.Distance(at, g.At), 1e-9)
		}
	}
}
