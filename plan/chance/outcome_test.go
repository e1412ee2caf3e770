package chance

import (
	"math"
	"testing"
)

// plainJob is one bore and one pair without any error: everything in its middle.
func plainJob() Model {
	return Model{
		Setups: []Setup{{Name: "A"}},
		Shafts: []Shaft{{"axle", 90}},
		Bores: []Bore{{Name: "axle.left", Survey: Survey{R: 1.6, JournalR: 1.58, D: 0.12, TowardsDeg: 90},
			Seat: SeatSize{Mid: 5}, OD: Size{Low: 5.015, High: 5.015}, Hole: Size{Low: 3.206, High: 3.206},
			PressUM: [2]float64{8, 22}, Closure: Closure{Elastic: 0.6, FlowUM: [2]float64{10, 10}, Slope: [2]float64{1, 1}},
			BoreMM: [2]float64{3.18, 3.21}, RunningUM: [2]float64{15, 60}, JournalMM: 3.16,
			Wall: Wall{LeftMM: 2, NoneBelowMM: 1.25, StressPerUM: 3, StressLimit: 100}, Replaceable: true}},
		Gears: []Gear{{Name: "drive", MateOn: FixedMate, Open: [2]float64{0, 1}, CentreMM: 8.1, WindowMM: [2]float64{8.05, 8.2}, TightMM: 8.04, LooseMM: 8.4}},
	}
}

// Every way for a trial to end, from figures without error. The plain job: U
// 15 um; closure 0.6 x 10 + 5 = 11 um; bore 3.195; clearance 35 um; the pair
// runs at 8.1 + 0.0175.
func TestOutcomes(t *testing.T) {
	for name, row := range map[string]struct {
		change func(*Bore, *Gear)
		want   class
		cause  string
	}{
		"right":                  {func(*Bore, *Gear) {}, right, ""},
		"no clean-up":            {func(b *Bore, _ *Gear) { b.Survey.D = 1 }, lost, "axle.left: seat does not clean up the wear"},
		"no clean-up, next bush": {func(b *Bore, _ *Gear) { b.Survey.D, b.NextBush, b.NextSeatMM = 1, true, 2.75 }, next, "axle.left: seat does not clean up the wear"},
		"next bush too small":    {func(b *Bore, _ *Gear) { b.Survey.D, b.NextBush, b.NextSeatMM = 1.2, true, 2.75 }, lost, "axle.left: seat does not clean up the wear"},
		"next bush, no wall": {func(b *Bore, _ *Gear) {
			b.Survey.D, b.NextBush, b.NextSeatMM, b.Wall.NextLeftMM = 1, true, 2.75, 1.2
		}, lost, "axle.left: seat does not clean up the wear"},
		"loose":            {func(b *Bore, _ *Gear) { b.Seat.Mid = 5.008 }, lost, "axle.left: press too loose"},
		"loose, bonded":    {func(b *Bore, _ *Gear) { b.Seat.Mid, b.Bond = 5.008, true }, next, "axle.left: press too loose"},
		"tight":            {func(b *Bore, _ *Gear) { b.Seat.Mid = 4.992 }, rework, "axle.left: press too tight"},
		"gauged first":     {func(b *Bore, _ *Gear) { b.Seat.Mid = 4.98 }, rework, "axle.left: press too tight"},
		"cracks":           {func(b *Bore, _ *Gear) { b.Wall.StressLimit = 1 }, lost, "axle.left: wall cracks on pressing"},
		"flows, no crack":  {func(b *Bore, _ *Gear) { b.Wall.StressLimit, b.Wall.StressCapMPa = 1, 0.9 }, right, ""},
		"slips":            {func(b *Bore, _ *Gear) { b.Slips, b.NextBush = 1, true }, next, "axle.left: a slip: a tool grabs, or a dial is misread"},
		"part":             {func(b *Bore, _ *Gear) { b.PartFails = 1 }, next, "axle.left: plug or sleeve leaves wear or does not hold"},
		"wall":             {func(b *Bore, _ *Gear) { b.Wall.LeftMM = 1.2 }, lost, "axle.left: too little metal left to edge"},
		"bore small":       {func(b *Bore, _ *Gear) { b.Hole = Size{Low: 3.19, High: 3.19} }, rework, "axle.left: finished bore too small"},
		"bore large":       {func(b *Bore, _ *Gear) { b.Hole = Size{Low: 3.23, High: 3.23} }, spoilt, "axle.left: finished bore too large"},
		"bore large, none": {func(b *Bore, _ *Gear) { b.Hole, b.Replaceable = Size{Low: 3.23, High: 3.23}, false }, lost, "axle.left: finished bore too large"},
		"axle tight":       {func(b *Bore, _ *Gear) { b.JournalMM = 3.185 }, rework, "axle.left: axle too tight in its bore"},
		"axle loose":       {func(b *Bore, _ *Gear) { b.JournalMM = 3.13 }, spoilt, "axle.left: axle too loose in its bore"},
		"knurl":            {func(b *Bore, _ *Gear) { b.MustPassMM = 3.2 }, rework, "axle.left: what must pass does not go through"},
		"mandrel":          {func(b *Bore, _ *Gear) { b.Finish, b.ToolMM, b.MustPassMM = Mandrel, [2]float64{3.205, 3.205}, 3.2 }, right, ""},
		"mandrel, too far": {func(b *Bore, _ *Gear) {
			b.Finish, b.ToolMM, b.MaxOpenMM, b.MustPassMM = Mandrel, [2]float64{3.205, 3.205}, 0.004, 3.2
		}, rework, "axle.left: what must pass does not go through"},
		"own axle": {func(b *Bore, _ *Gear) {
			b.Finish, b.ToolMM, b.JournalMM = OwnAxle, [2]float64{0.02, 0.02}, 3.19
		}, right, ""},
		"too close":        {func(_ *Bore, g *Gear) { g.CentreMM = 8.03 }, next, "drive: gears too close"},
		"too close, tooth": {func(_ *Bore, g *Gear) { g.CentreMM, g.RunoutMM = 8.03, [2]float64{0.02, 0.04} }, lost, "drive: no backlash at the tightest tooth"},
		"tooth, eccentric": {func(b *Bore, g *Gear) {
			g.CentreMM, g.RunoutMM, b.Eccentric = 8.03, [2]float64{0.02, 0.04}, true
		}, next, "drive: no backlash at the tightest tooth"},
		"too far": {func(_ *Bore, g *Gear) { g.CentreMM = 8.3 }, next, "drive: gears too far apart"},
		"contact": {func(_ *Bore, g *Gear) { g.CentreMM = 8.5 }, lost, "drive: contact ratio too low"},
		"tooth, nobody": {func(b *Bore, g *Gear) {
			g.CentreMM, g.RunoutMM, b.Kind = 8.03, [2]float64{0.02, 0.04}, Leave
		}, next, "drive: no backlash at the tightest tooth"},
		"contact of the loosest": {func(b *Bore, g *Gear) {
			g.CentreMM, g.WindowMM, g.RunoutMM, b.Eccentric = 8.375, [2]float64{8, 9}, [2]float64{0.02, 0}, true
		}, next, "drive: contact ratio too low"},
		"tight, turns": {func(_ *Bore, g *Gear) {
			g.CentreMM, g.RunoutMM, g.BindMM = 8.03, [2]float64{0.02, 0.04}, 8.01
		}, next, "drive: no backlash at the tightest tooth"},
		"contact, runs": {func(_ *Bore, g *Gear) { g.CentreMM, g.PartMM = 8.5, 8.52 }, next, "drive: contact ratio too low"},
		"loosest in contact": {func(_ *Bore, g *Gear) {
			g.CentreMM, g.WindowMM, g.RunoutMM = 8.37, [2]float64{8, 9}, [2]float64{0.02, 0}
		}, right, ""},
		"shifted far":      {func(_ *Bore, g *Gear) { g.SpreadMM = []float64{-0.09} }, next, "drive: gears too far apart"},
		"shifted near":     {func(_ *Bore, g *Gear) { g.SpreadMM = []float64{0.07} }, next, "drive: gears too close"},
		"shifted, binds":   {func(_ *Bore, g *Gear) { g.SpreadMM = []float64{0.2} }, next, "drive: no backlash at the tightest tooth"},
		"shifted, right":   {func(_ *Bore, g *Gear) { g.SpreadMM = []float64{0.06} }, right, ""},
		"cut otherwise":    {func(_ *Bore, g *Gear) { g.CentreMM, g.SpreadMM = 8.2, []float64{0.1} }, right, ""},
		"wrong as entered": {func(_ *Bore, g *Gear) { g.CentreMM, g.SpreadMM = 8.2, []float64{0} }, next, "drive: gears too far apart"},
		"placeless": {func(_ *Bore, g *Gear) {
			*g = Gear{Name: "drive", Open: [2]float64{0, 1}, Placeless: true, CentreMM: 0.05, WindowMM: [2]float64{0, 0.1}, SpreadMM: []float64{0.06}}
		}, next, "drive: gears too close"},
		"left alone":   {func(b *Bore, _ *Gear) { b.Kind, b.Survey.D, b.Seat.Mid = Leave, 1, 4 }, right, ""},
		"old seat":     {func(b *Bore, _ *Gear) { b.Kind, b.Survey.D = OldSeat, 1 }, right, ""},
		"first of two": {func(b *Bore, g *Gear) { b.Seat.Mid, g.CentreMM = 4.992, 8.5 }, lost, "axle.left: press too tight"},
	} {
		m := plainJob()
		row.change(&m.Bores[0], &m.Gears[0])
		r := run(t, m, 100)
		got := [classes]int{r.Right, r.Rework, r.Spoilt, r.NextBush, r.LostCount}
		if got[row.want] != 100 {
			t.Errorf("%s: right, rework, spoilt, next, lost %v", name, got)
		}
		switch {
		case row.cause == "" && len(r.Causes) != 0, row.cause != "" && (len(r.Causes) != 1 || r.Causes[0].Cause.String() != row.cause || r.Causes[0].Share != 1):
			t.Errorf("%s: causes %+v", name, r.Causes)
		}
	}
	m := plainJob()
	c, w := m.compile(), newWorker(1, 1, 1)
	w.seed(1, 0)
	w.trial(c, 0)
	if math.Abs(w.clear[0]-0.035) > 1e-9 || math.Abs(w.centre[0]-8.1175) > 1e-9 {
		t.Errorf("clearance %v, distance %v; by hand 0.035 and 8.1175", w.clear[0], w.centre[0])
	}
}

// The figure printed from 20000 trials is steady to one per cent: twice its
// spread from seed to seed stays under it, and the spread is the one that
// independent trials have.
func TestSteadyToOnePercent(t *testing.T) {
	m := truck()
	const n = 100
	var sum, sq float64
	for seed := range int64(n) {
		r, err := Run(m, Settings{Trials: 20000, Seed: seed})
		if err != nil {
			t.Fatal(err)
		}
		sum += r.FirstTimeRight
		sq += r.FirstTimeRight * r.FirstTimeRight
	}
	mean := sum / n
	spread := math.Sqrt(sq/n - mean*mean)
	if 2*spread > 0.01 {
		t.Errorf("spread %.4f", spread)
	}
	if want := math.Sqrt(mean * (1 - mean) / 20000); math.Abs(spread/want-1) > 0.25 {
		t.Errorf("spread %.5f, independent trials have %.5f", spread, want)
	}
}

// The worse the hole is placed, the fewer come right.
func TestWorsePlacingNeverHelps(t *testing.T) {
	last := 1.0
	for _, u := range []float64{0.005, 0.01, 0.02, 0.04, 0.08} {
		m := truck()
		for i := range m.Bores {
			m.Bores[i].UHoleMM = u
		}
		got := run(t, m, 20000).FirstTimeRight
		if got >= last {
			t.Errorf("hole placed to %v: %v right, before %v", u, got, last)
		}
		last = got
	}
}

// Bored to its own axle the doubt about the journal is out; bored in place the
// run-out of the bush is.
func TestFinishTakesErrorsOut(t *testing.T) {
	own := truck()
	for i := range own.Bores {
		own.Bores[i].Finish, own.Bores[i].ToolMM = OwnAxle, [2]float64{0.022, 0.04}
		own.Bores[i].Hole, own.Bores[i].MaxOpenMM = Size{Low: 3.10, High: 3.12}, 0
	}
	was := run(t, own, 20000)
	for i := range own.Bores {
		own.Bores[i].UJournalMM *= 2
	}
	if got := run(t, own, 20000); got.Right != was.Right {
		t.Errorf("own axle: %d right, with twice the doubt %d", was.Right, got.Right)
	}
	inPlace := truck()
	for i := range inPlace.Bores {
		inPlace.Bores[i].Finish = BoreInPlace
	}
	was = run(t, inPlace, 20000)
	for i := range inPlace.Bores {
		inPlace.Bores[i].RunoutMM = 0.2
	}
	if got := run(t, inPlace, 20000); got.Right != was.Right {
		t.Errorf("bored in place: %d right, with a bent bush %d", was.Right, got.Right)
	}
}
