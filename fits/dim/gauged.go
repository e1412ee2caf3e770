package dim

import (
	"encoding/json"
	"math"
	"strconv"

	"github.com/shopspring/decimal"
)

// Gauged is a length that people gauge: as JSON has it, mm as a decimal string,
// absent (null in JSON) where there is none, and the exact figure behind that, so
// that paper and screen round once whatever their unit.
type Gauged struct {
	mm    string
	exact float64
	dir   Direction // which way the decimals were cut
}

// Typed is a length as JSON has it, "5.012"; what is no number is absent.
func Typed(mm string) Gauged {
	v, err := strconv.ParseFloat(mm, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return Gauged{}
	}
	return Gauged{mm: mm, exact: v}
}

// String is the decimal string of JSON, "" where there is none.
func (m Gauged) String() string { return m.mm }

// MarshalJSON prints the decimal string, or null.
func (m Gauged) MarshalJSON() ([]byte, error) {
	if !m.Given() {
		return []byte("null"), nil
	}
	return json.Marshal(m.mm)
}

// UnmarshalJSON reads what MarshalJSON printed.
func (m *Gauged) UnmarshalJSON(b []byte) error {
	var s *string
	if err := json.Unmarshal(b, &s); err != nil {
		return err
	}
	*m = Gauged{}
	if s != nil {
		*m = Typed(*s)
	}
	return nil
}

// Given says whether there is a figure.
func (m Gauged) Given() bool { return m.mm != "" }

// Float is the figure of JSON, 0 where it is absent.
func (m Gauged) Float() float64 {
	f, _ := strconv.ParseFloat(m.mm, 64)
	return f
}

// Exact is the figure before it was rounded, in mm, and which way it goes to its
// last printed place; NaN where it is absent.
func (m Gauged) Exact() (float64, Direction) {
	if !m.Given() {
		return math.NaN(), Nearest
	}
	return m.exact, m.dir
}

// Equal says whether two lengths are the same in JSON.
func (m Gauged) Equal(o Gauged) bool { return m.mm == o.mm }

// Length is the figure of JSON as an exact length.
func (m Gauged) Length() Length {
	d, err := decimal.NewFromString(m.mm)
	if err != nil {
		return Length{}
	}
	return OfMM(d)
}

// Gauged is the length with all its digits.
func (l Length) Gauged() Gauged {
	if !l.Given() {
		return Gauged{}
	}
	return Typed(l.MM().String())
}

// GaugedInch is the length in inch, to a hundred-millionth, for the few keys of
// JSON that end in _in.
func (l Length) GaugedInch() Gauged {
	d, err := decimal.NewFromString(l.StringInch(8)) // "" where it is not given
	if err != nil {
		return Gauged{}
	}
	return Typed(d.String())
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
		return Gauged{}
	}
	d := decimal.NewFromFloat(Sig9(mm)).Round(places)
	if d.IsZero() {
		d = decimal.Zero // never "-0.000"
	}
	return Gauged{mm: d.StringFixed(places), exact: Sig9(mm)}
}

// Size prints a size to a thousandth of a millimetre, Place a place or an
// uncertainty to a ten-thousandth.
func Size(mm float64) Gauged  { return Places(mm, 3) }
func Place(mm float64) Gauged { return Places(mm, 4) }

// LimitUp and LimitDown print a lower and an upper limit to a thousandth,
// rounded into the limits, so that what is inside the printed pair is inside
// the true one.
func LimitUp(mm float64) Gauged   { return cut(mm, math.Ceil(Sig9(mm)*1000-1e-6)/1000, Up) }
func LimitDown(mm float64) Gauged { return cut(mm, math.Floor(Sig9(mm)*1000+1e-6)/1000, Down) }

func cut(mm, to float64, dir Direction) Gauged {
	m := Size(to)
	m.exact, m.dir = Sig9(mm), dir
	return m
}

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
