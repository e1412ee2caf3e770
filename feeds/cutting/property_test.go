package cutting

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

var allOps = []string{"drill", "ream", "bore", "bore finish", "end mill", "plunge", "countersink", "counterbore", "spot"}

// Whatever is asked, the answer is an error in words or finite figures.
func TestAnswersAreFinite(t *testing.T) {
	c := newCutting(t)
	answered := 0
	rapid.Check(t, func(t *rapid.T) {
		q := Query{
			Material:  rapid.SampledFrom(c.Materials()).Draw(t, "material"),
			Tool:      rapid.SampledFrom([]string{"hss", "cobalt", "carbide"}).Draw(t, "tool"),
			Operation: rapid.SampledFrom(allOps).Draw(t, "operation"),
			DiaMM:     rapid.Float64Range(0.1, 100).Draw(t, "d"),
			DepthMM:   rapid.Float64Range(0, 200).Draw(t, "depth"),
			Hand:      rapid.Bool().Draw(t, "hand"),
			FullFeed:  rapid.Bool().Draw(t, "full"),
			ThinWall:  rapid.Bool().Draw(t, "thin"),
			Head:      rapid.SampledFrom([]Head{NoHead, BoringHead, Faceplate}).Draw(t, "head"),
		}
		a, err := c.Speed(q)
		if err != nil {
			if len(err.Error()) < 20 {
				t.Fatalf("too short to help: %v", err)
			}
			return
		}
		answered++
		for _, v := range []float64{a.VMin, a.VMax, a.VUsed, a.RPM, a.FeedMMRev, a.FeedLow, a.FeedHigh, a.FeedMMMin} {
			if !(v > 0) || math.IsInf(v, 0) {
				t.Fatalf("%+v: %+v", q, a)
			}
		}
		for _, v := range []float64{a.ThrustN, a.TorqueNmm, a.PowerW} {
			if !(v >= 0) || math.IsInf(v, 0) || a.ForcesKnown != (v > 0) {
				t.Fatalf("%+v: %+v", q, a)
			}
		}
		slack := 1e-9
		if a.VMin > a.VBook+slack || a.VBook > a.VMax+slack || a.VUsed > a.VBook+slack {
			t.Fatalf("speeds do not lie in order: %+v", a)
		}
		if a.FeedLow > a.FeedMMRev+slack || a.FeedMMRev > a.FeedHigh+slack {
			t.Fatalf("feeds do not lie in order: %+v", a)
		}
		if len(a.Sources) == 0 || a.Lubricant == "" || a.Words == "" || len(a.Holding) == 0 {
			t.Fatalf("something is not said: %+v", a)
		}
		for _, s := range a.Sources {
			if s.Text == "" || s.Address == "" {
				t.Fatalf("a source without text or address: %+v", a.Sources)
			}
		}
	})
	if answered < 20 {
		t.Errorf("only %d questions were answered", answered)
	}
}

func TestTurnsFallWithDiameter(t *testing.T) {
	c := newCutting(t)
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(0.2, 40).Draw(t, "d")
		more := d * rapid.Float64Range(1.001, 2).Draw(t, "more")
		q := Query{Material: "zinc", Operation: rapid.SampledFrom(allOps).Draw(t, "op"), DiaMM: d}
		a, err := c.Speed(q)
		if err != nil {
			t.Fatal(err)
		}
		q.DiaMM = more
		b, err := c.Speed(q)
		if err != nil {
			t.Fatal(err)
		}
		if b.RPM >= a.RPM {
			t.Fatalf("%v mm turns %v, %v mm turns %v", d, a.RPM, more, b.RPM)
		}
	})
}

func TestForcesRise(t *testing.T) {
	c := newCutting(t)
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom([]string{"zinc", "mild steel", "aluminium", "cast iron", "stainless steel 304", "phosphor bronze"}).Draw(t, "m")
		d := rapid.Float64Range(0.5, 20).Draw(t, "d")
		f := rapid.Float64Range(0.01, 0.2).Draw(t, "f")
		k := rapid.Float64Range(1.001, 2).Draw(t, "k")
		at := func(d, f float64) Answer {
			a, err := c.Speed(Query{Material: m, Operation: "drill", DiaMM: d, FeedMMRev: f})
			if err != nil {
				t.Fatal(err)
			}
			return a
		}
		a, wider, faster := at(d, f), at(d*k, f), at(d, f*k)
		if wider.ThrustN <= a.ThrustN || wider.TorqueNmm <= a.TorqueNmm || faster.ThrustN <= a.ThrustN || faster.TorqueNmm <= a.TorqueNmm {
			t.Fatalf("%s %v mm at %v: %v N %v N mm; wider %v, %v; faster %v, %v", m, d, f, a.ThrustN, a.TorqueNmm,
				wider.ThrustN, wider.TorqueNmm, faster.ThrustN, faster.TorqueNmm)
		}
	})
}

func TestSpokenNamesAreUnique(t *testing.T) {
	c := newCutting(t)
	seen := map[string]string{}
	for _, m := range c.materials {
		for _, n := range append([]string{m.name}, m.aliases...) {
			if old := seen[fold(n)]; old != "" && old != m.name {
				t.Errorf("%q means %s and %s", n, old, m.name)
			}
			seen[fold(n)] = m.name
			if got, err := c.material(n); err != nil || got.name != m.name {
				t.Errorf("%q: %v %v", n, got.name, err)
			}
		}
	}
}

func BenchmarkSpeed(b *testing.B) {
	c := newCutting(b)
	for b.Loop() {
		if _, err := c.Speed(Query{Material: "zinc", Operation: "drill", DiaMM: 5, DepthMM: 3}); err != nil {
			b.Fatal(err)
		}
	}
}
