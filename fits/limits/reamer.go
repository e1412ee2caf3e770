package limits

import (
	"fmt"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
	"rebush/fits/table"
)

// Reamer gives the limits of the reamer that cuts a hole class:
//
//	high = greatest hole - 15 % of T, low = high - 35 % of T
//
// T is the tolerance of the hole; both shares are rounded up to a whole um, in
// exact arithmetic. What hole comes out depends also on lead, holder, lubricant
// and metal.
//
// A class so fine that the rounding leaves no reamer inside the hole is an
// error.
//
// Source: ISO 522 / DIN 1420, worked example 10 D8 of the Dormer reaming
// tolerance page (dormertools.com).
func (l *Limits) Reamer(nominal dim.Length, class string) (low, high dim.Length, err error) {
	h, err := l.Class(nominal, class)
	if err != nil {
		return low, high, err
	}
	if !h.Hole {
		return low, high, fmt.Errorf("%s is a shaft class; a reamer cuts a hole, as in H7", h.Class)
	}
	t := h.WidthUm()
	top := h.UpperUm.Sub(share(t, 15))
	bottom := top.Sub(share(t, 35))
	if bottom.LessThan(h.LowerUm) {
		return low, high, fmt.Errorf("%s at %s leaves %s um, too fine for the reamer rule; lap or hone it", h.Class, nominal, t)
	}
	return nominal.Add(dim.OfUm(bottom)), nominal.Add(dim.OfUm(top)), nil
}

// share is a percentage of T rounded up to a whole um.
func share(t decimal.Decimal, percent int64) decimal.Decimal {
	return t.Mul(decimal.New(percent, -2)).Ceil()
}

// InchReamer is what one source says of the limits of a stock inch reamer.
type InchReamer struct {
	Low, High dim.Length
	Published bool   // read in print; false: remembered
	Source    string // row address
}

type inchReamerRow struct {
	over, upTo   dim.Length
	lower, upper decimal.Decimal // thousandths of an inch
	published    bool
	address      string
}

func readInchReamers(lib *table.Library) ([]inchReamerRow, error) {
	t, err := lib.Get("reamers_inch_limits")
	if err != nil {
		return nil, err
	}
	var out []inchReamerRow
	for _, row := range t.Rows {
		n, err := numbers(row, "over_in", "upto_in", "lower_thou", "upper_thou")
		if err != nil {
			return nil, err
		}
		out = append(out, inchReamerRow{over: dim.OfInch(n[0]), upTo: dim.OfInch(n[1]), lower: n[2], upper: n[3],
			published: row.Get("basis") == "published", address: row.Address()})
	}
	return out, nil
}

// ReamerInch gives the limits of a stock inch chucking reamer up to 1 in, one
// answer per source, published before remembered. The sources disagree: the
// figure on the maker's packet goes before any of them.
func (l *Limits) ReamerInch(nominal dim.Length) ([]InchReamer, error) {
	var out []InchReamer
	for _, published := range []bool{true, false} {
		for _, r := range l.reamers {
			if r.published == published && within(nominal, r.over, r.upTo) {
				out = append(out, InchReamer{Low: thouOff(nominal, r.lower), High: thouOff(nominal, r.upper), Published: published, Source: r.address})
			}
		}
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("stock inch reamers here run up to 1 in; %q is outside", nominal)
	}
	return out, nil
}
