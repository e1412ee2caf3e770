package verdict

import (
	"math/rand/v2"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rebush/fits/finding"
	"rebush/fits/say"
)

// What an owner is told holds no more than is known, and names the reason.
func TestSentences(t *testing.T) {
	little := func(c *Case) { c.Bores[0].PlayMM, c.Bores[1].PlayMM = 0.05, 0.04 }
	quiet := func(c *Case) { c.Binds, c.Meshes = false, nil }
	alone := func(c *Case) { c.Other = nil }
	runs := func(known ...bool) (out []Mesh) {
		for _, k := range known {
			out = append(out, Mesh{Right: true, Known: k})
		}
		return out
	}
	loose := Fake{"a rim is loose", "it feels just like a worn hole"}
	for name, row := range map[string]struct {
		change   func(*Case)
		has, not string
	}{
		"no mesh, nothing asked":     {quiet, "0.15 mm of play", "run right"},
		"nobody asked":               {quiet, "looked at again", "complains"},
		"asked":                      {func(c *Case) { quiet(c); c.Asked = true }, "nobody complains", "run right"},
		"mesh not measured":          {func(c *Case) { c.Binds, c.Meshes = false, runs(false) }, "looked at again", "run right"},
		"one of two measured":        {func(c *Case) { c.Binds, c.Meshes = false, runs(true, false) }, "looked at again", "run right"},
		"mesh measured":              {func(c *Case) { c.Binds, c.Meshes = false, runs(true) }, "and the gears run right.", "complains"},
		"little play, gears right":   {func(c *Case) { little(c); c.Binds, c.Meshes = false, runs(true) }, "Leave it alone: the most play is 0.05 mm at the left side of the front axle, and the gears run right.", ""},
		"complaint, mesh unmeasured": {func(c *Case) { little(c); c.Meshes = nil }, "look there too", "run right"},
		"complaint, gears right":     {func(c *Case) { little(c); c.Meshes = runs(true) }, "and the gears run right, so what you notice comes from somewhere else.", "not known"},
		"no play at all":             {func(c *Case) { c.Bores, c.Meshes = c.Bores[2:], nil }, "no bearing has any play that could be told, so what you notice", "at the"},
		"loose rim": {func(c *Case) { c.Mend = []Fake{loose} },
			"A rim is loose: mend that first and run it again, since it feels just like a worn hole. If it is still not right, another truck is", ""},
		"loose rim and a leak": {func(c *Case) { c.Mend = []Fake{loose, {"a wheel leaks", "so"}} },
			"A rim is loose and a wheel leaks: mend that first and run it again, since each can pass", "since so"},
		"loose rim, little play": {func(c *Case) { little(c); quiet(c); c.Mend = []Fake{loose} }, "Beside that, leave it alone: the most", ""},
		"nothing fits": {func(c *Case) { stopped(c); alone(c) },
			"Nothing that we would advise cures it: the plate is too thin for any bearing we have; no other truck is offered. Leave it as it is for now.", "2.03"},
		"nothing fits, original kept": {func(c *Case) { stopped(c); c.KeepOriginal = true }, "too thin for any bearing we have; the original is to be kept.", "offered"},
		"swap, nothing fits":          {stopped, "Another truck is the better way, since the plate is too thin for any bearing we have: about 102 USD", "2.03"},
		"swap, dearer repair":         {func(*Case) {}, "Another truck is the better way: about", "since"},
		"swap, cracked":               {func(c *Case) { c.Condition = "cracked" }, "since the casting is cracked and must not be cut: about", "against"},
		"swap, swollen":               {func(c *Case) { c.Condition = "swollen" }, "since the casting is swollen", ""},
		"swollen, little play":        {func(c *Case) { little(c); quiet(c); c.Condition = "swollen" }, "Leave it as it is: the casting is swollen and must not be cut, and the most play is 0.05 mm", "Another"},
		"cracked, loose rim":          {func(c *Case) { c.Condition, c.Mend = "cracked", []Fake{loose} }, "Another truck", "mend"},
		"pitted": {func(c *Case) { alone(c); c.Axles[0].State = "pitted" },
			"cures it: the journal of front axle is pitted and would eat the new bearings; no other", ""},
		"the likeliest is named": {func(c *Case) { alone(c); c.work(Rebush).Trials.Right, c.work(Plug).Trials.Right = 0.41, 0.2 },
			"the likeliest repair is new bearings, of which only 41 in 100 come right at the first go", "filling"},
		"to be known": {func(c *Case) { stopped(c); asks(c) }, "since nobody knows the seat behind the old bush: about 102", "front axle.left"},
		"all complaints": {func(c *Case) {
			c.Meshes, c.Noisy, c.Rubs, c.Bores[0].PlayMM, c.Condition, c.Other = nil, true, true, 0.2, "sound", nil
			stopped(c)
			c.Works = nil
		},
			"Nothing that we would advise cures it: no repair is open to it", ""},
		"the nearest is named": {func(c *Case) { stopped(c); c.work(Rebush).Near, c.work(Plug).Near = false, true },
			"since there is no room to fill the hole", ""},
		"a mesh that no bearing moves": {func(c *Case) { alone(c); c.Bores = c.Bores[2:] }, "front drive stands 0.10 mm too close, and new bearings would not change that; no other truck is offered.", ""},
		"no price of time":             {func(c *Case) { c.Rate, c.Condition = nil, "cracked" }, "about 0.5 hours of work and its price of 65 USD, counting", "not known"},
		"a washer": {func(c *Case) { little(c); quiet(c); c.ShimFor, c.ShimMinutes = "side play of front axle, 0.90 mm", 30 },
			"A washer puts it right (side play of front axle, 0.90 mm): about 60 USD", "worn"},
	} {
		c := tram()
		row.change(&c)
		r := decide(t, c)
		said := r.Sentence.String()
		if !strings.Contains(said, row.has) || row.not != "" && strings.Contains(said, row.not) {
			t.Errorf("%s: %s", name, said)
		}
		for _, bad := range []string{"..", "  ", ": :", " ,", ",,", "the .", "<nil>", "Inf"} {
			if strings.Contains(said, bad) {
				t.Errorf("%s: %q in %s", name, bad, said)
			}
		}
		t.Log(name + ": " + said)
	}
}

// Names of bores are spoken as they are: a word takes its article.
func TestSpoken(t *testing.T) {
	for bore, want := range map[string]string{"front axle.left": "left side of the front axle", "axle.right": "right side of the axle",
		"s0.left": "left side of s0", "axle 2.left": "left side of axle 2", "a.left": "left side of a", "here": "here"} {
		if got := spoken(bore); got != want {
			t.Errorf("%s: %q, want %q", bore, got, want)
		}
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
	c.Other = nil
	stopped(&c)
	buy := Try{Key: "a", Do: "buy", What: "a reamer", Tried: tried("buy", 5), Then: after(t, 80)}
	want := "If it is still not right, nothing more yet, since the plate is too thin for any bearing we have. First buy a reamer: with that"
	if got := decide(t, c).First(c, []Try{buy}).Sentence.String(); !strings.Contains(got, want) {
		t.Errorf("%s", got)
	}
}

// The order of holes, axles, meshes and ways decides neither what is chosen nor
// what is said.
func TestOrderDecidesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := tram()
		play := rapid.SampledFrom([]float64{0.05, 0.10, 0.15, 0.30})
		for i := range c.Bores {
			c.Bores[i].PlayMM, c.Bores[i].Fixed = play.Draw(t, "play"), rapid.Bool().Draw(t, "fixed")
			if rapid.Bool().Draw(t, "wrong") {
				c.Bores[i].Wrong = "the old bush of " + say.Words(c.Bores[i].Name) + " is out"
			}
		}
		states := rapid.SampledFrom([]string{"good", "pitted", "bent"})
		c.Axles = []Axle{{Name: "front axle", State: states.Draw(t, "front"), HasNew: rapid.Bool().Draw(t, "new")}, {Name: "rear axle", State: states.Draw(t, "rear")}}
		c.Meshes = nil
		for _, name := range []string{"one", "two", "three"} {
			m := Mesh{Name: name, Known: true, Right: rapid.Bool().Draw(t, "right"), OffMM: rapid.SampledFrom([]float64{0.02, 0.05}).Draw(t, "off")}
			m.Words = say.Words(name + " off")
			c.Meshes = append(c.Meshes, m)
		}
		c.Works[0] = Work{Name: MadeToFit, OK: true, Minutes: rapid.SampledFrom([]float64{70, 80, 90}).Draw(t, "minutes"), Clampings: 1,
			Parts: bushings(at(0.85)), MetalMM: 0.9, Trials: &Trials{Right: rapid.SampledFrom([]float64{0.2, 0.81}).Draw(t, "right")}}
		if rapid.Bool().Draw(t, "alone") {
			c.Other = nil
		}
		if rapid.Bool().Draw(t, "stopped") {
			stopped(&c)
		}
		a, err := Decide(c)
		if err != nil {
			t.Fatal(err)
		}
		rand.Shuffle(len(c.Bores), func(i, k int) { c.Bores[i], c.Bores[k] = c.Bores[k], c.Bores[i] })
		rand.Shuffle(len(c.Axles), func(i, k int) { c.Axles[i], c.Axles[k] = c.Axles[k], c.Axles[i] })
		rand.Shuffle(len(c.Meshes), func(i, k int) { c.Meshes[i], c.Meshes[k] = c.Meshes[k], c.Meshes[i] })
		rand.Shuffle(len(c.Works), func(i, k int) { c.Works[i], c.Works[k] = c.Works[k], c.Works[i] })
		b, err := Decide(c)
		if err != nil {
			t.Fatal(err)
		}
		if a.Choice != b.Choice || a.Sentence != b.Sentence {
			t.Fatalf("%s\n%s", a.Sentence, b.Sentence)
		}
		for i := range a.Ways {
			if a.Ways[i].WhyNot != b.Ways[i].WhyNot {
				t.Fatalf("%s: %q, and %q", a.Ways[i].Way, a.Ways[i].WhyNot, b.Ways[i].WhyNot)
			}
		}
	})
}
