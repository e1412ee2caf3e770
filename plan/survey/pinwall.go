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
	ev := Evidence{Rank: RankReadings, Method: ByPin, Centre: toward(p.Centre, e, p.WornTo), R: p.Bore / 2, RU: p.UBore / 2}
	ev.Cov = alongAcross(p.UCentre*p.UCentre+ue*ue, p.UCentre*p.UCentre+e*e*p.UDir*p.UDir, p.WornTo)
	if p.UDir > math.Pi/4 {
		ev.Cov = scale2(ev.Cov, 4)
		ev.doubt("the side it has worn to is known to %.0f degrees only", p.UDir*180/math.Pi)
	}
	return ev, nil
}

// FarWall is the wall opposite the wear, touched along the line of the wear.
type FarWall struct {
	At              [2]float64 // the touched point
	UAt             float64    // along the line
	Narrowest, UNar float64    // old diameter
	WornTo, UDir    float64
	Middle          [2]float64 // of the hole as found, for the place across
	UMiddle         float64
}

// FromFarWall finds the old centre along the wear from the unworn wall, free of
// the widest diameter: O = wall + narrowest/2, u^2 = u(wall)^2 + u(narrowest)^2/4.
// Across the wear it takes the middle of the hole: setting out from the wall
// along a wrong direction costs R u(theta).
func FromFarWall(w FarWall) (Evidence, error) {
	if !finite(w.At[0], w.At[1], w.Narrowest, w.WornTo, w.Middle[0], w.Middle[1]) || w.Narrowest <= 0 {
		return Evidence{}, fmt.Errorf("unworn wall: %w", ErrNotFinite)
	}
	sin, cos := math.Sincos(w.WornTo)
	along := w.At[0]*cos + w.At[1]*sin + w.Narrowest/2
	across := -w.Middle[0]*sin + w.Middle[1]*cos
	e := Evidence{Rank: RankReadings, Method: ByFarWall, R: w.Narrowest / 2, RU: w.UNar / 2}
	e.Centre = [2]float64{along*cos - across*sin, along*sin + across*cos}
	off := dist(w.Middle, e.Centre)
	e.Cov = alongAcross(w.UAt*w.UAt+w.UNar*w.UNar/4, w.UMiddle*w.UMiddle+off*off*w.UDir*w.UDir, w.WornTo)
	if w.UDir > doubtSide*1.0001 {
		e.doubt("the side it has worn to is known to %.0f degrees only", w.UDir*180/math.Pi)
		e.Cov = scale2(e.Cov, 4)
	}
	return e, nil
}
