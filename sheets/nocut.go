package sheets

import (
	"fmt"
	"strings"

	"rebush/fits/finding"
	"rebush/plan"
	"rebush/sheets/draw"
)

// noCut is the sheet of a way that cuts nothing, a page or two: what was found,
// why, what to do or to check, when to look again, the ways side by side and
// what would change it. Nothing on it can be cut by.
func noCut(p *paper, pl *plan.Plan) {
	what := "What to do"
	e := errands(p.u)[pl.Goes()]
	p.section = what
	p.page()
	headed(p, pl, what)
	b := p.block()
	b.boxed(0.8, 4, func(in *block) {
		if e.shout != "" {
			in.tag(0, in.y, e.shout, in.st.figure)
			in.y += em(in.st.figure) + 5
		}
		if v := pl.Verdict; v != nil && p.reason == "" { // else it speaks of the way that is advised
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
	list := alike(pl.Findings, p.bench)
	if len(list) > 0 {
		p.follow("Findings", "findings")
	}
	left := 0
	for _, f := range list {
		if f.Level == finding.Stop && p.stopsSaid {
			continue
		}
		if f.Level == finding.Note && p.stop && p.how.step == lastStep {
			left++ // nothing is done by it on a sheet that says why not
			continue
		}
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
			b.st.body = b.st.aside()
			b.dashed(s)
		}
		for _, t := range f.Tried {
			b.dashed(ended(t.Said(p.currency, pl.OK).String()))
		}
		p.tight(b)
	}
	if left > 0 {
		b := p.block()
		b.y = b.write(0, 0, b.Width, "Not printed for want of room: "+count(left, "note")+
			" that no cut depends on; rebush plan lists them.", draw.Regular, p.st.small)
		b.Reach(b.y)
		p.tight(b)
	}
}

// cost is money as an owner reads it: whole, with its currency where it has one.
func cost(v float64, currency string) string {
	return strings.TrimSpace(fmt.Sprintf("%.0f %s", v, currency))
}
