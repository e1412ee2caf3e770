package inspect

import (
	"math"
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/plan/job"
)

var shop = Shop{GuardK: 1.65, LetPassMM: 0.04}

// reamed is a seat of which 4.985 to 5.017 works and the reamer leaves 5.000 to
// 5.012, whose bore ends at 3.175 to 3.220, the journal known to 5 um; beside
// its gauge the shop has a micrometer of 2 um and one of 0.5.
func reamed() Hole {
	return Hole{Name: "a.left", OffMM: 0.03, UJournalMM: 0.005, Bush: "drawer 1",
		Seat: Limits{Works: [2]float64{4.985, 5.017}, Tool: &[2]float64{5, 5.012}},
		Bore: Limits{Works: [2]float64{3.175, 3.220}, Tool: &[2]float64{3.18, 3.20}},
		Instruments: func(what What) []Instrument {
			if what == Place {
				return []Instrument{{"indicator", 0.010}, {"microscope", 0.002}}
			}
			return []Instrument{{"fine", 0.0005}, {"micrometer", 0.002}}
		}}
}

func gauged(t *testing.T, key, size string) (job.Made, What) {
	t.Helper()
	l, err := dim.Parse(size, dim.MM)
	if err != nil {
		t.Fatal(err)
	}
	if key == "seat" {
		return job.Made{Bore: "a.left", Seat: l}, Seat
	}
	return job.Made{Bore: "a.left", Diameter: l}, Bore
}

// A seat by a micrometer of 2 um has a guard of 3.3 inside and outside what
// works; a bore has that of gauge and journal together, 1.65 x root(2^2 + 5^2) =
// 8.886. What the tool leaves decides nothing.
func TestSizes(t *testing.T) {
	for _, c := range []struct {
		key, size string
		result    Result
		guard     float64
		ways      string
	}{
		{"seat", "5.008", Accept, 3.3, ""},
		{"seat", "4.990", Accept, 3.3, ""},
		{"seat", "5.0137", Accept, 3.3, ""},
		// 3 um inside: at 0.5 um the guard is 0.825.
		{"seat", "5.014", CannotTell, 3.3, "measure again with the fine: the same reading by it is accepted []; " +
			"try the bush itself in a hole made in scrap by the same tool [drawer 1]"},
		{"seat", "5.019", CannotTell, 3.3, "measure again with the fine: the same reading by it is rejected []; " +
			"try the bush itself in a hole made in scrap by the same tool [drawer 1]"},
		{"seat", "5.0204", Reject, 3.3, ""},
		{"seat", "4.9816", Reject, 3.3, ""},
		{"bore", "3.179", CannotTell, 8.886, "the doubt is that of the journal: try its own axle in it, oiled []"},
		{"bore", "3.1839", Accept, 8.886, ""},
		{"bore", "3.1838", CannotTell, 8.886, "measure again with the fine: the same reading by it is accepted []"},
		{"bore", "3.2290", Reject, 8.886, ""},
	} {
		made, what := gauged(t, c.key, c.size)
		row, err := Of(reamed(), made, what, Gauge{UMM: 0.002}, shop)
		if err != nil {
			t.Fatal(err)
		}
		if row.Result != c.result || math.Abs(*row.GuardUM-c.guard) > 5e-4 || row.Bore != "a.left" || row.What != what {
			t.Errorf("%s %s: %s, guard %v", c.key, c.size, row.Result, *row.GuardUM)
		}
		if got := onwards(row); c.ways != got {
			t.Errorf("%s %s:\n%s\nwant\n%s", c.key, c.size, got, c.ways)
		}
		if row.LimitsMM.Min.Equal(row.ToolLimitsMM.Min) || row.ToolLimitsMM.Max.Equal(row.LimitsMM.Max) {
			t.Errorf("%s: works %v, the tool leaves %v", c.key, row.LimitsMM, row.ToolLimitsMM)
		}
	}
}

func onwards(r Row) string {
	var out []string
	for _, n := range r.Next {
		out = append(out, n.Do.String()+" ["+n.Bush+"]")
	}
	return strings.Join(out, "; ")
}

// Nothing is tried in scrap of a seat that was there: no tool made it, and none
// leaves limits.
func TestUncutSeat(t *testing.T) {
	h := reamed()
	h.Uncut, h.Seat.Tool = true, nil
	made, what := gauged(t, "seat", "5.014")
	row, err := Of(h, made, what, Gauge{UMM: 0.002}, shop)
	if err != nil || row.ToolLimitsMM != nil || strings.Contains(onwards(row), "scrap") || len(row.Next) != 1 {
		t.Errorf("%+v %v", row, err)
	}
}

// Without a finer gauge it is said how good one has to be: 3 um inside a limit
// 1.818 um tell, said as twice that.
func TestHowGood(t *testing.T) {
	h := reamed()
	h.Uncut, h.Instruments = true, func(What) []Instrument { return nil }
	made, what := gauged(t, "seat", "5.014")
	row, _ := Of(h, made, what, Gauge{UMM: 0.004}, shop)
	if want := "measure again with an instrument that is good to about 0.003 mm: the same reading by it is accepted []"; onwards(row) != want {
		t.Errorf("%s", onwards(row))
	}
	made, what = gauged(t, "seat", "5.017")
	row, _ = Of(h, made, what, Gauge{UMM: 0.004}, shop)
	if row.Result != CannotTell || !strings.Contains(onwards(row), "no gauge of a bench tells") {
		t.Errorf("on the very limit: %s %s", row.Result, onwards(row))
	}
}

// The bias of a gauge comes off: 5.0222 read 2 um too much is 5.0202.
func TestBias(t *testing.T) {
	made, what := gauged(t, "seat", "5.0222")
	row, _ := Of(reamed(), made, what, Gauge{BiasMM: 0.002, UMM: 0.002}, shop)
	if row.Result != CannotTell || row.MadeMM.String() != "5.022" {
		t.Errorf("%+v", row)
	}
	h := reamed()
	h.Seat.Works = [2]float64{2, 1}
	if _, err := Of(h, made, what, Gauge{}, shop); err == nil {
		t.Error("limits the wrong way round are judged")
	}
}

// What was made of a hole is looked at in the order of the work.
func TestWhats(t *testing.T) {
	made, _ := gauged(t, "seat", "5")
	made.Diameter, made.Centre = made.Seat, job.Point{X: made.Seat, Y: made.Seat}
	if got := Whats(made); len(got) != 3 || got[0] != Seat || got[1] != Bore || got[2] != Place {
		t.Errorf("%v", got)
	}
	if got := Whats(job.Made{}); len(got) != 0 {
		t.Errorf("%v of nothing", got)
	}
}
