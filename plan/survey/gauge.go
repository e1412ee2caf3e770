package survey

import "math"

// Instrument readings of a worn bore and of pins. METHODS.md 2.

// NibRead returns what calliper nibs with flats of width flat read across a
// bore of diameter d: sqrt(d^2 - b^2), always small.
func NibRead(d, flat float64) float64 {
	if flat >= d {
		return 0
	}
	return math.Sqrt(d*d - flat*flat)
}

// NibTrue is the inverse: the diameter behind a reading.
func NibTrue(read, flat float64) float64 { return math.Hypot(read, flat) }

// TwoPoint returns the two-point reading through O at an angle: the distance
// of the walls.
func (b WornBore) TwoPoint(psi float64) float64 { return b.Reach(psi) + b.Reach(psi+math.Pi) }

// FlatJaws returns the reading of flat faces across a direction.
func (b WornBore) FlatJaws(psi float64) float64 { return b.support(psi) + b.support(psi+math.Pi) }

// support is how far the hole reaches in a direction: max(R, d cos p + r).
func (b WornBore) support(psi float64) float64 {
	off := math.Max(0, apart(psi, b.ThetaRad)-b.FanHalf)
	h := math.Max(b.R, b.D*math.Cos(off)+b.JournalR)
	if b.D2 > 0 {
		h = math.Max(h, b.D2*math.Cos(apart(psi, b.Theta2))+b.JournalR)
	}
	return h
}

// ThreePoint returns the diameter read by a self-centring three-point gauge
// with one arm towards psi: the gauge stands where its three arms are equally
// long. About 2R + 2w/3 with an arm on the wear.
func (b WornBore) ThreePoint(psi float64) float64 {
	g := b.O
	var mean float64
	for range 60 {
		var arm [3]float64
		mean = 0
		for i := range arm {
			arm[i] = b.Ray(g, psi+float64(i)*2*math.Pi/3)
			mean += arm[i] / 3
		}
		was := g
		for i := range arm {
			g = toward(g, 2.0/3*(arm[i]-mean), psi+float64(i)*2*math.Pi/3)
		}
		if dist(g, was) < 1e-12 {
			break
		}
	}
	return 2 * mean
}

// Ray returns the distance from a point in the hole to the wall, in a direction.
func (b WornBore) Ray(from [2]float64, psi float64) float64 {
	lo, hi := 0.0, 2*(b.R+b.D+b.D2)
	for range 60 {
		if m := (lo + hi) / 2; b.Gap(toward(from, m, psi)) < 0 {
			lo = m
		} else {
			hi = m
		}
	}
	return lo
}

// ThreePins returns the bore that three loose pins just fill (Descartes):
//
//	D = abc/(2 sqrt(abc(a+b+c)) - (ab+bc+ca))
func ThreePins(a, b, c float64) float64 {
	return a * b * c / (2*math.Sqrt(a*b*c*(a+b+c)) - (a*b + b*c + c*a))
}

// PinSlide returns how far a pin e smaller on radius than the bore goes away
// from the wear and towards it; towards is +Inf where it drops into the slot.
//
//	t = x_c - sqrt(x_c^2 - (R^2 - R_p^2))
func (b WornBore) PinSlide(e float64) (away, towards float64) {
	rp := b.R - e
	x := math.Sqrt(math.Max(0, b.R*b.R-b.JournalR*b.JournalR))
	if b.D < x && b.D > 0 {
		x = b.R * (b.R*b.R - b.JournalR*b.JournalR + b.D*b.D) / (2 * b.D * b.R)
	}
	under := x*x - (b.R*b.R - rp*rp)
	if under < 0 {
		return e, math.Inf(1)
	}
	return e, x - math.Sqrt(under)
}

// PinBand returns the diameter between a pin that goes and the next that stops
// and its uncertainty: the half-step as a rectangle, with the pins' own. over
// and under are the limits of the pins' class from nominal, both as the class
// gives them (a one-sided class shifts the mean).
func PinBand(goes, stops, over, under float64) (d, u float64) {
	step := stops - goes
	d = (goes+stops)/2 + (over+under)/2
	return d, math.Sqrt(step*step/12 + (over-under)*(over-under)/12)
}

// OverPins returns the distance of two bores from the size over both pins and
// the size between them; pins and clearances cancel: C = (over + in)/2. slack
// is the clearance of both pins together, k1 + k2 = in - over + p1 + p2.
func OverPins(over, in, pin1, pin2, uOver, uIn float64) (c, u, slack float64) {
	return (over + in) / 2, math.Hypot(uOver, uIn) / 2, in - over + pin1 + pin2
}

// OverPinsOneWay returns the distance from the size over the pins alone.
// clearance1 and 2 are bore less pin, on diameter.
func OverPinsOneWay(over, pin1, pin2, clearance1, clearance2, uOver, uPin1, uPin2, uClearance float64) (c, u float64) {
	c = over - (pin1+pin2)/2 + (clearance1+clearance2)/2
	return c, math.Sqrt(uOver*uOver + (uPin1*uPin1+uPin2*uPin2)/4 + 2*uClearance*uClearance/4)
}

// NaiveShift returns by how much the least-squares circle of points all round
// lies towards the wear, and how much too large its radius is, to the first
// order: why it is not used for the old centre.
func NaiveShift(c, w float64) (shift, excess float64) {
	if c+w <= 0 {
		return 0, 0
	}
	cos := c / (c + w)
	f := math.Acos(math.Min(1, cos))
	sin := math.Sin(f)
	return ((c+w)*(f+sin*cos) - 2*c*sin) / math.Pi, ((c+w)*sin - c*f) / math.Pi
}

// AreaWorn returns the area removed, mm^2, for one lobe.
func (b WornBore) AreaWorn() float64 {
	R, r, d := b.R, b.JournalR, b.D
	xs := math.Sqrt(math.Max(0, R*R-r*r))
	if d <= R-r {
		return 0
	}
	if d <= xs { // two arcs
		a1 := math.Acos(math.Max(-1, math.Min(1, (d*d+R*R-r*r)/(2*d*R))))
		a2 := math.Acos(math.Max(-1, math.Min(1, (d*d+r*r-R*R)/(2*d*r))))
		lens := R*R*(a1-math.Sin(2*a1)/2) + r*r*(a2-math.Sin(2*a2)/2)
		return math.Pi*r*r - lens
	}
	return 2*r*(d-xs) + math.Pi*r*r/2 - R*R*math.Acos(xs/R) + xs*r
}

// CuspAngle returns the half-angle of the worn arc seen from the old centre,
// radians, for one lobe.
func (b WornBore) CuspAngle() float64 {
	R, r, d := b.R, b.JournalR, b.D
	if d <= R-r {
		return 0
	}
	if d*d > R*R-r*r {
		return math.Asin(math.Min(1, r/R))
	}
	return math.Acos(math.Min(1, (R*R-r*r+d*d)/(2*d*R)))
}
