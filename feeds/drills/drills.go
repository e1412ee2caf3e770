// Package drills knows the sizes that drills and reamers are sold in: numbers,
// letters, fractions of an inch, preferred metric sizes; and works out which of
// them a shop owns.
//
// It knows sizes and names only. How large a hole a drill makes, and how fast
// it turns, is for others.
package drills

import (
	"fmt"
	"sort"
	"strings"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
	"rebush/fits/table"
)

// Series names a list of sizes.
type Series string

// The series, in the order of every list.
const (
	Number        Series = "number"
	Letter        Series = "letter"
	Fraction      Series = "fraction"
	Metric        Series = "metric"
	MachineReamer Series = "machine reamer"
	HandReamer    Series = "hand reamer"
	InchReamer    Series = "inch reamer" // chucking
)

// DrillSeries are the series of drills.
func DrillSeries() []Series { return []Series{Number, Letter, Fraction, Metric} }

// ReamerSeries are the series of preferred reamer sizes.
func ReamerSeries() []Series { return []Series{MachineReamer, HandReamer, InchReamer} }

// Drill is one size of a series, drill or reamer.
type Drill struct {
	Name   string // "#31", "F", "1/8 in", "3.20 mm"
	Series Series
	Size   dim.Length
	Source string // row address, "drills_number:40"
}

// Drills holds the series of one library. It does not change and is safe for
// use from many goroutines.
type Drills struct {
	series map[Series][]Drill // from the smallest
	sets   []set
}

var tables = map[Series]string{
	Number: "drills_number", Letter: "drills_letter", Fraction: "drills_fraction", Metric: "drills_metric",
	MachineReamer: "reamers_machine_metric", HandReamer: "reamers_hand_metric", InchReamer: "reamers_chucking_inch",
}

// New reads the tables drills_* and reamers_* of a library. Errors name the
// row.
func New(lib *table.Library) (*Drills, error) {
	d := &Drills{series: map[Series][]Drill{}}
	for _, series := range append(DrillSeries(), ReamerSeries()...) {
		t, err := lib.Get(tables[series])
		if err != nil {
			return nil, err
		}
		var list []Drill
		for _, row := range t.Rows {
			size, err := sizeOf(row.Get("size"), row.Get("unit"))
			if err != nil {
				return nil, fmt.Errorf("%s: %w", row.Address(), err)
			}
			if row.Get("name") == "" {
				return nil, fmt.Errorf("%s: a size without a name", row.Address())
			}
			list = append(list, Drill{Name: row.Get("name"), Series: series, Size: size, Source: row.Address()})
		}
		sort.SliceStable(list, func(i, k int) bool { return list[i].Size.Less(list[k].Size) })
		d.series[series] = list
	}
	var err error
	d.sets, err = readSets(lib)
	return d, err
}

func sizeOf(cell, unit string) (dim.Length, error) {
	v, err := decimal.NewFromString(cell)
	if err != nil || v.Sign() <= 0 {
		return dim.Length{}, fmt.Errorf("%q is not a size", cell)
	}
	switch unit {
	case "mm":
		return dim.OfMM(v), nil
	case "in":
		return dim.OfInch(v), nil
	}
	return dim.Length{}, fmt.Errorf("unit %q; write mm or in", unit)
}

// All lists the sizes of a series from the smallest; nil for an unknown one.
func (d *Drills) All(s Series) []Drill { return append([]Drill(nil), d.series[s]...) }

// ByName finds a size of a series by its name. Names compare without regard to
// case and spaces, and without trailing zeros: "3.2 mm" is "3.20 mm".
func (d *Drills) ByName(s Series, name string) (Drill, bool) {
	want := plain(name)
	for _, x := range d.series[s] {
		if plain(x.Name) == want {
			return x, true
		}
	}
	return Drill{}, false
}

// plain brings a name to one spelling.
func plain(name string) string {
	s := strings.ToLower(strings.ReplaceAll(name, " ", ""))
	if v, err := decimal.NewFromString(strings.TrimSuffix(s, "mm")); err == nil && strings.HasSuffix(s, "mm") {
		return v.String() + "mm"
	}
	return s
}

// Named lists every drill that is exactly of a size, in the order of
// DrillSeries; other series where they are named.
func (d *Drills) Named(size dim.Length, in ...Series) []Drill {
	if len(in) == 0 {
		in = DrillSeries()
	}
	var out []Drill
	for _, s := range in {
		for _, x := range d.series[s] {
			if size.Given() && x.Size.Equal(size) {
				out = append(out, x)
			}
		}
	}
	return out
}

// Near is what a series has around a size; nil where it has nothing there.
type Near struct {
	Series           Series
	Below, At, Above *Drill // next smaller, exactly this, next larger
}

// Near finds the next smaller, the equal and the next larger size of each drill
// series, or of the series that are named.
func (d *Drills) Near(size dim.Length, in ...Series) []Near {
	if len(in) == 0 {
		in = DrillSeries()
	}
	var out []Near
	if !size.Given() {
		return out
	}
	for _, s := range in {
		n := Near{Series: s}
		for _, x := range d.series[s] {
			switch x.Size.Cmp(size) {
			case -1:
				n.Below = &x
			case 0:
				n.At = &x
			default:
				if n.Above == nil {
					n.Above = &x
				}
			}
		}
		out = append(out, n)
	}
	return out
}
