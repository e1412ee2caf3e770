// Package ledger remembers where each computed number came from. A number is
// computed through the ledger, so that the formula that made it and the
// formula that explains it are one and the same, and a test can compute every
// entry again from its inputs.
//
// A nil *Ledger computes just the same and records nothing.
package ledger

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"sort"

	"rebush/fits/dim"
)

// Num is a number with the key under which the ledger knows it. A Num with an
// empty key is a bare constant of the formula it stands in.
type Num struct {
	Key string
	V   float64
}

// Entry explains one number.
type Entry struct {
	What    string   `json:"what"`    // in words of the bench
	Value   float64  `json:"value"`   // in Unit
	Unit    string   `json:"unit"`    // mm, um, MPa, N, ...
	Formula string   `json:"formula"` // in words; empty for a leaf
	Inputs  []string `json:"inputs"`  // keys of other entries
	Source  string   `json:"source"`  // job line, shop line, table row, standard and clause
	Leaf    bool     `json:"-"`       // read from the job, the shop or a table
	fn      func([]float64) float64
}

// Ledger is a set of entries by key. It is not safe for concurrent use.
type Ledger struct {
	entries map[string]Entry
	order   []string
	cited   map[string]bool
	mention []string // cited or recorded, in order
}

// New returns an empty ledger.
func New() *Ledger { return &Ledger{entries: map[string]Entry{}} }

// Copy returns a ledger that holds the same and goes its own way from here: for
// a plan that shares its first steps with another. Of nil it is nil.
func (l *Ledger) Copy() *Ledger {
	if l == nil {
		return nil
	}
	return &Ledger{entries: maps.Clone(l.entries), order: slices.Clone(l.order), cited: maps.Clone(l.cited),
		mention: slices.Clone(l.mention)}
}

// Leaf records a number as it was read: a line of the job or the shop, a row
// of a table. Source says which.
func (l *Ledger) Leaf(key, what, unit, source string, v float64) Num {
	if l != nil {
		l.put(key, Entry{What: what, Value: v, Unit: unit, Inputs: []string{}, Source: source, Leaf: true})
	}
	return Num{Key: key, V: v}
}

// Calc computes fn over the inputs and records the outcome under key. formula
// says in words what fn does; source is the standard and clause, the handbook
// and chapter, or "common practice, no source".
func (l *Ledger) Calc(key, what, unit, formula, source string, fn func(in []float64) float64, inputs ...Num) Num {
	in := make([]float64, len(inputs))
	for i, n := range inputs {
		in[i] = n.V
	}
	v := fn(in)
	if l != nil {
		keys := make([]string, len(inputs))
		for i, n := range inputs {
			if n.Key == "" {
				panic(fmt.Sprintf("ledger: input %d of %s has no key", i, key))
			}
			keys[i] = n.Key
		}
		l.put(key, Entry{What: what, Value: v, Unit: unit, Formula: formula, Inputs: keys, Source: source, fn: fn})
	}
	return Num{Key: key, V: v}
}

func (l *Ledger) put(key string, e Entry) {
	if old, ok := l.entries[key]; ok {
		// The same number may be computed again on another path, never to
		// another value.
		if old.Value != e.Value {
			panic(fmt.Sprintf("ledger: %s is both %v and %v", key, old.Value, e.Value))
		}
		return
	}
	l.entries[key] = e
	l.order = append(l.order, key)
	l.Cite(key)
}

// Get returns an entry.
func (l *Ledger) Get(key string) (Entry, bool) {
	if l == nil {
		return Entry{}, false
	}
	e, ok := l.entries[key]
	return e, ok
}

// Keys lists the keys in the order in which they were recorded.
func (l *Ledger) Keys() []string {
	if l == nil {
		return nil
	}
	return append([]string(nil), l.order...)
}

// Number is the short number that paper prints for a key, from 1; 0 where the
// ledger does not know it.
func (l *Ledger) Number(key string) int {
	for i, k := range l.order {
		if k == key {
			return i + 1
		}
	}
	return 0
}

// Entries returns a copy by key, for printing as JSON: values to 9 significant
// digits.
func (l *Ledger) Entries() map[string]Entry {
	out := make(map[string]Entry, len(l.entries))
	for k, e := range l.entries {
		e.Value = finite(dim.Sig9(e.Value))
		out[k] = e
	}
	return out
}

// finite is a figure as JSON can hold it.
func finite(f float64) float64 {
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return 0
	}
	return f
}

// Recompute works every entry out again from the recorded values of its inputs
// and returns the keys whose value does not come out the same, sorted. It is
// how a test knows that the ledger tells the truth.
func (l *Ledger) Recompute() []string {
	var bad []string
	for k, e := range l.entries {
		if e.Leaf {
			continue
		}
		in := make([]float64, len(e.Inputs))
		for i, key := range e.Inputs {
			input, ok := l.entries[key]
			if !ok {
				bad = append(bad, k+" (no entry "+key+")")
				continue
			}
			in[i] = input.Value
		}
		if got := e.fn(in); got != e.Value {
			bad = append(bad, fmt.Sprintf("%s (%v, recomputed %v)", k, e.Value, got))
		}
	}
	sort.Strings(bad)
	return bad
}
