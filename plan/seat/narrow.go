package seat

import "math"

// narrowed takes a miss of the fit by a few micrometres for a matter of chance:
// of what the tool leaves only that is accepted, by gauge, in which the bush is
// neither loose nor too tight. false where nothing would be left to accept, and of
// what is turned for its seat. What the wall stands, and metal, are no matter of
// chance: they are judged by what is accepted.
//
// Source: METHODS.md 5.
func (j *judge) narrowed(a *Answer, f Fail) bool {
	r := &j.r
	if a.Bush.Turned || a.Way.Kind == NoTool {
		return false
	}
	least, most := math.NaN(), math.NaN()
	switch f.What {
	case dropsLoose, tooTight:
		if a.ULow <= slack {
			least = r.TurnPress
		}
		if over := r.MaxShare * a.SeatLow; a.UHigh > over+slack {
			most = over
		}
	case pressTooHeavy:
		most = f.Want / 1000
	case compoundGap:
		least, most = -r.GapHigh, -r.GapLow
	default:
		return false
	}
	low, high := LeastAccepted(a.SeatLow, a.Bush.ODHigh, most), MostAccepted(a.SeatHigh, a.Bush.ODLow, least)
	if high-low < r.Band-slack {
		return false
	}
	if !math.IsNaN(least) {
		a.Presses[0] = least
	}
	if !math.IsNaN(most) {
		a.Presses[1] = most
	}
	a.SeatLow, a.SeatHigh = low, high
	if !math.IsInf(a.CleanUp, 1) {
		a.CleanUp = CleanUp(low, j.h.S) // it was asked of the least that the tool leaves
	}
	a.ULow, a.UHigh = Interference(a.Bush.ODLow, high), Interference(a.Bush.ODHigh, low)
	a.misses(f)
	return true
}

// misses notes what the limits of an answer miss.
func (a *Answer) misses(f Fail) {
	if a.Slight.What == noFail {
		a.Slight = f
	}
}

// LeastAccepted is the least seat that is accepted of what a tool leaves from low
// on, for a bush of such an outside at the most and the most that it may press: NaN,
// all of it.
func LeastAccepted(low, outside, most float64) float64 {
	if math.IsNaN(most) {
		return low
	}
	return math.Max(low, outside-most)
}

// MostAccepted is the same for the largest seat, of what a tool leaves up to high.
func MostAccepted(high, outside, least float64) float64 {
	if math.IsNaN(least) {
		return high
	}
	return math.Min(high, outside-least)
}
