package chance

import "testing"

// truck is a four-bore job with one worm drive: two shafts, two clampings.
func truck() Model {
	m := Model{
		Setups: []Setup{{"A", 0.010}, {"B", 0.010}},
		Shafts: []Shaft{{"front axle", 90}, {"rear axle", 90}},
	}
	for i, at := range [][2]float64{{10, 6}, {10, 6}, {48, 6}, {48, 6}} {
		b := Bore{
			Name: [4]string{"front axle.left", "front axle.right", "rear axle.left", "rear axle.right"}[i], Shaft: i / 2, Right: i%2 == 1, Setup: i / 2,
			Survey:   Survey{Centre: at, Cov: [3]float64{0.0001, 0.00002, 0.0002}, R: 1.605, JournalR: 1.58, D: 0.125, UDepthMM: 0.01, TowardsDeg: 90, FanDeg: 10},
			SurveyBy: "inside calliper", TargetMM: at, UHoleMM: 0.010,
			Seat: SeatSize{Mid: 5.006, Half: 0.002, U: 0.002}, SeatBy: "5 mm reamer",
			OD: Size{Low: 5.019, High: 5.031}, Hole: Size{Low: 3.210, High: 3.222},
			RunoutMM: 0.03, PressUM: [2]float64{10, 24},
			Closure: Closure{Elastic: 0.6, FlowUM: [2]float64{8, 15}, Slope: [2]float64{1, 1.5}},
			Finish:  Mandrel, ToolMM: [2]float64{3.196, 3.202}, MaxOpenMM: 0.05,
			BoreMM: [2]float64{3.180, 3.220}, RunningUM: [2]float64{15, 60}, JournalMM: 3.16, UJournalMM: 0.005,
			Wall:     Wall{LeftMM: 2, NoneBelowMM: 1.25, EdgeDeg: 270, StressPerUM: 3, StressLimit: 100},
			NextBush: true, NextSeatMM: 2.75, Eccentric: true, Replaceable: true,
		}
		m.Bores = append(m.Bores, b)
	}
	m.Gears = []Gear{{Name: "front drive", On: 0, Station: 0.45, MateOn: FixedMate, Open: [2]float64{0, -1},
		CentreMM: 8.10, WindowMM: [2]float64{8.04, 8.14}, TightMM: 8.02, LooseMM: 8.3, RunoutMM: [2]float64{0.02, 0}, UGeomMM: 0.02, UMateMM: 0.01,
		LeanAlong: 0.05, LeanAcross: 0.2}}
	return m
}

func run(t *testing.T, m Model, trials int64) Result {
	t.Helper()
	r, err := Run(m, Settings{Trials: trials, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestClassesAndCausesAddUp(t *testing.T) {
	r := run(t, truck(), 20000)
	if sum := r.Right + r.Rework + r.Spoilt + r.NextBush + r.LostCount; sum != r.Trials {
		t.Errorf("classes sum to %d of %d", sum, r.Trials)
	}
	n, share := 0, 0.0
	for i, c := range r.Causes {
		n += c.Count
		share += c.Share
		if i > 0 && c.Count > r.Causes[i-1].Count {
			t.Errorf("%v stands after %v", c, r.Causes[i-1])
		}
	}
	if n != r.Trials-r.Right || share < 1-1e-12 || share > 1+1e-12 {
		t.Errorf("causes count %d of %d, shares %v", n, r.Trials-r.Right, share)
	}
	if r.Right == 0 || r.Right == r.Trials || len(r.Causes) < 4 {
		t.Errorf("the model tells nothing: %+v", r)
	}
	if !(r.Low < r.FirstTimeRight && r.FirstTimeRight < r.High) {
		t.Errorf("interval %v to %v about %v", r.Low, r.High, r.FirstTimeRight)
	}
	t.Logf("%+v", r)
}

func TestSameForAnyNumberOfCores(t *testing.T) {
	m := truck()
	var first Result
	for i, workers := range []int{1, 2, 3, 7} {
		r, err := Run(m, Settings{Trials: 30001, Seed: 5, Workers: workers})
		if err != nil {
			t.Fatal(err)
		}
		if i == 0 {
			first = r
		} else if r.Right != first.Right || r.Rework != first.Rework || r.LostCount != first.LostCount || len(r.Causes) != len(first.Causes) {
			t.Errorf("%d workers: %+v, one: %+v", workers, r, first)
		}
	}
	other, _ := Run(m, Settings{Trials: 30001, Seed: 6})
	if other.Right == first.Right && other.Rework == first.Rework {
		t.Error("another seed gives the same counts")
	}
}

func TestRefused(t *testing.T) {
	for name, s := range map[string]Settings{"none": {Trials: 0}, "fewer": {Trials: -1}, "too many": {Trials: 1e12}, "seed": {Trials: 10, Seed: -1}} {
		if _, err := Run(truck(), s); err == nil {
			t.Errorf("%s: run", name)
		}
	}
	for name, spoil := range map[string]func(*Model){
		"no bores":      func(m *Model) { m.Bores = nil },
		"negative u":    func(m *Model) { m.Bores[1].UHoleMM = -1 },
		"no shaft":      func(m *Model) { m.Bores[1].Shaft = 7 },
		"no clamping":   func(m *Model) { m.Bores[1].Setup = 7 },
		"covariance":    func(m *Model) { m.Bores[0].Survey.Cov[1] = 1 },
		"own shaft":     func(m *Model) { m.Gears[0].MateOn = 0 },
		"no line":       func(m *Model) { m.Gears[0].Open = [2]float64{} },
		"window":        func(m *Model) { m.Gears[0].WindowMM = [2]float64{2, 1} },
		"two in a spot": func(m *Model) { m.Bores[1].Right = false },
	} {
		m := truck()
		spoil(&m)
		if _, err := Run(m, Settings{Trials: 10}); err == nil {
			t.Errorf("%s: run", name)
		}
	}
}

func TestNoAllocationPerTrial(t *testing.T) {
	m := truck()
	c := m.compile()
	w := newWorker(len(m.Bores), len(m.Gears), len(m.Setups))
	tl := tally{first: make([]int, checks*c.places)}
	var good [Block / 64]uint64
	block := 0
	if n := testing.AllocsPerRun(5, func() {
		w.seed(1, block)
		w.block(c, Block, &tl, &good)
		block++
	}); n != 0 {
		t.Errorf("%v allocations in a block", n)
	}
	if tl.class[right] == 0 {
		t.Error("nothing came right")
	}
}

func BenchmarkTrial(b *testing.B) {
	m := truck()
	c := m.compile()
	w := newWorker(len(m.Bores), len(m.Gears), len(m.Setups))
	tl := tally{first: make([]int, checks*c.places)}
	var good [Block / 64]uint64
	for block := 0; b.Loop(); block++ {
		w.seed(1, block)
		w.block(c, Block, &tl, &good)
	}
	b.ReportMetric(float64(b.N)*Block/b.Elapsed().Seconds(), "trials/s")
}

func BenchmarkRun20000(b *testing.B) {
	m := truck()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Run(m, Settings{Trials: 20000, Seed: 1}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSensitive(b *testing.B) {
	m := truck()
	for b.Loop() {
		if _, err := Sensitive(m, Settings{Trials: 20000, Seed: 1}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkBlock is what ranking asks of one plan: one block on one core.
func BenchmarkBlock(b *testing.B) {
	m := truck()
	m.Gears[0].SpreadMM = []float64{-0.02, 0, 0, 0.02}
	b.ReportAllocs()
	for range b.N {
		if _, err := Run(m, Settings{Trials: Block, Seed: 1, Workers: 1}); err != nil {
			b.Fatal(err)
		}
	}
}
