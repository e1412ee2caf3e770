package job

import (
	"fmt"
	"math"
	"sort"

	"rebush/fits/dim"
)

func middle(x []float64) float64 {
	y := append([]float64(nil), x...)
	sort.Float64s(y)
	n := len(y)
	return (y[(n-1)/2] + y[n/2]) / 2
}

// mostWear is how much larger than its journal a worn bore may be measured; a
// truck with more than that does not run at all.
const mostWear = 1.8

// leastBelow is how far under its journal a hole may be read by anything, mm.
const leastBelow = 0.02

func checkBore(r *reader, j *Job, s *Shaft, b *Bore, v *value) {
	journal := s.Journal.On(b.Side)
	if journal.Given() {
		f := journal.Float()
		why := fmt.Sprintf("the %s journal of %s", b.Side, r.show(f))
		between(r, v.get("pins").get("goes"), b.PinGoes, f-0.05, f+mostWear, why)
		between(r, v.get("pins").get("stops"), b.PinStops, f-0.02, f+mostWear, why)
		if b.Seat != nil {
			between(r, v.get("seat").get("diameter"), b.Seat.Diameter, f+0.4, f+9, why)
		}
		between(r, v.get("bushed").get("od"), b.BushedOD, f+0.4, f+9, why)
		between(r, v.get("boss"), b.Boss, f+0.8, 40, why)
		between(r, v.get("room").get("inside"), b.RoomIn, f+0.5, 45, why)
		between(r, v.get("room").get("outside"), b.RoomOut, f+0.5, 45, why)
		between(r, v.get("oil").get("diameter"), oilDiameter(b), 0.3, math.Max(f, 1), why)
		if b.Widest.Given() {
			play := b.Widest.Float() - f
			between(r, v.get("lift"), b.Lift, play-0.25, play+0.15,
				"the play by the diameters, "+r.show(math.Max(play, 0)))
		}
	}
	if b.Widest.Given() && b.Narrowest.Given() && b.Widest.Less(b.Narrowest) {
		r.say(v.get("widest").pos, fmt.Sprintf("widest: %s is less than narrowest, %s", r.show(b.Widest.Float()),
			r.show(b.Narrowest.Float())), "change them about, or measure again")
	}
	if b.PinGoes.Given() && b.PinStops.Given() &&
		!(b.PinGoes.Less(b.PinStops) && b.PinStops.Float()-b.PinGoes.Float() < 0.6) {
		r.say(v.get("pins").pos, fmt.Sprintf("pins: goes %s and stops %s do not bracket one hole",
			r.show(b.PinGoes.Float()), r.show(b.PinStops.Float())),
			"goes is the largest pin that enters, stops the next larger one")
	}
	if b.Narrowest.Given() {
		between(r, v.get("pins").get("goes"), b.PinGoes, b.Narrowest.Float()-0.3, b.Narrowest.Float()+0.05,
			"narrowest, "+r.show(b.Narrowest.Float()))
	}
	seatInPlate(r, j, v.get("bushed").get("od"), b.BushedOD)
	checkDirections(r, b, v)
	checkPlaces(r, j, b, v, journal)
	for i, e := range v.get("edges").items() {
		checkEdge(r, j, b, b.Edges[i], e, journal)
	}
	for i, sp := range v.get("spans").items() {
		checkSpan(r, j, b, b.Spans[i], sp, journal)
	}
	if w := v.get("with"); w != nil {
		readings := []string{"centre", "widest", "narrowest", "widest_at", "journal", "probed", "seat", "edges",
			"pins", "walls", "spans", "lift"}
		for _, what := range w.order {
			if !has(readings, what) {
				r.say(w.get(what).pos, fmt.Sprintf("with: %q is not something that is measured", short(what)),
					"did you mean `"+nearest(what, readings)+"`? It may be "+orList(readings))
			}
		}
	}
	if b.Seat != nil && b.Bushed {
		r.say(v.get("seat").pos, "seat: it cannot be measured while the bush is in (bushed: yes)",
			"take one of the two away; its outside, where you know it, is bushed: {od: 5.0}")
	}
}

// seatInPlate: no seat is as large as its plate is high or long.
func seatInPlate(r *reader, j *Job, v *value, d dim.Length) bool {
	x0, y0, x1, y1, ok := j.Chassis.box()
	least := math.Min(x1-x0, y1-y0)
	if v == nil || !ok || d.Float() < least {
		return true
	}
	r.say(v.pos, fmt.Sprintf("%s: a seat of %s does not stand in a plate of %s by %s", v.name, r.show(d.Float()),
		r.show(x1-x0), r.show(y1-y0)), "expected under "+r.show(least)+": check the figure and its unit")
	return false
}

func oilDiameter(b *Bore) (l dim.Length) {
	if b.Oil != nil {
		l = b.Oil.Diameter
	}
	return l
}

// checkDirections: wear goes to one end of the largest diameter.
func checkDirections(r *reader, b *Bore, v *value) {
	if b.WidestAt == nil {
		return
	}
	for _, w := range b.WornTo {
		off := math.Mod(math.Abs(w-*b.WidestAt), 180)
		if off > 90 {
			off = 180 - off
		}
		if off > 45 && len(b.WornTo) == 1 {
			r.say(v.get("worn_to").pos, fmt.Sprintf("worn_to: %g is not an end of the largest diameter, which lies "+
				"at %g", w, *b.WidestAt),
				fmt.Sprintf("expected about %g or %g", turn(*b.WidestAt), turn(*b.WidestAt+180)))
		}
	}
}

// radius is about how large a hole is, from whatever was measured.
func (b *Bore) radius(journal dim.Length) float64 {
	switch {
	case b.Narrowest.Given():
		return b.Narrowest.Float() / 2
	case b.PinGoes.Given():
		return b.PinGoes.Float() / 2
	}
	return journal.Float() / 2
}

func checkPlaces(r *reader, j *Job, b *Bore, v *value, journal dim.Length) {
	radius := b.radius(journal)
	in := func(v *value, key string, p Point, radius float64) {
		if v != nil && p.Given() && !j.Chassis.inside(p.Float(), radius) {
			x0, y0, x1, y1, _ := j.Chassis.box()
			defer func() { b.Centre = Point{} }() // what does not go with it either has one cause
			if ask := r.pointShifted(v, j.plausiblePlace(b, radius)); ask != "" {
				r.say(v.pos, fmt.Sprintf("%s: a hole of %s at [%s, %s] is not inside the outline of the plate", key,
					r.show(2*radius), r.show(p.X.Float()), r.show(p.Y.Float())), ask)
				return
			}
			r.say(v.pos, fmt.Sprintf("%s: a hole of %s at [%s, %s] is not inside the outline of the plate", key,
				r.show(2*radius), r.show(p.X.Float()), r.show(p.Y.Float())),
				fmt.Sprintf("the outline runs from %s to %s along and %s to %s up, seen from the left side",
					r.show(x0), r.show(x1), r.show(y0), r.show(y1)))
		}
	}
	in(v.get("centre"), "centre", b.Centre, radius)
	if b.Seat != nil {
		in(v.get("seat").get("centre"), "centre of the seat", b.Seat.Centre, b.Seat.Diameter.Float()/2)
		if b.Centre.Given() && b.Seat.Centre.Given() {
			near(r, v.get("seat").get("centre"), b.Seat.Centre, b.Centre.Float(), 1.5, "the centre as found")
		}
	}
	if b.Walls != nil {
		checkWalls(r, j, b, v.get("walls"), journal)
	}
	if v.get("probed") != nil && len(b.Probed) > 0 {
		checkProbed(r, b, v.get("probed"), journal)
		if p, from, _ := b.rough(); from == "probed" && !j.Chassis.inside(p, 0) {
			r.say(v.get("probed").pos, "probed: the points do not lie inside the outline of the plate",
				"both plates are seen from the left side, in one unit")
		}
	}
}

func near(r *reader, v *value, p Point, want [2]float64, within float64, why string) {
	f := p.Float()
	if d := math.Hypot(f[0]-want[0], f[1]-want[1]); v != nil && p.Given() && d > within {
		r.say(v.pos, fmt.Sprintf("%s: [%s, %s] is %s from %s", v.name, r.show(f[0]), r.show(f[1]), r.show(d), why),
			"expected within "+r.show(within))
	}
}

// checkProbed holds every point against the middle of them all.
func checkProbed(r *reader, b *Bore, v *value, journal dim.Length) {
	c, _, _ := (&Bore{Probed: b.Probed, Centre: b.Centre}).rough()
	if !journal.Given() {
		return
	}
	low, high := journal.Float()/2-0.4-b.Stylus.Float()/2, journal.Float()/2+mostWear
	told := 0
	for i, p := range b.Probed {
		d := math.Hypot(p.X.Float()-c[0], p.Y.Float()-c[1])
		if d >= low && d <= high {
			continue
		}
		pos := v.pos
		if v.shape.kind == aList && i < len(v.list) {
			pos = v.list[i].pos
		} else if i < len(b.probedLines) {
			pos = Pos{b.ProbedAt, b.probedLines[i], 1}
		}
		if told++; told <= 5 {
			r.say(pos, fmt.Sprintf("probed: point %d lies %s from the middle of the hole", i+1, r.show(d)),
				fmt.Sprintf("expected %s to %s for this journal: check the point and its unit",
					r.show(math.Max(low, 0)), r.show(high)))
		}
	}
}

func checkWalls(r *reader, j *Job, b *Bore, v *value, journal dim.Length) {
	w := b.Walls
	for i, axis := range []string{"left and right", "bottom and top"} {
		if !w[2*i].Given() || !w[2*i+1].Given() || !journal.Given() {
			continue
		}
		d := w[2*i+1].Float() - w[2*i].Float()
		if d < journal.Float()-0.05 || d > journal.Float()+mostWear {
			r.say(v.pos, fmt.Sprintf("walls: %s are %s apart, which does not go with a journal of %s", axis,
				r.show(d), r.show(journal.Float())),
				"give the place of each wall of the hole in the frame of the plate")
		}
	}
	if p, from, ok := b.rough(); ok && from == "walls" && !j.Chassis.inside(p, 0) {
		r.say(v.pos, "walls: this hole is not inside the outline of the plate",
			"both plates are seen from the left side, in one unit")
	}
	if b.Centre.Given() && w[0].Given() && w[1].Given() && w[2].Given() && w[3].Given() {
		mid := [2]float64{(w[0].Float() + w[1].Float()) / 2, (w[2].Float() + w[3].Float()) / 2}
		if f := b.Centre.Float(); math.Hypot(f[0]-mid[0], f[1]-mid[1]) > 1 {
			r.say(v.pos, "walls: their middle is more than 1 mm from centre", "mend the one that is wrong")
		}
	}
}
