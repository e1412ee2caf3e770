package main

import (
	"fmt"
	"io"
	"math"
	"strings"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/plan"
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
		out.answer = surveyAnswer{p.JobNumber, path, p.Hash, p.Survey, p.Mesh, p.Shafts, p.Truck, p.Findings}
		showSurvey(&out.text, p, o.unitsOf(p))
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

func showSurvey(w io.Writer, p *plan.Plan, u dim.Units) {
	pg := &page{w: w}
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
		pg.pair("  clearance when new", "%s on radius", short(b.ClearanceMM, u))
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
		s += fmt.Sprintf("worn %s %s", rough(b.WearMM, u), towards(*b.WearDeg))
	}
	if b.FoundMM != nil {
		s += "; the old centre is " + offset(b.FoundMM, b.CentreMM, u)
	}
	return s + "; known to " + finely(b.CentreUMM, u)
}

// rough is a length to two places of mm or to a thousandth of an inch.
func rough(m plan.MM, u dim.Units) string {
	return figureOnly(m, u) + map[bool]string{true: " in", false: " mm"}[u == dim.InInch]
}

func figureOnly(m plan.MM, u dim.Units) string {
	if u == dim.InInch {
		return m.Length().StringInch(3)
	}
	return m.Length().StringMM(2)
}

// finely is figureOnly with one place more where that would say nothing.
func finely(m plan.MM, u dim.Units) string {
	s := figureOnly(m, u)
	switch {
	case strings.Trim(s, "0.") != "":
		return s
	case u == dim.InInch:
		return m.Length().StringInch(4)
	}
	return m.Length().StringMM(3)
}

// towards names the eighth of the circle that a direction lies in.
func towards(deg float64) string {
	names := []string{"forwards", "upwards and forwards", "upwards", "upwards and backwards", "backwards", "downwards and backwards", "downwards", "downwards and forwards"}
	i := int(math.Floor(math.Mod(deg+22.5+720, 360) / 45))
	return names[i%8]
}

// offset says where one place lies from another, in words.
func offset(from, to *plan.XY, u dim.Units) string {
	var parts []string
	for i, word := range [2][2]string{{"in front of", "behind"}, {"above", "below"}} {
		d := to[i].Length().Sub(from[i].Length())
		s := figureOnly(plan.MM(d.Abs().MM().String()), u)
		if strings.Trim(s, "0.") == "" {
			continue
		}
		w := word[0]
		if d.Sign() < 0 {
			w = word[1]
		}
		parts = append(parts, s+" "+w)
	}
	if parts == nil {
		return "the middle of the hole"
	}
	return strings.Join([]string{strings.Join(parts, " and "), "the middle of the hole"}, " ")
}

// sketch draws a hole in letters: o is the old wall, # the wall that is worn
// away, + the old centre. The wear is drawn larger than it is.
func sketch(h plan.Hole) []string {
	const rows, cols = 9, 19
	deepest := 0.0
	for _, q := range h.Outline {
		deepest = max(deepest, math.Hypot(q[0]-h.Old[0], q[1]-h.Old[1])-h.OldRadius)
	}
	worn := func(angle float64) bool {
		best, off := 0.0, math.Inf(1)
		for _, q := range h.Outline {
			x, y := q[0]-h.Old[0], q[1]-h.Old[1]
			if d := math.Abs(math.Remainder(math.Atan2(y, x)-angle, 2*math.Pi)); d < off {
				off, best = d, math.Hypot(x, y)-h.OldRadius
			}
		}
		return deepest > 0.002 && best > deepest/3
	}
	out := make([]string, rows)
	for i := range rows {
		line := make([]byte, cols)
		for k := range cols {
			y, x := 1.45*(1-2*float64(i)/(rows-1)), 1.45*1.1*(2*float64(k)/(cols-1)-1)
			r, c := math.Hypot(x, y), byte(' ')
			switch bad := r > 0.8 && r < 1.6 && worn(math.Atan2(y, x)); {
			case i == rows/2 && k == cols/2:
				c = '+'
			case bad && r > 1.05 && r < 1.5:
				c = '#'
			case !bad && math.Abs(r-1) < 0.2:
				c = 'o'
			}
			line[k] = c
		}
		out[i] = strings.TrimRight(string(line), " ")
	}
	for len(out) > 0 && out[0] == "" {
		out = out[1:]
	}
	for len(out) > 0 && out[len(out)-1] == "" {
		out = out[:len(out)-1]
	}
	return out
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
	return m.Length().Format(u)
}

func ranged(r *plan.MMRange, u dim.Units) string {
	if r == nil {
		return "not known"
	}
	return short(r.Min, u) + " to " + short(r.Max, u)
}
