package seat

import "math"

// web is the least wall of a part between its outside and a seat about a place, mm:
// below 0 the seat breaks out of it.
func (p *Part) web(at [2]float64, seat float64) float64 {
	return Web(p.SeatLow, apart(p.At, at), seat)
}

// Web is the thinnest wall between a round part of diameter out and a seat whose
// middle is off from that of the part, mm.
func Web(out, off, seat float64) float64 { return out/2 - off - seat/2 }

// name is what a part is called.
func (p *Part) name() string {
	switch {
	case p.Stays:
		return "the old bush"
	case p.Mend == Plug:
		return "the plug"
	}
	return "the sleeve"
}

// about is a part with the seat of an answer in it.
func (p *Part) about(a *Answer) *Part {
	out := *p
	out.Web = p.web(a.SeatAt, a.SeatHigh)
	return &out
}

// RoundLeft is how much of the rim of a part of diameter out is left round a seat
// that cuts through it, degrees: 360 where the seat lies within, 0 where it takes the
// whole part away. Where the circles cross at a distance off, the rim's radius R,
// the seat's s, half the angle that is lost is acos((R^2 + off^2 - s^2)/(2 R off)).
func RoundLeft(out, off, seat float64) float64 {
	R, s := out/2, seat/2
	switch {
	case s <= R-off:
		return 360
	case s >= R+off || off == 0:
		return 0
	}
	cos := (R*R + off*off - s*s) / (2 * R * off)
	return 360 - 2*math.Acos(math.Max(-1, math.Min(1, cos)))*180/math.Pi
}

// beside is a plate with a part in it, as the mechanics of a bush within see it:
// from the softer to the stiffer of both, and as ready to slacken and to let a bush
// loose as the worse (METHODS.md 3).
func (p Plate) beside(m Metal) Plate {
	p.EHigh, p.ELow = math.Max(p.EHigh, m.EHigh), math.Min(p.ELow, m.ELow)
	if m.Alpha > 0 && p.Alpha > 0 {
		p.Alpha = math.Max(p.Alpha, m.Alpha)
	}
	return p
}
