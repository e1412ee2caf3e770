package plan_test

import (
	"fmt"
	"math"

	"rebush/feeds/cutting"
	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/limits"
	"rebush/fits/say"
	"rebush/fits/table"
	"rebush/plan"
	"rebush/plan/job"
	"rebush/plan/verdict"
)

// A plan is made from a job file in two calls; what it has to say for itself
// travels with it.
func ExampleMake() {
	j, err := job.Read("../testdata/jobs/pellinthwaite.yaml", job.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := plan.Make(j, plan.Options{NoChance: true})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range p.Survey {
		fmt.Println(s.Bore, s.WearMM)
	}
	fmt.Println("may be machined:", p.OK, "stops:", p.Findings.Count(finding.Stop))
	// Output:
	// drive axle.left 0.1159
	// drive axle.right 0.1000
	// cog shaft.left 0.0000
	// cog shaft.right 0.0000
	// carrying axle.left 0.2500
	// carrying axle.right 0.1200
	// may be machined: true stops: 0
}

// A table is read through the library that is handed down; the row knows its
// address and its source.
func Example_table() {
	lib := table.BuiltIn()
	grades, err := lib.Get("limits_it")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, row := range grades.Rows {
		if row.Get("grade") == "IT7" && row.Get("over_mm") == "3" {
			fmt.Println(row.Get("um"), "um, to", row.Get("upto_mm"), "mm")
		}
	}
	// Output: 12 um, to 6 mm
}

// A shop may put its own table in the place of a built-in one.
func Example_ownTable() {
	lib := table.BuiltIn()
	own, err := table.Parse("speeds_small", "my-speeds.csv", []byte("# Own trials.\nd_mm,full_feed,fifth_feed,source\n3,0.4,0.9,own trials\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := lib.Replace(own); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(lib.Replaced())
	// Output: [speeds_small]
}

// A rule is a row of rules.csv. A shop sets its own figure, with the line where
// it did.
func Example_rule() {
	rules, err := table.ReadRules(table.BuiltIn())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(rules.V("clearance_max_um"))
	if err := rules.Set("clearance_max_um", 50, math.NaN(), "shop.yaml:24"); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(rules.V("clearance_max_um"), rules.Get("clearance_max_um").Source)
	// Output:
	// 60
	// 50 shop.yaml:24
}

// A number that reaches paper is computed through the ledger, by the formula
// that explains it. A nil ledger computes the same and remembers nothing.
func Example_ledger() {
	less := func(bush, seat float64) float64 { return 1000 * (bush - seat) }
	book := ledger.New()
	page := book.Page("seats/front axle.left")
	od := page.Leaf("od_mm", "least outside of the bush", "mm", "job.yaml:48", 5.019)
	seat := page.Leaf("seat_mm", "largest diameter of the seat", "mm", "shop.yaml:12", 5.012)
	least := page.Calc2("interference_um/min", "least interference on diameter", "um",
		"smallest bush less largest seat", "limits of bush and seat", less, od, seat)
	entry, _ := book.Get(least.Key)
	fmt.Printf("%.0f %s, from %v\n", entry.Value, entry.Unit, entry.Inputs)
	fmt.Println("entries that lie:", len(book.Recompute()))
	// Output:
	// 7 um, from [seats/front axle.left/od_mm seats/front axle.left/seat_mm]
	// entries that lie: 0
}

// A finding names the place, what is, what would be needed and what would mend
// it.
func Example_finding() {
	var list finding.List
	const thinWall finding.Rule = "seat/wall"
	list.Raise(finding.Stop, thinWall, finding.Place{Where: "front axle.left"},
		say.F("drawer 9 leaves %v at the edge, needs %v", say.MM(0.4137, 2), say.MM(1.25, 2).Bare()),
		"a thinner bush, or a seat nearer the middle").Against(0.41, 1.25, "mm")
	fmt.Println(list.Stops(), list[0].Rule, *list[0].Have, *list[0].Want)
	// Output: true wall 0.41 1.25
}

// The verdict weighs ways that were planned: here two that cut, beside leaving it.
func Example_verdict() {
	rules, err := table.ReadRules(table.BuiltIn())
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := verdict.Decide(verdict.Case{
		Rubs:  true,
		Bores: []verdict.Bore{{Name: "front axle.left", Shaft: "front axle", PlayMM: 0.3}},
		Works: []verdict.Work{
			{Name: verdict.Rebush, OK: true, Minutes: 84, Clampings: 1, MetalMM: 0.9},
			{Name: verdict.Plug, OK: true, Minutes: 160, Clampings: 2, MetalMM: 1.4},
		},
		SetupHours: 0.5, StripHours: 1,
		Limits: verdict.RulesOf(rules).Limits,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Choice, r.Cures)
	fmt.Println(r.Sentence)
	// Output:
	// re-bush true
	// We advise new bearings: about 2.9 hours of work, against 4.7 hours for filling the holes and setting new bearings.
}

// Lengths are exact: what was typed is what is printed.
func Example_length() {
	for _, typed := range []string{"3.2", "1/8 in", "#31", "3,020 mm"} {
		l, err := dim.Parse(typed, dim.MM)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(l.Format(dim.InBoth))
	}
	// Output:
	// 3.200 mm (0.1260 in)
	// 3.175 mm (0.1250 in)
	// 3.048 mm (0.1200 in)
	// 3.020 mm (0.1189 in)
}

// The rooms below the plan answer one question each, without a job.
func Example_lookup() {
	lib := table.BuiltIn()
	fits, err := limits.New(lib)
	if err != nil {
		fmt.Println(err)
		return
	}
	fit, err := fits.Fit(dim.Must("8 mm"), "H7/p6")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("interference", fit.MinInterferenceUm(), "to", fit.MaxInterferenceUm(), "um")
	rules, err := table.ReadRules(lib)
	if err != nil {
		fmt.Println(err)
		return
	}
	cut, err := cutting.New(lib, rules)
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := cut.Speed(cutting.Query{Material: "zinc", Operation: "ream", DiaMM: 5, Hand: true})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("ream at %.0f m/min, %.0f rev/min\n", a.VUsed, a.RPM)
	// Output:
	// interference 0 to 24 um
	// ream at 15 m/min, 955 rev/min
}
