// Package mesh works out gear pairs: spur pairs with profile shift and thinned
// teeth, worms with throated, helical or straight-cut wheels. A Pair answers
// with plain numbers: backlash at a centre distance, the centre distance for a
// backlash, contact ratio, the window that it wants.
//
// Of a job FromJob makes Drives: a pair with where it stands, the backlash that
// is wanted of it, and whether it may move a shaft. Seen tells what wear has done
// to a drive, Row what is printed of it. Where the shafts stand is worked out in
// the room for targets, which asks the drives.
//
// Lengths are float64 in mm, angles of the public fields and results are in
// degrees. Call Validate before anything else: the other methods trust it.
//
// It leaves out helical spur pairs, internal gears and bevels, idlers and trains.
package mesh

import (
	"fmt"
	"math"
	"strconv"

	"rebush/fits/say"
)

const rad = math.Pi / 180

// Involute returns inv t = tan t - t of an angle in radians, in radians.
// Any handbook of gearing.
func Involute(t float64) float64 { return math.Tan(t) - t }

// InverseInvolute returns the angle in radians whose involute is y. It solves
// u - atan u = y for u = tan t by Newton: that function rises and is convex
// for u > 0, so the search cannot go astray however large y is. It answers 0
// for y of 0 or less.
//
// Source: the relation, any handbook; the substitution, METHODS.md 1.2.
func InverseInvolute(y float64) float64 {
	if !(y > 0) {
		return 0
	}
	if math.IsInf(y, 1) {
		return math.Pi / 2
	}
	u := math.Cbrt(3 * y)
	for range 60 {
		f := u - math.Atan(u) - y
		if u < 0.02 { // the difference of two near figures: take its series
			u2 := u * u
			f = u*u2*(1./3-u2*(1./5-u2*(1./7-u2/9))) - y
		}
		next := u - f - f/(u*u)
		if math.Abs(next-u) <= 1e-16*u {
			u = next
			break
		}
		u = next
	}
	return math.Atan(u)
}

// ModuleFromDP turns a diametral pitch in teeth per inch into a module in mm:
// 25.4/P. Pitches from 0.5 to 500 are taken.
func ModuleFromDP(perInch float64) (float64, error) {
	if !(perInch >= 0.5 && perInch <= 500) {
		return 0, &RangeError{What: "the diametral pitch", Have: perInch, Want: "from 0.5 to 500 teeth per inch"}
	}
	return 25.4 / perInch, nil
}

// RangeError is a figure with which no gear can be reckoned.
type RangeError struct {
	What string // "the pressure angle"
	Have float64
	Want say.Text // "from 5 to 45 degrees"
}

// Error prints in mm.
func (e *RangeError) Error() string { return e.Said().String() }

// Said is the message with its figures.
func (e *RangeError) Said() say.Text {
	have := fmt.Sprintf("%.6g", e.Have)
	if math.Abs(e.Have) < 1000 && math.Abs(e.Have) >= 0.001 {
		have = strconv.FormatFloat(math.Round(e.Have*1000)/1000, 'f', -1, 64)
	}
	return say.F("%s is %s; it should be %v", e.What, have, e.Want)
}

// DistanceError is a centre distance at which the pair cannot mesh.
type DistanceError struct {
	Have  float64 // mm
	Limit float64 // mm: the least distance, or the one at which the teeth part
	Far   bool    // too far apart; else too near
}

// Error prints in mm.
func (e *DistanceError) Error() string { return e.Said().String() }

// Said is the message with its figures.
func (e *DistanceError) Said() say.Text {
	have, limit := say.MM(e.Have, 4), say.MM(e.Limit, 4)
	if e.Far {
		return say.F("at a centre distance of %v the teeth no longer reach each other; they part at %v", have, limit)
	}
	return say.F("a centre distance of %v is too small for these gears to mesh at all; it must be more than %v", have, limit)
}

// inRange refuses NaN as well as what lies outside.
func inRange(what string, have, lo, hi float64, want say.Text) error {
	if have >= lo && have <= hi {
		return nil
	}
	return &RangeError{What: what, Have: have, Want: want}
}
