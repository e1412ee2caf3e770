package main

import (
	"fmt"
	"io"

	"rebush/fits/finding"
	"rebush/plan"
	"rebush/plan/verdict"
	"rebush/sheets"
)

type verdictAnswer struct {
	Job      string        `json:"job"`
	File     string        `json:"file"`
	Hash     string        `json:"hash"`
	OK       bool          `json:"ok"`
	Chance   *plan.Chance  `json:"chance"`
	Verdict  *plan.Verdict `json:"verdict"`
	Findings finding.List  `json:"findings"`

	Way  verdict.Name     `json:"way"`
	Ways []verdict.WayRow `json:"ways"`
}

func runVerdict(e *env, o options, jobs []string) error {
	if err := namedJobs(jobs); err != nil {
		return err
	}
	po, with, err := o.drawingOptions()
	if err != nil {
		return err
	}
	to := map[string]string{}
	if o.has("output") {
		if to, err = o.paths(e, jobs, "-verdict"); err != nil {
			return err
		}
	}
	return everyJob(e, o, jobs, func(path string, out *outcome) error {
		p, err := o.plan(e, path, with, out)
		if err != nil {
			return err
		}
		if p.Verdict == nil {
			return &faultError{what: "the plan came without a verdict"}
		}
		out.row.result = string(p.Verdict.Choice)
		out.answer = verdictAnswer{p.JobNumber, path, p.Hash, p.OK, p.Chance, p.Verdict, p.Findings,
			p.Way, append([]verdict.WayRow{}, p.Ways...)}
		if to[path] == "" {
			showVerdict(e, &out.text, o.worded(p))
			return nil
		}
		doc, err := sheets.VerdictPage(p, po)
		if err != nil {
			return err
		}
		out.row.paper = to[path]
		if to[path] != "-" {
			showVerdict(e, &out.text, o.worded(p))
			defer fmt.Fprintf(&out.text, "%s: %d pages\n", to[path], doc.Pages())
		}
		return e.save(o, doc, to[path], &out.raw)
	})
}

func showVerdict(e *env, w io.Writer, p *plan.Plan) {
	v := p.Verdict
	pg := &page{w: w}
	pg.line("%s", e.paint(bold, v.Sentence.String()))
	if v.RunnerUp != nil {
		s := "Second: " + string(v.RunnerUp.Name)
		if v.RunnerUp.WinsIf != "" {
			s += ", and what would make it win: " + v.RunnerUp.WinsIf.String()
		}
		pg.line("%s.", s)
	}
	for _, b := range v.Bores {
		pg.pair("  "+b.Bore, "%s", b.Way)
	}
	pg.flush()
	showNeeds(pg, v)
	pg.line("")
	showWays(pg, p)
	if len(v.Tried) > 0 {
		pg.line("\nTried, the whole job planned again with each:")
		showTried(pg, v.Tried, v.Currency, p.OK)
	}
	pg.line("")
	for _, f := range p.Findings {
		if f.Rule.Stage() == "verdict" {
			pg.line("%s", findingLine(e, f))
		}
	}
	stopLines(e, w, p)
}

// money is an amount with its currency, where it has one.
func money(f *float64, currency string) string {
	if f == nil {
		return "-"
	}
	return finding.Money(*f, currency).String()
}
