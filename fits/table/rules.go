package table

import (
	"fmt"
	"maps"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// Rule is one default by which the planner decides. High is NaN where the rule
// is a single figure.
type Rule struct {
	Name, Unit, What, Source, Address string
	Low, High                         float64
	Shop                              bool // the shop set it
}

// Rules are the defaults in force, by name.
type Rules struct {
	byName map[string]Rule
	order  []string
}

// renamed are rules that shops may still set under an older name.
var renamed = map[string]string{"strap_slide_um": "cap_slide_um"}

// CurrentRule is the name by which a rule goes now: name itself, unless it is
// an older one.
func CurrentRule(name string) string {
	if now, ok := renamed[name]; ok {
		return now
	}
	return name
}

// ReadRules reads the table "rules" of a library.
func ReadRules(lib *Library) (*Rules, error) {
	t, err := lib.Get("rules")
	if err != nil {
		return nil, err
	}
	r := &Rules{byName: map[string]Rule{}}
	for _, row := range t.Rows {
		rule := Rule{Name: CurrentRule(row.Get("rule")), Unit: row.Get("unit"), What: row.Get("what"),
			Source: row.Source(), Address: row.Address(), High: math.NaN()}
		if rule.Low, err = strconv.ParseFloat(row.Get("low"), 64); err != nil {
			return nil, fmt.Errorf("%s: low: %w", row.Address(), err)
		}
		if s := row.Get("high"); s != "" {
			if rule.High, err = strconv.ParseFloat(s, 64); err != nil {
				return nil, fmt.Errorf("%s: high: %w", row.Address(), err)
			}
		}
		if rule.Source == "" {
			return nil, fmt.Errorf("%s: no source", row.Address())
		}
		r.byName[rule.Name] = rule
		r.order = append(r.order, rule.Name)
	}
	return r, nil
}

// Set overrides a rule with the shop's figure; source is the line of the shop
// file. high is NaN for a single figure. An older name sets the rule that it is
// called now.
func (r *Rules) Set(name string, low, high float64, source string) error {
	name = CurrentRule(name)
	rule, ok := r.byName[name]
	if !ok {
		return fmt.Errorf("no rule %q", name)
	}
	if math.IsNaN(rule.High) != math.IsNaN(high) {
		if math.IsNaN(high) {
			return fmt.Errorf("rule %s takes two figures [low, high]", name)
		}
		return fmt.Errorf("rule %s takes one figure", name)
	}
	if !math.IsNaN(high) && high < low {
		return fmt.Errorf("rule %s: %v is above %v", name, low, high)
	}
	rule.Low, rule.High, rule.Source, rule.Address, rule.Shop = low, high, source, source, true
	r.byName[name] = rule
	return nil
}

// Copy returns the same rules, to be set otherwise.
func (r *Rules) Copy() *Rules {
	return &Rules{byName: maps.Clone(r.byName), order: slices.Clone(r.order)}
}

// Get returns a rule. A name that does not exist is a fault of the program.
func (r *Rules) Get(name string) Rule {
	rule, ok := r.byName[name]
	if !ok {
		panic("table: no rule " + name)
	}
	return rule
}

// V is the single figure of a rule, or the low one of a pair.
func (r *Rules) V(name string) float64 { return r.Get(name).Low }

// Pair returns both figures of a rule that has two.
func (r *Rules) Pair(name string) (low, high float64) {
	rule := r.Get(name)
	if math.IsNaN(rule.High) {
		panic("table: rule " + name + " has one figure")
	}
	return rule.Low, rule.High
}

// Names lists the rules in table order.
func (r *Rules) Names() []string { return append([]string(nil), r.order...) }

// Leaf is a rule as an entry of the ledger: rules are recorded by
// book.Leaf(rules.Get("press_halt_factor").Leaf()).
func (r Rule) Leaf() (key, what, unit, source string, v float64) {
	return "rules/" + r.Name, r.What, r.Unit, r.Address + ": " + r.Source, r.Low
}

// Fill sets the fields of the struct that to points at whose tags name a rule,
// so that a new default is a row and a field:
//
//	Pass  float64 `rule:"pass_um,mm"` // micrometres of the table as mm
//	HotC  float64 `rule:"use_c,high"` // the second figure of a pair
//
// A float64 takes the one figure, or the first of two. Fields of a struct that
// is embedded are filled too. A name that does not exist is a fault of the
// program.
func (r *Rules) Fill(to any) { r.fill(reflect.ValueOf(to).Elem()) }

func (r *Rules) fill(s reflect.Value) {
	for i := range s.NumField() {
		f := s.Type().Field(i)
		if f.Anonymous && f.Type.Kind() == reflect.Struct {
			r.fill(s.Field(i))
		}
		tag, ok := f.Tag.Lookup("rule")
		if !ok {
			continue
		}
		words := strings.Split(tag, ",")
		v := r.V(words[0])
		if slices.Contains(words, "high") {
			_, v = r.Pair(words[0])
		}
		if slices.Contains(words, "mm") {
			v /= 1000
		}
		s.Field(i).SetFloat(v)
	}
}
