package survey

import "math"

// Usual is what is known of the side that a hole wears to where nobody says it:
// the way its shaft is pressed, and how often that holds. The zero Usual knows
// nothing: any side, any depth.
type Usual struct {
	Rad   float64 // the way the shaft is pressed, radians
	U     float64 // how far wear bearing from it, radians
	Share float64 // how often it wears to that side at all; else to any
	Worn  float64 // how often a hole of which no side is said is worn at all
	Least float64 // depths that wear of such a hole lies between, each doubling as likely, mm
	Most  float64
}

// about is the mean of the unit vector of a direction times itself, where that is
// normal about rad: the second mean resultant length is exp(-2u^2), that of a
// wrapped normal, from memory.
func about(rad, u float64) [2][2]float64 {
	sin, cos := math.Sincos(2 * rad)
	q := math.Exp(-2*u*u) / 2
	return [2][2]float64{{0.5 + q*cos, q * sin}, {q * sin, 0.5 - q*cos}}
}

// side is that mean for the side of wear where nobody says it: of a measured line
// of the widest one end or the other, else the usual side or any.
func (u Usual) side(line float64, hasLine bool, uLine float64) [2][2]float64 {
	if hasLine {
		return about(line, uLine)
	}
	return add2(scale2(about(u.Rad, u.U), u.Share), round2(math.Sqrt((1-u.Share)/2)))
}

// towards is the side that is drawn where nobody says it: the end of the line of
// the widest that lies nearer to the usual side, or that side.
func (u Usual) towards(line float64, hasLine bool) float64 {
	switch {
	case !hasLine:
		return u.Rad
	case apart(line, u.Rad) > math.Pi/2:
		return line + math.Pi
	}
	return line
}

// depth is the mean square of the depth of wear, given what widest less narrowest
// reads, to uRead, of a hole of which no side is said: it is not worn at all, or
// its wear is of any size, each doubling as likely as the next. By the midpoint
// rule over the logarithm of the depth.
func (u Usual) depth(reads, uRead float64) float64 {
	if u.Most <= u.Least || uRead <= 0 {
		return math.Pow(math.Max(0, reads), 2) + uRead*uRead
	}
	likely := func(w float64) float64 {
		z := (reads - w) / uRead
		return math.Exp(-z * z / 2)
	}
	const steps = 600
	from := math.Log(u.Least)
	step := (math.Log(math.Max(u.Most, reads+6*uRead)) - from) / steps
	all, square := (1-u.Worn)*likely(0), 0.0
	for i := range steps {
		w := math.Exp(from + step*(float64(i)+0.5))
		p := u.Worn / steps * likely(w)
		all += p
		square += p * w * w
	}
	if all < 1e-300 { // far below nothing: not worn
		return 0
	}
	return square / all
}
