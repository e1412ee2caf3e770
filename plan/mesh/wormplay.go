package mesh

import "math"

// flanks is the contact of the drive's involute helicoids. All directions are
// fixed by the base helices and the shaft angle and do not change with the
// centre distance, so the backlash is a straight line over it.
type flanks struct {
	cos, sin     float64 // of the working pressure angle
	b1, b2       float64 // working helix angles from the axes, rad
	at1, at2     float64 // working transverse pressure angles, rad
	rb1, rb2     float64 // base radii, mm
	beta1, beta2 float64 // base helix angles, rad
	rw2          float64 // the radius on which the wheel rolls, mm
	h            float64 // lead/2pi, mm
	room         float64 // normal backlash/cos less 2(a - rw2) tan, mm
}

// flanks solves the crossed-axis relations (equal hands, b1 + b2 = Sigma)
//
//	cos a' sin b1 = sin beta_b1,  cos a' sin b2 = sin beta_b2
//
// in closed form: c sin b1 = s1 and c cos b1 = (s2 + s1 cos Sigma)/sin Sigma.
// The thread of the worm is reckoned in its base tangent planes, which stays
// sound where the worm meets a straight wheel square and would have no pitch
// cylinder:
//
//	jbn = cos a' [ 2h sin b1 (pi/z1 - psi1 - at1) - s_n2 + 2 (a - rw2) tan a' ]
//
// with psi1 half the tooth angle of the worm at its base cylinder and s_n2 the
// normal tooth thickness of the wheel where it rolls.
//
// Source: METHODS.md 2.4 and METHODS.md 2.5.
func (w Worm) flanks() flanks {
	mx, mn, leadDeg := w.Normals()
	an, g, sig := w.Angle*rad, leadDeg*rad, w.sigma()
	var f flanks
	f.h = mx * float64(w.Starts) / 2
	s1 := math.Cos(g) * math.Cos(an)
	beta2, mt2, at2ref := 0., mn, an
	if w.Form != Straight {
		beta2, mt2, at2ref = g, mx, math.Atan(math.Tan(an)/math.Cos(g))
	}
	s2 := math.Sin(beta2) * math.Cos(an)
	along := (s2 + s1*math.Cos(sig)) / math.Sin(sig)
	if sig == math.Pi/2 {
		along = s2
	}
	f.cos = math.Hypot(s1, along)
	f.sin = math.Sqrt(math.Max(0, 1-f.cos*f.cos))
	f.b1 = math.Atan2(s1, along)
	f.b2 = sig - f.b1
	f.beta1, f.beta2 = math.Asin(s1), math.Asin(s2)
	f.at1 = math.Atan2(f.sin, f.cos*math.Cos(f.b1))
	f.at2 = math.Atan2(f.sin, f.cos*math.Cos(f.b2))
	at1ref := math.Atan(math.Tan(an) / math.Sin(g))
	f.rb1 = w.PitchDiameter / 2 * math.Cos(at1ref)
	r2 := mt2 * float64(w.Teeth) / 2
	f.rb2 = r2 * math.Cos(at2ref)
	f.rw2 = f.rb2 / math.Cos(f.at2)
	psi1 := math.Pi/(2*float64(w.Starts)) + Involute(at1ref)
	s2t := mt2*math.Pi/2 + 2*w.Shift*w.Module*math.Tan(at2ref) - w.Thinned
	psi2 := s2t/(2*r2) + Involute(at2ref)
	sn2 := math.Cos(f.b2) * 2 * f.rw2 * (psi2 - Involute(f.at2))
	f.room = 2*f.h*math.Sin(f.b1)*(math.Pi/float64(w.Starts)-psi1-f.at1) - sn2
	return f
}

// Tight returns the centre distance at which the backlash is nought, mm. Under
// a straight wheel it is larger than the sum of the pitch radii.
func (w Worm) Tight() float64 {
	f := w.flanks()
	return f.rw2 - f.room*f.cos/(2*f.sin)
}

// Normal returns the normal backlash in mm at a centre distance of a mm:
// 2 (a - a_tight) sin a', exact for involute flanks. It is negative where the
// teeth would have to overlap. The error is a *DistanceError.
//
// Source: KHK Gear Technical Reference sect. 6.2, from memory, for throated
// wheels; the other forms are our own.
func (w Worm) Normal(a float64) (float64, error) {
	if err := w.reach(a); err != nil {
		return 0, err
	}
	f := w.flanks()
	return f.cos * (f.room + 2*(a-f.rw2)*f.sin/f.cos), nil
}

// Backlash returns the backlash along the circle on which the wheel rolls, in
// mm: 2 (a - a_tight) tan ax for throated and helical wheels, with tan a' for
// a straight one.
func (w Worm) Backlash(a float64) (float64, error) {
	j, err := w.Normal(a)
	f := w.flanks()
	return j / (f.cos * math.Cos(f.b2)), err
}

// Angular returns the play of the wheel in degrees with the worm held.
func (w Worm) Angular(a float64) (float64, error) {
	j, err := w.Normal(a)
	f := w.flanks()
	return j / (f.rb2 * math.Cos(f.beta2)) / rad, err
}

// Radial returns a less the tight distance, mm.
func (w Worm) Radial(a float64) float64 { return a - w.Tight() }

// CentreForNormal returns the centre distance in mm for a normal backlash of
// j mm. Errors: *RangeError.
func (w Worm) CentreForNormal(j float64) (float64, error) {
	if err := w.wanted(j); err != nil {
		return 0, err
	}
	return w.Tight() + j/(2*w.flanks().sin), nil
}

// CentreForBacklash returns the centre distance in mm for a circumferential
// backlash of j mm.
func (w Worm) CentreForBacklash(j float64) (float64, error) {
	if err := w.wanted(j); err != nil {
		return 0, err
	}
	f := w.flanks()
	return w.Tight() + j*f.cos*math.Cos(f.b2)/(2*f.sin), nil
}

func (w Worm) wanted(j float64) error {
	return inRange("the backlash asked for", j, 0, math.Pi*w.Module, "from 0 mm to less than a pitch of the teeth")
}

// OperatingAngle returns the working pressure angle in degrees, between the
// common normal of the flanks and the plane square to the line of centres. The
// distance does not change it; it is an argument for the sake of Pair.
func (w Worm) OperatingAngle(a float64) (float64, error) {
	if err := w.reach(a); err != nil {
		return 0, err
	}
	f := w.flanks()
	return math.Atan2(f.sin, f.cos) / rad, nil
}
