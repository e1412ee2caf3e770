package main

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"

	"rebush/fits/finding"
	"rebush/plan"
	"rebush/plan/job"
	"rebush/plan/verdict"
	"rebush/sheets"
	"rebush/sheets/draw"
)

// sheetAnswer is what `sheet --json` says of a job.
type sheetAnswer struct {
	Job      string       `json:"job"`
	File     string       `json:"file"`
	OK       bool         `json:"ok"`
	Paper    string       `json:"paper"`
	Pages    int          `json:"pages"`
	Findings finding.List `json:"findings"`
	Way      verdict.Name `json:"way"` // "" where none is made
}

func runSheet(e *env, o options, jobs []string) error {
	if err := namedJobs(jobs); err != nil {
		return err
	}
	to, err := o.paths(e, jobs, "")
	if err != nil {
		return err
	}
	po, with, err := o.drawingOptions()
	if err != nil {
		return err
	}
	batch := ""
	if len(jobs) > 1 && o.folder() != "" {
		batch = filepath.Join(o.folder(), "traveller.pdf")
		for j, p := range to {
			if p == batch {
				return usage("%s would be drawn to %s, which is the traveller of the batch", j, p)
			}
		}
		if err := e.desk.may(batch, o.on["force"]); err != nil {
			return err
		}
	}
	plans := make([]*plan.Plan, len(jobs))
	faults := make([]error, len(jobs))
	err = everyJob(e, o, jobs, func(path string, out *outcome) error {
		p, err := o.plan(e, path, with, out)
		if err != nil {
			faults[slices.Index(jobs, path)] = err
			return err
		}
		doc, err := sheets.Setup(p, po)
		if err != nil {
			return err
		}
		if err := e.save(o, doc, to[path], &out.raw); err != nil {
			return err
		}
		plans[slices.Index(jobs, path)] = p
		out.row.paper = to[path]
		out.answer = sheetAnswer{p.JobNumber, path, p.OK, to[path], doc.Pages(), p.Findings, p.Goes()}
		if to[path] != "-" {
			fmt.Fprintf(&out.text, "%s: %d pages\n", to[path], doc.Pages())
			headLine(&out.text, p)
			stopLines(e, &out.text, o.worded(p))
		} else if !p.OK {
			stopLines(e, &out.said, o.worded(p))
		}
		return refuse(p)
	})
	if batch != "" {
		var left []sheets.Broken
		for i, p := range plans {
			if p == nil {
				left = append(left, sheets.Broken{File: jobs[i], Wrong: wrongWith(faults[i]), At: i})
			}
		}
		return worseOf(err, traveller(e, o, batch, plans, left, po))
	}
	return err
}

// headLine says in a line what a sheet that is no usual one is.
func headLine(w io.Writer, p *plan.Plan) {
	switch {
	case !p.OK:
	case !p.Machines():
		fmt.Fprintf(w, "nothing to machine: %s\n", p.Goes())
	case p.NotAdvised != "":
		fmt.Fprintf(w, "NOT ADVISED: %s\n", p.NotAdvised)
	}
}

// traveller draws the batch traveller of the jobs that could be planned.
func traveller(e *env, o options, path string, plans []*plan.Plan, left []sheets.Broken, po sheets.Options) error {
	plans = slices.DeleteFunc(plans, func(p *plan.Plan) bool { return p == nil })
	if len(plans) == 0 {
		return nil
	}
	doc, err := sheets.Traveller(plans, po, left...)
	if err != nil {
		return err
	}
	if err := e.save(o, doc, path, nil); err != nil {
		return err
	}
	if !o.on["json"] {
		e.printf("%s: traveller of the batch\n", path)
		showShelves(e, plans)
	}
	return nil
}

// wrongWith is what is wrong with a job that could not be planned.
func wrongWith(err error) string {
	if err == nil {
		return "it could not be drawn"
	}
	return err.Error()
}

// worseOf keeps the error of the higher exit code.
func worseOf(a, b error) error {
	if codeOf(b) > codeOf(a) {
		return b
	}
	return a
}

func runForm(e *env, o options, words []string) error {
	po, err := o.paperOptions()
	if err != nil {
		return err
	}
	if len(words) == 0 {
		path := "measuring-form.pdf"
		if o.on["example"] {
			path = "measuring-example.pdf"
		}
		to, err := o.paths(e, []string{"measuring.yaml"}, "-form")
		if err != nil {
			return err
		}
		if o.has("output") {
			path = to["measuring.yaml"]
		} else if err := e.desk.may(path, o.on["force"]); err != nil {
			return err
		}
		return e.drawForm(o, nil, po, path)
	}
	if o.on["example"] {
		return usage("the example is of an invented truck: name no job with --example")
	}
	name, err := one(words, "job file")
	if err != nil {
		return err
	}
	to, err := o.paths(e, []string{name}, "-form")
	if err != nil {
		return err
	}
	j, err := o.read(e, name)
	if err != nil {
		return err
	}
	return e.drawForm(o, j, po, to[name])
}

func (e *env) drawForm(o options, j *job.Job, po sheets.Options, path string) error {
	var doc *draw.Document
	var err error
	if o.on["example"] {
		doc, err = sheets.FormExample(po)
	} else {
		doc, err = sheets.Form(j, po)
	}
	if err != nil {
		return err
	}
	return e.deliver(o, doc, path)
}

func runTemplate(e *env, o options, words []string) error {
	name, err := one(words, "job file")
	if err != nil {
		return err
	}
	to, err := o.paths(e, []string{name}, "-template")
	if err != nil {
		return err
	}
	po, with, err := o.drawingOptions()
	if err != nil {
		return err
	}
	with.NoChance = true
	p, err := o.plan(e, name, with, &outcome{})
	if err != nil {
		return err
	}
	if !p.OK {
		stopLines(e, e.errOut, o.worded(p))
		fmt.Fprintln(e.errOut, "rebush: no template is drawn")
		return endWith(refused)
	}
	if !p.Machines() {
		fmt.Fprintf(e.errOut, "rebush: nothing is cut (%s), so no template is drawn; --way NAME draws that of "+
			"another way\n", p.Goes())
		return nil
	}
	doc, err := sheets.Template(p, po)
	if err != nil {
		return err
	}
	return e.deliver(o, doc, to[name])
}
