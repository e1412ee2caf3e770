package main

import (
	"errors"
	"fmt"

	"rebush/fits/finding"
	"rebush/plan"
	"rebush/plan/job"
)

type checkAnswer struct {
	Job      *string      `json:"job"`
	File     string       `json:"file"`
	OK       bool         `json:"ok"` // it can be planned
	Shafts   int          `json:"shafts"`
	Bores    int          `json:"bores"`
	Gears    int          `json:"gears"`
	Findings finding.List `json:"findings"`
}

func runCheck(e *env, o options, jobs []string) error {
	return everyJob(e, o, jobs, func(path string, out *outcome) error {
		j, err := o.read(e, path)
		if err == nil {
			err = plan.ReadTables(j.Shop)
		}
		if err != nil {
			var list job.Problems
			if errors.As(err, &list) && list[0].Wrong == job.IsShop {
				var shop *job.Shop
				if shop, err = job.ReadShop(path); err == nil {
					err = plan.ReadTables(shop)
				}
				if err == nil {
					out.row.result = "a shop file"
					out.answer = checkAnswer{File: path, OK: true, Findings: finding.List{}}
					fmt.Fprintf(&out.text, "%s: nothing wrong: a shop file\n", path)
					return nil
				}
			}
			if errors.As(err, &list) {
				for i, p := range list {
					if q, ok := job.Asks(p); ok {
						list[i].Right += fmt.Sprintf("; box %d of the form, %s", q.Number, q.Box)
					}
				}
				out.answer = checkAnswer{File: path, Findings: findingsOf(err)}
			}
			return err
		}
		out.row.number, out.row.result = j.Number, "can be planned"
		a := checkAnswer{Job: &j.Number, File: path, OK: true, Shafts: len(j.Shafts), Gears: len(j.Gears),
			Findings: append(finding.List{}, job.Unused(j)...)}
		for _, s := range j.Shafts {
			a.Bores += len(s.Bores)
		}
		out.answer = a
		fmt.Fprintf(&out.text, "%s: nothing wrong: %s (shafts %d, bores %d, gears %d)\n", path,
			jobName(j.Number, j.Title, ""), a.Shafts, a.Bores, a.Gears)
		findingLines(e, &out.text, a.Findings)
		return nil
	})
}
