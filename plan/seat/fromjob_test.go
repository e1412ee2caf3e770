package seat

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/limits"
	"rebush/fits/material"
	"rebush/fits/table"
	"rebush/plan/job"
	"rebush/plan/survey"
)

const bench1 = `rebush_shop: 1
units: mm
machine: {kind: mill, readout: yes}
reamers: [{size: 5, class: H7}, {size: 6, limits: [6.004, 6.010]}]
end_mills: [4.5]
boring_head: {from: 5, to: 20}
mandrels: [3.20, 3.18]
`

const truck = `rebush: 1
job: 1
units: mm
shop: shop.yaml
chassis:
  material: zinc die casting
  condition: sound
  rails: below
  plates: {left: {thickness: 3.0}, right: {thickness: 2.5}}
  outline: {length: 60, height: 20}
  width: 16.0
  current: axles
shafts:
  - name: drive
    journal: 3.16
    unworn: 3.19
    insulated: right
    load: 3 N
    rpm: 400
    hub_to_hub: 18.0
    bores:
      left: {centre: [10.00, 8.00], widest: 3.30, narrowest: 3.20, worn_to: 90, edges: [{at: 270, metal: 4.0},
	{at: 0, away: 5.6}]}
      right: {centre: [10.00, 8.00], widest: 3.30, narrowest: 3.20, worn_to: 90}
gears: []
bushes:
  - {code: solid 5, bore: 3.2, bore_class: F7, od: 5.0, od_class: s7, length: 3.0, material: bearing bronze C93200}
  - {code: own turning, make: turned, material: bearing bronze C93200}
`

// read makes an input of two texts.
func read(t testing.TB, shop, text string, edits ...func(*job.Job)) (Input, []string) {
	t.Helper()
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "shop.yaml"), []byte(shop), 0o644); err != nil {
		t.Fatal(err)
	}
	j, err := job.Parse("job.yaml", dir, []byte(text), job.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, edit := range edits {
		edit(j)
	}
	lib := table.BuiltIn()
	metals, err := material.New(lib)
	if err != nil {
		t.Fatal(err)
	}
	lim, err := limits.New(lib)
	if err != nil {
		t.Fatal(err)
	}
	c, err := CastingOf(j, metals, j.Shop.Rules)
	if err != nil {
		t.Fatal(err)
	}
	in, said := FromJob(j, Tables{Library: lib, Table: j.Shop.Rules, Metals: metals, Limits: lim,
		UBore: dim.Must("0.004 mm"), UOutside: dim.Must("0.003 mm")}, c)
	var words []string
	for _, f := range append(c.Said(), said...) {
		words = append(words, f.Rule.Name()+": "+f.Text.String())
	}
	return in, words
}

// The bushes with their limits (ISO 286: 5 s7 is +19 to +31, 3.2 F7 +10 to
// +22), and one that cannot be named and left out.
func TestBushesOfAJob(t *testing.T) {
	in, said := read(t, bench1, truck, func(j *job.Job) {
		wrong := j.Bushes[0]
		wrong.Code, wrong.OD.Nominal = "wrong", wrong.Bore.Nominal
		j.Bushes = append(j.Bushes, wrong)
	})
	if len(in.Stock) != 2 || len(said) != 1 || !strings.HasPrefix(said[0], "bush: left out: wrong: its wall") {
		t.Fatalf("%d bushes, said %q", len(in.Stock), said)
	}
	b := in.Stock[0]
	near(t, "solid 5", []float64{b.ODLow, b.ODHigh, b.BLow, b.BHigh, b.Length}, []float64{5.019, 5.031, 3.210, 3.222,
		3})
	if !in.Stock[1].Turned || in.Stock[1].OnHand != -1 {
		t.Errorf("%+v", in.Stock[1])
	}
	measured := strings.NewReplacer("bore: 3.2, bore_class: F7, od: 5.0, od_class: s7",
		"bore: 3.215, od: 5.025").Replace(truck)
	in, _ = read(t, bench1, measured)
	b = in.Stock[0]
	// A size that was measured is known to its doubt.
	near(t, "measured", []float64{b.ODLow, b.ODHigh, b.BLow, b.BHigh}, []float64{5.022, 5.028, 3.211, 3.219})
}

// The ways of a shop. ISO 522 / DIN 1420 on 5 H7 (0 to +12 um): the reamer is
// cut to +5 to +10; by the rule its hole is up to 15 % of 12 um larger. 6 H7 has
// 12 um as well.
func TestToolsOfAShop(t *testing.T) {
	in, _ := read(t, bench1, truck)
	want := []Way{
		{Kind: Reamer, Name: "5 mm H7 reamer", Size: 5, Low: 5.005, High: 5.0118, Own: 5.0075, Tool: "5 mm H7", Index: 0},
		{Kind: Reamer, Name: "6 mm reamer", Size: 6, Low: 6.004, High: 6.0118, Own: 6.007, Tool: "6 mm", Index: 1},
		{Kind: BoringHead, Name: "boring head", Low: 5, High: 20, Index: 2},
		{Kind: EndMill, Name: "4.5 mm end mill", Size: 4.5, Low: 4.48, High: 4.52, Index: 3},
	}
	if len(in.Shop.Ways) != len(want) || len(in.Shop.BoreReamers) != 2 {
		t.Fatalf("%+v", in.Shop.Ways)
	}
	for i, w := range in.Shop.Ways {
		near(t, w.Name, []float64{w.Size, w.Low, w.High}, []float64{want[i].Size, want[i].Low, want[i].High})
		w.Size, w.Low, w.High = want[i].Size, want[i].Low, want[i].High
		if w != want[i] {
			t.Errorf("%+v, want %+v", w, want[i])
		}
	}
	near(t, "mandrels", in.Shop.Mandrels, []float64{3.18, 3.20})
	near(t, "friction by rule", []float64{in.Shop.FrictionLow, in.Shop.FrictionHigh}, []float64{0.05, 0.20})
	if in.Shop.Lathe || in.Shop.Compound {
		t.Errorf("%+v", in.Shop)
	}
	// A lathe that does not say what it bores: by rule.
	in, _ = read(t, "rebush_shop: 1\nunits: mm\nmachine: {kind: lathe}\nfriction: {low: 0.08, high: 0.15}\nrules: {lathe_bore_mm: [4, 40]}\n", truck)
	near(t, "lathe", []float64{in.Shop.BoringFrom, in.Shop.BoringTo, in.Shop.FrictionLow, in.Shop.FrictionHigh},
		[]float64{4, 40, 0.08, 0.15})
	if !in.Shop.Lathe || in.Shop.Ways[0].Name != "boring tool" {
		t.Errorf("%+v", in.Shop)
	}
	// A hand drill bores nothing, whatever head lies in a drawer.
	in, _ = read(t, strings.Replace(bench1, "kind: mill, readout: yes", "kind: hand", 1), truck)
	if in.Shop.BoringFrom != 0 || len(in.Shop.Ways) != 2 {
		t.Errorf("%+v", in.Shop.Ways)
	}
}

// sites are the two holes of the truck: round of 3.2, a lobe of 0.1 up.
func sites(j *job.Job) []Site {
	var out []Site
	for i := range j.Shafts {
		s := &j.Shafts[i]
		for k := range s.Bores {
			w := survey.NewWornBore([2]float64{10, 7.95}, 1.6, 1.58, 0.1, math.Pi/2)
			out = append(out, Site{Old: survey.Hole{Shaft: s, Bore: &s.Bores[k], Known: true, Worn: w,
				Middle: [2]float64{10, 8}, U: 0.02},
				At: [2]float64{10.1, 7.9}, UPlace: 0.01, Touch: true})
		}
	}
	return out
}

// One hole as the search sees it.
func TestHoleOfASite(t *testing.T) {
	in, _ := read(t, bench1, truck)
	all := sites(in.Job)
	left, right := in.hole(all[0], all), in.hole(all[1], all)
	// S: the lobe's end is the journal's centre 0.12 up at 8.07, 1.58 round it:
	// hypot(0.1, 0.17) + 1.58.
	near(t, "left", []float64{left.S, left.Journal, left.MustPass, left.Plate, left.Load, left.TLow, left.THigh,
		left.UPlace, left.USurvey},
		[]float64{math.Hypot(0.1, 0.17) + 1.58, 3.16, 3.19, 3.0, 1.5, 5, 45, 0.01, 0.02})
	// Two bores share 18 - 16 less the least play of 0.1.
	near(t, "side room", []float64{left.SideRoom}, []float64{0.95})
	if !left.Live || right.Live || right.Plate != 2.5 {
		t.Errorf("live %v and %v, plate %v", left.Live, right.Live, right.Plate)
	}
	// Edges, of the left: 5.6 from the middle at 0 degrees, less 0.1 moved there:
	// 5.5. Down: 4.0 beyond the wall, which lies 8 - (7.95 - 1.6) = 1.65 below
	// the middle, less 0.1 moved down: 5.55. That is another way by 90 degrees.
	near(t, "edges", []float64{left.Edge, left.Edge2}, []float64{5.5, 5.55})
	if left.EdgeName != "the edge measured at 0 degrees" {
		t.Error(left.EdgeName)
	}
	// The right has the outline alone: the datum edge at 7.9, and the rear end
	// at 10.1.
	near(t, "outline", []float64{right.Edge, right.Edge2}, []float64{7.9, 10.1})
	all[1].Touch = false
	if h := in.hole(all[0], all); math.Abs(h.SideRoom-1.9) > 1e-9 {
		t.Errorf("side room of one flange alone %v", h.SideRoom)
	}
	in.Job.Chassis.TemperatureGiven, in.Job.Chassis.TemperatureLow, in.Job.Chassis.TemperatureHigh = true, -5, 30
	if h := in.hole(all[0], all); h.TLow != -5 || h.THigh != 30 {
		t.Errorf("used from %v to %v", h.TLow, h.THigh)
	}
}

// Corners, a boss and neighbours.
func TestRoundAHole(t *testing.T) {
	in, _ := read(t, bench1, strings.Replace(truck, "outline: {length: 60, height: 20}",
		"outline: {corners: [[0, 0], [40, 0], [40, 11], [0, 11]]}", 1))
	all := sites(in.Job)
	all[1].Old.Bore.Boss = dim.Must("9 mm")
	h := in.hole(all[1], all)
	near(t, "corners and boss", []float64{h.Edge, h.BossR, h.BossE, h.EdgeAway()},
		[]float64{3.1, 4.5, math.Hypot(0.1, 0.05), 3.1})
	other := all[1]
	shaft := *other.Old.Shaft
	bore := *other.Old.Bore
	shaft.Name, bore.Name = "idler", "idler.right"
	other.Old.Shaft, other.Old.Bore, other.Old.Worn.O = &shaft, &bore, [2]float64{16.1, 7.9}
	h = in.hole(all[1], append(all, other))
	if len(h.Near) != 1 || h.Near[0].Name != "idler.right" {
		t.Fatalf("%+v", h.Near)
	}
	near(t, "neighbour", []float64{h.Near[0].At, h.Near[0].R}, []float64{6, 1.7})
}

// The outline of a plate of 60 by 20, about a hole near each of its sides.
func TestOutline(t *testing.T) {
	in, _ := read(t, bench1, truck)
	right := sites(in.Job)[1].Old
	for _, c := range []struct {
		at   [2]float64
		away float64
		name string
	}{
		{[2]float64{4, 10}, 4, "the rear end of the plate"}, {[2]float64{57, 10}, 3, "the front end of the plate"},
		{[2]float64{30, 3}, 3, "the datum edge"}, {[2]float64{30, 18}, 2, "the upper edge of the plate"},
	} {
		edges := freeEdges(right, c.at, 0, nil, in.Job.Chassis)
		e := nearestOf(edges, func(freeEdge) bool { return true })
		if e.away != c.away || e.name != c.name {
			t.Errorf("%v: %+v", c.at, e)
		}
	}
}

// What is there already: the seat of an old bush with the doubt of its size, a
// bearing under a cap, and wall that compound can be filled against.
func TestWhatIsThere(t *testing.T) {
	in, _ := read(t, bench1+"compounds: [gap-filling]\n", truck)
	all := sites(in.Job)
	s := all[1]
	bore := *s.Old.Bore
	s.Old.Bore = &bore
	bore.Seat = &job.OldSeat{Sound: true}
	s.Seat, s.USeat = 5.01, 0.004
	h := in.hole(s, all)
	near(t, "old seat", []float64{h.Old.Low, h.Old.High}, []float64{5.006, 5.014})
	bore.Seat, bore.Cap = nil, true
	if h = in.hole(s, all); h.Cap != 3.2 || h.Old != nil {
		t.Errorf("under a cap %v", h.Cap)
	}
	// 255 degrees of sound wall are there before all of it is, and no seat is
	// smaller than the old hole round the new centre.
	if h.Fill <= 1.6 || h.Fill >= h.S {
		t.Errorf("filled from %v, clears from %v", h.Fill, h.S)
	}
	arc, _ := s.Old.Stands().UncutArc(s.At, h.Fill)
	if math.Abs(360-arc-in.Rules.FillDeg) > 0.2 {
		t.Errorf("a seat of %v stands in %v degrees of wall", h.Fill, 360-arc)
	}
	if live := in.hole(all[0], all); live.Fill != 0 {
		t.Error("compound on the live side")
	}
}

// Of a bush's material the safe figure for each question: the least yield to
// hold by, the most to press against, both ends of pv.
func TestMetals(t *testing.T) {
	in, _ := read(t, bench1, truck)
	for _, name := range []string{"bearing bronze C93200", "sintered bronze"} {
		m, err := metalOf(in.Metals, name)
		if err != nil {
			t.Fatal(err)
		}
		if m.ELow > m.EHigh || m.ELow <= 0 || m.PVWarn > m.PVMax {
			t.Errorf("%+v", m)
		}
		if m.Porous && m.YieldHi != m.Yield || !m.Porous && m.YieldHi <= m.Yield {
			t.Errorf("%s yields from %v to %v", name, m.Yield, m.YieldHi)
		}
	}
	if m, _ := metalOf(in.Metals, "sintered bronze"); m.PVWarn == m.PVMax {
		t.Errorf("the cautious pv of %s is its last: %v", m.Name, m.PVMax)
	}
}

// A zinc casting bears half of its least strength, no more than it yields at; a
// brass sheet without a temper is taken to yield at 200 and it is said.
func TestCastings(t *testing.T) {
	in, _ := read(t, bench1, truck)
	p := in.Casting.Plate
	weakest, _ := in.Casting.Material.Weakest()
	if !p.Casting || !p.Zinc || p.Limit != math.Min(0.5*weakest.Low, p.Yield) || p.Creep != 15 || p.ERelaxed != 20700 ||
		math.Abs(p.EYears-15.1/0.002) > 1e-9 {
		t.Errorf("%+v", p)
	}
	in, said := read(t, bench1, strings.Replace(truck, "zinc die casting", "brass sheet", 1))
	if p := in.Casting.Plate; p.Casting || p.YieldKnown || p.Yield != 200 || p.Creep != 0 {
		t.Errorf("%+v", p)
	}
	if len(said) == 0 || said[0] != "temper: the temper of "+in.Casting.Plate.Name+" is not said: a yield of 200 MPa is assumed" {
		t.Errorf("%q", said)
	}
}

func near(t *testing.T, what string, got, want []float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%s: %v, want %v", what, got, want)
	}
	for i := range got {
		if !(math.Abs(got[i]-want[i]) <= 1e-9) {
			t.Errorf("%s: figure %d is %v, want %v", what, i, got[i], want[i])
		}
	}
}
