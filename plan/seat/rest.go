package seat

import "math"

// length is question 8: is the seat long enough for its diameter, and is there
// room on the axle for what stands outside the plate.
func (j *judge) length(a *Answer) Fail {
	h, b := j.h, a.Bush
	body := b.Length - b.FlangeT
	if b.Turned {
		body = h.Plate
	}
	short := math.Min(body, h.Plate)
	if short < j.r.ShortShare*a.SeatLow-slack && b.FlangeOD == 0 && !b.Turned {
		return fail(8, tooShort, short, j.r.ShortShare*a.SeatLow)
	}
	a.Proud = math.Max(0, body-h.Plate)
	a.SideUse = b.FlangeT // what stands proud of the plate is faced off before pressing
	if !math.IsNaN(h.SideRoom) && a.SideUse > 0 && a.SideUse > h.SideRoom+slack {
		return fail(8, sideRoom, a.SideUse, math.Max(0, h.SideRoom))
	}
	return Fail{}
}

// load is question 9: pressure, rubbing speed and their product against what
// the material bears.
func (j *judge) load(a *Answer) Fail {
	h, m := j.h, a.Bush.Metal
	length := a.Bush.Length
	if a.Bush.Turned || length == 0 {
		length = h.Plate
	}
	if h.Load <= 0 {
		return Fail{}
	}
	p := h.Load / (h.Journal * length)
	if m.PMax > 0 && p > m.PMax+slack {
		return fail(9, pressureHigh, p, m.PMax)
	}
	if h.RPM <= 0 {
		return Fail{}
	}
	v := math.Pi * h.Journal * h.RPM / 60000
	if m.VMax > 0 && v > m.VMax+slack {
		return fail(9, speedHigh, v, m.VMax)
	}
	a.PV = p * v
	if m.PVMax > 0 && a.PV > m.PVMax+slack {
		return fail(9, pvHigh, a.PV, m.PVMax)
	}
	a.PVHigh = m.PVWarn > 0 && a.PV > m.PVWarn
	return Fail{}
}

// current is question 10: on the live side the bush must carry the current.
func (j *judge) current(a *Answer) Fail {
	if !j.h.Live {
		return Fail{}
	}
	if a.Bush.Metal.Plastic {
		return fail(10, noCurrentPlastic, 0, 0)
	}
	if a.HeldBy == "compound" {
		return fail(10, noCurrentCompound, 0, 0)
	}
	return Fail{}
}

// room is question 11: gear, neighbour bore and boss.
func (j *judge) room(a *Answer) Fail {
	h := j.h
	if d := a.Bush.FlangeOD; d > 0 && h.RoomOut > 0 && d > h.RoomOut+slack {
		return fail(11, flangeRoom, d, h.RoomOut)
	}
	for _, n := range h.Near {
		left := n.At - n.R - a.SeatHigh/2
		if want := j.r.NoWall * a.SeatHigh / 2; left < want-slack {
			f := fail(11, neighbour, left, want)
			f.Name = n.Name
			return f
		}
	}
	return Fail{}
}
