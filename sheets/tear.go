package sheets

import (
	"slices"
	"strconv"
	"strings"

	"rebush/plan"
	"rebush/plan/route"
)

// rows adds the rows of a group of a clamping. The cut that brings a seat to size
// stands on one page with the row that gauges it, where a page holds both: a card
// that is torn is not torn between them, unless the sheet would have too many pages.
func (p *paper) rows(pl *plan.Plan, c card, k int, h held) {
	list := c.groups[k].rows
	if k > 0 && gauges(pl, c.groups[k]) {
		list = list[1:] // it stands with the cut before it
	}
	for i, r := range list {
		if i < len(list)-1 || k+1 == len(c.groups) || !gauges(pl, c.groups[k+1]) {
			p.row(pl, c, r, h)
			continue
		}
		gauge := c.groups[k+1].rows[0]
		cut, then := shorterRow(p, pl, c, r, h, p.st), shorterRow(p, pl, c, gauge, h, p.st)
		if p.how.apart || cut.y+then.y > p.height()/2 {
			p.row(pl, c, r, h)
			p.row(pl, c, gauge, h)
			continue
		}
		both := p.block()
		both.absorb(cut, 0, 0)
		both.absorb(then, 0, cut.y+0.8)
		both.y, both.ops = cut.y+0.8+then.y, append(cut.ops, then.ops...)
		both.Reach(both.y)
		p.tight(both)
	}
}

// gauges says whether a group begins with the gauging of what was cut before it.
func gauges(pl *plan.Plan, g group) bool {
	return len(g.places) == 0 && len(g.rows) > 0 && pl.Operations[g.rows[0].ops[0]].Kind == route.KindGauge
}

// tear counts a card that goes on overleaf.
func (p *paper) tear() {
	p.torn++
	p.tornOn = p.doc.Pages() - 1
	p.overleaf[p.tornOn] = nil
}

// after keeps the parts of a page, and the operations that stand after a tear.
func (p *paper) after(b *block) {
	if b.part != "" {
		p.parts[p.doc.Pages()] = append(p.parts[p.doc.Pages()], b.part)
	}
	if p.tornOn > 0 {
		p.overleaf[p.tornOn] = append(p.overleaf[p.tornOn], b.ops...)
	}
}

// stays is what stands at the foot of a page on which a card is torn: that nothing
// is unclamped yet, and what comes overleaf.
func (p *paper) stays(page int) (string, bool) {
	list, torn := p.overleaf[page]
	if !torn {
		return "", false
	}
	list = slices.Clone(list)
	slices.Sort(list)
	var s []string
	for _, n := range list {
		s = append(s, strconv.Itoa(n))
	}
	switch n := len(s); {
	case n == 0:
		return "Clamps stay on: see overleaf", true
	case n > 3:
		return "Clamps stay on: overleaf " + s[0] + " to " + s[n-1], true
	}
	return "Clamps stay on: overleaf " + strings.Join(s, ", "), true
}
