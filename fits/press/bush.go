package press

import "math"

// misesOverTresca is the most by which von Mises exceeds Tresca, 2/sqrt(3).
const misesOverTresca = 2 / sqrt3

const (
	sqrt3 = 1.7320508075688772
	sin60 = sqrt3 / 2
)

// bush fills in the stresses of the bush at P:
//
//	at the bore -2p/(1-Q^2), at the outside -p(1+Q^2)/(1-Q^2)
//
// A solid shaft has -p everywhere.
func (s Seat) bush(st *State) {
	if s.Di == 0 {
		st.BushHoopBore, st.BushHoopSeat, st.BushTresca = -st.P, -st.P, st.P
		return
	}
	q2, rest := s.squares()
	st.BushHoopBore = -2 * st.P / rest
	st.BushHoopSeat = -st.P * (1 + q2) / rest
	st.BushTresca = -st.BushHoopBore
}

// FlowPressure is the seat pressure at which the whole wall of the bush flows,
// MPa, by Tresca; 0 where the bush has no yield:
//
//	p = sy (D-Di)/D
//
// Source: exact for a ring in plane stress, the hoop being -sy everywhere:
// METHODS.md 3.
func (s Seat) FlowPressure() float64 { return s.Bush.Yield * (s.D - s.Di) / s.D }

// MisesOverTresca is by how much a ring can bear more than Tresca says, at the
// most: 2/sqrt(3) to three places, in plane strain.
const MisesOverTresca = 1.155

// FlowPressureMises is the same by von Mises, from 1 to 1.155 times as much.
// With f from pi/3 at the bore,
//
//	sin f exp(sqrt(3) f) = Q^2 sin(pi/3) exp(sqrt(3) pi/3),  p = (2/sqrt(3)) sy cos(f + pi/6)
//
// Source: Nadai's parameter for a ring in plane stress; METHODS.md 3.
func (s Seat) FlowPressureMises() float64 { return s.misesAt(s.flowAngle()) }

func (s Seat) misesAt(f float64) float64 {
	return misesOverTresca * s.Bush.Yield * math.Cos(f+pi/6)
}

// flowAngle is Nadai's parameter at the outside of the bush, by Newton on the
// logarithm of its equation. That is concave, and the start lies below the
// root, so each step comes closer from below.
func (s Seat) flowAngle() float64 {
	if s.Di == 0 {
		return 0
	}
	q := s.Di / s.D
	f := q * q * sin60
	want := math.Log(f) + sqrt3*pi/3
	for range 30 {
		sin, cos := math.Sincos(f)
		step := (want - math.Log(sin) - sqrt3*f) / (cos/sin + sqrt3)
		f += step
		if step <= 1e-14*f {
			break
		}
	}
	return min(f, pi/3)
}

// flowSlope is how much a flowing bush's bore closes for each bit that its
// outside is pressed in further, expected by the flow rule of von Mises:
//
//	sqrt(sin f / sin(pi/3)) exp(sqrt(3)/2 (pi/3 - f))
//
// Source: own derivation from Nadai's parameter (METHODS.md 3); it gives 1.155
// for a 4/6 bush where finite elements found 1.16.
func flowSlope(f float64) float64 {
	return math.Sqrt(math.Sin(f)/sin60) * math.Exp(sqrt3/2*(pi/3-f))
}

// FlowSlopes is the band of that: 1 for metal that flows by Tresca or compacts,
// up to (dm+t/2)/(dm-t/2) for metal that keeps its volume, dm being the mean
// diameter of the bush and t its wall.
func (s Seat) FlowSlopes() (low, high float64) {
	return 1, (3*s.D + s.Di) / (s.D + 3*s.Di)
}

// closure fills in how far the bore closes. While nothing flows it is
//
//	2 p Di / (EI (1-Q^2))
//
// and once the bush flows each further bit of interference closes the bore by
// the slope of FlowSlopes. perP is the interference per unit of
// pressure, angle the parameter of the flow.
func (s Seat) closure(st *State, perP, angle float64) {
	_, rest := s.squares()
	elastic := 2 * s.Di / (s.Bush.E * rest) // per unit of pressure
	st.Closure = elastic * st.PMid
	st.ClosureLow, st.ClosureHigh = st.Closure, st.Closure
	if !st.Flows || s.Di == 0 {
		return
	}
	low, high := s.FlowSlopes()
	more := st.U - st.P*perP
	st.ClosureLow = elastic*st.P + low*more
	st.ClosureHigh = elastic*st.P + high*more
	st.Closure += flowSlope(angle) * (st.U - st.PMid*perP)
	st.ClosureLow = min(st.ClosureLow, st.Closure)
	st.ClosureHigh = max(st.ClosureHigh, st.Closure)
}
