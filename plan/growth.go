package plan

import (
	"fmt"
	"math"

	"rebush/fits/finding"
)

// growth compares distances of original centres with a sound sister's. It is
// reported, never cured by moving holes.
func (m *maker) growth() {
	w := m.j.Chassis.Wheelbase
	if w == nil || !w.Sister.Given() {
		return
	}
	a, b := m.shaftCentre(w.Between[0]), m.shaftCentre(w.Between[1])
	if a == nil || b == nil {
		return
	}
	now, by := math.Hypot(a[0]-b[0], a[1]-b[1]), "between old centres"
	sister := w.Sister.Float()
	if f := w.Found.Float(); w.Found.Given() && math.Abs(f-sister) > math.Abs(now-sister) {
		// As measured over the wheels or axles: whichever says more is heard.
		now, by = f, "as measured"
	}
	percent := sig9(100 * (now - sister) / sister)
	level := finding.Level("")
	want := 0.0
	for _, step := range []struct {
		rule  string
		level finding.Level
	}{{"growth_note_percent", finding.Note}, {"growth_caution_percent", finding.Caution}, {"growth_stop_percent", finding.Stop}} {
		if limit := m.rules.V(step.rule); math.Abs(percent) > limit+1e-9 {
			level, want = step.level, limit
			m.used(step.rule)
		}
	}
	if level == "" {
		return
	}
	fix := "a swollen casting is not cured by moving holes; look for cracks, and measure the sister again"
	if percent < 0 {
		// No casting shrinks: one of the two was measured wrong.
		fix = "a casting does not shrink: measure this wheelbase and the sister's again"
		if level == finding.Stop {
			level, want = finding.Caution, m.rules.V("growth_caution_percent")
		}
	}
	m.grown = level == finding.Stop
	pos := m.j.At("chassis/wheelbase")
	m.p.Findings.Add(finding.Finding{Level: level, Rule: "growth", Where: "chassis", Have: &percent, Want: &want, Unit: "%",
		Text: fmt.Sprintf("the wheelbase is %.3f mm %s, a sound sister has %.3f: %+.2f %%", now, by, sister, percent),
		Fix:  fix, File: pos.File, Line: pos.Line, Column: pos.Column})
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
