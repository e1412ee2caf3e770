package sheets

import (
	"strings"

	"rebush/plan"
	looked "rebush/plan/survey"
	"rebush/sheets/draw"
)

// foundRows says of each hole how worn it is, and of each mesh how it stands.
func foundRows(p *paper, pl *plan.Plan) {
	if len(pl.Survey) == 0 {
		return
	}
	p.follow("What was found", "found")
	head := p.block()
	head.foundRow([4]string{"hole", "worn", "play now, on diameter", "old middle to"}, draw.Regular, p.st.small)
	p.glue(head)
	for _, s := range pl.Survey {
		b := p.block()
		known := ""
		if s.CentreUMM.Given() {
			known = p.u.len(s.CentreUMM)
		}
		b.foundRow([4]string{s.Bore, wornWords(p.u, s), p.u.len(s.PlayMM), known}, draw.Bold, p.st.body)
		b.Line(0, b.y, b.Width, b.y, 0.15)
		p.tight(b)
	}
	var rest []string
	for _, m := range pl.Mesh {
		if m.Words != "" {
			rest = append(rest, ended("Gear "+m.Gear+": "+m.Words.String()))
		}
	}
	for _, s := range pl.Shafts {
		if l := sidePlay(p.u, orLimits(s.SidePlayMM)); len(l) > 0 {
			rest = append(rest, "Side play of "+s.Shaft+": "+strings.Join(l, ", ")+".")
		}
	}
	if len(rest) > 0 {
		b := p.block()
		b.para(strings.Join(rest, " "), draw.Regular, b.st.body)
		p.add(b)
	}
}

// orLimits are limits, empty ones where there are none.
func orLimits(r *plan.MMRange) *plan.MMRange {
	if r == nil {
		return &plan.MMRange{}
	}
	return r
}

// foundRow writes one hole into the columns of the table; in large type into
// two rows.
func (b *block) foundRow(cells [4]string, first draw.Face, pt float64) {
	at := [4]float64{0, 0.28, 0.60, 0.82}
	half := [4]float64{0, 0.5, 0, 0.5}
	y, low := b.y+0.6, b.y
	for i, c := range cells {
		x, end := at[i], 1.0
		if i < 3 {
			end = at[i+1]
		}
		if b.st.large {
			x, end = half[i], half[i]+0.5
			if i == 2 {
				y = low + 0.8
			}
		}
		face := draw.Regular
		if i == 0 {
			face = first
		}
		low = max(low, b.write(x*b.Width, y, (end-x)*b.Width-2, c, face, pt))
	}
	b.y = low + 1
	b.Reach(b.y)
}

// wornWords is how far a hole is worn, and which way.
func wornWords(u units, s plan.SurveyedBore) string {
	wear := u.len(s.WearMM)
	switch {
	case wear == "":
		return "not known"
	case s.WearMM.Float() <= 0:
		return "not to one side"
	case s.WearDeg != nil:
		return wear + " " + looked.Towards(*s.WearDeg).String()
	}
	return wear
}
