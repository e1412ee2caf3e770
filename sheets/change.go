package sheets

import (
	"fmt"
	"strings"

	"rebush/plan"
	"rebush/sheets/draw"
)

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
		b.st.body = b.st.aside()
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
		wins := strings.TrimSuffix(r.WinsIf.String(), ", "+string(r.Name))
		s += " What would make it win: " + wins + "."
	}
	return s
}
