package seat

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/odds"
	"rebush/plan/habit"
)

// SetSize is the diameter that a seat is cut for, mm: the middle of a reamer's own
// limits, the size of an end mill, and else the middle of what the way leaves.
func (a *Answer) SetSize() float64 {
	switch {
	case a.Way.Kind == Reamer:
		return a.Way.own()
	case a.Way.Kind == EndMill:
		return a.Way.Size
	}
	l := a.leaves()
	return (l[0] + l[1]) / 2
}

// leaves are the limits of what the way leaves, also where not all of it is
// accepted.
func (a *Answer) leaves() [2]float64 {
	if a.Leaves[1] > 0 {
		return a.Leaves
	}
	return [2]float64{a.SeatLow, a.SeatHigh}
}

// does is what this shop's tools do with the seat of an answer; false where none
// is cut.
func (a *Answer) does(h habit.Habits) (habit.Size, bool) {
	switch a.Way.Kind {
	case Reamer:
		return h.Seat(habit.Reamed, a.Way.Tool), true
	case BoringHead, NoTool:
		return h.Seat(habit.Bored, ""), true
	case EndMill:
		return h.Seat(habit.Milled, ""), true
	}
	return habit.Size{}, false
}

// lobes is how far out of round a way leaves a seat.
func (r *Rules) lobes(k Kind) float64 {
	switch k {
	case Reamer:
		return r.LobesReamed
	case EndMill:
		return r.LobesMilled
	}
	return r.LobesBored
}

// runs takes in how much larger than expected this shop's bores come out, where
// its record tells. One that is sized then comes out as it has until now; one that
// is used as it closes keeps the spread of bush and press, which the record has too.
func runs(c habit.Size, o *odds.Seat) {
	if !c.Recorded() {
		return
	}
	over, u := c.OverUm/1000, c.UOverUm/1000
	if !o.Sized {
		o.BoreMid += over
		o.BoreHalf = math.Hypot(o.BoreHalf, math.Sqrt(3)*u) // even, of the same variance
		return
	}
	at := (o.ToolLow+o.ToolHigh)/2 + over
	o.ToolLow, o.ToolHigh, o.SizedU = at, at, math.Hypot(u, c.ScatterUm/1000)
}

// ExpectedSeat is what a seat that is cut comes out as, by what this shop's tools
// do: on the whole, how well that is known, and how far one hole scatters.
type ExpectedSeat struct {
	SeatMM    dim.Gauged `json:"seat_mm"`
	UUM       float64    `json:"u_um"`
	ScatterUM float64    `json:"scatter_um"`
	Jobs      int        `json:"jobs"` // past jobs of the shop's record, 0: the rules alone
	From      string     `json:"from"`
}

// leaves explains where a seat that is cut is expected to lie; nil where none
// is.
func (e *explainer) leaves() *ExpectedSeat {
	does, ok := e.a.does(e.in.Shop.Habits)
	if !ok || e.a.Way.Kind == NoTool {
		return nil
	}
	p, from := e.page, does.Source()
	set := p.Leaf("tool/set_mm", "size that the seat is cut for", "mm", e.toolLine(), e.a.SetSize())
	over := p.Leaf("tool/over_um", "how much larger than that this shop's tools leave seats on the whole", "um", from, does.OverUm)
	u := p.Leaf("expected_seat/u_um", "standard uncertainty of the seat that is expected", "um", from, does.UOverUm)
	scatter := p.Leaf("expected_seat/scatter_um", "standard deviation from seat to seat", "um", from, does.ScatterUm)
	at := p.Calc2("expected_seat/seat_mm", "seat that is expected on the whole", "mm", "size it is cut for plus what the tools "+
		"leave it larger", "plan/habit/METHODS.md 1", LeavesSeat, set, over)
	return &ExpectedSeat{SeatMM: dim.Size(at.V), UUM: dim.Near(u.V, 2), ScatterUM: dim.Near(scatter.V, 2), Jobs: does.Jobs, From: from}
}
