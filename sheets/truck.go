package sheets

import (
	"math"
	"sort"
	"strconv"

	"github.com/shopspring/decimal"

	"rebush/plan"
	"rebush/plan/job"
	"rebush/sheets/draw"
)

// truckPicture draws one plate to scale as it is clamped: outline, worn holes,
// old circles, seats and targets, each shaft under a number that the table of
// moves repeats. What lies on the far plate is drawn broken.
func truckPicture(b *block, p *plan.Plan, set plan.Setup) {
	outline := plateOutline(p, p.Job)
	lo, hi := extent(outline)
	w, h := hi[0]-lo[0], hi[1]-lo[1]
	if w <= 0 || h <= 0 || len(p.Survey) == 0 {
		return
	}
	names, at := shaftsOf(p, set.Plate)
	pt := b.st.small
	balloon := em(pt)/2 + 0.9
	if len(names) > 9 {
		balloon = math.Hypot(em(pt), draw.Width("00", draw.Bold, pt))/2 + 0.3
	}
	foot := em(pt) + 1.5
	dims := 0
	if len(names) <= 4 {
		dims = len(names)
	}
	const maxHeight = 78
	const sideRoom = 12
	k := min(scale(b.Width-2*sideRoom, w), scale(maxHeight, h))
	top := b.y + 2*balloon + 4
	v := view{b: b, ox: b.Width / 2, oy: top + h*k, cx: (lo[0] + hi[0]) / 2, cy: lo[1], k: k, mirror: set.Mirrored}
	bottom := v.oy
	b.As(draw.Picture, func() {
		b.Path(v.path(outline), true, 0.6, false, draw.Open)
		for _, name := range names {
			for _, s := range job.Sides {
				bore := name + "." + string(s)
				hole, ok := p.Holes[bore]
				if !ok {
					continue
				}
				far := set.Plate != "" && string(s) != set.Plate
				if far && hasBore(p, name, set.Plate) {
					continue
				}
				drawHole(v, hole, far)
			}
		}
		// The datum corner.
		dx, dy := v.at(lo)
		b.Disc(dx, dy, 0.9, draw.Black)
	})
	// Numbers above the plate, spread so that none touches its neighbour.
	place := spread(v, at, 2*balloon+1.2, balloon, b.Width-balloon)
	for i := range names {
		hx, hy := v.at(at[i])
		b.As(draw.Picture, func() { b.Line(place[i], b.y+2*balloon, hx, hy, 0.18) })
		b.Circle(place[i], b.y+balloon, balloon, 0.3, false)
		b.TextMid(place[i], b.y+balloon+(draw.Rise-draw.Drop)/2*pt*draw.MMPerPt, 2*balloon, strconv.Itoa(i+1), draw.Bold, pt)
	}
	// Figures from the datum edge, one line for each shaft.
	order := byX(at)
	for n := 0; n < dims; n++ {
		i := order[n]
		y := bottom + 3.2 + (float64(n)+0.5)*(em(pt)+1.2)
		zx, _ := v.at(lo)
		hx, hy := v.at(at[i])
		b.As(draw.Picture, func() {
			b.Line(hx, hy, hx, y+1.5, 0.13)
			b.Line(zx, bottom, zx, y+1.5, 0.13)
			b.Span(zx, y, hx, y, 2, 0.2)
			label(b, (zx+hx)/2, y, targetAxis(p, names[i], set.Plate, b.u, 0))
		})
	}
	if dims > 0 {
		heights(b, p, set, v, names, at, lo, hi)
		bottom += 3.2 + float64(dims)*(em(pt)+1.2)
	}
	y := bottom + 1.5 + draw.Rise*pt*draw.MMPerPt
	words := scaleWords(k) + "; the black dot is the datum corner"
	b.Text(0, y, b.Width, draw.Cut(words, draw.Regular, pt, b.Width), draw.Regular, pt)
	b.y = bottom + 1.5 + foot
	b.Reach(b.y)
}

// heights draws the height of each target above the datum edge beside its
// hole, where the next hole leaves room for it.
func heights(b *block, p *plan.Plan, set plan.Setup, v view, names []string, at [][2]float64, lo, hi [2]float64) {
	pt := b.st.small
	left, _ := v.at(lo)
	right, _ := v.at(hi)
	for i := range at {
		s := targetAxis(p, names[i], set.Plate, b.u, 1)
		if s == "" {
			continue
		}
		hx, hy := v.at(at[i])
		_, floor := v.at(lo)
		x := hx + 3
		for _, side := range job.Sides {
			h := p.Holes[names[i]+"."+string(side)]
			x = max(x, hx+max(h.OldRadius, h.SeatR)*v.k+3)
		}
		w := draw.Width(s, draw.Bold, pt) + 1
		x = max(x, hx+w/2+2)
		if floor-hy < em(pt)+4 || x+w/2+2 > max(left, right) || crowded(v, at, i, hx, x+w/2) {
			continue
		}
		b.As(draw.Picture, func() {
			b.Line(hx, hy, x+1.2, hy, 0.13)
			b.Span(x, hy, x, floor, 1.8, 0.2)
		})
		b.Label(x, (hy+floor)/2+(draw.Rise-draw.Drop)/2*pt*draw.MMPerPt, w, s, draw.Bold, pt)
	}
}

// crowded says whether another hole lies between two places of the picture.
func crowded(v view, at [][2]float64, i int, from, to float64) bool {
	for k := range at {
		x, _ := v.at(at[k])
		if k != i && x > from && x < to+8 {
			return true
		}
	}
	return false
}

// label writes a figure onto a dimension line.
func label(b *block, x, y float64, s string) {
	if s == "" {
		return
	}
	pt := b.st.small
	w := draw.Width(s, draw.Bold, pt)
	x = min(max(x, w/2), b.Width-w/2)
	b.Label(x, y+(draw.Rise-draw.Drop)/2*pt*draw.MMPerPt, w+0.1, s, draw.Bold, pt)
}

// targetAxis prints x (0) or y (1) of where a shaft goes in the plate that is
// up, else in the other.
func targetAxis(p *plan.Plan, shaft, plate string, u units, axis int) string {
	var found string
	look := func(bore string, at *plan.XY) {
		if at == nil || shaftOf(bore) != shaft {
			return
		}
		if found == "" || bore == shaft+"."+plate {
			if f := u.figure(at[axis]); len(f) > 0 {
				found = f[0] // of two units a picture shows the first
			}
		}
	}
	if p.OK { // where nothing may be cut, no figure of a cut is shown
		for _, t := range p.Targets {
			look(t.Bore, dialled(p, t))
		}
	}
	if found == "" {
		for _, s := range p.Survey {
			look(s.Bore, s.CentreMM)
		}
	}
	return found
}

// drawHole draws one hole to the scale of the truck.
func drawHole(v view, h plan.Hole, far bool) {
	b := v.b
	x, y := v.at(h.Old)
	tx, ty := v.at(h.Target)
	if len(h.Outline) > 2 {
		b.Path(v.path(thin(h.Outline, 0.8/v.k)), true, 0.3, far, draw.Open)
	} else {
		b.Circle(x, y, h.OldRadius*v.k, 0.3, far)
	}
	if h.SeatR > 0 {
		b.Circle(tx, ty, h.SeatR*v.k, 0.5, true)
	}
	b.Cross(tx, ty, max(1.5, h.OldRadius*v.k*0.4), 0.25)
}

// shaftsOf lists the shafts in the order of the survey with the place at which
// each is drawn: that of its bore in the plate that is up, where it has one.
func shaftsOf(p *plan.Plan, plate string) (names []string, at [][2]float64) {
	seen := map[string]int{}
	for _, s := range p.Survey {
		h, ok := p.Holes[s.Bore]
		if !ok {
			continue
		}
		name := shaftOf(s.Bore)
		i, have := seen[name]
		if !have {
			seen[name] = len(names)
			names = append(names, name)
			at = append(at, h.Target)
		} else if s.Bore == name+"."+plate {
			at[i] = h.Target
		}
	}
	return names, at
}

func shaftOf(bore string) string {
	for i := len(bore) - 1; i >= 0; i-- {
		if bore[i] == '.' {
			return bore[:i]
		}
	}
	return bore
}

func hasBore(p *plan.Plan, shaft, plate string) bool {
	_, ok := p.Holes[shaft+"."+plate]
	return ok
}

func byX(at [][2]float64) []int {
	order := make([]int, len(at))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return at[order[a]][0] < at[order[b]][0] })
	return order
}

// spread puts one mark above each place, at least step apart and between lo
// and hi.
func spread(v view, at [][2]float64, step, lo, hi float64) []float64 {
	n := len(at)
	out := make([]float64, n)
	order := make([]int, n)
	for i := range at {
		out[i], _ = v.at(at[i])
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return out[order[a]] < out[order[b]] })
	if n > 1 {
		step = min(step, (hi-lo)/float64(n-1))
	}
	for k, i := range order {
		out[i] = max(out[i], lo+float64(k)*step)
		if k > 0 {
			out[i] = max(out[i], out[order[k-1]]+step)
		}
	}
	for k := n - 1; k >= 0; k-- {
		i := order[k]
		out[i] = min(out[i], hi-float64(n-1-k)*step)
		if k < n-1 {
			out[i] = min(out[i], out[order[k+1]]-step)
		}
	}
	return out
}

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
	if t.FromOriginalMM == nil {
		return nil
	}
	x, okX := read(t.FromOriginalMM[0])
	y, okY := read(t.FromOriginalMM[1])
	none := func(d decimal.Decimal) bool {
		return d.Round(3).IsZero() || u == "in" && d.DivRound(inch, 8).Round(4).IsZero()
	}
	if okX && okY && none(x) && none(y) {
		return []string{"stays"}
	}
	return u.at(t.FromOriginalMM, true)
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
		if op.Bore == t.Bore && op.AtMM != nil && near(op.AtMM[0], t.TargetMM[0]) && near(op.AtMM[1], t.TargetMM[1]) {
			return op.AtMM
		}
	}
	return t.TargetMM
}

// near says whether two figures are one to the last place that paper prints.
func near(a, b plan.MM) bool { return math.Abs(a.Float()-b.Float()) < 0.00101 }
