package plan

import (
	"rebush/fits/material"
	"rebush/fits/table"
	"rebush/plan/job"
	"rebush/plan/route"
	"rebush/plan/safety"
	"rebush/plan/seat"
)

// hazards are what can hurt on a chassis of a job.
func (w *books) hazards(c seat.Casting, j *job.Job) route.Hazards {
	return route.Hazards{Table: w.safety, Metals: w.materials, Chassis: c.Material.Kind, Unsure: route.Unsure(j)}
}

// FreshSafety lists what the block of operation i says of hazards: what no
// operation of the same set-up has said before it, and what is said each time.
// at is the number of the operation that said the rest, 0 where there is none.
func (p *Plan) FreshSafety(i int) (lines []safety.Line, at int) {
	op := p.Operations[i]
	said := map[string]int{}
	for k := i - 1; k >= 0 && p.Operations[k].Setup == op.Setup; k-- {
		for _, l := range p.Operations[k].Safety {
			said[l.Words] = p.Operations[k].Number
		}
	}
	for _, l := range op.Safety {
		n, ok := said[l.Words]
		if !ok || l.Each {
			lines = append(lines, l)
		} else if at == 0 || n > at {
			at = n
		}
	}
	return lines, at
}

// FormSafety is what the measuring form says of hazards: of the chassis of a
// job, or with none of a chassis of which nothing is said.
func FormSafety(j *job.Job) ([]safety.Line, error) {
	lib := table.BuiltIn()
	if j != nil && j.Shop != nil && j.Shop.Tables != nil {
		lib = j.Shop.Tables
	}
	book, err := safety.New(lib, route.KindNames())
	if err != nil {
		return nil, err
	}
	kind := safety.Unsaid
	if j != nil && j.Chassis.Material != "" {
		materials, err := material.New(lib)
		if err != nil {
			return nil, err
		}
		if mat, err := materials.Find(j.Chassis.Material); err == nil {
			kind = mat.Kind
		}
	}
	return book.At(safety.Form, safety.Work{Metals: []material.Kind{kind}}), nil
}
