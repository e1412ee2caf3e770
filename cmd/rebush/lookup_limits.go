package main

import (
	"regexp"
	"strings"

	"rebush/fits/dim"
	"rebush/fits/limits"
)

var (
	classText = regexp.MustCompile(`^(.*?)\s*((?:[A-Za-z]{1,2}\d{1,2})\s*(?:/\s*[A-Za-z]{1,2}\d{1,2})?)$`)
	inchFit   = regexp.MustCompile(`^(?i)(RC|LN|FN)\d+$`)
	gradeText = regexp.MustCompile(`^(?i)IT\d+$`)
)

// sizeAndClass parts "8 H7/p6" into its size and what is asked of it.
func sizeAndClass(words []string) (size, class string, err error) {
	text := strings.TrimSpace(strings.Join(words, " "))
	m := classText.FindStringSubmatch(text)
	if m == nil || strings.TrimSpace(m[1]) == "" {
		return "", "", usage("%q is not a size and a class; write it as \"8 H7\", \"8 H7/p6\" or \"0.3125 FN2\"", text)
	}
	return strings.TrimSpace(strings.TrimLeft(m[1], "ØøΦ⌀ ")), strings.ReplaceAll(m[2], " ", ""), nil
}

func lookupLimits(e *env, o options, words []string) error {
	return ask(e, o, func(b *books) (answer, error) {
		text, class, err := sizeAndClass(words)
		if err != nil {
			return nil, err
		}
		bare := o.bare()
		if inchFit.MatchString(class) {
			bare = dim.Inch
		}
		nominal, err := dim.Parse(text, bare)
		if err != nil {
			return nil, usage("%v", err)
		}
		l, err := b.limits()
		if err != nil {
			return nil, err
		}
		switch {
		case inchFit.MatchString(class):
			f, err := l.Inch(nominal, strings.ToUpper(class))
			return newInchAnswer(f), err
		case gradeText.MatchString(class):
			g, err := l.Grade(nominal, strings.ToUpper(class))
			return gradeAnswer{nominal.Gauged(), strings.ToUpper(class), dim.Number(g.Um.InexactFloat64()), g.Source},
				err
		case strings.Contains(class, "/"):
			f, err := l.Fit(nominal, class)
			return newFitAnswer(f), err
		}
		d, err := l.Class(nominal, class)
		return newClassAnswer(d), err
	})
}

type classAnswer struct {
	SizeMM  dim.Gauged `json:"size_mm"`
	Class   string     `json:"class"`
	UpperUM *float64   `json:"upper_um"`
	LowerUM *float64   `json:"lower_um"`
	MaxMM   dim.Gauged `json:"max_mm"`
	MinMM   dim.Gauged `json:"min_mm"`
	Sources []string   `json:"sources"`

	low, high dim.Length
}

func newClassAnswer(d limits.Deviation) classAnswer {
	low, high := d.Min(), d.Max()
	return classAnswer{d.Nominal.Gauged(), d.Class,
		dim.Number(d.UpperUm.InexactFloat64()), dim.Number(d.LowerUm.InexactFloat64()),
		high.Gauged(), low.Gauged(), d.Sources, low, high}
}

func (a classAnswer) show(p *page, u dim.Units) {
	p.pair(a.SizeMM.String()+" "+a.Class, "%s to %s", a.low.Format(u), a.high.Format(u))
	p.figures("from nominal", "%+g to %+g um", a.LowerUM, a.UpperUM)
	p.pair("source", "ISO 286: %s", strings.Join(a.Sources, ", "))
}

type gradeAnswer struct {
	SizeMM      dim.Gauged `json:"size_mm"`
	Grade       string     `json:"grade"`
	ToleranceUM *float64   `json:"tolerance_um"`
	Source      string     `json:"source"`
}

func (a gradeAnswer) show(p *page, u dim.Units) {
	p.figures(a.SizeMM.String()+" "+a.Grade, "%g um wide", a.ToleranceUM)
	p.pair("source", "ISO 286-1: %s", a.Source)
}

type fitAnswer struct {
	Hole        classAnswer `json:"hole"`
	Shaft       classAnswer `json:"shaft"`
	ClearanceUM dim.MinMax  `json:"clearance_um"` // negative is interference
	Kind        string      `json:"kind"`
}

func newFitAnswer(f limits.Fit) fitAnswer {
	return fitAnswer{newClassAnswer(f.Hole), newClassAnswer(f.Shaft),
		*dim.Numbers(f.MinClearanceUm.InexactFloat64(), f.MaxClearanceUm.InexactFloat64()), string(f.Kind)}
}

func (a fitAnswer) show(p *page, u dim.Units) {
	p.pair("hole "+a.Hole.Class, "%s to %s", a.Hole.low.Format(u), a.Hole.high.Format(u))
	p.pair("shaft "+a.Shaft.Class, "%s to %s", a.Shaft.low.Format(u), a.Shaft.high.Format(u))
	lo, hi := *a.ClearanceUM.Min, *a.ClearanceUM.Max
	switch limits.Kind(a.Kind) {
	case limits.Interference:
		p.pair("interference", "%g to %g um", 0-hi, 0-lo)
	case limits.Transition:
		p.pair("transition", "%g um of interference to %g um of clearance", 0-lo, hi)
	default:
		p.pair("clearance", "%g to %g um", lo, hi)
	}
	p.pair("source", "ISO 286: %s", strings.Join(append(a.Hole.Sources, a.Shaft.Sources...), ", "))
}

type inchLimits struct {
	MaxIn dim.Gauged `json:"max_in"`
	MinIn dim.Gauged `json:"min_in"`

	low, high dim.Length
}

type inchAnswer struct {
	SizeIn           dim.Gauged `json:"size_in"`
	Fit              string     `json:"fit"`
	Hole             inchLimits `json:"hole"`
	Shaft            inchLimits `json:"shaft"`
	InterferenceThou dim.MinMax `json:"interference_thou"` // negative is clearance
	Kind             string     `json:"kind"`
	Source           string     `json:"source"`
}

func newInchAnswer(f limits.InchFit) inchAnswer {
	hl, hh := f.Hole()
	sl, sh := f.Shaft()
	return inchAnswer{f.Nominal.GaugedInch(), f.Fit,
		inchLimits{hh.GaugedInch(), hl.GaugedInch(), hl, hh}, inchLimits{sh.GaugedInch(), sl.GaugedInch(), sl, sh},
		*dim.Numbers(f.MinInterference().InexactFloat64(),
			f.MaxInterference().InexactFloat64()), string(f.Kind), f.Source}
}

func (a inchAnswer) show(p *page, u dim.Units) {
	if u == dim.InMM {
		u = dim.InBoth
	}
	p.pair("hole", "%s to %s", a.Hole.low.Format(u), a.Hole.high.Format(u))
	p.pair("shaft", "%s to %s", a.Shaft.low.Format(u), a.Shaft.high.Format(u))
	lo, hi := *a.InterferenceThou.Min, *a.InterferenceThou.Max
	switch limits.Kind(a.Kind) {
	case limits.Interference:
		p.pair("interference", "%g to %g thou", lo, hi)
	case limits.Transition:
		p.pair("transition", "%g thou of clearance to %g thou of interference", 0-lo, hi)
	default:
		p.pair("clearance", "%g to %g thou", 0-hi, 0-lo)
	}
	p.pair("source", "ANSI B4.1: %s", a.Source)
}
