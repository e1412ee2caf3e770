package plan

import (
	"rebush/fits/ledger"
	"rebush/fits/table"
)

// rulesUsed are the defaults that decided something, in the order in which they
// first did.
func rulesUsed(book *ledger.Ledger, rules *table.Rules) []RuleUsed {
	known := map[string]bool{}
	for _, name := range rules.Names() {
		known[name] = true
	}
	var out []RuleUsed
	for _, name := range book.Cited("rules/") {
		if !known[name] {
			continue // a figure worked out from rules
		}
		r := rules.Get(name)
		out = append(out, RuleUsed{Name: name, What: r.What, Value: valueOf(r), Source: r.Source})
	}
	return out
}
