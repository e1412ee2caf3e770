package checked

import (
	"fmt"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
	"rebush/fits/limits"
	"rebush/fits/table"
)

// reamRows works out the printed limits of reamers for H7 holes and of drills,
// each at the top of its range of sizes and just over its foot. The program
// has them by rule and reads none of them.
func reamRows(rows []Row, lib *table.Library) []Figure {
	l, err := limits.New(lib)
	var out []Figure
	for _, r := range rows {
		if err != nil {
			out = append(out, r.figure("reaming.csv").fails(err))
			continue
		}
		for _, at := range []string{overFoot(r["d_over_mm"]), r["d_to_mm"]} {
			out = append(out, reamRow(l, r, at)...)
		}
	}
	return out
}

// overFoot is a hundredth over the foot of a range; of a row of all sizes up to
// the first step it is a small one.
func overFoot(foot string) string {
	d, err := decimal.NewFromString(foot)
	if err != nil {
		d = decimal.New(9, -1)
	}
	return d.Add(decimal.New(1, -2)).String()
}

func reamRow(l *limits.Limits, r Row, at string) []Figure {
	f := r.figure("reaming.csv")
	f.Unit, f.Inputs = "mm", at+" mm"
	size, err := decimal.NewFromString(at)
	if err != nil {
		return []Figure{f.fails(err)}
	}
	d := dim.OfMM(size)
	of := func(what, column string, v decimal.Decimal, err error) Figure {
		g := f
		g.What, g.Expected = what, r[column]
		return g.is(v.InexactFloat64(), err)
	}
	switch r["quantity"] {
	case "reamer_diameter_limits_for_H7":
		low, high, err := l.Reamer(d, "H7")
		return []Figure{of("smallest reamer for H7, over nominal", "low_mm_or_factor", low.Sub(d).MM(), err),
			of("largest reamer for H7, over nominal", "high_mm_or_factor", high.Sub(d).MM(), err)}
	case "drill_diameter_minus_tolerance_h8":
		c, err := l.Class(d, "h8")
		thousand := decimal.NewFromInt(1000)
		return []Figure{of("largest drill h8, under nominal", "low_mm_or_factor", c.UpperUm.Neg().Div(thousand), err),
			of("smallest drill h8, under nominal", "high_mm_or_factor", c.LowerUm.Neg().Div(thousand), err)}
	}
	return []Figure{f.fails(fmt.Errorf("no answer for quantity %q", r["quantity"]))}
}
