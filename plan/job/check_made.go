package job

import "fmt"

// checkMade holds sizes as made against the hole that they were made of: they
// may be wrong for the plan, but not for any hole.
func checkMade(r *reader, j *Job, root *value) {
	made := root.get("made")
	if made == nil {
		return
	}
	for i, name := range made.order {
		v, m := made.get(name), j.Made[i]
		if !known(r, v, "bore", name, j.boreNames()) {
			continue
		}
		if !m.Seat.Given() && !m.Diameter.Given() && !m.Centre.Given() {
			r.say(v.pos, name+": no size as made is given",
				"write seat:, bore: or centre: with the size, or take it out")
			continue
		}
		s, b := j.Bore(name)
		if journal := s.Journal.On(b.Side); journal.Given() {
			f := journal.Float()
			why := fmt.Sprintf("the %s journal of %s", b.Side, r.show(f))
			between(r, v.get("bore"), m.Diameter, f-0.1, f+1.5, why)
			if seatInPlate(r, j, v.get("seat"), m.Seat) && largerThanHole(r, b, m, v) {
				between(r, v.get("seat"), m.Seat, f+0.4, f+12, why)
			}
		}
		checkBoreOfBush(r, j, m, v)
		if p, _, ok := b.rough(); ok {
			near(r, v.get("centre"), m.Centre, p, 1.5, "the hole as found")
		}
	}
}

// largerThanHole: no hole becomes smaller by being worked.
func largerThanHole(r *reader, b *Bore, m Made, v *value) bool {
	was, key := b.Narrowest, "narrowest"
	if !was.Given() {
		was, key = b.PinGoes, "pins, goes"
	}
	if !m.Seat.Given() || !was.Given() || m.Seat.Float() >= was.Float()-0.02 {
		return true
	}
	r.say(v.get("seat").pos, fmt.Sprintf("seat: %s is smaller than the hole was, %s (%s)", r.show(m.Seat.Float()),
		r.show(was.Float()), key), "a seat as made takes the hole in: check the figure and its unit")
	return false
}

// leastBushWall is the thinnest wall that any bush of a truck has, mm.
const leastBushWall = 0.1

// checkBoreOfBush: the finished bore lies inside the bush, and that in its seat.
func checkBoreOfBush(r *reader, j *Job, m Made, v *value) {
	if !m.Diameter.Given() {
		return
	}
	outside, what := 0.0, ""
	if m.Seat.Given() {
		outside, what = m.Seat.Float(), "the seat that the bush stands in"
	} else {
		for _, b := range j.Bushes {
			if b.Turned {
				return // of any outside
			}
			if o := b.OD.most(); o > outside {
				outside, what = o, "the outside of "+b.Code+", the largest bush"
			}
		}
	}
	if outside == 0 || m.Diameter.Float() <= outside-2*leastBushWall {
		return
	}
	r.say(v.get("bore").pos, fmt.Sprintf("bore: %s leaves a bush no wall: %s is %s", r.show(m.Diameter.Float()), what,
		r.show(outside)), fmt.Sprintf("expected under %s: a bore as made is that of the bush, a seat that of the plate",
		r.show(outside-2*leastBushWall)))
}

// most is the largest that a size may be.
func (s Size) most() float64 {
	if s.High.Given() {
		return s.High.Float()
	}
	return s.about()
}
