package carry

import (
	"math"

	"rebush/plan/world"
)

const degree = math.Pi / 180

// working is the angle at which a mesh works at a distance of its axes: of a
// spur pair the operating pressure angle, of a screw the one that takes a gap
// square to the flank to one along the wheel's circle.
func working(g *world.Gear, distance float64) float64 {
	if t := g.Teeth; t != nil {
		return math.Acos(math.Min(1, t.Module*float64(t.Wheel+t.Pinion)/2*math.Cos(t.Pressure*degree)/distance))
	}
	s := g.Screw
	q := s.Pressure * degree
	if s.Straight {
		lead := math.Asin(s.Module * float64(s.Starts) / s.Diameter)
		return math.Acos(math.Cos(lead) * math.Cos(q))
	}
	lead := math.Atan(s.Module * float64(s.Starts) / s.Diameter)
	return math.Acos(math.Cos(q) * math.Cos(lead))
}

// ratio is how many teeth are in contact on the mean at a distance of the axes,
// with the tips as they truly are: the part of the line of action between both
// tips, and no farther than where it leaves a base circle, in base pitches.
func ratio(g *world.Gear, distance float64) float64 {
	if g.Screw != nil {
		return screwed(g, distance)
	}
	t := g.Teeth
	q := t.Pressure * degree
	r := t.Module * math.Cos(q) / 2
	one, two := r*float64(t.Wheel), r*float64(t.Pinion)
	line := math.Sqrt(math.Max(0, distance*distance-(one+two)*(one+two)))
	reach := func(tip, base float64) float64 {
		return math.Min(line, math.Sqrt(math.Max(0, tip*tip/4-base*base)))
	}
	return (reach(g.Tip[0], one) + reach(g.Tip[1], two) - line) / (math.Pi * t.Module * math.Cos(q))
}

// screwed is the same of a worm, whose thread is a rack to the wheel: of a
// throated or helical wheel in the plane of both axes, of a straight one in the
// plane that is tangent to the worm's base cylinder.
func screwed(g *world.Gear, distance float64) float64 {
	s := g.Screw
	q, z := s.Pressure*degree, float64(s.Wheel)
	angle, rolls := 0.0, s.Module*z/2
	worm, pitch := g.Tip[1]/2, 0.0
	base := 0.0
	if s.Straight {
		sin := s.Module * float64(s.Starts) / s.Diameter
		cos := math.Sqrt(1 - sin*sin)
		angle = math.Acos(cos * math.Cos(q))
		base, rolls = rolls*math.Cos(q), rolls/cos
		pitch = math.Pi * s.Module * math.Cos(q)
		turn := s.Module / cos * float64(s.Starts) / 2
		own := turn * math.Tan(math.Asin(cos*math.Cos(q)))
		worm = math.Sqrt(math.Max(0, worm*worm-own*own))
	} else {
		lead := math.Atan(s.Module * float64(s.Starts) / s.Diameter)
		angle = math.Atan(math.Tan(q) / math.Cos(lead))
		base = rolls * math.Cos(angle)
		pitch = math.Pi * s.Module * math.Cos(angle)
	}
	most := rolls * math.Sin(angle) // from the pitch point to where the line leaves the base circle
	in := math.Min((rolls-distance+worm)/math.Sin(angle), most)
	out := math.Sqrt(math.Max(0, g.Tip[0]*g.Tip[0]/4-base*base)) - most
	return (in + out) / pitch
}
