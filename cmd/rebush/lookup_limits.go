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
			return gradeAnswer{sizeMM(nominal), strings.ToUpper(class), exact(g.Um), g.Source}, err
		case strings.Contains(class, "/"):
			f, err := l.Fit(nominal, class)
			return newFitAnswer(f), err
		}
		d, err := l.Class(nominal, class)
		return newClassAnswer(d), err
	})
}

type classAnswer struct {
	SizeMM  size     `json:"size_mm"`
	Class   string   `json:"class"`
	UpperUM figure   `json:"upper_um"`
	LowerUM figure   `json:"lower_um"`
	MaxMM   size     `json:"max_mm"`
	MinMM   size     `json:"min_mm"`
	Sources []string `json:"sources"`

	low, high dim.Length
}

func newClassAnswer(d limits.Deviation) classAnswer {
	return classAnswer{sizeMM(d.Nominal), d.Class, exact(d.UpperUm), exact(d.LowerUm), sizeMM(d.Max()), sizeMM(d.Min()), d.Sources, d.Min(), d.Max()}
}

func (a classAnswer) show(p *page, u dim.Units) {
	p.pair(string(a.SizeMM)+" "+a.Class, "%s to %s", a.low.Format(u), a.high.Format(u))
	p.pair("from nominal", "%+g to %+g um", float64(a.LowerUM), float64(a.UpperUM))
	p.pair("source", "ISO 286: %s", strings.Join(a.Sources, ", "))
}

type gradeAnswer struct {
	SizeMM      size   `json:"size_mm"`
	Grade       string `json:"grade"`
	ToleranceUM figure `json:"tolerance_um"`
	Source      string `json:"source"`
}

func (a gradeAnswer) show(p *page, u dim.Units) {
	p.pair(string(a.SizeMM)+" "+a.Grade, "%g um wide", float64(a.ToleranceUM))
	p.pair("source", "ISO 286-1: %s", a.Source)
}

type fitAnswer struct {
	Hole        classAnswer `json:"hole"`
	Shaft       classAnswer `json:"shaft"`
	ClearanceUM span        `json:"clearance_um"` // negative is interference
	Kind        string      `json:"kind"`
}

func newFitAnswer(f limits.Fit) fitAnswer {
	return fitAnswer{newClassAnswer(f.Hole), newClassAnswer(f.Shaft), span{exact(f.MinClearanceUm), exact(f.MaxClearanceUm)}, string(f.Kind)}
}

func (a fitAnswer) show(p *page, u dim.Units) {
	p.pair("hole "+a.Hole.Class, "%s to %s", a.Hole.low.Format(u), a.Hole.high.Format(u))
	p.pair("shaft "+a.Shaft.Class, "%s to %s", a.Shaft.low.Format(u), a.Shaft.high.Format(u))
	lo, hi := float64(a.ClearanceUM.Min), float64(a.ClearanceUM.Max)
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
	MaxIn size `json:"max_in"`
	MinIn size `json:"min_in"`

	low, high dim.Length
}

type inchAnswer struct {
	SizeIn           size       `json:"size_in"`
	Fit              string     `json:"fit"`
	Hole             inchLimits `json:"hole"`
	Shaft            inchLimits `json:"shaft"`
	InterferenceThou span       `json:"interference_thou"` // negative is clearance
	Kind             string     `json:"kind"`
	Source           string     `json:"source"`
}

func newInchAnswer(f limits.InchFit) inchAnswer {
	hl, hh := f.Hole()
	sl, sh := f.Shaft()
	return inchAnswer{sizeIn(f.Nominal), f.Fit, inchLimits{sizeIn(hh), sizeIn(hl), hl, hh}, inchLimits{sizeIn(sh), sizeIn(sl), sl, sh},
		span{exact(f.MinInterference()), exact(f.MaxInterference())}, string(f.Kind), f.Source}
}

func (a inchAnswer) show(p *page, u dim.Units) {
	if u == dim.InMM {
		u = dim.InBoth
	}
	p.pair("hole", "%s to %s", a.Hole.low.Format(u), a.Hole.high.Format(u))
	p.pair("shaft", "%s to %s", a.Shaft.low.Format(u), a.Shaft.high.Format(u))
	lo, hi := float64(a.InterferenceThou.Min), float64(a.InterferenceThou.Max)
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
