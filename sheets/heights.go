package sheets

import (
	"math"
	"sort"

	"rebush/fits/dim"
	"rebush/plan"
	"rebush/plan/job"
	"rebush/sheets/draw"
)

// heights draws the height of each target above the datum edge beside its
// hole, where the next hole leaves room for it.
func heights(b *block, p *plan.Plan, set plan.Setup, v view, names []string, at [][2]float64, lo, hi [2]float64) {
	pt := b.st.small
	left, _ := v.at(lo)
	right, _ := v.at(hi)
	for i := range at {
		s := targetAxis(p, set, names[i], b.u, 1)
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
	x = min(max(x, w/2+0.5), b.Width-w/2-0.5)
	b.Label(x, y+(draw.Rise-draw.Drop)/2*pt*draw.MMPerPt, w+0.1, s, draw.Bold, pt)
}

// targetAxis prints x (0) or y (1) of where a shaft goes in the plate that is
// up, else in the other: as the clamping cuts it, which for a plug is not where
// its bush goes.
func targetAxis(p *plan.Plan, set plan.Setup, shaft string, u units, axis int) string {
	var found string
	plate := set.Plate
	look := func(bore string, at *plan.XY) {
		if at == nil || shaftOf(bore) != shaft {
			return
		}
		if found == "" || bore == on(shaft, plate) {
			if f := u.figure(at[axis]); len(f) > 0 {
				found = f[0] // of two units a picture shows the first
			}
		}
	}
	for _, op := range p.Operations {
		if op.Setup == set.Name && shaftOf(op.Bore) == shaft && found == "" {
			look(op.Bore, op.AtMM)
		}
	}
	if found != "" {
		return found
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

// dialEnd is the x of the plate at which the dials of a turned clamping are at
// nothing: there the operations are dialled from the end that lies on the left.
// It is not ok where the dials read the figures of the drawing.
func dialEnd(p *plan.Plan, set plan.Setup) (end float64, ok bool) {
	if !set.Mirrored {
		return 0, false
	}
	for _, op := range p.Operations {
		if op.Setup != set.Name || op.DialMM == nil || op.AtMM == nil {
			continue
		}
		if !near(op.DialMM[0], op.AtMM[0]) {
			return math.Round((op.DialMM[0].Float()+op.AtMM[0].Float())*100) / 100, true
		}
	}
	return 0, false
}

// dialX prints what the dial of a turned clamping reads at a shaft: as its
// operation says, else counted from the same end.
func dialX(p *plan.Plan, set plan.Setup, shaft string, u units, end float64) string {
	for _, op := range p.Operations {
		if op.Setup == set.Name && op.DialMM != nil && op.Bore == on(shaft, set.Plate) {
			return u.figure(op.DialMM[0])[0]
		}
	}
	names, at := shaftsOf(p, set.Plate)
	for i, n := range names {
		if n == shaft {
			return u.figure(dim.Place(end - at[i][0]))[0]
		}
	}
	return ""
}
