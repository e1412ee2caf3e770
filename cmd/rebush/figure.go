package main

import (
	"encoding/json"
	"math"
	"strconv"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
)

// figure is a number of the JSON: nine significant digits, null where it is
// absent or no finite number.
type figure float64

// absent is the figure that is null.
var absent = figure(math.NaN())

// MarshalJSON prints the number or null.
func (f figure) MarshalJSON() ([]byte, error) {
	if !f.given() {
		return []byte("null"), nil
	}
	return json.Marshal(dim.Sig9(float64(f)))
}

func (f figure) given() bool { return !math.IsNaN(float64(f)) && !math.IsInf(float64(f), 0) }

// exact turns a decimal into a figure.
func exact(d decimal.Decimal) figure { return figure(d.InexactFloat64()) }

// size is a length of the JSON: a decimal string, null where it is absent.
type size string

// MarshalJSON prints the string or null.
func (s size) MarshalJSON() ([]byte, error) {
	if s == "" {
		return []byte("null"), nil
	}
	return json.Marshal(string(s))
}

// sizeMM and sizeIn are a length in mm or inch, all its digits.
func sizeMM(l dim.Length) size {
	if !l.Given() {
		return ""
	}
	return size(l.MM().String())
}

func sizeIn(l dim.Length) size {
	if !l.Given() {
		return ""
	}
	return size(trimZeros(l.StringInch(8)))
}

// sizeOf is physics in mm as a length of nine significant digits.
func sizeOf(mm float64) size { return sizeMM(dim.OfFloat(mm)) }

func trimZeros(s string) string {
	d, err := decimal.NewFromString(s)
	if err != nil {
		return s
	}
	return d.String()
}

// span is a pair of figures, limits a pair of lengths.
type span struct {
	Min figure `json:"min"`
	Max figure `json:"max"`
}

type sizes struct {
	Min size `json:"min"`
	Max size `json:"max"`
}

// ftoa writes a figure plainly, "" where it is not finite.
func ftoa(f float64) string {
	if !figure(f).given() {
		return ""
	}
	return strconv.FormatFloat(f, 'f', -1, 64)
}
