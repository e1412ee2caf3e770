package route

import (
	"math"

	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/seat"
)

// bore puts one chosen seat into the terms of the route.
func (in Input) bore(x seat.Seated) Bore {
	a, bush := x.Chosen, x.Chosen.Bush
	out := Bore{Name: x.Name(), Shaft: x.Old.Shaft.Name, Side: x.Old.Bore.Side, Plate: x.Hole.Plate, At: x.At,
		Old: x.Old.Stands().O, Repaired: x.Old.Moved(), Found: 2 * x.Old.Stands().R,
		S: x.Hole.S, Allow: seat.Allow(x.Hole, in.Seat.Rules), Wear: x.Old.Stands().W, Ligament: a.Ligament,
		Way: a.Way.Kind, WayName: a.Way.Name, WaySize: a.Way.Size, Seat: seat.Gauged(a, in.Seat.Rules), AsLeft: a.AsLeft(),
		UPlace: x.Hole.UPlace, Bush: bush.Code, BushMade: bush.Turned, BushToBuy: bush.ToBuy, BushSizes: shapeOf(bush).turned(bush.Metal.Name),
		BushShape: shapeOf(bush),
		Bushed:    x.Old.Bore.Bushed, BushMetal: bush.Metal.Name,
		OD: [2]float64{bush.ODLow, bush.ODHigh}, U: [2]float64{a.ULow, a.UHigh},
		Length: bush.Length, FlangeOD: bush.FlangeOD, Proud: a.Proud, Porous: bush.Metal.Porous,
		Leaded: bush.Metal.Leaded,
		HeldBy: a.HeldBy, Second: a.Second, PressN: [2]float64{0, a.Force[1]}, Finish: a.Finish,
		FinishTool:  a.FinishTool,
		FinishSizes: a.FinishSizes, MandrelIn: a.MandrelIn, Filled: a.Filled,
		Limits: a.Bore, Expected: a.Expected, Closed: a.Closed, Journal: x.Hole.Journal, LoadDeg: math.NaN(),
		IfLarge: ifLarge(x), Mend: a.Mend, Part: a.Part, SeatAt: a.SeatAt,
		SeatUnknown: seatUnknown(x)}
	if n := x.Old.Bore.Now; n != nil {
		out.Made, out.Follows, out.Repaired = true, n.Placed, false
		if out.In = n.Bush != "" && !n.Out; n.Out {
			out.Out = n.Bush
		}
	}
	if out.SeatAt == ([2]float64{}) {
		out.SeatAt = x.At
	}
	if a.Seen != nil {
		out.S, out.Allow = a.Seen.S, seat.Allow(*a.Seen, in.Seat.Rules)
	}
	if bush.Priced {
		price := bush.Price
		out.BushPrice = &price
	}
	if x.Hole.Plate2.Casting {
		if out.Tension[1] = a.PeakLimit; a.HeldBy == seat.ByPress {
			out.Tension[0] = a.Peak
		}
	}
	if a.Part != nil && !a.Part.Stays {
		if t := in.tool(a.Part.Way); t != nil {
			out.PartReach, out.PartShank = t.Reach.Float(), t.Shank.Float()
		}
	}
	if load := in.Toward[x.Name()]; load != [2]float64{} {
		out.LoadDeg = math.Atan2(load[1], load[0]) * 180 / math.Pi
		if in.Towards != nil {
			out.LoadTo = in.Towards(out.LoadDeg)
		}
	}
	if a.Filled {
		// The lobe is not cleared here: the tool stands on the old wall all
		// round it, and what the seat does not take in is filled.
		out.S, out.Allow = x.Old.Worn.R, 0
	}
	if a.HeldBy == seat.ByPress {
		out.PressN[0] = a.PressIn
	}
	if t := in.tool(a.Way); t != nil {
		out.Reach, out.Shank = t.Reach.Float(), t.Shank.Float()
	}
	if o := x.Old.Bore.Oil; o != nil {
		out.Oil = &Oil{AtDeg: o.AtDeg, Diameter: o.Diameter.Float()}
	}
	return out
}

// seatUnknown says whether an old bush is still in whose seat nobody has
// measured and whose outside nobody knows. One that stays hides nothing that
// matters.
func seatUnknown(x seat.Seated) bool {
	b := x.Old.Bore
	stays := x.Chosen.Part != nil && x.Chosen.Part.Stays
	return b.Bushed && b.Seat == nil && !b.BushedOD.Given() && !stays
}

// finished is a bore that this job has bushed and brought to size before.
func finished(x seat.Site) Bore {
	h := x.Old
	n := h.Bore.Now
	size := [2]float64{n.BoreMM, n.BoreMM}
	return Bore{Name: h.Name(), Shaft: h.Shaft.Name, Side: h.Bore.Side, At: n.At, Old: n.At, Made: true, In: true,
		Finish: seat.AsDelivered, Limits: size, Expected: size, Closed: size, Journal: h.Journal(), LoadDeg: math.NaN()}
}

// tool is the reamer or end mill of the shop that makes a seat, nil for any
// other way.
func (in Input) tool(w seat.Way) *job.Tool {
	sh := in.Seat.Job.Shop
	switch w.Kind {
	case seat.Reamer:
		return &sh.Reamers[w.Index]
	case seat.EndMill: // the boring head stands between the two lists
		return &sh.EndMills[w.Index-len(sh.Reamers)-1]
	}
	return nil
}

// ifLarge says what is done where a seat comes out too large. What goes on from
// there is planned from the size that was made, not guessed before.
func ifLarge(x seat.Seated) say.Text {
	if x.Chosen.Mend == seat.Renew {
		return ""
	}
	return "too large: press nothing and cut no more there; give the size as made to who planned this, the rest is " +
		"planned from it"
}
