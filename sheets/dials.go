package sheets

import (
	"strconv"
	"strings"

	"rebush/plan"
	"rebush/sheets/draw"
)

// coming is how the figures of a clamping are come to.
func coming(p *paper, pl *plan.Plan, c card) string {
	for _, g := range c.groups {
		if _, common := dialCells(p, pl, g); len(common) > 0 && byDials(pl) {
			return strings.Join(common, "; ")
		}
	}
	return ""
}

// dials are what is set for one place: one pair of figures, or one for each
// hole where they differ.
func dials(p *paper, pl *plan.Plan, s spot) (names []string, lines [][]string, approach []string) {
	for _, i := range s.ops {
		op := pl.Operations[i]
		at := op.DialMM
		if at == nil {
			at = op.AtMM
		}
		l := p.u.at(at, false)
		if len(l) == 0 {
			continue
		}
		known := false
		for _, k := range lines {
			known = known || strings.Join(k, "|") == strings.Join(l, "|")
		}
		if !known {
			names, lines = append(names, op.Bore), append(lines, l)
		}
		if len(approach) == 0 && op.Approach != "" {
			approach = parts(op.Approach.String())
		}
	}
	if len(lines) == 1 && len(names) == 1 {
		names[0] = s.shaft
	}
	return names, lines, approach
}

// dialCell is one pair of figures to set.
type dialCell struct {
	name  string
	lines []string
	own   []string
}

// dialCells are the figures of a group, and what is said of coming to all of
// them.
func dialCells(p *paper, pl *plan.Plan, g group) (cells []dialCell, common []string) {
	for k, s := range g.places {
		names, lines, approach := dials(p, pl, s)
		var own []string
		for _, a := range approach {
			if strings.HasPrefix(a, "MIRRORED") {
				own = append(own, strings.TrimPrefix(a, "MIRRORED, "))
			} else if k == 0 {
				common = append(common, a)
			}
		}
		for i := range lines {
			name := names[i]
			if len(g.places) > 1 {
				name = strconv.Itoa(k+1) + "  " + name
			}
			cells = append(cells, dialCell{name, lines[i], own})
		}
	}
	return cells, common
}

// dialBoxes are the figures to set, once and large, so many across.
func dialBoxes(b *block, p *paper, pl *plan.Plan, cells []dialCell, across int) {
	pt, what := b.st.big*1.4, "dials, "+p.u.word()
	if !byDials(pl) {
		pt, what = b.st.body, "held by the jig, "+p.u.word()
	}
	w := (b.Width - 3*float64(across-1)) / float64(across)
	for i := 0; i < len(cells); i += across {
		row := cells[i:min(i+across, len(cells))]
		low := b.y
		for k, c := range row {
			x := float64(k) * (w + 3)
			lines := c.lines
			if len(cells) == 1 && len(lines) == 1 && w < 0.5*p.width() && byDials(pl) {
				// one above the other, as large as they go
				lines = strings.SplitN(strings.Replace(lines[0], "   y ", "|y ", 1), "|", 2)
			}
			y := b.write(x+2, b.y+1, w-4, strings.Join(append([]string{b.bench.say(c.name) + ", " + what}, c.own...),
				"; "), draw.Bold, b.st.small) + 0.8
			for _, l := range lines {
				size := pt
				for size > b.st.body && draw.Width(l, draw.Bold, size) > w-4 {
					size -= 0.5
				}
				y = b.write(x+2, y, w-4, l, draw.Bold, size) + 0.8
			}
			low = max(low, y+0.4)
		}
		for k := range row {
			b.Rect(float64(k)*(w+3)+0.4, b.y+0.4, w-0.8, low-b.y-0.8, 0.8)
		}
		b.y = low + 0.6
	}
	b.Reach(b.y)
}

// dialWords is the order in which the places of a group are worked; nil where
// there is but one.
func dialWords(p *paper, pl *plan.Plan, g group) *block {
	b := p.block()
	if n := len(g.places); n > 1 {
		var names []string
		for _, s := range g.places {
			names = append(names, s.shaft)
		}
		words := "First all rows at " + strings.Join(names, ", then all rows at ") + ": the numbers are the order."
		b.y = b.write(0, b.y, b.Width, words, draw.Bold, b.st.aside()+0.5) + 0.5
	}
	if b.y == 0 {
		return nil
	}
	b.Reach(b.y)
	return b
}

// againBlock heads a card that goes on on another page, with its dials.
func againBlock(p *paper, pl *plan.Plan, c card, title string) *block {
	b := p.block()
	s := title + ", continued."
	for _, g := range c.groups {
		for _, sp := range g.places {
			names, lines, _ := dials(p, pl, sp)
			for i := range lines {
				if byDials(pl) {
					s += "  " + b.bench.say(names[i]) + ": " + strings.Join(lines[i], ", ") + "."
				}
			}
		}
	}
	b.y = b.write(0, 0, b.Width, s, draw.Bold, b.st.aside()) + 0.6
	b.Line(0, b.y, b.Width, b.y, draw.Wide)
	b.y += 0.4
	b.Reach(b.y)
	return b
}
