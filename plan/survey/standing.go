package survey

import "math"

// LobeEnd returns the way from the old centre to the end of the lobe that lies
// furthest towards a load, a unit vector: where the journal's centre can get.
func (b WornBore) LobeEnd(load [2]float64) [2]float64 {
	towards := math.Atan2(load[1], load[0])
	off := math.Remainder(towards-b.ThetaRad, 2*math.Pi)
	end := toward([2]float64{}, b.D, b.ThetaRad+math.Max(-b.FanHalf, math.Min(b.FanHalf, off)))
	if b.D2 > 0 {
		if other := toward([2]float64{}, b.D2, b.Theta2); dot(other, load) > dot(end, load) {
			end = other
		}
	}
	return end
}

func dot(v, n [2]float64) float64 { return v[0]*n[0] + v[1]*n[1] }

// Spoilt says that the bush is out and its seat is of no use as it is: not
// sound, or where an earlier repair put it. It says nothing of the old centre,
// and a new seat has to take it in.
func (h Hole) Spoilt() bool {
	s := h.Bore.Seat
	return s != nil && s.Centre.Given() && (!s.Sound || h.Bore.Repaired)
}

// Moved says that an earlier repair put a hole where it stands: the shaft as
// found stood about the middle of that hole, not about the old centre.
func (h Hole) Moved() bool {
	return h.Spoilt() || h.Bore.Repaired && h.Bore.Centre.Given() && h.Bore.Widest.Given()
}

// AsFound is how far towards its load, a unit vector, the shaft stands in the
// worn hole, mm from FoundCentre: at the end of the lobe that it has cut, or
// across the old clearance where it wore another way. Where the bush that it
// ran in is out, 0.
func (h Hole) AsFound(load [2]float64) float64 {
	switch {
	case h.Spoilt():
		return 0
	case h.Moved():
		return math.Max(0, (h.Bore.Widest.Float()-h.Journal())/2)
	}
	return math.Max(h.Worn.C, dot(h.Worn.LobeEnd(load), load))
}

// FoundCentre is the place from which AsFound is reckoned towards the load: the
// old centre and what the lobe has gone sideways of it.
func (h Hole) FoundCentre(load [2]float64) [2]float64 {
	if h.Moved() {
		return h.Middle
	}
	end := h.Worn.LobeEnd(load)
	v := dot(end, load)
	if v <= h.Worn.C {
		return h.Worn.O
	}
	return [2]float64{h.Worn.O[0] + end[0] - v*load[0], h.Worn.O[1] + end[1] - v*load[1]}
}

// Stands is the hole where it stands: of one that has been worked since, the
// seat as it was made; else as it was surveyed.
func (h Hole) Stands() WornBore {
	n := h.Bore.Now
	if n == nil {
		return h.Surveyed()
	}
	w := roundBore(n.At, n.SeatMM)
	w.Cov = [2][2]float64{{n.UAtMM * n.UAtMM, 0}, {0, n.UAtMM * n.UAtMM}}
	return *w
}

// Surveyed is the worn hole where it stood when it was surveyed: of one that an
// earlier repair moved, by its own middle and diameters; else about the old
// centre.
func (h Hole) Surveyed() WornBore {
	w := h.Worn
	if h.Moved() {
		w.O = toward(h.Middle, -w.W/2, w.ThetaRad)
	}
	return w
}
