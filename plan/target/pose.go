package target

import (
	"rebush/fits/dim"
	"rebush/fits/ledger"
	"rebush/plan/survey"
)

// pose is a way to stand, with what it hangs on: of the hole as found alone, or
// of the new centre too.
type pose struct {
	of     func(Hole) Stand
	placed bool
}

// The poses.
var (
	asNew   = pose{of: Hole.New}
	asFound = pose{of: Hole.Found}
	after   = pose{of: Hole.After, placed: true}
	lifted  = pose{of: Hole.Lifted, placed: true}
)

// nums are the figures of one hole that a pose is made of.
func (p pose) nums(h Hole, book *ledger.Ledger) []ledger.Num {
	in := h.Survey.Nums(book)
	if p.placed {
		in = append(in, h.page(book).Num("target_mm/0"), h.page(book).Num("target_mm/1"))
	}
	return in
}

// calc records a figure of stands: f is run over the holes as the ledger has
// them, and over more figures beside.
func (p pose) calc(page ledger.Page, k, what, unit, formula, source string, holes []Hole,
	f func(s []Stand, more []float64) float64, more ...ledger.Num) ledger.Num {
	var in []ledger.Num
	for _, h := range holes {
		in = append(in, p.nums(h, page.Book)...)
	}
	n := survey.Held
	if p.placed {
		n += 2
	}
	return page.Calc(k, what, unit, formula, source, func(v []float64) float64 {
		s := make([]Stand, len(holes))
		for i, h := range holes {
			s[i] = p.of(h.with(v[i*n : (i+1)*n]))
		}
		return dim.Near(f(s, v[len(holes)*n:]), 6)
	}, append(in, more...)...)
}
