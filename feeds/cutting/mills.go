package cutting

import (
	"fmt"

	"rebush/fits/table"
)

// millRow is one row of the table end_mills_short, mm.
type millRow struct{ over, to, flute, shank float64 }

func (c *Cutting) readMills(lib *table.Library) error {
	t, err := lib.Get("end_mills_short")
	if err != nil {
		return err
	}
	for _, r := range t.Rows {
		var m millRow
		if m.over, err = number(r, "d_over_mm"); err != nil {
			return err
		}
		for _, x := range []struct {
			name string
			to   *float64
		}{{"d_to_mm", &m.to}, {"flute_mm", &m.flute}, {"shank_mm", &m.shank}} {
			if *x.to, err = positive(r, x.name); err != nil {
				return err
			}
		}
		if n := len(c.mills); m.over < 0 || m.to <= m.over || n > 0 && m.over < c.mills[n-1].to {
			return fmt.Errorf("%s: %v to %v mm does not rise from the row before", r.Address(), m.over, m.to)
		}
		c.mills = append(c.mills, m)
	}
	return nil
}

// ShortMill is how long the flutes of an end mill of the usual short kind are
// and how thick its shank is, mm; false beyond the table. It stands in where
// nobody says how far one reaches.
//
// Source: table end_mills_short.
func (c *Cutting) ShortMill(diaMM float64) (fluteMM, shankMM float64, ok bool) {
	for _, m := range c.mills {
		if diaMM > m.over && diaMM <= m.to+1e-9 {
			return m.flute, max(m.shank, diaMM), true
		}
	}
	return 0, 0, false
}
