package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"rebush/plan"
)

// showShelves prints what a batch takes from the drawers, who runs short, and
// what is to be bought before it is begun. No plan is changed by it.
func showShelves(e *env, plans []*plan.Plan) {
	plans = slices.DeleteFunc(slices.Clone(plans), func(p *plan.Plan) bool { return p == nil })
	list, tools := plan.Shelves(plans), plan.BuyTools(plans)
	if len(list) == 0 {
		return
	}
	pg := &page{w: e.out}
	var rows, buy [][]string
	for _, x := range list {
		there := "not said"
		switch {
		case x.Turned:
			there = "turned"
		case x.OnHand != nil:
			there = strconv.Itoa(*x.OnHand)
		}
		short := "-"
		if x.Short > 0 {
			short = strconv.Itoa(x.Short) + ": " + strings.Join(shortOf(x), ", ")
			buy = append(buy, []string{strconv.Itoa(x.Short), "bush " + x.Code, money(x.Cost, x.Currency),
				drawerOf(x.Shop)})
		}
		if x.Differ {
			there += ", the least that a job says"
		}
		rows = append(rows, []string{x.Code, drawerOf(x.Shop), strconv.Itoa(x.Wanted), there, short})
	}
	for _, t := range tools {
		buy = append(buy, []string{"1", t.What.String() + ", for " + strings.Join(t.Jobs, ", "), "-", drawerOf(t.Shop)})
	}
	pg.line("")
	pg.table([]string{"bushes of the batch", "shop", "wanted", "on hand", "runs short"}, rows)
	if len(buy) > 0 {
		pg.line("")
		pg.table([]string{"buy", "", "price", "shop"}, buy)
	}
}

// shortOf are the jobs that find too few, when those before have taken theirs.
func shortOf(x plan.Shelf) []string {
	var out []string
	for _, t := range x.Takers {
		if t.Short > 0 {
			out = append(out, fmt.Sprintf("%s by %d", t.Job, t.Short))
		}
	}
	return out
}

// drawerOf is how a shop is called in the table.
func drawerOf(file string) string {
	if file == "." {
		return "built-in"
	}
	return filepath.Base(file)
}
