package sheets

import (
	"math"

	"rebush/plan"
)

// moveOf is the move from the old centre in figures, or in words where there is
// none.
func moveOf(u units, t plan.Target) []string {
	m := t.FromOriginalMM
	if m == nil {
		return nil
	}
	least := 0.0005 // what the figures of the paper show
	if u == "in" {
		least = 0.00005 * 25.4
	}
	none := func(m plan.MM) bool { return m.Given() && math.Abs(m.Float()) < least }
	if none(m[0]) && none(m[1]) {
		return []string{"stays"}
	}
	return u.at(m, true)
}

// dialled is where a bore goes as its operations dial it, so that all pages
// have one figure; the target itself where nothing is dialled.
func dialled(pl *plan.Plan, t plan.Target) *plan.XY {
	if t.TargetMM == nil {
		return nil
	}
	for _, op := range pl.Operations {
		if op.Bore == t.Bore && op.DialMM != nil && near(op.DialMM[0], t.TargetMM[0]) && near(op.DialMM[1], t.TargetMM[1]) {
			return op.DialMM
		}
	}
	return t.TargetMM
}

// near says whether two figures are one to the last place that paper prints.
func near(a, b plan.MM) bool { return math.Abs(a.Float()-b.Float()) < 0.00101 }
