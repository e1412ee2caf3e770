package ledger

// Page is the part of a ledger whose keys begin alike: "seats/front axle.left/".
// The zero Page, like a nil ledger, computes and records nothing.
type Page struct {
	Book   *Ledger
	prefix string
}

// Page opens the part of a ledger under a prefix, without its last stroke.
func (l *Ledger) Page(prefix string) Page { return Page{l, prefix + "/"} }

// Key is the whole key of a leaf of this page.
func (p Page) Key(k string) string { return p.prefix + k }

// Leaf records a figure as it was read; see Ledger.Leaf.
func (p Page) Leaf(k, what, unit, source string, v float64) Num {
	return p.Book.Leaf(p.Key(k), what, unit, source, v)
}

// Calc records a figure that was worked out; see Ledger.Calc.
func (p Page) Calc(k, what, unit, formula, source string, fn func(in []float64) float64, inputs ...Num) Num {
	return p.Book.Calc(p.Key(k), what, unit, formula, source, fn, inputs...)
}

// Calc1 to Calc5 record a figure by the very function that decides with it.
func (p Page) Calc1(k, what, unit, formula, source string, f func(a float64) float64, a Num) Num {
	return p.Calc(k, what, unit, formula, source, func(in []float64) float64 { return f(in[0]) }, a)
}

// Calc2 is Calc1 of two figures.
func (p Page) Calc2(k, what, unit, formula, source string, f func(a, b float64) float64, a, b Num) Num {
	return p.Calc(k, what, unit, formula, source, func(in []float64) float64 { return f(in[0], in[1]) }, a, b)
}

// Calc3 is Calc1 of three figures.
func (p Page) Calc3(k, what, unit, formula, source string, f func(a, b, c float64) float64, a, b, c Num) Num {
	return p.Calc(k, what, unit, formula, source, func(in []float64) float64 { return f(in[0], in[1], in[2]) }, a, b, c)
}

// Calc4 is Calc1 of four figures.
func (p Page) Calc4(k, what, unit, formula, source string, f func(a, b, c, d float64) float64, a, b, c, d Num) Num {
	return p.Calc(k, what, unit, formula, source, func(in []float64) float64 { return f(in[0], in[1], in[2], in[3]) }, a, b, c, d)
}

// Calc5 is Calc1 of five figures.
func (p Page) Calc5(k, what, unit, formula, source string, f func(a, b, c, d, e float64) float64, a, b, c, d, e Num) Num {
	return p.Calc(k, what, unit, formula, source, func(in []float64) float64 { return f(in[0], in[1], in[2], in[3], in[4]) }, a, b, c, d, e)
}

// Num is an entry of this page as an input; see Ledger.Num.
func (p Page) Num(k string) Num { return p.Book.Num(p.Key(k)) }

// Has says whether the page holds an entry.
func (p Page) Has(k string) bool { _, ok := p.Book.Get(p.Key(k)); return ok }

// Num is an entry as an input of another. One that was never recorded is a
// fault of the program. A nil ledger has none: its Num is 0.
func (l *Ledger) Num(key string) Num {
	if l == nil {
		return Num{Key: key}
	}
	e, ok := l.entries[key]
	if !ok {
		panic("ledger: no entry " + key)
	}
	return Num{Key: key, V: e.Value}
}

// Cite says that a default decided something without being a figure of any
// formula. Cited tells all that were cited or recorded under a prefix, in the
// order of their first mention, without the prefix.
func (l *Ledger) Cite(key string) {
	if l == nil || l.cited[key] {
		return
	}
	if l.cited == nil {
		l.cited = map[string]bool{}
	}
	l.cited[key] = true
	l.mention = append(l.mention, key)
}

// Cited lists what was mentioned under a prefix.
func (l *Ledger) Cited(prefix string) []string {
	if l == nil {
		return nil
	}
	var out []string
	for _, k := range l.mention {
		if len(k) > len(prefix) && k[:len(prefix)] == prefix {
			out = append(out, k[len(prefix):])
		}
	}
	return out
}
