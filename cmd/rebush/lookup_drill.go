package main

import (
	"strings"

	"rebush/feeds/drills"
	"rebush/fits/dim"
)

// drillName is one drill or reamer of a series.
type drillName struct {
	Name   string     `json:"name"`
	Series string     `json:"series"`
	MM     dim.Gauged `json:"mm"`
	In     dim.Gauged `json:"in"`

	l dim.Length
}

func named(d *drills.Drill) *drillName {
	if d == nil {
		return nil
	}
	return &drillName{d.Name, string(d.Series), d.Size.Gauged(), d.Size.GaugedInch(), d.Size}
}

type drillReading struct {
	As   string      `json:"as"`
	MM   dim.Gauged  `json:"mm"`
	In   dim.Gauged  `json:"in"`
	Same []drillName `json:"same"` // every drill exactly of that size

	l dim.Length
}

type nearSizes struct {
	Series string     `json:"series"`
	Below  *drillName `json:"below"`
	At     *drillName `json:"at"`
	Above  *drillName `json:"above"`
}

// drillAnswer names one drill. Where the text may mean two things the first
// four are null and both readings stand below.
type drillAnswer struct {
	Name     *string        `json:"name"`
	Series   *string        `json:"series"`
	MM       dim.Gauged     `json:"mm"`
	In       dim.Gauged     `json:"in"`
	Readings []drillReading `json:"readings"`
	Near     []nearSizes    `json:"near"`
	NearTo   dim.Gauged     `json:"near_to_mm"`
}

func lookupDrill(e *env, o options, words []string) error {
	return ask(e, o, func(b *books) (answer, error) {
		if len(words) == 0 {
			return nil, usage("which drill? write \"#31\", F, 1/8 or 3.2")
		}
		d, err := b.drills()
		if err != nil {
			return nil, err
		}
		text := strings.Join(words, " ")
		readings, err := d.Lookup(text, o.bare())
		if err != nil {
			return nil, usage("%v", err)
		}
		if readings[0].Size.Float() <= 0 {
			return nil, usage("%s is no size of a drill: it must be larger than 0", text)
		}
		series := drills.DrillSeries()
		if o.on["reamers"] {
			series = drills.ReamerSeries()
			if len(readings) > 1 { // a reamer has no number
				readings = readings[len(readings)-1:]
			}
		}
		var a drillAnswer
		for _, r := range readings {
			a.Readings = append(a.Readings, reading(d, r, series, o.on["reamers"]))
		}
		if len(a.Readings) == 1 {
			r := a.Readings[0]
			a.MM, a.In = r.MM, r.In
			if len(r.Same) > 0 {
				first := r.Same[0]
				if x := readings[0].Drill; x != nil && !o.on["reamers"] {
					first = *named(x)
				}
				a.Name, a.Series = &first.Name, &first.Series
			}
		}
		last := a.Readings[len(a.Readings)-1]
		if o.on["near"] || !o.on["json"] && len(a.Readings) == 1 && len(last.Same) == 0 {
			a.NearTo = last.MM
			for _, n := range d.Near(last.l, series...) {
				a.Near = append(a.Near, nearSizes{string(n.Series), named(n.Below), named(n.At), named(n.Above)})
			}
		}
		return a, nil
	})
}

func reading(d *drills.Drills, r drills.Reading, series []drills.Series, reamers bool) drillReading {
	out := drillReading{As: r.As, MM: r.Size.Gauged(), In: r.Size.GaugedInch(), Same: []drillName{}, l: r.Size}
	same := r.Same
	if reamers {
		same = d.Named(r.Size, series...)
		out.As = "reamer " + r.Size.String()
	}
	for _, x := range same {
		out.Same = append(out.Same, *named(&x))
	}
	return out
}

func (a drillAnswer) show(p *page, u dim.Units) {
	if u == dim.InMM {
		u = dim.InBoth
	}
	for _, r := range a.Readings {
		var same []string
		for _, x := range r.Same {
			same = append(same, x.Series+" "+x.Name)
		}
		s := r.l.Format(u)
		if len(same) == 0 {
			s += ", which no series has"
		} else {
			s += ": " + strings.Join(same, ", ")
		}
		p.pair(r.As, "%s", s)
	}
	if len(a.Readings) > 1 {
		p.line("It may be either: write \"#%s\" or \"%s mm\".", strings.TrimPrefix(a.Readings[0].Same[0].Name, "#"),
			a.Readings[1].MM)
	}
	if len(a.Near) == 0 {
		return
	}
	p.line("nearest to %s mm:", a.NearTo)
	if u == dim.InBoth {
		u = dim.InMM
	}
	cell := func(d *drillName) string {
		if d == nil {
			return "-"
		}
		if d.Series == string(drills.Metric) && u != dim.InInch {
			return d.Name
		}
		return d.Name + ", " + d.l.Format(u)
	}
	var rows [][]string
	for _, n := range a.Near {
		rows = append(rows, []string{n.Series, cell(n.Below), cell(n.At), cell(n.Above)})
	}
	p.table([]string{"series", "below", "equal", "above"}, rows)
}
