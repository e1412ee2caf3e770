package sheets

import (
	"math"
	"strconv"

	"rebush/plan"
	"rebush/sheets/draw"
)

// moves is the table that goes with the picture: where each bore goes and how
// far that is from where it was. The first block is its head.
func moves(p *paper, pl *plan.Plan) []*block {
	names, _ := shaftsOf(pl, "")
	nr := map[string]string{}
	for i, n := range names {
		nr[n] = strconv.Itoa(i + 1)
	}
	var out []*block
	for _, t := range pl.Targets {
		if t.TargetMM == nil || !pl.OK {
			continue
		}
		if len(out) == 0 {
			head := p.block()
			head.row([]string{"", "bore", "to, " + p.u.word() + " from the datum", "move from the old centre"}, nil, nil, p.st.small)
			head.y -= 1
			head.Board.Height = head.y
			out = append(out, head)
		}
		b := p.block()
		b.row([]string{nr[shaftOf(t.Bore)], printable(t.Bore)}, p.u.at(dialled(pl, t), false), orNone(moveOf(p.u, t)), p.st.body)
		b.Line(0, b.y, b.Width, b.y, 0.15)
		out = append(out, b)
	}
	return out
}

// moveOf is the move from the old centre in figures, or in words where there is
// none.
func moveOf(u units, t plan.Target) []string {
	m := t.FromOriginalMM
	if m == nil {
		return nil
	}
	least := 0.0005 // what the figures of the paper show
	if u == "in" {
		least = 0.00005 * 25.4
	}
	none := func(m plan.MM) bool { return m.Given() && math.Abs(m.Float()) < least }
	if none(m[0]) && none(m[1]) {
		return []string{"stays"}
	}
	return u.at(m, true)
}

// row writes number, name, place and move into the columns of the table.
func (b *block) row(names, at, move []string, pt float64) {
	cols := [5]float64{0, 9, 72, 126, b.Width}
	face := [4]draw.Face{draw.Bold, draw.Bold, draw.Bold, draw.Regular}
	cells := [4][]string{}
	for i, n := range names {
		cells[i] = []string{n}
	}
	if at != nil {
		cells[2], cells[3] = at, move
	} else {
		face = [4]draw.Face{}
	}
	if b.st.large {
		// Place and move stand below the name.
		cols = [5]float64{0, 12, 12, 100, b.Width}
	}
	y := b.y + 0.8
	low := y
	for i, lines := range cells {
		w := cols[i+1] - cols[i] - 3
		top := y
		if b.st.large {
			if i < 2 {
				w = b.Width - cols[1]
			} else if names[len(names)-1] != "" {
				top = y + b.tall(b.Width-cols[1], names[1], draw.Bold, pt) + 1.2
			}
			if i == 0 {
				w = 11
			}
		}
		for _, l := range lines {
			top = b.write(cols[i], top, w, l, face[i], pt)
			low = max(low, top)
			top += 0.8
		}
	}
	b.y = low + 1.6
	b.Reach(b.y)
}

func orNone(s []string) []string {
	if len(s) == 0 {
		return []string{"not known"}
	}
	return s
}

// dialled is where a bore goes as its operations dial it, so that all pages
// have one figure; the target itself where nothing is dialled.
func dialled(pl *plan.Plan, t plan.Target) *plan.XY {
	if t.TargetMM == nil {
		return nil
	}
	for _, op := range pl.Operations {
		if op.Bore == t.Bore && op.DialMM != nil && near(op.DialMM[0], t.TargetMM[0]) && near(op.DialMM[1], t.TargetMM[1]) {
			return op.DialMM
		}
	}
	return t.TargetMM
}

// near says whether two figures are one to the last place that paper prints.
func near(a, b plan.MM) bool { return math.Abs(a.Float()-b.Float()) < 0.00101 }
