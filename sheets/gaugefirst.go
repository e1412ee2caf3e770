package sheets

import (
	"slices"
	"strconv"

	"rebush/plan"
	"rebush/sheets/draw"
)

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
			s = r.named(pl, each(op, s))
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
	pad := 2.0
	if b.st.closer >= closest {
		pad = 1.5
	}
	b.boxed(1, pad, func(in *block) {
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
		text := sentence(noBuy(f.text))
		x := w + 3
		end := in.write(x, 0.6, in.Width-x-right-2, text, draw.Bold, pt)
		in.y = max(end, em(pt)+2.4, low)
	})
	b.y -= 0.8
}
