package dim

import (
	"math"
	"strconv"

	"github.com/shopspring/decimal"
)

// Direction is which way a computed figure goes to its last printed place.
type Direction int

// The three directions. Up is towards plus infinity and Down towards minus
// infinity, whatever the sign; Nearest takes a half away from zero.
const (
	Nearest Direction = iota
	Up
	Down
)

// Sig9 rounds a figure to 9 significant digits, so that the last bits of a
// float, which differ between machines, never decide a printed place. NaN and
// infinities come back as they are.
func Sig9(f float64) float64 {
	if f == 0 || math.IsNaN(f) || math.IsInf(f, 0) {
		return f
	}
	r, err := strconv.ParseFloat(strconv.FormatFloat(f, 'e', 8, 64), 64)
	if err != nil { // cannot be: the text was written from a float
		return f
	}
	return r
}

// Near rounds a figure to a number of decimal places. Four are what is printed
// of a place; six are below anything that is printed and above what two ways of
// summing differ by.
func Near(f float64, places int) float64 {
	k := math.Pow10(places)
	return math.Round(f*k) / k
}

// OfFloat turns physics in mm into a length of 9 significant digits. NaN and
// infinities become a length that is not given.
func OfFloat(mm float64) Length {
	if math.IsNaN(mm) || math.IsInf(mm, 0) {
		return Length{}
	}
	return OfMM(decimal.NewFromFloat(Sig9(mm)))
}

// Round brings a length to a number of places of mm in the direction.
func (l Length) Round(places int32, dir Direction) Length {
	switch dir {
	case Up:
		return both(l, l, l.mm.RoundCeil(places))
	case Down:
		return both(l, l, l.mm.RoundFloor(places))
	default:
		return both(l, l, l.mm.Round(places))
	}
}
