package sheets

import (
	"strconv"

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
