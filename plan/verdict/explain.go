package verdict

import (
	"cmp"
	"fmt"
	"math"

	"rebush/fits/dim"
	"rebush/fits/ledger"
)

// Explain writes what the shop says of its time and money into the ledger, what
// the plan of each way takes, and the hours and the cost of every option: each
// worked out from those entries by weighing the case again. hours and rates are
// where the shop says so.
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
	shop := len(in)
	for i, w := range c.weigh() {
		page := book.Page("verdict/options/" + string(w.name))
		of := append([]ledger.Num(nil), in...)
		if w.work != nil && w.ok {
			of = append(of, w.work.leaves(page, money)...)
		}
		again := ledger.LastOf(func(v []float64) WayRow {
			o := c
			o.SetupHours, o.StripHours = v[0], v[1]
			if shop > 2 {
				o.Rate = &v[2]
			}
			if len(v) > shop {
				o.Works = c.taking(w.work.Name, v[shop:])
			}
			return o.rows(o.weigh())[i]
		})
		row := c.rows([]weighed{w})[0]
		figure := func(k, what, unit, formula string, pick func(WayRow) *float64) {
			if pick(row) == nil {
				return
			}
			page.Calc(k, what+" of "+string(w.name), unit, formula, from, func(v []float64) float64 {
				if f := pick(again(v)); f != nil {
					return dim.Sig9(*f)
				}
				return math.NaN()
			}, of...)
		}
		figure("hours", "planned hours", "h", "set-ups x their time + minutes of the operations and of the aids made for them + strip and rebuild",
			func(o WayRow) *float64 { return o.Hours })
		figure("cost", "expected cost", money, "hours x rate + what goes in and has to be bought + chance of each fault x what it costs",
			func(o WayRow) *float64 { return o.Cost })
		told := map[string]bool{}
		for _, c := range row.Bill {
			if row.Cost == nil || told[c.Key] {
				continue
			}
			told[c.Key] = true
			figure("bill/"+c.Key, c.Key+" in the cost", money, billFormulas[c.Key],
				func(o WayRow) *float64 { return line(o.Bill, c.Key) })
		}
	}
}

// leaves are what the plan of a way takes, as entries of its page.
func (k *Work) leaves(page ledger.Page, money string) []ledger.Num {
	route := fmt.Sprintf("the route of %s:%d", k.Name, len(k.Mended))
	out := []ledger.Num{
		page.Leaf("minutes", "minutes of its operations and of the aids made for them", "min", route, k.Minutes),
		page.Leaf("clampings", "clampings under a spindle", "", route, float64(k.Clampings)),
		page.Leaf("parts", "what goes in and has to be bought, as far as prices are known", money, route, k.parts()),
	}
	if t := k.Trials; t != nil {
		for _, f := range []struct {
			key, what string
			share     float64
		}{
			{"right", "come right at the first go", t.Right}, {"rework", "want work again", t.Rework}, {"spoilt", "spoil a bush", t.Spoilt},
			{"another", "want another bush", t.NextBush}, {"lost", "lose the truck", t.Lost},
		} {
			out = append(out, page.Leaf(f.key, "share of trials that "+f.what, "", "the trials of "+string(k.Name)+":1", f.share))
		}
	}
	return out
}

// parts is the sum of the prices that are known.
func (k *Work) parts() float64 {
	sum := 0.0
	for _, p := range k.Parts {
		if p.Price != nil {
			sum += *p.Price
		}
	}
	return sum
}

// taking are the works with the figures of leaves for one of them. The dearest
// bush stays what it is: it prices a spoilt one.
func (c *Case) taking(name Name, v []float64) []Work {
	out := append([]Work(nil), c.Works...)
	for i := range out {
		k := &out[i]
		if k.Name != name {
			continue
		}
		rest := v[2]
		parts := []Part{{Price: &rest}}
		if bush := k.dearest(); bush != nil {
			rest -= *bush
			parts = append(parts, Part{Price: bush, Bush: true})
		}
		k.Minutes, k.Clampings, k.Parts = v[0], int(v[1]), parts
		if len(v) > 3 {
			k.Trials = &Trials{Right: v[3], Rework: v[4], Spoilt: v[5], NextBush: v[6], Lost: v[7]}
		}
	}
	return out
}
