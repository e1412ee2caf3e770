package dim

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"
)

// Units are the units that lengths are printed in.
type Units int

// The three ways to print.
const (
	InMM Units = iota
	InInch
	InBoth
)

// ParseUnits reads mm, in or both.
func ParseUnits(s string) (Units, error) {
	switch strings.ToLower(strings.TrimSpace(s)) {
	case "mm":
		return InMM, nil
	case "in", "inch":
		return InInch, nil
	case "both":
		return InBoth, nil
	}
	return InMM, fmt.Errorf("%q are not units; write mm, in or both", s)
}

// String is the exact length in mm without trailing zeros, "3.2 mm"; "" where
// it was not given. Parse reads it back to the same length.
func (l Length) String() string {
	if !l.given {
		return ""
	}
	return l.mm.String() + " mm"
}

// StringMM is the number of mm to a fixed number of places, "3.200"; a half
// goes away from zero. "" where the length was not given.
func (l Length) StringMM(places int32) string { return l.fixed(l.mm, places) }

// StringInch is the number of inches to a fixed number of places, "0.1260"; a
// half goes away from zero. "" where the length was not given.
func (l Length) StringInch(places int32) string {
	return l.fixed(l.mm.DivRound(mmPerInch, max(places, 0)), places)
}

// Thou is the number of thousandths of an inch to a fixed number of places.
func (l Length) Thou(places int32) string {
	return l.fixed(l.mm.Shift(3).DivRound(mmPerInch, max(places, 0)), places)
}

// Um is the exact length in micrometres.
func (l Length) Um() decimal.Decimal { return l.mm.Shift(3) }

// Format prints for paper and screen: mm to three places, inch to four, with
// the unit: "3.200 mm", "0.1260 in" or "3.200 mm (0.1260 in)".
func (l Length) Format(u Units) string {
	if !l.given {
		return ""
	}
	mm, in := l.StringMM(3)+" mm", l.StringInch(4)+" in"
	switch u {
	case InInch:
		return in
	case InBoth:
		return mm + " (" + in + ")"
	}
	return mm
}

func (l Length) fixed(d decimal.Decimal, places int32) string {
	if !l.given {
		return ""
	}
	return d.StringFixed(max(places, 0))
}
