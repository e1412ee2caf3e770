package sheets

import (
	"rebush/plan"
	"rebush/sheets/draw"
)

// marked sets what stands in every head: that nothing may be machined, or that
// this way is not the advised one, and why.
func (p *paper) marked(pl *plan.Plan) {
	p.stop = !pl.OK
	switch {
	case p.stop:
		p.shout = "DO NOT MACHINE"
	case pl.NotAdvised != "":
		p.shout, p.reason = "NOT ADVISED", sentence(oneLine(pl.NotAdvised.String()))
	}
}

// against stands on page one of a way that the verdict does not advise: why, and
// a line for who wants it all the same.
func against(p *paper, pl *plan.Plan) {
	if p.reason == "" {
		return
	}
	b := p.block()
	b.boxed(1.6, 4, func(in *block) {
		in.tag(0, in.y, "NOT ADVISED", in.st.figure)
		in.y += em(in.st.figure) + 5
		in.para(p.reason, draw.Bold, in.st.body)
		words := "This sheet is of another way"
		if pl.Way != "" {
			words += ", " + pl.Way.Owner()
		}
		if pl.Advised != "" {
			words += ". Advised is: " + pl.Advised.Owner()
		}
		in.para(words+".", draw.Regular, in.st.body)
		in.blanks(0, in.Width, []blankLine{{"wanted all the same by", "", 1.8}, {"date", "", 0.8}, {"signed", "", 1.2}})
	})
	p.add(b)
}

// headTall is the height of the head: with a line of its own for why a way is
// not advised.
func (p *paper) headTall() float64 {
	if p.reason == "" {
		return headHeight
	}
	return headHeight + float64(len(p.reasonLines()))*lead(p.reasonPt())
}

func (p *paper) reasonPt() float64 { return min(p.st.small, 11) }

// reasonLines is why a way is not advised, on one line; page one has it whole.
func (p *paper) reasonLines() []string {
	return []string{draw.Cut(p.reason, draw.Bold, p.reasonPt(), p.width())}
}
