package plan

import (
	"fmt"

	"rebush/fits/finding"
	"rebush/fits/material"
	"rebush/fits/say"
	"rebush/plan/seat"
)

// plateOf gathers what the seat search needs of the material that the seats
// are cut in. Where sources disagree it takes, for each question, the figure
// that is safe for it.
func (m *maker) plateOf() (seat.Plate, error) {
	mat, err := m.materials.Find(m.j.Chassis.Material)
	if err != nil {
		return seat.Plate{}, err
	}
	m.chassis = mat
	p := seat.Plate{Name: mat.Name, Casting: mat.Kind.Casting(), Zinc: mat.Kind == material.ZincCasting, YieldKnown: true}
	if p.EHigh, p.Nu, _, err = mat.Elastic(true); err != nil {
		return p, err
	}
	if p.ELow, _, p.Yield, err = mat.Elastic(false); err != nil {
		return p, err
	}
	if v, ok := mat.Low("expansion"); ok {
		p.Alpha = v.Low
	}
	if p.Casting {
		uts, ok := mat.Weakest()
		if !ok {
			return p, fmt.Errorf("no tensile strength is known for %s: the wall cannot be judged", mat.Name)
		}
		p.Limit = m.rules.V("casting_stress_share") * uts.Low
		if p.Yield > 0 {
			p.Limit = min(p.Limit, p.Yield)
		}
		if p.Zinc {
			p.Creep = m.rules.V("zinc_creep_mpa")
			if v, ok := m.creepsLike(mat).Low("creep_pseudo_modulus_100d"); ok {
				p.ERelaxed = v.Low * 1000
			}
		}
		return p, nil
	}
	if mat.NeedsTemper() || p.Yield <= 0 {
		p.Yield, p.YieldKnown = m.rules.V("plate_unknown_yield_mpa"), false
		m.p.Findings.Raise(finding.Caution, "seat/temper", m.j.Place("chassis"),
			say.F("the temper of %s is not said: a yield of %.0f MPa is assumed", mat.Name, p.Yield), "write the temper with the material, for example \"brass sheet, half hard\"").Against(p.Yield, p.Yield, "MPa")
	}
	return p, nil
}

// creepsLike is the zinc whose creep figure stands for this one: its own, else
// that of zinc of which nothing is known, the softest of all that were tried.
func (m *maker) creepsLike(mat *material.Material) *material.Material {
	if _, own := mat.Low("creep_pseudo_modulus_100d"); own {
		return mat
	}
	for _, any := range m.materials.All() {
		if any.Kind == mat.Kind && len(any.Gathers) > 0 {
			return any
		}
	}
	return mat
}

// metalOf gathers what the seat search needs of a bush's material.
func (m *maker) metalOf(name string) (seat.Metal, error) {
	mat, err := m.materials.Find(name)
	if err != nil {
		return seat.Metal{}, err
	}
	t := seat.Metal{Name: mat.Name, Porous: mat.Kind == material.PorousBronze, Plastic: mat.Kind == material.Plastic, Leaded: mat.Leaded}
	if t.EHigh, t.Nu, _, err = mat.Elastic(true); err != nil {
		return t, err
	}
	if t.ELow, _, t.Yield, err = mat.Elastic(false); err != nil {
		return t, err
	}
	t.YieldHi = t.Yield
	if v, ok := mat.High("yield_tension"); ok && !t.Porous {
		t.YieldHi = max(t.YieldHi, v.High)
	}
	if v, ok := mat.Low("expansion"); ok {
		t.Alpha = v.Low
	}
	if v, ok := mat.Low("p_limit"); ok {
		t.PMax = v.Low
	}
	if v, ok := mat.Low("v_limit"); ok {
		t.VMax = v.Low
	}
	if v, ok := mat.Low("pv_limit"); ok {
		t.PVWarn = v.Low
	}
	if v, ok := mat.High("pv_limit"); ok {
		t.PVMax = v.High
	}
	return t, nil
}
