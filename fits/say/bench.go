package say

import (
	"math"
	"strconv"
	"strings"

	"rebush/fits/dim"
)

// What a newton is on scales.
const (
	newtonsPerKg = 9.80665 // standard gravity, exact (ISO 80000-4)
	newtonsPerLb = 4.4482216152605
)

// ofTheBench is the mark of units as the bench has them.
const ofTheBench dim.Units = 1 << 8

// Bench are units as the bench reads them: a micrometre is said in thousandths of
// a millimetre, a force has what scales show beside it, or in inches stands as
// that alone, and a torque is in inch ounces there.
func Bench(u dim.Units) dim.Units { return u | ofTheBench }

// inBench prints a figure in such units; inside says that it stands in brackets.
func (f Figure) inBench(u dim.Units, inside bool) string {
	switch {
	case f.unit == "N":
		return f.onScales(u, inside)
	case f.unit == "N mm" && u == dim.InInch:
		return f.scaled(newtonsPerLb*25.4/16, false) + " in oz"
	case f.unit == "um" && u == dim.InMM:
		return f.inMM().in(u, inside)
	case f.unit == "um" && u == dim.InBoth:
		mm, inch := f.inMM().metric("mm"), f.inch()
		if inside {
			return mm + ", " + inch
		}
		return mm + " (" + inch + ")"
	}
	return f.in(u, inside)
}

// inMM is a figure in micrometres in millimetres.
func (f Figure) inMM() Figure {
	values := make([]float64, len(f.values))
	for i, v := range f.values {
		values[i] = v / 1000
	}
	f.values, f.unit, f.places, f.other = values, "mm", f.places+3, f.other/1000
	return f
}

// onScales is a force as scales show it.
func (f Figure) onScales(u dim.Units, inside bool) string {
	kg, lb := f.scaled(newtonsPerKg, false)+" kg", f.scaled(newtonsPerLb, false)+" lb"
	if f.style&halts != 0 {
		kg, lb = f.scaled(newtonsPerKg, true)+" kg", f.scaled(newtonsPerLb, true)+" lb"
	}
	beside := kg
	switch {
	case u == dim.InInch:
		return lb
	case u == dim.InBoth:
		beside += ", " + lb
	}
	if n := f.metric(f.unit); inside {
		return n + ", " + beside
	} else {
		return n + " (" + beside + ")"
	}
}

// scaled are the values of a figure divided by a unit, to a tenth under ten and
// whole from there on; down where it stops something.
func (f Figure) scaled(by float64, down bool) string {
	out := make([]string, len(f.values))
	for i, v := range f.values {
		switch v = dim.Sig9(v / by); {
		case down:
			out[i] = strconv.FormatFloat(math.Floor(v), 'f', 0, 64)
		case v < 9.95:
			out[i] = strconv.FormatFloat(math.Round(v*10)/10, 'f', -1, 64)
		default:
			out[i] = strconv.FormatFloat(math.Round(v), 'f', 0, 64)
		}
	}
	return strings.Join(out, f.between)
}
