package sheets

import (
	"fmt"
	"strings"

	"rebush/fits/finding"
	"rebush/plan"
	"rebush/plan/job"
	"rebush/plan/verdict"
	"rebush/sheets/draw"
)

// Where nothing is cut, the sheet is a page or two: what was found, why, what to
// do or to check, when to look again, the ways side by side and what would
// change it. Nothing on it can be cut by.

// errand is what is done where nothing is cut.
type errand struct {
	shout string   // in large letters
	ticks []string // what to do and to check
	blank []blankLine
	again string // when to look again
}

// errands are the words for each way that cuts nothing.
//
// Source: common practice, no source.
func errands(u units) map[verdict.Name]errand {
	look := "After a season in use, or at once where it binds, is noisy or rubs: measure the widest and the narrowest " +
		"of each hole again, and set them beside the figures here."
	return map[verdict.Name]errand{
		verdict.Leave: {"LEAVE IT AS IT IS", []string{"Oil every bearing, and run it both ways.",
			"Keep this page with the truck: its figures are what the next ones are held against."}, nil, look},
		verdict.Shim: {"FIT A WASHER", []string{"The washer goes on the axle, between hub and plate; no hole is touched.",
			"Wheels that came off go back to their gauge; an insulated one is tried with the ohmmeter.",
			"The axle turns freely with the washer in, and runs both ways."},
			[]blankLine{{"side play before", u.one(), 1}, {"after", u.one(), 1}, {"washer", u.one(), 1}}, look},
		verdict.Swap: {"ANOTHER TRUCK", []string{"Look at the other truck before it is paid for: cracks, and a casting that has grown.",
			"Play of each axle in its holes, and backlash of its gears.",
			"Wheels to gauge, rims and hubs tight, insulated wheels open to the axle.",
			"Keep the old truck for spares: nothing of it is cut."},
			[]blankLine{{"most play of the other truck", u.one(), 1.4}, {"looked at on", "", 1}}, ""},
		verdict.MeasureFirst: {"MEASURE FIRST", []string{"Write the figures into the job file, and make the sheet again."}, nil, ""},
		verdict.BuyFirst:     {"BUY FIRST", []string{"Write what is there now into the job or shop file, and make the sheet again."}, nil, ""},
	}
}

// noCut is the whole of such a sheet.
func noCut(p *paper, pl *plan.Plan) {
	what := "What to do"
	e := errands(p.u)[pl.Goes()]
	p.section = what
	p.page()
	b := p.block()
	b.Bookmark(what, 0, 0)
	b.Anchor("cover", 0)
	jobHead(b, p, pl, what)
	p.add(b)
	against(p, pl)
	asMade(p, pl)
	b = p.block()
	b.boxed(0.8, 4, func(in *block) {
		if e.shout != "" {
			in.tag(0, in.y, e.shout, in.st.figure)
			in.y += em(in.st.figure) + 5
		}
		if v := pl.Verdict; v != nil {
			in.para(v.Sentence.String(), draw.Bold, in.st.body+1)
		}
		in.para("Nothing is cut by this sheet.", draw.Regular, in.st.body)
		in.y -= 1
		in.para(sameWord, draw.Regular, in.st.small)
		in.y -= 1.5
	})
	p.add(b)
	needs(p, pl.Verdict)
	lookForBox(p, pl.Safety.LookFor)
	errandBlock(p, e)
	foundRows(p, pl)
	sideBySide(p, pl)
	change(p, pl)
	hurts(p, pl)
	inShort(p, pl)
}

func errandBlock(p *paper, e errand) {
	for i, t := range e.ticks {
		b := p.block()
		b.ticked(t, draw.Regular)
		if i == 0 {
			p.add(b)
		} else {
			p.tight(b)
		}
	}
	if len(e.blank) > 0 {
		b := p.block()
		b.blanks(0, b.Width, e.blank)
		p.add(b)
	}
	if e.again != "" {
		b := p.block()
		b.para("When to look again", draw.Bold, p.st.body)
		b.y -= 1
		b.para(e.again, draw.Regular, p.st.body)
		p.add(b)
	}
}

// needs are what is measured or bought before anything is decided, each with a
// box, a line to write on and what it is expected to be, and the way that would
// be chosen then.
func needs(p *paper, v *plan.Verdict) {
	if v == nil || len(v.Needs) == 0 {
		return
	}
	p.follow("What is needed first", "needs")
	for _, n := range v.Needs {
		b := p.block()
		s := sentence(n.Do.String())
		if n.What != "" {
			s += ": " + n.What.String()
		}
		if n.Cost != nil {
			s += ". Cost: " + cost(*n.Cost, v.Currency)
		}
		b.ticked(ended(s), draw.Regular)
		b.y -= 1
		line := []blankLine{{"done or found", "", 1.4}, {"date", "", 0.8}}
		if n.Expected != nil {
			line[0].name = "expected " + number(*n.Expected) + ", found"
		}
		b.blanks(b.st.tick+3.5, b.Width-b.st.tick-3.5, line)
		p.tight(b)
	}
	b := p.block()
	b.para(thenLine(v), draw.Bold, p.st.body)
	p.add(b)
}

// thenLine is what would be chosen once the needs are met.
func thenLine(v *plan.Verdict) string {
	t := v.Then
	if t == nil {
		return "What is chosen then nobody can tell before."
	}
	s := "If it comes out so: " + t.Way.Owner()
	if t.Cost != nil {
		s += ", about " + cost(*t.Cost, v.Currency) + " all told"
	}
	if t.FirstTimeRight != nil {
		s += ", right first time " + percent(*t.FirstTimeRight) + ", an estimate"
	}
	return s + "."
}

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
	for _, m := range pl.Mesh {
		if m.Words == "" {
			continue
		}
		b := p.block()
		b.para("Gear "+m.Gear+": "+m.Words.String(), draw.Regular, p.st.body)
		p.add(b)
	}
	for _, s := range pl.Shafts {
		if l := sidePlay(p.u, orLimits(s.SidePlayMM)); len(l) > 0 {
			b := p.block()
			b.para("Side play of "+s.Shaft+": "+strings.Join(l, ", ")+".", draw.Regular, p.st.body)
			p.tight(b)
		}
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
		return wear + fmt.Sprintf(" towards %.0f°", *s.WearDeg)
	}
	return wear
}

// change is what would change the verdict: the second and what would make it
// win, and what was tried.
func change(p *paper, pl *plan.Plan) {
	v := pl.Verdict
	if v == nil || v.RunnerUp == nil && len(v.Tried) == 0 {
		return
	}
	p.follow("What would change it", "change")
	if r := v.RunnerUp; r != nil {
		b := p.block()
		b.para(secondLine(r), draw.Regular, p.st.body)
		p.add(b)
	}
	triedList(p, pl)
}

// mostTried is how many changes paper lists; the screen has them all.
const mostTried = 8

// triedList is what was tried, each with what it gives; where the job may be
// machined as it stands, without what would only stop it.
func triedList(p *paper, pl *plan.Plan) {
	n, more := 0, 0
	for _, t := range pl.Verdict.Tried {
		switch {
		case pl.OK && t.OK != nil && !*t.OK:
			continue
		case n == mostTried:
			more++
			continue
		}
		b := p.block()
		if n == 0 {
			b.para("Tried, the whole job planned again with each", draw.Bold, p.st.body)
			b.y -= 1.5
		}
		b.dashed(ended(t.Said(p.currency, pl.OK).String()))
		if n++; n == 1 {
			p.add(b)
		} else {
			p.tight(b)
		}
	}
	if more > 0 {
		b := p.block()
		b.para(fmt.Sprintf("%d more were tried: rebush verdict lists them.", more), draw.Regular, p.st.small)
		p.tight(b)
	}
}

func secondLine(r *plan.RunnerUp) string {
	s := "Second: " + r.Name.Owner() + "."
	if r.WinsIf != "" {
		s += " What would make it win: " + r.WinsIf.String() + "."
	}
	return s
}

// hurts is what can hurt in what is done here.
func hurts(p *paper, pl *plan.Plan) {
	var lines []string
	for _, l := range pl.Safety.Before {
		lines = append(lines, l.Words)
	}
	for _, l := range pl.Safety.PageOne {
		lines = append(lines, l.Words)
	}
	for i, l := range lines {
		b := p.block()
		if i == 0 {
			b.para("Safety", draw.Bold, p.st.body)
			b.y -= 1.5
		}
		b.dashed(l)
		if i == 0 {
			p.add(b)
		} else {
			p.tight(b)
		}
	}
	owned(p, pl.Safety.Owner)
}

// inShort lists the findings a paragraph each, stops and cautions first, notes
// in small type; what is said of several places stands once. Keys that no step
// uses are left to the screen.
func inShort(p *paper, pl *plan.Plan) {
	list := alike(pl.Findings)
	if len(list) > 0 {
		p.follow("Findings", "findings")
	}
	for _, f := range list {
		b := p.block()
		s := string(f.Level)
		if f.Where != "" {
			s += ", " + f.Where
		}
		s = ended(s + ": " + f.Text.String())
		if fix := f.Else(); fix != "" {
			s += ended(" What would change it: " + fix.String())
		}
		if f.Level == finding.Note {
			b.y = b.write(0, 0, b.Width, sentence(s), draw.Regular, p.st.small) + 0.6
			b.Reach(b.y)
		} else {
			b.dashed(s)
		}
		for _, t := range f.Tried {
			b.dashed(ended(t.Said(p.currency, pl.OK).String()))
		}
		p.tight(b)
	}
}

// alike are findings by their level, those that say the same of several places
// put together.
func alike(list finding.List) finding.List {
	var out finding.List
	at := map[string]int{}
	for _, l := range levels {
		for _, f := range list {
			key := string(l) + "\x00" + f.Text.String() + "\x00" + f.Fix.String()
			i, said := at[key]
			switch {
			case f.Level != l || f.Rule == job.KeyNotUsed:
			case said && f.Where != "" && len(f.Tried) == 0:
				out[i].Where += ", " + f.Where
			default:
				at[key], out = len(out), append(out, f)
			}
		}
	}
	return out
}

// cost is money as an owner reads it: whole, with its currency where it has one.
func cost(v float64, currency string) string {
	return strings.TrimSpace(fmt.Sprintf("%.0f %s", v, currency))
}
