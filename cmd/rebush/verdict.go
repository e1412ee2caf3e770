package main

import (
	"fmt"
	"io"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan"
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
		out.answer = verdictAnswer{p.JobNumber, path, p.Hash, p.OK, p.Chance, p.Verdict, p.Findings}
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
		return o.save(doc, to[path], &out.text)
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
	pg.line("")
	number := func(f *float64, format string) string {
		if f == nil {
			return "-"
		}
		return fmt.Sprintf(format, *f)
	}
	var rows [][]string
	for _, o := range v.Options {
		mark, can := " ", "yes"
		if o.Name == v.Choice {
			mark = ">"
		}
		if !o.Feasible {
			can = "no"
		}
		right := "-"
		if o.Chance != nil {
			right = percent(*o.Chance)
		}
		rows = append(rows, []string{mark + " " + string(o.Name), can, money(o.Cost, v.Currency),
			number(o.Hours, "%.1f"), right})
	}
	pg.table([]string{"  way", "possible", "cost", "hours", "comes right"}, rows)
	pg.line("")
	for _, o := range v.Options {
		pg.pair(string(o.Name), "%s", optionWords(o))
	}
	pg.flush()
	if p.Findings.Count(finding.Stop) > 0 {
		pg.line("")
		stopLines(e, w, p)
	}
}

func money(f *float64, currency string) string {
	if f == nil {
		return "-"
	}
	return strings.TrimSpace(fmt.Sprintf("%.2f %s", *f, currency))
}

// optionWords says why a way cannot be, or what it keeps and what is lost by it.
func optionWords(o plan.Option) string {
	if !o.Feasible && o.WhyNot != "" {
		return "no: " + o.WhyNot.String()
	}
	var s []string
	if len(o.Keeps) > 0 {
		s = append(s, "keeps "+say.Join(", ", o.Keeps...).String())
	}
	if len(o.Loses) > 0 {
		s = append(s, "loses "+say.Join(", ", o.Loses...).String())
	}
	return strings.Join(s, "; ")
}
