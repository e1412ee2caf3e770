package target

import (
	"math"

	"rebush/plan/mesh"
)

// Stand is where a shaft stands in one bore under load: Off mm from Centre
// along Load, a unit vector. Every distance, skew, lean, wheelbase and rock is
// asked of stands.
type Stand struct {
	Centre Point
	Off    float64
	Load   Point
}

// At is the place of the shaft's own centre.
func (s Stand) At() Point { return mesh.Pressed(s.Centre, s.Off, s.Load) }

// Station is where a shaft runs at a share of the way from its left bore to its
// right one; a shaft known in one bore only is taken as square.
func Station(s []Stand, share float64) Point {
	if len(s) == 1 {
		return s[0].At()
	}
	return mesh.Station(s[0].At(), s[1].At(), share)
}

// Distance is the centre distance in mm of a mesh whose wheel's shaft and whose
// mate's shaft stand like that. mate is not asked for a mate at a fixed place.
func Distance(d mesh.Drive, wheel, mate []Stand) float64 {
	a, _ := Line(d, wheel, mate)
	return a
}

// Line is the same with the unit vector from the wheel towards its mate.
func Line(d mesh.Drive, wheel, mate []Stand) (a float64, towards Point) {
	m := d.MateAt
	if d.OnJob() {
		m = Station(mate, d.MateShare)
	}
	return d.Geometry.Distance(Station(wheel, d.Share), m)
}

// span is the range of centre distances of two shafts that each stand anywhere
// between two places, as with the least and the most of their clearances: the
// nearest and the farthest of all four, with their unit vectors.
func span(g Geometry, wheel, mate [2]Point) (near, far float64, nNear, nFar Point) {
	near, far = math.Inf(1), math.Inf(-1)
	for _, p := range wheel {
		for _, m := range mate {
			a, n := g.Distance(p, m)
			if a < near {
				near, nNear = a, n
			}
			if a > far {
				far, nFar = a, n
			}
		}
	}
	return near, far, nNear, nFar
}

// Span is the range of centre distances in mm of a mesh whose shafts stand
// anywhere between two stands in each bore: low and high.
func Span(d mesh.Drive, wheelLow, wheelHigh, mateLow, mateHigh []Stand) (near, far float64) {
	wheel := [2]Point{Station(wheelLow, d.Share), Station(wheelHigh, d.Share)}
	mate := [2]Point{d.MateAt, d.MateAt}
	if d.OnJob() {
		mate = [2]Point{Station(mateLow, d.MateShare), Station(mateHigh, d.MateShare)}
	}
	near, far, _, _ = span(d.Geometry, wheel, mate)
	return near, far
}

// LeanTakes is how much of its running clearance a shaft needs in a bush of a
// length whose bores stand apart by the distance of the plates and out of line:
// the length x the slope. mm.
func LeanTakes(left, right Point, spacing, length float64) float64 {
	return length * math.Hypot(right[0]-left[0], right[1]-left[1]) / spacing
}

// LeanLoss is the normal backlash in mm that a gear of a face width loses on a
// shaft that stands like that in unlike bores: see mesh.SkewLoss.
func LeanLoss(left, right Stand, towards Point, spacing, face, operatingDeg float64) float64 {
	l, r := left.At(), right.At()
	lost, _ := mesh.SkewLoss(Point{r[0] - l[0], r[1] - l[1]}, towards, spacing, face, operatingDeg)
	return lost
}
