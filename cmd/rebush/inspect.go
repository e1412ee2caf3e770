package main

import (
	"fmt"
	"io"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/plan"
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
			return usage("%s has no sizes as made; write them as made: {front axle.left: {seat: 5.008, with: pins}}", path)
		}
		if len(p.Inspect) == 0 {
			return &faultError{what: "the sizes as made were not looked at"}
		}
		out.answer = inspectAnswer{p.JobNumber, path, p.OK, p.Inspect, p.Findings}
		if to[path] != "-" {
			showInspect(e, &out.text, o.worded(p), o.unitsOf(p))
		}
		if to[path] != "" {
			doc, err := sheets.Rework(p, po)
			if err != nil {
				return err
			}
			if err := o.save(doc, to[path], &out.text); err != nil {
				return err
			}
			if to[path] != "-" {
				fmt.Fprintf(&out.text, "%s: %d pages\n", to[path], doc.Pages())
			}
		}
		for _, i := range p.Inspect {
			if i.Result == "reject" {
				return endWith(refused)
			}
		}
		return refuse(p)
	})
}

func showInspect(e *env, w io.Writer, p *plan.Plan, u dim.Units) {
	pg := &page{w: w}
	for _, i := range p.Inspect {
		result := i.Result
		if result == "reject" {
			result = e.paint(red, result)
		}
		s := fmt.Sprintf("%s, %s: made %s, wanted %s", i.Bore, i.What, short(i.MadeMM, u), ranged(i.LimitsMM, u))
		if i.GuardUM != nil {
			s += ", and nearer than " + micrometre(*i.GuardUM, u) + " to a limit the gauge cannot tell"
		}
		pg.line("%s: %s", s, result)
		for _, n := range i.Next {
			s := n.Do
			if n.Bush != "" {
				s += " (" + n.Bush + ")"
			}
			if n.FirstTimeRight != nil {
				s += ": right first time " + percent(*n.FirstTimeRight)
			}
			pg.line("  - %s", s)
		}
	}
	stopLines(e, w, p)
}
