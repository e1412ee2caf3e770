package mesh

import (
	"math"

	"rebush/fits/say"
)

// reach refuses distances at which worm and wheel cannot meet.
func (w Worm) reach(a float64) error {
	if far := w.wheelTip() + w.wormTip(); !(a < far) {
		return &DistanceError{Have: a, Limit: far, Far: true}
	}
	if near := math.Max(w.Module*float64(w.Teeth)/2-w.Module, w.PitchDiameter/2); !(a > near) {
		return &DistanceError{Have: a, Limit: near}
	}
	return nil
}

// ContactRatio returns the contact ratio at a centre distance of a mm, with
// the contact limited to the base tangent points. A throated wheel is taken as
// rack and pinion in its middle plane, the others as crossed helicoids. It is
// 0 where contact has ended.
//
// Source: METHODS.md 2.3.
func (w Worm) ContactRatio(a float64) (float64, error) {
	if err := w.reach(a); err != nil {
		return 0, err
	}
	path, pitch := w.path(a)
	return math.Max(0, path) / pitch, nil
}

func (w Worm) path(a float64) (path, pitch float64) {
	f := w.flanks()
	tip2 := run(w.wheelTip(), f.rb2)
	if w.Form == Throated || w.Form == Unknown {
		ax := w.AxialAngle() * rad
		r2 := w.Module * float64(w.Teeth) / 2
		toT2 := r2 * math.Sin(ax)
		worm := math.Min((w.wormTip()-(a-r2))/math.Sin(ax), toT2)
		return tip2 - toT2 + worm, math.Pi * w.Module * math.Cos(ax)
	}
	_, mn, _ := w.Normals()
	line := (a - f.rb1*math.Cos(f.at1) - f.rb2*math.Cos(f.at2)) / f.sin
	r1 := math.Min(run(w.wormTip(), f.rb1)/math.Cos(f.beta1), line)
	r2 := math.Min(tip2/math.Cos(f.beta2), line)
	return r1 + r2 - line, math.Pi * mn * math.Cos(w.Angle*rad)
}

// CentreForContactRatio returns the largest centre distance in mm at which the
// contact ratio is still eps; a *RangeError where the drive never has it.
func (w Worm) CentreForContactRatio(eps float64) (float64, error) {
	if err := inRange("the contact ratio asked for", eps, 0, 10, "from 0 to 10"); err != nil {
		return 0, err
	}
	// The ratio rises while a limit at a tangent point holds and then falls;
	// the last distance is the one wanted, so the search comes from outside.
	lo, hi := w.Tight(), w.wheelTip()+w.wormTip()
	at := func(a float64) float64 { p, pitch := w.path(a); return p / pitch }
	const steps = 400
	inside := math.NaN()
	for i := range steps {
		if a := hi - (hi-lo)*float64(i+1)/steps; at(a) >= eps {
			inside = a
			break
		}
	}
	if math.IsNaN(inside) || hi <= lo {
		return 0, &RangeError{What: "the contact ratio asked for", Have: eps, Want: "less: this worm drive does not reach it at any distance"}
	}
	outside := inside + (hi-lo)/steps
	for range 100 {
		mid := (inside + outside) / 2
		if at(mid) >= eps {
			inside = mid
		} else {
			outside = mid
		}
	}
	return inside, nil
}

// TipClearance returns the gaps in mm between the tip of the worm and the root
// of the wheel, and between the tip of the wheel and the root of the worm,
// roots 1.25 modules deep.
func (w Worm) TipClearance(a float64) (tip1, tip2 float64) {
	root1 := w.PitchDiameter/2 - 1.25*w.Module
	root2 := w.Module * (float64(w.Teeth)/2 - 1.25 + w.Shift)
	return a - w.wormTip() - root2, a - w.wheelTip() - root1
}

// Lowest returns the least centre distance at which the drive turns, with a
// gap of clearance mm between tips and roots.
func (w Worm) Lowest(clearance float64) Lowest {
	low := Lowest{w.Tight(), ByFlanks}
	c1, c2 := w.TipClearance(0)
	if a := clearance - math.Min(c1, c2); a > low.At {
		low = Lowest{a, ByTipOnRoot}
	}
	return low
}

// FaceNeeded returns the face width in mm below which a straight wheel runs on
// its edges: its two flanks touch at opposite sides of the middle, one base
// radius of the worm away on each, so 2 rb1. The figures here then make the
// tight distance too large. It is 0 for the other forms.
func (w Worm) FaceNeeded() float64 {
	if w.Form != Straight {
		return 0
	}
	return 2 * w.flanks().rb1
}

// OffsetClosure returns how much the rim of a throated wheel of that face
// width closes on the worm, in mm of centre distance, when the wheel stands
// offset mm aside along its axle: sqrt(R^2 - (b/2-e)^2) - sqrt(R^2 - b^2/4).
// It is 0 for the other forms while the contact stays on the face. The error
// says when the face is wider than the throat.
func (w Worm) OffsetClosure(offset, face float64) (float64, error) {
	if w.Form == Helical || w.Form == Straight {
		return 0, nil
	}
	r := w.ThroatRadius
	if r == 0 {
		r = w.PitchDiameter/2 - w.Module
	}
	if !(face > 0 && face/2 < r) {
		return 0, &RangeError{What: "the face of a throated wheel", Have: face, Want: between(0, 2*r) + " for a hollow of that radius"}
	}
	e := math.Abs(offset)
	if !(e <= face/2) {
		return 0, &RangeError{What: "the offset of the wheel along its axle", Have: offset, Want: say.F("less than half the face, %v", say.MM(face/2, 3).Trim())}
	}
	return math.Sqrt(r*r-(face/2-e)*(face/2-e)) - math.Sqrt(r*r-face*face/4), nil
}

// EndFloatPlay returns the play of the wheel in degrees that the end float of
// the worm (mm) makes: the whole float at the wheel's pitch circle.
func (w Worm) EndFloatPlay(float float64) float64 {
	return float / (w.Module * float64(w.Teeth) / 2) / rad
}

// SelfLocking returns the friction coefficient from which on the wheel cannot
// turn the worm: cos an tan gamma, at rest. Shaking can unlock it.
// Source: Shigley, Mechanical Engineering Design, worm chapter, from memory.
func (w Worm) SelfLocking() float64 {
	return math.Cos(w.Angle*rad) * math.Tan(w.LeadAngle()*rad)
}
