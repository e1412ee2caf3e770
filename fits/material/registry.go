package material

import (
	"fmt"
	"strconv"
	"strings"

	"rebush/fits/table"
)

// Registry knows every material by all its names.
type Registry struct {
	byName map[string]*Material // the name as the tables have it
	order  []string
	byKey  map[string][]string // key of a name or alias -> materials
	names  []string            // every name and alias as written, in table order
	temper map[string]string   // key -> temper, of every temper in the tables
}

// New reads the tables materials, materials_kinds and materials_aliases of a
// library. Errors name the table and line.
func New(lib *table.Library) (*Registry, error) {
	r := &Registry{byName: map[string]*Material{}, byKey: map[string][]string{}, temper: map[string]string{}}
	if err := r.readKinds(lib); err != nil {
		return nil, err
	}
	if err := r.readValues(lib); err != nil {
		return nil, err
	}
	if err := r.readAliases(lib); err != nil {
		return nil, err
	}
	if err := r.learnAliases(lib); err != nil {
		return nil, err
	}
	if r.temper["annealed"] != "" {
		r.temper["soft"] = "annealed"
	}
	return r, nil
}

func (r *Registry) readKinds(lib *table.Library) error {
	t, err := lib.Get("materials_kinds")
	if err != nil {
		return err
	}
	for _, row := range t.Rows {
		m := &Material{Name: row.Get("material"), Kind: Kind(row.Get("kind")), Cutting: row.Get("cutting"),
			Leaded: row.Get("leaded") == "yes", Gathers: list(row.Get("gathers"))}
		if m.Name == "" || m.Kind == "" {
			return fmt.Errorf("%s: material and kind must both stand", row.Address())
		}
		if _, twice := r.byName[m.Name]; twice {
			return fmt.Errorf("%s: %q stands twice", row.Address(), m.Name)
		}
		r.byName[m.Name] = m
		r.order = append(r.order, m.Name)
		r.learn(m.Name, []string{m.Name})
	}
	return nil
}

func (r *Registry) readValues(lib *table.Library) error {
	t, err := lib.Get("materials")
	if err != nil {
		return err
	}
	own := map[string][]Value{}
	for _, row := range t.Rows {
		v := Value{Of: row.Get("material"), Property: row.Get("property"), Unit: row.Get("unit"),
			Temper: row.Get("temper"), Note: row.Get("note"), Source: row.Source(), Address: row.Address()}
		if v.Low, v.HasLow, err = cell(row, "low"); err != nil {
			return err
		}
		if v.High, v.HasHigh, err = cell(row, "high"); err != nil {
			return err
		}
		switch {
		case r.byName[v.Of] == nil:
			return fmt.Errorf("%s: %q has no line in materials_kinds", row.Address(), v.Of)
		case v.Property == "" || v.Source == "":
			return fmt.Errorf("%s: property and source must both stand", row.Address())
		case v.HasLow && v.HasHigh && v.Low > v.High:
			return fmt.Errorf("%s: low %v is above high %v", row.Address(), v.Low, v.High)
		case !v.HasLow && !v.HasHigh && v.Note == "":
			return fmt.Errorf("%s: neither a figure nor a note", row.Address())
		}
		if v.Temper != "" {
			r.temper[key(v.Temper)] = v.Temper
		}
		own[v.Of] = append(own[v.Of], v)
	}
	for _, name := range r.order {
		m := r.byName[name]
		m.values = append(m.values, own[name]...)
		for _, other := range m.Gathers {
			if r.byName[other] == nil {
				return fmt.Errorf("materials_kinds: %q gathers %q, which is no material", name, other)
			}
			m.values = append(m.values, own[other]...)
		}
	}
	return nil
}

func (r *Registry) readAliases(lib *table.Library) error {
	t, err := lib.Get("materials_aliases")
	if err != nil {
		return err
	}
	for _, row := range t.Rows {
		to := list(row.Get("material"))
		if len(to) == 0 || key(row.Get("alias")) == "" {
			return fmt.Errorf("%s: alias and material must both stand", row.Address())
		}
		for _, name := range to {
			if r.byName[name] == nil {
				return fmt.Errorf("%s: %q is no material of materials_kinds", row.Address(), name)
			}
		}
		if old := r.byKey[key(row.Get("alias"))]; old != nil && strings.Join(old, ";") != strings.Join(to, ";") {
			return fmt.Errorf("%s: %q already means %s", row.Address(), row.Get("alias"), strings.Join(old, ", "))
		}
		r.learn(row.Get("alias"), to)
	}
	return nil
}

// learnAliases learns the other names that stand beside each material. What the
// table of aliases says of a name goes first, so that a shop can mean another
// material by it.
func (r *Registry) learnAliases(lib *table.Library) error {
	t, err := lib.Get("materials_kinds")
	if err != nil {
		return err
	}
	means := map[string]string{}
	for _, row := range t.Rows {
		name := row.Get("material")
		for _, alias := range list(row.Get("aliases")) {
			k := key(alias)
			if other := means[k]; k == "" || other != "" && other != name {
				return fmt.Errorf("%s: %q is no name of its own for %s", row.Address(), alias, name)
			}
			means[k] = name
			if r.byKey[k] == nil {
				r.learn(alias, []string{name})
			}
		}
	}
	return nil
}

func (r *Registry) learn(name string, to []string) {
	r.byKey[key(name)] = to
	r.names = append(r.names, name)
}

// All returns every material in table order, friction pairs left out.
func (r *Registry) All() []*Material {
	return r.where(func(m *Material) bool { return m.Kind != FrictionPair })
}

// Frictions returns the pairs of surfaces whose friction (property mu) is known.
func (r *Registry) Frictions() []*Material {
	return r.where(func(m *Material) bool { return m.Kind == FrictionPair })
}

func (r *Registry) where(keep func(*Material) bool) []*Material {
	var out []*Material
	for _, name := range r.order {
		if m := r.byName[name]; keep(m) {
			out = append(out, m)
		}
	}
	return out
}

// list splits a cell at its semicolons.
func list(cell string) []string {
	var out []string
	for _, s := range strings.Split(cell, ";") {
		if s = strings.TrimSpace(s); s != "" {
			out = append(out, s)
		}
	}
	return out
}

// cell reads a number, or nothing where the cell is empty.
func cell(row table.Row, column string) (float64, bool, error) {
	s := row.Get(column)
	if s == "" {
		return 0, false, nil
	}
	x, err := strconv.ParseFloat(s, 64)
	if err != nil || x != x || x > 1e9 || x < -1e9 {
		return 0, false, fmt.Errorf("%s: %s: %q is not a number", row.Address(), column, s)
	}
	return x, true, nil
}
