package verdict

import (
	"cmp"
	"math"

	"rebush/fits/dim"
	"rebush/fits/ledger"
)

// Explain writes what the shop says of its time and money into the ledger, and
// the hours and the cost of every option: each worked out from those entries
// by weighing the case again. hours and rates are where the shop says so.
func (c Case) Explain(book *ledger.Ledger, hours, rates string) {
	const from = "planning rule: hours of set-ups, operations, strip and rebuild; money; " +
		"chance of each fault times its cost"
	money := cmp.Or(c.Currency, "money")
	in := []ledger.Num{
		book.Leaf("shop/setup_hours", "hours of one set-up", "h", hours, c.SetupHours),
		book.Leaf("shop/strip_hours", "hours to strip and rebuild", "h", hours, c.StripHours),
	}
	if c.Rate != nil {
		in = append(in, book.Leaf("shop/rate", "money per hour", money, rates, *c.Rate))
	}
	again := ledger.LastOf(func(v []float64) []WayRow {
		o := c
		o.SetupHours, o.StripHours = v[0], v[1]
		if len(v) > 2 {
			o.Rate = &v[2]
		}
		return o.rows(o.weigh())
	})
	for i, o := range c.rows(c.weigh()) {
		page := book.Page("verdict/options/" + string(o.Way))
		figure := func(k, what, unit, formula string, of func(WayRow) *float64) {
			if of(o) == nil {
				return
			}
			page.Calc(k, what+" of "+string(o.Way), unit, formula, from, func(v []float64) float64 {
				if f := of(again(v)[i]); f != nil {
					return dim.Sig9(*f)
				}
				return math.NaN()
			}, in...)
		}
		figure("hours", "planned hours", "h", "set-ups x their time + minutes of the operations and of the aids made for them + strip and rebuild",
			func(o WayRow) *float64 { return o.Hours })
		figure("cost", "expected cost", money, "hours x rate + what goes in and has to be bought + chance of each fault x what it costs",
			func(o WayRow) *float64 { return o.Cost })
	}
}
