package seat

import (
	"math"

	"rebush/fits/press"
)

// holds is question 4: at the least interference, with the least friction and
// after the plate has slackened, does the bush stay where it is.
func (j *judge) holds(a *Answer) Fail {
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
	if u := a.ULow - j.smoothed(m); u > 0 {
		a.PLow = a.Hold.At(u).P
	}
	a.Force[0] = a.Hold.Force(j.loF, a.PLow)
	a.Torque[0] = a.Force[0] * a.SeatHigh / 2
	a.Stress.L = a.Contact
	a.Force[1] = a.Stress.Force(j.hiF, a.PHigh)
	a.Torque[1] = a.Force[1] * a.SeatLow / 2
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
	f := r.CompoundShear * math.Pi * a.SeatLow * a.Contact
	if a.Filled {
		f *= r.FillDeg / 360
	}
	a.Force = [2]float64{f, f}
	a.Torque = [2]float64{f * a.SeatLow / 2, f * a.SeatLow / 2}
	if f < r.HoldN-slack {
		x := fail(HoldsBush, doesNotHold, f, r.HoldN)
		x.Name = "N along"
		return x
	}
	if t := a.Torque[0]; t < j.needT-slack {
		x := fail(HoldsBush, doesNotHold, t, j.needT)
		x.Name = "N mm turning"
		return x
	}
	return Fail{}
}

// smoothed is what roughness takes off a press, mm: of solid bushes only.
func (j *judge) smoothed(m *Metal) float64 {
	if m.Porous || m.Plastic {
		return 0
	}
	return j.r.Smoothing * (j.r.RzBush + j.r.RzSeat) / 1000
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
	lead := j.r.BushChamferThin
	if (b.ODLow-b.BHigh)/2 > 1+slack {
		lead = j.r.BushChamferThick
	}
	return math.Min(j.body(b), j.h.Plate) - j.r.SeatChamfer - lead
}

// body is the length of the bush beside its flange: that of the plate where it
// is turned for it or not said.
func (j *judge) body(b *Bush) float64 {
	if b.Turned || b.Length == 0 {
		return j.h.Plate
	}
	return b.Length - b.FlangeT
}

// coolsAt is the temperature at which the least press is gone: above the bench
// where the plate grows more, below it where the bush does. NaN where neither
// does, or where the least press is gone already.
func (j *judge) coolsAt(a *Answer) float64 {
	u := a.ULow - j.smoothed(&a.Bush.Metal)
	if u <= 0 {
		return math.NaN()
	}
	t, ok := press.Warm{D: a.SeatHigh, U20: u, HousingExp: j.h.Plate2.Alpha, BushExp: a.Bush.Metal.Alpha}.LooseAt()
	if !ok {
		return math.NaN()
	}
	return t
}

// comesLoose tells whether a temperature lies within use.
func (j *judge) comesLoose(t float64) bool {
	return t > bench && t < j.h.THigh || t < bench && t > j.h.TLow
}

// bench is the temperature at which everything is measured, degrees C.
const bench = 20
