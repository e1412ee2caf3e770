package sheets

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"rebush/plan"
	"rebush/plan/route"
	"rebush/sheets/draw"
)

// columns are where the parts of a row stand, from the left edge of a block.
type columns struct {
	do, tool, rpm, depth, boxes float64 // left edges
	across                      int     // boxes beside each other
	boxWide                     float64
	spins                       bool // there is a column of the spindle
}

// columnsFor are wide enough for the rows of a group.
func columnsFor(b *block, pl *plan.Plan, g group) columns {
	c := columns{across: 1, boxWide: 22}
	made := false
	for _, r := range g.rows {
		if len(r.ops) > 1 {
			c.across = 2
		}
		for _, i := range r.ops {
			c.spins = c.spins || cutsIn(pl.Operations[i])
			made = made || asMadeIn(pl.Operations[i]) != ""
		}
	}
	if made {
		c.boxWide = 26
	}
	if b.st.body > 13 {
		c.boxWide += 4
	}
	c.boxes = b.Width - float64(c.across)*(c.boxWide+2) + 2
	w := c.boxes - 4
	if c.spins {
		c.tool, c.rpm, c.depth = w*0.40, w*0.68, w*0.84
	} else {
		c.tool, c.rpm, c.depth = w*0.56, w, w
	}
	return c
}

// tableHead names the columns.
func tableHead(b *block, u units, c columns) {
	pt := b.st.small
	cell := func(x, end float64, s string) {
		b.write(x, b.y, end-x-2, s, draw.Regular, pt)
	}
	cell(c.do, c.tool, "do")
	cell(c.tool, c.rpm, "tool as stamped")
	if c.spins {
		cell(c.rpm, c.depth, "rev/min")
		cell(c.depth, c.boxes-2, "depth, "+u.one())
	}
	b.y += em(pt) + 0.8
	b.Line(0, b.y, b.Width, b.y, 0.25)
	b.y++
	b.Reach(b.y)
}

// rowBlock draws a row: the box to pass before it, what to do with which tool,
// a box for each hole, limits and gauges, and what to mind.
func rowBlock(b *block, p *paper, pl *plan.Plan, c card, g group, r row, h held, col columns) {
	first := pl.Operations[r.ops[0]]
	b.Anchor(opAnchor(first), 0)
	b.Bookmark(numbers(pl, r)+" "+b.bench.say(r.title(pl)), 1, 0)
	for _, f := range gaugesFirst(pl, r) {
		gaugeBox(b, pl, r, f)
	}
	top := b.y
	low := boxes(b, p, pl, r, col, top)
	edge := col.boxes - 4
	toolEnd := col.rpm
	if first.RPM == nil {
		toolEnd = edge
	}
	doEnd := col.tool
	if first.Tool == "" {
		doEnd = edge
	}
	end := b.write(0, top, doEnd-2, r.title(pl), draw.Bold, b.st.body)
	if first.Tool != "" {
		end = max(end, b.write(col.tool, top, toolEnd-col.tool-2, first.Tool.String(), draw.Bold, b.st.body))
	}
	if first.RPM != nil {
		end = max(end, rpmCell(b, first, col, top, edge))
		end = max(end, depthCell(b, p, first, col, top, edge))
	}
	b.y = end + 0.8
	lines, bold := rowText(p, pl, c, r, h)
	if s := limitsLine(p, first); s != "" && asMadeIn(first) == "" {
		bold = append([]string{s}, bold...)
	}
	if asMadeIn(first) != "" || first.LimitsMM != nil && first.Kind == route.KindScrap {
		limitsStrip(b, p, first, edge)
	}
	if f := forceWords(p, first); f != "" {
		b.y = b.write(0, b.y, edge, f, draw.Bold, b.st.figure) + 0.8
	}
	if len(first.Shapes) > 0 {
		b.y = shapesPicture(b, p, first, edge) + 1
	}
	// Beside the boxes, then below them.
	text := append(bold, lines...)
	b.minded(text, len(bold), edge, low)
	for _, s := range rowSafety(pl, r, h) {
		b.minded([]string{"Safety: " + s + "."}, 0, edge, low)
	}
	b.y = max(b.y, low) + 0.6
	b.Line(0, b.y, b.Width, b.y, 0.25)
	b.y += 0.9
	b.Reach(b.y)
}

// minded writes sentences, the first bold ones in bold: beside the boxes as far
// as they reach, over the whole width below.
func (b *block) minded(text []string, bold int, edge, low float64) {
	for k, part := range [2][]string{text[:bold], text[bold:]} {
		if len(part) == 0 {
			continue
		}
		face := [2]draw.Face{draw.Bold, draw.Regular}[k]
		s := strings.Join(part, ". ")
		if !strings.HasSuffix(s, ".") {
			s += "."
		}
		w := b.Width
		if b.y < low-1 {
			w = edge
		}
		b.y = b.write(0, b.y, w, s, face, b.st.body) + 0.6
	}
	b.Reach(b.y)
}

func rpmCell(b *block, op plan.Operation, col columns, top, edge float64) float64 {
	if *op.RPM == 0 {
		return b.write(col.rpm, top, edge-col.rpm, "by hand, power off", draw.Bold, b.st.body)
	}
	return b.write(col.rpm, top-0.5, col.depth-col.rpm-1, fmt.Sprintf("%.0f", *op.RPM), draw.Bold, b.st.figure+2)
}

func depthCell(b *block, p *paper, op plan.Operation, col columns, top, edge float64) float64 {
	if *op.RPM == 0 {
		top += lead(b.st.body) + em(b.st.body)
	}
	s := depth(p, op)
	if u := " " + p.u.one(); !strings.Contains(s, "\n") {
		s = strings.TrimSuffix(s, u)
	}
	low := top
	for _, l := range strings.Split(s, "\n") {
		if l != "" {
			low = b.write(col.depth, low, edge-col.depth, l, draw.Bold, b.shrink(l, draw.Bold, b.st.figure, edge-col.depth)) + 0.5
		}
	}
	return low
}

// asMadeIn names the box for a size as made in an operation, "" where it has
// none.
func asMadeIn(op plan.Operation) string {
	switch op.Kind {
	case route.KindGauge, route.KindSizeBore, route.KindTurn:
		if op.LimitsMM != nil {
			return "as made"
		}
	case route.KindPress, route.KindSetPart:
		return "bush, outside"
	}
	return ""
}

// boxes draws a box to tick for each operation of a row, with its number, its
// hole and room for a size, and returns the height below them.
func boxes(b *block, p *paper, pl *plan.Plan, r row, col columns, top float64) float64 {
	low := top
	y := top
	for k, i := range r.ops {
		at := k % col.across
		if k > 0 && at == 0 {
			y = low + 1
		}
		if len(r.ops) == 1 {
			at = col.across - 1
		}
		x := col.boxes + float64(at)*(col.boxWide+2)
		low = max(low, oneBox(b, p, pl, r, k, i, x, y, col.boxWide))
	}
	return low
}

func oneBox(b *block, p *paper, pl *plan.Plan, r row, k, i int, x, y, w float64) float64 {
	op := pl.Operations[i]
	t := b.st.tick
	b.Rect(x+0.3, y+0.3, t, t, 0.5)
	end := y + t + 0.6
	n := strconv.Itoa(op.Number)
	b.Text(x+t+2, y+0.3+t/2+(draw.Rise-draw.Drop)/2*b.st.body*draw.MMPerPt, w-t-2, n, draw.Bold, b.st.body)
	if len(r.ops) > 1 {
		end = b.write(x, end+0.4, w, holeIn(pl, r, k), draw.Bold, b.st.small) + 0.4
	}
	if name := asMadeIn(op); name != "" {
		end = b.write(x, end+0.2, w, name+", "+p.u.one(), draw.Regular, b.st.small) + 0.6
		b.Rect(x+0.3, end, w-0.6, b.st.blank+1, 0.3)
		end += b.st.blank + 1.6
	}
	b.Reach(end)
	return end
}

// limitsLine is the limits and gauges of a row whose size is gauged in a later
// one.
func limitsLine(p *paper, op plan.Operation) string {
	l := p.u.limits(op.LimitsMM)
	if len(l) == 0 || op.Kind == route.KindScrap {
		return ""
	}
	s := strings.Join(l, ", ")
	if op.Go != "" || op.NoGo != "" {
		s += ": " + goesWords(op)
	}
	return s
}

// goesWords say which gauge goes and which does not.
func goesWords(op plan.Operation) string {
	switch {
	case op.NoGo == "":
		return op.Go.String() + " goes"
	case op.Go == "":
		return op.NoGo.String() + " does not go"
	}
	return op.Go.String() + " goes, " + op.NoGo.String() + " does not"
}

// limitsStrip is limits, go and no go of a row that is gauged.
func limitsStrip(b *block, p *paper, op plan.Operation, w float64) {
	var list []field
	if l := p.u.limits(op.LimitsMM); len(l) > 0 {
		list = append(list, field{name: "limits", lines: l, face: draw.Bold, pt: b.st.figure + 3, wide: 2})
	}
	for _, g := range [][2]string{{"go", op.Go.String()}, {"no go", op.NoGo.String()}} {
		if g[1] != "" {
			list = append(list, field{name: g[0], lines: []string{g[1]}, face: draw.Bold, pt: b.st.figure, wide: 1})
		}
	}
	if len(list) == 0 {
		return
	}
	cols := 4
	if b.st.body > 13 {
		cols = 2
	}
	b.y = b.fields(0, b.y, w, cols, list) - 1.2
	b.Reach(b.y)
}

// numbers are those of a row: "40, 80".
func numbers(pl *plan.Plan, r row) string {
	var out []string
	for _, i := range r.ops {
		out = append(out, strconv.Itoa(pl.Operations[i].Number))
	}
	return strings.Join(out, ", ")
}

// first is what is gauged before a row, and before which of its operations.
type first struct {
	text string
	ops  []int // places in the row
}

// gaugesFirst gathers what is gauged before the operations of a row: once, where
// it is said of each hole alike.
func gaugesFirst(pl *plan.Plan, r row) []first {
	var out []first
	for k, i := range r.ops {
		op := pl.Operations[i]
		if op.GaugeFirst == "" {
			continue
		}
		s := op.GaugeFirst.String()
		if len(r.ops) > 1 {
			s = each(op, s)
		}
		if n := slices.IndexFunc(out, func(f first) bool { return f.text == s }); n >= 0 {
			out[n].ops = append(out[n].ops, k)
		} else {
			out = append(out, first{s, []int{k}})
		}
	}
	for n, f := range out {
		if len(f.ops) == 1 && len(r.ops) > 1 {
			op := pl.Operations[r.ops[f.ops[0]]]
			out[n].text = "Before " + strconv.Itoa(op.Number) + ": " + op.GaugeFirst.String()
		}
	}
	return out
}

// gaugeBox is the box before a step that cannot be taken back.
func gaugeBox(b *block, pl *plan.Plan, r row, f first) {
	b.boxed(1, 2, func(in *block) {
		pt := in.st.body
		w := in.tag(0, 0, "GAUGE FIRST", pt)
		t := in.st.tick
		right := float64(len(f.ops)) * (t + 3)
		for k, n := range f.ops {
			x := in.Width - float64(len(f.ops)-k)*(t+3) + 3
			in.Rect(x, 0, t, t, 0.6)
			if len(f.ops) > 1 {
				s := strconv.Itoa(pl.Operations[r.ops[n]].Number)
				in.TextMid(x+t/2, t+em(in.st.small), t+4, s, draw.Bold, in.st.small)
			}
		}
		low := t
		if len(f.ops) > 1 {
			low += em(in.st.small) + 0.8
		}
		text := sentence(f.text)
		x := w + 3
		end := in.write(x, 0.6, in.Width-x-right-2, text, draw.Bold, pt)
		in.y = max(end, em(pt)+2.4, low)
	})
	b.y -= 0.8
}
