package main

import (
	"fmt"
	"io"
	"strings"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/plan"
	"rebush/plan/inspect"
	"rebush/sheets"
)

type inspectAnswer struct {
	Job      string            `json:"job"`
	File     string            `json:"file"`
	OK       bool              `json:"ok"`
	Inspect  []plan.Inspection `json:"inspect"`
	Findings finding.List      `json:"findings"`
}

func runInspect(e *env, o options, jobs []string) error {
	name, err := one(jobs, "job file")
	if err != nil {
		return err
	}
	po, with, err := o.drawingOptions()
	if err != nil {
		return err
	}
	to := map[string]string{}
	if o.has("output") {
		if to, err = o.paths(e, jobs, "-rework"); err != nil {
			return err
		}
	}
	return everyJob(e, o, []string{name}, func(path string, out *outcome) error {
		p, err := o.plan(e, path, with, out)
		if err != nil {
			return err
		}
		if len(p.Job.Made) == 0 {
			return usage("%s has no sizes as made; write them as made: {front axle.left: {seat: 5.008, with: pins}}",
				path)
		}
		out.answer = inspectAnswer{p.JobNumber, path, p.OK, p.Inspect, p.Findings}
		if len(p.Inspect) == 0 {
			return notInspected(e, out, p)
		}
		if to[path] != "-" {
			showInspect(e, &out.text, o.worded(p), o.unitsOf(p))
		}
		if to[path] != "" {
			doc, err := sheets.Rework(p, po)
			if err != nil {
				return err
			}
			if err := e.save(o, doc, to[path], &out.raw); err != nil {
				return err
			}
			if to[path] != "-" {
				fmt.Fprintf(&out.text, "%s: %d pages\n", to[path], doc.Pages())
			}
		}
		for _, i := range p.Inspect {
			if i.Result == inspect.Reject {
				return endWith(refused)
			}
		}
		return refuse(p)
	})
}

// notInspected says why none of the sizes as made could be set against a limit:
// the plan is stopped, or bushes none of those bores, which is a slip of the
// job file.
func notInspected(e *env, out *outcome, p *plan.Plan) error {
	for _, f := range p.Findings {
		switch {
		case f.Rule != inspect.RuleMade:
		case p.OK:
			return fmt.Errorf("%s:%d:%d: %s: %v", f.File, f.Line, f.Column, f.Where, f.Text)
		default:
			fmt.Fprintln(&out.text, findingLine(e, f))
		}
	}
	stopLines(e, &out.text, p)
	return endWith(refused)
}

func showInspect(e *env, w io.Writer, p *plan.Plan, u dim.Units) {
	pg := &page{w: w}
	for _, i := range p.Inspect {
		result := string(i.Result)
		if i.Result == inspect.Reject {
			result = e.paint(red, result)
		}
		works := "nothing works, with the others as they are"
		if i.LimitsMM != nil {
			works = ranged(i.LimitsMM, u) + " works"
		}
		s := fmt.Sprintf("%s, %s: made %s; %s", i.Bore, i.What, short(i.MadeMM, u), works)
		if i.GuardUM != nil {
			s += ", and nearer than " + micrometre(*i.GuardUM, u) + " to a limit the gauge cannot tell"
		}
		pg.line("%s: %s", s, result)
		if i.ToolLimitsMM != nil && i.What != inspect.Place {
			pg.line("  its tool leaves %s", ranged(i.ToolLimitsMM, u))
		}
		for _, by := range i.By {
			if !by.Decides {
				continue
			}
			s := fmt.Sprintf("  %s: %s, wanted %s", by.What, short(by.MadeMM, u), ranged(by.LimitsMM, u))
			if by.Words != "" {
				s += fmt.Sprintf("; %v", by.Words)
			}
			pg.line("%s: %s", s, by.Result)
		}
		for _, n := range i.Next {
			s := n.Do.String()
			if n.Bush != "" && !strings.Contains(s, n.Bush) {
				s += " (" + n.Bush + ")"
			}
			if n.FirstTimeRight != nil {
				s += ": right first time " + percent(*n.FirstTimeRight)
			}
			pg.line("  - %s", s)
		}
	}
	if p.AsMade && p.OK && p.Machines() {
		pg.line("%d operations remain: rebush plan, or -o for the sheet.", len(p.Operations))
	}
	stopLines(e, w, p)
}
