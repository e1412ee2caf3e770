package sheets

import (
	"strconv"
	"strings"

	"rebush/plan"
	"rebush/plan/route"
	"rebush/sheets/draw"
)

// rowBlock draws a row: the box to pass before it, what to do with which tool,
// a box for each hole, limits and gauges, and what to mind. What to do stands
// beside the boxes, or above them over the whole width.
func rowBlock(b *block, p *paper, pl *plan.Plan, c card, r row, h held, above bool) {
	op := pl.Operations[r.ops[0]]
	col := columnsFor(b, pl, r)
	b.Anchor(opAnchor(op), 0)
	b.Bookmark(numbers(pl, r)+" "+b.bench.say(r.title(pl)), 1, 0)
	for _, f := range gaugesFirst(pl, r) {
		gaugeBox(b, pl, r, f)
	}
	title := r.title(pl)
	if w := whereDone(pl, c, op); w != "" {
		title = w + ": " + startSmall(title)
	}
	top, wide := b.y, col.edge
	if above {
		wide = b.Width
	}
	b.y = b.write(0, top, wide, title, draw.Bold, b.st.body) + 0.5
	beside := toolBeside(b, p, pl, r, title, top, wide)
	if above {
		top = b.y
	}
	low := boxes(b, p, pl, r, col, top)
	if !beside {
		toolLine(b, p, pl, r, col.edge)
	}
	lines, bold := rowText(p, pl, c, r, h)
	if op.Tool != "" && op.RPM == nil && depth(p, op) == "" {
		tool := op.Tool.String()
		if !r.alike(pl) && op.Kind == route.KindPress {
			tool = pressTool(op)
		}
		bold = append([]string{"With: " + tool}, bold...)
	}
	figuresOf(b, p, pl, r, col.edge)
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
			words, b.y = words[1:], end+b.lead(pt)-em(pt)
			continue
		}
		words = words[n:]
		b.y += b.lead(pt)
	}
	b.y += em(pt) - b.lead(pt) + 0.5
	b.Reach(b.y)
}

// opAnchor names the row of an operation for links.
func opAnchor(op plan.Operation) string { return "op " + strconv.Itoa(op.Number) }

// numbers are those of a row: "40, 80".
func numbers(pl *plan.Plan, r row) string {
	var out []string
	for _, i := range r.ops {
		out = append(out, strconv.Itoa(pl.Operations[i].Number))
	}
	return strings.Join(out, ", ")
}
