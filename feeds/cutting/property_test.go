package cutting

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rebush/fits/table"
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

func TestStep(t *testing.T) {
	five := []float64{520, 900, 1400, 2000, 2700} // invented set, typical in shape
	for _, k := range []struct {
		steps            []float64
		low, high, ideal float64
		want             Step
	}{
		{five, 0, 0, 1700, Step{RPM: 1400}},
		{five, 0, 0, 1400, Step{RPM: 1400}},
		{five, 0, 0, 1399.9, Step{RPM: 900}},
		{five, 0, 0, 300, Step{RPM: 520, TooFast: true}},
		{five, 0, 0, 14600, Step{RPM: 2700, AtTop: true}},
		{five, 0, 0, 2700, Step{RPM: 2700}},
		{[]float64{2000, 500, 1000}, 0, 0, 1100, Step{RPM: 1000}},
		{nil, 100, 2800, 1234, Step{RPM: 1234}},
		{nil, 100, 2800, 90, Step{RPM: 100, TooFast: true}},
		{nil, 100, 2800, 3000, Step{RPM: 2800, AtTop: true}},
		{nil, 0, 0, 3000, Step{RPM: 3000, Unknown: true}},
		{[]float64{-5, math.NaN()}, 0, 0, 30, Step{RPM: 30, Unknown: true}},
		{five, 0, 0, math.NaN(), Step{RPM: 520, TooFast: true}},
	} {
		if got := SetTo(k.steps, k.low, k.high, k.ideal); got != k.want {
			t.Errorf("%v %v-%v wanted %v: %+v, want %+v", k.steps, k.low, k.high, k.ideal, got, k.want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		steps := rapid.SliceOfN(rapid.Float64Range(50, 5000), 1, 16).Draw(t, "steps")
		ideal := rapid.Float64Range(1, 20000).Draw(t, "ideal")
		s := SetTo(steps, 0, 0, ideal)
		if (s.RPM > ideal*(1+1e-8)) != s.TooFast {
			t.Fatalf("%v wanted %v: %+v", steps, ideal, s)
		}
		for _, other := range steps {
			if other <= ideal && other > s.RPM {
				t.Fatalf("%v is nearer to %v than %+v", other, ideal, s)
			}
		}
	})
}

func TestPreDrill(t *testing.T) {
	c := newCutting(t)
	// 10 mm, 0.20 of stock, 0.05 oversize: 9.75 (worked example from memory).
	low, high, err := c.PreDrill(10, true, "mild steel")
	if err != nil {
		t.Fatal(err)
	}
	within(t, "largest drill before 10", high, 9.75, 1e-9)
	within(t, "smallest drill before 10", low, 9.65, 1e-9)
	// 4.85 before 5 by hand: bench practice.
	if _, high, err = c.PreDrill(5, true, "zinc"); err != nil {
		t.Fatal(err)
	}
	within(t, "before 5 by hand", high, 4.85, 1e-9)
	// 5 to 20 and 21 to 50 leave no gap between them.
	if lo, hi, _, err := c.ReamStock(20.5, true, "steel"); err != nil || lo != 0.3 || hi != 0.5 {
		t.Errorf("20.5 by hand: %v %v %v", lo, hi, err)
	}
	// Nor do 0.170 and 0.171 in of the chart.
	if lo, _, _, err := c.ReamStock(4.33, false, "steel"); err != nil || lo != 0.127 {
		t.Errorf("4.33 by machine: %v %v", lo, err)
	}
	// Below the chart the published figure for any size goes before memory.
	if lo, hi, ref, err := c.ReamStock(2, false, "zinc"); err != nil || lo != 0.127 || hi != 0.254 || !strings.Contains(ref.Text, "TM 1-420") {
		t.Errorf("2 mm by machine: %v %v %v %v", lo, hi, ref, err)
	}
	if _, _, err := c.PreDrill(0.2, false, "zinc"); err == nil {
		t.Error("a reamer smaller than its stock was given a drill")
	}
	if _, _, _, err := c.ReamStock(math.NaN(), false, "zinc"); err == nil {
		t.Error("a reamer of no size was given a stock")
	}
	if _, _, _, err := c.ReamStock(5, false, "cheese"); err == nil {
		t.Error("an unknown material was given a stock")
	}
}

// A shop's table with a bad cell is an error that names the cell, never a
// panic.
func FuzzShopTable(f *testing.F) {
	f.Add("speeds_small", "d_mm,full_feed,fifth_feed,source\n2,0.3,x,y\n")
	f.Add("kd_wear", "wear,w,source\nsharp,0,y\n")
	f.Add("speeds", "material,tool,operation,v_min_m_min,v_max_m_min,v_min_ft_min,v_max_ft_min,factor_min,factor_max,factor_of,basis,source,note\na,HSS,drill,9,3,,,,,,published_m,s,\n")
	f.Fuzz(func(t *testing.T, name, text string) {
		tab, err := table.Parse(name, "shop", []byte(text))
		if err != nil {
			return
		}
		lib := table.BuiltIn()
		rules, err := table.ReadRules(lib)
		if err != nil {
			t.Fatal(err)
		}
		if lib.Replace(tab) != nil {
			return
		}
		c, err := New(lib, rules)
		if err != nil {
			if !strings.Contains(err.Error(), name) && !strings.Contains(err.Error(), "shop") && len(err.Error()) < 15 {
				t.Errorf("does not say where: %v", err)
			}
			return
		}
		for _, op := range allOps {
			a, err := c.Speed(Query{Material: "zinc", Operation: op, DiaMM: 5, DepthMM: 20})
			if err == nil && (math.IsNaN(a.RPM) || math.IsNaN(a.ThrustN)) {
				t.Errorf("%s: %+v", op, a)
			}
		}
	})
}

func TestBadTablesAreNamed(t *testing.T) {
	for _, k := range []struct{ name, text, says string }{
		{"speeds_small", "d_mm,full_feed,fifth_feed,source\n2,0.3,x,y\n", "speeds_small:2: fifth_feed"},
		{"kd_wear", "wear,w,source\nsharp,0,y\n", "kd_wear:2: w: 0 must be above 0"},
		{"coolant", "class,lubricant,source\nzinc,oil,s\n", "no coolant class"},
		{"feed_depth", "name,low,high,unit,what,source\npoint_deg,118,,deg,w,s\n", "no row"},
	} {
		lib := table.BuiltIn()
		rules, err := table.ReadRules(lib)
		if err != nil {
			t.Fatal(err)
		}
		tab, err := table.Parse(k.name, "shop", []byte(k.text))
		if err != nil {
			t.Fatal(err)
		}
		if err := lib.Replace(tab); err != nil {
			t.Fatal(err)
		}
		if _, err = New(lib, rules); err == nil || !strings.Contains(err.Error(), k.says) {
			t.Errorf("%s: %v; want it to say %q", k.name, err, k.says)
		}
	}
	if _, err := New(table.BuiltIn(), nil); err == nil {
		t.Error("no rules were no matter")
	}
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
