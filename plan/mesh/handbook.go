package mesh

import (
	"fmt"
	"math"
	"strconv"

	"rebush/fits/table"
)

// Class is one row of the handbook's backlash table.
type Class struct {
	Name            string // A (loosest) to D
	FromDP, ToDP    float64
	LeastMM, MostMM float64 // normal plane
	Address, Source string
}

// Classes reads the table "backlash" of a library. Errors name the row.
func Classes(lib *table.Library) ([]Class, error) {
	t, err := lib.Get("backlash")
	if err != nil {
		return nil, err
	}
	var out []Class
	for _, r := range t.Rows {
		c := Class{Name: r.Get("class"), Address: r.Address(), Source: r.Source()}
		var v [4]float64
		for i, col := range []string{"from_dp", "to_dp", "least_in", "most_in"} {
			if v[i], err = strconv.ParseFloat(r.Get(col), 64); err != nil || !(v[i] > 0) || math.IsInf(v[i], 0) {
				return nil, fmt.Errorf("%s: %s is %q; it should be a number above 0", r.Address(), col, r.Get(col))
			}
		}
		c.FromDP, c.ToDP, c.LeastMM, c.MostMM = v[0], v[1], v[2]*25.4, v[3]*25.4
		if c.Name == "" || c.Source == "" || c.ToDP < c.FromDP || c.MostMM < c.LeastMM {
			return nil, fmt.Errorf("%s: a row needs a class, a source and figures in rising order", r.Address())
		}
		out = append(out, c)
	}
	return out, nil
}

// Default is the backlash taken where a job names none.
type Default struct {
	Wish
	Least, Most Class // the rows that set the ends
	// Outside says that the pitch lies outside the table and the nearest row
	// was taken.
	Outside bool
}

// HandbookWish returns the default backlash for a module: the least of class B
// and the most of class A at that pitch, in the normal plane. A pitch between
// two rows goes to the finer one.
func HandbookWish(lib *table.Library, module float64) (Default, error) {
	classes, err := Classes(lib)
	if err != nil {
		return Default{}, err
	}
	if err := checkCommon(module, 20, 0); err != nil {
		return Default{}, err
	}
	dp := 25.4 / module
	least, out1, err := pick(classes, "B", dp)
	if err != nil {
		return Default{}, err
	}
	most, out2, err := pick(classes, "A", dp)
	if err != nil {
		return Default{}, err
	}
	d := Default{Least: least, Most: most, Outside: out1 || out2}
	d.Wish = Wish{Lo: least.LeastMM, Hi: most.MostMM, Normal: true}
	if d.Hi < d.Lo {
		return d, fmt.Errorf("%s and %s: class A allows less at most than class B at least", most.Address, least.Address)
	}
	return d, nil
}

func pick(classes []Class, name string, dp float64) (row Class, outside bool, err error) {
	const slack = 1e-9
	found := false
	for _, c := range classes {
		if c.Name != name {
			continue
		}
		if !found || row.ToDP < dp-slack && c.ToDP > row.ToDP || c.ToDP >= dp-slack && c.ToDP < row.ToDP {
			row, found = c, true
		}
	}
	if !found {
		return row, false, fmt.Errorf("table backlash: no row of class %s", name)
	}
	coarsest := math.Inf(1)
	for _, c := range classes {
		if c.Name == name {
			coarsest = math.Min(coarsest, c.FromDP)
		}
	}
	return row, dp < coarsest-slack || dp > row.ToDP+slack, nil
}
