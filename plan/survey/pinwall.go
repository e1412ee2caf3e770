package survey

import (
	"fmt"
	"math"
)

// PinWall is a pin held against the unworn wall.
type PinWall struct {
	Centre       [2]float64 // of the pin as measured
	UCentre      float64
	Bore, UBore  float64 // old diameter, as the entering pin gives it
	Pin, UPin    float64 // diameter of the pin
	WornTo, UDir float64
}

// FromPin finds the old centre from a pin pressed against the unworn wall:
// O = pin centre + (D - d)/2 towards the wear.
func FromPin(p PinWall) (Evidence, error) {
	e := (p.Bore - p.Pin) / 2
	ue := math.Hypot(p.UBore, p.UPin) / 2
	if !finite(p.Centre[0], p.Centre[1], e, p.WornTo) || p.Pin <= 0 {
		return Evidence{}, fmt.Errorf("pin: %w", ErrNotFinite)
	}
	if e < -2*ue {
		return Evidence{}, fmt.Errorf("a pin of %.3f does not enter a bore of %.3f", p.Pin, p.Bore)
	}
	ev := Evidence{Rank: RankReadings, What: "a pin held against the unworn wall", Centre: toward(p.Centre, e, p.WornTo), R: p.Bore / 2, RU: p.UBore / 2}
	ev.Cov = alongAcross(p.UCentre*p.UCentre+ue*ue, p.UCentre*p.UCentre+e*e*p.UDir*p.UDir, p.WornTo)
	if p.UDir > math.Pi/4 {
		ev.Cov = scale2(ev.Cov, 4)
		ev.doubt("the side it has worn to is known to %.0f degrees only", p.UDir*180/math.Pi)
	}
	return ev, nil
}
