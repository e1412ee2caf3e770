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

// AsLeft says whether the ends of a seat are those that its tool leaves, or that
// were measured: they are printed to the nearest. Else they are limits that are held
// to, and are printed rounded into each other, wherever they stand.
func (a *Answer) AsLeft() bool {
	switch a.Way.Kind {
	case Reamer, OldSeatWay, AsItIs:
		return a.leaves() == [2]float64{a.SeatLow, a.SeatHigh} // all of it is accepted
	}
	return false
}
