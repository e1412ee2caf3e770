package survey

import (
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/table"
)

// Source is one way of finding an old centre, made ready: the figures that were
// read for it, and the function that makes evidence of them. The survey decides
// by Find, and the ledger explains by the same Find over the same figures.
type Source struct {
	What    string // what was measured, in words of the bench
	By      string // the instrument that its doubt hangs on, or ""
	Figures []Figure
	Find    func(in []float64) (Answer, error) // nil where something is lacking
	Said    finding.List                       // what was noticed as the figures were read
}

// Answer is what a source tells: evidence, and of probed points what a drawing
// shows of them.
type Answer struct {
	Evidence
	Points    [][2]float64
	Residuals []float64
	LeftOut   []int
}

// ask works the source out.
func (s *Source) ask() (Answer, error) {
	in := make([]float64, len(s.Figures))
	for i, f := range s.Figures {
		in[i] = f.V
	}
	return s.Find(in)
}

// add puts a figure among those of a source and returns its place there.
func (s *Source) add(f Figure) int {
	s.Figures = append(s.Figures, f)
	return len(s.Figures) - 1
}

// Figure is one figure as a source takes it, with what the ledger says of it.
// It was read, or it is the outcome of Of over From.
type Figure struct {
	Key, What, Unit string
	Source          string // line, row or handbook
	V               float64

	Formula string // in words, of Of
	From    []Figure
	Of      func(in []float64) float64
}

// num records a figure and returns it as an input.
func (f Figure) num(book *ledger.Ledger) ledger.Num {
	if f.Of != nil {
		return book.Calc(f.Key, f.What, f.Unit, f.Formula, f.Source, f.Of, nums(book, f.From)...)
	}
	return book.Leaf(f.Key, f.What, f.Unit, f.Source, f.V)
}

func nums(book *ledger.Ledger, fs []Figure) []ledger.Num {
	out := make([]ledger.Num, len(fs))
	for i, f := range fs {
		out[i] = f.num(book)
	}
	return out
}

// rule is a default as a figure.
func rule(r table.Rule) Figure {
	var f Figure
	f.Key, f.What, f.Unit, f.Source, f.V = r.Leaf()
	return f
}

// computed is a figure that others make.
func computed(f Figure, formula string, of func(in []float64) float64, from ...Figure) Figure {
	in := make([]float64, len(from))
	for i, g := range from {
		in[i] = g.V
	}
	f.Formula, f.Of, f.From, f.V = formula, of, from, of(in)
	return f
}
