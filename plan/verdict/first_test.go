package verdict

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/fits/say"
)

// tried is a change of a kind with a price of its own, free below 0, with which
// the job may be machined.
func tried(kind string, price float64) finding.Tried {
	ok := true
	t := finding.Tried{Change: say.Words(kind), Kind: kind, OK: &ok}
	if price >= 0 {
		t.Cost = &price
	}
	return t
}

// after is the verdict of a truck whose re-bush takes so many minutes.
func after(t *testing.T, minutes float64) *Result {
	t.Helper()
	c := tram()
	c.Other = nil
	c.work(Rebush).Minutes = minutes
	r := decide(t, c)
	if !r.Repairs() {
		t.Fatalf("%s", r.Choice)
	}
	return &r
}

// stuck is a truck that nothing cures as it is.
func stuck(t *testing.T) (Case, Result) {
	t.Helper()
	c := tram()
	c.Other = nil
	stopped(&c)
	r := decide(t, c)
	if r.Choice != Leave || r.Cures {
		t.Fatalf("%s", r.Choice)
	}
	return c, r
}

// Where one change would make a repair the choice, that comes first; with what
// it costs, the figure that is expected, and what would then be chosen: 80
// minutes of re-bush without another truck, 116.8347.
func TestFirst(t *testing.T) {
	c, r := stuck(t)
	still := r
	for name, row := range map[string]struct {
		try    Try
		choice Name
		says   string
	}{
		"buy": {Try{Key: "a", Do: "buy", What: "a 5.5 H7 reamer", Tried: tried("buy", 38), Then: after(t, 80)}, BuyFirst,
			"Not yet, since the plate is too thin for any bearing we have. First buy a 5.5 H7 reamer: with that we would advise new bearings, " +
				"117 USD all told; 81 in 100 such jobs come right at the first go."},
		"measure": {Try{Key: "a", Do: "measure", What: "the middle of front axle.left", Tried: tried("measure", -1), Expected: at(10.02), Then: after(t, 80)}, MeasureFirst,
			"First measure the middle of front axle.left: if it comes out as expected, we would advise new bearings, 117 USD all told"},
		"make":     {Try{Key: "a", Do: "make", What: "a jig", Tried: tried("make", -1), Then: after(t, 80)}, BuyFirst, "First make a jig: with that"},
		"send out": {Try{Key: "a", Do: "send out", What: "the boring", Tried: tried("send out", 55), Then: after(t, 80)}, BuyFirst, "First send out the boring: with that"},
		"a rule is the shop's own": {Try{Key: "a", Do: "set", What: "a rule", Tried: tried("rule", -1), Then: after(t, 80)}, Leave,
			"Nothing that we would advise cures it"},
		"no cure":       {Try{Key: "a", Do: "buy", What: "a reamer", Tried: tried("buy", 38), Then: &still}, Leave, "Nothing that we would advise cures it"},
		"not plannable": {Try{Key: "a", Do: "buy", What: "a reamer", Tried: tried("buy", 38)}, Leave, "Nothing that we would advise cures it"},
	} {
		got := r.First(c, []Try{row.try})
		if got.Choice != row.choice || !strings.Contains(got.Sentence.String(), row.says) {
			t.Errorf("%s: %s, %s", name, got.Choice, got.Sentence)
		}
		if len(got.Tried) != 1 || got.Tried[0].Kind != row.try.Kind {
			t.Errorf("%s: tried %+v", name, got.Tried)
		}
		if row.choice == Leave {
			if got.Needs != nil || got.Then != nil {
				t.Errorf("%s: needs %+v", name, got.Needs)
			}
			continue
		}
		want := Need{row.try.Do, row.try.What, row.try.Cost, row.try.Expected}
		if len(got.Needs) != 1 || !reflect.DeepEqual(got.Needs[0], want) {
			t.Errorf("%s: needs %+v", name, got.Needs)
		}
		if got.Cures || got.Then == nil || got.Then.Way != Rebush || got.Then.Cost == nil || !within(*got.Then.Cost, 116.8347) || *got.Then.FirstTimeRight != 0.81 {
			t.Errorf("%s: then %+v, cures %v", name, got.Then, got.Cures)
		}
		if got.RunnerUp == nil || got.RunnerUp.Name != Leave {
			t.Errorf("%s: without it %+v", name, got.RunnerUp)
		}
		for _, b := range got.Bores {
			if b.Way != Leave {
				t.Errorf("%s: %v", name, b)
			}
		}
	}
}

func within(a, b float64) bool { return a-b < 1e-3 && b-a < 1e-3 }

// A figure that nobody can expect is asked for, and never called a cure; what
// would certainly do comes before it.
func TestAsked(t *testing.T) {
	c, r := stuck(t)
	ask := func(bore string) Try {
		return Try{Key: bore, Do: "measure", What: say.Words("the seat of " + bore), Missing: true,
			Tried: finding.Tried{Change: "measure", Kind: "measure"}}
	}
	got := r.First(c, []Try{ask("front axle.left"), ask("front axle.right")})
	want := "First measure the seat of front axle.left and the seat of front axle.right: until then no repair can be judged."
	if got.Choice != MeasureFirst || got.Then != nil || got.Cures || len(got.Needs) != 2 || !strings.HasSuffix(got.Sentence.String(), want) {
		t.Errorf("%s, then %+v, %d needs: %s", got.Choice, got.Then, len(got.Needs), got.Sentence)
	}
	unknown := c
	unknown.Works = append([]Work(nil), c.Works...)
	unknown.Works[2].Asks, unknown.Works[2].Unknown = "the seat", "nobody knows the seat"
	push := ask("front axle.left")
	push.Key, push.Do = "z", "push out the bush and measure"
	want = "Not yet, since nobody knows the seat. First measure the seat of front axle.right and push out the bush and measure the seat of front axle.left: until"
	if got := r.First(unknown, []Try{push, ask("front axle.right")}).Sentence.String(); !strings.HasPrefix(got, want) {
		t.Errorf("what is asked for is not the reason: %s", got)
	}
	buy := Try{Key: "z", Do: "buy", What: "a reamer", Tried: tried("buy", 38), Then: after(t, 80)}
	if got := r.First(c, []Try{ask("front axle.left"), buy}); got.Choice != BuyFirst {
		t.Errorf("asked before what would do: %s", got.Choice)
	}
	known := ask("front axle.left")
	known.Missing = false
	if got := r.First(c, []Try{known}); got.Choice != Leave {
		t.Errorf("asked for what was given: %s", got.Choice)
	}
}

// Nothing comes first where a repair is chosen, or where nothing is the matter;
// where another truck is chosen, a cheaper repair does.
func TestFirstOnlyWhereNoRepairIs(t *testing.T) {
	buy := Try{Key: "a", Do: "buy", What: "a reamer", Tried: tried("buy", 5), Then: after(t, 10)}
	for name, row := range map[string]struct {
		change func(*Case)
		choice Name
	}{
		"a repair":      {func(c *Case) { c.Other = nil }, Rebush},
		"left, rightly": {func(c *Case) { c.Binds, c.Meshes = false, nil }, Leave},
		"another truck": {func(*Case) {}, BuyFirst},
		"cracked":       {func(c *Case) { c.Condition = "cracked" }, Swap},
	} {
		c := tram()
		row.change(&c)
		r := decide(t, c)
		got := r.First(c, []Try{buy})
		if got.Choice != row.choice || len(got.Tried) != 1 {
			t.Errorf("%s: %s", name, got.Choice)
		}
		if row.choice != BuyFirst {
			got.Tried = nil
			if !reflect.DeepEqual(got, r) {
				t.Errorf("%s: tries change the verdict: %+v", name, got)
			}
		} else if want := "Not yet. First buy a reamer: with that"; !strings.HasPrefix(got.Sentence.String(), want) {
			t.Errorf("%s: %s", name, got.Sentence)
		}
	}
}

// The cheapest of what would be chosen then comes first; of equals what costs
// least to do, then by what is changed: never by the order of the tries.
func TestOrderOfTriesDecidesNothing(t *testing.T) {
	c, r := stuck(t)
	of := func(key string, price, minutes float64) Try {
		return Try{Key: key, Do: "buy", What: say.Words(key), Tried: tried("buy", price), Then: after(t, minutes)}
	}
	for name, row := range map[string]struct {
		tries []Try
		want  string
	}{
		"cheapest then": {[]Try{of("a", 1, 90), of("b", 50, 80), of("c", 2, 100)}, "b"},
		"cheapest now":  {[]Try{of("a", 9, 80), of("b", 5, 80), of("c", 6, 80)}, "b"},
		"by its key":    {[]Try{of("c", 5, 80), of("b", 5, 80), of("d", 5, 80)}, "b"},
	} {
		for range 20 {
			rand.Shuffle(len(row.tries), func(i, k int) { row.tries[i], row.tries[k] = row.tries[k], row.tries[i] })
			if got := r.First(c, row.tries); got.Needs[0].What.String() != row.want {
				t.Fatalf("%s: %s of %v", name, got.Needs[0].What, keys(row.tries))
			}
		}
	}
}

func keys(list []Try) (out []string) {
	for _, t := range list {
		out = append(out, t.Key)
	}
	return out
}

// What is asked comes in the same order whatever that of the tries.
func TestOrderOfAskingDecidesNothing(t *testing.T) {
	c, r := stuck(t)
	var list []Try
	for _, key := range []string{"a", "b", "c"} {
		list = append(list, Try{Key: key, Do: "measure", What: say.Words(key), Missing: true, Tried: finding.Tried{Kind: "measure"}})
	}
	want := r.First(c, list).Sentence
	slices.Reverse(list)
	if got := r.First(c, list).Sentence; got != want {
		t.Errorf("%s, and %s", got, want)
	}
}
