package cutting

import (
	"math"
	"strings"
	"testing"
)

// within compares with half a last printed digit, or a share of the value.
func within(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %v, want %v within %v", what, got, want, tol)
	}
}

func TestPublishedSpeeds(t *testing.T) {
	c := newCutting(t)
	cases := []struct {
		q      Query
		v, rpm float64
		tol    float64
		source string
	}{
		{Query{Material: "zinc", Operation: "drill", DiaMM: 7.7}, 76, 3140, 5, "Youssef and El-Hofy table 5.4 gives 76 m/min; 3140 turns at 7.7 mm"},
		{Query{Material: "zinc", Operation: "ream", DiaMM: 8}, 38, 1512, 1, "half-speed rule, TM 1-420 s.37"},
		{Query{Material: "bearing bronze", Operation: "ream", DiaMM: 5}, 22.85, 1454.7, 1, "half of 45.7 m/min, TM 1-420 s.37"},
		{Query{Material: "mild steel", Operation: "countersink", DiaMM: 10}, 1.5, 47.7, 0.1, "a quarter of the lowest drilling figure, intromachining1 wa8-13"},
		{Query{Material: "bearing bronze", Operation: "counterbore", DiaMM: 10}, 36.56, 1163.7, 1, "0.8 of drilling, tool maker guide p.33"},
		{Query{Material: "mild steel", Tool: "carbide", Operation: "drill", DiaMM: 5}, 12, 763.9, 1, "twice HSS, enginemechanics.tpub.com/14345"},
		{Query{Material: "sintered bronze", Tool: "carbide", Operation: "bore", DiaMM: 5}, 100, 6366, 1, "jfkbearing.eu 1088: 100 m/min"},
		{Query{Material: "zinc", Operation: "plunge", DiaMM: 4.5}, 40, 2829.4, 0.1, "common practice, no source"},
		{Query{Material: "zinc", Operation: "bore", DiaMM: 5}, 45, 2864.8, 0.1, "common practice, no source"},
		{Query{Material: "zinc", Operation: "bore", DiaMM: 5, Head: BoringHead}, 12.566, 800, 1e-9, "common practice, no source: cap"},
		{Query{Material: "zinc", Operation: "bore", DiaMM: 5, Head: Faceplate}, 4.712, 300, 1e-9, "common practice, no source: cap"},
		{Query{Material: "zinc", Operation: "drill", DiaMM: 5, ThinWall: true}, 20, 1273.2, 0.1, "common practice, no source: cap"},
		{Query{Material: "zinc", Operation: "ream", DiaMM: 5, Hand: true}, 15, 954.9, 0.1, "common practice, no source: cap"},
		{Query{Material: "zinc", Operation: "drill", DiaMM: 5, Hand: true}, 76, 4838.3, 0.1, "table 5.4: the cap on hand reaming is none on drilling"},
		{Query{Material: "free-cutting brass", Operation: "plunge", DiaMM: 5}, 45.7, 2909.4, 0.1, "training handout: one figure for turning and milling"},
		{Query{Material: "mild steel", Operation: "ream", DiaMM: 5, Hand: true}, 13.7, 872.2, 0.1, "reamer maker, 175-225 HB; below the cap"},
	}
	for _, k := range cases {
		a, err := c.Speed(k.q)
		if err != nil {
			t.Errorf("%+v: %v", k.q, err)
			continue
		}
		within(t, k.source+": speed", a.VUsed, k.v, 1e-3)
		within(t, k.source+": turns", a.RPM, k.rpm, k.tol)
	}
	// 1 mm in brass at 46 m/min wants 14 600 turns: above any bench spindle.
	within(t, "1 mm at 46 m/min", RPM(46, 1), 14600, 50)
	// In inches n = 12 V/(pi D), printed 3.8197 V/D: norsemandrill.com.
	within(t, "inch formula", RPM(100*0.3048, 0.5*25.4), 3.8197*100/0.5, 0.05)
	within(t, "there and back", SurfaceSpeed(RPM(76, 7.7), 7.7), 76, 1e-9)
}

func TestOrderOfSources(t *testing.T) {
	c := newCutting(t)
	a, err := c.Speed(Query{Material: "phosphor bronze", Operation: "drill", DiaMM: 5})
	if err != nil {
		t.Fatal(err)
	}
	if a.VUsed != 21.3 || a.VMin != 21.3 || !strings.Contains(strings.Join(a.Notes, "\n"), "18.3 to 19.8") {
		t.Errorf("phosphor bronze: the remembered 18.3 must stand aside and be told: %+v", a)
	}
	a, err = c.Speed(Query{Material: "mild steel", Operation: "drill", DiaMM: 5})
	if err != nil {
		t.Fatal(err)
	}
	if a.VUsed != 6 || a.VMax != 33.5 || !strings.Contains(strings.Join(a.Notes, "\n"), "next lowest is 21.3") {
		t.Errorf("mild steel: want 6 of 6 to 33.5, and the next lowest told: %+v", a)
	}
	a, err = c.Speed(Query{Material: "cartridge brass sheet", Operation: "ream", DiaMM: 5})
	if err != nil {
		t.Fatal(err)
	}
	if a.VUsed != 33.5 || a.Basis != "from memory" {
		t.Errorf("cartridge brass: only a remembered figure: %+v", a)
	}
	a, err = c.Speed(Query{Material: "stainless steel 303", Operation: "bore", DiaMM: 5})
	if err != nil {
		t.Fatal(err)
	}
	if a.VUsed != 12.2 || !strings.Contains(strings.Join(a.Notes, "\n"), "stainless steel 304 stands in") {
		t.Errorf("303 is bored like 304, and says so: %+v", a)
	}
}

func TestWhatIsRefused(t *testing.T) {
	c := newCutting(t)
	cases := []struct {
		q    Query
		says string
	}{
		{Query{Material: "sintered bronze", Operation: "drill", DiaMM: 3}, "bore it; do not drill or ream the running surface"},
		{Query{Material: "sintered bronze", Tool: "carbide", Operation: "ream", DiaMM: 3}, "bore it; do not drill or ream the running surface"},
		{Query{Material: "sintered bronze", Operation: "bore", DiaMM: 3}, "use a keen carbide tool"},
		{Query{Material: "phenolic", Operation: "bore", DiaMM: 3}, "known are drill"},
		{Query{Material: "zink", Operation: "drill", DiaMM: 3}, "nearest known is zinc die casting"},
		{Query{Material: "stainless steel 30", Operation: "drill", DiaMM: 3}, "nearest known is stainless steel 30"},
		{Query{Material: "aluminium wrought", Operation: "drill", DiaMM: 3}, "name one"},
		{Query{Material: "", Operation: "drill", DiaMM: 3}, "no material given"},
		{Query{Material: "zinc", Tool: "diamond", Operation: "drill", DiaMM: 3}, "write hss, cobalt or carbide"},
		{Query{Material: "zinc", Operation: "punch", DiaMM: 3}, "no operation"},
		{Query{Material: "zinc", Operation: "bore", Head: "wax", DiaMM: 3}, "no head"},
		{Query{Material: "zinc", Operation: "drill", DiaMM: 0}, "above 0"},
		{Query{Material: "zinc", Operation: "drill", DiaMM: -3}, "above 0"},
		{Query{Material: "zinc", Operation: "drill", DiaMM: math.NaN()}, "above 0"},
		{Query{Material: "zinc", Operation: "drill", DiaMM: math.Inf(1)}, "above 0"},
		{Query{Material: "zinc", Operation: "drill", DiaMM: 1e-9}, "outside the tables"},
		{Query{Material: "zinc", Operation: "drill", DiaMM: 3, DepthMM: math.NaN()}, "depth"},
		{Query{Material: "zinc", Operation: "drill", DiaMM: 3, FeedMMRev: -1}, "feed"},
		{Query{Material: "zinc", Operation: "drill", DiaMM: 3, Wear: "worn"}, "sharp, normal or dull"},
		{Query{Material: "zinc", Operation: "drill", DiaMM: 3, Point: "flat"}, "standard or split"},
	}
	for _, k := range cases {
		_, err := c.Speed(k.q)
		if err == nil || !strings.Contains(err.Error(), k.says) {
			t.Errorf("%+v: %v; want it to say %q", k.q, err, k.says)
		}
	}
}

func TestFeedTable(t *testing.T) {
	c := newCutting(t)
	// enginemechanics.tpub.com/14345 and norsemandrill.com, spans in mm.
	for _, k := range []struct{ d, low, high float64 }{
		{3.175, 0.025, 0.076}, {6, 0.051, 0.152}, {12, 0.102, 0.254}, {20, 0.178, 0.381},
	} {
		low, high, _, _ := c.DrillFeed(k.d)
		within(t, "low", low, k.low, 0.0005)
		within(t, "high", high, k.high, 0.0005)
	}
	// 0.001 in/rev for every 1/16 in of diameter (norsemandrill.com).
	low, _, _, _ := c.DrillFeed(0.5)
	within(t, "0.5 mm", low, 0.008, 1e-9)
	four, err := c.Speed(Query{Material: "zinc", Operation: "drill", DiaMM: 4})
	if err != nil {
		t.Fatal(err)
	}
	within(t, "4 mm in soft metal", four.FeedMMRev, 0.064, 1e-9) // below the middle of its row
	hard, err := c.Speed(Query{Material: "stainless steel 304", Operation: "drill", DiaMM: 6})
	if err != nil {
		t.Fatal(err)
	}
	within(t, "low end for hard material", hard.FeedMMRev, 0.0508, 1e-9)
	// Reamer feed 1.2 to 2 times the drill feed: mscdirect.com 5976, scribd 476105672.
	r, err := c.Speed(Query{Material: "mild steel", Operation: "ream", DiaMM: 6, Hand: true})
	if err != nil {
		t.Fatal(err)
	}
	within(t, "reamer feed low", r.FeedLow, 1.2*0.0508, 1e-9)
	within(t, "reamer feed high", r.FeedHigh, 2*0.1524, 1e-9)
	p, err := c.Speed(Query{Material: "zinc", Operation: "plunge", DiaMM: 4})
	if err != nil {
		t.Fatal(err)
	}
	within(t, "plunge", p.FeedMMRev, 0.03, 1e-12) // common practice, no source
}

func TestSmallDrillAndDepth(t *testing.T) {
	c := newCutting(t)
	// Machinery's Handbook 31st ed., Table 22.
	for _, k := range []struct{ d, full, light float64 }{
		{2, 0.30, 0.83}, {4, 0.44, 0.92}, {6, 0.56, 0.96}, {10, 0.78, 1}, {15, 1, 1}, {25, 1.32, 0.96},
	} {
		full, light := c.SmallDrill(k.d)
		within(t, "full feed", full, k.full, 1e-12)
		within(t, "fifth of it", light, k.light, 1e-12)
	}
	full, err := c.Speed(Query{Material: "zinc", Operation: "drill", DiaMM: 4, FullFeed: true})
	if err != nil {
		t.Fatal(err)
	}
	within(t, "4 mm at the full feed", full.VUsed, 76*0.44, 1e-9)
	// studylib.net/doc/18232362: 3, 4, 5, 6 diameters.
	for _, k := range []struct{ times, speed, feed float64 }{{2.9, 1, 1}, {3, 0.9, 0.9}, {4.5, 0.8, 0.9}, {5, 0.7, 0.8}, {9, 0.6, 0.8}} {
		speed, feed := c.DeepHole(k.times*5, 5)
		within(t, "deep speed", speed, k.speed, 1e-12)
		within(t, "deep feed", feed, k.feed, 1e-12)
	}
	// Geometry: point lengths of 10 mm.
	for _, k := range []struct{ angle, length float64 }{{118, 3.00}, {120, 2.89}, {135, 2.07}, {90, 5.00}, {140, 1.82}} {
		within(t, "point", PointLength(10, k.angle), k.length, 0.006)
	}
	if PointLength(10, 180) != 0 || PointLength(10, 0) != 0 {
		t.Error("a flat tool has no point")
	}
	// 118 degrees, 2 mm overrun: Youssef and El-Hofy ch. 42.
	within(t, "through 3 mm", c.Through(3, 6), 3+1.8026+2, 1e-3)
	// Pecks from memory: 2 D, then 1 D, then 0.5 D.
	want := []float64{10, 15, 17.5, 20, 22}
	got := c.Pecks(22, 5)
	if len(got) != len(want) {
		t.Fatalf("pecks %v, want %v", got, want)
	}
	for i := range want {
		within(t, "peck", got[i], want[i], 1e-9)
	}
	if p := c.Pecks(10, 5); len(p) != 1 || p[0] != 10 {
		t.Errorf("10 mm with 5 mm is not deep: %v", p)
	}
	within(t, "minutes", Minutes(10, 1, 2, 2, 0.05, 600), 0.5, 1e-12)
	if Minutes(10, 1, 2, 2, 0, 600) != 0 {
		t.Error("no feed takes no time that could be told")
	}
}
