package target

import (
	"fmt"
	"math"
)

// Skew returns how a shaft leans between its bores: in plan (along the truck)
// and in height, degrees, both above 0 when the left end lies further along +x
// or higher. spacing is the distance of the bores' middles, mm.
//
//	skew = atan((x_left - x_right)/spacing)
func Skew(left, right Point, spacing float64) (skewDeg, tiltDeg float64, err error) {
	if !(spacing > 0) {
		return 0, 0, fmt.Errorf("the bores of the shaft stand %.4g mm apart; it should be more than 0", spacing)
	}
	d := 180 / math.Pi
	return math.Atan((left[0]-right[0])/spacing) * d, math.Atan((left[1]-right[1])/spacing) * d, nil
}

// Ends is where a shaft's two ends stand.
type Ends struct{ Left, Right Point }

// Wheelbase returns the distance of two shafts along the truck, mm: between
// the middles of their ends.
func Wheelbase(front, rear Ends) float64 {
	return math.Abs((front.Left[0] + front.Right[0] - rear.Left[0] - rear.Right[0]) / 2)
}

// Rock returns the gap in mm under one wheel when the other three stand:
//
//	g = G |(y_FL - y_FR) - (y_RL - y_RR)| / L
//
// spacing L is the distance of the plates' middles, contacts G that of the
// rails' contacts, both mm; wheels of one shaft are taken as equal.
func Rock(front, rear Ends, spacing, contacts float64) (float64, error) {
	if !(spacing > 0) || !(contacts > 0) {
		return 0, fmt.Errorf("rock needs the distance of the plates (have %.4g mm) and of the rail contacts (have %.4g mm), both above 0", spacing, contacts)
	}
	return contacts * math.Abs((front.Left[1]-front.Right[1])-(rear.Left[1]-rear.Right[1])) / spacing, nil
}

// Pressed returns where the shaft lies in each bore when its bore centres
// stand at the places given, at the least (most false) or most clearance.
func (s Shaft) Pressed(centres []Point, most bool) []Point {
	sin, cos := math.Sincos(s.TowardsDeg * math.Pi / 180)
	out := make([]Point, 0, len(centres))
	for i, c := range centres {
		if i >= len(s.Bores) {
			break
		}
		d := s.Bores[i].CdLo / 2
		if most {
			d = s.Bores[i].CdHi / 2
		}
		out = append(out, Point{c[0] + d*cos, c[1] + d*sin})
	}
	return out
}
