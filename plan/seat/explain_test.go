package seat

import (
	"math"
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/ledger"
)

// explained writes the page of the left hole of a truck.
func explained(t *testing.T, in Input, at Site, x Seated) (*ledger.Ledger, Row) {
	t.Helper()
	book := ledger.New()
	page, w := book.Page("survey/"+at.Name()), at.Old.Worn
	for k, v := range map[string]float64{"centre_mm/0": w.O[0], "centre_mm/1": w.O[1], "old_radius_mm/found": w.R,
		"wear_mm": w.W, "wear_rad": w.ThetaRad, "clearance_mm": w.C} {
		page.Leaf(k, k, "mm", "job.yaml:1", v)
	}
	target := book.Page("targets/" + at.Name())
	target.Leaf("target_mm/0", "x", "mm", "job.yaml:1", at.At[0])
	target.Leaf("target_mm/1", "y", "mm", "job.yaml:1", at.At[1])
	return book, Explain(book, in, x)
}

// What is explained is what was decided, and every figure can be worked out
// again from its inputs: of a bush that is pressed, of one by a boss, of one
// that runs warm, and of one with a mandrel in its bore.
func TestExplained(t *testing.T) {
	const solid = "{code: solid 5, bore: 3.2, bore_class: F7, od: 5.0, od_class: s7, length: 3.0, material: bearing bronze C93200}"
	for _, c := range []struct {
		name, bush, plate string
		change            func(*Input, []Site)
		is                func(*Answer) bool
	}{
		{"pressed", solid, "zinc die casting", nil, func(a *Answer) bool { return a.PV > 0 }},
		{"by a boss", solid, "zinc die casting",
			func(in *Input, all []Site) { all[0].Old.Bore.Boss = dim.Must("11 mm") },
			func(a *Answer) bool { return a.Ligament < 3 }},
		{"warm", "{code: white, bore: [3.215, 3.225], od: [5.02, 5.03], length: 3.0, material: acetal}",
			"zinc die casting",
			func(in *Input, _ []Site) {
				in.Job.Chassis.Current = "none"
				in.Job.Chassis.TemperatureGiven, in.Job.Chassis.TemperatureLow, in.Job.Chassis.TemperatureHigh = true, 5, 100
				in.Job.Shafts[0].Unworn.Left = dim.Must("3.16 mm")
			}, func(a *Answer) bool { return a.WarmRules && a.WarmAt > 100 }},
		{"mandrel in", "{code: soft, bore: [3.210, 3.216], od: [5.027, 5.031], length: 3.0, material: sintered bronze}", "brass sheet",
			func(in *Input, all []Site) {
				in.Rules.MandrelTotal, in.Shop.Mandrels = 0.001, []float64{3.208}
				in.Job.Shafts[0].Journal.Left, in.Job.Shafts[0].Unworn.Left = dim.Must("3.18 mm"), dim.Must("3.18 mm")
				in.Shop.Ways = in.Shop.Ways[:1]
				in.Shop.Ways[0].Low, in.Shop.Ways[0].High = 5.005, 5.008
				in.Shop.BoreReamers, in.Shop.BoringFrom = nil, 0
				in.Casting.Plate.Yield = 2000
				all[0].Old.Bore.Edges = nil
			}, func(a *Answer) bool { return a.MandrelIn }},
	} {
		text := strings.Replace(strings.Replace(truck, solid, c.bush, 1), "zinc die casting", c.plate, 1)
		in, _ := read(t, bench1, text)
		all := sites(in.Job)
		if c.change != nil {
			c.change(&in, all)
		}
		in.Job.Choose = map[string]string{"": in.Stock[0].Code}
		got, _ := decide(in, all)
		x, a := got[0], got[0].Chosen
		if a == nil || !c.is(a) {
			t.Errorf("%s: %v, chosen %+v", c.name, x.Answers[0].Fail.Text(), a)
			continue
		}
		book, row := explained(t, in, all[0], x)
		at := book.Page("seats/" + x.Name())
		want := map[string]float64{"clears_mm": x.Hole.S, "edge_mm": x.Hole.EdgeAway(), "metal_left_mm": a.Ligament,
			"pressure_mpa/min": a.PLow, "pressure_mpa/max": a.PHigh, "hoop_mpa": a.Peak, "press_in_n/min": a.PressIn,
			"force_n/min": a.Force[0], "force_n/max": a.Force[1], "torque_nmm/min": a.Torque[0], "torque_nmm/max": a.Torque[1],
			"bore_mm/min": a.Bore[0], "bore_mm/max": a.Bore[1], "closed_mm/min": a.Closed[0], "closed_mm/max": a.Closed[1],
			"contact_mm": a.Contact, "pv": a.PV, "loose_at_c": a.LooseAt, "expected_mm/min": a.Expected[0]}
		if !a.MandrelIn {
			want["closure_um/min"], want["closure_um/max"] = 1000*a.Closure[0], 1000*a.Closure[1]
		}
		if a.WarmRules {
			want["bore_warm_mm"] = a.Bore[0]
		}
		for k, v := range want {
			if math.IsNaN(v) {
				continue
			}
			if e := at.Num(k).V; math.Abs(e-v) > 2e-6*math.Max(1, math.Abs(v)) {
				t.Errorf("%s: %s is explained as %v, decided by %v", c.name, k, e, v)
			}
		}
		if bad := book.Recompute(); len(bad) > 0 {
			t.Error(c.name, bad)
		}
		if row.Mend != Rebush || row.Bush != a.Bush.Code || row.HeldBy != "press" ||
			len(row.Candidates) != len(x.Answers) ||
			!row.Candidates[0].Feasible || *row.Candidates[0].Chance != dim.Near(a.Chance, 6) {
			t.Errorf("%s: %+v", c.name, row)
		}
	}
}
