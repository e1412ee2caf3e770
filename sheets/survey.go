package sheets

import (
	"fmt"
	"math"
	"strings"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/sheets/draw"
)

// survey shows each bore enlarged: what was found, where its centre used to
// be, how sure that is, and where it goes.
func survey(p *paper, pl *plan.Plan) {
	if len(pl.Survey) == 0 {
		return
	}
	p.open("Where the holes are", "survey")
	b := p.block()
	legend(b, pl)
	p.glue(b)
	for _, s := range pl.Survey {
		b := p.block()
		surveyBlock(b, p, pl, s)
		p.add(b)
	}
	for _, m := range pl.Mesh {
		if m.Words == "" {
			continue
		}
		b := p.block()
		b.para("Gear "+m.Gear+": "+m.Words.String(), draw.Regular, p.st.body)
		p.add(b)
	}
	truckLines(p, pl)
}

func surveyBlock(b *block, p *paper, pl *plan.Plan, s plan.SurveyedBore) {
	head := s.Bore
	if leftAlone(pl, s.Bore) {
		head += ", left as it is"
	}
	b.y = b.write(0, b.y, b.Width, head, draw.Bold, b.st.body) + 1.5
	room := 44.0
	hole, drawn := pl.Holes[s.Bore]
	drawn = drawn && !leftAlone(pl, s.Bore)
	list := surveyFields(p, pl, s)
	side := b.Width - 2*room - 12
	if !drawn {
		cols := 2
		if b.st.large {
			cols = 1
		}
		b.y = b.fields(0, b.y, b.Width, cols, list)
	} else {
		top := b.y
		surveyPictures(b, pl, s, hole, room)
		if b.st.large {
			b.y = b.fields(0, b.y, b.Width, 2, list)
		} else {
			b.y = max(b.y, b.fields(2*room+12, top, side, 1, list))
		}
	}
	b.para(evidence(b.u, s), draw.Regular, b.st.small)
	b.para(residuals(b.u, hole), draw.Regular, b.st.small)
	b.Line(0, b.y, b.Width, b.y, 0.2)
	b.Reach(b.y)
}

func surveyFields(p *paper, pl *plan.Plan, s plan.SurveyedBore) []field {
	var list []field
	add := func(name string, bold bool, lines ...string) {
		var keep []string
		for _, l := range lines {
			if l != "" {
				keep = append(keep, l)
			}
		}
		if len(keep) == 0 {
			return
		}
		f := field{name: name, lines: keep}
		if bold {
			f.face = draw.Bold
		}
		list = append(list, f)
	}
	old := "old centre"
	if s.CentreUMM.Given() {
		old += ", sure to " + p.u.len(s.CentreUMM) + " (1 sigma)"
	}
	add(old, false, p.u.at(s.CentreMM, false)...)
	for _, t := range pl.Targets {
		if t.Bore == s.Bore && pl.OK && !leftAlone(pl, s.Bore) {
			add("new centre", true, p.u.at(dialled(pl, t), false)...)
			add("move from the old centre", true, moveOf(p.u, t)...)
		}
	}
	wear := p.u.len(s.WearMM)
	switch {
	case wear == "":
	case s.WearMM.Float() <= 0:
		wear = "not to one side"
	case s.WearDeg != nil:
		wear += fmt.Sprintf(" towards %.0f°", *s.WearDeg)
	}
	worn := "worn"
	if play := p.u.len(s.PlayMM); play != "" {
		worn += "; play now, on diameter, " + play
	}
	add(worn, false, wear)
	return list
}

// evidence says in a line what the old centre rests on.
func evidence(u units, s plan.SurveyedBore) string {
	var out []string
	for _, e := range s.Evidence {
		line := e.What
		if e.UMM.Given() {
			line += ", sure to " + u.len(e.UMM)
		}
		if e.Used {
			line += " (used)"
		}
		out = append(out, line)
	}
	if len(out) == 0 {
		if s.Method == "" {
			return ""
		}
		return "Found by: " + s.Method + "."
	}
	return "Evidence: " + strings.Join(out, "; ") + "."
}

// residuals says how well the points lie on the fitted outline.
func residuals(u units, h plan.Hole) string {
	if len(h.Residuals) == 0 {
		return ""
	}
	unit, places, k := "µm", 0, 1000.0
	if u == "in" {
		unit, places, k = "thou", 1, 1000/25.4
	}
	fine := func(format string, mm float64) string {
		f := math.Round(mm*k*10) / 10
		if places == 0 {
			f = math.Round(mm * k)
		}
		if f == 0 {
			return "0"
		}
		return fmt.Sprintf(format, places, f)
	}
	out := map[int]bool{}
	for _, i := range h.LeftOut {
		out[i] = true
	}
	var each []string
	worst, sum, n := 0.0, 0.0, 0
	for i, r := range h.Residuals {
		each = append(each, fmt.Sprintf("%d: ", i+1)+fine("%+.*f", r))
		if out[i] {
			each[i] += " left out"
			continue
		}
		worst = max(worst, math.Abs(r))
		sum += r * r
		n++
	}
	s := ""
	if n > 0 {
		s = "Points lie within " + fine("%.*f", worst) + " " + unit + " of the fitted outline, " + fine("%.*f", math.Sqrt(sum/float64(n))) + " " + unit + " rms. "
	}
	if len(each) <= 24 {
		s += "Each, " + unit + ": " + strings.Join(each, ", ") + "."
	}
	return s
}

// noMinus takes the sign from what is printed as nothing.
func noMinus(deg float64) float64 {
	if math.Abs(deg) < 0.005 {
		return 0
	}
	return deg
}

// sidePlay is one figure where both ends of it print alike.
func sidePlay(u units, r *plan.MMRange) []string {
	if r.Min.Given() && r.Min.Equal(r.Max) {
		return u.lines(say.Size(r.Min, 3))
	}
	return u.limits(r)
}

// truckLines compares the truck as found with the truck after the job.
func truckLines(p *paper, pl *plan.Plan) {
	var list []field
	both := func(name string, f plan.FoundAfterMM) {
		a, b := p.u.len(f.Found), p.u.len(f.After)
		if a != "" && b != "" {
			list = append(list, field{name: name + ", found; after", lines: []string{a + ";  " + b}})
		}
	}
	both("wheelbase", pl.Truck.WheelbaseMM)
	both("rock on four wheels", pl.Truck.RockMM)
	for _, s := range pl.Shafts {
		if s.SkewDeg.Found != nil && s.SkewDeg.After != nil {
			list = append(list, field{name: "lean of " + s.Shaft + ", found; after",
				lines: []string{fmt.Sprintf("%.2f°;  %.2f°", noMinus(*s.SkewDeg.Found), noMinus(*s.SkewDeg.After))}})
		}
		if s.SidePlayMM != nil {
			if l := sidePlay(p.u, s.SidePlayMM); len(l) > 0 {
				list = append(list, field{name: "side play of " + s.Shaft, lines: l})
			}
		}
	}
	if len(list) == 0 {
		return
	}
	cols := 3
	if p.st.large || p.u == "both" {
		cols = 1
	}
	for len(list) > 0 {
		n := min(cols, len(list))
		b := p.block()
		b.y = b.fields(0, 0, b.Width, cols, list[:n])
		p.tight(b)
		list = list[n:]
	}
}
