package survey

import "math"

// MirrorX turns a point seen from the other side into this side's frame.
func MirrorX(p [2]float64) [2]float64 { return [2]float64{-p[0], p[1]} }

// Skew returns how far a shaft is out of square over the plate spacing,
// radians: atan((left - right)/spacing), positive when the left end lies
// further along. The same for tilt with heights. common is the part of both
// uncertainties that one value serves, and cancels.
func Skew(left, right, spacing, uLeft, uRight, common float64) (rad, u float64) {
	if !(spacing > 0) {
		return 0, 0
	}
	v := uLeft*uLeft + uRight*uRight - 2*common*common
	return math.Atan((left - right) / spacing), math.Sqrt(math.Max(0, v)) / spacing
}

// Rock returns the gap under one wheel when the other three stand:
//
//	g = G |(z_FL - z_FR) - (z_RL - z_RR)| / L
//
// z are contact heights (axle height less wheel radius), L the spacing of the
// plates where they were taken, G of the contacts.
func Rock(frontLeft, frontRight, rearLeft, rearRight, spacing, contacts, uZ float64) (gap, u float64) {
	if !(spacing > 0) {
		return 0, 0
	}
	return contacts * math.Abs((frontLeft-frontRight)-(rearLeft-rearRight)) / spacing, 2 * uZ * contacts / spacing
}

// Growth returns by how much of itself the second set of centres is larger
// than the first (a casting that has grown, against its sister), and its u
// from the u of one place per axis. Original centres only: worn ones lie.
// 0 and +Inf for fewer than two different places.
func Growth(fs []Feature, uPlace float64) (share, u float64) {
	var a, b [2]float64
	n := float64(len(fs))
	for _, f := range fs {
		for k := range a {
			a[k] += f.From[k] / n
			b[k] += f.To[k] / n
		}
	}
	var aa, bb float64
	for _, f := range fs {
		aa += math.Pow(dist(f.From, a), 2)
		bb += math.Pow(dist(f.To, b), 2)
	}
	if !(aa > 1e-9) || !finite(aa, bb) {
		return 0, math.Inf(1)
	}
	return math.Sqrt(bb/aa) - 1, uPlace / math.Sqrt(aa)
}
