package sheets

import (
	"regexp"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/route"
	"rebush/sheets/draw"
)

// lying puts the axis of a spindle onto a board: upright, or level where the
// work turns on a faceplate. u runs from the table or the faceplate towards the
// tool, v across.
type lying struct {
	b     *block
	box   draw.Box
	level bool
	high  float64 // of u
	wide  float64 // of v
}

func (l lying) at(u, v float64) (x, y float64) {
	if l.level {
		return l.box.X + u, l.box.Y + v
	}
	return l.box.X + v, l.box.Y + l.high - u
}

func (l lying) line(u1, v1, u2, v2, pen float64) {
	x1, y1 := l.at(u1, v1)
	x2, y2 := l.at(u2, v2)
	l.b.Line(x1, y1, x2, y2, pen)
}

// rect is a frame from u1, v1 to u2, v2.
func (l lying) rect(u1, v1, u2, v2, pen float64) {
	x1, y1 := l.at(u1, v1)
	x2, y2 := l.at(u2, v2)
	l.b.Rect(min(x1, x2), min(y1, y2), max(x1, x2)-min(x1, x2), max(y1, y2)-min(y1, y2), pen)
}

// hatched is a cut part.
func (l lying) hatched(u1, v1, u2, v2, pen, step float64) {
	l.rect(u1, v1, u2, v2, pen)
	x1, y1 := l.at(u1, v1)
	x2, y2 := l.at(u2, v2)
	hatch(l.b, draw.Box{X: min(x1, x2), Y: min(y1, y2), W: max(x1, x2) - min(x1, x2), H: max(y1, y2) - min(y1, y2)},
		step)
}

// hatch fills a box with lines at 45 degrees.
func hatch(b *block, box draw.Box, step float64) {
	for d := step; d < box.W+box.H; d += step {
		x1, y1 := box.X+d, box.Y
		if x1 > box.X+box.W {
			y1 += x1 - box.X - box.W
			x1 = box.X + box.W
		}
		x2, y2 := box.X, box.Y+d
		if y2 > box.Y+box.H {
			x2 += y2 - box.Y - box.H
			y2 = box.Y + box.H
		}
		b.Line(x1, y1, x2, y2, 0.13)
	}
}

// reachIn is how far the longest tool of a clamping has to come out of its
// holder: through what it goes through, and the figure of its depth.
func reachIn(pl *plan.Plan, c card) float64 {
	most := 0.0
	for _, g := range c.groups {
		for _, r := range g.rows {
			for _, i := range r.ops {
				most = max(most, reachFor(pl, pl.Operations[i]))
			}
		}
	}
	return most
}

// reachFor is how far the tool of one operation has to come out of its holder, 0
// where that is not known.
func reachFor(pl *plan.Plan, op plan.Operation) float64 {
	if op.RPM == nil || !op.DepthMM.Given() || op.Kind == route.KindChamfer {
		return 0
	}
	near, gap, _, ok := stack(pl, op)
	switch {
	case op.StopMM.Given():
		stop, _ := op.StopMM.Exact()
		return stop
	case !op.Far:
		return op.DepthMM.Float()
	case ok:
		return near + gap + op.DepthMM.Float()
	}
	return 0
}

var blockHigh = regexp.MustCompile(`\(about ([^)]+)\)`)

// elevation shows a clamping from the side: table, blocks, plates with their
// thickness and gap, clamp, spindle and how far the tool reaches. It is not to
// scale; its figures are those of the plan. It returns what stands under it.
func elevation(b *block, p *paper, pl *plan.Plan, c card, box draw.Box) string {
	near, gap, far, known := plates(pl, c.set)
	pt := b.st.small
	kind := ""
	if pl.Job != nil && pl.Job.Shop != nil {
		kind = pl.Job.Shop.MachineKind
	}
	level := kind == string(route.OnLathe)
	jig := pl.Job != nil && pl.Job.Shop != nil && pl.Job.Shop.Jig == "pinned" && !byDials(pl)
	l := lying{b: b, box: box, level: level, high: box.H, wide: box.W}
	if level {
		l.high, l.wide = box.W, box.H
	}
	// Along the spindle: table, block, far plate, gap, near plate, tool.
	const tableU, plateU, fullHigh = 0.5, 3.8, 33
	spared := max(0, fullHigh-box.H) / 2 // a lower picture has lower blocks and a smaller gap
	if level {
		spared = 0
	}
	blockU, gapU := 6.5-spared, 8.4-spared
	u1 := tableU + blockU // under side of the far plate
	u2, u3 := u1+plateU, u1+plateU+gapU
	u4 := u3 + plateU
	v0, v1, axis := 2.0, l.wide*0.62, l.wide*0.30
	if level {
		v0, v1, axis = l.wide*0.14, l.wide*0.86, l.wide*0.5
	}
	through := false
	for _, g := range c.groups {
		for _, r := range g.rows {
			for _, i := range r.ops {
				through = through || pl.Operations[i].Far
			}
		}
	}
	tip := u3 - 1.2
	if through {
		tip = u1 - 1.2
	}
	b.As(draw.Picture, func() {
		l.line(tableU, 0, tableU, l.wide*0.70, draw.Wide)
		l.hatched(tableU, v0+2, u1, v0+10, draw.Narrow, 1.6)
		l.hatched(tableU, v1-12, u1, v1-4, draw.Narrow, 1.6)
		l.rect(u1, v0, u2, v1, draw.Wide)
		l.rect(u3, v0, u4, v1, draw.Wide)
		l.hatched(u2, axis-7, u3, axis-2.4, draw.Narrow, 1.6)
		l.hatched(u2, axis+2.4, u3, axis+7, draw.Narrow, 1.6)
		top := u4
		if jig {
			l.hatched(u4, v0+1, u4+3.2, v1-1, draw.Narrow, 2.4)
			l.rect(u4-2.6, v1-7, u4+4.2, v1-5.2, draw.Wide)
			l.rect(u4-2.6, v0+4.2, u4+4.2, v0+6, draw.Wide)
			top = u4 + 3.2
		}
		// The tool, and the axis of the spindle.
		l.rect(tip, axis-1.5, top+3, axis+1.5, draw.Wide)
		l.rect(top+3, axis-4, top+6.5, axis+4, draw.Wide)
		b.Stroked(draw.Centre, func() { l.line(tip-3, axis, l.high-0.5, axis, draw.Narrow) })
		if !level {
			x1, y1 := l.at(top+6, v1-12)
			x2, y2 := l.at(top, v1-12)
			b.Arrow(x1, y1, x2, y2, 2.4, 0.4)
		}
	})
	labels := elevationWords(pl, c, level, jig)
	mid := (draw.Rise - draw.Drop) / 2 * pt * draw.MMPerPt
	put := func(u, v float64, s string) {
		x, y := l.at(u, v)
		w := draw.Width(s, draw.Regular, pt)
		x = min(max(x, box.X+w/2+0.5), box.X+box.W-w/2-0.5)
		b.Label(x, y+mid, w+0.2, s, draw.Regular, pt)
	}
	if level {
		put(6, l.wide*0.05, labels.below)
		put(u4+8, l.wide*0.05, labels.tool)
	} else {
		beside := (v0+v1)/2 - 1 // between the blocks, unless a tool comes down there
		if through {
			beside = v1 + 3
		}
		put(tableU+blockU/2, beside, labels.below)
		put(u4+7, axis-13, labels.tool)
		if jig {
			put(u4+7, v1+4, labels.hold)
		} else {
			put(u4+6, v1-1, labels.hold)
		}
	}
	// Thickness and gap, and the reach.
	if known && !level {
		x := box.X + box.W*0.70
		dim := func(ua, ub, v float64, s string) {
			_, ya := l.at(ua, 0)
			_, yb := l.at(ub, 0)
			b.As(draw.Picture, func() {
				b.Line(box.X+v1+0.8, ya, x+v+1.2, ya, 0.13)
				b.Line(box.X+v1+0.8, yb, x+v+1.2, yb, 0.13)
				b.Span(x+v, ya, x+v, yb, 1.6, 0.18)
			})
			w := draw.Width(s, draw.Bold, pt)
			b.Text(x+v+1.8, (ya+yb)/2+mid, w+0.1, s, draw.Bold, pt)
		}
		fig := func(v float64) string { return say.MM(v, 2).Trim().In(p.u.said()) }
		if p.u == "both" {
			fig = func(v float64) string { return say.MM(v, 2).Trim().String() }
		}
		dim(u1, u2, 0, fig(far))
		dim(u2, u3, 0, fig(gap))
		dim(u3, u4, 0, fig(near))
	}
	words := "Not to scale."
	if level {
		words = "Faceplate on the left, tool from the right; not to scale."
		if known {
			words += " Plates " + say.MM(far, 2).Trim().In(p.u.said()) + " and " + say.MM(near, 2).Trim().In(p.u.said()) +
				", gap " + say.MM(gap, 2).Trim().In(p.u.said()) + "."
		}
	}
	if r := reachIn(pl, c); r > 0 {
		words += " Reach at most " + say.MM(r, 1).In(p.u.said()) + "."
	}
	return words
}

type elevationLabels struct{ below, tool, hold string }

// elevationWords name what the picture shows.
func elevationWords(pl *plan.Plan, c card, level, jig bool) elevationLabels {
	e := elevationLabels{below: "block", tool: "spindle", hold: "clamp"}
	if m := blockHigh.FindStringSubmatch(c.set.Words.String()); m != nil {
		e.below = m[1]
	}
	switch {
	case level:
		e.below, e.tool = "packing", "tool"
	case jig:
		e.hold = "jig plate, pins"
	}
	return e
}
