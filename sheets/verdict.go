package sheets

import (
	"fmt"
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
	p.stop = !pl.OK
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
	b = p.block()
	b.boxed(0.8, 4, func(in *block) {
		in.para(v.Sentence.String(), draw.Bold, in.st.body+2)
		if v.RunnerUp != nil {
			s := "Second: " + v.RunnerUp.Name.Owner() + "."
			if v.RunnerUp.WinsIf != "" {
				s += " What would make it win: " + v.RunnerUp.WinsIf.String() + "."
			}
			in.para(s, draw.Regular, in.st.body)
		}
		in.para(chanceLine(pl.Chance), draw.Regular, in.st.body)
		in.y -= 1.5
	})
	p.add(b)
	lookForBox(p, pl.Safety.LookFor)
	options(p, v)
	if pl.Findings.Count("stop") > 0 {
		b = p.block()
		b.para("What stands in the way of the work, and what would change that, is on the first page of the setup sheet.", draw.Regular, p.st.body)
		p.add(b)
	}
	owned(p, pl.Safety.Owner)
	b = p.block()
	b.skip(1)
	b.para("Agreed with the owner", draw.Bold, p.st.body)
	b.blanks(0, b.Width, []blankLine{{"choice", "", 1.6}, {"date", "", 1}, {"signed", "", 1.6}})
	b.y = b.write(0, b.y+1, b.Width, sameWord, draw.Regular, p.st.small)
	b.Reach(b.y)
	p.add(b)
	// What the owner signs stands above what only explains it, so that it is on
	// the page that he reads.
	ways(p, v)
	better(p, pl.Chance)
	return p.finish()
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

// options is a row for each way, with its reasons below it.
func options(p *paper, v *plan.Verdict) {
	p.follow("The choices side by side", "options")
	for _, feasible := range []bool{true, false} {
		for _, opt := range v.Options {
			if opt.Feasible != feasible {
				continue
			}
			b := p.block()
			optionRow(b, v, opt)
			p.tight(b)
		}
	}
}

func optionRow(b *block, v *plan.Verdict, opt plan.Option) {
	name := sentence(opt.Name.Owner())
	if !opt.Feasible {
		why := "no"
		if opt.WhyNot != "" {
			why = "no, " + opt.WhyNot.String()
		}
		b.y = b.write(0, 0.4, b.Width, name+": "+why, draw.Regular, b.st.body) + 1
		b.Line(0, b.y, b.Width, b.y, 0.15)
		b.Reach(b.y + 0.4)
		return
	}
	face := draw.Regular
	if opt.Name == v.Choice {
		name, face = "› "+name, draw.Bold
	}
	cols := 6
	if b.st.large {
		cols = 3
	}
	list := []field{{name: "way", lines: []string{name}, face: face, wide: 3}}
	add := func(title string, f *float64, s func(float64) string) {
		line := "not known"
		if f != nil {
			line = s(*f)
		}
		list = append(list, field{name: title, lines: []string{line}, face: face})
	}
	add("cost, all told", opt.Cost, func(f float64) string { return strings.TrimSpace(fmt.Sprintf("%.0f %s", f, v.Currency)) })
	add("hours", opt.Hours, func(f float64) string { return fmt.Sprintf("%.1f", f) })
	add("comes right", opt.Chance, percent)
	b.y = b.fields(0, 0.4, b.Width, cols, list) - 1
	var more []string
	if len(opt.Keeps) > 0 {
		more = append(more, "Keeps "+say.Join(", ", opt.Keeps...).String())
	}
	if len(opt.Loses) > 0 {
		more = append(more, "loses "+say.Join(", ", opt.Loses...).String())
	}
	if len(more) > 0 {
		b.y = b.write(0, b.y, b.Width, sentence(strings.Join(more, "; "))+".", draw.Regular, b.st.body) + 1
	}
	b.Line(0, b.y, b.Width, b.y, 0.15)
	b.Reach(b.y + 0.4)
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
