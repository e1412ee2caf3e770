package plan

import (
	"math"

	"rebush/fits/finding"
	"rebush/fits/say"
)

// runsOut says where gears run out so much that no care with the bores helps:
// half the run-out, by which the teeth come nearer once a turn, is more than
// the standard uncertainty of the centre distance by clamping, holes, old
// centres and the place of the mate.
func (m *maker) runsOut(x *gear, shafts []shaftState) {
	n := math.Max(1, float64(len(shafts[x.shaft].bores)))
	survey := 0.0
	for _, b := range shafts[x.shaft].bores {
		survey = math.Max(survey, b.u)
	}
	u := math.Hypot(math.Hypot(m.setupU, m.holeU/math.Sqrt(n)), math.Hypot(survey, x.uMate))
	half := x.tir / 2
	if half <= u+1e-9 {
		return
	}
	m.sayGear(finding.Note, "mesh/gear runs out", x.g,
		say.F("the gears run out %v, so the teeth come %v nearer once a turn: that is more than the doubt of these bores (%v)", say.MM(x.tir, 2), say.MM(half, 2), say.MM(u, 3)), "true or change the gear first")
}
