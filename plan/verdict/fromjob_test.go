package verdict

import (
	"slices"
	"testing"

	"rebush/plan/job"
)

// facts are a worn hole and one that is left alone, as a plan found them, with
// rules by which figures can be told apart.
func facts() Facts {
	return Facts{Lathe: true,
		Holes: []Hole{{Name: "a.left", Shaft: "a", PlayMM: 0.2, Known: true}, {Name: "b.left", Shaft: "b", Fixed: true}},
		Rules: Rules{Limits: limits, SizeMinutes: 7, AxleMinutes: 45, SidePlayMM: 0.4}}
}

// FromJob: what the casting is, what the owner says, which mesh makes a hole
// wrong, and when a washer would do.
func TestFromJob(t *testing.T) {
	rate := 40.0
	j := &job.Job{Shop: &job.Shop{PerHour: &rate, SetupHours: 0.5, StripHours: 1}, Binds: job.Yes, Noisy: job.No, Rubs: job.No,
		Shafts: []job.Shaft{{Name: "a", JournalState: "pitted"}, {Name: "b", Leave: true}, {Name: "c"}}}
	j.Symptoms.Rims, j.Symptoms.Hubs, j.Symptoms.Gauge = "loose", "tight", "right"
	f := facts()
	f.Meshes = []Pair{{Name: "drive", On: "a", Mate: "b", Known: true, FoundMM: 11.90, LowMM: 12, HighMM: 12.05}}
	f.Play = map[string]float64{"a": 0.85, "b": 3}
	f.Works = []Work{{Name: Rebush, OK: true}}
	c := FromJob(j, f)
	if c.Condition != "unknown" || !c.Binds || c.Noisy || !c.Asked || len(c.Mend) != 1 || !slices.Equal(c.Unchecked, []string{"ohms"}) ||
		*c.Rate != 40 || c.SetupHours != 0.5 || c.StripHours != 1 || len(c.Works) != 1 || c.Limits != limits {
		t.Errorf("%+v", c)
	}
	if got := c.Bores[0].Wrong.String(); got != "drive stands 0.10 mm too close" {
		t.Errorf("wrong: %q", got)
	}
	if c.Bores[1].Wrong != "" {
		t.Errorf("a hole that is left alone: %+v", c.Bores[1])
	}
	if a := c.Axles[0]; a.State != "pitted" || !a.HasNew || a.Minutes != 45 {
		t.Errorf("%+v", a)
	}
	if c.ShimFor.String() != "side play of a, 0.85 mm" || c.ShimMinutes != 7 {
		t.Errorf("washer for %q", c.ShimFor)
	}
	f.Play["c"] = 0.90 // the looser one, and of equals the first by name
	if got := FromJob(j, f).ShimFor.String(); got != "side play of c, 0.90 mm" {
		t.Errorf("washer for %q", got)
	}
	f.Play["a"] = 0.90
	if got := FromJob(j, f).ShimFor.String(); got != "side play of a, 0.90 mm" {
		t.Errorf("washer for %q", got)
	}
	slices.Reverse(j.Shafts)
	if got := FromJob(j, f).ShimFor.String(); got != "side play of a, 0.90 mm" {
		t.Errorf("washer for %q", got)
	}
	f.Play["a"], f.Play["c"] = 0.80, 0.80 // twice what is wanted is no more than that
	if got := FromJob(j, f).ShimFor; got != "" {
		t.Errorf("washer for %q", got)
	}
}

// A mesh makes a hole wrong where its gears are known, by how far it stands off
// what is wanted; an old bush that is out and a centre that nobody knows do too.
func TestWrong(t *testing.T) {
	j := &job.Job{Shop: &job.Shop{}}
	for name, row := range map[string]struct {
		change func(*Facts)
		want   string
	}{
		"too far":        {func(f *Facts) { f.Meshes[0].FoundMM = 12.12 }, "drive stands 0.07 mm too far apart"},
		"by next to nil": {func(f *Facts) { f.Meshes[0].FoundMM = 12.0505 }, "drive stands 0.0005 mm too far apart"},
		"inside":         {func(f *Facts) { f.Meshes[0].FoundMM = 12.05 }, ""},
		"on its edge":    {func(f *Facts) { f.Meshes[0].FoundMM = 12 }, ""},
		"gears unknown":  {func(f *Facts) { f.Meshes[0].FoundMM, f.Meshes[0].Known = 12.12, false }, ""},
		"other shafts":   {func(f *Facts) { f.Meshes[0].FoundMM, f.Meshes[0].On = 12.12, "b" }, ""},
		"as the mate":    {func(f *Facts) { f.Meshes[0].FoundMM, f.Meshes[0].On, f.Meshes[0].Mate = 12.12, "b", "a" }, "drive stands 0.07 mm too far apart"},
		"old bush out":   {func(f *Facts) { f.Holes[0].BushOut = true }, "the old bush of a.left is out"},
		"no centre":      {func(f *Facts) { f.Holes[0].Known = false }, "nothing tells where the centre of a.left was"},
		"left alone":     {func(f *Facts) { f.Holes[0].Fixed, f.Holes[0].BushOut = true, true }, ""},
	} {
		f := facts()
		f.Meshes = []Pair{{Name: "drive", On: "a", Known: true, FoundMM: 12.02, LowMM: 12, HighMM: 12.05}}
		row.change(&f)
		if got := FromJob(j, f).Bores[0].Wrong.String(); got != row.want {
			t.Errorf("%s: %q, want %q", name, got, row.want)
		}
	}
}

// What the casting is like, the worst first.
func TestCondition(t *testing.T) {
	j := &job.Job{Shop: &job.Shop{}}
	f := facts()
	is := func(want string) {
		t.Helper()
		if got := FromJob(j, f).Condition; got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	is("unknown")
	j.Chassis.Condition = "sound"
	is("sound")
	f.Metal = "magnesium"
	is("magnesium")
	f.Swollen = true
	is("swollen")
	j.Chassis.Condition = "cracked"
	is("cracked")
}

// Both holes of an axle are put right, not one; one that is to be left alone is
// none of them.
func TestNeeded(t *testing.T) {
	c := Case{Limits: limits, Bores: []Bore{{Name: "a.left", Shaft: "a", PlayMM: 0.09}, {Name: "a.right", Shaft: "a"},
		{Name: "b.left", Shaft: "b", PlayMM: 0.08}, {Name: "b.right", Shaft: "b"}, {Name: "c.left", Shaft: "c", Wrong: "off"},
		{Name: "c.right", Shaft: "c", Fixed: true, PlayMM: 1}, {Name: "loose", PlayMM: 0.3}, {Name: "bare"}}}
	if got := c.Needed(); !slices.Equal(got, []string{"a.left", "a.right", "c.left", "loose"}) {
		t.Errorf("%v", got)
	}
}

// What is printed has money and hours to a hundredth and chances to a
// millionth, an empty list for nothing, and an option for each way.
func TestRow(t *testing.T) {
	r := decide(t, tram())
	row := r.Row("USD")
	for i, o := range row.Options {
		w := r.Rows()[i]
		if o.Name != w.Way || o.Feasible != (w.OK && w.Cures) || o.WhyNot != w.WhyNot || o.Cost != w.Cost && *o.Cost != *w.Cost {
			t.Errorf("%+v beside %+v", o, w)
		}
		if o.Name == Rebush && (*o.Cost != 117.68 || *o.Hours != 2.83 || *o.Chance != 0.81 || *w.Lost != 0.01) {
			t.Errorf("%v %v %v", *o.Cost, *o.Hours, *o.Chance)
		}
	}
	if row.Needs == nil || row.Tried == nil || row.Then != nil || row.Currency != "USD" || !row.Cures || row.Choice != Swap {
		t.Errorf("%+v", row)
	}
	cost := 116.83467
	r.Needs, r.Then = []Need{{Cost: &cost}}, &Then{Way: Rebush, Cost: &cost, FirstTimeRight: at(0.12345678)}
	if row = r.Row(""); *row.Needs[0].Cost != 116.83 || *row.Then.Cost != 116.83 || *row.Then.FirstTimeRight != 0.123457 || cost != 116.83467 {
		t.Errorf("%+v %+v", row.Needs[0], row.Then)
	}
}
