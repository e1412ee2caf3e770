package plan

import (
	"encoding/json"
	"math"
	"strconv"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
)

// MM is a gauged length in mm as a decimal string, "" where it is absent
// (null in JSON).
type MM string

// MarshalJSON prints the decimal string, or null.
func (m MM) MarshalJSON() ([]byte, error) {
	if m == "" {
		return []byte("null"), nil
	}
	return json.Marshal(string(m))
}

// UnmarshalJSON reads what MarshalJSON printed.
func (m *MM) UnmarshalJSON(b []byte) error {
	if string(b) == "null" {
		*m = ""
		return nil
	}
	return json.Unmarshal(b, (*string)(m))
}

// Given says whether there is a figure.
func (m MM) Given() bool { return m != "" }

// Float is the figure, 0 where it is absent.
func (m MM) Float() float64 {
	f, _ := strconv.ParseFloat(string(m), 64)
	return f
}

// Length is the figure as an exact length.
func (m MM) Length() dim.Length {
	d, err := decimal.NewFromString(string(m))
	if err != nil {
		return dim.Length{}
	}
	return dim.OfMM(d)
}

// sig9 rounds physics to 9 significant digits, so that every platform prints
// the same.
func sig9(f float64) float64 {
	if f == 0 || math.IsNaN(f) || math.IsInf(f, 0) {
		return f
	}
	s := strconv.FormatFloat(f, 'e', 8, 64)
	r, _ := strconv.ParseFloat(s, 64)
	return r
}

// mmAt prints a length at a number of decimal places, to the nearest. What is
// not a finite figure is absent.
func mmAt(f float64, places int32) MM {
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return ""
	}
	s := decimal.NewFromFloat(sig9(f)).StringFixed(places)
	if s[0] == '-' && decimal.RequireFromString(s).IsZero() {
		s = s[1:]
	}
	return MM(s)
}

// mm3 prints a size to a thousandth of a millimetre, mm4 a place or an
// uncertainty to a ten-thousandth.
func mm3(f float64) MM { return mmAt(f, 3) }
func mm4(f float64) MM { return mmAt(f, 4) }

// mmUp and mmDown print a lower and an upper limit to a thousandth, rounded
// into the limits so that what is inside the printed pair is inside the true
// one.
func mmUp(f float64) MM   { return mm3(math.Ceil(sig9(f)*1000-1e-6) / 1000) }
func mmDown(f float64) MM { return mm3(math.Floor(sig9(f)*1000+1e-6) / 1000) }

func xy(p [2]float64) *XY { return &XY{mm4(p[0]), mm4(p[1])} }

// num turns a figure into JSON's number, or null where it is not finite.
func num(f float64) *float64 {
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return nil
	}
	f = sig9(f)
	return &f
}

func minMax(lo, hi float64) *MinMax { return &MinMax{Min: num(lo), Max: num(hi)} }
