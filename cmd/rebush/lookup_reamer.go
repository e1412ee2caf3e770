package main

import (
	"math"
	"strings"

	"rebush/feeds/drills"
	"rebush/fits/dim"
	"rebush/fits/say"
)

// defaultMetal is what is reamed where nobody says: the castings of the trade.
const defaultMetal = "zinc die casting"

type reamerAnswer struct {
	SizeMM    dim.Gauged   `json:"size_mm"`
	Class     string       `json:"class"`
	ReamerMM  dim.MMRange  `json:"reamer_mm"`
	DrillMM   dim.Gauged   `json:"drill_mm"`
	DrillName *string      `json:"drill_name"`
	StockMM   *dim.MMRange `json:"stock_mm"` // left on diameter, by the table
	Material  string       `json:"material"`
	Note      say.Text     `json:"note"`
	Source    string       `json:"source"`

	low, high dim.Length
}

func lookupReamer(e *env, o options, words []string) error {
	return ask(e, o, func(b *books) (answer, error) {
		l, err := b.limits()
		if err != nil {
			return nil, err
		}
		a := reamerAnswer{Material: defaultMetal}
		if o.has("material") {
			a.Material = o.text["material"]
		}
		var nominal dim.Length
		if text, class, err := sizeAndClass(words); err == nil && !gradeText.MatchString(class) {
			if nominal, err = dim.Parse(text, o.bare()); err != nil {
				return nil, usage("%v", err)
			}
			a.Class = class
			if a.low, a.high, err = l.Reamer(nominal, class); err != nil {
				return nil, err
			}
			a.Source = "ISO 522 / DIN 1420: the greatest hole less 15 % of its tolerance, and 35 % below that"
		} else {
			if nominal, err = dim.Parse(strings.Join(words, " "), o.bare()); err != nil {
				return nil, usage("%q is not a size and a class; write it as \"5 H7\", or an inch size alone for a "+
					"stock reamer", strings.Join(words, " "))
			}
			list, err := l.ReamerInch(nominal)
			if err != nil {
				return nil, usage("which hole class does it cut? write it as \"5 H7\" (%v)", err)
			}
			a.low, a.high, a.Source = list[0].Low, list[0].High, "stock inch chucking reamer: "+list[0].Source
			for _, other := range list[1:] {
				a.Note += say.F("another source has %s to %s in (%s). ", other.Low.StringInch(4),
					other.High.StringInch(4), other.Source)
			}
		}
		a.SizeMM, a.ReamerMM = nominal.Gauged(), dim.MMRange{Min: a.low.Gauged(), Max: a.high.Gauged()}
		return a, a.before(b, o, nominal)
	})
}

// before finds the drill that goes before the reamer: the metric drill nearest
// the middle of what the table allows, else one of another series, else the
// next smaller metric one.
func (a *reamerAnswer) before(b *books, o options, nominal dim.Length) error {
	c, err := b.cutting()
	if err != nil {
		return err
	}
	metal, err := b.cuttingName(c, a.Material)
	if err != nil {
		return err
	}
	a.Material = metal
	low, high, err := c.PreDrill(nominal.Float(), o.on["hand"], metal)
	if err != nil {
		a.Note += say.F("%v", err)
		return nil
	}
	stockLow, stockHigh, ref, err := c.ReamStock(nominal.Float(), o.on["hand"], metal)
	if err != nil {
		return err
	}
	a.StockMM = &dim.MMRange{Min: gauged(stockLow), Max: gauged(stockHigh)}
	a.Source += "; stock: " + ref.Text + " (" + ref.Address + ")"
	d, err := b.drills()
	if err != nil {
		return err
	}
	best, between := chooseDrill(d, low, high), say.Row(3, "mm", " and ", low, high)
	if best == nil {
		a.Note += say.F("no drill lies between %v", between)
		return nil
	}
	if best.Size.Float() < low-1e-9 {
		a.Note += say.F("no drill lies between %v; the next smaller leaves more for the reamer", between)
	}
	a.DrillMM, a.DrillName = best.Size.Gauged(), &best.Name
	return nil
}

func chooseDrill(d *drills.Drills, low, high float64) *drills.Drill {
	for _, series := range [][]drills.Series{{drills.Metric}, {drills.Number, drills.Letter, drills.Fraction}} {
		var best *drills.Drill
		off := math.Inf(1)
		for _, s := range series {
			for _, x := range d.All(s) {
				f := x.Size.Float()
				if away := math.Abs(f - (low+high)/2); f >= low-1e-9 && f <= high+1e-9 && away < off-1e-9 {
					best, off = &x, away
				}
			}
		}
		if best != nil {
			return best
		}
	}
	for _, n := range d.Near(dim.OfFloat(low), drills.Metric) {
		return n.Below
	}
	return nil
}

func (a reamerAnswer) show(p *page, u dim.Units) {
	name := a.SizeMM.String() + " mm"
	if a.Class != "" {
		name = a.SizeMM.String() + " " + a.Class
	}
	p.pair("reamer for "+name, "%s to %s", a.low.Format(u), a.high.Format(u))
	if a.DrillName != nil {
		p.pair("drill before it", "%s (%s)", *a.DrillName, a.DrillMM.Length().Format(u))
	}
	if a.StockMM != nil {
		p.pair("leave for it", "%s to %s on diameter in %s",
			a.StockMM.Min.Length().Format(u), a.StockMM.Max.Length().Format(u), a.Material)
	}
	p.pair("note", "%s", a.Note.In(u))
	p.pair("source", "%s", a.Source)
}
