package verdict

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rebush/fits/finding"
)

func at(v float64) *float64 { return &v }

var limits = Limits{LeaveMM: 0.08, LookAgainMM: 0.25, Tie: 0.10, ReworkMinutes: 10, SpoiltMinutes: 20, SecondHand: 0.8}

// tram is a two-bore job beside another truck at 65.
func tram() Case {
	way := func() []Way {
		return []Way{
			{Name: Renew, WhyNot: "no old bush"},
			{Name: Rebush, Minutes: 40, Setups: []string{"A"}, Bush: at(0.85), Chance: 0.9, MetalMM: 0.9},
			{Name: Plug, Minutes: 80, Setups: []string{"A"}, Bush: at(2), Chance: 0.9, MetalMM: 1.4},
		}
	}
	return Case{
		Condition: "sound", Binds: true,
		Bores: []Bore{{Name: "front axle.left", PlayMM: 0.15, Ways: way()}, {Name: "front axle.right", PlayMM: 0.13, Ways: way()},
			{Name: "rear axle.left", PlayMM: 0.04, Fixed: true}},
		Axles:  []Axle{{Name: "front axle", State: "good"}},
		Meshes: []Mesh{{Name: "front drive", Right: false, Words: "0.10 mm too close"}},
		Rate:   at(40), Currency: "USD", SetupHours: 0.5, StripHours: 1,
		Faults: []Fault{{"rework", 0.10, 10, nil, false}, {"spoilt bush", 0.05, 20, at(0.85), false}, {"another bush", 0.03, 20, at(1.20), false}, {"lost", 0.01, 0, nil, true}},
		Other:  &Offer{Price: 65, Hours: 0.5, SecondHand: true},
		Value:  at(120), Limits: limits,
	}
}

func decide(t *testing.T, c Case) Result {
	t.Helper()
	r, err := Decide(c)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func optionOf(t *testing.T, r Result, name Name) Option {
	t.Helper()
	for _, o := range r.Options {
		if o.Name == name {
			return o
		}
	}
	t.Fatalf("no option %s", name)
	return Option{}
}

// By hand:
//
//	re-bush: 2 x 40 min = 1.3333 h, one clamping 0.5, strip and rebuild 1.0: 2.8333 h
//	         2.8333 x 40 = 113.3333; two bushes 1.70
//	         rework 0.10 x 10/60 x 40 = 0.6667
//	         spoilt 0.05 x (20/60 x 40 + 0.85) = 0.7092
//	         another 0.03 x (13.3333 + 1.20) = 0.4360
//	         lost 0.01 x min(120, 65 + 0.5 x 40 = 85) = 0.85
//	         in all 117.6952; right first time 1 - 0.10 - 0.05 - 0.03 - 0.01 = 0.81
//	swap:    (65 + 0.5 x 40) x (1 + 0.2) = 102.00
//
// 117.70 is more than a tenth above 102, so swap. With the rate r:
// re-bush (2.83333 + 0.016667 + 0.016667 + 0.01 + 0.005) r + 1.70 + 0.0425 +
// 0.036 + 0.65 = 2.881667 r + 2.4285; it is chosen once that is at most
// 1.1 x 1.2 x (65 + 0.5 r) = 85.8 + 0.66 r: r = 83.3715/2.221667 = 37.527.
func TestMoneyByHand(t *testing.T) {
	r := decide(t, tram())
	re, sw := optionOf(t, r, Rebush), optionOf(t, r, Swap)
	if math.Abs(*re.Hours-2.83333) > 1e-4 || math.Abs(*re.Cost-117.6952) > 1e-3 || math.Abs(*re.Chance-0.81) > 1e-9 {
		t.Errorf("re-bush %v h, %v, %v", *re.Hours, *re.Cost, *re.Chance)
	}
	if math.Abs(*sw.Cost-102) > 1e-9 || *sw.Hours != 0.5 || *sw.Chance != 0.8 {
		t.Errorf("swap %v, %v h, %v", *sw.Cost, *sw.Hours, *sw.Chance)
	}
	if r.Choice != Swap || r.RunnerUp == nil || r.RunnerUp.Name != Rebush {
		t.Fatalf("%s before %+v", r.Choice, r.RunnerUp)
	}
	if want := "at 37 an hour instead of 40, re-bush"; r.RunnerUp.WinsIf.String() != want {
		t.Errorf("wins %q, want %q", r.RunnerUp.WinsIf, want)
	}
	for _, word := range []string{"102 USD", "118 USD", "80 in 100"} {
		if !strings.Contains(r.Sentence.String(), word) {
			t.Errorf("sentence without %q: %s", word, r.Sentence)
		}
	}
	// The break-even is one: 37 turns it, 38 does not.
	c := tram()
	c.Rate = at(37)
	if got := decide(t, c); got.Choice != Rebush {
		t.Errorf("at 37: %s", got.Choice)
	}
	c.Rate = at(38)
	if got := decide(t, c); got.Choice != Swap {
		t.Errorf("at 38: %s", got.Choice)
	}
}

// A plan of one bore without trials: 1 x 40 min, clamping 0.5, strip 1.0 =
// 2.1667 h; x 30 = 65; bush 4; fails 0.1 of the time: 0.1 x (20/60 x 30 + 4) =
// 1.40; in all 70.40.
func TestMoneyWithoutTrials(t *testing.T) {
	c := tram()
	c.Bores = []Bore{{Name: "a.left", PlayMM: 0.3, Ways: []Way{{Name: Renew, Minutes: 40, Setups: []string{"A"}, Bush: at(4), Chance: 0.9}}}}
	c.Rate, c.Faults, c.Other = at(30), nil, nil
	o := optionOf(t, decide(t, c), Renew)
	if math.Abs(*o.Cost-70.40) > 1e-9 {
		t.Errorf("cost %v, want 70.40", *o.Cost)
	}
}

func TestChoices(t *testing.T) {
	quiet := func(c *Case) { c.Binds, c.Meshes = false, nil }
	for name, row := range map[string]struct {
		change  func(*Case)
		choice  Name
		finding string // rule
	}{
		"kept original":          {func(c *Case) { c.KeepOriginal = true }, Rebush, ""},
		"no other truck":         {func(c *Case) { c.Other = nil }, Rebush, ""},
		"cracked, swap offered":  {func(c *Case) { c.Condition = "cracked" }, Swap, ""},
		"cracked, nothing else":  {func(c *Case) { c.Condition, c.Other = "cracked", nil }, Leave, ""},
		"unknown condition":      {func(c *Case) { c.Condition, c.Other = "unknown", nil }, Rebush, ""},
		"impostors":              {func(c *Case) { c.Unchecked = []string{"rims"} }, Swap, "look-alikes"},
		"little play":            {func(c *Case) { quiet(c); c.Bores[0].PlayMM, c.Bores[1].PlayMM = 0.08, 0.05 }, Leave, ""},
		"little play, complaint": {func(c *Case) { quiet(c); c.Noisy = true; c.Bores[0].PlayMM, c.Bores[1].PlayMM = 0.08, 0.05 }, Leave, "complaint"},
		"some play":              {quiet, Leave, "play"},
		"some play, rubs":        {func(c *Case) { quiet(c); c.Rubs, c.Other = true, nil }, Rebush, ""},
		"too much play":          {func(c *Case) { quiet(c); c.Bores[0].PlayMM, c.Other = 0.26, nil }, Rebush, ""},
		"side play only": {func(c *Case) {
			quiet(c)
			c.Bores[0].PlayMM, c.Bores[1].PlayMM, c.ShimFor, c.ShimMinutes = 0.05, 0.05, "side play 0.9 mm", 10
		}, Shim, ""},
		"pitted, no axle": {func(c *Case) { c.Axles[0].State, c.Other = "pitted", nil }, Leave, ""},
		"pitted, axle": {func(c *Case) {
			c.Axles[0].State, c.Axles[0].HasNew, c.Axles[0].Price, c.Other = "pitted", true, at(6), nil
		}, NewAxle, ""},
		"sound seats": {func(c *Case) {
			c.Other = nil
			for i := range c.Bores[:2] {
				c.Bores[i].Ways[0] = Way{Name: Renew, Minutes: 15, Bush: at(0.85), Chance: 0.95}
			}
		}, Renew, ""},
		"no price of a bush": {func(c *Case) { c.Bores[0].Ways[1].Bush, c.Other = nil, nil }, Rebush, "price"},
		"loss unknown":       {func(c *Case) { c.Other, c.Value = nil, nil }, Rebush, "loss"},
		"value, no swap":     {func(c *Case) { c.Other = nil }, Rebush, ""},
		"no rate":            {func(c *Case) { c.Rate = nil }, Rebush, "rates"},
	} {
		c := tram()
		row.change(&c)
		r := decide(t, c)
		if r.Choice != row.choice {
			t.Errorf("%s: %s, want %s: %s", name, r.Choice, row.choice, r.Sentence)
		}
		if len(r.Options) != len(options()) || len(r.Bores) != len(c.Bores) {
			t.Errorf("%s: %d options, %d bores", name, len(r.Options), len(r.Bores))
		}
		for _, o := range r.Options {
			if o.Feasible == (o.WhyNot != "") || (o.Cost != nil && c.Rate == nil) || len(o.Loses) == 0 || len(o.Keeps) == 0 {
				t.Errorf("%s: %+v", name, o)
			}
		}
		found := row.finding == ""
		for _, f := range r.Findings {
			found = found || f.Rule.Name() == row.finding
		}
		if !found {
			t.Errorf("%s: no finding %q in %+v", name, row.finding, r.Findings)
		}
		if !strings.HasSuffix(r.Sentence.String(), ".") || strings.Contains(r.Sentence.String(), "NaN") {
			t.Errorf("%s: %q", name, r.Sentence)
		}
		t.Logf("%s: %s | %+v", name, r.Sentence, r.RunnerUp)
	}
}

// Whatever the money says, a casting that is going, or whose chips burn, is not
// cut; the plan has said the stop before.
func TestDoomedIsNotCut(t *testing.T) {
	for _, condition := range []string{"cracked", "swollen", "magnesium"} {
		c := tram()
		c.Condition, c.Other = condition, nil
		r := decide(t, c)
		cut := 0
		for _, o := range r.Options {
			if !o.Name.Cuts() {
				continue
			}
			cut++
			if o.Feasible || o.WhyNot.String() != "the casting is "+condition+": no machining" {
				t.Errorf("%s: %s may be done (%v)", condition, o.Name, o.WhyNot)
			}
		}
		if cut != 5 || r.Choice != Leave {
			t.Errorf("%s: %d ways cut, %s is chosen", condition, cut, r.Choice)
		}
	}
}

func TestRefused(t *testing.T) {
	for name, spoil := range map[string]func(*Case){
		"rate":   func(c *Case) { c.Rate = at(-1) },
		"nan":    func(c *Case) { c.Value = at(math.NaN()) },
		"chance": func(c *Case) { c.Other.Chance = at(1.2) },
		"bores":  func(c *Case) { c.Bores = nil },
	} {
		c := tram()
		spoil(&c)
		if _, err := Decide(c); err == nil {
			t.Errorf("%s: decided", name)
		}
	}
}

// In hours only the price of another truck cannot be weighed: the repair is
// chosen, and the rate is named from which it would not be. By hand, as above:
// the choice turns at a rate of 37.527, so from 38 an hour.
func TestHoursOnly(t *testing.T) {
	c := tram()
	c.Rate = nil
	r := decide(t, c)
	if r.RunnerUp == nil || r.RunnerUp.Name != Swap || r.RunnerUp.WinsIf.String() != "at 38 an hour or more, swap" {
		t.Errorf("runner-up %+v", r.RunnerUp)
	}
	if strings.Contains(r.Sentence.String(), "USD") || !strings.Contains(r.Sentence.String(), "2.8 hours") {
		t.Errorf("%s", r.Sentence)
	}
	c.Condition = "cracked"
	if r = decide(t, c); r.Choice != Swap {
		t.Errorf("cracked, no rate: %s", r.Choice)
	}
}

// Within a tenth of the cheapest, the one that takes off less metal.
func TestTieGoesToMetal(t *testing.T) {
	c := tram()
	c.Other = nil
	for i := range c.Bores[:2] {
		// Renew a little dearer than re-bush, and takes nothing off.
		c.Bores[i].Ways[0] = Way{Name: Renew, Minutes: 45, Setups: []string{"A"}, Bush: at(0.85), Chance: 0.95}
	}
	r := decide(t, c)
	re, rn := optionOf(t, r, Rebush), optionOf(t, r, Renew)
	if !(*rn.Cost > *re.Cost && *rn.Cost < 1.1**re.Cost) {
		t.Fatalf("the case is none: %v and %v", *rn.Cost, *re.Cost)
	}
	if r.Choice != Renew {
		t.Errorf("%s, want renew", r.Choice)
	}
}

// Whatever the figures: a break-even rate that is named does turn the choice,
// and a dearer hour never makes an option cheaper.
func TestBreakEvenTurns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := tram()
		c.Rate = at(rapid.Float64Range(5, 120).Draw(t, "rate"))
		c.Other.Price = rapid.Float64Range(10, 300).Draw(t, "price")
		c.Bores[0].Ways[1].Minutes = rapid.Float64Range(10, 200).Draw(t, "minutes")
		r, err := Decide(c)
		if err != nil {
			t.Fatal(err)
		}
		if r.RunnerUp == nil {
			t.Fatal("no runner-up")
		}
		words := strings.Fields(r.RunnerUp.WinsIf.String())
		if len(words) > 2 && words[0] == "at" && words[2] == "an" {
			v, err := strconv.ParseFloat(words[1], 64)
			if err != nil {
				t.Fatal(err)
			}
			up := c
			up.Rate = &v
			// Rounding may overshoot a narrow window of rates, not by more than 2 %.
			if got, _ := Decide(up); got.Choice != r.RunnerUp.Name {
				t.Fatalf("%s at %v: %s, said %q", r.Choice, *c.Rate, got.Choice, r.RunnerUp.WinsIf.String())
			}
		}
		up := c
		up.Rate = at(*c.Rate * 1.1)
		dear, _ := Decide(up)
		for i, o := range r.Options {
			if o.Cost != nil && dear.Options[i].Cost != nil && *dear.Options[i].Cost < *o.Cost {
				t.Fatalf("%s cheaper at a dearer hour", o.Name)
			}
		}
	})
}

// What an owner is told holds no more than is known, and names the reason.
func TestSentences(t *testing.T) {
	const dear = "seat only 2.03 mm long, needs 2.38 or a flange"
	little := func(c *Case) { c.Bores[0].PlayMM, c.Bores[1].PlayMM = 0.05, 0.04 }
	stuck := func(c *Case) {
		for i := range c.Bores[:2] {
			c.Bores[i].Ways = []Way{{Name: Rebush, WhyNot: dear, Owner: "no bearing we have fits the metal that is left"}}
		}
	}
	loose := Fake{"a rim is loose", "it feels just like a worn hole"}
	for name, row := range map[string]struct {
		change   func(*Case)
		has, not string
	}{
		"no mesh, nothing asked":     {func(c *Case) { c.Binds, c.Meshes = false, nil }, "0.15 mm of play", "run right"},
		"nobody asked":               {func(c *Case) { c.Binds, c.Meshes = false, nil }, "looked at again", "complains"},
		"asked":                      {func(c *Case) { c.Binds, c.Meshes, c.Asked = false, nil, true }, "nobody complains", "run right"},
		"mesh not measured":          {func(c *Case) { c.Binds, c.Meshes[0].Right = false, true }, "looked at again", "run right"},
		"one of two measured":        {func(c *Case) { c.Binds, c.Meshes = false, []Mesh{{Right: true, Known: true}, {Right: true}} }, "looked at again", "run right"},
		"mesh measured":              {func(c *Case) { c.Binds, c.Meshes = false, []Mesh{{Right: true, Known: true}} }, "the gears run right", "complains"},
		"complaint, mesh unmeasured": {func(c *Case) { little(c); c.Meshes = nil }, "look there too", "run right"},
		"loose rim":                  {func(c *Case) { c.Mend = []Fake{loose} }, "A rim is loose: that is mended first", ""},
		"loose rim and a leak":       {func(c *Case) { c.Mend = []Fake{loose, {"a wheel leaks", "so"}} }, "A rim is loose and a wheel leaks: that is mended first", "since so"},
		"nothing fits":               {func(c *Case) { stuck(c); c.Other = nil }, "no bearing we have fits the metal that is left", "2.03"},
		"swap, nothing fits":         {stuck, "Another truck is the better way, since no bearing we have fits", "2.03"},
		"swap, dearer repair":        {func(*Case) {}, "Another truck is the better way: about", "since"},
		"swap, cracked":              {func(c *Case) { c.Condition = "cracked" }, "since the casting is cracked", ""},
		"swap, swollen":              {func(c *Case) { c.Condition = "swollen" }, "since the casting is swollen", ""},
		"swollen, little play":       {func(c *Case) { little(c); c.Condition, c.Meshes, c.Binds = "swollen", nil, false }, "the casting is swollen", "Another"},
		"pitted":                     {func(c *Case) { c.Axles[0].State, c.Other = "pitted", nil }, "pitted", ""},
	} {
		c := tram()
		row.change(&c)
		r := decide(t, c)
		if !strings.Contains(r.Sentence.String(), row.has) || row.not != "" && strings.Contains(r.Sentence.String(), row.not) {
			t.Errorf("%s: %s", name, r.Sentence)
		}
		t.Log(name + ": " + r.Sentence.String())
	}
}

// A fault that passes for a worn hole is a caution and no stop: the job may be
// planned, and nothing is bored before it is mended.
func TestMendFirst(t *testing.T) {
	c := tram()
	before := decide(t, c)
	c.Mend = []Fake{{"a hub is loose on its axle", "it feels just like a worn hole"}}
	r := decide(t, c)
	if r.Findings.Stops() || r.Choice != before.Choice {
		t.Errorf("%s: %+v", r.Choice, r.Findings)
	}
	n := 0
	for _, f := range r.Findings {
		if f.Rule.Name() == "mend first" && f.Level == finding.Caution && strings.Contains(f.Text.String(), "a hub is loose on its axle: mend that first") {
			n++
		}
	}
	if n != 1 {
		t.Errorf("said %d times: %+v", n, r.Findings)
	}
}

// A swap takes no metal off and is still last in a tie: it gives the whole
// truck away. 117.70 for the repair is within a tenth of 108 for the truck.
func TestSwapIsLastInATie(t *testing.T) {
	c := tram()
	c.Other.Price = 70 // (70 + 20) x 1.2 = 108
	r := decide(t, c)
	re, sw := *optionOf(t, r, Rebush).Cost, *optionOf(t, r, Swap).Cost
	if !(sw < re && re < 1.1*sw) {
		t.Fatalf("the case is none: %v and %v", re, sw)
	}
	if r.Choice != Rebush {
		t.Errorf("%s", r.Choice)
	}
}
