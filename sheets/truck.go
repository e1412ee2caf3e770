package sheets

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"rebush/plan"
	"rebush/plan/job"
	"rebush/sheets/draw"
)

// truckPicture draws one plate to scale as it is clamped: outline, worn holes,
// old circles, seats and targets, each shaft under a number that the table of
// moves repeats. What lies on the far plate is drawn broken. The plate is no
// higher than maxHeight on the paper; figures stand at those shafts that are asked
// for.
func truckPicture(b *block, p *plan.Plan, set plan.Setup, maxHeight float64, asked func(shaft string) bool) {
	words, bottom := truckDrawing(b, p, set, maxHeight, asked)
	if words == "" {
		return
	}
	b.y = max(bottom+1.5+em(b.st.small)+1.5, b.write(0, bottom+1.5, b.Width, words, draw.Regular, b.st.small)+1.5)
	b.Reach(b.y)
}

// truckDrawing is the picture alone. It returns what stands under it, nothing
// where nothing can be drawn, and the height below the picture.
func truckDrawing(b *block, p *plan.Plan, set plan.Setup, maxHeight float64,
	asked func(shaft string) bool) (words string, bottom float64) {
	outline := plateOutline(p, p.Job)
	lo, hi := extent(outline)
	w, h := hi[0]-lo[0], hi[1]-lo[1]
	if w <= 0 || h <= 0 || len(p.Survey) == 0 {
		return "", b.y
	}
	names, at := shaftsOf(p, set.Plate)
	pt := b.st.small
	balloon := em(pt)/2 + 0.9
	if len(names) > 9 {
		balloon = math.Hypot(em(pt), draw.Width("00", draw.Bold, pt))/2 + 0.3
	}
	var order []int // shafts that have figures
	for _, i := range byX(at) {
		if asked(names[i]) {
			order = append(order, i)
		}
	}
	if len(order) > 4 {
		order = nil
	}
	dims := len(order)
	sideRoom := 12.0
	if b.Width < 90 {
		sideRoom = 2
	}
	k := min(scale(b.Width-2*sideRoom, w), scale(maxHeight, h))
	top := b.y + 2*balloon + 4
	v := view{b: b, ox: b.Width / 2, oy: top + h*k, cx: (lo[0] + hi[0]) / 2, cy: lo[1], k: k, mirror: set.Mirrored}
	bottom = v.oy
	zero := lo // where the dials are at nothing
	end, turned := dialEnd(p, set)
	if turned {
		zero[0] = end
	}
	b.As(draw.Picture, func() {
		b.Path(v.path(outline), true, draw.Wide, false, draw.Open)
		for _, name := range names {
			for _, s := range job.Sides {
				bore := on(name, s)
				hole, ok := p.Holes[bore]
				if !ok {
					continue
				}
				far := set.Plate != "" && s != set.Plate
				if far && hasBore(p, name, set.Plate) {
					continue
				}
				drawHole(v, hole, far)
			}
		}
		dx, dy := v.at(zero)
		b.Disc(dx, dy, 0.9, draw.Black)
	})
	// Numbers above the plate, spread so that none touches its neighbour; of those
	// that are worked only, where there is no room for all.
	room := float64(len(names))*(2*balloon+1.2) <= b.Width
	place := spread(v, at, 2*balloon+1.2, balloon, b.Width-balloon)
	for i := range names {
		if !room {
			if !asked(names[i]) {
				continue
			}
			place[i], _ = v.at(at[i])
		}
		hx, hy := v.at(at[i])
		b.As(draw.Picture, func() { b.Line(place[i], b.y+2*balloon, hx, hy, 0.18) })
		b.Circle(place[i], b.y+balloon, balloon, 0.3, false)
		b.TextMid(place[i], b.y+balloon+(draw.Rise-draw.Drop)/2*pt*draw.MMPerPt, 2*balloon, strconv.Itoa(i+1), draw.Bold, pt)
	}
	// Figures from the datum edge, one line for each shaft.
	var labels []func() // on top of all lines
	for n := 0; n < dims; n++ {
		i := order[n]
		y := bottom + 3.2 + (float64(n)+0.5)*(em(pt)+1.2)
		zx, _ := v.at(zero)
		hx, hy := v.at(at[i])
		figure := targetAxis(p, set, names[i], b.u, 0)
		if turned {
			figure = dialX(p, set, names[i], b.u, end)
		}
		b.As(draw.Picture, func() {
			b.Line(hx, hy, hx, y+1.5, 0.13)
			b.Line(zx, bottom, zx, y+1.5, 0.13)
			b.Span(zx, y, hx, y, 2, 0.2)
		})
		labels = append(labels, func() { label(b, (zx+hx)/2, y, figure) })
	}
	for _, f := range labels {
		f()
	}
	if dims > 0 {
		heights(b, p, set, v, names, at, lo, hi)
		bottom += 3.2 + float64(dims)*(em(pt)+1.2)
	}
	words = scaleWords(k) + "; figures count from the black dot"
	if !room || slices.ContainsFunc(names, func(n string) bool { return !asked(n) }) {
		words += "; " + numbered(names) // the dials name those that are worked, and those alone
	}
	for _, h := range p.Holes {
		if h.SeatR > 0 {
			words += "; chain line, two dots: new seat"
			break
		}
	}
	if b.u == "both" && dims > 0 {
		words += "; figures in mm"
	}
	return words, bottom
}

// numbered is the key of a picture: "1 front axle, 2 rear axle".
func numbered(names []string) string {
	var s []string
	for i, n := range names {
		s = append(s, strconv.Itoa(i+1)+" "+n)
	}
	return strings.Join(s, ", ")
}

// drawHole draws one hole to the scale of the truck.
func drawHole(v view, h plan.Hole, far bool) {
	b := v.b
	x, y := v.at(h.Old)
	tx, ty := v.at(h.Target)
	if len(h.Outline) > 2 {
		b.Path(v.path(thin(h.Outline, 0.8/v.k)), true, pen(far), far, draw.Open)
	} else {
		b.Circle(x, y, h.OldRadius*v.k, pen(far), far)
	}
	if h.SeatR > 0 {
		b.Stroked(draw.Other, func() { b.Circle(tx, ty, h.SeatR*v.k, draw.Narrow, false) })
	}
	b.Cross(tx, ty, max(1.5, h.OldRadius*v.k*0.4), 0.25)
}

// pen is the width of an edge: narrow where the near plate hides it.
func pen(hidden bool) float64 {
	if hidden {
		return draw.Narrow
	}
	return draw.Wide
}

// shaftsOf lists the shafts in the order of the survey with the place at which
// each is drawn: that of its bore in the plate that is up, where it has one.
func shaftsOf(p *plan.Plan, plate job.Side) (names []string, at [][2]float64) {
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
		} else if s.Bore == on(name, plate) {
			at[i] = h.Target
		}
	}
	return names, at
}

// on is the bore of a shaft in one plate.
func on(shaft string, plate job.Side) string { return shaft + "." + string(plate) }

func shaftOf(bore string) string {
	for i := len(bore) - 1; i >= 0; i-- {
		if bore[i] == '.' {
			return bore[:i]
		}
	}
	return bore
}

func hasBore(p *plan.Plan, shaft string, plate job.Side) bool {
	_, ok := p.Holes[on(shaft, plate)]
	return ok
}
