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
// is a single figure. Spans are what either figure may be set to; Ordered says
// that two figures are the low and the high of one thing.
type Rule struct {
	Name, Unit, What, Source, Address string
	Low, High                         float64
	Spans                             [2]Span
	Ordered                           bool
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

// ReadRules reads the table "rules" of a library. A rule that a shop's own table
// leaves out stays as it ships, and what a rule may be is what the built-in table
// says. Errors name the row.
func ReadRules(lib *Library) (*Rules, error) {
	shipped, err := builtIn("rules")
	if err != nil {
		return nil, err
	}
	r := &Rules{byName: map[string]Rule{}}
	for _, row := range shipped.Rows {
		rule, err := readRule(row)
		if err == nil {
			rule.Spans, rule.Ordered, err = spans(row.Get("range"))
		}
		if err == nil {
			err = r.add(rule)
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", row.Address(), err)
		}
	}
	own, err := lib.Get("rules")
	if err != nil || own.From == shipped.From {
		return r, err
	}
	return r, r.replace(own)
}

// replace takes the rows of a shop's own table.
func (r *Rules) replace(own *Table) error {
	first := map[string]int{}
	for _, row := range own.Rows {
		rule, err := readRule(row)
		old, known := r.byName[rule.Name]
		rule.Spans, rule.Ordered = old.Spans, old.Ordered
		line, twice := first[rule.Name]
		first[rule.Name] = row.Line
		switch {
		case err != nil:
		case !known:
			err = fmt.Errorf("no rule %q", rule.Name)
		case twice:
			err = fmt.Errorf("rule %s stands twice, first on line %d", rule.Name, line)
		case rule.Unit != "" && rule.Unit != old.Unit:
			err = fmt.Errorf("rule %s is in %s, not in %s", rule.Name, old.Unit, rule.Unit)
		default:
			err = old.Check(rule.Low, rule.High)
		}
		if err != nil {
			return fmt.Errorf("%s: %w", row.Place(), err)
		}
		r.byName[rule.Name] = rule
	}
	return nil
}

func (r *Rules) add(rule Rule) error {
	if _, twice := r.byName[rule.Name]; twice {
		return fmt.Errorf("rule %s stands twice", rule.Name)
	}
	r.byName[rule.Name] = rule
	r.order = append(r.order, rule.Name)
	return nil
}

func readRule(row Row) (Rule, error) {
	rule := Rule{Name: CurrentRule(row.Get("rule")), Unit: row.Get("unit"), What: row.Get("what"),
		Source: row.Source(), Address: row.Address(), High: math.NaN()}
	for _, of := range []struct {
		column string
		to     *float64
	}{{"low", &rule.Low}, {"high", &rule.High}} {
		s := row.Get(of.column)
		if s == "" && of.column == "high" {
			continue
		}
		f, err := strconv.ParseFloat(s, 64)
		if err != nil {
			return rule, fmt.Errorf("rule %s: %s %q is no number", rule.Name, of.column, s)
		}
		*of.to = f
	}
	if rule.Source == "" {
		return rule, fmt.Errorf("rule %s: no source", rule.Name)
	}
	return rule, nil
}

// Set overrides a rule with the shop's figure; source is the line of the shop
// file. high is NaN for a single figure. An older name sets the rule that it is
// called now. Figures beyond the range of the rule are refused.
func (r *Rules) Set(name string, low, high float64, source string) error {
	name = CurrentRule(name)
	rule, ok := r.byName[name]
	if !ok {
		return fmt.Errorf("no rule %q", name)
	}
	if err := rule.Check(low, high); err != nil {
		return err
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
