package checked

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"rebush/fits/table"
)

// cellRows lay a second print beside cells of the tables. A row names the table,
// the cells by which its row is found, the column, and by how much that is to be
// multiplied to be the figure that was printed. Where a table has rows of several
// sources, one of them has to agree: the nearest is taken.
func cellRows(rows []Row, lib *table.Library) []Figure {
	var out []Figure
	for _, r := range rows {
		f := r.figure("tables.csv")
		f.Inputs = r["table"] + ": " + r["where"]
		v, err := cell(r, lib)
		out = append(out, f.is(v, err))
	}
	return out
}

func cell(r Row, lib *table.Library) (float64, error) {
	tab, err := lib.Get(r["table"])
	if err != nil {
		return 0, err
	}
	want, err := strconv.ParseFloat(r["expected"], 64)
	if err != nil {
		return 0, err
	}
	times, err := strconv.ParseFloat(r["times"], 64)
	if err != nil {
		return 0, err
	}
	nearest := math.NaN()
	for _, t := range tab.Rows {
		if !among(t, r["where"]) {
			continue
		}
		v, err := strconv.ParseFloat(t.Get(r["column"]), 64)
		if err != nil {
			return 0, fmt.Errorf("%s: %s is no figure: %w", t.Address(), r["column"], err)
		}
		// 0.00051 times 1000 has dust of the 17th digit.
		v, _ = strconv.ParseFloat(strconv.FormatFloat(v*times, 'g', 12, 64), 64)
		if !(math.Abs(v-want) >= math.Abs(nearest-want)) {
			nearest = v
		}
	}
	if math.IsNaN(nearest) {
		return 0, fmt.Errorf("%s has no row of %s", r["table"], r["where"])
	}
	return nearest, nil
}

// among says that a row of a table has all of the cells "class=ZZ;unit=mm".
func among(t table.Row, where string) bool {
	for _, part := range strings.Split(where, ";") {
		if column, v, _ := strings.Cut(part, "="); t.Get(column) != v {
			return false
		}
	}
	return true
}
