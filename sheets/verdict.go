package sheets

import (
	"fmt"
	"strings"

	"rebush/plan"
	"rebush/sheets/draw"
)

// VerdictPage makes the page that sets the ways the job can go side by side,
// for the person who decides.
func VerdictPage(pl *plan.Plan, o Options) (*draw.Document, error) {
	p, err := newPaper(o, pl.Job, "Verdict")
	if err != nil {
		return nil, err
	}
	p.of(pl)
	p.stop = !pl.OK
	p.section = "Verdict"
	p.page()
	b := p.block()
	b.Bookmark("Verdict", 0, 0)
	jobHead(b, p, pl, "Verdict")
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
		in.para(v.Sentence, draw.Bold, in.st.body+2)
		if v.RunnerUp != nil {
			s := "Second: " + v.RunnerUp.Name + "."
			if v.RunnerUp.WinsIf != "" {
				s += " What would make it win: " + strings.TrimRight(v.RunnerUp.WinsIf, ".") + "."
			}
			in.para(s, draw.Regular, in.st.body)
		}
		in.para(chanceLine(pl.Chance), draw.Regular, in.st.body)
		in.y -= 1.5
	})
	p.add(b)
	options(p, v)
	ways(p, v)
	better(p, pl.Chance)
	if pl.Findings.Count("stop")+pl.Findings.Count("caution") > 0 {
		findings(p, pl)
	}
	b = p.block()
	b.skip(2)
	b.para("Agreed with the owner", draw.Bold, p.st.body)
	b.blanks(0, b.Width, []blankLine{{"choice", "", 1.6}, {"date", "", 1}, {"signed", "", 1.6}})
	p.add(b)
	b = p.block()
	b.para(sameWord, draw.Regular, p.st.small)
	p.tight(b)
	return p.finish()
}

// options is a row for each way, with its reasons below it.
func options(p *paper, v *plan.Verdict) {
	p.follow("The ways it can go", "options")
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
	name := opt.Name
	face := draw.Regular
	if opt.Name == v.Choice {
		name = "› " + name
		face = draw.Bold
	}
	cols := 4
	if b.st.large {
		cols = 2
	}
	if !opt.Feasible {
		b.y = b.fields(0, 0.6, b.Width, cols, []field{
			{lines: []string{name}}, {lines: []string{"no: " + opt.WhyNot}, wide: 3}}) - 1
	} else {
		list := []field{{name: "way", lines: []string{name}, face: face}}
		add := func(title string, f *float64, s func(float64) string) {
			line := "not known"
			if f != nil {
				line = s(*f)
			}
			list = append(list, field{name: title, lines: []string{line}, face: face})
		}
		add("cost as expected", opt.Cost, func(f float64) string { return strings.TrimSpace(fmt.Sprintf("%.0f %s", f, v.Currency)) })
		add("hours", opt.Hours, func(f float64) string { return fmt.Sprintf("%.1f", f) })
		add("comes right", opt.Chance, percent)
		b.y = b.fields(0, 0.6, b.Width, cols, list)
		if len(opt.Keeps) > 0 {
			b.para("keeps: "+strings.Join(opt.Keeps, "; "), draw.Regular, b.st.body)
		}
		if len(opt.Loses) > 0 {
			b.para("loses: "+strings.Join(opt.Loses, "; "), draw.Regular, b.st.body)
		}
	}
	b.Line(0, b.y, b.Width, b.y, 0.15)
	b.Reach(b.y + 0.6)
}

// ways says how each bore goes under the choice.
func ways(p *paper, v *plan.Verdict) {
	if len(v.Bores) == 0 {
		return
	}
	p.follow("Bore by bore", "ways")
	for _, w := range v.Bores {
		b := p.block()
		b.y = b.fields(0, 0.4, b.Width, 2, []field{{lines: []string{w.Bore}, face: draw.Bold}, {lines: []string{w.Way}}}) - 1.4
		b.Line(0, b.y, b.Width, b.y, 0.15)
		b.Reach(b.y + 0.6)
		p.tight(b)
	}
}

// better lists what would make the job likelier to come right, most first.
func better(p *paper, c *plan.Chance) {
	if c == nil || len(c.Improve) == 0 {
		return
	}
	p.follow("What would make it likelier to come right", "better")
	for _, m := range c.Improve {
		b := p.block()
		b.para(m.Change+": "+percent(m.FirstTimeRight)+" in place of "+percent(c.FirstTimeRight)+".", draw.Regular, p.st.body)
		p.tight(b)
	}
}
