package mesh

import "math"

// Form is the kind of wheel under a worm. The three differ in where they run
// and in what they forgive, so a form must be looked at, not guessed.
type Form string

// The forms. An unknown form is reckoned as throated and never trusted.
const (
	Throated Form = "throated" // hollowed to lie round the worm
	Helical  Form = "helical"  // slanting teeth, straight across: lead angle of the worm
	Straight Form = "straight" // an ordinary spur wheel
	Unknown  Form = "unknown"
)

// Worm is a worm and its wheel.
type Worm struct {
	Form Form
	// Module is the wheel's, mm: the axial module of the worm for throated and
	// helical wheels, the normal module for a straight one.
	Module        float64
	Starts        int     // 1 to 10
	Teeth         int     // of the wheel, 5 to 1000
	PitchDiameter float64 // of the worm, mm
	Angle         float64 // normal pressure angle, degrees
	Shift         float64 // profile shift of the wheel, modules
	Thinned       float64 // of both together, along the wheel's reference circle, mm
	// ShaftAngle is the angle between the shafts in degrees; 0 means 90. Of
	// the two angles they make take the one that equals the sum of both helix
	// angles for equal hands.
	ShaftAngle float64
	// WheelTip is the measured outside diameter of the wheel and WormTip that
	// of the worm, mm; 0: one module outside the pitch circle.
	WheelTip, WormTip float64
	// ThroatRadius is the radius of the hollow across a throated rim, mm; 0:
	// half the worm's diameter less one module.
	ThroatRadius float64
}

// Validate says in words why the drive cannot be reckoned, or nil. Errors are
// of type *RangeError.
func (w Worm) Validate() error {
	switch w.Form {
	case Throated, Helical, Straight, Unknown:
	default:
		return &FormError{Have: string(w.Form)}
	}
	if err := checkCommon(w.Module, w.Angle, w.Thinned); err != nil {
		return err
	}
	if err := inRange("the number of worm starts", float64(w.Starts), 1, 10, "from 1 to 10"); err != nil {
		return err
	}
	if err := inRange("the tooth count of the worm wheel", float64(w.Teeth), minTeeth, maxTeeth, "from 5 to 1000 teeth"); err != nil {
		return err
	}
	least := w.Module * math.Max(2.6, float64(w.Starts)*1.02)
	if !(w.PitchDiameter >= least && w.PitchDiameter <= 1000*w.Module) {
		return &RangeError{What: "the pitch diameter of the worm", Have: w.PitchDiameter,
			Want: between(least, 1000*w.Module) + ": its threads need a core to stand on"}
	}
	if err := inRange("the profile shift of the worm wheel", w.Shift, -1.5, 2, "from -1.5 to 2 modules"); err != nil {
		return err
	}
	if w.ShaftAngle != 0 {
		if err := inRange("the shaft angle", w.ShaftAngle, 75, 105, "from 75 to 105 degrees: 90 is usual"); err != nil {
			return err
		}
	}
	for _, t := range []struct {
		what    string
		have, d float64
	}{
		{"the tip diameter of the worm wheel", w.WheelTip, w.Module * float64(w.Teeth)},
		{"the tip diameter of the worm", w.WormTip, w.PitchDiameter},
	} {
		if t.have != 0 && !(t.have > t.d-2*w.Module && t.have < t.d+8*w.Module) {
			return &RangeError{What: t.what, Have: t.have, Want: between(t.d-2*w.Module, t.d+8*w.Module)}
		}
	}
	if w.ThroatRadius != 0 {
		if err := inRange("the throat radius", w.ThroatRadius, 0.1*w.Module, 1000*w.Module, "the radius of the hollow in the rim, near half the worm's diameter"); err != nil {
			return err
		}
	}
	if f := w.flanks(); !(f.cos < 1-1e-9) || !(w.Tight() > 0) {
		return &RangeError{What: "the shaft angle", Have: w.sigma() / rad, Want: "nearer to 90 degrees: at this one the flanks do not touch"}
	}
	return nil
}

// FormError is a form of wheel that does not exist.
type FormError struct{ Have string }

func (e *FormError) Error() string {
	return "the wheel form " + quote(e.Have) + " is not known; write throated, helical, straight or unknown"
}

func quote(s string) string { return "\"" + s + "\"" }

// Normals returns the axial module mx and the normal module mn in mm and the
// lead angle in degrees:
//
//	tan gamma = mx z1/d1,  sin gamma = mn z1/d1,  mn = mx cos gamma
//
// Source: KHK Gear Technical Reference, worm pair tables, from memory.
func (w Worm) Normals() (axial, normal, leadDeg float64) {
	q := float64(w.Starts) / w.PitchDiameter
	if w.Form == Straight {
		g := math.Asin(w.Module * q)
		return w.Module / math.Cos(g), w.Module, g / rad
	}
	g := math.Atan(w.Module * q)
	return w.Module, w.Module * math.Cos(g), g / rad
}

// LeadAngle returns the lead angle of the worm in degrees.
func (w Worm) LeadAngle() float64 { _, _, g := w.Normals(); return g }

// AxialAngle returns the axial pressure angle in degrees:
// tan ax = tan an/cos gamma.
func (w Worm) AxialAngle() float64 {
	return math.Atan(math.Tan(w.Angle*rad)/math.Cos(w.LeadAngle()*rad)) / rad
}

// Standard returns (d1 + m z2)/2 + x2 m in mm. A straight wheel does not run
// there: see Tight.
func (w Worm) Standard() float64 {
	return (w.PitchDiameter+w.Module*float64(w.Teeth))/2 + w.Shift*w.Module
}

func (w Worm) sigma() float64 {
	if w.ShaftAngle == 0 {
		return math.Pi / 2
	}
	return w.ShaftAngle * rad
}

func (w Worm) wheelTip() float64 {
	tip := w.Module * (float64(w.Teeth)/2 + 1 + w.Shift)
	switch {
	case w.WheelTip == 0:
		return tip
	case w.Form == Throated || w.Form == Unknown:
		return math.Min(tip, w.WheelTip/2) // measured over the rim, the tip at the throat is less
	default:
		return w.WheelTip / 2
	}
}

func (w Worm) wormTip() float64 {
	if w.WormTip > 0 {
		return w.WormTip / 2
	}
	return w.PitchDiameter/2 + w.Module
}

// Tips reads the measured outside diameter of the wheel. Of a throated wheel
// it is measured over the rim and may exceed the tip at the throat by up to a
// module.
func (w Worm) Tips() []Tip {
	if w.WheelTip == 0 {
		return nil
	}
	t := readTip(2, w.Module, w.Teeth, w.Shift, w.WheelTip)
	if w.Form == Throated && w.WheelTip > t.Expected && w.WheelTip <= t.Expected+w.Module {
		t.Agrees = true
	}
	return []Tip{t}
}

// Measured says whether the wheel's form is known and its tip diameter was
// measured and agrees with module and teeth: such a pair may be trusted to
// move a shaft.
func (w Worm) Measured() bool {
	t := w.Tips()
	return w.Form != Unknown && len(t) == 1 && t[0].Agrees
}
