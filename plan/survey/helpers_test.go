package survey

import "math"

// arcFactors returns u*sqrt(n)/s for n points spread evenly over one arc of
// half-angle a (radians, 0 < a <= pi): of the centre along the bisector of the
// arc and across it, of the radius, and of the centre along when the radius is
// known. Derived; see the table in the tests.
func arcFactors(a float64) (along, across, radius, alongKnownR float64) {
	m := math.Sin(a) / a
	cc := 0.5 + math.Sin(2*a)/(4*a)
	ss := 0.5 - math.Sin(2*a)/(4*a)
	return 1 / math.Sqrt(cc-m*m), 1 / math.Sqrt(ss), math.Sqrt(cc / (cc - m*m)), 1 / math.Sqrt(cc)
}

// fitLobe fits one lobe to wall points of a bore worn by a journal of radius r
// towards side (radians, right to about 45 degrees); s is the standard
// deviation of one point in mm. It allocates nothing.
func fitLobe(pts [][2]float64, r, s, side float64) (OutlineFit, error) {
	if len(pts) < 6 {
		return OutlineFit{}, ErrTooFew
	}
	var best seed
	iter := lobeStarts(pts, r, side, &best)
	o := outline{pts: pts, r: r, shape: OneLobe}
	return o.report(&best, s, iter)
}

// unwornArc returns how much of the old wall is left, degrees: at least 180
// for one lobe.
func (b WornBore) unwornArc() float64 {
	const n = 7200
	left := 0
	for i := range n {
		if b.Reach(2*math.Pi*(float64(i)+0.5)/n) <= b.R*(1+1e-12) {
			left++
		}
	}
	return 360 * float64(left) / n
}

// foundR returns the radius of the smallest circle that holds the hole.
func (b WornBore) foundR() float64 { return b.SeatRadius(b.Found()) }

// support is how far the hole reaches in a direction: max(R, d cos p + r), where
// a wall square to it would touch.
func (b WornBore) support(psi float64) float64 {
	off := math.Max(0, apart(psi, b.ThetaRad)-b.FanHalf)
	h := math.Max(b.R, b.D*math.Cos(off)+b.JournalR)
	if b.D2 > 0 {
		h = math.Max(h, b.D2*math.Cos(apart(psi, b.Theta2))+b.JournalR)
	}
	return h
}
