package seat

import "math"

// length is question 8: is the seat long enough for its diameter, and is there
// room on the axle for what stands outside the plate.
func (j *judge) length(a *Answer) Fail {
	h, b := &j.h, &a.Bush
	body := b.body(h.Plate)
	// What stands proud stands inside: the flange, or the outer face where
	// there is none, lies on the outside of the plate.
	a.Proud = math.Max(0, body-h.Plate)
	a.MustFace = a.Proud > slack && h.RoomIn > 0 && b.ODHigh > h.RoomIn+slack
	a.Bearing = body + b.FlangeT
	if a.MustFace {
		a.Bearing = math.Min(body, h.Plate) + b.FlangeT
	}
	a.SideUse = b.FlangeT
	short := math.Min(body, h.Plate)
	if short < j.r.ShortShare*a.SeatLow-slack && b.FlangeOD == 0 && a.HeldBy != ByCap {
		// A bush turned for the seat has its shoulder where there is room for
		// one; where there is none it goes in plain, as in a clock plate, and
		// its bore is finished in place.
		if !b.Turned {
			return fail(LongEnough, tooShort, short, j.r.ShortShare*a.SeatLow)
		}
		a.Short = true
	}
	if !math.IsNaN(h.SideRoom) && a.SideUse > 0 && a.SideUse > h.SideRoom+slack {
		return fail(LongEnough, sideRoom, a.SideUse, math.Max(0, h.SideRoom))
	}
	return Fail{}
}

// load is question 9: pressure, rubbing speed and their product against what
// the material bears. The pressure is taken over the length in the plate and
// the flange: what stands proud is not counted on.
func (j *judge) load(a *Answer) Fail {
	h, m := &j.h, &a.Bush.Metal
	if h.Load <= 0 {
		return Fail{}
	}
	p := BearingPressure(h.Load, h.Journal, a.Bearing)
	if m.PMax > 0 && p > m.PMax+slack {
		return fail(BearsLoad, pressureHigh, p, m.PMax)
	}
	if h.RPM <= 0 {
		return Fail{}
	}
	v := Rubbing(h.Journal, h.RPM)
	if m.VMax > 0 && v > m.VMax+slack {
		return fail(BearsLoad, speedHigh, v, m.VMax)
	}
	a.PV = PV(h.Load, h.Journal, a.Bearing, h.RPM)
	if m.PVMax > 0 && a.PV > m.PVMax+slack {
		return fail(BearsLoad, pvHigh, a.PV, m.PVMax)
	}
	a.PVHigh = m.PVWarn > 0 && a.PV > m.PVWarn+slack
	return Fail{}
}

// current is question 10: on the live side the bush must carry the current.
func (j *judge) current(a *Answer) Fail {
	if !j.h.Live {
		return Fail{}
	}
	if a.Bush.Metal.Plastic {
		return fail(CarriesCurrent, noCurrentPlastic, 0, 0)
	}
	if a.HeldBy == ByCompound {
		return fail(CarriesCurrent, noCurrentCompound, 0, 0)
	}
	return Fail{}
}

// room is question 11: the flange's room outside, and the neighbours. A boss
// is judged with the wall.
func (j *judge) room(a *Answer) Fail {
	h, s := &j.h, a.SeatHigh/2
	if d := a.Bush.FlangeOD; d > 0 && h.RoomOut > 0 && d > h.RoomOut+slack {
		return fail(HasRoom, flangeRoom, d, h.RoomOut)
	}
	if a.HeldBy == ByCap || j.part != nil && !j.part.through {
		return Fail{} // what stands round the seat was held against its neighbours
	}
	want := j.r.leastMetal(a.HeldBy, a.SeatHigh)
	for i := range h.Near {
		n := &h.Near[i]
		left := n.At - n.R - s
		if left < want-slack {
			f := fail(HasRoom, neighbour, left, want)
			f.Name = n.Name
			return f
		}
		if a.HeldBy == ByPress && left < j.r.NearRadii*s && a.NearHole == "" {
			a.NearHole = n.Name
		}
	}
	return Fail{}
}
