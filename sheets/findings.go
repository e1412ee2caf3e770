package sheets

import (
	"fmt"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan"
	"rebush/sheets/draw"
)

var levels = []finding.Level{finding.Stop, finding.Caution, finding.Note}

// findings lists what the plan says about itself, stops first.
func findings(p *paper, pl *plan.Plan) {
	p.follow("Findings", "findings")
	if len(pl.Findings) == 0 {
		b := p.block()
		b.para("None: no stop, no caution, no note.", draw.Regular, p.st.body)
		p.add(b)
		return
	}
	if p.stopsSaid {
		b := p.block()
		b.para("What stops the job stands on page 1.", draw.Regular, p.st.body)
		p.glue(b)
	}
	for _, l := range levels {
		for _, f := range pl.Findings {
			if f.Level == l && !(p.stopsSaid && l == finding.Stop) {
				fitFinding(p, f)
			}
		}
	}
}

// stops stands on the cover of a sheet that must not be followed.
func stops(p *paper, pl *plan.Plan) {
	b := p.block()
	b.para("What is wrong, and what would change it", draw.Bold, p.st.figure)
	p.glue(b)
	n, said := 0, map[string]bool{}
	for _, f := range pl.Findings {
		if f.Level != finding.Stop {
			continue
		}
		n++
		p.stopsSaid = true
		if p.how.closer() { // a cure of several stops stands at the first of them
			tried := f.Tried
			f.Tried = nil
			for _, t := range tried {
				if s := t.Said(p.currency, false).String(); !said[s] {
					said[s] = true
					f.Tried = append(f.Tried, t)
				}
			}
		}
		fitFinding(p, f)
	}
	if n == 0 {
		b := p.block()
		b.para("No single stop is named: the plan could not be made as far as a cut. See the findings.", draw.Regular, p.st.body)
		p.add(b)
	}
}

// fitFinding adds a finding where there is room for it.
func fitFinding(p *paper, f finding.Finding) {
	build := func(st style) *block {
		b := p.block()
		b.st, b.currency, b.already = st, p.currency, !p.stop
		findingBlock(b, f)
		return b
	}
	if b := build(p.st); p.st.close() && b.y <= p.height() {
		p.tight(b)
		return
	}
	p.fit(build)
}

func findingBlock(b *block, f finding.Finding) {
	word := strings.ToUpper(string(f.Level))
	pt := b.st.small
	x := 0.0
	if f.Level == finding.Note {
		b.As(draw.Ground, func() { b.Rect(0.2, b.y+0.2, draw.Width(word, draw.Bold, pt)+4, em(pt)+2, 0.3) })
		b.Text(2.2, b.y+1.2+draw.Rise*pt*draw.MMPerPt, b.Width, word, draw.Bold, pt)
		x = draw.Width(word, draw.Bold, pt) + 8
	} else {
		x = b.tag(0, b.y, word, pt) + 4
	}
	head := headOf(f.Rule)
	if f.Where != "" {
		head += ", " + f.Where
	}
	if s := haveWant(b.u, f); s != "" {
		head += ": " + s
	}
	end := b.write(x, b.y+1.2, b.Width-x, head, draw.Bold, b.st.body)
	b.y = max(end, b.y+em(pt)+2.4) + 1
	fix := f.Else().String()
	if f.File != "" && f.Line > 0 {
		at := fmt.Sprintf("%s, line %d", base(f.File), f.Line)
		if fix != "" {
			fix += " (" + at + ")"
		} else {
			fix = at
		}
	}
	text := sentence(f.Text.String())
	if f.Else() != "" {
		fix = "What would change it: " + fix
	}
	if b.st.close() {
		text, fix = ended(text)+" "+fix, ""
	}
	b.y = b.write(0, b.y, b.Width, text, draw.Regular, b.st.body) + 0.8
	b.para(fix, draw.Regular, b.st.body)
	for i, t := range f.Tried {
		if i == 0 && !b.st.close() {
			b.para("What would change it, each tried:", draw.Regular, b.st.body)
			b.y -= 1.2
		}
		b.dashed(t.Said(b.currency, b.already).String() + ".")
	}
	b.Reach(b.y)
}

// heads are the headings of those findings whose rule, a name for programs,
// would say nothing at the bench.
var heads = map[finding.Rule]string{
	"target/windows fight": "two meshes want different places",
	"mesh/window empty":    "no place gives this backlash",
	"target/mesh window":   "backlash limits not met",
	"seat/pv":              "pressure times speed",
	"verdict/loss":         "cost of a loss",
}

// headOf is the heading of a finding.
func headOf(r finding.Rule) string {
	if h, ok := heads[r]; ok {
		return h
	}
	return r.Name()
}

// haveWant is what is and what may be, lengths in the units of the paper.
func haveWant(u units, f finding.Finding) string {
	figure := func(v float64) string {
		if f.Unit == "" {
			return number(v)
		}
		return say.Num(v, places(v), f.Unit).Trim().In(u.said())
	}
	var parts []string
	if f.Have != nil {
		parts = append(parts, "is "+figure(*f.Have))
	}
	if f.Want != nil {
		parts = append(parts, "limit "+figure(*f.Want))
	}
	return strings.Join(parts, ", ")
}

// base is the name of a file without its folder, whichever way the folder is
// written: paper names no place of a machine.
func base(name string) string {
	if i := strings.LastIndexAny(name, `/\`); i >= 0 {
		return name[i+1:]
	}
	return name
}
