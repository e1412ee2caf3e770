package world

import "math"

// A Point is a place in mm in the frame of the job.
type Point [2]float64

// Plus moves a point by a distance in a direction, degrees anticlockwise.
func (p Point) Plus(deg, by float64) Point {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	return Point{p[0] + by*cos, p[1] + by*sin}
}

// To is the distance between two points.
func (p Point) To(q Point) float64 { return math.Hypot(q[0]-p[0], q[1]-p[1]) }

// A Hole is a round hole that a journal has worn: the old circle, and beyond it
// what the journal swept as it sank into the wall. Lengths are in mm.
type Hole struct {
	Old     Point      // centre before it wore
	Radius  float64    // of the old circle
	Journal float64    // radius of the journal that wore it
	Depth   float64    // metal gone at the deepest place, measured on a radius
	Towards [2]float64 // degrees between which the load went to and fro; alike for one load
	Lobes   float64    // how far an old hole of three lobes stands off its circle
	LobesAt float64    // degrees, where one of the lobes lies
}

// sunk is how far the journal's middle lies from the old centre when it rests
// in the deepest place: the clearance first, then the metal gone.
func (h Hole) sunk() float64 { return h.Radius - h.Journal + h.Depth }

// off is the angle in radians from a direction to the nearest load.
func (h Hole) off(deg float64) float64 {
	from, to := h.Towards[0], h.Towards[1]
	turn := math.Mod(math.Mod(deg-from, 360)+360, 360)
	if turn <= to-from {
		return 0
	}
	return math.Min(turn-(to-from), 360-turn) * math.Pi / 180
}

// Wall is the distance from the old centre to the wall in a direction. A ball
// of radius `ball` held against the wall has its middle that much nearer: give
// 0 for the wall itself.
//
// The journal sweeps a strip as wide as itself; in a direction at an angle q to
// the load its far side is at d cos q + sqrt(r^2 - d^2 sin^2 q), or, along the
// straight flank of a deep groove, at r / sin q.
func (h Hole) Wall(deg, ball float64) float64 {
	wall := h.Radius + h.Lobes*math.Cos(3*(deg-h.LobesAt)*math.Pi/180) - ball
	r, q := h.Journal-ball, h.off(deg)
	if h.Depth <= 0 || r <= 0 || q >= math.Pi/2 {
		return wall
	}
	sin, cos := math.Sincos(q)
	d := h.sunk()
	if sin > 0 {
		d = math.Min(d, r*cos/sin) // beyond it the flank, not the round end, is hit
	}
	return math.Max(wall, d*cos+math.Sqrt(math.Max(0, r*r-d*d*sin*sin)))
}

// Across is what two points of an instrument read through the old centre.
func (h Hole) Across(deg float64) float64 { return h.Wall(deg, 0) + h.Wall(deg+180, 0) }

// Support is how far the hole reaches in a direction, which is what a flat jaw
// or an edge finder moved that way touches.
func (h Hole) Support(deg float64) float64 {
	far := h.Radius + h.Lobes*math.Cos(3*(deg-h.LobesAt)*math.Pi/180)
	if h.Depth > 0 {
		far = math.Max(far, h.sunk()*math.Cos(h.off(deg))+h.Journal)
	}
	return far
}

// Widest is the largest diameter, and one end of its direction in degrees.
func (h Hole) Widest() (diameter, deg float64) { return h.extreme(1) }

// Narrowest is the smallest diameter and its direction.
func (h Hole) Narrowest() (diameter, deg float64) { return h.extreme(-1) }

// extreme looks for the largest (sign 1) or smallest (-1) diameter, half a
// degree at a time and then finer.
func (h Hole) extreme(sign float64) (diameter, deg float64) {
	best := math.Inf(-1)
	for i := range 360 {
		if d := sign * h.Across(float64(i)/2); d > best {
			best, deg = d, float64(i)/2
		}
	}
	for step := 0.25; step > 1e-4; step /= 2 {
		for _, p := range [2]float64{deg - step, deg + step} {
			if d := sign * h.Across(p); d > best {
				best, deg = d, p
			}
		}
	}
	if h.Depth > 0 && math.Cos((deg-(h.Towards[0]+h.Towards[1])/2)*math.Pi/180) < 0 {
		deg += 180 // the end that the wear lies at
	}
	return sign * best, turned(deg)
}

// Middle is the middle of the largest diameter: what somebody calls the centre
// of the hole as it is.
func (h Hole) Middle() Point {
	_, deg := h.Widest()
	return h.Old.Plus(deg, (h.Wall(deg, 0)-h.Wall(deg+180, 0))/2)
}

// turned brings degrees between 0 and 360.
func turned(deg float64) float64 { return math.Mod(math.Mod(deg, 360)+360, 360) }
