package mesh

import (
	"math"

	"rebush/fits/say"
)

func between(lo, hi float64) say.Text {
	return say.F("between %v", say.Row(3, "mm", " and ", lo, hi).Trim())
}

// Normal returns the normal backlash (a feeler gauge between the flanks) in mm
// at a centre distance of a mm. It is negative where the teeth would have to
// overlap; print nought then. The formula is exact:
//
//	jbn = m cos alpha [ (z1+z2)(inv aw - inv alpha) - 2(x1+x2) tan alpha ] + T cos alpha
//
// The error is a *DistanceError where the pair cannot mesh at a.
// Source: METHODS.md 1.3.
func (s Spur) Normal(a float64) (float64, error) {
	t, err := s.operating(a)
	if err != nil {
		return 0, err
	}
	if err := s.reach(a, t); err != nil {
		return 0, err
	}
	return s.normalAt(t), nil
}

func (s Spur) normalAt(t float64) float64 {
	al := s.alpha()
	return s.Module*math.Cos(al)*(s.teeth()*(Involute(t)-Involute(al))-2*s.shifts()*math.Tan(al)) + s.Thinned*math.Cos(al)
}

// Backlash returns the circumferential backlash at the operating pitch circle
// in mm: jwt = jbn/cos aw. Signs and errors as Normal.
func (s Spur) Backlash(a float64) (float64, error) {
	j, err := s.Normal(a)
	if err != nil {
		return 0, err
	}
	t, _ := s.operating(a)
	return j / math.Cos(t), nil
}

// Angular returns the play in degrees of gear 1 with gear 2 held, and of gear
// 2 with gear 1 held: jbn over the base radius.
func (s Spur) Angular(a float64) (gear1, gear2 float64, err error) {
	j, err := s.Normal(a)
	return j / s.base1() / rad, j / s.base2() / rad, err
}

// Radial returns the radial backlash in mm: how far the axles may approach
// before the flanks touch on both sides, a less the tight distance.
func (s Spur) Radial(a float64) float64 { return a - s.Tight() }

// CentreForNormal returns the centre distance in mm at which the normal
// backlash is j mm, 0 or more, without iteration. Errors: *RangeError.
func (s Spur) CentreForNormal(j float64) (float64, error) {
	if err := s.wanted(j); err != nil {
		return 0, err
	}
	return s.leastBase() / math.Cos(InverseInvolute(s.tightInvolute()+j/(s.Module*math.Cos(s.alpha())*s.teeth()))), nil
}

// CentreForBacklash returns the centre distance in mm at which the
// circumferential backlash at the operating pitch circle is j mm. It rises
// with the distance, so the root is found by halving.
func (s Spur) CentreForBacklash(j float64) (float64, error) {
	if err := s.wanted(j); err != nil {
		return 0, err
	}
	lo := InverseInvolute(s.tightInvolute())
	hi := math.Pi/2 - 1e-6
	if j == 0 {
		return s.Tight(), nil
	}
	for range 200 {
		mid := (lo + hi) / 2
		if mid == lo || mid == hi {
			break
		}
		if s.normalAt(mid) < j*math.Cos(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return s.leastBase() / math.Cos(hi), nil
}

func (s Spur) wanted(j float64) error {
	return inRange("the backlash asked for", j, 0, math.Pi*s.Module, "from 0 mm to less than a pitch of the teeth")
}
