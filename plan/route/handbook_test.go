package route

import (
	"math"
	"strings"
	"testing"

	"rebush/feeds/cutting"
	"rebush/fits/ledger"
	"rebush/fits/material"
	"rebush/fits/table"
	"rebush/plan/job"
)

// handbook answers for a chassis of a metal in a shop with these steps.
func handbook(t *testing.T, metal string, steps ...float64) Handbook {
	t.Helper()
	lib := table.BuiltIn()
	rules, err := table.ReadRules(lib)
	if err != nil {
		t.Fatal(err)
	}
	tables, err := cutting.New(lib, rules)
	if err != nil {
		t.Fatal(err)
	}
	metals, err := material.New(lib)
	if err != nil {
		t.Fatal(err)
	}
	mat, err := metals.Find(metal)
	if err != nil {
		t.Fatal(err)
	}
	return Handbook{Tables: tables, Metals: metals, Chassis: mat, Shop: &job.Shop{MachineKind: "mill", Spindle: steps}}
}

// A 4 mm drill in zinc at 76 m/min (Youssef and El-Hofy, table 5.4, the lowest
// row of three) asks for 1000 x 76 / (pi x 4) = 6048 turns; the step below that
// is set. Its point of 118 degrees is 2 mm / tan 59 = 1.202 mm long, so that
// 3 mm of metal want 3 + 1.202 + 2 mm of feed, from 1 mm above.
func TestHandbookOfADrill(t *testing.T) {
	h := handbook(t, "zinc die casting", 310, 620, 1100)
	c, err := h.Cut(Query{Op: OpDrill, Dia: 4, Through: 3})
	if err != nil {
		t.Fatal(err)
	}
	if c.SpeedMMin > 76 || c.RPM != 1100 || c.ByHand {
		t.Errorf("%v m/min, %v turns, by hand %v", c.SpeedMMin, c.RPM, c.ByHand)
	}
	if want := 1000 * c.SpeedMMin / (math.Pi * 4); math.Abs(c.Ideal-want) > 1e-9 {
		t.Errorf("ideal %v, want %v", c.Ideal, want)
	}
	if math.Abs(c.Depth-6.202) > 5e-4 {
		t.Errorf("fed %v mm from the face, want 6.202", c.Depth)
	}
	if want := (1 + 3 + 1.2017 + 2) / (c.Feed * 1100); math.Abs(c.Minutes-want) > 1e-4*want {
		t.Errorf("%v minutes, want %v", c.Minutes, want)
	}
	if !strings.Contains(c.FeedWords.String(), "ease off") {
		t.Errorf("%q", c.FeedWords)
	}
	ream, err := h.Cut(Query{Op: OpReam, Dia: 5, Through: 3})
	if err != nil || math.Abs(ream.Depth-5) > 1e-9 {
		t.Errorf("a reamer goes %v mm deep, want 3 and 2 beyond; %v", ream.Depth, err)
	}
	// Slower than the table's, and it says why.
	if !strings.Contains(ream.Note.String(), "held to: reaming by hand feed 15 m/min") {
		t.Errorf("%q", ream.Note)
	}
}

// What the spindle is set to: a step at or below the ideal, what a scale
// shows where there are no steps, or the hand.
func TestHandbookSetsTheSpindle(t *testing.T) {
	for _, c := range []struct {
		name          string
		shop          job.Shop
		ideal, turns  float64
		byHand        bool
		note          string
		speed, printd float64
	}{
		{"a step below", job.Shop{Spindle: []float64{310, 620}}, 500, 310, false, "", 5, 310},
		{"the very step", job.Shop{Spindle: []float64{310, 620}}, 620, 620, false, "", 6.2, 620},
		{"all too fast", job.Shop{Spindle: []float64{310, 620}}, 200, 310, true, "turn the spindle by hand", 2, 0},
		{"no steps", job.Shop{SpindleMin: 50, SpindleMax: 2000}, 437, 430, false, "", 4.37, 430},
		{"slow and no steps", job.Shop{SpindleMin: 50, SpindleMax: 2000}, 87.6, 87, false, "", 0.876, 87},
		{"nothing said", job.Shop{MachineKind: "mill"}, 437, 430, false, "names no spindle steps", 4.37, 430},
		{"by hand", job.Shop{MachineKind: "hand"}, 437, 437, true, "", 4.37, 0},
	} {
		h := handbook(t, "zinc die casting")
		h.Shop = &c.shop
		cut := Cut{Ideal: c.ideal}
		h.set(&cut)
		if cut.RPM != c.turns || cut.ByHand != c.byHand || !strings.Contains(cut.Note.String(), c.note) {
			t.Errorf("%s: %v turns, by hand %v, %q", c.name, cut.RPM, cut.ByHand, cut.Note)
		}
		// 10/pi mm across, so that the turns are the speed times 100.
		if got := h.turns(c.speed, 10/math.Pi); math.Abs(got-c.printd) > 1e-6 {
			t.Errorf("%s: printed as %v, want %v", c.name, got, c.printd)
		}
	}
}

// A porous bush is drilled by the row of bearing bronze, and is told to; its
// oil stays its own.
func TestHandbookStandsIn(t *testing.T) {
	h := handbook(t, "zinc die casting", 310)
	c, err := h.Cut(Query{Op: OpDrill, Dia: 1.5, Through: 0.8, Material: "sintered bronze"})
	if err != nil {
		t.Fatal(err)
	}
	bronze, err := h.Cut(Query{Op: OpDrill, Dia: 1.5, Through: 0.8, Material: "bearing bronze"})
	if err != nil {
		t.Fatal(err)
	}
	if c.SpeedMMin != bronze.SpeedMMin || !strings.Contains(c.Note.String(), "none is known for a porous one") ||
		c.Lubricant == bronze.Lubricant {
		t.Errorf("%v m/min, bronze %v; %q; %q", c.SpeedMMin, bronze.SpeedMMin, c.Note, c.Lubricant)
	}
	if _, err := h.Cut(Query{Op: OpReam, Dia: 5, Through: 3, Material: "no such metal"}); err == nil {
		t.Error("a metal that nobody knows has a speed")
	}
}

// The printed figures of a cut are those that it was made with, and the ledger
// explains each down to a row or a line.
func TestExplainedRowIsTheCut(t *testing.T) {
	h := handbook(t, "zinc die casting", 310, 620, 1100)
	c, err := h.Cut(Query{Op: OpDrill, Dia: 4.8, Through: 3})
	if err != nil {
		t.Fatal(err)
	}
	book := ledger.New()
	o := Operation{Number: 40, Kind: KindOpen, Cut: &c, Depth: c.Depth, Thrust: c.Thrust, Minutes: c.Minutes + 3,
		ToolMM: 4.8,
		At:     &[2]float64{47.9996, 6}, Place: [2]float64{10.0004, 6}}
	row := Explainer{Book: book, Cuts: h, Plates: "truck.yaml:9", Handling: "rules:80"}.Row(o)
	if *row.RPM != c.RPM || *row.RPMIdeal != math.Round(c.Ideal) || *row.FeedMMRev != c.Feed ||
		math.Abs(*row.ThrustN-c.Thrust) > 1e-6*c.Thrust {
		t.Errorf("%v of %v, feed %v, thrust %v: %+v", *row.RPM, *row.RPMIdeal, *row.FeedMMRev, *row.ThrustN, c)
	}
	if want := math.Round(10*(c.Minutes+3)) / 10; *row.Minutes != want {
		t.Errorf("%v minutes, want %v", *row.Minutes, want)
	}
	// 2.4 mm / tan 59 = 1.442: 6.4 mm in all.
	if row.DepthMM.String() != "6.4" || row.DialMM[0].String() != "48.000" || row.AtMM[0].String() != "10.000" {
		t.Errorf("depth %s, dials %s, at %s", row.DepthMM, row.DialMM[0], row.AtMM[0])
	}
	for _, k := range []string{"speed_m_min", "cut_mm", "feed_mm_rev", "through_mm", "cutting_minutes",
		"handling_minutes"} {
		if e, ok := book.Get("operations/40/" + k); !ok || !strings.Contains(e.Source, ":") {
			t.Errorf("%s comes from %q", k, e.Source)
		}
	}
	for k, inputs := range map[string]int{"rpm_ideal": 2, "rpm": 2, "depth_mm": 2, "thrust_n": 3, "minutes": 2} {
		if e, _ := book.Get("operations/40/" + k); len(e.Inputs) != inputs {
			t.Errorf("%s rests on %v", k, e.Inputs)
		}
	}
	// What nothing turns has no figures of a cut.
	if row := (Explainer{Book: book, Cuts: h}).Row(Operation{Number: 50, Depth: math.NaN(), Thrust: math.NaN(),
		ToolMM: math.NaN()}); row.RPM != nil || row.ThrustN != nil || row.Minutes != nil || row.ToolMM.Given() {
		t.Errorf("%+v", row)
	}
}

// A deep hole is drilled in pecks; at the last depth the drill is through and is
// not withdrawn.
func TestHandbookPecks(t *testing.T) {
	h := handbook(t, "zinc die casting", 1100)
	deep, err := h.Cut(Query{Op: OpDrill, Dia: 1.5, Through: 12})
	if err != nil {
		t.Fatal(err)
	}
	depths := h.Tables.Pecks(12, 1.5)
	note := deep.Note.String()
	if !strings.Contains(note, "withdraw it to clear the chips at ") || strings.Contains(note, "12.0") || strings.Count(note, ".") != len(depths)-1 {
		t.Errorf("%v: %q", depths, note)
	}
	if flat, _ := h.Cut(Query{Op: OpDrill, Dia: 4, Through: 3}); strings.Contains(flat.Note.String(), "withdraw") {
		t.Errorf("%q", flat.Note)
	}
}

// A rod that has to pass is under its bore by so much, and never above it by
// rounding.
func TestUnder(t *testing.T) {
	for _, c := range [][3]float64{{3.18, 0.01, 3.17}, {3.1849, 0.005, 3.17}, {3.175, 0.005, 3.17}, {3.1799, 0.01, 3.16}} {
		if got := under(c[0], c[1]); math.Abs(got-c[2]) > 1e-9 {
			t.Errorf("%v less %v: %v, want %v", c[0], c[1], got, c[2])
		}
	}
}

// No reamer runs faster than a drill of its size in the same metal, whatever the
// tables have of either.
func TestReamerIsNoFasterThanTheDrill(t *testing.T) {
	for _, metal := range []string{"mild steel", "zinc die casting", "grey cast iron", "free-cutting brass"} {
		h := handbook(t, metal)
		for _, d := range []float64{3, 4.7625, 6, 10} {
			drill, err := h.Cut(Query{Op: OpDrill, Dia: d, Through: 3})
			ream, err2 := h.Cut(Query{Op: OpReam, Dia: d, Through: 3})
			if err != nil || err2 != nil {
				t.Fatal(metal, err, err2)
			}
			if ream.Ideal > drill.Ideal+1e-9 || ream.SpeedMMin > drill.SpeedMMin+1e-9 {
				t.Errorf("%s %v mm: reamed at %v, drilled at %v", metal, d, ream.Ideal, drill.Ideal)
			}
			if want := 1000 * ream.SpeedMMin / (math.Pi * d); math.Abs(ream.Ideal-want) > 1e-6 {
				t.Errorf("%s: %v turns and %v m/min", metal, ream.Ideal, ream.SpeedMMin)
			}
		}
	}
}
