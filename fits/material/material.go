// Package material is the one registry of materials: what each is called, what
// kind of thing it is, and every published figure for it with its source.
//
// Where sources disagree all of them are kept. The caller asks for the low or
// the high one, whichever is cautious for the question: low for strength and
// for the modulus that holds a press, high for the modulus that stresses a
// wall. The package judges nothing beyond that.
package material

import (
	"fmt"
	"strconv"
)

// Kind is what a material is to the planner.
type Kind string

// The kinds, as the table materials_kinds writes them.
const (
	ZincCasting      Kind = "zinc casting"
	AluminiumCasting Kind = "aluminium casting"
	MagnesiumCasting Kind = "magnesium casting"
	WroughtAluminium Kind = "wrought aluminium"
	WroughtBrass     Kind = "wrought brass"
	BrassBush        Kind = "brass bush"
	Steel            Kind = "steel"
	CastIron         Kind = "cast iron"
	SolidBronze      Kind = "solid bronze"
	PorousBronze     Kind = "porous bronze"
	Plastic          Kind = "plastic"
	FrictionPair     Kind = "friction pair"
	AsGiven          Kind = "as given" // typed as E,nu[,yield]
)

// Casting says whether the metal was cast in its shape, so that the largest
// tension is what breaks it.
func (k Kind) Casting() bool {
	return k == ZincCasting || k == AluminiumCasting || k == MagnesiumCasting || k == CastIron
}

// Value is one published figure, or a remark where it has neither end. A
// figure without a span has Low equal to High. HasLow and HasHigh say which
// ends are known: "at most 300" has no low one.
type Value struct {
	Of       string // the material whose row it is
	Property string
	Low      float64
	High     float64
	HasLow   bool
	HasHigh  bool
	Unit     string // GPa, MPa, 1e-6/K, MPa m/s, ... "-" for a bare number
	Temper   string // "" where it is not tied to one
	Note     string
	Source   string
	Address  string // table and line
}

// String writes the figure with its unit.
func (v Value) String() string {
	f := func(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
	unit := ""
	if v.Unit != "-" && v.Unit != "" {
		unit = " " + v.Unit
	}
	switch {
	case v.HasLow && v.HasHigh && v.Low == v.High:
		return f(v.Low) + unit
	case v.HasLow && v.HasHigh:
		return f(v.Low) + " to " + f(v.High) + unit
	case v.HasLow:
		return "at least " + f(v.Low) + unit
	case v.HasHigh:
		return "at most " + f(v.High) + unit
	}
	return v.Note
}

// Material is one material as it was asked for.
type Material struct {
	Name    string // as the tables have it
	Asked   string // as it was typed
	Kind    Kind
	Cutting string   // its name in the table of cutting speeds, "" where it has none
	Leaded  bool     // lead in it for free cutting
	Temper  string   // from the name; "" where not said
	Gathers []string // materials looked at together because the alloy is not named
	values  []Value
}

// NeedsTemper says that the figures for this material go by temper and that
// the name does not tell it. The figures then span all tempers: the low one is
// that of soft metal.
func (m *Material) NeedsTemper() bool {
	if m.Temper != "" {
		return false
	}
	for _, v := range m.values {
		if v.Temper != "" {
			return true
		}
	}
	return false
}

// All returns every figure and remark in the order of the table.
func (m *Material) All() []Value { return append([]Value(nil), m.values...) }

// Values returns the figures for one property. With the temper known, figures
// tied to it come alone if there are any, and those of another temper never.
//
// The properties are: E (GPa), poisson, yield_tension, yield_compression, UTS,
// UTS_aged, compressive_10pct, radial_crush_strength (MPa), elongation (%),
// expansion (1e-6/K), density (g/cm3), creep_stress_0p2pct_5y_room (MPa),
// creep_pseudo_modulus_100d (GPa), p_limit and p_static (MPa), v_limit (m/s),
// pv_limit (MPa m/s), temperature_max (C), mu, hardness (HB), porosity and oil
// (% vol), and the remarks note and creep_note.
func (m *Material) Values(property string) []Value {
	var tied, loose []Value
	for _, v := range m.values {
		switch {
		case v.Property != property:
		case m.Temper == "" || v.Temper == "":
			loose = append(loose, v)
		case v.Temper == m.Temper:
			tied = append(tied, v)
		}
	}
	if len(tied) > 0 {
		return tied
	}
	return loose
}

// Low returns the figure with the lowest low end, and whether there is one.
func (m *Material) Low(property string) (Value, bool) {
	var best Value
	found := false
	for _, v := range m.Values(property) {
		if v.HasLow && (!found || v.Low < best.Low) {
			best, found = v, true
		}
	}
	return best, found
}

// High returns the figure with the highest high end, and whether there is one.
func (m *Material) High(property string) (Value, bool) {
	var best Value
	found := false
	for _, v := range m.Values(property) {
		if v.HasHigh && (!found || v.High > best.High) {
			best, found = v, true
		}
	}
	return best, found
}

// Weakest returns the least tensile strength published for the material, as cast
// or aged, in MPa, and whether there is one. An old casting may be in either
// state, and of an alloy that is not named nobody knows which it is.
func (m *Material) Weakest() (Value, bool) {
	cast, isCast := m.Low("UTS")
	aged, isAged := m.Low("UTS_aged")
	if isAged && (!isCast || aged.Low < cast.Low) {
		return aged, true
	}
	return cast, isCast
}

// Elastic returns the modulus in MPa, Poisson's ratio and the yield in MPa as
// the mechanics of a press want them. high asks for the greatest published
// modulus (for stress), else the least (for holding). The yield is the least
// published, in compression for a porous bronze; 0 where none is known.
func (m *Material) Elastic(high bool) (eMPa, nu, yieldMPa float64, err error) {
	e, ok := m.Low("E")
	eMPa = e.Low * 1000 // GPa to MPa
	if high {
		e, ok = m.High("E")
		eMPa = e.High * 1000
	}
	if !ok {
		return 0, 0, 0, fmt.Errorf("no modulus is known for %s; give it as E,nu in MPa, for example 100000,0.34", m.Name)
	}
	p, ok := m.Low("poisson")
	if !ok {
		return 0, 0, 0, fmt.Errorf("no Poisson's ratio is known for %s; give the material as E,nu in MPa, for example 100000,0.34", m.Name)
	}
	property := "yield_tension"
	if m.Kind == PorousBronze {
		property = "yield_compression"
	}
	y, _ := m.Low(property)
	return eMPa, p.Low, y.Low, nil
}
