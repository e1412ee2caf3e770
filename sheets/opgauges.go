package sheets

import (
	"strconv"

	"rebush/plan"
	"rebush/sheets/draw"
)

// opGauges is the strip of limits, go and no-go, with a box for the size as
// made beside them.
func opGauges(b *block, p *paper, op plan.Operation) {
	var list []field
	if l := p.u.limits(op.LimitsMM); len(l) > 0 {
		list = append(list, field{name: "limits" + whyOf(p, op), lines: l, face: draw.Bold, pt: b.st.big, wide: 4})
	}
	for _, g := range [][2]string{{"go", op.Go.String()}, {"no go", op.NoGo.String()}} {
		if g[1] != "" {
			list = append(list, field{name: g[0], lines: []string{g[1]}, face: draw.Bold, pt: b.st.figure, wide: 2})
		}
	}
	if len(list) == 0 {
		return
	}
	made := 0.0
	if op.LimitsMM != nil {
		made = 38
	}
	cols := 0
	for _, f := range list {
		cols += f.wide
	}
	if b.st.large {
		cols = min(cols, 4)
	}
	b.boxed(0.5, 2.2, func(in *block) {
		w := in.Width
		if made > 0 && !b.st.large {
			w -= made + 4
		}
		in.y = in.fields(0, 0, w, cols, list) - 2.4
		if made > 0 {
			madeBox(in, p, w)
		}
	})
}

// madeBox is the box for the size as made: to the right of what fills w of the
// strip, below it in large type.
func madeBox(in *block, p *paper, w float64) {
	name := "size as made, " + p.u.one()
	x, top := w+4, 0.0
	if in.st.large {
		x, top = 0, in.y+2.4
	}
	wide := in.Width - x
	low := in.write(x, top, wide, name, draw.Regular, in.st.small) + 0.9
	in.Rect(x, low, wide, max(in.st.blank, in.y-low), 0.3)
	in.y = max(in.y, low+in.st.blank)
}

// opBlanks is the last line of a step: when and by whom it was done, whether
// the work may rest after it, and what comes next.
func opBlanks(b *block, p *paper, op plan.Operation, next string) {
	wait := next
	if op.MayWait {
		wait = "Can be left here. " + next
	}
	pt := b.st.small
	if b.st.large {
		b.blanks(0, b.Width, []blankLine{{"date", "", 1.2}, {"initials", "", 1}})
		b.y = b.write(0, b.y+1, b.Width, wait, draw.Bold, pt) + 1
		b.Reach(b.y)
		return
	}
	ww := draw.Width(wait, draw.Bold, pt)
	b.Text(b.Width-ww, b.y+b.st.blank-1.2, ww+0.1, wait, draw.Bold, pt)
	b.blanks(0, b.Width-ww-5, []blankLine{{"date", "", 1.2}, {"initials", "", 1}})
}

// nextOf says what follows operation i, and where, if that is elsewhere.
func nextOf(pl *plan.Plan, i int) string {
	if i+1 >= len(pl.Operations) {
		if len(pl.Proving) > 0 {
			return "Next: final checks."
		}
		return "Last operation."
	}
	n := pl.Operations[i+1]
	s := "Next: " + strconv.Itoa(n.Number)
	if n.Setup != pl.Operations[i].Setup && n.Setup != "" {
		s += ", " + startSmall(short(oneLine(placeWords(pl, n.Setup)), 24))
	}
	return s + "."
}
