package main

import (
	"fmt"
	"strings"

	"rebush/fits/dim"
	"rebush/fits/material"
)

type materialFigure struct {
	Property string  `json:"property"`
	Low      figure  `json:"low"`
	High     figure  `json:"high"`
	Unit     string  `json:"unit"`
	Temper   *string `json:"temper"`
	Of       string  `json:"of"`
	Note     string  `json:"note"`
	Source   string  `json:"source"`
	Row      string  `json:"row"`

	text string
}

type materialAnswer struct {
	Name       string           `json:"name"`
	Asked      string           `json:"asked"`
	Kind       string           `json:"kind"`
	Temper     *string          `json:"temper"`
	Cutting    *string          `json:"cutting"` // its name in the speed tables
	Properties []materialFigure `json:"properties"`
	Note       string           `json:"note"`
}

func lookupMaterial(e *env, o options, words []string) error {
	return ask(e, o, func(b *books) (answer, error) {
		name, err := one(words, "material")
		if err != nil {
			return nil, err
		}
		reg, err := b.materials()
		if err != nil {
			return nil, err
		}
		m, err := reg.FindOrInline(name)
		if err != nil {
			return nil, usage("%v", err)
		}
		a := materialAnswer{Name: m.Name, Asked: m.Asked, Kind: string(m.Kind), Temper: some(m.Temper), Cutting: some(m.Cutting)}
		if m.NeedsTemper() {
			a.Note = "the figures go by temper; say it for closer ones: half hard, annealed, hard"
		}
		for _, v := range m.All() {
			a.Properties = append(a.Properties, figureOf(v))
		}
		return a, nil
	})
}

func figureOf(v material.Value) materialFigure {
	f := materialFigure{Property: v.Property, Low: absent, High: absent, Unit: v.Unit, Temper: some(v.Temper), Of: v.Of, Note: v.Note, Source: v.Source, Row: v.Address}
	if v.HasLow {
		f.Low = figure(v.Low)
	}
	if v.HasHigh {
		f.High = figure(v.High)
	}
	if v.HasLow || v.HasHigh {
		f.text = v.String()
	}
	return f
}

func some(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}

func (a materialAnswer) show(p *page, u dim.Units) {
	p.line("%s (%s)", a.Name, a.Kind)
	for _, f := range a.Properties {
		s := f.text
		if f.Temper != nil {
			s += ", " + *f.Temper
		}
		if f.Of != a.Name && f.Of != "" {
			s += fmt.Sprintf(" [%s]", f.Of)
		}
		if f.Note != "" {
			s += "; " + f.Note
		}
		p.pair(propertyName(f.Property), "%s. %s (%s)", s, f.Source, f.Row)
	}
	p.pair("note", "%s", a.Note)
}

// propertyNames are the properties as a person says them. One that is missing
// here is printed as the table has it.
var propertyNames = map[string]string{
	"E": "stiffness (E)", "poisson": "Poisson's ratio", "yield_tension": "gives way in tension at", "yield_compression": "gives way in compression at",
	"UTS": "tears at", "UTS_aged": "tears at, when aged", "expansion": "growth with heat", "elongation": "stretches before it tears",
	"creep_stress_0p2pct_5y_room": "stress that creeps 0.2 % in 5 years", "creep_pseudo_modulus_100d": "stiffness after 100 days under load",
	"creep_note": "creep", "temperature_max": "hottest in use", "density": "density", "pv_limit": "most pressure times speed", "p_limit": "most pressure",
	"v_limit": "most rubbing speed",
}

func propertyName(s string) string {
	if n, ok := propertyNames[s]; ok {
		return n
	}
	return strings.ReplaceAll(s, "_", " ")
}
