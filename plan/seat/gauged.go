package seat

// Gauged are the limits that the seat of an answer is gauged against, in mm:
// those that its tool leaves. Under a cap nothing is cut, and what was measured
// is one size: there they are the limits between which the bearing has its
// play, cap_slide_um.
func Gauged(a *Answer, r Rules) [2]float64 {
	if a.Way.Kind != CapWay {
		return [2]float64{a.SeatLow, a.SeatHigh}
	}
	return [2]float64{a.Bush.ODHigh + r.CapLow, a.Bush.ODLow + r.CapHigh}
}
