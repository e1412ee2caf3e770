package ledger

import "slices"

// LastOf remembers the last answer of a function, so that several figures of
// one answer cost one call.
func LastOf[T any](f func([]float64) T) func([]float64) T {
	var (
		in   []float64
		out  T
		have bool
	)
	return func(v []float64) T {
		if have && slices.Equal(in, v) {
			return out
		}
		in, have = slices.Clone(v), true
		out = f(v)
		return out
	}
}
