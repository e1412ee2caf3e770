package survey

import (
	"math"
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/table"
	"rebush/plan/job"
)

// truck is a job of one shaft with a journal of 3.16, and a shop that owns a
// good gauge and one that reads 0.015 small.
type truck struct {
	*job.Job
	t     *testing.T
	rules *table.Rules
}

func oneShaft(t *testing.T, left, right job.Bore) truck {
	t.Helper()
	rules, err := table.ReadRules(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	left.Name, left.Side, right.Name, right.Side = "drive.left", job.Left, "drive.right", job.Right
	j := &job.Job{File: "truck.yaml", Shop: &job.Shop{Instruments: []job.Instrument{
		{
			Name: "bore gauge",
			U:    mmOf(t, "0.004"),
		}, {Name: "nibs calliper inside", U: mmOf(t, "0.003"), Bias: mmOf(t, "-0.015")},
		{Name: "read-out", U: mmOf(t, "0.010")}}}}
	j.Shafts = []job.Shaft{
		{
			Name:    "drive",
			Bores:   []job.Bore{left, right},
			Journal: job.Ends{Left: mmOf(t, "3.16"), Right: mmOf(t, "3.16")},
		},
	}
	return truck{j, t, rules}
}

func (k truck) survey() ([]Hole, finding.List, *ledger.Ledger) {
	k.t.Helper()
	tools, err := ReadInstruments(table.BuiltIn(), k.Shop)
	if err != nil {
		k.t.Fatal(err)
	}
	holes, said := Holes(FromJob(k.Job, tools, k.rules, nil))
	book := ledger.New()
	Explain(book, holes)
	if bad := book.Recompute(); len(bad) > 0 {
		k.t.Errorf("the ledger does not come out again: %v", bad)
	}
	return holes, said, book
}

func at(t *testing.T, x, y string) job.Point { return job.Point{X: mmOf(t, x), Y: mmOf(t, y)} }

// measured is worn 0.10 upwards about (10, 8): its middle is half of that higher.
func measured(t *testing.T) job.Bore {
	return job.Bore{Centre: at(t, "10", "8.05"), Widest: mmOf(t, "3.30"), Narrowest: mmOf(t, "3.20"),
		WornTo: []float64{90}}
}

// What the ledger says of a hole is what was decided, by the inputs that decided
// it: old centre (10, 8.05 - 0.10/2), old diameter 3.20, play 3.30 - 3.16, which
// is 4.4 % of the journal; u across hypot(0.010, 0.05 x 10 degrees) = 0.0132723, and
// with the other plate's, hypot(0.0132723, 0.05) = 0.0517316, 1/sqrt(1/0.0132723^2 +
// 1/0.0517316^2) = 0.0128559.
func TestExplainedAsDecided(t *testing.T) {
	k := oneShaft(t, measured(t), measured(t))
	holes, said, book := k.survey()
	if len(said) > 0 {
		t.Errorf("said %v", said)
	}
	h := holes[0]
	if !h.Known || h.Method != ByDiameters || h.By != "bore gauge" || dist(h.Worn.O, [2]float64{10, 8}) > 1e-9 {
		t.Errorf("%v by %s, %v", h.Worn.O, h.By, h.Method)
	}
	for key, want := range map[string]float64{"centre_mm/0": 10, "centre_mm/1": 8, "centre_u_mm": 0.0128559,
		"old_radius_mm/found": 1.6, "diameter_mm": 3.2,
		"wear_mm": 0.1, "wear_deg": 90, "clearance_mm": 0.02, "play_mm": 0.14, "play_percent": 4.4} {
		if got := book.Num(h.key(key)).V; math.Abs(got-want) > 1e-6 {
			t.Errorf("%s is %v, want %v", key, got, want)
		}
	}
	e, _ := book.Get(h.key("clearance_mm"))
	if !strings.Contains(strings.Join(e.Inputs, " "), "journal_now_mm") {
		t.Errorf("a clearance that hangs on the journal does not name it: %v", e.Inputs)
	}
	row := h.Row(book)
	if row.CentreMM[1].String() != "8.0000" || row.PlayMM.String() != "0.1400" || row.Method != "widest and narrowest" ||
		math.Abs(*row.WearDeg-90) > 1e-6 ||
		!row.Evidence[0].Used {
		t.Errorf("printed %+v", row)
	}
	// Made again from the ledger it is the same hole.
	in := h.Nums(book)
	v := make([]float64, len(in))
	for i, n := range in {
		v[i] = n.V
	}
	was := h.Worn
	if w := h.With(v).Worn; dist(w.O, was.O) > 1e-8 || math.Abs(w.D-was.D) > 1e-8 || h.Worn != was {
		t.Errorf("%+v from the ledger, %+v surveyed", w, was)
	}
}

// A hole whose centre only the other plate tells has its own wear, by diameters
// without a middle: a gauge that reads 0.015 small is put right there too.
func TestWearWithoutAMiddle(t *testing.T) {
	b := measured(t)
	b.Centre = job.Point{}
	b.With = map[string]string{"all": "nibs calliper inside"}
	for _, right := range []bool{false, true} { // whichever is asked first
		k := oneShaft(t, b, measured(t))
		i := 0
		if right {
			k = oneShaft(t, measured(t), b)
			i = 1
		}
		holes, _, book := k.survey()
		h := holes[i]
		if h.Method != ByOtherPlate || dist(h.Worn.O, [2]float64{10, 8}) > 1e-8 || math.Abs(h.Worn.R-1.6075) > 1e-9 ||
			math.Abs(h.Worn.W-0.1) > 1e-9 {
			t.Errorf("%v: %+v", h.Method, h.Worn)
		}
		// 0.050 for two drillings, 0.01327 of the other plate.
		if math.Abs(h.U-math.Hypot(0.05, 0.0132723)) > 1e-5 ||
			math.Abs(book.Num(h.key("diameter_mm")).V-3.215) > 1e-9 {
			t.Errorf("u %v, old diameter %v", h.U, book.Num(h.key("diameter_mm")).V)
		}
		if row := h.Row(book); row.FoundMM == nil || row.FoundMM[1].String() != "8.0500" {
			t.Errorf("found at %v", row.FoundMM)
		}
		// Its middle follows from centre and wear: 8 + 0.05.
		if dist(h.Middle, [2]float64{10, 8.05}) > 1e-8 {
			t.Errorf("middle %v", h.Middle)
		}
	}
}

// The old diameter between pins of 3.19 and 3.20 is 3.195, anywhere within the
// step: 0.010/sqrt 12, with 0.0015 of the pins; walls 0.10 up and 0.05 to the
// right of a hole of that size about (10, 8), worn to 45 degrees.
func TestPinsGiveTheOldDiameter(t *testing.T) {
	b := job.Bore{PinGoes: mmOf(t, "3.19"), PinStops: mmOf(t, "3.20"), WornTo: []float64{45},
		Walls: &[4]dim.Length{mmOf(t, "8.4025"), mmOf(t, "11.6975"), mmOf(t, "6.4025"), mmOf(t, "9.6975")}}
	holes, _, book := oneShaft(t, b, measured(t)).survey()
	h := holes[0]
	if h.Method != ByWalls || dist(h.Worn.O, [2]float64{10, 8}) > 6e-4 || math.Abs(h.Worn.R-1.5975) > 1e-9 {
		t.Errorf("%v: %+v", h.Method, h.Worn)
	}
	// Along the diagonal 0.010 of a wall, and twice the half of that: it is common
	// to both axes: sqrt(0.010^2 + 0.0032533^2/2) = 0.0102612. The other plate tells x
	// to 0.051732 and y to 0.051069, and by the inverses of both covariances 0.0100626
	// is left (own evaluation beside this program); the chance that a wall is not worn
	// changes that by less than 0.0001.
	if math.Abs(h.Evidence[0].U()-0.0102612) > 1e-4 || math.Abs(h.U-0.0100626) > 1e-4 {
		t.Errorf("u %v of the walls, %v of all", h.Evidence[0].U(), h.U)
	}
	if got, want := book.Num(h.key("pins/between_u_mm")).V, math.Hypot(0.010/math.Sqrt(12), 0.0015); math.Abs(
		got-want) > 1e-6 {
		t.Errorf("u of the old diameter %v, want %v", got, want)
	}
}

// Distances to two bores whose middles are known: (10, 8) lies 30 from (40, 8)
// and 20 from (10, 28). The ledger holds every figure of it.
func TestSpansAreExplained(t *testing.T) {
	b := job.Bore{
		Centre: at(t, "10.3", "7.8"),
		Spans: []job.Span{{To: "other.left", Inside: mmOf(t, "27"), Outside: mmOf(t, "33")},
			{To: "third.left", Inside: mmOf(t, "16.5"), Outside: mmOf(t, "23.5")}},
	}
	k := oneShaft(t, b, job.Bore{Repaired: true})
	k.Shafts = append(k.Shafts,
		job.Shaft{Name: "other", Bores: []job.Bore{{Name: "other.left", Side: job.Left, Centre: at(t, "40", "8")}}},
		job.Shaft{Name: "third", Bores: []job.Bore{{Name: "third.left", Side: job.Left, Centre: at(t, "10", "28")}}})
	holes, _, book := k.survey()
	h := holes[0]
	if h.Method != BySpans || dist(h.Worn.O, [2]float64{10, 8}) > 1e-6 {
		t.Errorf("%v: %v", h.Method, h.Worn.O)
	}
	e, _ := book.Get(h.key("centre_mm/0"))
	if len(e.Inputs) != 14 { // the rough middle, and six of each span
		t.Errorf("%d inputs: %v", len(e.Inputs), e.Inputs)
	}
	if book.Num(h.key("spans/1/outside_mm")).V != 23.5 || h.Worn.R != 1.58 {
		t.Errorf("span %v; a hole that nothing tells the size of is as large as its journal, not %v",
			book.Num(h.key("spans/1/outside_mm")).V, h.Worn.R)
	}
}

// A drawing on which everything stands 0.10 to the left and 0.05 higher than in
// the casting tells the centre through three holes that are in both.
func TestDrawingIsExplained(t *testing.T) {
	k := oneShaft(t, job.Bore{}, job.Bore{})
	k.Shafts[0].Design = at(t, "9.90", "8.05")
	for _, f := range [][2]string{{"5", "15"}, {"30", "15"}, {"55", "12"}} {
		here := at(t, f[0]+".10", "0")
		here.Y = mmOf(t, map[string]string{"15": "14.95", "12": "11.95"}[f[1]])
		k.Chassis.Features = append(k.Chassis.Features,
			job.Feature{Name: "dowel " + f[0], At: here, Design: at(t, f[0], f[1])})
	}
	holes, _, book := k.survey()
	if h := holes[0]; h.Method != ByDrawing || dist(h.Worn.O, [2]float64{10, 8}) > 1e-9 ||
		book.Num(h.key("design/2/here_mm/1")).V != 11.95 {
		t.Errorf("%v: %v", h.Method, h.Worn.O)
	}
	k.Chassis.Features = k.Chassis.Features[:1]
	_, said, _ := k.survey()
	if said.Count(finding.Note) != 2 || said[0].Rule != RuleFrame || said.Count(finding.Stop) != 2 ||
		said[3].Rule != RuleNoCentre {
		t.Errorf("a drawing through one hole: %v", said)
	}
}

// A spoilt seat is the hole as it stands; the other plate tells the old centre.
func TestSpoiltSeatIsTheHole(t *testing.T) {
	b := job.Bore{Seat: &job.OldSeat{Diameter: mmOf(t, "5.00"), Centre: at(t, "10.2", "8.1")}}
	holes, _, book := oneShaft(t, b, measured(t)).survey()
	h := holes[0]
	if h.Method != ByOtherPlate || h.Worn.R != 2.5 || !h.Worn.Round || h.Middle != [2]float64{10.2, 8.1} ||
		dist(h.Worn.O, [2]float64{10, 8}) > 1e-8 {
		t.Errorf("%v: %+v, middle %v", h.Method, h.Worn, h.Middle)
	}
	if row := h.Row(book); row.DiameterMM.String() != "5.0000" || row.PlayMM.Given() {
		t.Errorf("printed %+v", row)
	}
}

// Nothing is made up of an instrument that nobody knows, and nothing is lost:
// it is said once for each figure, and the default of the table taken (0.004,
// the worst width gauge of the shop).
func TestUnknownInstrument(t *testing.T) {
	b := measured(t)
	b.With = map[string]string{"widest": "thing from the drawer"}
	holes, said, book := oneShaft(t, b, measured(t)).survey()
	if len(said) == 0 || said[0].Rule != RuleInstrument || said[0].Where != "drive.left" ||
		!strings.Contains(said[0].Text.String(), "thing from the drawer") {
		t.Fatalf("said %v", said)
	}
	if got := book.Num(holes[0].key("u_widest_mm")).V; got != 0.004 {
		t.Errorf("u %v", got)
	}
}

// An earlier repair is not asked for its place.
func TestRepairedIsNotAsked(t *testing.T) {
	b := measured(t)
	b.Repaired, b.Centre = true, at(t, "10.2", "8.3")
	holes, said, _ := oneShaft(t, b, measured(t)).survey()
	if h := holes[0]; h.Method != ByOtherPlate || len(h.Evidence) != 1 || said[0].Rule != RuleRepaired ||
		h.Middle != [2]float64{10.2, 8.3} {
		t.Errorf("%v, %d kinds, %v", h.Method, len(h.Evidence), said)
	}
}

// A sound seat read 0.015 small by the gauge that is named.
func TestSeatLessItsBias(t *testing.T) {
	b := job.Bore{With: map[string]string{"seat": "nibs calliper inside"},
		Seat: &job.OldSeat{Diameter: mmOf(t, "5.000"), Centre: at(t, "10", "8"), Sound: true}}
	holes, _, book := oneShaft(t, b, measured(t)).survey()
	if got := book.Num(holes[0].key("diameter_mm")).V; holes[0].Method != BySeat || math.Abs(got-5.015) > 1e-9 {
		t.Errorf("%v: %v across", holes[0].Method, got)
	}
}

// The middle of a ball of 1 mm runs 0.5 inside of the wall: hole, journal and
// points come out as those of the wall. A point that was typed ten times too
// large is left out, which is a caution.
func TestTouchedByABall(t *testing.T) {
	inner := NewWornBore([2]float64{10, 8}, 1.1, 1.08, 0.10, math.Pi/2)
	b := job.Bore{Stylus: mmOf(t, "1"), WornTo: []float64{90}}
	for _, p := range inner.Outline(24) {
		b.Probed = append(b.Probed, job.Point{X: dim.OfFloat(p[0]), Y: dim.OfFloat(p[1])})
	}
	holes, said, _ := oneShaft(t, b, measured(t)).survey()
	h := holes[0]
	if len(said) > 0 || h.Method != ByOutline || h.By != "read-out" || dist(h.Worn.O, [2]float64{10, 8}) > 1e-3 {
		t.Errorf("%v by %s: %v, %v", h.Method, h.By, h.Worn.O, said)
	}
	near(t, "old radius", h.Worn.R, 1.6, 1e-3)
	near(t, "journal", h.Worn.JournalR, 1.58, 1e-9)
	near(t, "wear", h.Worn.W, 0.1, 2e-3)
	near(t, "point opposite the wear", h.Points[12][1], 8-1.6, 1e-3)
	b.Probed[3].X = dim.OfFloat(10 * b.Probed[3].X.Float())
	holes, said, _ = oneShaft(t, b, measured(t)).survey()
	if len(said) != 1 || said[0].Rule != RulePoints || said[0].Level != finding.Caution || len(holes[0].LeftOut) != 1 ||
		holes[0].LeftOut[0] != 3 {
		t.Errorf("%v left out, said %v", holes[0].LeftOut, said)
	}
}

// What one plate tells with doubt it does not lend to the other: two holes with
// nothing said of the side that they have worn to, one of them without a middle.
func TestDoubtIsNotLent(t *testing.T) {
	b := measured(t)
	b.WornTo = nil
	holes, said, _ := oneShaft(t, b, job.Bore{}).survey()
	if !holes[0].Known || holes[1].Known || len(holes[1].Evidence) != 0 || said.Count(finding.Stop) != 1 {
		t.Errorf("%v and %v known, said %v", holes[0].Known, holes[1].Known, said)
	}
}

// The play that decides is the one that is printed: 3.30 - 3.16; of a hole that
// an earlier repair moved, widest less journal with the gauge put right, 3.315 -
// 3.16; nothing of a sound seat, whose bush is out.
func TestPlayDecidesAsPrinted(t *testing.T) {
	repaired := measured(t)
	repaired.Repaired, repaired.With = true, map[string]string{"all": "nibs calliper inside"}
	seat := job.Bore{Seat: &job.OldSeat{Diameter: mmOf(t, "5"), Centre: at(t, "10", "8"), Sound: true}}
	for _, c := range []struct {
		name string
		b    job.Bore
		want float64
	}{{"worn", measured(t), 0.14}, {"repaired", repaired, 0.155}, {"seat", seat, 0}, {"not measured", job.Bore{Repaired: true}, 0}} {
		k := oneShaft(t, c.b, measured(t))
		holes, _, book := k.survey()
		tools, err := ReadInstruments(table.BuiltIn(), k.Shop)
		if err != nil {
			t.Fatal(err)
		}
		h := holes[0]
		got := h.Play(tools)
		if math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
		if row := h.Row(book); row.PlayMM.Given() && math.Abs(row.PlayMM.Float()-got) > 5e-5 {
			t.Errorf("%s: %v decides, %v is printed", c.name, got, row.PlayMM)
		}
	}
}
