package cutting

import (
	"math"
	"sort"
)

// The diameters for which a question makes sense: the smallest drill of the
// number series and the widest hole of a bench.
const (
	smallestMM = 0.1
	largestMM  = 100.0
)

// RPM returns the turns a minute for a cutting speed v in m/min at a diameter
// in mm:
//
//	n = 1000·v / (π·d)
//
// d must be above 0. Source: GTZ Drilling handbook; the same in inches is
// n = 12·V / (π·D).
func RPM(vMMin, diaMM float64) float64 { return 1000 * vMMin / (math.Pi * diaMM) }

// SurfaceSpeed is the inverse: m/min at a diameter in mm and turns a minute.
func SurfaceSpeed(rpm, diaMM float64) float64 { return math.Pi * diaMM * rpm / 1000 }

// Step is what the spindle is set to.
type Step struct {
	RPM     float64
	TooFast bool // even the slowest is too fast: turn the spindle by hand
	AtTop   bool // more was wanted than the spindle gives: lighter feed
	Unknown bool // nothing is known of the spindle; RPM is the ideal
}

// SetTo returns the step of a spindle to use for an ideal number of turns:
// the largest at or below it; the slowest, TooFast, where all are above it;
// the top one, AtTop, where more was wanted. A spindle of variable speed has
// no steps and a range from lowest to highest (0: no such end). Steps may
// stand in any order; those that are not above 0 are passed over.
//
// Turns are read in whole ones: a step of 1100 serves an ideal of 1099.6, which
// is printed as 1100.
//
// Source: the rule of the sheet in the trade, common practice.
func SetTo(steps []float64, lowest, highest, ideal float64) Step {
	var usable []float64
	for _, s := range steps {
		if s > 0 && !math.IsInf(s, 0) {
			usable = append(usable, s)
		}
	}
	sort.Float64s(usable)
	if math.IsNaN(ideal) || ideal < 0 {
		ideal = 0
	}
	slack := ideal * 1e-9
	if len(usable) > 0 {
		top := usable[len(usable)-1]
		ideal = math.Max(ideal, math.Round(ideal))
		slack = ideal * 1e-9
		out := Step{RPM: usable[0], TooFast: usable[0] > ideal+slack, AtTop: ideal > top+slack}
		for _, s := range usable {
			if s <= ideal+slack {
				out.RPM = s
			}
		}
		return out
	}
	switch {
	case lowest > 0 && ideal < lowest-slack:
		return Step{RPM: lowest, TooFast: true}
	case highest > 0 && ideal > highest+slack:
		return Step{RPM: highest, AtTop: true}
	case lowest > 0 || highest > 0:
		return Step{RPM: ideal}
	}
	return Step{RPM: ideal, Unknown: true}
}

// Step is SetTo under the rules in force.
func (c *Cutting) Step(steps []float64, lowest, highest, ideal float64) Step {
	return SetTo(steps, lowest, highest, ideal)
}
