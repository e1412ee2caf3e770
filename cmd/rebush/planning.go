package main

import (
	"strconv"
	"time"

	"rebush/fits/finding"
	"rebush/plan"
	"rebush/plan/job"
)

// The chance when nothing else is asked for.
const (
	usualSeed   = 1
	usualTrials = 20000
	mostTrials  = 10_000_000
)

func (o options) planOptions() (plan.Options, error) {
	p := plan.Options{Seed: usualSeed, Trials: usualTrials}
	var err error
	if o.has("seed") {
		if p.Seed, err = strconv.ParseUint(o.text["seed"], 10, 64); err != nil {
			return p, usage("--seed: %q is no whole number from 0", o.text["seed"])
		}
	}
	if o.has("trials") {
		if p.Trials, err = strconv.Atoi(o.text["trials"]); err != nil || p.Trials < 1 || p.Trials > mostTrials {
			return p, usage("--trials: %q is no whole number from 1 to %d", o.text["trials"], mostTrials)
		}
	}
	if o.has("way") {
		p.Way, err = wayNamed(o.text["way"])
	}
	return p, err
}

func isDate(s string) bool {
	_, err := time.Parse("2006-01-02", s)
	return err == nil
}

// read reads a job with the shop of the command line.
func (o options) read(e *env, path string) (*job.Job, error) {
	if o.has("shop") && o.text["shop"] == "" {
		return nil, usage("--shop wants the name of a file")
	}
	return job.Read(path, job.Options{Shop: o.text["shop"], Stdin: e.in})
}

// plan reads a job and plans it, and fills in its line of the summary.
func (o options) plan(e *env, path string, with plan.Options, out *outcome) (*plan.Plan, error) {
	j, err := o.read(e, path)
	if err != nil {
		return nil, err
	}
	out.row.number = j.Number
	p, err := plan.Make(j, with)
	if err != nil {
		return nil, err
	}
	out.row.result = resultOf(p)
	out.row.stops, out.row.cautions = strconv.Itoa(p.Findings.Count(finding.Stop)),
		strconv.Itoa(p.Findings.Count(finding.Caution))
	if p.Chance != nil {
		out.row.right = percent(p.Chance.FirstTimeRight)
	}
	return p, nil
}

// refuse is exit 1 where the plan may not be machined.
func refuse(p *plan.Plan) error {
	if p.OK {
		return nil
	}
	return endWith(refused)
}

// percent is a share of 1, "86.3 %"; what is all but certain is said so.
func percent(share float64) string {
	if share >= 0.9995 {
		return "over 99.9 %"
	}
	return strconv.FormatFloat(share*100, 'f', 1, 64) + " %"
}
