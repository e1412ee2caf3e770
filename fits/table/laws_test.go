package table_test

import (
	"math"
	"math/big"
	"strconv"
	"strings"
	"testing"

	"rebush/fits/table"
)

// The laws that figures of a table have to keep among themselves, or with those
// of another table that somebody else printed. laws_fits_test.go, laws_tools_test.go
// and laws_cut_test.go walk the tables.

func rowsOf(t *testing.T, name string) []table.Row {
	t.Helper()
	tab, err := table.BuiltIn().Get(name)
	if err != nil {
		t.Fatal(err)
	}
	return tab.Rows
}

// row is the one row that has these cells, "class", "zinc".
func row(t *testing.T, name string, cells ...string) table.Row {
	t.Helper()
	var found []table.Row
next:
	for _, r := range rowsOf(t, name) {
		for i := 0; i < len(cells); i += 2 {
			if r.Get(cells[i]) != cells[i+1] {
				continue next
			}
		}
		found = append(found, r)
	}
	if len(found) != 1 {
		t.Fatalf("%s: %d rows of %v, want one", name, len(found), cells)
	}
	return found[0]
}

// fig is the figure of a cell, a fraction or a decimal.
func fig(t *testing.T, r table.Row, column string) float64 {
	t.Helper()
	x, ok := new(big.Rat).SetString(r.Get(column))
	if !ok {
		t.Errorf("%s: %s is %q, no figure", r.Address(), column, r.Get(column))
		return math.NaN()
	}
	f, _ := x.Float64()
	return f
}

// alike says that two figures are within a tolerance.
func alike(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %v, want %v within %.3g", what, got, want, tol)
	}
}

// between says that a figure lies in a range.
func between(t *testing.T, r table.Row, column string, low, high float64) {
	t.Helper()
	if v := fig(t, r, column); !(low <= v && v <= high) {
		t.Errorf("%s: %s is %v, outside %v to %v", r.Address(), column, v, low, high)
	}
}

// groups are the rows by the cells of some columns, each in its order.
func groups(rows []table.Row, columns ...string) map[string][]table.Row {
	out := map[string][]table.Row{}
	for _, r := range rows {
		var key []string
		for _, c := range columns {
			key = append(key, r.Get(c))
		}
		k := strings.Join(key, ", ")
		out[k] = append(out[k], r)
	}
	return out
}

// abut says that ranges begin at a figure and go on one from the other, each
// step wide.
func abut(t *testing.T, rows []table.Row, over, upto string, from, step float64) {
	t.Helper()
	for _, r := range rows {
		alike(t, r.Address()+": "+over, fig(t, r, over), from, 1e-9)
		if fig(t, r, upto) <= fig(t, r, over) {
			t.Errorf("%s: %s is not over %s", r.Address(), upto, over)
		}
		from = fig(t, r, upto) + step
	}
}

// rising says that a column never falls from row to row; strictly that it rises.
func rising(t *testing.T, rows []table.Row, column string, strictly bool) {
	t.Helper()
	for i := 1; i < len(rows); i++ {
		a, b := fig(t, rows[i-1], column), fig(t, rows[i], column)
		if !(b > a || b == a && !strictly) {
			t.Errorf("%s: %s is %v after %v", rows[i].Address(), column, b, a)
		}
	}
}

// ordered says that the figures of a row stand in order.
func ordered(t *testing.T, r table.Row, columns ...string) {
	t.Helper()
	for i := 1; i < len(columns); i++ {
		if fig(t, r, columns[i-1]) > fig(t, r, columns[i]) {
			t.Errorf("%s: %s is above %s", r.Address(), columns[i-1], columns[i])
		}
	}
}

// twice says that two columns have one figure in two units, to half of the last
// digit that either was written with; both may be empty.
func twice(t *testing.T, r table.Row, a, b string, aInB float64) {
	t.Helper()
	if r.Get(a) == "" && r.Get(b) == "" {
		return
	}
	half := func(s string) float64 {
		_, places, _ := strings.Cut(s, ".")
		return 0.5001 * math.Pow(10, -float64(len(places)))
	}
	alike(t, r.Address()+": "+a+" in the unit of "+b, fig(t, r, a)*aInB, fig(t, r, b), half(r.Get(a))*aInB+half(r.Get(b)))
}

func atoi(s string) int { n, _ := strconv.Atoi(s); return n }
