package sheets

import (
	"fmt"
	"sort"
	"strconv"
	"strings"

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
	names, at := shaftsOf(p)
	pt := b.st.small
	balloon := em(pt)/2 + 0.9
	foot := em(pt) + 1.5
	dims := 0
	if len(names) <= 4 {
		dims = len(names)
	}
	const maxHeight = 78
	sideRoom := 24.0
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
			label(b, (zx+hx)/2, y, targetX(p, names[i], b.u))
		})
	}
	if dims > 0 {
		bottom += 3.2 + float64(dims)*(em(pt)+1.2)
	}
	y := bottom + 1.5 + draw.Rise*pt*draw.MMPerPt
	words := scaleWords(k) + "; the black dot is the datum corner"
	b.Text(0, y, b.Width, draw.Cut(words, draw.Regular, pt, b.Width), draw.Regular, pt)
	b.y = bottom + 1.5 + foot
	b.Reach(b.y)
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

func targetX(p *plan.Plan, shaft string, u units) string {
	for _, t := range p.Targets {
		if t.TargetMM != nil && shaftOf(t.Bore) == shaft {
			return strings.Join(u.figure(t.TargetMM[0]), ", ")
		}
	}
	for _, s := range p.Survey {
		if s.CentreMM != nil && shaftOf(s.Bore) == shaft {
			return strings.Join(u.figure(s.CentreMM[0]), ", ")
		}
	}
	return ""
}

// drawHole draws one hole to the scale of the truck.
func drawHole(v view, h plan.Hole, far bool) {
	b := v.b
	x, y := v.at(h.Old)
	tx, ty := v.at(h.Target)
	if len(h.Outline) > 2 {
		b.Path(v.path(thin(h.Outline, 0.25/v.k)), true, 0.3, far, draw.Open)
	} else {
		b.Circle(x, y, h.OldRadius*v.k, 0.3, far)
	}
	if h.SeatR > 0 {
		b.Circle(tx, ty, h.SeatR*v.k, 0.5, true)
	}
	b.Cross(tx, ty, max(1.5, h.OldRadius*v.k*0.4), 0.25)
}

// shaftsOf lists the shafts in the order of the survey with the place at which
// each is drawn.
func shaftsOf(p *plan.Plan) (names []string, at [][2]float64) {
	seen := map[string]bool{}
	for _, s := range p.Survey {
		name := shaftOf(s.Bore)
		h, ok := p.Holes[s.Bore]
		if seen[name] || !ok {
			continue
		}
		seen[name] = true
		names = append(names, name)
		at = append(at, h.Target)
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
// far that is from where it was.
func moves(p *paper, pl *plan.Plan) []*block {
	names, _ := shaftsOf(pl)
	nr := map[string]int{}
	for i, n := range names {
		nr[n] = i + 1
	}
	var out []*block
	for _, t := range pl.Targets {
		if t.TargetMM == nil {
			continue
		}
		b := p.block()
		num := ""
		if n := nr[shaftOf(t.Bore)]; n > 0 {
			num = strconv.Itoa(n)
		}
		b.y = b.moveRow(p, num, t)
		b.Line(0, b.y, b.Width, b.y, 0.2)
		out = append(out, b)
	}
	return out
}

func (b *block) moveRow(p *paper, num string, t plan.Target) float64 {
	nw := 9.0
	head := fmt.Sprintf("to, %s from the datum", p.u.word())
	old := "from the old centre"
	x := nw
	w := b.Width - nw
	list := []field{
		{name: "bore", lines: []string{printable(t.Bore)}, face: draw.Bold},
		{name: head, lines: p.u.at(t.TargetMM, false), face: draw.Bold},
		{name: old, lines: orNone(p.u.at(t.FromOriginalMM, true))},
	}
	cols := 3
	if b.st.large {
		cols = 2
	}
	end := b.fields(x, b.y, w, cols, list)
	if num != "" {
		b.write(0, b.y+em(b.st.small)+0.9, nw, num, draw.Bold, b.st.body)
	}
	return end
}

func orNone(s []string) []string {
	if len(s) == 0 {
		return []string{"not known"}
	}
	return s
}
