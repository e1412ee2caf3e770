// Package dim is exact lengths: decimal, in mm and inch, fractions of an inch,
// thousandths, and every named drill size.
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
