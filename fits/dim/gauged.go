package dim

import (
	"encoding/json"
	"math"
	"strconv"

	"github.com/shopspring/decimal"
)

// Gauged is a length that people gauge, as JSON has it: mm as a decimal string, "" where it is
// absent (null in JSON).
type Gauged string

// MarshalJSON prints the decimal string, or null.
func (m Gauged) MarshalJSON() ([]byte, error) {
	if m == "" {
		return []byte("null"), nil
	}
	return json.Marshal(string(m))
}

// UnmarshalJSON reads what MarshalJSON printed.
func (m *Gauged) UnmarshalJSON(b []byte) error {
	if string(b) == "null" {
		*m = ""
		return nil
	}
	return json.Unmarshal(b, (*string)(m))
}

// Given says whether there is a figure.
func (m Gauged) Given() bool { return m != "" }

// Float is the figure, 0 where it is absent.
func (m Gauged) Float() float64 {
	f, _ := strconv.ParseFloat(string(m), 64)
	return f
}

// Length is the figure as an exact length.
func (m Gauged) Length() Length {
	d, err := decimal.NewFromString(string(m))
	if err != nil {
		return Length{}
	}
	return OfMM(d)
}

// MinMax is a pair of limits in the unit of its key; null where one is absent.
type MinMax struct {
	Min *float64 `json:"min"`
	Max *float64 `json:"max"`
}

// MMRange is a pair of gauged limits in mm.
type MMRange struct {
	Min Gauged `json:"min"`
	Max Gauged `json:"max"`
}

// XY is a place or a move in mm; null where it is not known.
type XY [2]Gauged

// FoundAfter compares a figure as found with the same after the job.
type FoundAfter struct {
	Found *float64 `json:"found"`
	After *float64 `json:"after"`
}

// FoundAfterMM is FoundAfter for a gauged length.
type FoundAfterMM struct {
	Found Gauged `json:"found"`
	After Gauged `json:"after"`
}

// Places prints physics in mm at a number of decimal places, to the nearest, a
// half away from zero, after 9 significant digits. What is not a finite figure
// is absent.
func Places(mm float64, places int32) Gauged {
	if math.IsNaN(mm) || math.IsInf(mm, 0) {
		return ""
	}
	d := decimal.NewFromFloat(Sig9(mm)).Round(places)
	if d.IsZero() {
		d = decimal.Zero // never "-0.000"
	}
	return Gauged(d.StringFixed(places))
}

// Size prints a size to a thousandth of a millimetre, Place a place or an
// uncertainty to a ten-thousandth.
func Size(mm float64) Gauged  { return Places(mm, 3) }
func Place(mm float64) Gauged { return Places(mm, 4) }

// LimitUp and LimitDown print a lower and an upper limit to a thousandth,
// rounded into the limits, so that what is inside the printed pair is inside
// the true one.
func LimitUp(mm float64) Gauged   { return Size(math.Ceil(Sig9(mm)*1000-1e-6) / 1000) }
func LimitDown(mm float64) Gauged { return Size(math.Floor(Sig9(mm)*1000+1e-6) / 1000) }

// Limits prints a pair of limits rounded into each other; Sizes one as it is.
func Limits(lo, hi float64) *MMRange { return &MMRange{Min: LimitUp(lo), Max: LimitDown(hi)} }
func Sizes(lo, hi float64) *MMRange  { return &MMRange{Min: Size(lo), Max: Size(hi)} }

// PlaceXY prints a place.
func PlaceXY(p [2]float64) *XY { return &XY{Place(p[0]), Place(p[1])} }

// Number turns a figure into JSON's number of 9 significant digits, or null
// where it is not finite.
func Number(f float64) *float64 {
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return nil
	}
	f = Sig9(f)
	return &f
}

// Numbers is a pair of them.
func Numbers(lo, hi float64) *MinMax { return &MinMax{Min: Number(lo), Max: Number(hi)} }
