package plan

import "rebush/fits/dim"

// The ways to print a figure, as the rest of the plan names them.
type (
	MM           = dim.Gauged
	MMRange      = dim.MMRange
	MinMax       = dim.MinMax
	XY           = dim.XY
	FoundAfter   = dim.FoundAfter
	FoundAfterMM = dim.FoundAfterMM
)
