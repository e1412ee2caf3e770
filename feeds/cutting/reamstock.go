package cutting

import (
	"fmt"
	"math"
	"strings"

	"rebush/fits/table"
)

// reamRow is one row of the table reaming. Diameters and figures in mm, or a
// bare factor. NaN stands for an open end.
type reamRow struct {
	quantity, kind, material string
	over, to, low, high      float64
	inches                   bool // a chart printed in inches: both ends inclusive
	rank                     rank
	ref                      Ref
	row                      table.Row
}

// StockOnDiameter is the quantity of the rows that ReamStock reads.
const StockOnDiameter = "stock_on_diameter"

func (c *Cutting) readReaming(lib *table.Library) error {
	t, err := lib.Get("reaming")
	if err != nil {
		return err
	}
	for _, r := range t.Rows {
		row := reamRow{quantity: r.Get("quantity"), kind: r.Get("kind"), material: r.Get("material"),
			inches: r.Get("printed_unit") == "in", ref: refOf(r), row: r, over: math.NaN(), to: math.NaN()}
		for _, end := range []struct {
			name string
			to   *float64
		}{{"d_over_mm", &row.over}, {"d_to_mm", &row.to}} {
			if r.Get(end.name) != "" {
				if *end.to, err = positive(r, end.name); err != nil {
					return err
				}
			}
		}
		if row.low, err = number(r, "low_mm_or_factor"); err != nil {
			return err
		}
		if row.high, err = number(r, "high_mm_or_factor"); err != nil {
			return err
		}
		if row.low < 0 || row.high < row.low {
			return fmt.Errorf("%s: %v to %v does not rise from 0", r.Address(), row.low, row.high)
		}
		var ok bool
		if row.rank, ok = rankOf(r.Get("basis")); !ok {
			return fmt.Errorf("%s: basis %q; write published, derived or from_memory", r.Address(), r.Get("basis"))
		}
		c.reaming = append(c.reaming, row)
	}
	return nil
}

// ReamRows returns every row of the reaming table for a quantity, kind and
// material, in table order; "" stands for any of them.
func (c *Cutting) ReamRows(quantity, kind, material string) []table.Row {
	var out []table.Row
	for _, r := range c.reaming {
		if same(quantity, r.quantity) && same(kind, r.kind) && same(material, r.material) {
			out = append(out, r.row)
		}
	}
	return out
}

// sized says whether the row is for a range of reamer sizes.
func (r reamRow) sized() bool { return !math.IsNaN(r.over) || !math.IsNaN(r.to) }

// holds says whether a reamer belongs in the row. Both ends are inclusive, and
// of two rows that meet the first holds the size between them. A chart in
// inches is read to its thousandth, one in whole millimetres to the next whole
// millimetre up, so that nothing falls between "5 to 20" and "21 to 50".
func (r reamRow) holds(d float64) bool {
	unit, round := 1.0, math.Ceil
	switch {
	case r.inches:
		unit, round = mmPerInch/1000, math.Round
	case !whole(r.over) || !whole(r.to):
		return !(d < r.over) && !(d > r.to)
	}
	at := round(d/unit - 1e-9)
	return !(at < math.Round(r.over/unit)) && !(at > math.Round(r.to/unit))
}

// whole is true of whole numbers and of an open end.
func whole(v float64) bool { return math.IsNaN(v) || v == math.Trunc(v) }

// ReamStock returns how much metal, on diameter in mm, a drilled hole should
// leave for a reamer of that size: machine rows for a mill or lathe, hand rows
// for hand work. A row for the size goes before one for any size, a published
// one before a derived and that before a remembered one. By hand, rows for
// steel serve for every material but the light ones, which have their own
// (half as much again). Errors: a size outside the table, an unknown material.
func (c *Cutting) ReamStock(reamerMM float64, hand bool, materialName string) (low, high float64, from Ref, err error) {
	if !(reamerMM > 0) || math.IsInf(reamerMM, 0) {
		return 0, 0, Ref{}, fmt.Errorf("a reamer of %v mm is not possible; give a size above 0", reamerMM)
	}
	m, err := c.material(materialName)
	if err != nil {
		return 0, 0, Ref{}, err
	}
	best, bestScore := -1, 0
	for i, r := range c.reaming {
		if r.quantity != StockOnDiameter || !r.holds(reamerMM) || strings.Contains(r.kind, "boring") {
			continue
		}
		// Worse rows score higher: kind of source, then size, material, kind.
		score := 100 * int(r.rank)
		switch {
		case hand && r.kind == "hand":
		case !hand && strings.HasPrefix(r.kind, "machine"):
		case r.kind == "any":
			score += 400
		default:
			continue
		}
		switch {
		case hand && r.material == "light metal" && m.ream == "light metal":
			score -= 150 // before steel, though derived
		case r.material == "light metal":
			continue
		case hand && r.material == "steel" || r.material == "any metal":
		case r.material == m.ream || r.material == "aluminium" && m.wets == "aluminium":
		default:
			continue
		}
		if !r.sized() {
			score += 200
		}
		if r.low == r.high {
			score += 20 // a single example, or a remembered point
		}
		if best < 0 || score < bestScore {
			best, bestScore = i, score
		}
	}
	if best < 0 {
		return 0, 0, Ref{}, fmt.Errorf("no row of the reaming table holds a reamer of %g mm", reamerMM)
	}
	r := c.reaming[best]
	return r.low, r.high, r.ref, nil
}

// PreDrill returns the smallest and largest drill in mm to go before a
// reamer: the reamer less its stock and less what the drill cuts oversize
// (rule drill_oversize_mm). 10 mm with 0.20 of stock wants 9.75.
func (c *Cutting) PreDrill(reamerMM float64, hand bool, materialName string) (low, high float64, err error) {
	return c.PreHole(reamerMM, c.rules.V("drill_oversize_mm"), hand, materialName)
}

// PreHole is PreDrill for a tool that cuts so much over its own size: 0 for a
// bored hole.
func (c *Cutting) PreHole(reamerMM, oversizeMM float64, hand bool, materialName string) (low, high float64, err error) {
	least, most, _, err := c.ReamStock(reamerMM, hand, materialName)
	if err != nil {
		return 0, 0, err
	}
	low, high = reamerMM-most-oversizeMM, reamerMM-least-oversizeMM
	if !(low > 0) {
		return 0, 0, fmt.Errorf("a reamer of %g mm is too small to leave %g mm for it", reamerMM, most)
	}
	return low, high, nil
}
