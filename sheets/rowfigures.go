package sheets

import (
	"fmt"
	"strings"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/route"
	"rebush/sheets/draw"
)

// figuresOf are limits, gauges and forces of a row: once where they are those of
// all its holes, else a line for each hole; and the drawing of what is turned.
func figuresOf(b *block, p *paper, pl *plan.Plan, r row, edge float64) {
	op := pl.Operations[r.ops[0]]
	line := func(s string) {
		if s != "" {
			b.y = b.write(0, b.y, edge, s, draw.Bold, b.st.body) + 0.5
		}
	}
	if !r.alike(pl) {
		for k, i := range r.ops {
			op := pl.Operations[i]
			s := limitsLine(p, op)
			if f := forceWords(p, op); f != "" {
				_, guide, _ := strings.Cut(op.Tool.String(), ", guide ")
				if s = f; guide != "" {
					s += "; guide " + guide
				}
			}
			if s != "" {
				line(sentence(holeIn(pl, r, k)) + ": " + s)
			}
		}
		return
	}
	top := b.y
	switch {
	case asMadeIn(op) != "" || op.LimitsMM != nil && op.Kind == route.KindScrap:
		w := edge
		if len(op.Shapes) > 0 && b.st.body < 13 && p.u != "both" {
			w = edge * 0.45
		}
		limitsStrip(b, p, op, w)
		if low := b.y; w < edge && op.LimitsMM != nil { // the drawing stands beside the limits
			b.y = max(low, shapesBeside(b, p, op, w+2, top, edge-w-2)) + 0.5
			return
		}
	default:
		line(limitsLine(p, op))
	}
	line(forceWords(p, op))
	if len(op.Shapes) > 0 {
		b.y = shapesPicture(b, p, op, edge) + 0.5
	}
}

// toolLine is tool as stamped, step of the spindle and depth of a row.
func toolLine(b *block, p *paper, pl *plan.Plan, r row, edge float64) {
	tool, s := toolWords(b, p, pl, r)
	if tool == "" {
		return // the tool stands with the words
	}
	pt := b.st.figure
	w := draw.Width(tool, draw.Bold, pt)
	if w+6+draw.Width(s, draw.Bold, pt) > edge {
		pt = b.st.body
		w = draw.Width(tool, draw.Bold, pt)
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

// stopsOf is where the depth stop is set for each hole of a row that one tool makes
// at different depths, a far plate's below the near one; "" where all are alike.
func stopsOf(p *paper, pl *plan.Plan, r row) string {
	var list []string
	seen := map[string]bool{}
	for k, i := range r.ops {
		op := pl.Operations[i]
		if !op.StopMM.Given() {
			return ""
		}
		s := strings.Join(p.u.lines(say.Size(op.StopMM, 1)), ", ")
		seen[s] = true
		list = append(list, holeIn(pl, r, k)+" "+s)
	}
	if len(seen) < 2 {
		return ""
	}
	return "stop: " + strings.Join(list, ", ")
}

// toolBeside writes the same behind what is done, on its line, where lines stand
// closest and it has room there.
func toolBeside(b *block, p *paper, pl *plan.Plan, r row, title string, y, edge float64) bool {
	tool, s := toolWords(b, p, pl, r)
	if tool == "" || b.st.closer < closest {
		return false
	}
	pt := b.st.body
	x := draw.Width(printable(b.bench.say(title)), draw.Bold, pt) + 5
	s = tool + ":  " + s
	if x+draw.Width(s, draw.Bold, pt) > edge {
		return false
	}
	b.write(x, y, edge-x, s, draw.Bold, pt)
	return true
}

// toolWords is the tool of a row as stamped, and behind it the step of the spindle
// and the depth; nothing where it stands with the words.
func toolWords(b *block, p *paper, pl *plan.Plan, r row) (tool, s string) {
	op := pl.Operations[r.ops[0]]
	d := depth(p, op)
	if op.Tool == "" || op.RPM == nil && d == "" {
		return "", ""
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
	if d != "" {
		d = strings.ReplaceAll(d, "\n", ", ")
		switch stops := stopsOf(p, pl, r); {
		case stops != "":
			d = stops
		case op.StopMM.Given() && op.DialMM == nil && op.AtMM != nil:
			d = "depth " + d + ", stop " + strings.Join(p.u.lines(say.Size(op.StopMM, 1).About()), ", ")
		case d != "through":
			d = "depth " + d
		}
		list = append(list, d)
	}
	return printable(b.bench.say(op.Tool.String())), printable(b.bench.say(strings.Join(list, ",  ")))
}

// depth is how deep a tool goes, in the units of the paper; "through" where it
// goes through and no figure is known.
func depth(p *paper, op plan.Operation) string {
	if op.DepthMM.Given() {
		return strings.Join(p.u.lines(say.Size(op.DepthMM, 1).About()), "\n")
	}
	switch op.Kind {
	case route.KindOpen, route.KindSizeSeat:
		return "through"
	}
	return ""
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
	goes, stops := noBuy(op.Go.String()), noBuy(op.NoGo.String())
	switch {
	case stops == "":
		return goes + " goes"
	case goes == "":
		return stops + " does not go"
	}
	return goes + " goes, " + stops + " does not"
}

// noBuy leaves out that something has to be bought.
func noBuy(s string) string { return strings.ReplaceAll(s, toBuy, "") }

// limitsStrip is limits, go and no go of a row that is gauged.
func limitsStrip(b *block, p *paper, op plan.Operation, w float64) {
	var list []field
	narrow := w < 0.6*b.Width && op.Go == "" && op.NoGo == ""
	if l := p.u.limits(op.LimitsMM); len(l) > 0 {
		list = append(list, field{name: "limits", lines: l, face: draw.Bold, pt: b.st.figure + 3, wide: 2})
	}
	for _, g := range [][2]string{{"go", op.Go.String()}, {"no go", op.NoGo.String()}} {
		if g[1] != "" {
			list = append(list, field{name: g[0], lines: []string{noBuy(g[1])}, face: draw.Bold, pt: b.st.figure, wide: 1})
		}
	}
	if len(list) == 0 {
		return
	}
	cols := 4
	if b.st.body > 13 || narrow {
		cols = 2
	}
	b.y = b.fields(0, b.y, w, cols, list) - 1.2
	b.Reach(b.y)
}
