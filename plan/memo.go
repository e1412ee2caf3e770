package plan

import "rebush/fits/ledger"

func lastOf[T any](f func([]float64) T) func([]float64) T { return ledger.LastOf(f) }
