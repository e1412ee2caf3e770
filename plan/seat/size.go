package seat

import "math"

// sizes settles the limits of the seat, and those of a bush that is made for
// it.
func (j *judge) sizes(a *Answer, glued bool) Fail {
	w := &a.Way
	if a.Bush.Turned {
		return j.turn(a, glued)
	}
	if w.Kind == NoTool {
		a.SeatLow, a.SeatHigh = j.suits(&a.Bush, glued)
		return Fail{Question: FitsTight, What: noTool, Have: a.SeatLow, Want: a.SeatHigh}
	}
	if w.Kind != BoringHead {
		a.SeatLow, a.SeatHigh = w.Low, w.High
		return Fail{}
	}
	b := &a.Bush
	od := (b.ODLow + b.ODHigh) / 2
	// A boring head can be set to clean up as well, where the bush is large
	// enough for both.
	mid := od - j.aim(b, glued)
	if !glued {
		mid = math.Max(mid, math.Min(2*j.need+j.r.BoringHead, od))
	}
	f := j.reaches(w, mid)
	if f.What != noFail { // as near as it reaches, if the bush holds there
		a.misses(f)
		if at := math.Max(w.Low, math.Min(w.High, mid)); math.Abs(at-mid) < j.r.UsualShare*mid {
			mid, f = at, Fail{}
		}
	}
	a.SeatLow, a.SeatHigh = mid-j.r.BoringHead, mid+j.r.BoringHead
	return f
}

// reaches asks whether a boring tool can be set to a size.
func (j *judge) reaches(w *Way, mid float64) Fail {
	switch {
	case mid < w.Low-slack:
		return Fail{Question: FitsTight, What: noSuchWay, Have: mid, Want: w.Low, Name: w.Name}
	case mid > w.High+slack:
		return Fail{Question: FitsTight, What: noSuchWay, Have: mid, Want: w.High, Name: w.Name}
	}
	return Fail{}
}

// aim is the interference on diameter that a seat of free size is cut for: the
// middle between what holds and what the wall stands, and no more than the
// usual press for such a bush; glued, the middle of the gap, below zero.
func (j *judge) aim(b *Bush, glued bool) float64 {
	if glued {
		return -(j.r.GapLow + j.r.GapHigh) / 2
	}
	lo, hi := j.window(b, (b.ODLow+b.ODHigh)/2)
	if hi < lo {
		return hi
	}
	return (lo + hi) / 2
}

// window is the interference that a seat of diameter d can have: from what the
// press needs to hold to what the wall stands. It is what a seat of free size
// is aimed into.
func (j *judge) window(b *Bush, d float64) (lo, hi float64) {
	hi = j.r.UsualShare * d
	c := j.circle(d)
	if c.left <= 0 {
		return 0, 0
	}
	if j.light(c) {
		hi = math.Min(hi, j.r.LightShare*c.d)
	}
	hi = math.Min(hi, j.mostInterference(j.press(b, 0, d, true, false), c))
	contact := math.Max(j.contact(b), 0.1)
	lo = j.pressThatHolds(j.press(b, contact, d, false, false), &b.Metal, j.r.HoldN, j.needT)
	return math.Min(lo, hi), hi
}

// turn chooses the sizes of a bush that is made for the seat: the outside for
// the middle of the press window, the bore so that it closes to where it
// should run, and a shoulder where the seat is short. No bush can be made
// where its wall would be too thin.
func (j *judge) turn(a *Answer, glued bool) (out Fail) {
	r, b, w, half := &j.r, &a.Bush, &a.Way, j.r.Turned/2
	aimBore := j.aimBore()
	mid, seatHalf := (w.Low+w.High)/2, (w.High-w.Low)/2
	if w.Kind == BoringHead || w.Kind == NoTool {
		// The smallest seat that clears, with a wall that can be turned.
		seatHalf = r.BoringHead
		mid = math.Max(2*j.need+r.BoringHead, w.Low)
		mid = math.Max(mid, aimBore+2*math.Max(j.wallOf, r.LeastWall))
		per := 1 / r.BoredStep
		step := math.Ceil(mid*per-slack) / per
		if step > w.High+slack && mid < w.High && w.Kind == BoringHead {
			step = w.High
		}
		mid = step
	}
	a.SeatLow, a.SeatHigh = mid-seatHalf, mid+seatHalf
	switch {
	case w.Kind == NoTool && !j.shop.Lathe:
		out = Fail{Question: FitsTight, What: noLathe}
	case w.Kind == NoTool:
		out = Fail{Question: FitsTight, What: noTool, Have: a.SeatLow, Want: a.SeatHigh}
	case w.Kind == BoringHead:
		out = j.reaches(w, mid)
	}
	b.Length = j.h.Plate
	b.BLow, b.BHigh = aimBore-half, aimBore+half
	b.ODLow, b.ODHigh = mid-half, mid+half
	b.Off = j.off
	if wall := (mid-aimBore)/2 - j.off; wall < r.LeastWall-slack && out.What == noFail {
		out = fail(CleansUp, wallOfBush, wall, r.LeastWall)
		if wall <= half {
			return out
		}
	}
	if j.h.Plate < r.ShortShare*mid && w.Kind != CapWay && j.roomForShoulder(mid) {
		b.FlangeOD, b.FlangeT = mid+2*r.ShoulderOver, r.ShoulderThick
		b.Length += b.FlangeT
	}
	spread := half + seatHalf
	u := -(r.CapLow + r.CapHigh) / 2
	switch {
	case w.Kind == CapWay:
	case glued:
		u = -(r.GapLow + r.GapHigh) / 2
	default:
		// The least press that is sure to hold: everything above it only
		// strains the wall.
		lo, hi := j.window(b, mid-seatHalf)
		u = math.Max(math.Min(lo+spread+r.TurnPress, hi-spread), spread+r.TurnPress)
	}
	b.ODLow, b.ODHigh = mid+u-half, mid+u+half
	if u > 0 && j.circle(mid).left > 0 {
		j.openForClosure(a, u, spread, aimBore)
	}
	return out
}

// aimBore is the middle of the bore that a turned bush closes to.
func (j *judge) aimBore() float64 {
	return math.Max((j.r.AimLow+j.r.AimHigh)/2+j.h.Journal, j.bore[0]+j.r.Turned/2)
}

// roomForShoulder tells whether a shoulder fits between plate and hub.
func (j *judge) roomForShoulder(od float64) bool {
	h, r := &j.h, &j.r
	return !(h.SideRoom < r.ShoulderThick-slack) && (h.RoomOut == 0 || h.RoomOut >= od+2*r.ShoulderOver-slack)
}

// openForClosure makes the bore of a turned bush larger by what the press will
// close, so that the whole band of it ends inside the limits where they are
// wide enough.
func (j *judge) openForClosure(a *Answer, u, spread, aimBore float64) {
	half, margin := j.r.Turned/2, j.r.TurnMargin
	probe := Answer{Bush: a.Bush, Contact: j.contact(&a.Bush),
		ULow: math.Max(u-spread, 1e-6), UHigh: u + spread}
	probe.SeatLow, probe.SeatHigh = (a.SeatLow+a.SeatHigh)/2, (a.SeatLow+a.SeatHigh)/2
	j.closure(&probe)
	c := probe.Closure
	at := aimBore + (c[0]+c[1])/2
	if least := j.bore[0] + c[1] + half + margin; at < least && least-c[0]+half <= j.bore[1]-margin {
		at = least
	}
	a.Bush.BLow, a.Bush.BHigh = at-half, at+half
}
