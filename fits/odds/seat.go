package odds

import "math"

// Seat is one way of seating one bush, in mm on diameter and MPa. It is what the
// search over bushes and tools asks about thousands of times, and what the
// trials of a whole truck draw from.
type Seat struct {
	// Clean-up: how far the seat as it comes out on the whole clears the worn
	// outline, on radius, and the standard uncertainty of place and survey together,
	// per axis. CleanupU of 0 and a margin of 0 or more: nothing to clean up.
	CleanupMargin, CleanupU float64

	// Seat: SeatMid on the whole, even over plus and minus SeatHalf where one that
	// is there was measured; of one that is cut the standard uncertainty ToolU of
	// what its tool leaves, the same for all its holes, and from hole to hole SeatU.
	SeatMid, SeatHalf, ToolU, SeatU float64
	Lobes                           float64 // out of roundness: a press feels a seat larger than a gauge by 0 to so much, evenly
	Slips                           float64 // share of seats that are spoilt by a slip

	// Outside of the bush: even over ODMid plus and minus ODHalf, plus a
	// normal error ODSigma where it was measured.
	ODMid, ODHalf, ODSigma float64

	// Interference wanted: the least lies anywhere from UMin - Eases to UMin, by
	// the friction that there is.
	UMin, UMax, Eases float64

	// Wall: tension for each mm of interference, no more than TensionMost (0: no
	// such cap), and the strength with its relative standard uncertainty. Strength
	// of 0: it does not break.
	Tension, TensionMost, Strength, StrengthU float64

	// Bore of the bush before pressing, and how it closes: Elastic per unit of
	// interference up to the flow, which lies between FlowLow and FlowHigh of
	// interference, then SlopeLow to SlopeHigh per unit. FlowHigh of 0: never
	// flows.
	BoreMid, BoreHalf   float64
	Elastic             float64
	FlowLow, FlowHigh   float64
	SlopeLow, SlopeHigh float64

	// Finish: where Sized, the bore is opened to a size even between ToolLow and
	// ToolHigh with a normal error SizedU, by no more than MostOpen (0: no limit),
	// unless it is larger already. OwnAxle: until the very axle runs with that
	// clearance.
	Sized, OwnAxle            bool
	ToolLow, ToolHigh, SizedU float64
	MostOpen                  float64

	// Limits of the finished bore as it is gauged (of OwnAxle none), the clearance
	// that it must run with, and the journal with its normal error.
	BoreLow, BoreHigh float64
	RunLow, RunHigh   float64
	Journal, JournalU float64
}

// slices is into how many parts the interference is cut, eases into how many that
// which holds by the friction there is; flows is how many flow stresses are asked.
const (
	slices = 10
	eases  = 3
	flows  = 3
)

// Chance is P(clean-up) times P(no slip, the interference inside, the wall whole)
// times P(bore inside) for such a press. Clean-up is multiplied as if it were
// independent: both see the seat size, which hardly counts beside its place.
func (s *Seat) Chance() float64 {
	cleanup, press, bore := s.Parts()
	return cleanup * press * bore
}

// Parts gives the three chances on their own: that the seat clears, that the
// press is right, and that the bore is right of a bush whose press is. Exact to
// about 0.005.
func (s *Seat) Parts() (cleanup, press, bore float64) {
	clean := Sum{Mean: s.CleanupMargin, Sigma: math.Hypot(s.CleanupU, math.Hypot(s.ToolU, s.SeatU)/2),
		Half: [4]float64{s.SeatHalf / 2}}
	cleanup = 1 - clean.Below(0)
	if s.CleanupU == 0 && s.CleanupMargin >= 0 {
		cleanup = 1
	}
	u := s.Press()
	both := 0.0
	add := func(p, mid, width float64) {
		if !(p > 0) {
			return
		}
		p *= 1 - s.Breaks(mid)
		press += p
		both += p * s.bore(mid, width)
	}
	within := func(from, to, share float64) {
		add((u.Below(to)-u.Below(from))*share, (from+to)/2, to-from)
	}
	reach := 3.5 * u.U()
	from, to := math.Max(s.UMin, u.Mean-reach), math.Min(s.UMax, u.Mean+reach)
	for i := range eases {
		if step := s.Eases / eases; step > 0 {
			at := s.UMin - s.Eases + float64(i)*step
			within(at, math.Min(at+step, s.UMax), (float64(i)+0.5)/eases) // so many of them hold
		}
	}
	if from > to { // all of it lies far from where it would hold
		from, to = s.UMin, math.Max(s.UMin, s.UMax)
	}
	add(u.Below(from)-u.Below(s.UMin), from, 0)
	for i := range slices {
		step := (to - from) / slices
		within(from+float64(i)*step, from+float64(i+1)*step, 1)
	}
	add(u.Below(s.UMax)-u.Below(to), to, 0)
	if press > 0 {
		bore = clip(both / press)
	}
	return cleanup, clip(press) * (1 - s.Slips), bore
}

// Press is the interference that a press feels.
func (s *Seat) Press() Sum {
	return Sum{Mean: s.ODMid - s.SeatMid - s.Lobes/2, Sigma: math.Hypot(math.Hypot(s.ToolU, s.SeatU), s.ODSigma),
		Half: [4]float64{s.SeatHalf, s.ODHalf, s.Lobes / 2}}
}

// Pull is the largest tension in the wall at an interference, MPa.
func (s *Seat) Pull(u float64) float64 {
	t := s.Tension * math.Max(0, u)
	if s.TensionMost > 0 {
		t = math.Min(t, s.TensionMost)
	}
	return t
}

// Breaks is the chance that the wall does not stand an interference.
func (s *Seat) Breaks(u float64) float64 {
	if s.Strength <= 0 {
		return 0
	}
	return Sum{Mean: s.Strength, Sigma: s.Strength * s.StrengthU}.Below(s.Pull(u))
}

// A journal's normal error is cut into steps of so many standard deviations, and
// even within each.
const (
	journalStep  = 0.5
	journalSteps = 4 // to either side of the middle one
)

// bore is the chance that the finished bore is right after a press of
// interference u, which stands for all within width about it.
func (s *Seat) bore(u, width float64) (right float64) {
	n := 1
	if s.FlowLow < u && u < s.FlowHigh {
		n = flows
	}
	band := (s.FlowHigh - s.FlowLow) / float64(n)
	for i := range n {
		flow := s.FlowLow + (float64(i)+0.5)*band
		closed, slope, doubt := s.closure(math.Max(0, u), flow)
		if s.FlowHigh > 0 && u > flow {
			doubt = math.Hypot(doubt, (slope-s.Elastic)*band/2)
		}
		right += s.finished(Sum{Mean: s.BoreMid - closed, Half: [4]float64{s.BoreHalf, slope * width / 2, doubt}}) / float64(n)
	}
	return right
}

// closure is how far the bore closes at interference u, its slope there, and
// half the width of its band, for a bush that flows from interference flow on.
//
// Source: fits/press/METHODS.md 3.
func (s *Seat) closure(u, flow float64) (closed, slope, half float64) {
	if s.FlowHigh <= 0 || u <= flow {
		return s.Elastic * u, s.Elastic, 0
	}
	slope = (s.SlopeLow + s.SlopeHigh) / 2
	return s.Elastic*flow + slope*(u-flow), slope, math.Abs(s.SlopeHigh-s.SlopeLow) / 2 * (u - flow)
}

// finished is the chance that a bore which the press has closed is right.
func (s *Seat) finished(closed Sum) (right float64) {
	if s.JournalU == 0 {
		return s.runs(closed, s.Journal, 0)
	}
	const sure = 1 - 1e-6
	if ends := journalSteps * journalStep * s.JournalU; s.runs(closed, s.Journal-ends, 0) > sure && s.runs(closed, s.Journal+ends, 0) > sure {
		return 1
	}
	below := 0.0
	for k := -journalSteps; k <= journalSteps; k++ {
		to := 1.0
		if k < journalSteps {
			to = Phi((float64(k) + 0.5) * journalStep)
		}
		right += (to - below) * s.runs(closed, s.Journal+float64(k)*journalStep*s.JournalU, journalStep/2*s.JournalU)
		below = to
	}
	return right
}

// runs is the same for a journal even over plus and minus half.
func (s *Seat) runs(closed Sum, journal, half float64) float64 {
	tool := Sum{Mean: (s.ToolLow + s.ToolHigh) / 2, Sigma: s.SizedU, Half: [4]float64{math.Abs(s.ToolHigh-s.ToolLow) / 2}}
	run := closed // as the journal sees it
	run.Half[3] = half
	low, high := journal+s.RunLow, journal+s.RunHigh
	if s.OwnAxle { // it is opened from its very journal
		tool.Mean += journal
		return clip(s.under(run, tool, high) - s.under(run, tool, low))
	}
	seen := tool
	seen.Half[1] = half
	under := func(by, limit float64) float64 { // the nearer of what runs and what is gauged
		if by < limit {
			return s.under(run, seen, by)
		}
		return s.under(closed, tool, limit)
	}
	above := func(by, limit float64) float64 {
		if by > limit {
			return s.under(run, seen, by)
		}
		return s.under(closed, tool, limit)
	}
	return clip(under(high, s.BoreHigh) - above(low, s.BoreLow))
}

// under is the chance that the finished bore is less than x: the larger of the
// closed bore and of what it is opened to, where it lets itself be opened so far.
func (s *Seat) under(closed, tool Sum, x float64) float64 {
	p := closed.Below(x)
	if !s.Sized || p == 0 {
		return p
	}
	q := tool.Below(x)
	if s.MostOpen <= 0 || q == 1 {
		return p * q
	}
	far := closed.Below(x - s.MostOpen)
	return far + (p-far)*q
}
