package odds

import "math"

// Seat is one way of seating one bush, in mm. It is what the search over
// bushes and tools asks about thousands of times.
type Seat struct {
	// Clean-up: how far the middle of the seat size clears the worn outline,
	// on radius, and the standard uncertainty of place and survey together,
	// per axis. CleanupU of 0 and a margin of 0 or more: nothing to clean up.
	CleanupMargin, CleanupU float64

	// Seat diameter: even over SeatMid plus and minus SeatHalf, plus an
	// oversize even from 0 to Over, plus a normal error SeatSigma.
	SeatMid, SeatHalf, Over, SeatSigma float64

	// Outside of the bush: even over ODMid plus and minus ODHalf, plus a
	// normal error ODSigma where it was measured.
	ODMid, ODHalf, ODSigma float64

	// Interference wanted, on diameter.
	UMin, UMax float64

	// Bore of the bush before pressing, and how it closes: Elastic per unit of
	// interference up to the flow, which lies between FlowLow and FlowHigh of
	// interference, then SlopeLow to SlopeHigh per unit. FlowHigh of 0: never
	// flows.
	BoreMid, BoreHalf   float64
	Elastic             float64
	FlowLow, FlowHigh   float64
	SlopeLow, SlopeHigh float64

	// Finish: where Sized, the bore is opened to a size even between ToolLow
	// and ToolHigh, unless it is larger already.
	Sized             bool
	ToolLow, ToolHigh float64

	// Limits of the finished bore, and the normal doubt about the journal that
	// they were set from (0 where the bore is opened to its own axle).
	BoreLow, BoreHigh, JournalU float64
}

// Chance is P(clean-up) times P(interference inside) times P(bore inside).
// Exact for each; the three are multiplied as if independent, which they are
// not quite: all three see the seat size.
func (s *Seat) Chance() float64 {
	cleanup, press, bore := s.Parts()
	return cleanup * press * bore
}

// Parts gives the three chances on their own.
func (s *Seat) Parts() (cleanup, press, bore float64) {
	clean := Sum{Mean: s.CleanupMargin + s.Over/4, Sigma: math.Hypot(s.CleanupU, s.SeatSigma/2),
		Half: [4]float64{s.SeatHalf / 2, s.Over / 4}}
	cleanup = 1 - clean.Below(0)
	if s.CleanupU == 0 && s.CleanupMargin >= 0 {
		cleanup = 1
	}
	u := Sum{Mean: s.ODMid - s.SeatMid - s.Over/2, Sigma: math.Hypot(s.SeatSigma, s.ODSigma),
		Half: [4]float64{s.SeatHalf, s.Over / 2, s.ODHalf}}
	press = u.Inside(s.UMin, s.UMax)
	return cleanup, press, s.bore(u)
}

// bore is the chance that the finished bore lies inside its limits, with the
// closure taken straight about its middle. A bush outside its press window is
// another matter, so the middle interference is held inside the window.
func (s *Seat) bore(u Sum) float64 {
	mid := math.Max(0, math.Min(math.Max(u.Mean, s.UMin), s.UMax))
	least, slope := s.closure(mid, s.FlowHigh, s.SlopeLow)
	most, steep := s.closure(mid, s.FlowLow, s.SlopeHigh)
	slope = (slope + steep) / 2
	spread := math.Min(u.U(), (s.UMax-s.UMin)/math.Sqrt(12)) * slope // of the closure, from interference inside its window
	closed := Sum{Mean: s.BoreMid - (least+most)/2, Sigma: spread,
		Half: [4]float64{s.BoreHalf, math.Abs(most-least) / 2}}
	if !s.Sized {
		closed.Sigma = math.Hypot(closed.Sigma, s.JournalU)
		return closed.Inside(s.BoreLow, s.BoreHigh)
	}
	tool := Sum{Mean: (s.ToolLow + s.ToolHigh) / 2, Sigma: s.JournalU, Half: [4]float64{math.Abs(s.ToolHigh-s.ToolLow) / 2}}
	closed.Sigma = math.Hypot(closed.Sigma, s.JournalU)
	// The finished bore is the larger of the two.
	return clip(closed.Below(s.BoreHigh)*tool.Below(s.BoreHigh) - closed.Below(s.BoreLow)*tool.Below(s.BoreLow))
}

// closure is how far the bore closes at interference u, and its slope there,
// for a bush that flows from interference flow on.
//
// Source: fits/press/METHODS.md 3.
func (s *Seat) closure(u, flow, after float64) (closed, slope float64) {
	if s.FlowHigh <= 0 || u <= flow {
		return s.Elastic * u, s.Elastic
	}
	return s.Elastic*flow + after*(u-flow), after
}
