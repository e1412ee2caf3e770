package main

import (
	"fmt"
	"io"
	"math"
	"strings"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/survey"
)

// surveyAnswer is the part of a plan that the measurements make.
type surveyAnswer struct {
	Job      string              `json:"job"`
	File     string              `json:"file"`
	Hash     string              `json:"hash"`
	Survey   []plan.SurveyedBore `json:"survey"`
	Mesh     []plan.Mesh         `json:"mesh"`
	Shafts   []plan.Shaft        `json:"shafts"`
	Truck    plan.Truck          `json:"truck"`
	Findings finding.List        `json:"findings"`
}

func runSurvey(e *env, o options, jobs []string) error {
	if _, err := o.units(); err != nil {
		return err
	}
	return everyJob(e, o, jobs, func(path string, out *outcome) error {
		p, err := o.plan(e, path, plan.Options{NoChance: true}, out)
		if err != nil {
			return err
		}
		out.row.result = "surveyed"
		out.answer = surveyAnswer{p.JobNumber, path, p.Hash, p.Survey, p.Mesh, p.Shafts, p.Truck, p.Measured()}
		showSurvey(e, &out.text, o.worded(p), o.unitsOf(p))
		return nil
	})
}

// unitsOf are the units asked for, else those of the job.
func (o options) unitsOf(p *plan.Plan) dim.Units {
	if u, err := o.units(); err == nil && o.has("units") {
		return u
	}
	if p.Job != nil && p.Job.Units == dim.Inch {
		return dim.InInch
	}
	return dim.InMM
}

// worded is the plan with its sentences printed in those units.
func (o options) worded(p *plan.Plan) *plan.Plan { return say.Printed(p, o.unitsOf(p)) }

func showSurvey(e *env, w io.Writer, p *plan.Plan, u dim.Units) {
	pg := &page{w: w}
	if len(p.Holes) > 0 {
		pg.line("%s\n", sketchLegend)
	}
	for i, b := range p.Survey {
		if i > 0 {
			pg.line("")
		}
		pg.line("%s", aloud(b, u))
		if h, ok := p.Holes[b.Bore]; ok {
			for _, l := range sketch(h) {
				pg.line("    %s", l)
			}
		}
		pg.pair("  middle of the hole", "%s", place(b.FoundMM, u))
		pg.pair("  old centre", "%s, known to %s", place(b.CentreMM, u), short(b.CentreUMM, u))
		pg.pair("  old diameter", "%s", short(b.DiameterMM, u))
		if b.ClearanceMM.Given() {
			pg.pair("  clearance when new", "%s on radius", short(b.ClearanceMM, u))
		}
		if b.PlayMM.Given() && b.PlayPercent != nil {
			pg.pair("  play now", "%s on diameter, %.0f %% of the journal", short(b.PlayMM, u), *b.PlayPercent)
		}
		for _, v := range b.Evidence {
			used := "not used"
			if v.Used {
				used = "used"
			}
			pg.pair("  "+used, "%s: %s, known to %s", v.What, place(v.CentreMM, u), short(v.UMM, u))
		}
		pg.flush()
	}
	if len(p.Mesh) > 0 {
		pg.line("")
	}
	for _, m := range p.Mesh {
		pg.line("%s: %s", m.Gear, m.Words)
	}
	showFrame(pg, p, u)
	if list := p.Measured(); len(list) > 0 {
		pg.line("")
		findingLines(e, w, list)
	}
}

// showFrame says how the shafts stand to each other, as found.
func showFrame(pg *page, p *plan.Plan, u dim.Units) {
	pg.line("")
	for _, s := range p.Shafts {
		if s.SkewDeg.Found != nil {
			lean := "stands square"
			if d := math.Abs(*s.SkewDeg.Found); d >= 0.005 {
				lean = fmt.Sprintf("leans %.2f degrees", d)
			}
			pg.pair(s.Shaft, "%s", lean)
		}
	}
	if p.Truck.WheelbaseMM.Found.Given() {
		pg.pair("wheelbase", "%s as the shafts lie under load", short(p.Truck.WheelbaseMM.Found, u))
	}
	if p.Truck.RockMM.Found.Given() {
		pg.pair("rock", "one wheel of four stands %s off the rails", rough(p.Truck.RockMM.Found, u))
	}
	pg.flush()
}

// aloud is a line that can be read out to somebody at the bench.
func aloud(b plan.SurveyedBore, u dim.Units) string {
	name := strings.Replace(b.Bore, ".", ", ", 1)
	if b.CentreMM == nil {
		return name + ": the measurements do not tell where its old centre was"
	}
	s := name + ": "
	if b.WearDeg == nil || b.WearMM.Float() <= 0 {
		s += "not worn"
	} else {
		s += fmt.Sprintf("worn %s %s", rough(b.WearMM, u), survey.Towards(*b.WearDeg))
	}
	if b.FoundMM != nil {
		s += "; the old centre is " + offset(b.FoundMM, b.CentreMM, u)
	}
	return s + "; known to " + short(b.CentreUMM, oneOf(u))
}

// rough is a length to two places of mm.
func rough(m plan.MM, u dim.Units) string {
	return say.Size(m, 2).In(oneOf(u))
}

// oneOf leaves the mm of a reader of both, for a line that is read out.
func oneOf(u dim.Units) dim.Units {
	if u == dim.InBoth {
		return dim.InMM
	}
	return u
}

// offset says where one place lies from another, in words.
func offset(from, to *plan.XY, u dim.Units) string {
	var parts []string
	for i, word := range [2][2]string{{"to the right of", "to the left of"}, {"above", "below"}} {
		a, _ := from[i].Exact()
		b, _ := to[i].Exact()
		s := say.MM(math.Abs(b-a), 2).Steady().Number(oneOf(u))
		if strings.Trim(s, "0.") == "" {
			continue
		}
		w := word[0]
		if b < a {
			w = word[1]
		}
		parts = append(parts, s+" "+w)
	}
	if parts == nil {
		return "the middle of the hole"
	}
	return strings.Join([]string{strings.Join(parts, " and "), "the middle of the hole"}, " ")
}

// place prints a place, "not known" where it is absent.
func place(p *plan.XY, u dim.Units) string {
	if p == nil {
		return "not known"
	}
	return "x " + short(p[0], u) + ", y " + short(p[1], u)
}

// short prints a length in the units of the reader, "not known" where it is
// absent.
func short(m plan.MM, u dim.Units) string {
	if !m.Given() {
		return "not known"
	}
	return say.Size(m, 3).In(u)
}

func ranged(r *plan.MMRange, u dim.Units) string {
	if r == nil {
		return "not known"
	}
	switch {
	case !r.Min.Given():
		return "up to " + short(r.Max, u)
	case !r.Max.Given():
		return short(r.Min, u) + " or more"
	}
	lo, hi := say.Ends(*r)
	return lo.In(u) + " to " + hi.In(u)
}
