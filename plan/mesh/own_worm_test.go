package mesh

import "math"

// Worms a second way, for the rows of own/mesh.csv: in space. The worm lies
// along x, the wheel's axis is turned towards y, its centre a below. Two flanks
// that touch share one normal, and each flank's tangent plane of that normal
// stands off its own axis by the string unwound from its base cylinder.
type space struct {
	mn, starts, teeth, r1, alpha, beta2, shaft float64
}

func (in inputs) space(helical bool) space {
	s := space{mn: in.v("mn"), starts: in.v("z1"), teeth: in.v("z2"), r1: in.v("d1") / 2, alpha: in.v("alpha_n") * degree,
		shaft: 90 * degree}
	if in.has("Sigma") {
		s.shaft = in.v("Sigma") * degree
	}
	if in.has("mx") {
		s.mn = in.v("mx") * math.Cos(math.Atan2(in.v("mx")*s.starts, 2*s.r1))
	}
	if helical {
		s.beta2 = s.lead()
	}
	return s
}

// lead is the angle of the thread on the pitch cylinder.
func (s space) lead() float64 { return math.Asin(s.mn * s.starts / (2 * s.r1)) }

// axial is the angle of the flank in the plane of the worm's axis: the flank's
// plane holds the thread and a line that leans by alpha square to the thread.
func (s space) axial() float64 {
	sin, cos := math.Sincos(s.lead())
	lean := [3]float64{math.Sin(s.alpha) * cos, -math.Sin(s.alpha) * sin, math.Cos(s.alpha)}
	k := -lean[1] / cos // along the thread until y is nought
	return math.Atan2(lean[0]+k*sin, lean[2])
}

// normal of the wheel's flank where it meets the worm's. Against its own axis
// an involute flank leans alike everywhere.
func (s space) normal() [3]float64 {
	x := math.Cos(s.alpha) * math.Cos(s.lead())
	turned := math.Pi - s.shaft
	y := (math.Cos(s.alpha)*math.Sin(s.beta2) - x*math.Cos(turned)) / math.Sin(turned)
	return [3]float64{x, y, math.Sqrt(1 - x*x - y*y)}
}

func (s space) working() float64 {
	n := s.normal()
	return math.Atan2(n[2], math.Hypot(n[0], n[1]))
}

// base1 is the radius of the worm's base cylinder, from its section square to
// its axis.
func (s space) base1() float64 { return s.r1 * math.Cos(s.across(math.Pi/2-s.lead())) }

// across is the pressure angle square to the axis, for a helix angle.
func (s space) across(helix float64) float64 { return math.Atan(math.Tan(s.alpha) / math.Cos(helix)) }

// half is half the angle of a tooth on its base cylinder.
func (s space) half(r, helix float64) float64 {
	return math.Pi*s.mn/2/math.Cos(helix)/(2*r) + involute(s.across(helix))
}

// gap is the normal backlash at a centre distance: the tooth stands in the
// middle of the space, so twice that of one side.
func (s space) gap(a float64) float64 {
	n := s.normal()
	helix1 := math.Pi/2 - s.lead()
	square1 := math.Hypot(n[1], n[2])
	turned := math.Pi - s.shaft
	along2 := n[0]*math.Cos(turned) + n[1]*math.Sin(turned)
	square2 := math.Sqrt(1 - along2*along2)
	r2 := s.teeth * s.mn / 2 / math.Cos(s.beta2)
	base2 := r2 * math.Cos(s.across(s.beta2))
	stand1 := square1 * s.base1() * (math.Atan2(n[2], n[1]) - (math.Pi/s.starts - s.half(s.r1, helix1)))
	stand2 := square2 * base2 * (math.Asin(n[2]/square2) + s.half(r2, s.beta2))
	return 2 * (a*n[2] - stand1 - stand2)
}
