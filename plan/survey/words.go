package survey

import (
	"math"
	"rebush/fits/say"
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
func (b WornBore) Sentence(name string) say.Text {
	known := say.F("known to %v", say.MM(math.Max(0.01, b.U()), 2))
	if b.Round || b.W < 0.005 {
		return say.F("%s: round, %v; its middle is the old centre; %v", name, say.MM(2*b.R, 2), known)
	}
	m := b.Found()
	return say.F("%s: worn %v %s; from the middle of the hole the old centre lies %v %s; %v", name, say.MM(b.W, 2), Way(b.ThetaRad), say.MM(dist(m, b.O), 2), Way(math.Atan2(b.O[1]-m[1], b.O[0]-m[0])), known)
}
