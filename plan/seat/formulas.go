package seat

import (
	"math"

	"rebush/fits/press"
)

// The formulas of a seat, each once: the search decides by them and the ledger
// explains by them. Lengths are mm, diameters unless they say radius; stresses
// MPa, forces N, expansions 1e-6/K, temperatures degrees C.

// LeastBore is the smallest finished bore at the bench: journal + over, or what
// must pass + room where something must (0: nothing).
func LeastBore(journal, over, mustPass, room float64) float64 {
	least := journal + over
	if mustPass > 0 {
		least = math.Max(least, mustPass+room)
	}
	return least
}

// MostBore is the largest finished bore that is accepted.
func MostBore(journal, clearance float64) float64 { return journal + clearance }

// Running is the running clearance on diameter.
func Running(bore, journal float64) float64 { return bore - journal }

// WarmBore is the smallest bore at the bench that still runs at an end of use
// where the clearance changes by so much.
func WarmBore(journal, runLeast, change float64) float64 { return journal + runLeast - change }

// Interference is on diameter; below zero it is clearance.
func Interference(bush, seat float64) float64 { return bush - seat }

// LeavesSeat is the seat that a tool is expected to leave, on the whole: what it is
// set to, mm, and how much larger this shop's tools cut, um.
func LeavesSeat(set, overUm float64) float64 { return set + overUm/1000 }

// CleanUp is the seat's radius less the radius that takes in the wear.
func CleanUp(seat, clears float64) float64 { return seat/2 - clears }

// Doubt is how far a seat may miss the worn outline, on radius: twice the doubt
// of where it is cut and that of the old centre.
func Doubt(uPlace, uSurvey float64) float64 { return 2 * math.Hypot(uPlace, uSurvey) }

// MetalLeft is the metal between a seat and an edge that lies so far from the
// centre.
func MetalLeft(edge, seat float64) float64 { return edge - seat/2 }

// PlateTension is the largest tension in the plate, MPa: of the pressure of the
// bush and of what stands round it, for a factor of tension for each MPa.
func PlateTension(bush, part, factor float64) float64 { return (bush + part) * factor }

// Lead is the lead chamfer of a bush: the thick one where its thinnest wall is
// over the limit.
func Lead(odLow, boreHigh, limit, thin, thick float64) float64 {
	if (odLow-boreHigh)/2 > limit+slack {
		return thick
	}
	return thin
}

// Chamfer is what is broken off the edge of a seat: enough for a bush to start,
// and under a flange for its root to clear.
func Chamfer(flanged bool, plain, root, over float64) float64 {
	if flanged {
		return root + over
	}
	return plain
}

// Contact is the length of seat that the bush touches: the shorter of plate and
// body less both lead chamfers.
func Contact(plate, body, chamfer, lead float64) float64 {
	return math.Min(plate, body) - chamfer - lead
}

// AxialForce is what a press holds along the axis, or takes to go in.
//
// Source: Coulomb friction.
func AxialForce(friction, seat, contact, pressure float64) float64 {
	return press.Seat{D: seat, L: contact}.Force(friction, pressure)
}

// Torque is what a force at the seat's rim holds, N mm.
func Torque(force, seat float64) float64 { return force * seat / 2 }

// NeededTorque is what a bush must hold of a shaft that runs dry, N mm.
func NeededTorque(factor, friction, load, journal float64) float64 {
	return factor * friction * load * journal / 2
}

// CompoundForce is what retaining compound holds along: its shear strength over
// the seat's surface, as far round (of 360 degrees) as the wall is sound.
func CompoundForce(shear, seat, contact, round float64) float64 {
	force := shear * math.Pi * seat * contact
	if round < 360 {
		force *= round / 360
	}
	return force
}

// LooseAt is the temperature at which an interference is gone; NaN where plate
// and bush grow alike.
//
// Source: linear expansion: fits/press/METHODS.md 6.
func LooseAt(left, seat, plate, bush float64) float64 {
	t, ok := press.Warm{D: seat, U20: left, HousingExp: plate, BushExp: bush}.LooseAt()
	if !ok {
		return math.NaN()
	}
	return t
}

// ClosedBore is the bore after pressing.
func ClosedBore(bore, closure float64) float64 { return bore - closure }

// ThickBore is the bore of a round bush with the wall of the thick side of an
// eccentric one; off is the middle of its bore from that of its outside, mm.
func ThickBore(bore, off float64) float64 { return math.Max(0, bore-2*off) }

// ThinBore is the same for the thin side, and never more than leaves a thousandth of
// the seat for a wall.
func ThinBore(bore, off, seat float64) float64 {
	if off == 0 {
		return bore
	}
	return math.Min(bore+2*off, 0.998*seat)
}

// SetDoubt is how well the bore of an eccentric bush stands where it belongs, mm
// standard and per axis: how well it is set over when it is turned, and what a
// doubt of its angle in degrees makes of that. 0 of a bush that is not eccentric.
func SetDoubt(off, clockDeg, setOver float64) float64 {
	if off == 0 {
		return 0
	}
	return math.Hypot(setOver, off*clockDeg*math.Pi/180)
}

// MostFinished is the largest bore that is left as it closed: what is larger than
// it may be is not.
func MostFinished(closed, most float64) float64 { return math.Min(closed, most) }

// OntoMandrel is how far a bore closes that a mandrel in it stops, and from which
// it springs back.
func OntoMandrel(bore, mandrel, spring float64) float64 { return bore - mandrel + spring }

// BearingPressure is over the projected area.
func BearingPressure(load, journal, length float64) float64 { return load / (journal * length) }

// Rubbing is the speed of the journal's surface, m/s, at a speed in rev/min.
func Rubbing(journal, rpm float64) float64 { return math.Pi * journal * rpm / 60000 }

// PV is the product of both, MPa m/s.
func PV(load, journal, length, rpm float64) float64 {
	return BearingPressure(load, journal, length) * Rubbing(journal, rpm)
}

// SidePlay is what a shaft has between its hubs.
func SidePlay(hubToHub, width, flanges, washers float64) float64 {
	return hubToHub - width - flanges - washers
}

// Expansions are those of bush, plate and shaft, 1e-6/K.
type Expansions struct{ Bush, Plate, Shaft float64 }

// bench is the temperature at which everything is measured.
const bench = 20

// RunChange is how much running clearance is gained, or lost below zero, from
// the bench to a temperature. The bush grows by itself, and what its seat does
// not give way to closes the bore as a press does:
//
//	bore x bush x dT - share x seat x (bush - plate) x dT - journal x shaft x dT
//
// with share the closure for each bit of interference. A press is not undone
// below its largest interference, and a bush under a cap takes up its play first.
// Source: linear expansion, fits/press/METHODS.md 6; the ring, fits/press/METHODS.md 1.
func RunChange(by Hold, e Expansions, t, bore, journal, seat, uHigh, share float64) float64 {
	dt := (t - bench) * 1e-6
	tighter := seat * (e.Bush - e.Plate) * dt
	switch by {
	case ByPress:
		tighter = math.Max(tighter, -uHigh)
	case ByCap:
		tighter = math.Max(0, tighter+uHigh)
	}
	return bore*e.Bush*dt - journal*e.Shaft*dt - share*tighter
}

// wall is the housing of a seat of diameter d as the mechanics know it: a round
// boss, a straight edge, or a plate without a near edge.
func (h *Hole) wall(d float64) press.Wall {
	switch {
	case h.BossR > 0 && h.BossR-h.BossE < h.Edge:
		return press.Boss{OD: 2 * h.BossR, Ecc: h.BossE}
	case !math.IsInf(h.Edge, 1):
		return press.Edge{Ligament: MetalLeft(h.Edge, d)}
	}
	return press.Infinite{}
}

// pressed is the mechanics of a bush of bore di in a seat of diameter d: what
// every figure of pressure, tension and closure comes from.
func pressed(wall press.Wall, d, di float64, plate, bush press.Elastic) press.Seat {
	return press.Seat{D: d, Di: di, Wall: wall, Housing: plate, Bush: bush}
}
