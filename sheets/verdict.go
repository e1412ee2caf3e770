package sheets

import (
	"slices"
	"strings"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/verdict"
	"rebush/sheets/draw"
)

// VerdictPage makes the page that sets the ways the job can go side by side,
// for the person who decides.
func VerdictPage(pl *plan.Plan, o Options) (*draw.Document, error) {
	p, err := newPaper(o, pl.Job, "Verdict")
	if err != nil {
		return nil, err
	}
	pl = say.Printed(pl, p.u.said())
	p.of(pl)
	p.marked(pl)
	p.section = "Verdict"
	p.page()
	b := p.block()
	b.Bookmark("Verdict", 0, 0)
	ownerHead(b, p, pl)
	p.add(b)
	v := pl.Verdict
	if v == nil {
		b = p.block()
		b.para("No verdict could be reached. What stands in the way:", draw.Bold, p.st.body)
		p.add(b)
		findings(p, pl)
		return p.finish()
	}
	told, err := plan.ForOwner(pl)
	if err != nil {
		return nil, err
	}
	p.told("What is wrong", told.Wrong)
	b = p.block()
	b.boxed(0.8, 4, func(in *block) {
		in.para(v.Sentence.String(), draw.Bold, in.st.body+1)
		if v.RunnerUp != nil {
			in.para(secondLine(v.RunnerUp), draw.Regular, in.st.body)
		}
		in.para(ownerChance(pl.Chance), draw.Regular, in.st.body)
		in.y -= 1.5
	})
	p.add(b)
	lookForBox(p, pl.Safety.LookFor)
	unchecked(p, pl, told.Unknown)
	needs(p, v)
	agreed, ahead := p.agreed(""), choiceBlocks(p, pl)
	readFirst := ""
	if machined(pl) && len(told.Cautions) > 0 {
		readFirst = "What may come of it stands below: read it before you sign."
	}
	if p.flush(); p.y+tallOf(append(ahead, agreed)) > p.floor() {
		p.add(p.agreed(readFirst)) // what is signed stands on the first page
		agreed = nil
	}
	p.addAll(ahead)
	if pl.Findings.Count("stop") > 0 {
		b = p.block()
		b.para("What stands in the way of the work, and what would change that, is on the first page of the setup sheet.", draw.Regular, p.st.body)
		p.add(b)
	}
	cautions := p.toldBlocks("What may come of it", told.Cautions)
	if agreed != nil {
		if machined(pl) && p.y+tallOf(append(cautions, agreed)) <= p.floor() {
			p.addAll(cautions)
			cautions, readFirst = nil, ""
		}
		p.add(p.agreed(readFirst))
	}
	// What the owner signs stands above what only explains it, so that it is on
	// the page that he reads.
	if machined(pl) {
		p.addAll(cautions)
	}
	owned(p, pl.Safety.Owner)
	ways(p, v)
	others(p, pl)
	triedList(p, pl)
	if len(v.Tried) == 0 {
		better(p, pl.Chance)
	}
	return p.finish()
}

// agreed are the lines that the owner signs on, under what is to be read first.
func (p *paper) agreed(first string) *block {
	b := p.block()
	b.para("Agreed with the owner", draw.Bold, p.st.body)
	if first != "" {
		b.y -= 1.5
		b.para(first, draw.Regular, p.st.body)
		b.y -= 1.5
	}
	b.blanks(0, b.Width, []blankLine{{"choice", "", 1.6}, {"date", "", 1}, {"signed", "", 1.6}})
	b.y = b.write(0, b.y+1, b.Width, sameWord, draw.Regular, p.st.small)
	b.Reach(b.y)
	return b
}

// told places a heading and what an owner is told under it, a line each.
func (p *paper) told(title string, lines []say.Text) { p.addAll(p.toldBlocks(title, lines)) }

func (p *paper) toldBlocks(title string, lines []say.Text) []*block {
	var out []*block
	for i, l := range lines {
		b := p.block()
		if i == 0 {
			b.para(title, draw.Bold, p.st.body)
			b.y -= 1.5
		}
		b.dashed(l.In(p.u.said()))
		out = append(out, b)
	}
	return out
}

// addAll places blocks, all but the first close to the one above.
func (p *paper) addAll(list []*block) {
	for i, b := range list {
		if i == 0 {
			p.add(b)
		} else {
			p.tight(b)
		}
	}
}

// tallOf is the height that blocks need, placed by addAll.
func tallOf(list []*block) float64 {
	h := 0.0
	for _, b := range list {
		h += max(b.Board.Height, b.y) + 0.8
	}
	return h + 2*gap
}

// ownerChance says in words what the chance of a job means for an owner.
func ownerChance(c *plan.Chance) string {
	if c == nil {
		return ""
	}
	return "Of such jobs " + percent(c.FirstTimeRight) + " come right at once, " + percent(c.Saved) +
		" after more work or with another bearing, and " + percent(c.Lost) + " end in a lost part. An estimate, not a promise."
}

// ownerHead is the head of a page for the owner: no word of machines.
func ownerHead(b *block, p *paper, pl *plan.Plan) {
	number := p.number
	if number == "" {
		number = "Job without a number"
	}
	const what = "For the owner: what we advise"
	b.y = b.write(0, b.y, b.Width, what, draw.Bold, b.st.title) + 2
	s := number
	if p.title != "" {
		s += ". " + p.title
	}
	if j := pl.Job; j != nil && j.Chassis.Condition != "" {
		s += ". Condition of the casting or plates: " + j.Chassis.Condition
	}
	b.y = b.write(0, b.y, b.Width, s+". Date: "+dayOr(p.day), draw.Regular, b.st.body) + 2
	b.Reach(b.y)
}

// unchecked is what the verdict rests on and nobody has looked at, or what is
// mended first, each with a box; and what else is not known.
func unchecked(p *paper, pl *plan.Plan, unknown []say.Text) {
	var list []*block
	add := func(write func(b *block)) {
		b := p.block()
		if len(list) == 0 {
			b.para("Still to be found out", draw.Bold, p.st.body)
			b.y -= 1.5
		}
		write(b)
		list = append(list, b)
	}
	for _, f := range pl.Findings {
		words := sentence(f.Text.String())
		if f.Fix != "" {
			words += ": " + f.Fix.String()
		}
		switch f.Rule {
		case verdict.RuleMendFirst:
			b := p.block()
			b.ticked(ended(words), draw.Bold)
			p.tight(b)
		case verdict.RuleLookAlikes:
			add(func(b *block) { b.ticked(ended(words), draw.Bold) })
			unknown = slices.DeleteFunc(slices.Clone(unknown), func(t say.Text) bool {
				return strings.EqualFold(strings.TrimSuffix(t.String(), "."), f.Text.String())
			})
		}
	}
	for _, t := range unknown {
		add(func(b *block) { b.dashed(t.In(p.u.said())) })
	}
	p.addAll(list)
}

// ways says how each bore goes under the choice, those that go one way
// together.
func ways(p *paper, v *plan.Verdict) {
	bores := map[verdict.Name][]string{}
	var order []verdict.Name
	for _, w := range v.Bores {
		if bores[w.Way] == nil {
			order = append(order, w.Way)
		}
		bores[w.Way] = append(bores[w.Way], w.Bore)
	}
	if len(order) == 0 {
		return
	}
	b := p.block()
	b.para("Hole by hole", draw.Bold, p.st.body)
	b.y -= 1.5
	for _, w := range order {
		b.y = b.write(0, b.y, b.Width, sentence(w.Owner())+": "+strings.Join(bores[w], ", ")+".", draw.Regular, p.st.body) + 1
	}
	b.Reach(b.y)
	p.add(b)
}

// better lists what would make the job likelier to come right, most first.
// gains are the improvements that show in the figures as they are printed.
func gains(c *plan.Chance) []plan.Improve {
	var out []plan.Improve
	for _, m := range c.Improve {
		if m.FirstTimeRight > c.FirstTimeRight && percent(m.FirstTimeRight) != percent(c.FirstTimeRight) {
			out = append(out, m)
		}
	}
	return out
}

func better(p *paper, c *plan.Chance) {
	if c == nil {
		return
	}
	for i, m := range gains(c) {
		b := p.block()
		if i == 0 {
			b.para("What would make it likelier to come right", draw.Bold, p.st.body)
			b.y -= 1.5
		}
		b.y = b.write(0, b.y, b.Width, sentence(m.Change.String())+": "+percent(m.FirstTimeRight)+" in place of "+percent(c.FirstTimeRight)+".", draw.Regular, p.st.body)
		b.Reach(b.y)
		if i == 0 {
			p.add(b)
		} else {
			p.tight(b)
		}
	}
}
