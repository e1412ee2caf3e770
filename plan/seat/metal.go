package seat

import (
	"fmt"

	"rebush/fits/finding"
	"rebush/fits/material"
	"rebush/fits/table"
	"rebush/plan/job"
)

// Casting is what the seats are cut in: the material by the table, and what the
// search needs of it.
type Casting struct {
	Material *material.Material
	Plate    Plate
	said     finding.List
}

// CastingOf reads the material of a job's chassis. Where sources disagree it
// takes, for each question, the figure that is safe for it.
func CastingOf(j *job.Job, metals *material.Registry, rules *table.Rules) (Casting, error) {
	mat, err := metals.Find(j.Chassis.Material)
	if err != nil {
		return Casting{}, err
	}
	c := Casting{Material: mat}
	p := Plate{Name: mat.Name, Casting: mat.Kind.Casting(), Zinc: mat.Kind == material.ZincCasting, YieldKnown: true}
	if p.EHigh, p.Nu, _, err = mat.Elastic(true); err != nil {
		return c, err
	}
	if p.ELow, _, p.Yield, err = mat.Elastic(false); err != nil {
		return c, err
	}
	p.Alpha = least(mat, "expansion")
	switch {
	case p.Casting:
		if err = p.bears(mat, metals, rules); err != nil {
			return c, err
		}
	case mat.NeedsTemper() || p.Yield <= 0:
		p.Yield, p.YieldKnown = rules.V("plate_unknown_yield_mpa"), false
		sayTemper(&c.said, j.Place("chassis"), mat.Name, p.Yield)
	}
	c.Plate = p
	return c, nil
}

// Said is what reading the material gave cause to say.
func (c Casting) Said() finding.List { return c.said }

// bears sets what tension a casting bears, and above which one of zinc creeps.
func (p *Plate) bears(mat *material.Material, metals *material.Registry, rules *table.Rules) error {
	uts, ok := mat.Weakest()
	if !ok {
		return fmt.Errorf("no tensile strength is known for %s: the wall cannot be judged", mat.Name)
	}
	p.Limit = rules.V("casting_stress_share") * uts.Low
	if p.Yield > 0 {
		p.Limit = min(p.Limit, p.Yield)
	}
	if p.Zinc {
		p.Creep = rules.V("zinc_creep_mpa")
		like := creepsLike(metals, mat)
		p.ERelaxed, p.EYears = 1000*least(like, creepModulus), least(like, creepYears)/creepStrain
	}
	return nil
}

// What is published of zinc that creeps.
const (
	creepModulus = "creep_pseudo_modulus_100d"   // GPa
	creepYears   = "creep_stress_0p2pct_5y_room" // MPa
	creepStrain  = 0.002                         // that it makes in 5 years
)

// creepsLike is the zinc whose creep figure stands for this one: its own, else
// that of zinc of which nothing is known, the softest of all that were tried.
func creepsLike(metals *material.Registry, mat *material.Material) *material.Material {
	if _, own := mat.Low(creepModulus); own {
		return mat
	}
	for _, other := range metals.All() {
		if other.Kind == mat.Kind && len(other.Gathers) > 0 {
			return other
		}
	}
	return mat
}

// metalOf gathers what the search needs of a bush's material.
func metalOf(metals *material.Registry, name string) (Metal, error) {
	mat, err := metals.Find(name)
	if err != nil {
		return Metal{}, err
	}
	t := Metal{Name: mat.Name, Porous: mat.Kind == material.PorousBronze, Plastic: mat.Kind == material.Plastic,
		Leaded: mat.Leaded}
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
	t.Alpha = least(mat, "expansion")
	t.PMax, t.VMax, t.PVWarn = least(mat, "p_limit"), least(mat, "v_limit"), least(mat, "pv_limit")
	if v, ok := mat.High("pv_limit"); ok {
		t.PVMax = v.High
	}
	return t, nil
}

// least is the lowest published figure of a property, 0 where there is none.
func least(mat *material.Material, property string) float64 {
	v, _ := mat.Low(property)
	return v.Low
}

// shaftMaterial is what a shaft is made of: steel where it is not known, nil
// where no expansion is known of either.
func shaftMaterial(s *job.Shaft, metals *material.Registry) *material.Material {
	for _, name := range []string{s.Material, "steel"} {
		if name == "" {
			continue
		}
		if mat, err := metals.Find(name); err == nil {
			if _, ok := mat.Low("expansion"); ok {
				return mat
			}
		}
	}
	return nil
}

// inTable says which table row a figure of a material stands in: the highest
// published one, or the lowest.
func inTable(mat *material.Material, property string, high bool) string {
	if mat == nil {
		return "materials:1: none known"
	}
	v, ok := mat.Low(property)
	if high {
		v, ok = mat.High(property)
	}
	if !ok {
		return "materials:1: no figure for " + mat.Name
	}
	return v.Address + ": " + v.Source
}
