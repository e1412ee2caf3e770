package chance

import (
	"math"
	"math/rand/v2"
	"sort"
	"testing"
)

// example is the worked budget of plan/survey/METHODS.md 7.1 as a model: one pair at 12 mm,
// line of centres at 35 degrees, load straight along it, one bore.
func example() Model {
	y, x := math.Sincos(35 * math.Pi / 180)
	datum, table := 0.005/math.Sqrt(3)*math.Sqrt2, 0.010/math.Sqrt(3)
	return Model{
		Setups: []Setup{{"A", math.Hypot(datum, table)}},
		Shafts: []Shaft{{"axle", 35}},
		Bores: []Bore{{Name: "axle.left", Survey: Survey{R: 1, JournalR: 1}, UHoleMM: 0.008,
			Seat: SeatSize{Mid: 5}, OD: Size{Low: 5.01, High: 5.01}, Hole: Size{Low: 1.9, High: 1.9}, PressUM: [2]float64{0, 100},
			RunoutMM: 0.020, RunoutEven: true,
			Finish: Ream, ToolMM: [2]float64{2.015, 2.025}, BoreMM: [2]float64{0, 3}, RunningUM: [2]float64{0, 100}, JournalMM: 2}},
		Gears: []Gear{{Name: "drive", MateOn: FixedMate, Open: [2]float64{x, y}, CentreMM: 12, WindowMM: [2]float64{11.980, 12.040}, UMateMM: 0.004}},
	}
}

// Both columns of plan/survey/METHODS.md 7.1: u(a) 12.196 closed and 12.180 by trials, mean
// 12.010, P 0.9861 and 0.9867.
func TestWorkedExampleBothWays(t *testing.T) {
	m := example()
	lines := m.Budget()
	l := lines[len(lines)-1]
	if math.Abs(l.Mean-12.010) > 2e-5 || math.Abs(l.U*1000-12.196) > 0.005 || math.Abs(l.P-0.9861) > 2e-4 {
		t.Errorf("closed form: mean %.6f u %.3f P %.4f, want 12.010006 12.196 0.9861", l.Mean, l.U*1000, l.P)
	}
	r := run(t, m, 1_000_000)
	if math.Abs(r.FirstTimeRight-0.9867) > 0.0006 {
		t.Errorf("trials: P %.4f, want 0.9867", r.FirstTimeRight)
	}
	c, w := m.compile(), newWorker(len(m.Bores), len(m.Gears), len(m.Setups))
	var a []float64
	sum, sq := 0.0, 0.0
	for block := range 60 {
		w.seed(1, block)
		for k := range uint64(Block) {
			w.trial(c, k)
			d := w.centre[0] - 12
			a = append(a, d)
			sum += d
			sq += d * d
		}
	}
	n := float64(len(a))
	mean := sum / n
	u := math.Sqrt(sq/n - mean*mean)
	sort.Float64s(a)
	lo, hi := 12+a[int(0.025*n)], 12+a[int(0.975*n)]
	if math.Abs(mean-0.010) > 1e-4 || math.Abs(u*1000-12.180) > 0.06 {
		t.Errorf("trials: mean %.5f u %.3f, want 12.01002 12.180", 12+mean, u*1000)
	}
	if math.Abs(lo-11.9862) > 3e-4 || math.Abs(hi-12.0338) > 3e-4 {
		t.Errorf("trials: 95 %% from %.4f to %.4f, want 11.9862 to 12.0338", lo, hi)
	}
}

// The rows of plan/survey/METHODS.md 7.1 about place and skew over 18 mm: the survey (0.004)
// and the table count once per plate or once for both.
func TestWorkedExampleSkew(t *testing.T) {
	datum, table := 0.005/math.Sqrt(3)*math.Sqrt2, 0.010/math.Sqrt(3)
	for _, row := range []struct {
		name   string
		shared bool    // one clamping for both plates
		hole   float64 // what each plate has for itself
		setup  float64
		closed float64 // mrad
	}{
		{"set up separately", false, math.Hypot(0.008, 0.004), math.Hypot(datum, table), 0.9515},
		{"one set-up", true, math.Hypot(0.008, table), math.Hypot(datum, 0.004), 0.8389},
		{"line-bored", true, 0.008, math.Hypot(math.Hypot(datum, 0.004), table), 0.7057},
	} {
		m := example()
		m.Setups = []Setup{{"A", row.setup}, {"B", row.setup}}
		m.Bores[0].UHoleMM = row.hole
		right := m.Bores[0]
		right.Name, right.Right = "axle.right", true
		if !row.shared {
			right.Setup = 1
		}
		m.Bores = append(m.Bores, right)
		m.Gears = nil
		c, w := m.compile(), newWorker(len(m.Bores), len(m.Gears), len(m.Setups))
		var sq, place float64
		var all []float64
		const blocks = 60
		for block := range blocks {
			w.seed(1, block)
			for k := range uint64(Block) {
				w.trial(c, k)
				d := (w.px[1] - w.px[0]) / 18 * 1000
				sq += d * d
				r := math.Hypot(w.px[0], w.py[0]) * 1000
				place += r
				all = append(all, r)
			}
		}
		if u := math.Sqrt(sq / (blocks * Block)); math.Abs(u-row.closed) > 0.005 {
			t.Errorf("%s: u(skew) %.4f mrad, want %.4f", row.name, u, row.closed)
		}
		sort.Float64s(all)
		if mean, most := place/(blocks*Block), all[int(0.95*float64(len(all)))]; math.Abs(mean-15.20) > 0.08 || math.Abs(most-29.45) > 0.25 {
			t.Errorf("%s: place %.2f, 95 %% %.2f, want 15.20 and 29.45", row.name, mean, most)
		}
	}
}

// Where only one check can fail, trials and closed form agree.
func TestTrialsBesideClosedForm(t *testing.T) {
	wide := func() Model {
		m := example()
		m.Gears[0].WindowMM = [2]float64{11, 13}
		return m
	}
	for name, c := range map[string]struct {
		change func(*Model)
		tol    float64
	}{
		"press": {func(m *Model) {
			m.Bores[0].Seat.U, m.Bores[0].PressUM = 0.004, [2]float64{6, 18}
		}, 0.003},
		"clean-up": {func(m *Model) {
			b := &m.Bores[0]
			b.Survey = Survey{R: 2.2, JournalR: 2.19, D: 0.28, TowardsDeg: 60, Cov: [3]float64{1e-4, 5e-5, 2e-4}, UDepthMM: 0.01}
			b.NextBush = true
		}, 0.02},
		"running clearance": {func(m *Model) {
			m.Bores[0].UJournalMM, m.Bores[0].RunningUM = 0.006, [2]float64{12, 30}
		}, 0.02},
		"mesh": {func(m *Model) {
			m.Gears[0].WindowMM, m.Gears[0].RunoutMM, m.Gears[0].UGeomMM = [2]float64{11.99, 12.03}, [2]float64{0.02, 0.01}, 0.01
		}, 0.01},
	} {
		m := wide()
		c.change(&m)
		want := 1.0
		for _, l := range m.Budget() {
			want *= l.P
		}
		got := run(t, m, 200000).FirstTimeRight
		if math.Abs(got-want) > c.tol || got > 0.999 {
			t.Errorf("%s: trials %.4f, closed form %.4f", name, got, want)
		}
	}
}

// JCGM 101:2008, 9.5: the end gauge by trials, 838 nm, u 36, shortest 99 %
// interval 745 to 932 (as reported in Metrology 2(1):3, 2022), which wobbles by
// 1 to 2 nm between seeds. The normal errors are those of the trials.
func TestEndGaugeByTrials(t *testing.T) {
	if testing.Short() {
		t.Skip("a million trials")
	}
	tab := sharedTables()
	r := rand.New(rand.NewPCG(1, 0))
	normal := func() float64 { return tab.normal(uint32(r.Uint64())) }
	student := func(n int) float64 {
		chi := 0.0
		for i := 0; i+1 < n; i += 2 {
			chi -= 2 * math.Log(1-r.Float64()) // two degrees of freedom at a time
		}
		if n%2 == 1 {
			z := normal()
			chi += z * z
		}
		return normal() / math.Sqrt(chi/float64(n))
	}
	// Even, with ends known to plus and minus d only.
	trapezoid := func(a, b, d float64) float64 {
		lo := a - d + 2*d*r.Float64()
		return lo + (a+b-2*lo)*r.Float64()
	}
	const n = 1_000_000
	l := make([]float64, n)
	sum, sq := 0.0, 0.0
	for i := range l {
		ls := 50000623 + 25*student(18)
		d := 215 + 6*student(24) + 4*student(5) + 7*student(8)
		alpha := 9.5e-6 + 4e-6*r.Float64()
		theta := -0.1 + 0.2*normal() + 0.5*math.Sin(2*math.Pi*r.Float64())
		dalpha := trapezoid(-1e-6, 1e-6, 0.1e-6)
		dtheta := trapezoid(-0.050, 0.050, 0.025)
		l[i] = ls + d - ls*(dalpha*theta+alpha*dtheta) - 50000000
		sum += l[i]
		sq += (l[i] - 838) * (l[i] - 838)
	}
	mean := sum / n
	u := math.Sqrt(sq/n - (mean-838)*(mean-838))
	sort.Float64s(l)
	lo, hi := l[0], l[n-1]
	for i := 0; i+n*99/100 < n; i++ {
		if l[i+n*99/100]-l[i] < hi-lo {
			lo, hi = l[i], l[i+n*99/100]
		}
	}
	if math.Abs(mean-838) > 0.2 || math.Abs(u-35.84) > 0.2 || math.Abs(lo-745) > 2 || math.Abs(hi-932) > 2 {
		t.Errorf("%.1f nm, u %.2f, 99 %% %.1f to %.1f; want 838, 36, 745 to 932", mean, u, lo, hi)
	}
}
