package plan

import (
	"math"

	"rebush/plan/survey"
)

// standing is where a shaft stands at a gear's station when each of its bores
// is offset from a centre by off towards the load.
func standing(s shaftState, share float64, centre func(*bore) [2]float64, off func(*bore) float64) [2]float64 {
	at := func(b *bore) [2]float64 {
		c, o := centre(b), off(b)
		return [2]float64{c[0] + o*b.load[0], c[1] + o*b.load[1]}
	}
	if len(s.bores) == 1 {
		return at(s.bores[0])
	}
	l, r := at(s.bores[0]), at(s.bores[1])
	return [2]float64{l[0] + (r[0]-l[0])*share, l[1] + (r[1]-l[1])*share}
}

func oldCentre(b *bore) [2]float64 { return b.worn.O }

// originally is how far a shaft stood from its old centre when it was new.
func originally(b *bore) float64 { return b.worn.C }

// asFound is how far towards its load a shaft stands in the worn hole: at the
// end of the lobe it has cut, or across the old clearance where it wore
// another way.
func asFound(b *bore) float64 {
	if spoiltSeat(b) {
		return 0 // the bush that the shaft ran in is out
	}
	if moved(b) {
		return math.Max(0, (b.b.Widest.Float()-b.journal())/2)
	}
	return math.Max(b.worn.C, along(lobeEnd(b), b.load))
}

// lobeEnd is the way from the old centre to the end of the lobe that lies
// furthest towards the load.
func lobeEnd(b *bore) [2]float64 {
	w := b.worn
	towards := math.Atan2(b.load[1], b.load[0])
	at := func(d, theta float64) [2]float64 {
		sin, cos := math.Sincos(theta)
		return [2]float64{d * cos, d * sin}
	}
	off := math.Remainder(towards-w.ThetaRad, 2*math.Pi)
	end := at(w.D, w.ThetaRad+math.Max(-w.FanHalf, math.Min(w.FanHalf, off)))
	if w.D2 > 0 {
		if other := at(w.D2, w.Theta2); along(other, b.load) > along(end, b.load) {
			end = other
		}
	}
	return end
}

func along(v, n [2]float64) float64 { return v[0]*n[0] + v[1]*n[1] }

// moved says that an earlier repair put a hole where it stands: the shaft as
// found stood about the middle of that hole, not about the old centre.
func moved(b *bore) bool {
	return spoiltSeat(b) || b.b.Repaired && b.b.Centre.Given() && b.b.Widest.Given()
}

// spoiltSeat says that the bush is out and its seat is of no use as it is: not
// sound, or where an earlier repair put it. It says nothing of the old centre,
// and a new seat has to take it in.
func spoiltSeat(b *bore) bool {
	s := b.b.Seat
	return s != nil && s.Centre.Given() && (!s.Sound || b.b.Repaired)
}

// foundCentre is the place from which asFound is reckoned towards the load:
// the old centre, and what the lobe has gone sideways of it.
func foundCentre(b *bore) [2]float64 {
	if moved(b) {
		return b.found
	}
	end := lobeEnd(b)
	v := along(end, b.load)
	if v <= b.worn.C {
		return b.worn.O
	}
	return [2]float64{b.worn.O[0] + end[0] - v*b.load[0], b.worn.O[1] + end[1] - v*b.load[1]}
}

// stands is the worn hole where it stands: of one that an earlier repair moved,
// by its own middle and diameters; else about the old centre.
func (b *bore) stands() survey.WornBore {
	if !moved(b) {
		return b.worn
	}
	w := b.worn
	sin, cos := math.Sincos(w.ThetaRad)
	w.O = [2]float64{b.found[0] - w.W/2*cos, b.found[1] - w.W/2*sin}
	return w
}
