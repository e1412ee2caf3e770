package main

import (
	"fmt"
	"strings"

	"rebush/fits/dim"
	"rebush/fits/material"
)

type materialFigure struct {
	Property string   `json:"property"`
	Low      *float64 `json:"low"`
	High     *float64 `json:"high"`
	Unit     string   `json:"unit"`
	Temper   *string  `json:"temper"`
	Of       string   `json:"of"`
	Note     string   `json:"note"`
	Source   string   `json:"source"`
	Row      string   `json:"row"`

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
		a := materialAnswer{Name: m.Name, Asked: m.Asked, Kind: string(m.Kind), Temper: some(m.Temper),
			Cutting: some(m.Cutting)}
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
	f := materialFigure{Property: v.Property, Unit: v.Unit, Temper: some(v.Temper), Of: v.Of, Note: v.Note,
		Source: v.Source, Row: v.Address}
	if v.HasLow {
		f.Low = dim.Number(v.Low)
	}
	if v.HasHigh {
		f.High = dim.Number(v.High)
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

// propertyNames are the properties in the words of a handbook. One that is missing
// here is printed as the table has it.
var propertyNames = map[string]string{
	"E": "modulus of elasticity (E)", "poisson": "Poisson's ratio", "yield_tension": "yield strength, tension",
	"yield_compression": "yield strength, compression",
	"UTS":               "tensile strength", "UTS_aged": "tensile strength, aged", "expansion": "thermal expansion",
	"elongation":                  "elongation at break",
	"creep_stress_0p2pct_5y_room": "stress for 0.2 % creep in 5 years",
	"creep_pseudo_modulus_100d":   "creep modulus, 100 days",
	"creep_note":                  "creep", "temperature_max": "highest temperature in use", "density": "density",
	"pv_limit": "largest pv", "p_limit": "largest bearing pressure",
	"v_limit": "largest rubbing speed",
}

func propertyName(s string) string {
	if n, ok := propertyNames[s]; ok {
		return n
	}
	return strings.ReplaceAll(s, "_", " ")
}
