package survey

import (
	"fmt"
	"math"
)

// Way says a direction in words, in steps of 45 degrees, as seen from the left
// side: +x is right, +y is up.
func Way(rad float64) string {
	names := [...]string{"to the right", "up and to the right", "upwards", "up and to the left",
		"to the left", "down and to the left", "downwards", "down and to the right"}
	if !finite(rad) {
		return "nowhere"
	}
	return names[int(math.Round(angle(rad)/(math.Pi/4)))%8]
}

// Sentence is a line that a repairer can read aloud; name is the bore's.
func (b WornBore) Sentence(name string) string {
	known := fmt.Sprintf("known to %.2f mm", math.Max(0.01, b.U()))
	if b.Round || b.W < 0.005 {
		return fmt.Sprintf("%s: round, %.2f mm; its middle is the old centre; %s", name, 2*b.R, known)
	}
	m := b.Found()
	return fmt.Sprintf("%s: worn %.2f mm %s; from the middle of the hole the old centre lies %.2f mm %s; %s",
		name, b.W, Way(b.ThetaRad), dist(m, b.O), Way(math.Atan2(b.O[1]-m[1], b.O[0]-m[0])), known)
}
