package world

import (
	"fmt"
	"math"
	"slices"
)

// In is the same truck written in "mm" or "in": bare figures where they come
// out exact in that unit, else in mm with the unit behind. Every length means
// the same to the last digit.
func (w World) In(unit string) World {
	w = w.copied()
	if unit != w.unit {
		w.each(func(n *node) {
			if n.stamp && n.text == "" {
				n.text = n.written(w.unit) + " " + w.unit
			}
		})
	}
	w.unit = unit
	for _, file := range []*node{w.job, w.shop} {
		if file != nil {
			file.set("units", text(unit))
		}
	}
	return w.written()
}

// Converted is In with bare figures throughout: what does not come out exact is
// brought to a ten-millionth of an inch.
func (w World) Converted(unit string) World {
	w = w.copied()
	if unit == "in" {
		w.each(func(n *node) {
			if n.kind == aLength && n.text == "" && !n.stamp {
				n.length = ticks(math.Round(float64(n.length)/254)) * 254
			}
		})
	}
	return w.In(unit)
}

// Shuffled is the same truck with every list whose order decides nothing in
// another order, points and tools included.
func (w World) Shuffled(seed uint64) World {
	w = w.copied()
	n := 0
	w.each(func(v *node) {
		if n++; v.kind == aList && v.free {
			v.items = shuffle(streamOf(seed, fmt.Sprint("list ", n)), v.items)
		}
	})
	for name, pairs := range w.points {
		w.points[name] = shuffle(streamOf(seed, name), pairs)
	}
	return w.written()
}

// length is that of the outline as the job says it, about whose middle a truck
// is mirrored.
func (w World) length() ticks { return w.job.get("chassis").get("outline").get("length").length }

// Mirrored is the truck turned end for end: what lay at x lies as far from the
// other end, and the truth with it. Names stay with their things.
func (w World) Mirrored() World {
	w = w.copied()
	wide := w.length()
	w.job = mirrored(w.job, wide)
	for name, pairs := range w.points {
		w.points[name] = mirroredAll(pairs, wide)
	}
	if gears := w.job.get("gears"); gears != nil {
		for _, g := range gears.items {
			worm := g.get("worm")
			if slope := worm.get("slope"); slope != nil {
				slope.number = -slope.number
			}
			if hand := worm.get("hand"); hand != nil {
				hand.text = map[string]string{"left": "right", "right": "left"}[hand.text]
			}
		}
	}
	w.Truth = w.Truth.mirrored(wide.mm())
	return w.written()
}

// FromTheRight is the same truck with the holes of the right plate measured
// from the right, as `seen_from: right` says.
func (w World) FromTheRight() World {
	w = w.copied()
	wide := w.length()
	for _, shaft := range w.job.get("shafts").items {
		bores := shaft.get("bores")
		bore := bores.get("right")
		if bore == nil {
			continue
		}
		if file := bore.get("probed").get("file"); file != nil {
			w.points[file.text] = mirroredAll(w.points[file.text], wide)
		}
		bores.set("right", mirrored(bore, wide).set("seen_from", text("right")))
	}
	return w.written()
}

// mirrored turns a value end for end.
func mirrored(n *node, wide ticks) *node {
	n = n.clone()
	n.each(func(v *node) {
		switch {
		case v.kind == aLength && v.axis == along:
			v.length = wide - v.length
		case v.kind == anAngle:
			v.number = turned(180 - v.number)
		case v.kind == aRecord && v.get("left") != nil && v.get("bottom") != nil:
			// The left wall is now the right one. Its place is turned when it is met.
			i, k := slices.Index(v.keys, "left"), slices.Index(v.keys, "right")
			v.items[i], v.items[k] = v.items[k], v.items[i]
		}
	})
	return n
}

func mirroredAll(list []*node, wide ticks) []*node {
	out := make([]*node, len(list))
	for i, n := range list {
		out[i] = mirrored(n, wide)
	}
	return out
}

// copied is a truck that can be written over.
func (w World) copied() World {
	w.job, w.shop = w.job.clone(), w.shop.clone()
	points := map[string][]*node{}
	for name, pairs := range w.points {
		for _, p := range pairs {
			points[name] = append(points[name], p.clone())
		}
	}
	w.points = points
	return w
}

// each visits every value of the files.
func (w World) each(see func(*node)) {
	w.job.each(see)
	if w.shop != nil {
		w.shop.each(see)
	}
	for _, pairs := range w.points {
		for _, p := range pairs {
			p.each(see)
		}
	}
}

// mirrored turns the truth end for end.
func (t Truth) mirrored(wide float64) Truth {
	at := func(p Point) Point { return Point{wide - p[0], p[1]} }
	deg := func(a float64) float64 { return turned(180 - a) }
	t.Outline = slices.Clone(t.Outline)
	for i, p := range t.Outline {
		t.Outline[i] = at(p)
	}
	t.Shafts, t.Gears, t.Features = slices.Clone(t.Shafts), slices.Clone(t.Gears), slices.Clone(t.Features)
	for i := range t.Shafts {
		shaft := &t.Shafts[i]
		shaft.Design, shaft.Load = at(shaft.Design), deg(shaft.Load)
		for k, b := range shaft.Bores {
			if b == nil {
				continue
			}
			c := *b
			c.Centre, c.Hole.Old, c.Hole.LobesAt = at(b.Centre), at(b.Hole.Old), deg(b.Hole.LobesAt)
			c.Hole.Towards = [2]float64{180 - b.Hole.Towards[1], 180 - b.Hole.Towards[0]}
			c.Edges = slices.Clone(b.Edges)
			for e := range c.Edges {
				c.Edges[e].Deg = deg(c.Edges[e].Deg)
			}
			shaft.Bores[k] = &c
		}
	}
	for i := range t.Gears {
		g := &t.Gears[i]
		g.At, g.Was, g.Slope = at(g.At), at(g.Was), -g.Slope
	}
	for i := range t.Features {
		f := &t.Features[i]
		f.At, f.Design = at(f.At), at(f.Design)
	}
	return t
}
