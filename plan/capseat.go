package plan

import "rebush/plan/seat"

// seatLimits are the limits that the seat of an answer is gauged against.
func (m *maker) seatLimits(a *seat.Answer) [2]float64 {
	if a.Way.Kind == seat.CapWay {
		m.used("cap_slide_um")
	}
	return seat.Gauged(a, m.seatRule)
}
