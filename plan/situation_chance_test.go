package plan_test

import (
	"math"
	"runtime"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rebush/fits/say"
	"rebush/plan"
)

// doubtful is a job whose chance is far from certain, in a shop that could do
// several things about it.
func doubtful(t testing.TB) situation {
	return plain(t).gear(wormGear(16.14, "")).
		inShop("{name: bore gauge, u: 0.004}", "{name: calliper inside, u: 0.023}, {name: dial indicator, u: 0.006}").
		inShop("{name: read-out, u: 0.010}", "{name: read-out, u: 0.020}").
		inShop("location: {setup: 0.010, hole: 0.010}", "location: {setup: 0.025, hole: 0.020}").
		inShop("lathe: yes\n", "lathe: yes\nsend_out: {location: 0.005, price: 30}\n")
}

// TestChanceIsTheSameAnywhere: same seed, same figures, on one core or many;
// the interval is Wilson's; causes are shares of one whole.
func TestChanceIsTheSameAnywhere(t *testing.T) {
	s := doubtful(t)
	a := s.odds()
	was := runtime.GOMAXPROCS(1)
	b := s.odds()
	runtime.GOMAXPROCS(7)
	c := s.odds()
	runtime.GOMAXPROCS(was)
	if d := cmp.Diff(a.Chance, b.Chance) + cmp.Diff(a.Chance, c.Chance); d != "" {
		t.Error(d)
	}
	other := s.make(plan.Options{Trials: 8192, Seed: 2})
	if other.Chance.FirstTimeRight == a.Chance.FirstTimeRight && cmp.Equal(other.Chance.Causes, a.Chance.Causes) {
		t.Error("another seed, the same trials")
	}
	if math.Abs(other.Chance.FirstTimeRight-a.Chance.FirstTimeRight) > 0.03 {
		t.Errorf("seeds differ by too much: %v and %v", a.Chance.FirstTimeRight, other.Chance.FirstTimeRight)
	}
	x := a.Chance
	if x.Trials != 8192 || x.Seed != 1 || !(x.FirstTimeRight > 0.2 && x.FirstTimeRight < 0.98) {
		t.Fatalf("%+v", x)
	}
	n, p, z := float64(x.Trials), x.FirstTimeRight, 1.959964
	mid, half := (p+z*z/(2*n))/(1+z*z/n), z*math.Sqrt(p*(1-p)/n+z*z/(4*n*n))/(1+z*z/n)
	near(t, "low", x.Low, mid-half, 1e-5)
	near(t, "high", x.High, mid+half, 1e-5)
	sum := 0.0
	for _, c := range x.Causes {
		sum += c.Share
	}
	near(t, "sum of the causes", sum, 1, 1e-9)
	near(t, "right, saved and lost", x.FirstTimeRight+x.Saved+x.Lost, 1, 1e-9)
	if len(x.MostSensitiveTo) != 3 {
		t.Errorf("most sensitive to %v", x.MostSensitiveTo)
	}
}

// TestGainsAreThoseOfTwoJobs: every improvement listed is the difference of two
// job files, one edited by hand.
func TestGainsAreThoseOfTwoJobs(t *testing.T) {
	s := doubtful(t)
	base := s.odds().Chance
	bores := func(key, value string) situation {
		return s.with("narrowest: 3.20, worn_to: 90}", "narrowest: 3.20, worn_to: 90, with: {"+key+": "+value+"}}").
			with("widest: 3.20, narrowest: 3.20}", "widest: 3.20, narrowest: 3.20, with: {"+key+": "+value+"}}")
	}
	byHand := map[string]func() situation{
		"measure the narrowest with pins":                                 func() situation { return bores("narrowest", "pins") },
		"take the middles with the dial indicator":                        func() situation { return bores("centre", "dial indicator") },
		"take the middles with the read-out":                              func() situation { return bores("centre", "read-out") },
		"the place of the mating gear of d taken with the dial indicator": func() situation { return s.with("height: 16.1400", "height: 16.1400, u: 0.006") },
		"the place of the mating gear of d taken with the read-out":       func() situation { return s.with("height: 16.1400", "height: 16.1400, u: 0.020") },
		"d tried with a dummy axle and a strip of paper, if its teeth touch at a centre distance of 8.00 mm": func() situation {
			return s.with("module: 0.5, wheel: {on: drive", "module: 0.5, tight: 8.00, wheel: {on: drive")
		},
		"the bearing play of the worm of d measured, if it comes out at 0.025 mm": func() situation {
			return s.with("height: 16.1400", "height: 16.1400, bearing_play: 0.025")
		},
		"the wheel of d trued to half its run-out": func() situation { return s.with("runout: 0.02", "runout: 0.01") },
		"send the boring out (30.00 GBP)": func() situation {
			return s.inShop("location: {setup: 0.025, hole: 0.020}", "location: {setup: 0.005, hole: 0.005}")
		},
		"open the bores to their own axles": func() situation { return s.add("finish: to its own axle\n") },
		"bush solid 5 in drive.left":        func() situation { return s.add("choose: {drive.left: solid 5}\n") },
		"bush solid 5 in drive.right":       func() situation { return s.add("choose: {drive.right: solid 5}\n") },
		"bush own turning in drive.left":    func() situation { return s.add("choose: {drive.left: own turning}\n") },
		"bush own turning in drive.right":   func() situation { return s.add("choose: {drive.right: own turning}\n") },
	}
	if len(base.Improve) == 0 {
		t.Fatal("nothing would improve a doubtful job")
	}
	last := math.Inf(1)
	for _, g := range base.Improve {
		edit := byHand[g.Change.String()]
		if edit == nil {
			t.Errorf("no edit by hand for %q", g.Change)
			continue
		}
		after := edit().odds().Chance
		near(t, g.Change.String()+": chance", g.FirstTimeRight, after.FirstTimeRight, 1e-9)
		near(t, g.Change.String()+": gain", g.Gain, after.FirstTimeRight-base.FirstTimeRight, 2e-9) // both rounded to nine digits
		if g.Gain <= 0 || g.Gain > last {
			t.Errorf("%s gains %v after %v", g.Change, g.Gain, last)
		}
		last = g.Gain
	}
}

// TestEverySourceCounts: doubling a source of error changes the chance, or the
// plan names it as without effect.
func TestEverySourceCounts(t *testing.T) {
	s := doubtful(t)
	base := s.odds()
	for name, c := range map[string]struct {
		s    situation
		word string // by which it would be named
	}{
		"clamping":    {s.inShop("setup: 0.025", "setup: 0.050"), "clamping"},
		"hole":        {s.inShop("hole: 0.020", "hole: 0.040"), "hole"},
		"calliper":    {s.inShop("{name: calliper inside, u: 0.023}", "{name: calliper inside, u: 0.030}"), "calliper"},
		"run-out":     {s.with("runout: 0.02", "runout: 0.04"), "run"},
		"worm's play": {s.with("height: 16.1400", "height: 16.1400, bearing_play: 0.04"), "mate"},
		"journal":     {s.inShop("lathe: yes\n", "lathe: yes\nrules: {u_journal_mm: 0.010}\n"), "journal"},
		"geometry":    {s.inShop("lathe: yes\n", "lathe: yes\nrules: {u_geometry_trusted_mm: 0.040}\n"), "computed"},
	} {
		got := c.s.odds()
		if got.Chance == nil {
			t.Errorf("%s doubled: no chance\n%s", name, everything(got))
			continue
		}
		named := strings.Contains(say.Join("; ", base.WithoutEffect...).String(), c.word)
		if got.Chance.FirstTimeRight == base.Chance.FirstTimeRight && !named {
			t.Errorf("%s doubled: nothing changes, and it is not named as without effect (%v)", name, base.WithoutEffect)
		}
	}
}
