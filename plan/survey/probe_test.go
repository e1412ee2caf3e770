package survey

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rebush/fits/say"
	"rebush/testdata"
)

// probes of the rows of wornbores.csv with a tolerance.
func eachProbe(t *testing.T, do func(r row, p Probe, o [2]float64)) {
	for _, r := range testdata.Rows[row](t, "own/wornbores.csv") {
		if r.has("tol_centre_mm") {
			do(r, Probe{Points: r.points(t), S: r.num(t, "noise_um") / 1000, Journal: 2 * r.num(t, "r"), WornTo: []float64{r.num(t, "wear_side_hint_deg") * deg}, UDir: 10 * deg, Against: 16},
				[2]float64{r.num(t, "x0"), r.num(t, "y0")})
		}
	}
}

func words(p Probed) string { return say.Join("; ", p.Words...).String() }

// TestProbeRows: through the front door every row with a tolerance is inside
// it too, and answered with confidence.
func TestProbeRows(t *testing.T) {
	passed, doubt := 0, 0
	eachProbe(t, func(r row, p Probe, o [2]float64) {
		pd, err := FromProbe(p)
		if err != nil {
			t.Errorf("%s: %v", r["id"], err)
			return
		}
		if off := dist(pd.Centre, o); off > r.num(t, "tol_centre_mm") {
			t.Errorf("%s: off by %.4f: %s", r["id"], off, words(pd))
		} else {
			passed++
		}
		if pd.Doubtful {
			doubt++
			t.Logf("%s: %s", r["id"], words(pd))
		}
		if len(pd.LeftOut) > 0 {
			t.Errorf("%s: %s", r["id"], words(pd))
		}
		if len(pd.Residuals) != len(p.Points) {
			t.Errorf("%s: %d residuals", r["id"], len(pd.Residuals))
		}
	})
	t.Logf("%d rows inside, %d doubtful", passed, doubt)
	if doubt > 3 {
		t.Errorf("%d of 149 sure cases are called doubtful", doubt)
	}
}

// TestProbeWithoutSide: without the side, or with one known to 60 degrees, the
// answer is never confident where there is wear to be seen, and its doubled u
// still covers.
func TestProbeWithoutSide(t *testing.T) {
	within, n, confident := 0, 0, 0
	eachProbe(t, func(r row, p Probe, o [2]float64) {
		p.WornTo = nil
		if n%2 == 1 {
			p.WornTo, p.UDir = []float64{2}, 60*deg
		}
		pd, err := FromProbe(p)
		if err != nil {
			t.Errorf("%s: %v", r["id"], err)
			return
		}
		n++
		if !pd.Doubtful && !pd.Bore.Round {
			t.Errorf("%s: confident without a side", r["id"])
		}
		if pd.Bore.Round {
			confident++
		}
		if dist(pd.Centre, o) <= 2*pd.U()+5e-4 {
			within++
		}
	})
	t.Logf("without a side: %d of %d within 2u, %d called round", within, n, confident)
	if float64(within) < 0.9*float64(n) {
		t.Errorf("%d of %d within 2u", within, n)
	}
}

// TestProbeContradicted: a side stated the wrong way round, where the clearance
// gives the two arcs unlike radii.
func TestProbeContradicted(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	caught, n := 0, 0
	for range 200 {
		b := someBore(rng)
		b.noise = 0.003
		if b.w < 0.08 || b.unworn < 205 || b.unworn > 270 {
			continue
		}
		n++
		p := Probe{Points: b.points(rng, 36), S: b.noise, Journal: 2 * b.r, WornTo: []float64{b.theta + math.Pi}, UDir: 10 * deg, Against: 16}
		pd, err := FromProbe(p)
		if err != nil {
			t.Fatal(err)
		}
		if pd.Doubtful {
			caught++
		}
	}
	t.Logf("side stated the wrong way round: %d of %d caught", caught, n)
	if n < 20 || float64(caught) < 0.9*float64(n) {
		t.Errorf("caught %d of %d", caught, n)
	}
}

func TestProbeSlips(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 9))
	for k := range 60 {
		b := someBore(rng)
		b.o = [2]float64{10 + 20*rng.Float64(), 5 + 5*rng.Float64()}
		n := [2]int{16, 36}[k%2]
		p := Probe{Points: b.points(rng, n), S: b.noise, Journal: 2 * b.r, WornTo: []float64{b.side}, UDir: 10 * deg, Against: 16}
		clean, err := FromProbe(p)
		if err != nil {
			t.Fatal(err)
		}
		i := rng.IntN(n)
		p.Points = append([][2]float64(nil), p.Points...)
		p.Points[i][k%3%2] *= 10
		pd, err := FromProbe(p)
		if err != nil {
			t.Fatal(err)
		}
		if len(pd.LeftOut) != 1 || pd.LeftOut[0] != i || !strings.Contains(words(pd), "ten times too large") {
			t.Errorf("slip at point %d: left out %v: %s", i+1, pd.LeftOut, words(pd))
		}
		if d := dist(pd.Centre, clean.Centre); d > 4*clean.U() {
			t.Errorf("slip moves the centre by %v, u %v", d, clean.U())
		}
	}
	// A hole near the corner of the frame: 0.15 typed as 1.5 stays in the hole.
	b := NewWornBore([2]float64{1, 0.8}, 1.5, 1.46, 0.12, 0.6)
	p := Probe{Points: b.Outline(16), S: 0.003, Journal: 2.92, WornTo: []float64{0.6}, UDir: 10 * deg, Against: 16}
	at := -1
	for i, q := range p.Points {
		if q[1] > 0.05 && q[1] < 0.2 {
			at = i
		}
	}
	if at < 0 {
		at = 11
	}
	p.Points[at][1] *= 10
	pd, err := FromProbe(p)
	if err != nil {
		t.Fatal(err)
	}
	if len(pd.LeftOut) != 1 || pd.LeftOut[0] != at {
		t.Errorf("small slip at %d: left out %v: %s", at+1, pd.LeftOut, words(pd))
	}
	near(t, "centre", dist(pd.Centre, b.O), 0, 0.001)
}

func TestProbeErrors(t *testing.T) {
	hole := NewWornBore([2]float64{10, 6}, 1.55, 1.53, 0.1, 1).Outline(16)
	good := Probe{Points: hole, S: 0.005, Journal: 3.06, WornTo: []float64{1}, UDir: 0.17, Against: 16}
	if _, err := FromProbe(good); err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		mend func(*Probe)
		want error
	}{
		"two points":     {func(p *Probe) { p.Points = hole[:2] }, ErrTooFew},
		"no points":      {func(p *Probe) { p.Points = nil }, ErrTooFew},
		"one place":      {func(p *Probe) { p.Points = [][2]float64{hole[0], hole[0], hole[0], hole[0], hole[0], hole[0]} }, ErrTooFew},
		"a line":         {func(p *Probe) { p.Points = [][2]float64{{0, 0}, {1, 2}, {2, 4}, {3, 6}, {4, 8}, {5, 10}, {6, 12}} }, ErrCollinear},
		"one side":       {func(p *Probe) { p.Points = NewWornBore([2]float64{}, 2, 2, 0, 0).Outline(36)[:16] }, ErrOneSide},
		"large journal":  {func(p *Probe) { p.Journal = 3.4 }, ErrJournal},
		"journal inside": {func(p *Probe) { p.Journal = 3.16; p.S = 0.002 }, ErrJournal},
		"no number":      {func(p *Probe) { p.Points = append([][2]float64{{math.NaN(), 1}}, hole...) }, ErrNotFinite},
		"infinite":       {func(p *Probe) { p.Journal = math.Inf(1) }, ErrNotFinite},
		"five":           {func(p *Probe) { p.Points = [][2]float64{hole[0], hole[3], hole[6], hole[9], hole[12]} }, ErrTooFew},
	} {
		p := good
		c.mend(&p)
		if _, err := FromProbe(p); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", name, err, c.want)
		}
	}
}

// TestProbeNeverNaN: whatever is typed gives an error or figures.
func TestProbeNeverNaN(t *testing.T) {
	answers := 0
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 20).Draw(t, "n")
		wild := rapid.Bool().Draw(t, "wild")
		coarse := rapid.SampledFrom([]float64{1e-6, 0.01, 0.5}).Draw(t, "coarse")
		var p Probe
		for i := range n {
			q := [2]float64{rapid.Float64Range(-20, 20).Draw(t, "x"), rapid.Float64Range(-20, 20).Draw(t, "y")}
			if !wild { // something like a hole
				q = toward([2]float64{3, 4}, 1.5+q[0]/80, float64(i)*0.7+q[1]/40)
			}
			p.Points = append(p.Points, [2]float64{math.Round(q[0]/coarse) * coarse, math.Round(q[1]/coarse) * coarse})
		}
		p.S = rapid.Float64Range(0, 0.1).Draw(t, "s")
		p.Journal = rapid.SampledFrom([]float64{0, 0, 1e-3, 2.2, 2.5, 3, 8, 30}).Draw(t, "journal")
		p.WornTo = rapid.SliceOfN(rapid.Float64Range(-20, 20), 0, 2).Draw(t, "to")
		p.Against = 16
		p.UDir, p.UJournal = rapid.Float64Range(0, 2).Draw(t, "u"), 0.005
		pd, err := FromProbe(p)
		if err != nil {
			return
		}
		answers++
		b := pd.Bore
		arc, deep := b.UncutArc(b.O, b.R)
		if !finite(pd.Centre[0], pd.Centre[1], pd.U(), pd.R, pd.RU, b.W, b.WU, b.ThetaRad, b.SeatRadius(b.O), b.foundR(), arc, deep, b.unwornArc()) || !finite(pd.Residuals...) {
			t.Fatalf("%+v", pd)
		}
	})
	if answers < 5 {
		t.Errorf("only %d answers", answers)
	}
}

// TestProbeNoLobe: a round bore with a much smaller journal has no lobe hidden
// between its points.
func TestProbeNoLobe(t *testing.T) {
	pts := NewWornBore([2]float64{10, 6}, 2, 2, 0, 0).Outline(8)
	for _, side := range []float64{0, 1, 2, 22.5 * deg} {
		pd, err := FromProbe(Probe{Points: pts, S: 0.003, Journal: 3, UJournal: 0.005, WornTo: []float64{side}, UDir: 10 * deg, Against: 16})
		if err != nil {
			t.Fatal(err)
		}
		if !pd.Bore.Round || pd.Bore.W > 1e-6 || pd.Doubtful {
			t.Errorf("worn to %v: %+v", side, pd.Bore)
		}
		near(t, "seat", pd.Bore.SeatRadius(pd.Centre), 2, 5e-4)
		near(t, "centre", dist(pd.Centre, [2]float64{10, 6}), 0, 5e-4)
	}
}

// TestGrownArc: without a journal, the side known: the doubled u covers.
func TestGrownArc(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 4))
	within, n := 0, 600
	for range n {
		b := someBore(rng)
		p := Probe{Points: b.points(rng, [2]int{16, 36}[rng.IntN(2)]), S: b.noise, WornTo: []float64{b.side}, UDir: 10 * deg, Against: 16}
		pd, err := FromProbe(p)
		if err != nil {
			t.Fatal(err)
		}
		if pd.Rank != RankArc {
			t.Fatalf("rank %d", pd.Rank)
		}
		if dist(pd.Centre, b.o) <= 2*pd.U() {
			within++
		}
	}
	t.Logf("grown arc: %.1f %% within 2u", 100*float64(within)/float64(n))
	if float64(within) < 0.9*float64(n) {
		t.Errorf("%d of %d within 2u", within, n)
	}
}

// TestConsensus: neither journal nor side: doubtful, and where both arcs have
// nearly one radius it says so.
func TestConsensus(t *testing.T) {
	b := truth{o: [2]float64{3, 4}, R: 2, r: 1.999, w: 0.3, d: 0.301, theta: 1, noise: 0.004}
	rng := rand.New(rand.NewPCG(2, 2))
	pd, err := FromProbe(Probe{Points: b.points(rng, 36), S: b.noise})
	if err != nil {
		t.Fatal(err)
	}
	if !pd.Doubtful || !strings.Contains(words(pd), "one radius") {
		t.Errorf("twins: %s", words(pd))
	}
	if dist(pd.Centre, b.o) > 2*pd.U() {
		t.Errorf("twins: %.3f off, u %.3f", dist(pd.Centre, b.o), pd.U())
	}
	b = truth{o: [2]float64{3, 4}, R: 2, r: 1.9, w: 0.1, d: 0.2, theta: 1, noise: 0.002}
	if pd, err = FromProbe(Probe{Points: b.points(rng, 16), S: b.noise}); err != nil {
		t.Fatal(err)
	}
	if !pd.Doubtful || dist(pd.Centre, b.o) > 2*pd.U() {
		t.Errorf("unlike arcs: off by %.4f, u %.4f, %s", dist(pd.Centre, b.o), pd.U(), words(pd))
	}
	b = truth{o: [2]float64{3, 4}, R: 2, r: 1.9, w: 0, d: 0.1, noise: 0.002}
	if pd, err = FromProbe(Probe{Points: b.points(rng, 16), S: b.noise}); err != nil {
		t.Fatal(err)
	}
	if pd.Doubtful || !pd.Bore.Round {
		t.Errorf("a round bore needs no side: %s", words(pd))
	}
}

// TestTwoLobesAndFans: coverage of the other shapes on made-up bores.
func TestTwoLobesAndFans(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for _, kind := range []string{"two loads", "fan"} {
		within, n := 0, 300
		var sum float64
		for range n {
			b := someBore(rng)
			b.noise = 0.003
			b.w = 0.06 + 0.2*rng.Float64()
			b.r = b.R - 0.01 - 0.08*rng.Float64()
			b.d = b.R - b.r + b.w
			p := Probe{S: b.noise, Journal: 2 * b.r, UDir: 10 * deg, Against: 16}
			if kind == "fan" {
				b.fan = (10 + 25*rng.Float64()) * deg
				p.WornTo = []float64{b.theta + 0.5*(rng.Float64()-0.5)}
			} else {
				b.theta2 = b.theta + (50+60*rng.Float64())*deg
				b.d2 = b.d * (0.6 + 0.4*rng.Float64())
				p.WornTo = []float64{b.theta + 0.3*(rng.Float64()-0.5), b.theta2 + 0.3*(rng.Float64()-0.5)}
			}
			p.Points = b.points(rng, 36)
			pd, err := FromProbe(p)
			if err != nil {
				t.Fatal(err)
			}
			off := dist(pd.Centre, b.o)
			if off <= 2*pd.U() {
				within++
			}
			sum += math.Min(25, off*off/pd.U()/pd.U())
		}
		share := float64(within) / float64(n)
		t.Logf("%s: %.1f %% within 2u, rms error/u %.2f", kind, 100*share, math.Sqrt(sum/float64(n)))
		if share < 0.9 {
			t.Errorf("%s: %.1f %% within 2u", kind, 100*share)
		}
	}
}
