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

// Correction returns the shortest move in mm of the shaft at p that brings it
// to a centre distance of want mm from its mate at m: along the line of
// centres.
func Correction(g interface {
	Distance(p, m [2]float64) (float64, [2]float64)
}, p, m [2]float64, want float64) [2]float64 {
	a, n := g.Distance(p, m)
	return [2]float64{(a - want) * n[0], (a - want) * n[1]}
}

// Under returns where a shaft stands in a bore at centre c with a diametral
// running clearance of cd mm when it is pressed towards f (any length).
func Under(c [2]float64, cd float64, f [2]float64) [2]float64 {
	l := math.Hypot(f[0], f[1])
	if !(l > 0) {
		return c
	}
	return [2]float64{c[0] + cd/2*f[0]/l, c[1] + cd/2*f[1]/l}
}

// AtStation returns the centre of a shaft z mm from its left bore, for bores
// at left and right that stand spacing mm apart. z may lie outside them.
func AtStation(left, right [2]float64, spacing, z float64) ([2]float64, error) {
	if !(spacing > 0) {
		return left, fmt.Errorf("the bores stand %.4g mm apart; it should be more than 0", spacing)
	}
	t := z / spacing
	return [2]float64{left[0] + (right[0]-left[0])*t, left[1] + (right[1]-left[1])*t}, nil
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
		return 0, fmt.Errorf("a loss by skew needs bores that stand apart (have %.4g mm) and a face of 0 mm or more (have %.4g)", spacing, face)
	}
	in := math.Abs(difference[0]*towards[0]+difference[1]*towards[1]) / l
	out := math.Abs(difference[0]*towards[1]-difference[1]*towards[0]) / l
	sin, cos := math.Sincos(operatingDeg * rad)
	return face * (in*sin + out*cos) / spacing, nil
}

// WormSkew returns what unlike bores do to a wheel under a worm that lies
// along the truck: the error of the shaft angle in degrees (from the
// difference along the truck) and how far the rim shifts along the axle in mm
// (from the difference in height), for a wheel of pitch radius r2 mm.
func WormSkew(difference [2]float64, spacing, r2 float64) (angleDeg, rimShift float64, err error) {
	if !(spacing > 0) {
		return 0, 0, fmt.Errorf("the bores stand %.4g mm apart; it should be more than 0", spacing)
	}
	return math.Atan(difference[0]/spacing) / rad, r2 * difference[1] / spacing, nil
}
