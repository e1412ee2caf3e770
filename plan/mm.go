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

func sig9(f float64) float64          { return dim.Sig9(f) }
func mmAt(f float64, places int32) MM { return dim.Places(f, places) }
func mm3(f float64) MM                { return dim.Size(f) }
func mm4(f float64) MM                { return dim.Place(f) }
func mmUp(f float64) MM               { return dim.LimitUp(f) }
func mmDown(f float64) MM             { return dim.LimitDown(f) }
func xy(p [2]float64) *XY             { return dim.PlaceXY(p) }
func num(f float64) *float64          { return dim.Number(f) }
func minMax(lo, hi float64) *MinMax   { return dim.Numbers(lo, hi) }
