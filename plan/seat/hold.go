package seat

import (
	"math"

	"rebush/fits/press"
)

// holds is question 4: at the least interference, with the least friction and
// after the plate has slackened, does the bush stay where it is.
func (j *judge) holds(a *Answer) Fail {
	a.Chamfer = j.r.chamfer(&a.Bush)
	a.Contact = j.contact(&a.Bush)
	if a.Contact <= slack {
		return fail(HoldsBush, noContact, a.Contact, 0)
	}
	switch a.HeldBy {
	case ByCap:
		return Fail{}
	case ByCompound:
		return j.glueHolds(a)
	}
	r, m := &j.r, &a.Bush.Metal
	a.Unproven = m.Porous || m.Plastic
	a.Hold = j.press(&a.Bush, a.Contact, a.SeatHigh, false, a.Slackens)
	a.Left = press.Left(a.ULow, j.smoothed(m))
	a.PLow = a.Hold.At(a.Left).P
	a.Force[0] = AxialForce(j.loF, a.SeatHigh, a.Contact, a.PLow)
	a.Torque[0] = Torque(a.Force[0], a.SeatHigh)
	a.PressIn = AxialForce(j.loF, a.SeatHigh, a.Contact, j.press(&a.Bush, a.Contact, a.SeatHigh, true,
		false).At(a.ULow).P)
	a.Force[1] = AxialForce(j.hiF, a.SeatLow, a.Contact, a.PHigh)
	a.Torque[1] = Torque(a.Force[1], a.SeatLow)
	a.LooseAt = j.coolsAt(a)

	weakAlong := a.Force[0] < r.HoldN-slack
	weakRound := a.Torque[0] < j.needT-slack
	// Plastic creeps, zinc slackens, and what comes loose somewhere in use
	// does not hold either.
	if weakAlong || weakRound || a.Slackens || m.Plastic || j.comesLoose(a.LooseAt) {
		a.Second = j.secondHold(a)
	}
	if a.Second == Flange && (weakRound || m.Plastic || j.comesLoose(a.LooseAt)) {
		// A flange holds along the axle only; turning wants more.
		a.Second |= j.besideFlange(a)
	}
	a.WindowLow = math.Min(j.pressNeeded(a), a.WinHigh)
	return Fail{}
}

// glueHolds is the same for a bush in compound: it wants a clean solid bush, a
// cool place, and enough of the seat.
func (j *judge) glueHolds(a *Answer) Fail {
	r := &j.r
	if a.Bush.Metal.Porous {
		return fail(HoldsBush, compoundPorous, 0, 0)
	}
	if j.h.THigh > r.CompoundC+slack {
		return fail(HoldsBush, compoundHot, j.h.THigh, r.CompoundC)
	}
	round := 360.0
	if a.Filled {
		round = r.FillDeg
	}
	f := CompoundForce(r.CompoundShear, a.SeatLow, a.Contact, round)
	t := Torque(f, a.SeatLow)
	a.Force, a.Torque = [2]float64{f, f}, [2]float64{t, t}
	if f < r.HoldN-slack {
		x := fail(HoldsBush, doesNotHold, f, r.HoldN)
		x.Name = along
		return x
	}
	if t < j.needT-slack {
		x := fail(HoldsBush, doesNotHold, t, j.needT)
		x.Name = turning
		return x
	}
	return Fail{}
}

// The two ways in which a bush is to hold, with their units.
const (
	along   = "N along"
	turning = "N mm turning"
)

// smoothed is what roughness takes off a press, mm: of solid bushes only.
func (j *judge) smoothed(m *Metal) float64 {
	if m.Porous || m.Plastic {
		return 0
	}
	return press.Smoothing(j.r.Smoothing, j.r.RzBush, j.r.RzSeat) / 1000
}

// secondHold names what else can hold the bush: its flange, compound on a
// clean solid bush, or a stake.
func (j *judge) secondHold(a *Answer) Second {
	if a.Bush.FlangeOD > 0 {
		return Flange
	}
	return j.besideFlange(a)
}

func (j *judge) besideFlange(a *Answer) Second {
	if m := &a.Bush.Metal; j.shop.Compound && !m.Porous && !m.Plastic && j.h.THigh <= j.r.CompoundC+slack {
		return Compound
	}
	return Stake
}

// pressNeeded is the least interference that is right: enough to hold what the
// second hold does not. Compound and a stake hold both ways; a flange holds
// along, and turning is left to the press.
func (j *judge) pressNeeded(a *Answer) float64 {
	switch a.Second {
	case 0:
		return j.pressThatHolds(a.Hold, &a.Bush.Metal, j.r.HoldN, j.needT)
	case Flange:
		return j.pressThatHolds(a.Hold, &a.Bush.Metal, 0, j.needT)
	}
	return 0
}

// pressThatHolds is the interference that gives a force along and a torque,
// +Inf where the bush flows before it holds them.
func (j *judge) pressThatHolds(seat press.Seat, m *Metal, force, torque float64) float64 {
	per := seat.Force(j.loF, 1) // along, for each MPa
	need := math.Max(force, 2*torque/seat.D)
	if need <= 0 {
		return 0
	}
	return interferenceFor(seat, need/per) + j.smoothed(m)
}

// contact is the length of seat that the bush touches: the plate, or the body
// where that is shorter, less both lead chamfers.
func (j *judge) contact(b *Bush) float64 {
	return Contact(j.h.Plate, b.body(j.h.Plate), j.r.chamfer(b), j.r.lead(b))
}

// chamfer is what is broken off the edge of the seat of a bush.
func (r *Rules) chamfer(b *Bush) float64 {
	return Chamfer(b.FlangeOD > 0, r.SeatChamfer, r.FlangeRoot, r.FlangeOver)
}

// lead is the lead chamfer of a bush.
func (r *Rules) lead(b *Bush) float64 {
	return Lead(b.ODLow, b.BHigh, r.ThickWall, r.BushChamferThin, r.BushChamferThick)
}

// body is the length of the bush beside its flange: that of the plate where it
// is turned for it or not said.
func (b *Bush) body(plate float64) float64 {
	if b.Turned || b.Length == 0 {
		return plate
	}
	return b.Length - b.FlangeT
}

// coolsAt is the temperature at which the least press is gone: above the bench
// where the plate grows more, below it where the bush does. NaN where neither
// does, or where the least press is gone already. Only what springs back counts:
// a bush that has flowed follows the seat no farther.
func (j *judge) coolsAt(a *Answer) float64 {
	if a.Left <= 0 {
		return math.NaN()
	}
	return LooseAt(a.Hold.At(a.Left).Spring, a.SeatHigh, j.h.Plate2.Alpha, a.Bush.Metal.Alpha)
}

// comesLoose tells whether a temperature lies within use.
func (j *judge) comesLoose(t float64) bool {
	return t > bench && t < j.h.THigh || t < bench && t > j.h.TLow
}
