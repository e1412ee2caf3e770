package table

import (
	"fmt"
	"strconv"
	"strings"
)

// InstrumentKind is one row of the table of instruments. A shop's own
// instrument is told to be of a kind by a piece of its name.
type InstrumentKind struct {
	Name  string
	Words []string // pieces of a name, in small letters
	Reads []string // centre, width, outside, probe, pin
	U     float64  // standard uncertainty where a shop names none, mm
	Least float64  // least and most that such an instrument can have, mm: outside
	Most  float64  // them a figure is in the wrong unit
	From  string   // the row
}

// InstrumentKinds are the kinds of instrument in the order of the table.
type InstrumentKinds []InstrumentKind

// ReadInstruments reads the kinds of instrument that are in force. A kind that
// says nothing of its least and most has a fifth and five times its own doubt:
// 25-fold, less than an inch has millimetres. Errors name the row.
func ReadInstruments(lib *Library) (InstrumentKinds, error) {
	t, err := lib.Get("instruments")
	if err != nil {
		return nil, err
	}
	var out InstrumentKinds
	for _, row := range t.Rows {
		k := InstrumentKind{Name: row.Get("kind"), Reads: strings.Fields(row.Get("reads")), From: row.Address()}
		if k.U, err = row.Above0("u_mm"); err != nil {
			return nil, err
		}
		k.Least, k.Most = k.U/5, k.U*5
		if row.Get("least_mm") != "" || row.Get("most_mm") != "" {
			if k.Least, err = row.Above0("least_mm"); err != nil {
				return nil, err
			}
			if k.Most, err = row.Above0("most_mm"); err != nil {
				return nil, err
			}
		}
		for _, w := range strings.Split(row.Get("words"), ";") {
			if w = strings.TrimSpace(w); w != "" {
				k.Words = append(k.Words, w)
			}
		}
		out = append(out, k)
	}
	return out, nil
}

// Above0 is the figure under a column, which has to be above 0. The error names
// the row.
func (r Row) Above0(column string) (float64, error) {
	f, err := strconv.ParseFloat(r.Get(column), 64)
	if err != nil || !(f > 0) {
		return 0, fmt.Errorf("%s: %s %q is not a figure above 0", r.Address(), column, r.Get(column))
	}
	return f, nil
}

// Of tells what kind of instrument a name is, nil where it is none known.
func (ks InstrumentKinds) Of(name string) *InstrumentKind {
	name = strings.ToLower(name)
	for i, k := range ks {
		for _, w := range k.Words {
			if strings.Contains(name, w) {
				return &ks[i]
			}
		}
	}
	return nil
}

// Default is the row for what is read with nobody knows what, nil where the
// table has none.
func (ks InstrumentKinds) Default(reads string) *InstrumentKind {
	for i, k := range ks {
		if k.Name == "default "+reads {
			return &ks[i]
		}
	}
	return nil
}

// Plausible is the least and most doubt, mm, that an instrument of a name can
// have. One of no known kind can be any that the rows of default allow.
func (ks InstrumentKinds) Plausible(name string) (least, most float64) {
	if k := ks.Of(name); k != nil {
		return k.Least, k.Most
	}
	for _, k := range ks {
		if len(k.Words) > 0 {
			continue
		}
		if least == 0 || k.Least < least {
			least = k.Least
		}
		most = max(most, k.Most)
	}
	return least, most
}
