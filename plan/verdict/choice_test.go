package verdict

import (
	"math"
	"strings"
	"testing"

	"rebush/fits/say"
)

// What is chosen in every situation, and what is noted of it.
func TestChoices(t *testing.T) {
	quiet := func(c *Case) { c.Binds, c.Meshes = false, nil }
	little := func(c *Case) { quiet(c); c.Bores[0].PlayMM, c.Bores[1].PlayMM = 0.08, 0.05 }
	alone := func(c *Case) { c.Other = nil }
	for name, row := range map[string]struct {
		change  func(*Case)
		choice  Name
		cures   bool
		finding string // rule
	}{
		"kept original":          {func(c *Case) { c.KeepOriginal = true }, Rebush, true, ""},
		"no other truck":         {alone, Rebush, true, ""},
		"cracked, swap offered":  {func(c *Case) { c.Condition = "cracked" }, Swap, true, ""},
		"cracked, nothing else":  {func(c *Case) { c.Condition, c.Other = "cracked", nil }, Leave, false, ""},
		"cracked, little play":   {func(c *Case) { little(c); c.Condition = "cracked" }, Leave, true, ""},
		"unknown condition":      {func(c *Case) { c.Condition, c.Other = "unknown", nil }, Rebush, true, ""},
		"impostors":              {func(c *Case) { c.Unchecked = []string{"rims"} }, Swap, true, "look-alikes"},
		"little play":            {little, Leave, true, ""},
		"little play, complaint": {func(c *Case) { little(c); c.Noisy = true }, Leave, true, "complaint"},
		"some play":              {quiet, Leave, true, "play"},
		"some play, rubs":        {func(c *Case) { quiet(c); alone(c); c.Rubs = true }, Rebush, true, ""},
		"too much play":          {func(c *Case) { quiet(c); alone(c); c.Bores[0].PlayMM = 0.26 }, Rebush, true, ""},
		"too much, left alone":   {func(c *Case) { quiet(c); c.Bores[2].PlayMM = 0.5 }, Leave, true, "play"},
		"old bush out":           {func(c *Case) { little(c); alone(c); c.Bores[1].Wrong = "the old bush is out" }, Rebush, true, ""},
		"side play only":         {func(c *Case) { little(c); c.ShimFor, c.ShimMinutes = "side play 0.9 mm", 10 }, Shim, true, ""},
		"pitted, no axle":        {func(c *Case) { alone(c); c.Axles[0].State = "pitted" }, Leave, false, ""},
		"pitted, axle": {func(c *Case) {
			alone(c)
			c.Axles[0] = Axle{Name: "front axle", State: "pitted", HasNew: true, Price: at(6)}
		}, NewAxle, true, ""},
		"sound seats": {func(c *Case) {
			alone(c)
			c.Works[0] = Work{Name: Renew, OK: true, Minutes: 30, Parts: bushings(at(0.85)), Trials: &Trials{Right: 1}}
		}, Renew, true, ""},
		"no price of a bush":         {func(c *Case) { alone(c); c.work(Rebush).Parts[1].Price = nil }, Rebush, true, "price"},
		"loss unknown":               {alone, Rebush, true, "loss"},
		"worth less than the repair": {func(c *Case) { alone(c); c.Value = at(100) }, Rebush, true, "value"},
		"worth more":                 {func(c *Case) { alone(c); c.Value = at(119) }, Rebush, true, ""},
		"no rate":                    {func(c *Case) { c.Rate = nil }, Rebush, true, "rates"},
		"everything stopped":         {func(c *Case) { alone(c); stopped(c) }, Leave, false, ""},
		"everything stopped, swap":   {stopped, Swap, true, ""},
		"something has to be known":  {func(c *Case) { alone(c); stopped(c); asks(c) }, Leave, false, ""},
		"only untouched holes wrong": {func(c *Case) { alone(c); c.Bores = c.Bores[2:] }, Leave, false, ""},
	} {
		c := tram()
		row.change(&c)
		r := decide(t, c)
		if r.Choice != row.choice || r.Cures != row.cures || r.Repairs() != (row.cures && row.choice.Cuts()) {
			t.Errorf("%s: %s %v, want %s %v: %s", name, r.Choice, r.Cures, row.choice, row.cures, r.Sentence)
		}
		if len(r.Ways) != len(options()) || len(r.Bores) != len(c.Bores) {
			t.Errorf("%s: %d ways, %d bores", name, len(r.Ways), len(r.Bores))
		}
		for _, w := range r.Ways {
			if (w.OK && w.Cures) == (w.WhyNot != "") || w.Cost != nil && c.Rate == nil || len(w.Loses) == 0 || len(w.Keeps) == 0 {
				t.Errorf("%s: %+v", name, w)
			}
		}
		if row.finding != "" && !has(r, row.finding) || row.finding == "" && (has(r, "play") || has(r, "value")) {
			t.Errorf("%s: wanted %q in %+v", name, row.finding, r.Findings)
		}
		if r.Findings.Stops() {
			t.Errorf("%s: a verdict stops", name)
		}
		if !strings.HasSuffix(r.Sentence.String(), ".") || strings.Contains(r.Sentence.String(), "NaN") {
			t.Errorf("%s: %q", name, r.Sentence)
		}
	}
}

// Where it is left alone the second is what would be chosen if it rubbed, and it
// is; where that would be left too there is none.
func TestSecondToLeaving(t *testing.T) {
	for name, row := range map[string]struct {
		change func(*Case)
		want   Name
	}{
		"another truck": {func(*Case) {}, Swap},
		"a repair":      {func(c *Case) { c.Other = nil }, Rebush},
		"stopped":       {func(c *Case) { c.Other = nil; stopped(c) }, ""},
		"little play":   {func(c *Case) { c.Bores[0].PlayMM, c.Bores[1].PlayMM = 0.08, 0.08 }, ""},
	} {
		c := tram()
		c.Binds, c.Meshes = false, nil
		row.change(&c)
		r := decide(t, c)
		if r.Choice != Leave || (r.RunnerUp != nil) != (row.want != "") || r.RunnerUp != nil && (r.RunnerUp.Name != row.want ||
			r.RunnerUp.WinsIf != "if it rubs, or the owner complains of it") {
			t.Errorf("%s: %s before %+v", name, r.Choice, r.RunnerUp)
		}
		for _, complain := range []func(*Case){func(c *Case) { c.Rubs = true }, func(c *Case) { c.Noisy = true }, func(c *Case) { c.Binds = true }} {
			then := c
			complain(&then)
			if got := decide(t, then).Choice; row.want != "" && got != row.want {
				t.Errorf("%s: %s, and then %s", name, row.want, got)
			}
		}
	}
}

// stopped is a truck of which no plan is free of stops; re-bush comes nearest.
func stopped(c *Case) {
	c.Works = []Work{
		{Name: Renew, WhyNot: "front axle.left: no old bush", Owner: "there is no bearing to renew"},
		{Name: Rebush, WhyNot: "front axle.left: seat only 2.03 mm long, needs 2.38", Owner: "the plate is too thin for any bearing we have", Near: true},
		{Name: Plug, WhyNot: "front axle.left: would break through", Owner: "there is no room to fill the hole"},
	}
}

// asks is a truck whose plug can be judged only when something is known.
func asks(c *Case) {
	*c.work(Plug) = Work{Name: Plug, OK: true, Minutes: 10, Parts: bushings(nil),
		Asks: "front axle.left: nobody knows the seat behind the old bush", Unknown: "nobody knows the seat behind the old bush"}
}

// A repair is advised from a chance of advise_least on, and to a chance of a lost
// truck of advise_lost; beyond either it is not chosen, though nothing else
// cures, and the reason is said.
func TestAdvisable(t *testing.T) {
	for name, row := range map[string]struct {
		trials Trials
		choice Name
		says   string
	}{
		"just likely enough": {Trials{Right: 0.5, Rework: 0.5}, Rebush, "50 in 100 such jobs come right"},
		"not likely enough":  {Trials{Right: 0.499, Rework: 0.501}, Leave, "the likeliest repair is new bearings, of which only 50 in 100 come right at the first go"},
		"just safe enough":   {Trials{Right: 0.9, Lost: 0.1}, Rebush, "90 in 100"},
		"not safe enough":    {Trials{Right: 0.899, Lost: 0.101}, Leave, "the likeliest repair is new bearings, of which 10 in 100 end in a lost truck"},
		"hopeless":           {Trials{Rework: 1}, Leave, "the likeliest repair is new bearings, and hardly one in 100 comes right"},
	} {
		c := tram()
		c.Other, c.Works = nil, c.Works[:2]
		trials := row.trials
		c.work(Rebush).Trials = &trials
		r := decide(t, c)
		if r.Choice != row.choice || r.Cures != (row.choice == Rebush) || !strings.Contains(r.Sentence.String(), row.says) {
			t.Errorf("%s: %s, %s", name, r.Choice, r.Sentence)
		}
		if w := rowOf(t, r, Rebush); !w.OK || !w.Cures {
			t.Errorf("%s: that it is not advised makes it no less possible: %+v", name, w)
		}
	}
	// Another truck that is likelier bad than good is no advice, but what is left.
	c := tram()
	c.Other.Chance = at(0.3)
	if r := decide(t, c); r.Choice != Rebush {
		t.Errorf("a truck that is sound 3 times in 10: %s", r.Choice)
	}
	stopped(&c)
	if r := decide(t, c); r.Choice != Swap || !r.Cures || r.RunnerUp != nil {
		t.Errorf("and nothing else: %s, %+v", r.Choice, r.RunnerUp)
	}
}

// Whatever the money says, a casting that is going, or whose chips burn, is not
// cut, tried or measured for; the plan has said the stop before.
func TestDoomedIsNotCut(t *testing.T) {
	for _, condition := range []string{"cracked", "swollen", "magnesium"} {
		c := tram()
		c.Condition, c.Other = condition, nil
		r := decide(t, c)
		cut := 0
		for _, w := range r.Ways {
			if !w.Way.Cuts() {
				continue
			}
			cut++
			if w.OK || w.WhyNot.String() != "the casting is "+condition+": no machining" {
				t.Errorf("%s: %s may be done (%v)", condition, w.Way, w.WhyNot)
			}
		}
		if cut != 6 || r.Choice != Leave || r.Cures || len(r.Plans) != 0 {
			t.Errorf("%s: %d ways cut, %s is chosen of %v", condition, cut, r.Choice, r.Plans)
		}
		buys := decide(t, tram())
		buys.Choice = Rebush
		if f := r.First(c, []Try{{Key: "a", Do: "buy", What: "a reamer", Tried: tried("buy", 10), Then: &buys}}); f.Choice != Leave || f.Needs != nil {
			t.Errorf("%s: %s first", condition, f.Choice)
		}
	}
}

// Within a tenth of the cheapest, the one that takes off less metal; and it is
// said why the dearer one is advised.
func TestTieGoesToMetal(t *testing.T) {
	c := tram()
	c.Other = nil
	// Renew a little dearer than re-bush, and takes nothing off.
	c.Works[0] = Work{Name: Renew, OK: true, Minutes: 90, Clampings: 1, Parts: bushings(at(0.85)), Trials: &Trials{Right: 0.95}}
	r := decide(t, c)
	re, rn := rowOf(t, r, Rebush), rowOf(t, r, Renew)
	if !(*rn.Cost > *re.Cost && *rn.Cost < 1.1**re.Cost) {
		t.Fatalf("the case is none: %v and %v", *rn.Cost, *re.Cost)
	}
	if r.Choice != Renew || !strings.Contains(r.Sentence.String(), "It costs a little more than new bearings, and takes off less metal.") {
		t.Errorf("%s: %s", r.Choice, r.Sentence)
	}
}

// A swap takes no metal off and is still last in a tie: it gives the whole
// truck away. 117.68 for the repair is within a tenth of 108 for the truck, and
// beyond it of 106.8.
func TestTieKeepsTheOriginalAndSaysSo(t *testing.T) {
	const said = "Another truck would cost about as much, so the original is kept."
	for price, want := range map[float64]Name{70: Rebush, 69: Swap} { // (70 + 20) x 1.2 = 108
		c := tram()
		c.Other.Price = price
		r := decide(t, c)
		re, sw := *rowOf(t, r, Rebush).Cost, *rowOf(t, r, Swap).Cost
		if !(sw < re) || (re < 1.1*sw) != (want == Rebush) {
			t.Fatalf("the case is none: %v and %v", sw, re)
		}
		if r.Choice != want || strings.Contains(r.Sentence.String(), said) != (want == Rebush) {
			t.Errorf("at %v: %s, %s", price, r.Choice, r.Sentence)
		}
	}
	c := tram()
	c.Other.Price = 90 // (90 + 20) x 1.2 = 132: dearer, and nothing to be said
	if r := decide(t, c); r.Choice != Rebush || strings.Contains(r.Sentence.String(), "kept") {
		t.Errorf("%s", r.Sentence)
	}
}

// What the truck is said to be worth decides nothing and is said: of a repair
// that costs more than that, and of a truck that is given up though it is worth
// more than the other.
func TestValueIsSaid(t *testing.T) {
	for name, row := range map[string]struct {
		worth, other float64
		choice       Name
		says         string
	}{
		"given up for less": {60, 65, Swap, "the original truck would be given up."},
		"given up for more": {2000, 15, Swap, "the original truck would be given up, though it is said to be worth 2000 USD."},
		"a dear repair":     {100, 90, Rebush, " The repair costs more than the 100 USD that the truck is said to be worth."},
		"a cheap repair":    {150, 90, Rebush, "come right at the first go."},
	} {
		c := tram()
		c.Value, c.Other.Price = &row.worth, row.other
		r := decide(t, c)
		if r.Choice != row.choice || !strings.HasSuffix(r.Sentence.String(), row.says) || has(r, "value") != (name == "a dear repair") {
			t.Errorf("%s: %s, %s", name, r.Choice, r.Sentence)
		}
	}
}

// Of two that take off the same metal the cheaper is chosen, of two that cost
// the same as well the one that is less grave.
func TestTies(t *testing.T) {
	of := func(name Name, gravity int, cost, metal float64) weighed {
		return weighed{option: option{name: name, gravity: gravity}, ok: true, cures: true, cost: cost, metal: metal}
	}
	c := tram()
	for name, row := range map[string]struct {
		list []weighed
		want Name
	}{
		"dearer first":      {[]weighed{of("a", 0, 104, 1), of("b", 1, 100, 1)}, "b"},
		"grave first":       {[]weighed{of("a", 5, 100, 1), of("b", 1, 100, 1)}, "b"},
		"less metal":        {[]weighed{of("a", 0, 100, 1.2), of("b", 1, 110, 1)}, "b"},
		"beyond the tie":    {[]weighed{of("a", 0, 100, 1.2), of("b", 1, 110.1, 1)}, "a"},
		"all of it is last": {[]weighed{of("a", 0, 100, math.Inf(1)), of("b", 1, 110, 9)}, "b"},
	} {
		if best, _ := c.choose(row.list); row.list[best].name != row.want {
			t.Errorf("%s: %s", name, row.list[best].name)
		}
	}
}

// Every option says what it is, and no two are as grave.
func TestOptionsAreWhole(t *testing.T) {
	grave := map[int]Name{}
	var names []Name
	for _, o := range options() {
		names = append(names, o.name)
		if o.owner == "" || len(o.keeps) == 0 || len(o.loses) == 0 || o.weigh == nil || o.advise == nil {
			t.Errorf("%s lacks words or figures", o.name)
		}
		if other, ok := grave[o.gravity]; ok {
			t.Errorf("%s and %s are as grave", o.name, other)
		}
		grave[o.gravity] = o.name
		if o.name.Owner() != o.owner || o.name.Cuts() != o.cuts {
			t.Errorf("%s: %q", o.name, o.name.Owner())
		}
	}
	for i, n := range Names() {
		if len(names) != len(Names()) || names[i] != n || grave[i] != n {
			t.Errorf("%v, and Names are %v", names, Names())
		}
	}
	if Name("nothing").Cuts() || Name("nothing").Owner() != "nothing" || MeasureFirst.Cuts() || BuyFirst.Cuts() {
		t.Error("a name of no option is one")
	}
	if Swap.Cuts() || Leave.Cuts() || Shim.Cuts() || !Plug.Cuts() || !NewAxle.Cuts() {
		t.Error("what is cut")
	}
}

// The bores of a choice go as its plan has them; those that it does not touch
// are left, in the order of the job.
func TestBoresOfTheChoice(t *testing.T) {
	c := tram()
	c.Other = nil
	c.work(Rebush).Mended = []BoreWay{{"front axle.right", Renew}, {"front axle.left", Rebush}}
	r := decide(t, c)
	want := []BoreWay{{"front axle.left", Rebush}, {"front axle.right", Renew}, {"rear axle.left", Leave}}
	for i, b := range r.Bores {
		if b != want[i] {
			t.Errorf("%v, want %v", r.Bores, want)
		}
	}
	if got := decide(t, tram()).Bores[0]; got.Way != Leave {
		t.Errorf("a truck that is swapped: %v", got)
	}
}

// The words carry their figures: the play of 0.15 mm is 0.0059 in from the
// exact value.
func TestSentencesCarryFigures(t *testing.T) {
	c := tram()
	c.Binds, c.Meshes = false, nil
	if got := decide(t, c).Sentence; got != say.F("Leave it and have it looked at again: the left side of the front axle has %v of play.", say.MM(0.15, 2)) {
		t.Errorf("%q", got)
	}
}

// Everything that is complained of is the reason why it cannot be left.
func TestComplaints(t *testing.T) {
	c := tram()
	c.Meshes, c.Noisy, c.Rubs = nil, true, true
	if got := rowOf(t, decide(t, c), Leave).WhyNot.String(); got != "it binds, is noisy and rubs, and front axle.left has 0.15 mm of play" {
		t.Errorf("%q", got)
	}
}
