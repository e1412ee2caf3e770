package ledger_test

import (
	"testing"

	"rebush/fits/ledger"
)

// The same inputs are worked out once, others anew; what the caller does to his
// slice afterwards does not reach what is remembered.
func TestLastOf(t *testing.T) {
	calls := 0
	twice := ledger.LastOf(func(in []float64) float64 { calls++; return 2 * in[0] })
	in := []float64{1}
	for i, step := range []struct {
		v, want float64
		calls   int
	}{{1, 2, 1}, {1, 2, 1}, {3, 6, 2}, {1, 2, 3}} {
		in[0] = step.v
		if got := twice(in); got != step.want || calls != step.calls {
			t.Errorf("step %d: %v after %d calls, want %v after %d", i, got, calls, step.want, step.calls)
		}
	}
}
