package inspect

import (
	"fmt"
	"math"
)

// Eccentric is a bush that puts a bore back on its target from a seat that
// stands beside it.
type Eccentric struct {
	OffsetMM    float64 // of bore to outside
	ClockDeg    float64 // the way of the thick-to-thin offset: from the seat's centre to the bore's
	IndicatorMM float64 // what an indicator reads when it is set in four jaws: twice the offset
	PackingMM   float64 // under one of three jaws
	LeastWallMM float64
	PerDegreeMM float64 // sideways error of place per degree of wrong clocking
}

// PutBack works out the bush for a seat at made whose bore belongs at target,
// turned from bar of diameter barMM, with outside odMM and bore boreMM.
// Errors: an offset that leaves no wall, or more than three jaws can pack.
//
// Source: METHODS.md 2 for wall OD/2 - e - ID/2 and reading 2e, METHODS.md 3
// for the packing 1.5 e + sqrt(D^2/4 - 0.75 e^2) - D/2.
func PutBack(made, target [2]float64, odMM, boreMM, barMM float64) (Eccentric, error) {
	for _, v := range []float64{made[0], made[1], target[0], target[1], odMM, boreMM, barMM} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return Eccentric{}, fmt.Errorf("inspect: eccentric bush from a figure that is none")
		}
	}
	dx, dy := target[0]-made[0], target[1]-made[1]
	e := Eccentric{OffsetMM: math.Hypot(dx, dy)}
	e.ClockDeg = math.Mod(math.Atan2(dy, dx)*180/math.Pi+360, 360)
	e.IndicatorMM = 2 * e.OffsetMM
	e.LeastWallMM = odMM/2 - e.OffsetMM - boreMM/2
	e.PerDegreeMM = 2 * e.OffsetMM * math.Sin(math.Pi/360)
	if e.LeastWallMM <= 0 {
		return Eccentric{}, fmt.Errorf("an offset of %.3f mm leaves no wall between %.3f outside and a bore of %.3f",
			e.OffsetMM, odMM, boreMM)
	}
	if e.PackingMM = Packing(e.OffsetMM, barMM); math.IsNaN(e.PackingMM) {
		return Eccentric{}, fmt.Errorf("bar of %.3f mm cannot be packed to an offset of %.3f", barMM, e.OffsetMM)
	}
	return e, nil
}

// Packing is what goes under one of three jaws to move a bar off its middle, mm:
// 1.5 e + sqrt(D^2/4 - 0.75 e^2) - D/2. NaN where three jaws cannot.
//
// Source: METHODS.md 3.
func Packing(offsetMM, barMM float64) float64 {
	root := barMM*barMM/4 - 0.75*offsetMM*offsetMM
	if barMM <= 0 || root < 0 {
		return math.NaN()
	}
	return 1.5*offsetMM + math.Sqrt(root) - barMM/2
}
