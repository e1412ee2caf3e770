package mesh

import (
	"fmt"
	"math"
)

// Bounds of what is taken for a gear of this trade, with room to spare.
const (
	minTeeth, maxTeeth   = 5, 1000
	minModule, maxModule = 0.05, 60.0
	minAngle, maxAngle   = 5.0, 45.0
)

// Spur is a pair of external spur gears. Gear 1 and gear 2 may be named either
// way round.
type Spur struct {
	Module float64 // mm, 25.4 divided by the diametral pitch
	Z1, Z2 int     // teeth, 5 to 1000
	Angle  float64 // reference pressure angle, degrees
	X1, X2 float64 // profile shift factors, modules
	// Thinned is the tooth thinning of both gears together, measured along
	// their reference circles, mm, 0 or more.
	Thinned float64
	// Tip1 and Tip2 are measured tip diameters, mm; 0 where none was measured:
	// the tip is then one module and the shift above the reference circle.
	Tip1, Tip2 float64
	// Called is what the gears are called in what is said of them: "the wheel".
	// Left empty they are gear 1 and gear 2.
	Called [2]string
}

func (s Spur) name(figure string, i int) string {
	if s.Called[i] != "" {
		return figure + " of " + s.Called[i]
	}
	return fmt.Sprintf("%s of gear %d", figure, i+1)
}

// Validate says in words why the pair cannot be reckoned, or nil. Errors are
// of type *RangeError.
func (s Spur) Validate() error {
	if err := checkCommon(s.Module, s.Angle, s.Thinned); err != nil {
		return err
	}
	for i, z := range []int{s.Z1, s.Z2} {
		if err := inRange(s.name("the tooth count", i), float64(z), minTeeth, maxTeeth, "from 5 to 1000 teeth: fewer do not make a spur gear that runs"); err != nil {
			return err
		}
	}
	for i, x := range []float64{s.X1, s.X2} {
		if err := inRange(s.name("the profile shift", i), x, -1.5, 2, "from -1.5 to 2 modules"); err != nil {
			return err
		}
	}
	for i, tip := range []float64{s.Tip1, s.Tip2} {
		if tip == 0 {
			continue
		}
		rb := []float64{s.base1(), s.base2()}[i]
		z := []int{s.Z1, s.Z2}[i]
		hi := s.Module * (float64(z) + 8)
		if !(tip > 2*rb && tip <= hi) {
			return &RangeError{What: s.name("the tip diameter", i), Have: tip, Want: between(2*rb, hi) + " for this module and tooth count"}
		}
	}
	if !(s.tightInvolute() > 1e-9) {
		return &RangeError{What: "the thinning of both gears together", Have: s.Thinned,
			Want: "less: teeth so thin, or shifts so far inwards, never touch on their flanks"}
	}
	return nil
}

func checkCommon(module, angle, thinned float64) error {
	if err := inRange("the module", module, minModule, maxModule, "from 0.05 to 60 mm"); err != nil {
		return err
	}
	if err := inRange("the pressure angle", angle, minAngle, maxAngle, "from 5 to 45 degrees: 20 and 14.5 are usual"); err != nil {
		return err
	}
	return inRange("the thinning of both gears together", thinned, 0, module, "from 0 to one module, in mm")
}

// Standard returns the standard centre distance m(z1+z2)/2 in mm, which knows
// nothing of shifts or thinning. Source: any handbook of gearing.
func (s Spur) Standard() float64 { return s.Module * float64(s.Z1+s.Z2) / 2 }

// Tight returns the centre distance at which the backlash is nought, in mm:
//
//	inv aw = inv alpha + (2(x1+x2) tan alpha - T/m)/(z1+z2),  a = a0 cos alpha/cos aw
//
// Source: ISO 21771:2007 eq 62 for the shifts; the thinning follows from the
// tooth thickness on the operating circles.
func (s Spur) Tight() float64 {
	return s.leastBase() / math.Cos(InverseInvolute(s.tightInvolute()))
}

// OperatingAngle returns the working pressure angle in degrees at a centre
// distance of a mm: cos aw = (a0/a) cos alpha. The error is a *DistanceError
// where a is below the sum of the base radii.
func (s Spur) OperatingAngle(a float64) (float64, error) {
	t, err := s.operating(a)
	return t / rad, err
}

func (s Spur) operating(a float64) (float64, error) {
	least := s.leastBase()
	if !(a > least) || math.IsInf(a, 1) {
		return 0, &DistanceError{Have: a, Limit: least}
	}
	return math.Acos(least / a), nil
}

func (s Spur) alpha() float64     { return s.Angle * rad }
func (s Spur) shifts() float64    { return s.X1 + s.X2 }
func (s Spur) teeth() float64     { return float64(s.Z1 + s.Z2) }
func (s Spur) base1() float64     { return s.Module * float64(s.Z1) / 2 * math.Cos(s.alpha()) }
func (s Spur) base2() float64     { return s.Module * float64(s.Z2) / 2 * math.Cos(s.alpha()) }
func (s Spur) leastBase() float64 { return s.base1() + s.base2() }
func (s Spur) basePitch() float64 { return math.Pi * s.Module * math.Cos(s.alpha()) }

func (s Spur) tightInvolute() float64 {
	return TightInvolute(s.alpha(), s.alpha(), s.shifts(), s.Thinned/s.Module, s.teeth())
}

// TightInvolute is the involute of the transverse working angle at which a pair
// runs without backlash: reference angles normal and transverse (radians, one
// for spur gears), sum of shift factors, thinning in modules, sum of teeth.
//
// Source: ISO 21771:2007 eq 62 for the shifts.
func TightInvolute(normal, transverse, shifts, thinned, teeth float64) float64 {
	return Involute(transverse) + (2*shifts*math.Tan(normal)-thinned)/teeth
}

// tip radii: measured, or 1.0 module and the shift above the reference circle.
func (s Spur) tipRadius1() float64 { return tipRadius(s.Module, s.Z1, s.X1, s.Tip1) }
func (s Spur) tipRadius2() float64 { return tipRadius(s.Module, s.Z2, s.X2, s.Tip2) }

func tipRadius(m float64, z int, x, measured float64) float64 {
	if measured > 0 {
		return measured / 2
	}
	return m * (float64(z)/2 + 1 + x)
}

// root radii: 1.25 module below the reference circle, less the shift (ISO 53).
func (s Spur) rootRadius1() float64 { return s.Module * (float64(s.Z1)/2 - 1.25 + s.X1) }
func (s Spur) rootRadius2() float64 { return s.Module * (float64(s.Z2)/2 - 1.25 + s.X2) }
