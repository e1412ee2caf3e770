package cutting

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"rebush/fits/table"
)

// speedRow is one source's figure: a speed in m/min, or a factor on another.
type speedRow struct {
	material, tool, operation string
	min, max                  float64 // m/min; NaN in a factor row
	factorMin, factorMax      float64 // NaN in a speed row
	rank                      rank
	note                      string
	key                       string // folded material
	row                       table.Row
}

// rank orders kinds of sources, best first.
type rank int

const (
	published rank = iota
	derived
	remembered
)

func (r rank) String() string { return [...]string{"published", "derived", "from memory"}[r] }

func rankOf(basis string) (rank, bool) {
	switch {
	case strings.HasPrefix(basis, "published"):
		return published, true
	case strings.HasPrefix(basis, "derived"):
		return derived, true
	case strings.HasPrefix(basis, "from_memory"):
		return remembered, true
	}
	return 0, false
}

func refOf(r table.Row) Ref { return Ref{Text: r.Source(), Address: r.Address()} }

// number reads a cell.
func number(r table.Row, column string) (float64, error) {
	v, err := strconv.ParseFloat(r.Get(column), 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%s: %s: %q is not a number", r.Address(), column, r.Get(column))
	}
	if math.Abs(v) > 1e9 {
		return 0, fmt.Errorf("%s: %s: %v is beyond all reason", r.Address(), column, v)
	}
	return v, nil
}

// positive reads a cell that must be above 0.
func positive(r table.Row, column string) (float64, error) {
	v, err := number(r, column)
	if err == nil && v < 1e-9 {
		err = fmt.Errorf("%s: %s: %v must be above 0", r.Address(), column, v)
	}
	return v, err
}

// span reads two positive cells, the first not above the second. Both empty
// is NaN, NaN.
func span(r table.Row, low, high string) (a, b float64, err error) {
	if r.Get(low) == "" && r.Get(high) == "" {
		return math.NaN(), math.NaN(), nil
	}
	if a, err = positive(r, low); err != nil {
		return 0, 0, err
	}
	if b, err = positive(r, high); err != nil {
		return 0, 0, err
	}
	if b < a {
		return 0, 0, fmt.Errorf("%s: %s %v is above %s %v", r.Address(), low, a, high, b)
	}
	return a, b, nil
}

func (c *Cutting) readSpeeds(lib *table.Library) error {
	t, err := lib.Get("speeds")
	if err != nil {
		return err
	}
	for _, r := range t.Rows {
		s := speedRow{material: r.Get("material"), tool: r.Get("tool"), operation: r.Get("operation"), note: r.Get("note"), row: r}
		s.key = fold(s.material)
		if s.min, s.max, err = span(r, "v_min_m_min", "v_max_m_min"); err != nil {
			return err
		}
		if s.factorMin, s.factorMax, err = span(r, "factor_min", "factor_max"); err != nil {
			return err
		}
		if math.IsNaN(s.min) == math.IsNaN(s.factorMin) {
			return fmt.Errorf("%s: a row needs either a speed or a factor", r.Address())
		}
		var ok bool
		if s.rank, ok = rankOf(r.Get("basis")); !ok {
			return fmt.Errorf("%s: basis %q; write published_m, published_ft, published_rule, derived or from_memory", r.Address(), r.Get("basis"))
		}
		c.speeds = append(c.speeds, s)
	}
	return nil
}

// Rows returns every row of the speed table for a material, tool and
// operation, in table order; "" stands for any of them. Names are taken as
// the table writes them first, then as Speed understands them.
func (c *Cutting) Rows(material, tool, operation string) []table.Row {
	if material != "" && !c.has(func(s speedRow) bool { return fold(s.material) == fold(material) }) {
		if m, err := c.material(material); err == nil {
			material = m.name
		}
	}
	if tool != "" && !c.has(func(s speedRow) bool { return fold(s.tool) == fold(tool) }) {
		if t, err := toolOf(tool); err == nil {
			tool = t
		}
	}
	if operation != "" && !c.has(func(s speedRow) bool { return fold(s.operation) == fold(operation) }) {
		if o, err := operationOf(operation); err == nil {
			operation = o
		}
	}
	var out []table.Row
	for _, s := range c.speeds {
		if same(material, s.material) && same(tool, s.tool) && same(operation, s.operation) {
			out = append(out, s.row)
		}
	}
	return out
}

func (c *Cutting) has(is func(speedRow) bool) bool {
	for _, s := range c.speeds {
		if is(s) {
			return true
		}
	}
	return false
}

// same compares a wanted name, "" for any, with a table's.
func same(want, have string) bool { return want == "" || fold(want) == fold(have) }
