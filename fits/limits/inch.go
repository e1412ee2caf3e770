package limits

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
	"rebush/fits/table"
)

// InchFit is a fit of ANSI B4.1 at a size: limits of hole and shaft from
// nominal and the clearance on diameter, all in thousandths of an inch;
// interference is a negative clearance.
type InchFit struct {
	Nominal                    dim.Length
	Fit                        string // "FN2"
	HoleLower, HoleUpper       decimal.Decimal
	ShaftLower, ShaftUpper     decimal.Decimal
	MinClearance, MaxClearance decimal.Decimal
	Kind                       Kind
	Source                     string // row address
}

// MinInterference is the least interference in thousandths of an inch.
func (f InchFit) MinInterference() decimal.Decimal { return f.MaxClearance.Neg() }

// MaxInterference is the greatest interference in thousandths of an inch.
func (f InchFit) MaxInterference() decimal.Decimal { return f.MinClearance.Neg() }

// Hole gives the limits of the hole as sizes.
func (f InchFit) Hole() (low, high dim.Length) {
	return thouOff(f.Nominal, f.HoleLower), thouOff(f.Nominal, f.HoleUpper)
}

// Shaft gives the limits of the shaft as sizes.
func (f InchFit) Shaft() (low, high dim.Length) {
	return thouOff(f.Nominal, f.ShaftLower), thouOff(f.Nominal, f.ShaftUpper)
}

func thouOff(nominal dim.Length, thou decimal.Decimal) dim.Length {
	return nominal.Add(dim.OfInch(thou.Shift(-3)))
}

type inchRow struct {
	over, upTo             dim.Length
	fit                    string
	holeUpper              decimal.Decimal
	shaftLower, shaftUpper decimal.Decimal
	address                string
}

func readInch(lib *table.Library) ([]inchRow, error) {
	t, err := lib.Get("fits_inch")
	if err != nil {
		return nil, err
	}
	var out []inchRow
	for _, row := range t.Rows {
		n, err := numbers(row, "over_in", "upto_in", "hole_upper_thou", "shaft_lower_thou", "shaft_upper_thou")
		if err != nil {
			return nil, err
		}
		out = append(out, inchRow{over: dim.OfInch(n[0]), upTo: dim.OfInch(n[1]), fit: row.Get("fit"),
			holeUpper: n[2], shaftLower: n[3], shaftUpper: n[4], address: row.Address()})
	}
	return out, nil
}

func within(d, over, upTo dim.Length) bool { return over.Less(d) && !upTo.Less(d) }

// Inch gives a fit of ANSI B4.1-1967, RC1 to RC5, LN1 to LN3 or FN1 to FN4, at
// a nominal size up to 1.19 in. Force fits have size ranges of their own.
//
// Source: table fits_inch. Clearance is worked out from the limits.
func (l *Limits) Inch(nominal dim.Length, fit string) (InchFit, error) {
	name := strings.ToUpper(strings.ReplaceAll(strings.TrimSpace(fit), " ", ""))
	if !nominal.Given() || nominal.Sign() <= 0 {
		return InchFit{}, fmt.Errorf("an inch fit needs a nominal size above 0, as in 0.3125 FN2")
	}
	var known, here []string
	var first, last dim.Length
	for _, r := range l.inch {
		if len(known) == 0 || known[len(known)-1] != r.fit {
			known = append(known, r.fit)
		}
		if within(nominal, r.over, r.upTo) {
			here = append(here, r.fit)
			if r.fit == name {
				return r.at(nominal), nil
			}
		}
		if r.fit == name {
			if !first.Given() || r.over.Less(first) {
				first = r.over
			}
			last = dim.Max(last, r.upTo)
		}
	}
	size := nominal.StringInch(4) + " in"
	switch {
	case !first.Given():
		return InchFit{}, fmt.Errorf("%q is not an inch fit here; there are %s", fit, listed(known))
	case len(here) == 0:
		return InchFit{}, fmt.Errorf("%s: the inch fits here run up to %s in", size, last.StringInch(2))
	}
	return InchFit{}, fmt.Errorf("%s does not exist at %s, only over %s in up to %s in; at that size there are %s", name, size, first.StringInch(2), last.StringInch(2), listed(here))
}

func (r inchRow) at(nominal dim.Length) InchFit {
	f := InchFit{Nominal: nominal, Fit: r.fit, HoleUpper: r.holeUpper, ShaftLower: r.shaftLower, ShaftUpper: r.shaftUpper, Source: r.address}
	f.MinClearance = f.HoleLower.Sub(f.ShaftUpper)
	f.MaxClearance = f.HoleUpper.Sub(f.ShaftLower)
	f.Kind = kind(f.MinClearance, f.MaxClearance)
	return f
}
