// Package limits turns a size and a class into limits: ISO 286 holes and shafts
// from 0.5 to 50 mm, inch fits of ANSI B4.1 to 1.19 in, and the limits of the
// reamer that cuts a hole class.
//
// Everything is read from tables, exact, in um (or thousandths of an inch where
// the name says so). A class that does not exist at a size is an error that
// says what does exist; nothing is interpolated or extended.
package limits

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
	"rebush/fits/table"
)

// Limits holds the tables of one library, read and checked. It does not change
// and is safe for use from many goroutines.
type Limits struct {
	grades  []entry // key IT7
	shafts  []entry // key p
	inch    []inchRow
	reamers []inchReamerRow
}

// entry is one row of a table by range of size: over < d <= upTo.
type entry struct {
	over, upTo decimal.Decimal // mm
	key        string
	um         decimal.Decimal
	address    string
}

func (e entry) holds(mm decimal.Decimal) bool {
	return mm.GreaterThan(e.over) && mm.LessThanOrEqual(e.upTo)
}

// New reads the tables limits_it, limits_shaft, fits_inch and
// reamers_inch_limits of a library. Errors name the row.
func New(lib *table.Library) (*Limits, error) {
	l := &Limits{}
	var err error
	if l.grades, err = readEntries(lib, "limits_it", "grade"); err != nil {
		return nil, err
	}
	if l.shafts, err = readEntries(lib, "limits_shaft", "letter"); err != nil {
		return nil, err
	}
	if l.inch, err = readInch(lib); err != nil {
		return nil, err
	}
	if l.reamers, err = readInchReamers(lib); err != nil {
		return nil, err
	}
	return l, nil
}

func readEntries(lib *table.Library, name, key string) ([]entry, error) {
	t, err := lib.Get(name)
	if err != nil {
		return nil, err
	}
	var out []entry
	for _, row := range t.Rows {
		n, err := numbers(row, "over_mm", "upto_mm", "um")
		if err != nil {
			return nil, err
		}
		e := entry{over: n[0], upTo: n[1], um: n[2], key: row.Get(key), address: row.Address()}
		if !e.over.LessThan(e.upTo) || e.key == "" {
			return nil, fmt.Errorf("%s: a range over %s up to %s mm for %q", row.Address(), e.over, e.upTo, e.key)
		}
		out = append(out, e)
	}
	return out, nil
}

// numbers reads cells that must be decimals.
func numbers(row table.Row, columns ...string) ([]decimal.Decimal, error) {
	out := make([]decimal.Decimal, len(columns))
	for i, c := range columns {
		d, err := decimal.NewFromString(row.Get(c))
		if err != nil {
			return nil, fmt.Errorf("%s: %s: %q is not a number", row.Address(), c, row.Get(c))
		}
		out[i] = d
	}
	return out, nil
}

// find returns the row of a key at a size.
func find(list []entry, key string, mm decimal.Decimal) (entry, bool) {
	for _, e := range list {
		if e.key == key && e.holds(mm) {
			return e, true
		}
	}
	return entry{}, false
}

// keysAt lists the keys that exist at a size, in table order.
func keysAt(list []entry, mm decimal.Decimal) []string {
	var out []string
	for _, e := range list {
		if e.holds(mm) {
			out = append(out, e.key)
		}
	}
	return out
}

// span says over which sizes a key exists, "" where it never does.
func span(list []entry, key string) string {
	var lo, hi decimal.Decimal
	found := false
	for _, e := range list {
		if e.key != key {
			continue
		}
		if !found || e.over.LessThan(lo) {
			lo = e.over
		}
		if !found || e.upTo.GreaterThan(hi) {
			hi = e.upTo
		}
		found = true
	}
	switch {
	case !found:
		return ""
	case lo.IsZero():
		return fmt.Sprintf("up to %s mm", hi)
	}
	return fmt.Sprintf("over %s mm up to %s mm", lo, hi)
}

var leastMM, greatestMM = decimal.New(5, -1), decimal.New(50, 0)

// sizeOf checks that a nominal size lies within the ISO tables.
func sizeOf(nominal dim.Length) (decimal.Decimal, error) {
	mm := nominal.MM()
	switch {
	case !nominal.Given():
		return mm, fmt.Errorf("limits need a nominal size, as in 8 H7")
	case mm.LessThan(leastMM) || mm.GreaterThan(greatestMM):
		return mm, fmt.Errorf("%s is outside the limit tables here, which run from 0.5 to 50 mm", nominal)
	}
	return mm, nil
}

func listed(words []string) string { return strings.Join(words, ", ") }
