package plan_test

import (
	"fmt"
	"strings"
	"testing"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/job"
	"rebush/plan/route"
	"rebush/plan/seat"
)

// batchJob is a plan that takes some bushes of a shop whose drawer holds so many
// of drawer 7; fewer than none: the job does not say.
func batchJob(number, shop string, onHand int, bushes ...string) *plan.Plan {
	j := &job.Job{Number: number, Shop: &job.Shop{File: shop, Currency: "EUR"}}
	price := 0.5
	drawer := job.Bush{Code: "drawer 7", Price: &price}
	if onHand >= 0 {
		drawer.OnHand = &onHand
	}
	j.Bushes = []job.Bush{drawer, {Code: "own turning", Turned: true}}
	p := &plan.Plan{OK: true, JobNumber: number, Job: j}
	for _, b := range bushes {
		p.Seats = append(p.Seats, seat.Row{Bush: b})
	}
	return p
}

// TestShelves: five are on hand, three jobs want two each: the third is one
// short. What is turned runs short of nothing, what belongs to a series is all
// to be bought, another shop has a drawer of its own, and a plan that must not
// be machined takes nothing.
func TestShelves(t *testing.T) {
	stopped := batchJob("4", "a/shop.yaml", 5, "drawer 7", "drawer 7")
	stopped.OK = false
	got := plan.Shelves([]*plan.Plan{
		batchJob("1", "a/shop.yaml", 5, "drawer 7", "drawer 7"),
		batchJob("2", "a/shop.yaml", 5, "drawer 7", "drawer 7", "own turning"),
		stopped,
		batchJob("3", "a/shop.yaml", 5, "drawer 7", "", "drawer 7", "series 5"),
		batchJob("5", "b/shop.yaml", -1, "drawer 7"),
		batchJob("6", "a/shop.yaml", 4, "drawer 7"),
		batchJob("6", "a/shop.yaml", 4, "drawer 7"), // another job of that number
	})
	var said []string
	for _, x := range got {
		there, cost := "?", "?"
		if x.OnHand != nil {
			there = fmt.Sprint(*x.OnHand)
		}
		if x.Cost != nil {
			cost = fmt.Sprintf("%.2f", *x.Cost)
		}
		var takers []string
		for _, k := range x.Takers {
			takers = append(takers, fmt.Sprint(k.Job, " ", k.Wanted, " ", k.Short))
		}
		said = append(said, fmt.Sprint(x.Shop, " ", x.Code, ": ", x.Wanted, " of ", there, " short ", x.Short,
			" for ", cost,
			" turned ", x.Turned, " differ ", x.Differ, " ", takers))
	}
	want := []string{
		"a/shop.yaml drawer 7: 8 of 4 short 4 for 2.00 turned false differ true [1 2 0 2 2 0 3 2 2 6 1 1 6 1 1]",
		"a/shop.yaml own turning: 1 of ? short 0 for ? turned true differ false [2 1 0]",
		"a/shop.yaml series 5: 1 of 0 short 1 for ? turned false differ false [3 1 1]",
		"b/shop.yaml drawer 7: 1 of ? short 0 for ? turned false differ false [5 1 0]",
	}
	if g, w := strings.Join(said, "\n"), strings.Join(want, "\n"); g != w {
		t.Errorf("got\n%s\nwant\n%s", g, w)
	}
}

// TestBuyTools: a tool is bought once for a shop, whatever the order of the
// jobs, and no bush stands among the tools.
func TestBuyTools(t *testing.T) {
	a, b, c := batchJob("1", "shop.yaml", 5, "series 5"), batchJob("2", "shop.yaml", 5), batchJob("3", "other.yaml",
		5)
	a.Buy = []plan.BuyLine{{What: say.F("reamer %s", "5.5 H7"), Why: "axle.left"}, {What: say.F("bush %s",
		"series 5"), Why: "axle.left", Kind: route.BuyBush}}
	b.Buy, c.Buy = a.Buy[:1], a.Buy[:1]
	if got := fmt.Sprint(plan.BuyTools([]*plan.Plan{a, b,
		c})); got != "[{shop.yaml reamer 5.5 H7 [1 2]} {other.yaml reamer 5.5 H7 [3]}]" {
		t.Error(got)
	}
}
