package verdict

import (
	"math"
	"slices"
	"testing"

	"rebush/fits/say"
	"rebush/plan/job"
)

// bench is a shop with a lathe and a mill, and rules by which figures can be
// told apart.
func bench(holes ...Hole) Facts {
	return Facts{OK: true, Lathe: true, Placer: true, Holes: holes,
		Rules: Rules{Limits: limits, NoWallRadii: 0.5, OtherChance: 0.9, UnseatedChance: 0.8,
			TurnMinutes: 25, PressMinutes: 5, ToolMinutes: 3, SizeMinutes: 7, AxleMinutes: 45, SidePlayMM: 0.4}}
}

// worn is a hole of 3.2 whose bush was chosen, 2.4 mm from an edge.
func worn() Hole {
	return Hole{Name: "a.left", Shaft: "a", PlayMM: 0.2, Bushed: true, Known: true, Placed: true, Worn: true,
		Seat:    &Seat{Chance: 0.95, MetalMM: 0.9, Price: at(0.85)},
		Nearest: &Reason{Text: "too tight", Owner: "no bearing fits"},
		Minutes: 40, Setups: []string{"B"}, BoreMM: [2]float64{3.175, 3.22}, RadiusMM: 1.6, SleeveMM: 3.5, PlugMM: 3.8,
		Room: []Room{{"the edge", 6}, {"rear.left", 5.7}}}
}

func way(t *testing.T, h Hole, f Facts, name Name) Way {
	t.Helper()
	for _, w := range h.ways(&f) {
		if w.Name == name {
			return w
		}
	}
	t.Fatalf("no way %s", name)
	return Way{}
}

// By hand: a sleeve costs the 40 minutes of the plan, 25 to turn it and 5 to
// press it; its chance is 0.9 x 0.95, it takes 3.5 - 1.6 off. A plug is the
// same and a clamping more. Where no bush was found they cost 25 + 5 and two
// tools, a press and a sizing, 2 x 3 + 5 + 7, in one clamping, at 0.9 x 0.8.
func TestSleeveAndPlugByHand(t *testing.T) {
	f := bench()
	s := way(t, worn(), f, BushInABush)
	if s.WhyNot != "" || s.Minutes != 70 || math.Abs(s.Chance-0.855) > 1e-12 || math.Abs(s.MetalMM-1.9) > 1e-12 ||
		*s.Bush != 0.85 || !slices.Equal(s.Setups, []string{"B"}) {
		t.Errorf("sleeve %+v", s)
	}
	p := way(t, worn(), f, Plug)
	if p.Minutes != 70 || math.Abs(p.MetalMM-2.2) > 1e-12 || !slices.Equal(p.Setups, []string{"B", "after plugging"}) {
		t.Errorf("plug %+v", p)
	}
	h := worn()
	h.Seat, h.Minutes, h.Setups = nil, 0, nil
	s = way(t, h, f, BushInABush)
	if s.Minutes != 48 || math.Abs(s.Chance-0.72) > 1e-12 || s.Bush != nil || !slices.Equal(s.Setups, []string{"A"}) {
		t.Errorf("sleeve without a bush %+v", s)
	}
}

// What is not there, and what the wall would be: 5.7 - 3.8 leaves the 1.9 that
// 0.5 x 3.8 asks for, 5.45 - 3.8 does not.
func TestWhyAHoleCannotGoAWay(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Hole, *Facts)
		way    Name
		why    string
	}{
		"plug beside a hole":    {func(h *Hole, f *Facts) {}, Plug, ""},
		"plug, too near a hole": {func(h *Hole, f *Facts) { h.Room[1].MM = 5.45 }, Plug, "leaves 1.65 mm to rear.left, needs 1.90"},
		"plug through the edge": {func(h *Hole, f *Facts) { h.Room[0].MM = 3.7 }, Plug, "would break 0.10 mm through to the edge"},
		"sleeve, same edge":     {func(h *Hole, f *Facts) { h.Room[0].MM = 5.3 }, BushInABush, ""},
		"never a bush":          {func(h *Hole, f *Facts) { h.Bushed = false }, BushInABush, "there never was a bush in it: the axle runs in the bare hole"},
		"no lathe":              {func(h *Hole, f *Facts) { f.Lathe = false }, Plug, "it has to be turned and the shop has no lathe"},
		"drill press":           {func(h *Hole, f *Facts) { f.OK, f.Placer = false, false }, Plug, "it needs a jig as well: a punched start is 0.1 to 0.25 mm out"},
		"a knurl": {func(h *Hole, f *Facts) { h.MustPassMM, h.BoreMM[0] = 3.24, 3.245 }, Plug,
			"what must pass is 3.240 mm, the largest bore that still runs 3.220"},
		"sound seat":     {func(h *Hole, f *Facts) { h.BushOut, h.SoundSeat, h.Seat.Renews = true, true, true }, Rebush, "the old bush's seat is sound: renewing it takes off nothing"},
		"no sound seat":  {func(h *Hole, f *Facts) {}, Renew, "there is no sound seat of an old bush"},
		"stopped":        {func(h *Hole, f *Facts) { f.OK = false }, Rebush, "this shop cannot do it as it stands: see what stops it"},
		"nothing fits":   {func(h *Hole, f *Facts) { h.Seat = nil }, Rebush, "too tight"},
		"no bush at all": {func(h *Hole, f *Facts) { h.Seat, h.Nearest = nil, nil }, Rebush, "there is no bush to choose from"},
		"no centre":      {func(h *Hole, f *Facts) { h.Known, h.Seat = false, nil }, Rebush, "nothing tells where its centre was"},
	} {
		h, f := worn(), bench()
		c.change(&h, &f)
		if w := way(t, h, f, c.way); w.WhyNot.String() != c.why {
			t.Errorf("%s: %q, want %q", name, w.WhyNot, c.why)
		}
	}
}

// FromJob: what the casting is, what the owner says, which mesh makes a hole
// wrong, and when a washer would do.
func TestFromJob(t *testing.T) {
	rate := 40.0
	j := &job.Job{Shop: &job.Shop{PerHour: &rate, SetupHours: 0.5, StripHours: 1}, Binds: job.Yes, Noisy: job.No, Rubs: job.No,
		Shafts: []job.Shaft{{Name: "a", JournalState: "pitted"}, {Name: "b", Leave: true}}}
	j.Symptoms.Rims, j.Symptoms.Hubs, j.Symptoms.Gauge = "loose", "tight", "right"
	f := bench(worn(), Hole{Name: "b.left", Shaft: "b", Fixed: true})
	f.Meshes = []Pair{{Name: "drive", On: "a", Mate: "b", Known: true, FoundMM: 11.90, LowMM: 12, HighMM: 12.05}}
	f.Play = map[string]float64{"a": 0.85, "b": 3}
	f.Trials = &Trials{Rework: 0.1, Spoilt: 0.05, NextBush: 0.03, Lost: 0.01}
	c := FromJob(j, f)
	if c.Condition != "unknown" || !c.Binds || c.Noisy || !c.Asked || len(c.Mend) != 1 || !slices.Equal(c.Unchecked, []string{"ohms"}) {
		t.Errorf("%+v", c)
	}
	if got := c.Bores[0].Wrong.String(); got != "drive stands 0.10 mm too close" {
		t.Errorf("wrong: %q", got)
	}
	if c.Bores[1].Wrong != "" || c.Bores[1].Ways != nil {
		t.Errorf("a hole that is left alone: %+v", c.Bores[1])
	}
	if c.ShimFor.String() != "side play of a, 0.85 mm" || c.ShimMinutes != 7 {
		t.Errorf("washer for %q", c.ShimFor)
	}
	if got := c.Faults[1]; got.Chance != 0.05 || got.Minutes != 20 || *got.Bush != 0.85 {
		t.Errorf("%+v", got)
	}
	f.Meshes[0].FoundMM = 12.12
	if got := FromJob(j, f).Bores[0].Wrong.String(); got != "drive stands 0.07 mm too far apart" {
		t.Errorf("wrong: %q", got)
	}
	f.Meshes[0].Known = false
	if got := FromJob(j, f).Bores[0].Wrong; got != "" {
		t.Errorf("nobody measured the gears, and yet %q", got)
	}
	f.Play["a"] = 0.80 // twice what is wanted is no more than that
	if got := FromJob(j, f).ShimFor; got != "" {
		t.Errorf("washer for %q", got)
	}
	f.Metal = "magnesium"
	if got := FromJob(j, f).Condition; got != "magnesium" {
		t.Errorf("condition %s", got)
	}
	if f.Swollen = true; FromJob(j, f).Condition != "swollen" {
		t.Error("a casting that has grown is not swollen")
	}
	if j.Chassis.Condition = "cracked"; FromJob(j, f).Condition != "cracked" {
		t.Error("a cracked casting is not cracked")
	}
}

// Every option says what it is, and no two are as grave.
func TestOptionsAreWhole(t *testing.T) {
	grave := map[int]Name{}
	for _, o := range options() {
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
	if Name("nothing").Cuts() || Name("nothing").Owner() != "nothing" {
		t.Error("a name of no option is one")
	}
	if Swap.Cuts() || Leave.Cuts() || Shim.Cuts() || !Plug.Cuts() {
		t.Error("what is cut")
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
