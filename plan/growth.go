package plan

import (
	"math"

	"rebush/fits/finding"
	"rebush/fits/say"
)

// grown is one reading of a wheelbase set against a sound sister's.
type grown struct {
	mm, percent, limit float64
	level              finding.Level
	rule, by           string
}

// growth compares a distance of shafts with a sound sister's, by the old
// centres and as it was measured; what says more is heard. It is reported,
// never cured by moving holes.
func (m *maker) growth() {
	w := m.j.Chassis.Wheelbase
	if w == nil || !w.Sister.Given() {
		return
	}
	sister := w.Sister.Float()
	var views []grown
	a, b := m.shaftCentre(w.Between[0]), m.shaftCentre(w.Between[1])
	if a != nil && b != nil {
		views = append(views, m.grownBy(math.Hypot(a[0]-b[0], a[1]-b[1]), sister, "between old centres"))
	}
	if w.Found.Given() {
		views = append(views, m.grownBy(w.Found.Float(), sister, "as measured"))
	}
	var worst grown
	rank := map[finding.Level]int{"": 0, finding.Note: 1, finding.Caution: 2, finding.Stop: 3}
	for _, v := range views {
		if rank[v.level] > rank[worst.level] {
			worst = v
		}
	}
	if worst.level == "" {
		return
	}
	m.used(worst.rule)
	m.grown = worst.level == finding.Stop
	text := say.F("the wheelbase is %v %s, a sound sister has %v: %+.2f %%", say.MM(worst.mm, 3), worst.by, say.MM(sister, 3).Bare(), worst.percent)
	fix := say.Text("a swollen casting is not cured by moving holes; look for cracks, and measure the sister again")
	if worst.percent < 0 {
		// No casting shrinks: one of the two was measured wrong.
		fix = "a casting does not shrink: measure this wheelbase and the sister's again"
	}
	if len(views) == 2 {
		other := views[0]
		if other.by == worst.by {
			other = views[1]
		}
		if math.Abs(other.mm-worst.mm) > sister*m.rules.V("growth_note_percent")/100 {
			text += say.F("; %s it is %v, and both cannot be right", other.by, say.MM(other.mm, 3))
			fix = "measure the wheelbase and the middles of the holes again before anything is cut"
		}
	}
	m.p.Findings.Raise(worst.level, "survey/growth", m.j.PlaceAt("chassis", "chassis/wheelbase"), text, fix).Against(worst.percent, worst.limit, "%")
}

// grownBy says how grave one reading is. No casting shrinks, so what comes out
// short is at most a caution.
func (m *maker) grownBy(mm, sister float64, by string) grown {
	g := grown{mm: mm, by: by, percent: sig9(100 * (mm - sister) / sister)}
	for _, step := range []struct {
		rule  string
		level finding.Level
	}{{"growth_note_percent", finding.Note}, {"growth_caution_percent", finding.Caution}, {"growth_stop_percent", finding.Stop}} {
		if g.percent < 0 && step.level == finding.Stop {
			break
		}
		if limit := m.rules.V(step.rule); math.Abs(g.percent) > limit+1e-9 {
			g.level, g.limit, g.rule = step.level, limit, step.rule
		}
	}
	return g
}

// shaftCentre is the mean of a shaft's original centres.
func (m *maker) shaftCentre(name string) *[2]float64 {
	var sum [2]float64
	n := 0.0
	for _, b := range m.on(name) {
		if b.known {
			sum[0] += b.worn.O[0]
			sum[1] += b.worn.O[1]
			n++
		}
	}
	if n == 0 {
		return nil
	}
	return &[2]float64{sum[0] / n, sum[1] / n}
}
