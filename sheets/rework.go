package sheets

import (
	"fmt"
	"math"
	"strings"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/inspect"
	"rebush/sheets/draw"
)

// Rework makes the sheet of sizes as made against the plan: what is right,
// what is not, and the ways on from each that is not. Where the plan is that of
// the truck as it now is, the operations that remain follow, whole.
func Rework(pl *plan.Plan, o Options) (*draw.Document, error) {
	p, err := newPaper(o, pl.Job, "Rework sheet")
	if err != nil {
		return nil, err
	}
	pl = say.Printed(pl, p.u.said())
	p.of(pl)
	p.marked(pl)
	p.section = "Rework sheet"
	p.page()
	b := p.block()
	b.Bookmark("Rework sheet", 0, 0)
	jobHead(b, p, pl, "Rework sheet")
	p.add(b)
	b = p.block()
	b.boxed(0.8, 4, func(in *block) {
		in.para(reworkLine(pl.Inspect), draw.Bold, in.st.body+2)
		if remains(pl) {
			in.para("What remains to be done, from the truck as it now is, follows in "+count(len(pl.Operations), "operation")+
				": the first planned way at each bore.", draw.Regular, in.st.body)
		} else if s := restWords(pl); s != "" {
			in.para(s, draw.Regular, in.st.body)
		}
		in.para(replacesWords(pl), draw.Regular, in.st.body)
		in.y -= 1.5
	})
	p.add(b)
	for _, in := range pl.Inspect {
		in := in
		p.fit(func(st style) *block {
			b := p.block()
			b.st = st
			inspected(b, p, in)
			return b
		})
	}
	if remains(pl) {
		p.st = sheetNormal
		if p.large {
			p.st = sheetLarge
		}
		cautions(p, pl)
		before(p, pl)
		cardParts(p, pl, cardsOf(pl))
		proving(p, pl)
		asMadeTable(p, pl)
		wrong(p, pl)
	}
	if pl.Findings.Count("stop") > 0 {
		findings(p, pl)
	}
	return p.finish()
}

// remains says whether there are operations left of a truck as it now is.
func remains(pl *plan.Plan) bool {
	return pl.AsMade && pl.OK && pl.Machines() && len(pl.Operations) > 0
}

// restWords says why no operations follow: what is advised of the truck as it
// now is, and how the operations of another way are had.
func restWords(pl *plan.Plan) string {
	if !pl.AsMade || pl.Verdict == nil || !pl.OK {
		return ""
	}
	s := pl.Verdict.Sentence.String()
	name, least := "", math.Inf(1)
	for _, w := range pl.Ways {
		if w.OK && w.Way.Cuts() && (name == "" || w.Cost != nil && *w.Cost < least) {
			name = strings.ReplaceAll(string(w.Way), " ", "-")
			if w.Cost != nil {
				least = *w.Cost
			}
		}
	}
	if name == "" {
		return s
	}
	return s + " For what would remain to be done all the same, make this sheet with --way " + name + "."
}

func reworkLine(list []plan.Inspection) string {
	if len(list) == 0 {
		return "No size as made was given. Write them into the job file under made."
	}
	n := map[inspect.Result]int{}
	for _, in := range list {
		n[in.Result]++
	}
	s := fmt.Sprintf("%d of %d accepted, %d rejected, %d cannot be told.", n[inspect.Accept], len(list), n[inspect.Reject], n[inspect.CannotTell])
	if n[inspect.Reject] == 0 && n[inspect.CannotTell] == 0 {
		return s + " Go on with the plan."
	}
	return s + " Cut nothing more at those bores before a way on is chosen."
}

func inspected(b *block, p *paper, in plan.Inspection) {
	word := strings.ToUpper(string(in.Result))
	w := b.tag(0, 0, word, b.st.body)
	end := b.write(w+4, 1.2, b.Width-w-4, in.Bore+", "+string(in.What), draw.Bold, b.st.body)
	b.y = max(end, em(b.st.body)+2.4) + 2
	var list []field
	if l := p.u.figure(in.MadeMM); len(l) > 0 {
		list = append(list, field{name: "as made, " + p.u.word(), lines: l, face: draw.Bold, pt: b.st.figure})
	}
	works := p.u.limits(in.LimitsMM)
	if in.LimitsMM == nil {
		works = []string{"nothing, with the others as they are"}
	}
	if len(works) > 0 {
		list = append(list, field{name: "what works", lines: works, face: draw.Bold, pt: b.st.figure, wide: 2})
	}
	if in.GuardUM != nil {
		list = append(list, field{name: "guard of the instrument", lines: []string{number(*in.GuardUM) + " µm"}})
	}
	cols := 4
	if b.st.large {
		cols = 2
	}
	b.y = b.fields(0, b.y, b.Width, cols, list)
	if l := p.u.limits(in.ToolLimitsMM); len(l) > 0 && in.What != inspect.Place {
		b.para("What its tool leaves: "+strings.Join(l, ", ")+".", draw.Regular, b.st.body)
	}
	for _, by := range in.By {
		if by.Decides {
			b.para(judgedBy(p, by), draw.Regular, b.st.body)
		}
	}
	for i, n := range in.Next {
		s := fmt.Sprintf("Way on %d: %s", i+1, n.Do)
		if n.Bush != "" && !strings.Contains(n.Do.String(), n.Bush) {
			s += " (" + n.Bush + ")"
		}
		if n.FirstTimeRight != nil {
			s += "; the job then comes right first time " + percent(*n.FirstTimeRight) + ", an estimate"
		}
		b.ticked(ended(s), draw.Regular)
	}
	if in.Result != inspect.Accept {
		b.blanks(0, b.Width, []blankLine{{"way chosen", "", 1.6}, {"date", "", 1}, {"initials", "", 0.8}})
		b.skip(1.5)
	}
	b.Line(0, b.y, b.Width, b.y, 0.2)
	b.Reach(b.y)
}

// judgedBy says what counts against a place.
func judgedBy(p *paper, by inspect.By) string {
	s := sentence(by.What.String()) + ": " + strings.Join(p.u.figure(by.MadeMM), ", ")
	if l := p.u.limits(by.LimitsMM); len(l) > 0 {
		s += ", wanted " + strings.Join(l, ", ")
	}
	if by.Words != "" {
		s += "; " + by.Words.String()
	}
	return s + "."
}
