package plan

import "rebush/plan/seat"

// seatLimits are the limits that the seat of an answer is gauged against, in
// mm: those that its tool leaves. Under a cap nothing is cut, and what was
// measured is one size: there they are the limits between which the bearing
// has its play, cap_slide_um.
func (m *maker) seatLimits(a *seat.Answer) [2]float64 {
	if a.Way.Kind != seat.CapWay {
		return [2]float64{a.SeatLow, a.SeatHigh}
	}
	m.used("cap_slide_um")
	return [2]float64{a.Bush.ODHigh + m.seatRule.CapLow, a.Bush.ODLow + m.seatRule.CapHigh}
}
