package main

import (
	"math"

	"rebush/fits/table"
	"rebush/plan/checked"
)

// checksWord is what stands in the place of the name of a table.
const checksWord = "checks"

type checkJSON struct {
	File      string   `json:"file"`
	Row       string   `json:"row"`
	What      string   `json:"what"`
	Inputs    string   `json:"inputs"`
	Unit      string   `json:"unit"`
	Expected  string   `json:"expected"`
	Tolerance string   `json:"tolerance"`
	Low       *float64 `json:"computed_low"`
	High      *float64 `json:"computed_high"`
	Agrees    bool     `json:"agrees"`
	Why       string   `json:"why"`
	Source    string   `json:"source"`
}

type checksJSON struct {
	Rows     int         `json:"rows"`
	Figures  int         `json:"figures"`
	Disagree int         `json:"disagree"`
	Checks   []checkJSON `json:"checks"`
}

// listChecks works out now, with the tables in force, what others printed.
func listChecks(e *env, o options, lib *table.Library) error {
	figures, err := checked.Printed(lib)
	if err != nil {
		return &faultError{what: err.Error()}
	}
	return showChecks(e, o, figures)
}

func showChecks(e *env, o options, figures []checked.Figure) error {
	all := checksJSON{Figures: len(figures), Checks: []checkJSON{}}
	rows := map[[2]string]bool{}
	for _, f := range figures {
		rows[[2]string{f.File, f.ID}] = true
		if !f.Agrees() {
			all.Disagree++
		}
		low, high := f.Span()
		all.Checks = append(all.Checks, checkJSON{f.File, f.ID, f.What, f.Inputs, f.Unit, f.Expected, f.Tolerance,
			finite(low), finite(high), f.Agrees(), f.Why, f.Source})
	}
	all.Rows = len(rows)
	if o.on["json"] {
		if err := e.json(all); err != nil {
			return err
		}
	} else {
		printChecks(&page{w: e.out}, figures, all)
	}
	if all.Disagree > 0 || len(figures) == 0 {
		return endWith(refused)
	}
	return nil
}

// finite is null of what is no number.
func finite(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}

func printChecks(p *page, figures []checked.Figure, all checksJSON) {
	lines, apart := [][]string{}, [][]string{}
	for _, f := range figures {
		within, says := f.Tolerance, "agrees"
		if within == "0" {
			within = "exact"
		}
		what := f.What
		if f.Why != "" {
			what += ": " + f.Why
		}
		if !f.Agrees() {
			says = "DISAGREES"
		}
		line := []string{f.ID, says, f.Expected, within, f.Computed(), f.Unit, what, f.Inputs, f.Source}
		lines = append(lines, line)
		if !f.Agrees() {
			apart = append(apart, line)
		}
	}
	heads := []string{"row", "", "printed", "within", "computed", "unit", "what", "of", "where it is printed"}
	p.table(heads, lines)
	p.line("")
	if len(apart) > 0 {
		p.line("Those that disagree:")
		p.table(heads, apart)
		p.line("")
	}
	p.line("%d rows, %d figures: %d agree, %d disagree", all.Rows, all.Figures, all.Figures-all.Disagree, all.Disagree)
}
