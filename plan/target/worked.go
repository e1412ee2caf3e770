package target

import (
	"fmt"

	"rebush/fits/ledger"
)

// madeLine is where the sizes as made of a hole stand in the job.
func madeLine(h Hole, figure string) string { return "made/" + h.Name() + "/" + figure }

// origin are the figures of a hole that decide where it goes: its old centre,
// of a shaft that is left in it all; of a seat that this job has made and that
// keeps its place, the place.
func (h Hole) origin(book *ledger.Ledger, source func(path string) string) []ledger.Num {
	if !h.worked() {
		return h.Survey.Nums(book)[:h.asked()]
	}
	var out []ledger.Num
	for i, axis := range []string{"x", "y"} {
		out = append(out, book.Leaf(fmt.Sprintf("made/%s/centre_mm/%d", h.Name(), i), axis+" of the seat as made", "mm",
			source(madeLine(h, "centre")), h.Survey.Bore.Now.At[i]))
	}
	return out
}

// cov is the covariance of what origin tells, mm^2.
func (h Hole) cov() Cov {
	if h.worked() {
		return Round(h.Survey.Bore.Now.UAtMM)
	}
	return h.Survey.Worn.Cov
}

// cross is the covariance of the errors of two old centres of a shaft, mm^2: none
// where this job has made one of them and it keeps its place.
func (h Hole) cross(other Hole) Cov {
	if h.worked() || other.worked() {
		return Cov{}
	}
	return h.Survey.Cross
}
