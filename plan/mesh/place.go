package mesh

import (
	"fmt"
	"math"
)

// Across is the geometry of two parallel shafts: a = |P - M|.
type Across struct{}

// Distance returns the centre distance in mm of a shaft at p and its mate at
// m, and the unit vector from the shaft towards its mate: a small move of both
// changes the distance by towards.(dm - dp). Where both points are one the
// vector points up.
func (Across) Distance(p, m [2]float64) (a float64, towards [2]float64) {
	dx, dy := m[0]-p[0], m[1]-p[1]
	a = math.Hypot(dx, dy)
	if a == 0 {
		return 0, [2]float64{0, 1}
	}
	return a, [2]float64{dx / a, dy / a}
}

// Along is the geometry of a worm that lies along the truck, its axis rising
// SlopeDeg degrees towards the front (+x). Only the distance square to the
// axis counts.
type Along struct {
	SlopeDeg float64
	Below    bool // the worm lies under the wheel
}

// Distance is Across.Distance for a wheel at p and any point w of the worm's
// axis: a = n.(w - p), n = (-sin, cos) of the slope, the other way round for a
// worm below. It is negative where the worm lies on the other side.
func (g Along) Distance(p, w [2]float64) (a float64, towards [2]float64) {
	sin, cos := math.Sincos(g.SlopeDeg * rad)
	n := [2]float64{-sin, cos}
	if g.Below {
		n = [2]float64{sin, -cos}
	}
	return n[0]*(w[0]-p[0]) + n[1]*(w[1]-p[1]), n
}

// Correction returns the shortest move in mm of a shaft that stands off mm too
// far from its mate, negative: too near, towards being the unit vector to that
// mate: along the line of centres.
func Correction(towards [2]float64, off float64) [2]float64 {
	return [2]float64{off * towards[0], off * towards[1]}
}

// Pressed returns where a shaft stands that is pressed off mm from a centre
// along load, a unit vector.
func Pressed(centre [2]float64, off float64, load [2]float64) [2]float64 {
	return [2]float64{centre[0] + off*load[0], centre[1] + off*load[1]}
}

// Station returns where a shaft runs at a share of the way from its left bore
// to its right one: 0 left, 1 right; outside them it is overhung.
func Station(left, right [2]float64, share float64) [2]float64 {
	return [2]float64{left[0] + (right[0]-left[0])*share, left[1] + (right[1]-left[1])*share}
}

// SkewLoss returns the normal backlash in mm that a gear of that face width
// loses on a shaft whose right bore stands off its left one by difference, the
// line of centres pointing towards:
//
//	b ( |in| sin aw + |out| cos aw ) / B
//
// with in and out the parts of the difference along and square to that line.
//
// Source: METHODS.md 4.5; the same combination as ISO/TR 10064-3.
func SkewLoss(difference, towards [2]float64, spacing, face, operatingDeg float64) (float64, error) {
	l := math.Hypot(towards[0], towards[1])
	if !(spacing > 0) || !(face >= 0) || !(l > 0) {
		return 0, fmt.Errorf("a loss by skew needs bores that stand apart (have %.4g mm) and a face of 0 mm or more "+
			"(have %.4g)", spacing, face)
	}
	in := math.Abs(difference[0]*towards[0]+difference[1]*towards[1]) / l
	out := math.Abs(difference[0]*towards[1]-difference[1]*towards[0]) / l
	sin, cos := math.Sincos(operatingDeg * rad)
	return face * (in*sin + out*cos) / spacing, nil
}
