package seat

import "math"

// holds is question 4: at the least interference, with the least friction and
// after the plate has slackened, does the bush stay where it is.
func (j *judge) holds(a *Answer) Fail {
	h, r := j.h, j.r
	a.Contact = j.contact(a.Bush)
	if a.Contact <= 0 {
		return fail(4, tooShort, a.Contact, r.ShortShare*a.SeatLow)
	}
	needT := r.HoldFactor * r.HoldFriction * h.Load * h.Journal / 2 // N mm
	switch a.HeldBy {
	case "strap":
		return Fail{}
	case "compound":
		if a.Bush.Metal.Porous {
			return fail(4, compoundPorous, 0, 0)
		}
		f := r.CompoundShear * math.Pi * a.SeatLow * a.Contact
		a.Force = [2]float64{f, f}
		a.Torque = [2]float64{f * a.SeatLow / 2, f * a.SeatLow / 2}
		if f < r.HoldN {
			x := fail(4, doesNotHold, f, r.HoldN)
			x.Name = "N along"
			return x
		}
		if f*a.SeatLow/2 < needT {
			x := fail(4, doesNotHold, f*a.SeatLow/2, needT)
			x.Name = "N mm turning"
			return x
		}
		return Fail{}
	}
	seat := j.press(a, a.SeatHigh, false)
	a.Hold = seat
	u := a.ULow
	if !a.Bush.Metal.Porous && !a.Bush.Metal.Plastic {
		u -= r.Smoothing * (r.RzBush + r.RzSeat) / 1000
	} else {
		a.Unproven = true
	}
	if u > 0 {
		st := seat.At(u)
		a.PLow = st.P
	}
	area := math.Pi * a.SeatHigh * a.Contact
	a.Force[0] = j.loF * area * a.PLow
	a.Torque[0] = a.Force[0] * a.SeatHigh / 2
	a.Force[1] = j.hiF * math.Pi * a.SeatLow * a.Contact * a.PHigh
	a.Torque[1] = a.Force[1] * a.SeatLow / 2
	weak := a.Force[0] < r.HoldN-slack || a.Torque[0] < needT-slack
	if weak || a.Slackens {
		a.Second = j.secondHold(a)
	}
	if weak && a.Second == "flange" && a.Torque[0] < needT-slack {
		// A flange holds along the axle only; turning wants more.
		if j.shop.Compound && !a.Bush.Metal.Porous && h.THigh <= r.CompoundC {
			a.Second = "flange and compound"
		} else {
			a.Second = "flange and stake"
		}
	}
	// The window asks that the press alone holds, also where a second hold is
	// called for: a bush that rattles in its seat is not made good by a flange.
	a.WindowLow = math.Min(j.pressThatHolds(a, a.SeatHigh, needT), a.WinHigh)
	return Fail{}
}

// pressThatHolds solves for the interference that gives the force and torque
// asked for on a seat of diameter d.
func (j *judge) pressThatHolds(a *Answer, d, needT float64) float64 {
	r := j.r
	area := math.Pi * d * math.Max(a.Contact, 0.1)
	needP := math.Max(r.HoldN, needT*2/d) / (j.loF * area)
	seat := j.press(a, d, false)
	lo, hi := 0.0, 0.05*d
	if seat.At(hi).P < needP {
		return hi
	}
	for range 40 {
		mid := (lo + hi) / 2
		if seat.At(mid).P < needP {
			lo = mid
		} else {
			hi = mid
		}
	}
	if !a.Bush.Metal.Porous && !a.Bush.Metal.Plastic {
		hi += r.Smoothing * (r.RzBush + r.RzSeat) / 1000
	}
	return hi
}

// contact is the length of seat that the bush touches: the plate, or the body
// where that is shorter, less both lead chamfers.
func (j *judge) contact(b Bush) float64 {
	body := b.Length - b.FlangeT
	if b.Turned || b.Length == 0 {
		body = j.h.Plate
	}
	lead := j.r.BushChamferThin
	if (b.ODLow-b.BHigh)/2 > 1 {
		lead = j.r.BushChamferThick
	}
	return math.Min(body, j.h.Plate) - j.r.SeatChamfer - lead
}

// coolsAt is the temperature at which the least press is gone, NaN where the
// seat grips harder the hotter it gets (then cold is the danger, and it is the
// temperature below).
func (j *judge) coolsAt(a *Answer) float64 {
	u := a.ULow
	if !a.Bush.Metal.Porous && !a.Bush.Metal.Plastic {
		u -= j.r.Smoothing * (j.r.RzBush + j.r.RzSeat) / 1000
	}
	da := (j.h.Plate2.Alpha - a.Bush.Metal.Alpha) * 1e-6
	if u <= 0 || math.Abs(da) < 1e-9 {
		return math.NaN()
	}
	return 20 + u/(a.SeatHigh*da)
}
