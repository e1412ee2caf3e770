package job

import (
	"fmt"
	"math"
)

// end is the value of a length that may be given for each end.
func (v *value) end(side Side) *value {
	if v != nil && v.shape.kind == aRecord {
		return v.get(string(side))
	}
	return v
}

func checkShaft(r *reader, j *Job, s *Shaft, v *value) {
	if bores := v.get("bores"); bores != nil && len(bores.by) == 0 {
		r.say(bores.pos, "bores: neither left nor right is given", "write bores: {left: {...}, right: {...}}")
	}
	for i := range s.Bores {
		b := &s.Bores[i]
		bv := v.get("bores").get(string(b.Side))
		if v.get("journal") != nil && !s.Journal.On(b.Side).Given() {
			if ends := v.get("journal"); ends.missing(string(b.Side)) {
				r.say(ends.pos, fmt.Sprintf("journal: the %s end is missing", b.Side),
					"write journal: {left: 3.16, right: 2.36}")
			}
		}
		checkBore(r, j, s, b, bv)
		if journal := s.Journal.On(b.Side); journal.Given() {
			f := journal.Float()
			why := fmt.Sprintf("the %s journal of %s", b.Side, r.show(f))
			between(r, v.get("must_pass").end(b.Side), s.MustPass.On(b.Side), f-0.02, f+0.8, why)
			between(r, v.get("unworn").end(b.Side), s.Unworn.On(b.Side), f-0.02, f+0.8, why)
		}
	}
	if l, rt := s.On(Left), s.On(Right); l != nil && rt != nil {
		checkPlates(r, s, l, rt, v.get("bores"))
	}
	w := j.Chassis.Width
	if w.Given() {
		f := w.Float()
		between(r, v.get("hub_to_hub"), s.HubToHub, f-0.5, f+12, "the width of the chassis, "+r.show(f))
		between(r, v.get("back_to_back"), s.BackToBack, f-0.5, f+40, "the width of the chassis, "+r.show(f))
		between(r, v.get("contacts_apart"), s.ContactsApart, f-2, f+80, "the width of the chassis, "+r.show(f))
	}
	if d := s.WheelDiameter; d.Given() && s.Journal.Left.Given() {
		between(r, v.get("wheel_diameter"), d, 1.5*s.Journal.Left.Float(), 80,
			"an axle of "+r.show(s.Journal.Left.Float()))
	}
}

// rough is about where a bore is, from whatever was measured.
func (b *Bore) rough() (p [2]float64, from string, ok bool) {
	switch {
	case b.Centre.Given():
		return b.Centre.Float(), "centre", true
	case b.Seat != nil && b.Seat.Centre.Given():
		return b.Seat.Centre.Float(), "seat", true
	case len(b.Probed) > 0:
		x, y := make([]float64, 0, len(b.Probed)), make([]float64, 0, len(b.Probed))
		for _, q := range b.Probed {
			x, y = append(x, q.X.Float()), append(y, q.Y.Float())
		}
		return [2]float64{middle(x), middle(y)}, "probed", true
	case b.Walls != nil && b.Walls[0].Given() && b.Walls[1].Given() && b.Walls[2].Given() && b.Walls[3].Given():
		return [2]float64{(b.Walls[0].Float() + b.Walls[1].Float()) / 2,
			(b.Walls[2].Float() + b.Walls[3].Float()) / 2}, "walls", true
	}
	return p, "", false
}

// checkPlates holds the two bores of a shaft against each other: two holes for
// one straight shaft lie within 1.5 mm.
func checkPlates(r *reader, s *Shaft, left, right *Bore, v *value) {
	a, fromA, okA := left.rough()
	b, fromB, okB := right.rough()
	if !okA || !okB {
		return
	}
	for axis, name := range []string{"x", "y"} {
		if d := math.Abs(a[axis] - b[axis]); d > 1.5 {
			pos := v.get("right").get(fromB)
			r.say(pos.place(v), fmt.Sprintf("%s: the %s of the two bores of %q differ by %s (left %s %s, right %s %s)",
				fromB, name, s.Name, r.show(d), fromA, r.show(a[axis]), fromB, r.show(b[axis])),
				"expected within "+r.show(1.5)+": both are seen from the left side (seen_from: right turns figures "+
					"over), in one unit")
			left.Centre, right.Centre = Point{}, Point{} // what does not go with them either has one cause
		}
	}
}

func checkWheelbase(r *reader, j *Job, root *value) {
	v := root.get("chassis").get("wheelbase")
	w := j.Chassis.Wheelbase
	if v == nil || w == nil {
		return
	}
	var xs [2]float64
	ok := true
	for i, name := range v.get("between").items() {
		if !known(r, name, "shaft", name.raw, j.shaftNames()) {
			ok = false
			continue
		}
		s := j.shaft(name.raw)
		found := false
		for k := range s.Bores {
			if p, _, there := s.Bores[k].rough(); there && !found {
				xs[i], found = p[0], true
			}
		}
		ok = ok && found
	}
	if w.Between[0] == w.Between[1] && w.Between[0] != "" {
		r.say(v.get("between").pos, "between: both shafts are the same", "name the two shafts of the wheelbase")
		return
	}
	if ok && w.Between[1] != "" {
		d := math.Abs(xs[0] - xs[1])
		between(r, v.get("found"), w.Found, d-0.8, d+0.8, "the bores, which are "+r.show(d)+" apart")
		if !w.Found.Given() {
			between(r, v.get("sister"), w.Sister, d-2, d+2, "the bores, which are "+r.show(d)+" apart")
		}
	}
	if w.Found.Given() {
		f := w.Found.Float()
		between(r, v.get("sister"), w.Sister, f*0.95, f*1.05, "the wheelbase found, "+r.show(f))
	}
}

// located is a thing with a place here and in another frame.
type located struct {
	what, key   string
	here, other [2]float64
	v           *value
}

// checkFrames holds drawing and sister centres against what was found here:
// the distance of any two things is the same in every frame, within 0.5 mm
// and 1 %.
func checkFrames(r *reader, j *Job, root *value) {
	for _, frame := range []string{"design", "sister"} {
		var all []located
		add := func(what, key string, here [2]float64, p Point, v *value) {
			if p.Given() && v != nil {
				all = append(all, located{what, key, here, p.Float(), v})
			}
		}
		for i, v := range root.get("shafts").items() {
			s := &j.Shafts[i]
			for k := range s.Bores {
				if p, _, ok := s.Bores[k].rough(); ok {
					q := s.Design
					if frame == "sister" {
						q = s.Sister
					}
					add(s.Name, "centre", p, q, v.get(frame))
					break
				}
			}
		}
		for i, v := range root.get("chassis").get("features").items() {
			f := &j.Chassis.Features[i]
			q := f.Design
			if frame == "sister" {
				q = f.Sister
			}
			if f.At.Given() {
				add(f.Name, "at", f.At.Float(), q, v.get(frame))
			}
		}
		frames(r, frame, all)
	}
	for i, v := range root.get("chassis").get("features").items() {
		f := &j.Chassis.Features[i]
		if a := v.get("at"); a != nil && f.At.Given() && !j.Chassis.inside(f.At.Float(), f.Diameter.Float()/2) {
			r.say(a.pos, fmt.Sprintf("at: %s at %s, %s is not inside the outline of the plate", f.Name,
				r.show(f.At.X.Float()), r.show(f.At.Y.Float())),
				"both plates are seen from the left side, from the lower left corner of the outline")
		}
	}
}

func frames(r *reader, frame string, all []located) {
	misfits := make([]int, len(all))
	for i := range all {
		for k := range all {
			d := math.Hypot(all[i].here[0]-all[k].here[0], all[i].here[1]-all[k].here[1])
			e := math.Hypot(all[i].other[0]-all[k].other[0], all[i].other[1]-all[k].other[1])
			if math.Abs(d-e) > 0.5+0.01*d {
				misfits[i]++
			}
		}
	}
	for i := range all {
		if misfits[i] > 0 && 2*misfits[i] >= len(all)-1 {
			r.say(all[i].v.pos, fmt.Sprintf("%s and %s: %s does not lie as far from the others by one as by the "+
				"other", frame, all[i].key, all[i].what),
				"check this "+frame+" place and its unit, and the place found here")
		}
	}
}
