package survey

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

// METHODS.md 3.2: widest 3.200, narrowest 3.100, u 0.005
// each: R 1.5500 (0.0025), w 0.100 (0.0071); 10 degrees on w 0.1 costs 0.009.
func TestDiametersExample(t *testing.T) {
	d := Diameters{Middle: [2]float64{10, 6}, Widest: 3.200, Narrowest: 3.100, UWidest: 0.005, UNarrow: 0.005, WornTo: []float64{90 * deg}, UDir: 10 * deg, Journal: 3.06}
	e, err := FromDiameters(d)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "R", e.R, 1.55, 1e-9)
	near(t, "u(R)", e.RU, 0.0025, 1e-9)
	near(t, "w", e.Bore.W, 0.1, 1e-9)
	near(t, "u(w)", e.Bore.WU, 0.0071, 5e-5)
	near(t, "x", e.Centre[0], 10, 1e-9)
	near(t, "y", e.Centre[1], 5.95, 1e-9)
	near(t, "across", math.Sqrt(e.Cov[0][0]), 0.009, 5e-4)
	near(t, "along", math.Sqrt(e.Cov[1][1]), 0.0071/2, 5e-5)
	near(t, "correlation", e.Cov[0][1], 0, 1e-15)

	d.WidestAt, d.HasWidestAt = 275*deg, true // the line, read the other way round
	if e, err = FromDiameters(d); err != nil {
		t.Fatal(err)
	}
	near(t, "line", dist(e.Centre, toward(d.Middle, -0.05, 95*deg)), 0, 1e-12)
	if e.Doubtful {
		t.Error(e.Words)
	}
	d.WidestAt = 20 * deg
	if e, _ = FromDiameters(d); !e.Doubtful {
		t.Error("widest square to the side: no doubt")
	}
	d.WornTo = nil
	if e, _ = FromDiameters(d); !e.Doubtful || dist(e.Centre, d.Middle) > 1e-12 || e.U() < 0.049 {
		t.Errorf("no side: %+v", e)
	}
	d.Widest = 3.105
	if e, _ = FromDiameters(d); e.Doubtful || !e.Bore.Round || dist(e.Centre, d.Middle) > 1e-12 {
		t.Errorf("round: %+v", e)
	}
	d.Widest = 3.0
	if _, err = FromDiameters(d); !errors.Is(err, ErrSwapped) {
		t.Errorf("swapped: %v", err)
	}
	d.Widest, d.Journal = 3.2, 3.15
	if _, err = FromDiameters(d); !errors.Is(err, ErrJournal) {
		t.Errorf("journal: %v", err)
	}
}

// TestDiametersHonest: readings drawn with their errors lie within 2u.
func TestDiametersHonest(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	within, n := 0, 3000
	for range n {
		w, th := 0.06+0.3*rng.Float64(), rng.Float64()*6
		d := Diameters{Middle: toward([2]float64{}, w/2, th), UMiddle: 0.008, UWidest: 0.006, UNarrow: 0.004, UDir: 10 * deg}
		d.Middle[0] += 0.008 * rng.NormFloat64()
		d.Middle[1] += 0.008 * rng.NormFloat64()
		d.Narrowest = 3 + 0.004*rng.NormFloat64()
		d.Widest = 3 + w + 0.006*rng.NormFloat64()
		d.WornTo = []float64{th + 10*deg*rng.NormFloat64()}
		e, err := FromDiameters(d)
		if err != nil {
			t.Fatal(err)
		}
		if math.Hypot(e.Centre[0], e.Centre[1]) <= 2*math.Sqrt(e.Cov[0][0]+e.Cov[1][1]) {
			within++
		}
	}
	if share := float64(within) / float64(n); share < 0.92 || share > 0.995 {
		t.Errorf("%.3f within 2u", share)
	}
}

func TestPins(t *testing.T) {
	// 3.3: step 0.01 gives u 0.0029.
	d, u := PinBand(3.10, 3.11, 0, 0)
	near(t, "D", d, 3.105, 1e-12)
	near(t, "u", u, 0.0029, 5e-5)
	// A minus-class pin (ZZ 0.00508): half the tolerance off the mean.
	d, _ = PinBand(3.10, 3.11, 0, -0.00508)
	near(t, "minus class", d, 3.105-0.00254, 1e-9)
}

func TestSpans(t *testing.T) {
	p := [2]float64{12, 7}
	a, b := [2]float64{0, 0}, [2]float64{30, 2}
	in, out := dist(p, a)-1.5-2, dist(p, a)+1.5+2
	c, u := SpanCentre(in, out, 0.003, 0.004)
	near(t, "span", c, dist(p, a), 1e-12)
	near(t, "u", u, 0.0025, 1e-12)
	e, err := FromSpans([]Span{{To: a, Apart: c, U: 0.003, Name: "a"}, {To: b, Apart: dist(p, b), U: 0.003, Name: "b"}}, [2]float64{11, 6})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "crossing", dist(e.Centre, p), 0, 1e-9)
	if e.U() < 0.003 {
		t.Errorf("u %v below that of one span", e.U())
	}
	if _, err := FromSpans([]Span{{To: a, Apart: 3, U: 0.1}}, p); !errors.Is(err, ErrTooFew) {
		t.Errorf("one span: %v", err)
	}
	if _, err := FromSpans([]Span{{To: a, Apart: 3, U: 0.1}, {To: [2]float64{24, 14}, Apart: 3, U: 0.1}}, p); !errors.Is(err, ErrCollinear) {
		t.Errorf("in one line: %v", err)
	}
	e, err = FromSpans([]Span{{To: a, Apart: c, U: 0.003, Name: "a"}, {To: b, Apart: dist(p, b), U: 0.003, Name: "b"}, {To: [2]float64{10, 30}, Apart: dist(p, [2]float64{10, 30}) + 0.3, U: 0.003, Name: "c"}}, p)
	if err != nil || !e.Doubtful {
		t.Errorf("a wrong span: %v %+v", err, e)
	}
}

func TestBest(t *testing.T) {
	a := SoundSeat([2]float64{1, 1}, 0.005)
	b := Evidence{Rank: RankReadings, Method: ByDiameters, Centre: [2]float64{1.03, 1}, Cov: round2(0.004)}
	c := OtherPlate([2]float64{1, 1.01}, round2(0.01), 0.05)
	d := Evidence{Rank: RankOutline, Method: ByOutline, Centre: [2]float64{1, 1}, Cov: round2(0.003), Doubtful: true}
	got := Combine([]Evidence{d, c, b, a})
	if got.Leads != 3 {
		t.Errorf("%d leads", got.Leads)
	}
	// 0.03 apart: over 2 sqrt(0.005^2 + 0.004^2).
	if len(got.Differ) != 1 || !strings.Contains(got.Differ[0].Words.String(), "widest and narrowest") {
		t.Errorf("differ %+v", got.Differ)
	}
	if i := Combine([]Evidence{d, c, b}).Leads; i != 2 {
		t.Errorf("a doubtful one leads: %d", i)
	}
	if i := Combine([]Evidence{d}).Leads; i != 0 {
		t.Errorf("nothing sure left: %d", i)
	}
	if got = Combine(nil); got.Leads != -1 || got.Differ != nil {
		t.Errorf("none: %+v", got)
	}
	near(t, "drilling", math.Sqrt(c.Cov[0][0]), math.Hypot(0.01, 0.05), 1e-12)
}
