// Package dim is exact lengths: decimal, in mm and inch, fractions of an inch,
// thousandths, and every named drill size.
//
// A Length is a decimal number of mm; 1 in is exactly 25.4 mm. Nothing here is
// rounded unless its name or its comment says so, and then it says how.
package dim

import "github.com/shopspring/decimal"

// Unit rules a bare number.
type Unit int

// The two units that rule bare numbers.
const (
	MM Unit = iota
	Inch
)

// Length is an exact length. The zero Length is "not given".
type Length struct {
	mm    decimal.Decimal
	given bool
	typed string
}

// Given says whether the length was given at all.
func (l Length) Given() bool { return l.given }

// MM is the exact length in mm; 0 where it was not given.
func (l Length) MM() decimal.Decimal { return l.mm }

// Float is the length in mm for physics; 0 where it was not given.
func (l Length) Float() float64 { return l.mm.InexactFloat64() }

// Typed is how the length was written, "" where it was computed.
func (l Length) Typed() string { return l.typed }

// OfMM makes a length of exact mm.
func OfMM(d decimal.Decimal) Length { return Length{mm: d, given: true} }

// OfInch makes a length of exact inches, 25.4 mm each.
func OfInch(d decimal.Decimal) Length { return OfMM(d.Mul(mmPerInch)) }

// OfUm makes a length of exact micrometres.
func OfUm(d decimal.Decimal) Length { return OfMM(d.Shift(-3)) }

// Must reads a length that the program itself wrote, in tests and examples. It
// panics where Parse would return an error.
func Must(s string) Length {
	l, err := Parse(s, MM)
	if err != nil {
		panic("dim: " + err.Error())
	}
	return l
}

var (
	mmPerInch = decimal.New(254, -1)
	half      = decimal.New(5, -1)
)
