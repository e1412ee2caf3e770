package survey

import "math"

// PinBand returns the diameter between a pin that goes and the next that stops
// and its uncertainty: the half-step as a rectangle, with the pins' own. over
// and under are the limits of the pins' class from nominal, both as the class
// gives them (a one-sided class shifts the mean).
func PinBand(goes, stops, over, under float64) (d, u float64) {
	step := stops - goes
	d = (goes+stops)/2 + (over+under)/2
	return d, math.Sqrt(step*step/12 + (over-under)*(over-under)/12)
}
