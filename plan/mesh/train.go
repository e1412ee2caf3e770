package mesh

import (
	"fmt"
	"math"
	"rebush/fits/say"
)

// Stage is one mesh of a train.
type Stage struct {
	PlayDeg float64 // play of its driven gear with its driver held, degrees
	// ToOutput is how often the driven shaft turns for one turn of the output;
	// 1 for the last mesh.
	ToOutput float64
}

// TrainPlay returns the play in degrees at the output of a train, its input
// held: each mesh counts by its ratio to the output, so the last one rules.
// Source: plane kinematics.
func TrainPlay(stages ...Stage) (float64, error) {
	sum := 0.
	for i, s := range stages {
		if !(math.Abs(s.ToOutput) > 0) || math.IsInf(s.ToOutput, 0) || math.IsNaN(s.PlayDeg) || math.IsInf(s.PlayDeg, 0) {
			return 0, &RangeError{What: fmt.Sprintf("the ratio of mesh %d to the output", i+1), Have: s.ToOutput, Want: "a figure that is not 0"}
		}
		sum += s.PlayDeg / math.Abs(s.ToOutput)
	}
	return sum, nil
}

// IdlerPlay returns the play in degrees of gear C of a train A, idler, C with
// A held. first is the pair A and idler, second the pair idler and C, both
// with the idler as it stands in them: gear 2 of first, gear 1 of second.
func IdlerPlay(first Spur, aFirst float64, second Spur, aSecond float64) (float64, error) {
	if first.Z2 != second.Z1 {
		return 0, &RangeError{What: "the idler's tooth count in the second mesh", Have: float64(second.Z1), Want: say.F("%g as in the first", float64(first.Z2))}
	}
	_, idler, err := first.Angular(aFirst)
	if err != nil {
		return 0, err
	}
	_, last, err := second.Angular(aSecond)
	if err != nil {
		return 0, err
	}
	return TrainPlay(Stage{idler, float64(second.Z2) / float64(second.Z1)}, Stage{last, 1})
}

// Circles returns the two points that lie ra from A and rc from C, the one to
// the left of the way from A to C first. It is where an idler between two
// mates may stand. The error says by how much the circles miss each other.
func Circles(a [2]float64, ra float64, c [2]float64, rc float64) (left, right [2]float64, err error) {
	dx, dy := c[0]-a[0], c[1]-a[1]
	d := math.Hypot(dx, dy)
	if !(d > 0) || !(ra > 0) || !(rc > 0) || math.IsInf(d+ra+rc, 0) {
		return left, right, fmt.Errorf("two circles need two different centres and radii above 0")
	}
	switch {
	case d > ra+rc:
		return left, right, fmt.Errorf("the mating gears are %.4f mm too far apart for one gear to reach both", d-ra-rc)
	case d < math.Abs(ra-rc):
		return left, right, fmt.Errorf("the mating gears are %.4f mm too near each other for one gear to reach both", math.Abs(ra-rc)-d)
	}
	u := (ra*ra - rc*rc + d*d) / (2 * d)
	h := math.Sqrt(math.Max(0, ra*ra-u*u))
	ex, ey := dx/d, dy/d
	left = [2]float64{a[0] + u*ex - h*ey, a[1] + u*ey + h*ex}
	right = [2]float64{a[0] + u*ex + h*ey, a[1] + u*ey - h*ex}
	return left, right, nil
}
