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

// columns are where the boxes of a row stand.
type columns struct {
	edge    float64 // right edge of the words beside the boxes
	across  int     // boxes beside each other
	boxWide float64
}

// columnsFor are wide enough for the boxes of a row.
func columnsFor(b *block, pl *plan.Plan, r row) columns {
	c := columns{across: min(len(r.ops), 2), boxWide: 24}
	for _, i := range r.ops {
		if asMadeIn(pl.Operations[i]) != "" {
			c.boxWide = 27
		}
	}
	if len(r.ops) == 1 && c.boxWide < 27 {
		c.boxWide = 18
	}
	if b.st.body > 13 {
		c.boxWide += 4
	}
	c.edge = b.Width - float64(c.across)*(c.boxWide+2) - 1
	return c
}

// rowBlock draws a row: the box to pass before it, what to do with which tool,
// a box for each hole, limits and gauges, and what to mind.
func rowBlock(b *block, p *paper, pl *plan.Plan, c card, r row, h held) {
	op := pl.Operations[r.ops[0]]
	col := columnsFor(b, pl, r)
	b.Anchor(opAnchor(op), 0)
	b.Bookmark(numbers(pl, r)+" "+b.bench.say(r.title(pl)), 1, 0)
	for _, f := range gaugesFirst(pl, r) {
		gaugeBox(b, pl, r, f)
	}
	top := b.y
	low := boxes(b, p, pl, r, col, top)
	title := r.title(pl)
	if w := whereDone(pl, c, op); w != "" {
		title = w + ": " + startSmall(title)
	}
	b.y = b.write(0, top, col.edge, title, draw.Bold, b.st.body) + 0.5
	toolLine(b, p, pl, r, col.edge)
	lines, bold := rowText(p, pl, c, r, h)
	if op.Tool != "" && op.RPM == nil && depth(p, op) == "" {
		bold = append([]string{"With: " + op.Tool.String()}, bold...)
	}
	if s := limitsLine(p, op); s != "" && asMadeIn(op) == "" {
		b.y = b.write(0, b.y, col.edge, s, draw.Bold, b.st.body) + 0.5
	}
	if asMadeIn(op) != "" || op.LimitsMM != nil && op.Kind == route.KindScrap {
		limitsStrip(b, p, op, col.edge)
	}
	if f := forceWords(p, op); f != "" {
		b.y = b.write(0, b.y, col.edge, f, draw.Bold, b.st.body) + 0.6
	}
	if len(op.Shapes) > 0 {
		b.y = shapesPicture(b, p, op, col.edge) + 0.5
	}
	text := append(spoken(bold, draw.Bold), spoken(lines, draw.Regular)...)
	if s := rowSafety(pl, r, h); len(s) > 0 {
		text = append(append(text, run{"Safety:", draw.Bold}), spoken(s, draw.Regular)...)
	}
	b.flowing(text, col.edge, low)
	b.y = max(b.y, low) + 0.2
	b.Line(0, b.y, b.Width, b.y, 0.25)
	b.y += 0.3
	b.Reach(b.y)
}

// whereDone names the place of a row of a card without a clamping.
func whereDone(pl *plan.Plan, c card, op plan.Operation) string {
	if c.clamped && op.Setup == c.set.Name {
		return ""
	}
	switch op.Setup {
	case "bench", "press", "lathe":
		return "At the " + op.Setup
	}
	return ""
}

// run is text in one face.
type run struct {
	text string
	face draw.Face
}

// spoken are sentences in one face.
func spoken(list []string, face draw.Face) []run {
	var out []run
	for _, s := range list {
		out = append(out, run{ended(s), face})
	}
	return out
}

// flowing writes runs one after the other in the size of what is to be minded:
// beside the boxes as far as they reach down, over the whole width below them.
func (b *block) flowing(list []run, edge, low float64) {
	pt := b.st.aside()
	type word struct {
		text string
		face draw.Face
	}
	var words []word
	for _, r := range list {
		for _, w := range strings.Fields(printable(b.bench.say(r.text))) {
			words = append(words, word{w, r.face})
		}
	}
	if len(words) == 0 {
		return
	}
	for len(words) > 0 {
		room := b.Width
		if b.y < low-0.3 {
			room = edge
		}
		x, n := 0.0, 0
		for n < len(words) { // pieces of one face, as many as fit
			k, piece := n, ""
			for k < len(words) && words[k].face == words[n].face {
				next := strings.TrimSpace(piece + " " + words[k].text)
				if x+draw.Width(next, words[n].face, pt) > room {
					break
				}
				piece = next
				k++
			}
			if piece == "" {
				break
			}
			face := words[n].face
			b.Text(x, b.y+draw.Rise*pt*draw.MMPerPt, room-x+0.01, piece, face, pt)
			x += draw.Width(piece, face, pt) + draw.Width(" ", face, pt)
			full := k < len(words) && words[k].face == face
			n = k
			if full {
				break
			}
		}
		if n == 0 { // one word wider than the line
			end := b.raw(0, b.y, room, words[0].text, words[0].face, pt)
			words, b.y = words[1:], end+lead(pt)-em(pt)
			continue
		}
		words = words[n:]
		b.y += lead(pt)
	}
	b.y += em(pt) - lead(pt) + 0.5
	b.Reach(b.y)
}

// toolLine is tool as stamped, step of the spindle and depth of a row.
func toolLine(b *block, p *paper, pl *plan.Plan, r row, edge float64) {
	op := pl.Operations[r.ops[0]]
	if op.Tool == "" || op.RPM == nil && depth(p, op) == "" {
		return // the tool stands with the words
	}
	var list []string
	if op.RPM != nil {
		switch {
		case *op.RPM == 0:
			list = append(list, "by hand, power off")
		default:
			list = append(list, fmt.Sprintf("%.0f rev/min", *op.RPM))
		}
	}
	if d := depth(p, op); d != "" {
		d = strings.ReplaceAll(d, "\n", ", ")
		if d != "through" {
			d = "depth " + d
		}
		list = append(list, d)
	}
	tool := op.Tool.String()
	pt := b.st.figure
	s := strings.Join(list, ",  ")
	w := draw.Width(printable(b.bench.say(tool)), draw.Bold, pt)
	if w+6+draw.Width(s, draw.Bold, pt) > edge {
		pt = b.st.body
		w = draw.Width(printable(b.bench.say(tool)), draw.Bold, pt)
	}
	if w+6+draw.Width(s, draw.Bold, pt) > edge {
		b.y = b.write(0, b.y, edge, tool, draw.Bold, pt) + 0.5
		b.y = b.write(0, b.y, edge, s, draw.Bold, pt) + 0.5
		return
	}
	low := b.write(0, b.y, edge, tool, draw.Bold, pt)
	x := max(w+6, edge*0.42)
	if x+draw.Width(s, draw.Bold, pt) > edge {
		x = edge - draw.Width(s, draw.Bold, pt) - 0.2
	}
	b.y = max(low, b.write(x, b.y, edge-x+0.1, s, draw.Bold, pt)) + 0.6
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
	low, y := top, top
	for k, i := range r.ops {
		at := k % col.across
		if k > 0 && at == 0 {
			y = low + 1
		}
		low = max(low, oneBox(b, p, pl, r, k, i, col.edge+3+float64(at)*(col.boxWide+2), y, col.boxWide))
	}
	return low
}

func oneBox(b *block, p *paper, pl *plan.Plan, r row, k, i int, x, y, w float64) float64 {
	op := pl.Operations[i]
	t := b.st.tick
	b.Rect(x+0.3, y+0.3, t, t, 0.5)
	end := y + t + 0.6
	n := strconv.Itoa(op.Number)
	mid := y + 0.3 + t/2 + (draw.Rise-draw.Drop)/2*b.st.body*draw.MMPerPt
	b.Text(x+t+1.5, mid, w-t-1, n, draw.Bold, b.st.body)
	if len(r.ops) > 1 {
		hole := printable(b.bench.say(holeIn(pl, r, k)))
		beside := x + t + 1.5 + draw.Width(n, draw.Bold, b.st.body) + 1.5
		if draw.Width(hole, draw.Bold, b.st.small) <= x+w-beside {
			b.Text(beside, mid, x+w-beside, hole, draw.Bold, b.st.small)
		} else {
			end = b.write(x, end+0.2, w, hole, draw.Bold, b.st.small) + 0.3
		}
	}
	if name := asMadeIn(op); name != "" {
		end = b.write(x, end+0.2, w, name+", "+p.u.one(), draw.Regular, b.st.small) + 0.5
		b.Rect(x+0.3, end, w-0.6, b.st.blank+1, 0.3)
		end += b.st.blank + 1.4
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
