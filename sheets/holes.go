package sheets

import (
	"strings"

	"rebush/plan"
	"rebush/sheets/draw"
)

// holesPart shows each worked hole as found, its old centre, where it goes and
// why; what is left alone has a line.
func holesPart(p *paper, pl *plan.Plan) {
	if len(pl.Survey) == 0 {
		return
	}
	p.part("Where the holes are", "survey", false, func() {
		b := p.block()
		legend(b, pl)
		p.glue(b)
		var left []plan.SurveyedBore
		for _, s := range pl.Survey {
			if leftAlone(pl, s.Bore) {
				left = append(left, s)
				continue
			}
			b := p.block()
			holeBlock(b, p, pl, s)
			p.tight(b)
		}
		for i, line := range leftLines(p, left) {
			b := p.block()
			if i == 0 {
				b.y = b.write(0, 0.5, b.Width, "Left as they are: centre, and play on diameter", draw.Bold, b.st.body) + 0.6
			}
			b.y = b.write(0, b.y, b.Width, line, draw.Regular, b.st.small)
			b.Reach(b.y)
			p.tight(b)
		}
		truckLines(p, pl)
		meshBars(p, pl, "holes")
	})
}

// leftLines are the holes that are left alone, those of a shaft on one line.
func leftLines(p *paper, left []plan.SurveyedBore) []string {
	var out []string
	at := map[string]int{}
	for _, s := range left {
		shaft := shaftOf(s.Bore)
		line := strings.TrimPrefix(s.Bore, shaft+".") + " " + strings.Join(p.u.at(s.CentreMM, false), ", ")
		if play := p.u.len(s.PlayMM); play != "" {
			line += ", play " + play
		}
		if s.CentreUMM.Given() {
			line += ", within " + p.u.len(s.CentreUMM)
		}
		if i, ok := at[shaft]; ok && shaft != s.Bore {
			out[i] += "; " + line
			continue
		}
		at[shaft] = len(out)
		out = append(out, shaft+": "+line)
	}
	if len(out) > 0 {
		out[0] += " (known so two times in three)"
	}
	return out
}

// sureWords is how well an old centre is known, in words: a standard uncertainty
// is what two of three are within.
func sureWords(u units, s plan.SurveyedBore) string {
	if !s.CentreUMM.Given() {
		return ""
	}
	return "within " + u.len(s.CentreUMM) + ", two times in three"
}

func holeBlock(b *block, p *paper, pl *plan.Plan, s plan.SurveyedBore) {
	room := 26.0
	if b.st.closer >= closest {
		room = 23
	}
	hole, drawn := pl.Holes[s.Bore]
	list := holeFields(p, pl, s)
	if !drawn {
		b.y = b.write(0, b.y, b.Width, s.Bore, draw.Bold, b.st.body) + 0.8
		b.y = b.fields(0, b.y, b.Width, 2, list)
	} else {
		b.scaled = true
		b.y = 1
		top := b.y
		surveyPictures(b, pl, s, hole, room)
		x := 2*room + 9
		if room < 26 { // its scale is wider than it
			x += 3
		}
		cols := 3
		if b.st.body > 13 || p.u == "both" {
			cols = 2
		}
		top = b.write(x, top-0.5, b.Width-x, s.Bore, draw.Bold, b.st.body) + 0.6
		end := b.fields(x, top, b.Width-x, cols, list) - 1.4
		end = b.write(x, end, b.Width-x, "Old centre from: "+foundBy(p.u, s)+".", draw.Regular, b.st.small)
		b.y = max(b.y, end)
	}
	if !drawn {
		b.y = b.write(0, b.y, b.Width, "Old centre from: "+foundBy(p.u, s)+".", draw.Regular, b.st.small) + 0.5
	}
	if r := residuals(b.u, hole); r != "" {
		b.y = b.write(0, b.y, b.Width, r, draw.Regular, b.st.small) + 0.5
	}
	b.Line(0, b.y, b.Width, b.y, 0.2)
	b.Reach(b.y + 0.4)
}

func holeFields(p *paper, pl *plan.Plan, s plan.SurveyedBore) []field {
	var list []field
	add := func(name string, face draw.Face, lines ...string) {
		var keep []string
		for _, l := range lines {
			if l != "" {
				keep = append(keep, l)
			}
		}
		if len(keep) > 0 {
			list = append(list, field{name: name, lines: keep, face: face, pt: p.st.aside()})
		}
	}
	add("middle as found", draw.Regular, p.u.at(s.FoundMM, false)...)
	add("old centre", draw.Regular, p.u.at(s.CentreMM, false)...)
	for _, t := range pl.Targets {
		if t.Bore == s.Bore && pl.OK {
			add("new centre", draw.Bold, p.u.at(dialled(pl, t), false)...)
			add("move from old centre", draw.Bold, moveOf(p.u, t)...)
		}
	}
	add("worn", draw.Regular, wornWords(p.u, s))
	add("play on diameter", draw.Regular, p.u.len(s.PlayMM))
	return list
}

// foundBy is what an old centre rests on, and how well it is known.
func foundBy(u units, s plan.SurveyedBore) string {
	var by []string
	for _, e := range s.Evidence {
		if e.Used {
			by = append(by, e.What)
		}
	}
	if len(by) == 0 && s.Method != "" {
		by = append(by, s.Method)
	}
	if w := sureWords(u, s); w != "" {
		by = append(by, w)
	}
	return strings.Join(by, "; ")
}
