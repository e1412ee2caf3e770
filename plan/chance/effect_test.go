package chance

import (
	"math"
	"math/rand/v2"
	"testing"

	"rebush/fits/odds"
)

// Outputs of SplitMix64 for the seed 1234567 as printed on a public page of
// reference answers (from memory, five of them).
func TestMixAgainstPrintedOutputs(t *testing.T) {
	const seed = 1234567
	for i, want := range []uint64{6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821} {
		if got := mix(seed + uint64(i+1)*gamma); got != want {
			t.Errorf("output %d: %d, want %d", i, got, want)
		}
	}
}

// The normal error: moments, and shares below against the closed form.
func TestNormalErrors(t *testing.T) {
	tab := sharedTables()
	const n = 4_000_000
	var sum, sq, fourth float64
	points := []float64{-3, -2, -1.645, -1, 0, 0.5, 1, 2.576, 3.2}
	below := make([]int, len(points))
	for i := range uint64(n / 2) {
		x := mix(99 + i*gamma)
		for _, z := range [2]float64{tab.normal(uint32(x)), tab.normal(uint32(x >> 32))} {
			sum += z
			sq += z * z
			fourth += z * z * z * z
			for k, p := range points {
				if z < p {
					below[k]++
				}
			}
		}
	}
	if m := sum / n; math.Abs(m) > 4/math.Sqrt(n) {
		t.Errorf("mean %v", m)
	}
	if v := sq / n; math.Abs(v-1) > 4*math.Sqrt(2.0/n) {
		t.Errorf("variance %v", v)
	}
	if k := fourth / n; math.Abs(k-3) > 0.03 {
		t.Errorf("fourth moment %v", k)
	}
	for k, p := range points {
		want := odds.Phi(p)
		if got := float64(below[k]) / n; math.Abs(got-want) > 4*math.Sqrt(want*(1-want)/n)+1e-6 {
			t.Errorf("below %v: %v, want %v", p, got, want)
		}
	}
}

// Every source of the model, doubled, changes the count or is named.
func TestEverySourceCountsOrIsNamed(t *testing.T) {
	base := truck()
	s := Settings{Trials: 20000, Seed: 1}
	sens, err := Sensitive(base, s)
	if err != nil {
		t.Fatal(err)
	}
	without := map[string]bool{}
	for _, w := range sens.Without {
		without[w.String()] = true
	}
	was := run(t, base, s.Trials).Right
	seen := map[string]bool{}
	for _, src := range base.sources() {
		if seen[src.words] {
			t.Errorf("two sources are called %q", src.words)
		}
		seen[src.words] = true
		m := base.copied()
		src.scale(m, 2)
		if got := run(t, *m, s.Trials).Right; (got == was) != without[src.words] {
			t.Errorf("%s doubled: %d right, was %d, named as without effect: %v", src.words, got, was, without[src.words])
		}
	}
	if len(sens.Most) != 3 || len(sens.Effects) != len(seen) {
		t.Errorf("%d named, %d effects of %d sources", len(sens.Most), len(sens.Effects), len(seen))
	}
	t.Logf("most %q, without %q", sens.Most, sens.Without)
	// The effects are those of whole runs.
	for _, src := range base.sources() {
		m := base.copied()
		src.scale(m, 0.5)
		want := float64(run(t, *m, SensitiveTrials).Right-run(t, base, SensitiveTrials).Right) / SensitiveTrials
		for _, e := range sens.Effects {
			if e.Source.String() == src.words && e.Halving != want {
				t.Errorf("%s: %v, whole runs %v", e.Source, e.Halving, want)
			}
		}
	}
}

func TestWithoutEffectIsNamed(t *testing.T) {
	m := truck()
	m.Gears = nil // then the clocking of the bushes matters to nothing
	sens, err := Sensitive(m, Settings{Trials: 20000, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	found := false
	for _, w := range sens.Without {
		found = found || w == "run-out of the bush at front axle.left"
	}
	if !found {
		t.Errorf("run-out not named: %q", sens.Without)
	}
}

func TestGainsEqualTwoRuns(t *testing.T) {
	base := truck()
	s := Settings{Trials: 20000, Seed: 3}
	better, worse, same := base.copied(), base.copied(), base.copied()
	for i := range better.Bores {
		better.Bores[i].OD = Size{Low: 5.022, High: 5.028}
	}
	worse.Gears[0].UGeomMM *= 3
	gains, err := Improve(base, []Variant{{"worse", *worse}, {"picked bushes", *better}, {"nothing", *same}}, s)
	if err != nil {
		t.Fatal(err)
	}
	if len(gains) != 1 || gains[0].Change != "picked bushes" {
		t.Fatalf("gains %+v", gains)
	}
	a, _ := Run(base, s)
	b, _ := Run(*better, s)
	g := gains[0]
	if g.Gain != b.FirstTimeRight-a.FirstTimeRight || g.FirstTimeRight != b.FirstTimeRight {
		t.Errorf("gain %v, two runs apart give %v", g.Gain, b.FirstTimeRight-a.FirstTimeRight)
	}
	if !(g.Interval[0] > 0 && g.Interval[0] < g.Gain && g.Gain < g.Interval[1]) {
		t.Errorf("interval %v about %v", g.Interval, g.Gain)
	}
}

// A changed source leaves the random numbers of the others alone: with only
// one bore's seat error changed, every other clearance stays to the last bit.
func TestSourcesKeepTheirNumbers(t *testing.T) {
	a, b := truck(), truck()
	b.Bores[1].Seat.Half *= 2
	b.Bores[1].Survey.UDepthMM = 0
	b.Bores[1].RunoutEven = true
	ca, cb := a.compile(), b.compile()
	wa, wb := newWorker(4, 1, 2), newWorker(4, 1, 2)
	wa.seed(1, 0)
	wb.seed(1, 0)
	moved := false
	for k := range uint64(500) {
		wa.trial(ca, k)
		wb.trial(cb, k)
		for _, i := range []int{0, 2, 3} {
			if wa.clear[i] != wb.clear[i] || wa.px[i] != wb.px[i] {
				t.Fatalf("trial %d: bore %d changed", k, i)
			}
		}
		moved = moved || wa.px[1] != wb.px[1]
	}
	if !moved {
		t.Error("the changed bore did not change")
	}
}

// plan/survey/METHODS.md 4: R 1.55, journal 1.53, wear 0.10: seat radius needed on the
// old centre, 0.03 towards the wear, away, 0.05 sideways (derived, exact).
func TestNeed(t *testing.T) {
	m := truck()
	b := &m.Bores[0]
	b.Survey.R, b.Survey.JournalR, b.Survey.D, b.Survey.TowardsDeg, b.Survey.FanDeg = 1.55, 1.53, 0.12, 0, 0
	c := m.compile().bores[0]
	for _, row := range []struct{ x, y, want float64 }{{0, 0, 1.650}, {0.03, 0, 1.620}, {-0.03, 0, 1.680}, {0, 0.05, 1.660}} {
		if got := c.need(row.x, row.y, 0.12); math.Abs(got-row.want) > 5e-4 {
			t.Errorf("at %v %v: %.4f, want %.4f", row.x, row.y, got, row.want)
		}
		if c.clears(row.x, row.y, 0.12, row.want-0.001) || !c.clears(row.x, row.y, 0.12, row.want+0.001) {
			t.Errorf("at %v %v: clears does not turn at %v", row.x, row.y, row.want)
		}
	}
	// Over a fan: the worst of many single directions.
	b.Survey.FanDeg = 40
	c = m.compile().bores[0]
	r := rand.New(rand.NewPCG(1, 1))
	for range 200 {
		x, y := r.NormFloat64()*0.03, r.NormFloat64()*0.03
		worst := math.Hypot(x, y) + 1.55
		for deg := -40.0; deg <= 40; deg += 0.05 {
			s, co := math.Sincos(deg * math.Pi / 180)
			worst = math.Max(worst, math.Hypot(x-0.12*co, y-0.12*s)+1.53)
		}
		if got := c.need(x, y, 0.12); math.Abs(got-worst) > 1e-6 {
			t.Fatalf("fan at %v %v: %.6f, by hand %.6f", x, y, got, worst)
		}
	}
}
