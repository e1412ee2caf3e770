package world

import "math"

// Teeth are the teeth of a spur pair as they truly are: modules, degrees, mm.
type Teeth struct {
	Module, Pressure float64
	Wheel, Pinion    int
	Shift            [2]float64 // profile shifts of wheel and pinion, in modules
	Thinned          float64    // of both gears together, along the reference circles
}

func involute(q float64) float64 { return math.Tan(q) - q }

// bases are the radii of the two base circles and the pressure angle.
func (t Teeth) bases() (wheel, pinion, q float64) {
	q = t.Pressure * math.Pi / 180
	half := t.Module * math.Cos(q) / 2
	return half * float64(t.Wheel), half * float64(t.Pinion), q
}

// Backlash is the gap between flanks, square to them, at a centre distance in
// mm; below zero the teeth would overlap. It is reckoned along the line of
// action: the base pitch, less both teeth as thick as they stand on their base
// circles, plus what the line of action is longer than the arcs that it unwinds
// from. NaN where the base circles overlap.
func (t Teeth) Backlash(distance float64) float64 {
	wheel, pinion, q := t.bases()
	tooth := func(base, z, shift float64) float64 {
		thick := t.Module*(math.Pi/2+2*shift*math.Tan(q)) - t.Thinned/2
		return base * (thick/(t.Module*z/2) + 2*involute(q))
	}
	if distance < wheel+pinion {
		return math.NaN()
	}
	working := math.Acos((wheel + pinion) / distance)
	return math.Pi*t.Module*math.Cos(q) - tooth(wheel, float64(t.Wheel), t.Shift[0]) -
		tooth(pinion, float64(t.Pinion), t.Shift[1]) + 2*(wheel+pinion)*involute(working)
}

// At is the centre distance at which the gap square to the flanks is as given,
// found by halving.
func (t Teeth) At(backlash float64) float64 {
	wheel, pinion, _ := t.bases()
	low, high := wheel+pinion, 1.4*(wheel+pinion)+4*t.Module
	for range 80 {
		if mid := (low + high) / 2; t.Backlash(mid) < backlash {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// Tips are the tip diameters of full-depth teeth.
func (t Teeth) Tips() (wheel, pinion float64) {
	return t.Module * (float64(t.Wheel) + 2 + 2*t.Shift[0]), t.Module * (float64(t.Pinion) + 2 + 2*t.Shift[1])
}

// Contact is the contact ratio at a centre distance: the part of the line of
// action inside both tip circles and between the points where it leaves the
// base circles, in base pitches.
func (t Teeth) Contact(distance float64) float64 {
	wheel, pinion, q := t.bases()
	tipWheel, tipPinion := t.Tips()
	line := math.Sqrt(math.Max(0, distance*distance-(wheel+pinion)*(wheel+pinion)))
	reach := func(tip, base float64) float64 {
		return math.Min(line, math.Sqrt(math.Max(0, tip*tip/4-base*base)))
	}
	return (reach(tipWheel, wheel) + reach(tipPinion, pinion) - line) / (math.Pi * t.Module * math.Cos(q))
}

// Screw is a worm and its wheel as they truly are, on square shafts. The module
// is the axial one of a throated or helical wheel and the normal one of a
// straight-cut wheel.
type Screw struct {
	Module, Pressure float64 // mm; degrees, square to the thread
	Starts, Wheel    int
	Diameter         float64 // pitch diameter of the worm, mm
	Straight         bool    // a straight-cut wheel under the worm
	Shift, Thinned   float64 // modules; mm along the wheel's pitch circle, both together
}

// Backlash is the gap between flanks, square to them, at a distance of the axes.
func (s Screw) Backlash(distance float64) float64 {
	if s.Straight {
		return s.straight(distance)
	}
	lead := math.Atan(s.Module * float64(s.Starts) / s.Diameter)
	q := s.Pressure * math.Pi / 180
	tight := (s.Diameter+s.Module*float64(s.Wheel))/2 + s.Shift*s.Module - s.Thinned*math.Cos(lead)/(2*math.Tan(q))
	return 2 * (distance - tight) * math.Sin(q)
}

// straight is the gap of an involute thread over a straight-cut wheel, whose
// two flanks touch in the two planes that are tangent to the worm's base
// cylinder: there the thread is a rack with straight sides, the worm's flanks
// make the angle of the common normal, and the wheel rolls on a circle larger
// than its pitch circle by 1 / cos of the lead.
func (s Screw) straight(distance float64) float64 {
	q := s.Pressure * math.Pi / 180
	sinLead := s.Module * float64(s.Starts) / s.Diameter
	cosLead := math.Sqrt(1 - sinLead*sinLead)
	normal := math.Acos(cosLead * math.Cos(q)) // of flanks in that plane
	perTurn := math.Pi * s.Module / cosLead * float64(s.Starts)
	perRadian := perTurn / (2 * math.Pi)
	base := perRadian * math.Tan(math.Asin(cosLead*math.Cos(q)))
	half := math.Pi/float64(2*s.Starts) + involute(math.Acos(2*base/s.Diameter))
	rolling := s.Module * float64(s.Wheel) / 2 / cosLead
	from := distance - rolling
	thread := 2*perRadian*(half+math.Pi/2) - 2*from*math.Tan(normal)
	thick := s.Module*(math.Pi/2+2*s.Shift*math.Tan(q)) - s.Thinned
	tooth := 2 * rolling * (thick/(s.Module*float64(s.Wheel)) + involute(q) - involute(normal))
	return (perTurn/float64(s.Starts) - thread - tooth) * math.Cos(normal)
}

// At is the distance of the axes at which the gap is as given; it grows in
// proportion to the distance.
func (s Screw) At(backlash float64) float64 {
	a := (s.Diameter + s.Module*float64(s.Wheel)) / 2
	b := a + s.Module
	ya, yb := s.Backlash(a), s.Backlash(b)
	return a + (backlash-ya)*(b-a)/(yb-ya)
}
