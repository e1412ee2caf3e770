package seat

import "math"

// finishes is question 7: how the bore gets to size. Of the ways that go the
// first is taken in the order of their trouble, unless a later one is likelier to
// come right by more than a tie. The whole band of the closing counts; only a bore
// that may come out larger than it may be is a matter of chance (narrow.go).
func (j *judge) finishes(a *Answer) Fail {
	lo, hi := a.Bore[0], a.Bore[1]
	a.Expected = [2]float64{a.Closed[0], MostFinished(a.Closed[1], hi)}
	if a.Closed[1] > hi+slack {
		f := fail(BoreFinishes, boreTooLarge, a.Closed[1], hi)
		if hi-math.Max(a.Closed[0], lo) < j.r.Band-slack {
			return f
		}
		a.misses(f)
	}
	x, best, out := &j.try, &j.best, Fail{}
	*best = Answer{}
	for _, way := range [...]func(*judge, *Answer) (bool, Fail){(*judge).delivered, (*judge).mandrelled, (*judge).reamedOut, (*judge).boredOut, (*judge).eased} {
		*x = *a
		goes, f := way(j, x)
		if out = f; !goes {
			continue
		}
		if x.Chance = j.chance(x); best.Finish == "" || x.Chance > best.Chance+j.r.Tie {
			*best = *x
		}
		if best.Chance >= 1-j.r.Tie {
			break
		}
	}
	if best.Finish == "" {
		return out
	}
	best.Chance = 0 // until it is known to go
	*a = *best
	return Fail{}
}

// may says whether the job leaves a finish open.
func (j *judge) may(f Finish) bool { return j.h.Finish == "" || j.h.Finish == f }

// delivered is a bore that is right as it closes.
func (j *judge) delivered(a *Answer) (bool, Fail) {
	a.Finish = AsDelivered
	return j.may(AsDelivered) && a.Closed[0] >= a.Bore[0]-slack, Fail{}
}

// mandrelled is a bore sized by mandrels.
func (j *judge) mandrelled(a *Answer) (bool, Fail) {
	return j.may(Mandrel) && !a.Bush.Metal.Plastic && j.mandrels(a), Fail{}
}

// reamedOut is a bore that a reamer takes to size.
func (j *judge) reamedOut(a *Answer) (bool, Fail) {
	return j.may(Ream) && !j.thinned(a) && !a.Bush.Metal.Porous && j.reamer(a), Fail{}
}

// boredOut is a bore that a boring head takes to size in its place.
func (j *judge) boredOut(a *Answer) (bool, Fail) {
	lo, hi, from := a.Bore[0], a.Bore[1], j.shop.BoringFrom
	if !j.may(BoreInPlace) || j.thinned(a) || from <= 0 || from > lo+slack || j.shop.BoringTo < hi-slack {
		return false, Fail{}
	}
	a.Finish, a.FinishTool = BoreInPlace, "boring head"
	mid := (lo + hi) / 2
	a.Expected = [2]float64{math.Max(lo, mid-j.r.BoringHead), math.Min(hi, mid+j.r.BoringHead)}
	return true, Fail{}
}

// eased is a bore opened by hand, to the very axle: a porous bore is only
// stretched, a solid one is cut.
func (j *judge) eased(a *Answer) (bool, Fail) {
	lo, hi := a.Bore[0], a.Bore[1]
	if !j.may(ToOwnAxle) {
		f := fail(BoreFinishes, otherFinish, a.Closed[0], lo)
		f.Name = string(j.h.Finish)
		return false, f
	}
	most := j.r.OpenSolid
	if a.Bush.Metal.Porous {
		most = j.r.MandrelTotal
	}
	if open := lo - a.Closed[0]; open > most+slack {
		if a.Bush.Metal.Porous && j.pressedOver(a) {
			return true, Fail{}
		}
		return false, fail(BoreFinishes, openedTooFar, open, most)
	}
	a.Finish = ToOwnAxle
	a.Expected = [2]float64{math.Max(lo, j.h.Journal+j.r.AimLow), math.Min(hi, math.Max(lo, j.h.Journal+j.r.AimHigh))}
	if a.Expected[1] <= a.Expected[0] {
		a.Expected[1] = hi
	}
	return true, Fail{}
}

// thinned says that opening the pressed bore to its limits would leave a bush
// less wall than is turned, beyond the little that any bush is eased by.
func (j *judge) thinned(a *Answer) bool {
	return a.Bore[0]-a.Closed[0] > j.r.OpenSolid+slack && (a.Bush.ODLow-a.Bore[1])/2 < j.r.LeastWall-slack
}

// mandrels looks for a row of sizing mandrels that opens the closed bore in
// steps no larger than allowed, the last of which leaves a bore inside the
// limits. Of several, the one whose bore lies best between them. A bore that
// is larger than the last mandrel already is inside the limits as it is.
func (j *judge) mandrels(a *Answer) bool {
	lo, hi := a.Bore[0], a.Bore[1]
	bestAt := math.Inf(1)
	for i, last := range j.shop.Mandrels {
		low, high := last-j.r.SpringHigh, last-j.r.SpringLow
		if low < lo-slack || high > hi+slack || last-a.Closed[0] > j.r.MandrelTotal+slack {
			continue
		}
		off := math.Abs((low+high)/2 - (lo+hi)/2)
		if off >= bestAt-slack {
			continue
		}
		row, ok := j.steps(a.Closed[0], i)
		if !ok {
			continue
		}
		bestAt = off
		a.Finish, a.FinishTool, a.FinishSizes = Mandrel, "sizing mandrel", row
		a.made = [2]float64{low, high}
		a.Expected = [2]float64{low, math.Max(high, MostFinished(a.Closed[1], hi))}
	}
	return !math.IsInf(bestAt, 1)
}

// steps picks the fewest mandrels from a closed bore up to mandrel last with no
// step above what is allowed.
func (j *judge) steps(from float64, last int) ([]float64, bool) {
	n, at := 0, from
	row := make([]float64, 0, 4)
	for at < j.shop.Mandrels[last]-slack {
		next := -1.0
		for ; n <= last && j.shop.Mandrels[n] <= at+j.r.MandrelStep+slack; n++ {
			if m := j.shop.Mandrels[n]; m > at+slack {
				next = m
			}
		}
		if next < 0 {
			return nil, false
		}
		row = append(row, next)
		at = next
	}
	return row, len(row) > 0
}

// reamer finds the reamer whose hole lies inside the bore's limits, nearest to
// the aim.
func (j *judge) reamer(a *Answer) bool {
	lo, hi := a.Bore[0], a.Bore[1]
	aim := math.Max(lo, j.h.Journal+(j.r.AimLow+j.r.AimHigh)/2)
	best, off := -1, math.Inf(1)
	for i := range j.shop.BoreReamers {
		w := &j.shop.BoreReamers[i]
		if w.Low < lo-slack || w.High > hi+slack || w.Low-a.Closed[0] <= slack ||
			w.High-a.Closed[0] > j.r.OpenSolid+slack {
			continue
		}
		if d := math.Abs((w.Low+w.High)/2 - aim); d < off-slack {
			best, off = i, d
		}
	}
	if best < 0 {
		return false
	}
	w := &j.shop.BoreReamers[best]
	a.Finish, a.FinishTool, a.FinishSizes = Ream, w.Name, []float64{w.Size}
	a.made = [2]float64{w.Low, w.High}
	a.Expected = [2]float64{w.Low, math.Max(w.High, MostFinished(a.Closed[1], hi))}
	return true
}

// pressedOver is a porous bush pressed with a mandrel standing in its bore: the
// bore keeps the mandrel's size, and the bush cannot give way to the press, so
// the wall is judged again without the bush's cap. The mandrel goes into the
// smallest bush and stops the largest.
func (j *judge) pressedOver(a *Answer) bool {
	lo, hi := a.Bore[0], a.Bore[1]
	best := -1.0
	for _, m := range j.shop.Mandrels {
		if m-j.r.SpringHigh < lo-slack || m-j.r.SpringLow > hi+slack || m > a.Bush.BLow+slack ||
			m-j.r.SpringLow < a.Closed[1]-slack {
			continue
		}
		best = m
	}
	if best < 0 {
		return false
	}
	if a.Stress.D == 0 {
		return false // the wall was not found to stand any press
	}
	st := a.Stress
	st.Bush.Yield = 0
	p, _ := st.HeldAt(a.UHigh)
	c := j.circle(a.SeatHigh)
	c.factor = j.circle(a.SeatLow).factor
	peak := c.tension(p)
	if f := j.plateStands(p+c.pressed, peak, c.d/2, c.left); f.What != noFail {
		return false
	}
	a.MandrelIn, a.Stress, a.PHigh, a.Peak = true, st, p, peak
	a.Force[1] = AxialForce(j.hiF, a.SeatLow, a.Contact, p)
	a.Torque[1] = Torque(a.Force[1], a.SeatLow)
	at := j.press(&a.Bush, a.Contact, a.SeatHigh, true, false)
	at.Bush.Yield = 0
	least, _ := at.HeldAt(a.ULow)
	a.PressIn = AxialForce(j.loF, a.SeatHigh, a.Contact, least)
	a.WinHigh = math.Min(a.WinHigh, a.UHigh*j.spare(p, peak, c))
	a.Finish, a.FinishTool, a.FinishSizes = Mandrel, "mandrel left in the bore while pressing", []float64{best}
	a.Expected = [2]float64{best - j.r.SpringHigh, best - j.r.SpringLow}
	a.Closed = a.Expected
	return true
}

// spare is by how much a pressure may still rise before the plate reaches its
// limit, as a factor.
func (j *judge) spare(p, peak float64, c circle) float64 {
	if j.h.Plate2.Casting {
		return j.plateLimit() / peak
	}
	return j.plateLimit() / math.Max(1e-12, meanTension(p+c.pressed, c.d/2, c.left))
}
