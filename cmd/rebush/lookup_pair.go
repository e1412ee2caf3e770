package main

import (
	"rebush/fits/dim"
	"rebush/plan/mesh"
)

// meshAnswer is what a spur pair and a worm drive have in common.
type meshAnswer struct {
	CentreMM         dim.Gauged `json:"centre_mm"`
	StandardCentreMM dim.Gauged `json:"standard_centre_mm"`
	TightCentreMM    dim.Gauged `json:"tight_centre_mm"`
	OperatingAngle   *float64   `json:"operating_angle_deg"`
	BacklashMM       dim.Gauged `json:"backlash_mm"`
	NormalBacklashMM dim.Gauged `json:"normal_backlash_mm"`
	RadialBacklashMM dim.Gauged `json:"radial_backlash_mm"`
	ContactRatio     *float64   `json:"contact_ratio"` // limited to the base tangent points
	TipClearanceMM   dim.Gauged `json:"tip_clearance_mm"`
	Note             string     `json:"note"`
}

// meshAt is the centre distance that was asked about: as given, as the backlash
// or the contact ratio wants it, or else the standard one.
func (o options) meshAt(p mesh.Pair) (at float64, note string, err error) {
	n := 0
	for _, name := range []string{"centre", "backlash", "contact"} {
		if o.has(name) {
			n++
		}
	}
	switch {
	case n > 1:
		return 0, "", usage("give one of --centre, --backlash and --contact: each of them settles the centre distance")
	case o.has("centre"):
		c, err := o.lengthFrom("centre", 0, true)
		return c.Float(), "", err
	case o.has("backlash"):
		j, err := o.lengthFrom("backlash", 0, false)
		if err != nil {
			return 0, "", err
		}
		if at, err = p.CentreForBacklash(j.Float()); err != nil {
			return 0, "", usage("--backlash: %v", err)
		}
		return at, "this is the centre distance for the backlash that was asked for. ", nil
	case o.has("contact"):
		eps, err := o.number("contact", 0)
		if err != nil {
			return 0, "", err
		}
		if eps < 0.1 {
			return 0, "", usage("--contact: %s is no contact ratio that teeth could run with; 1.2 is usually the "+
				"least", o.text["contact"])
		}
		if at, err = p.CentreForContactRatio(eps); err != nil {
			return 0, "", usage("--contact: %v", err)
		}
		return at, "this is the centre distance for the contact ratio that was asked for; farther apart it is less. ",
			nil
	}
	return p.Standard(), "no centre distance was given: this is the standard one. ", nil
}

// fill works out what both kinds of pair have in common and returns the centre
// distance.
func (a *meshAnswer) fill(o options, p mesh.Pair) (float64, error) {
	at, note, err := o.meshAt(p)
	if err != nil {
		return 0, err
	}
	a.Note = note
	jt, err := p.Backlash(at)
	if err != nil {
		return 0, usage("%v", err)
	}
	jn, err := p.Normal(at)
	if err != nil {
		return 0, usage("%v", err)
	}
	angle, err := p.OperatingAngle(at)
	if err != nil {
		return 0, usage("%v", err)
	}
	eps, err := p.ContactRatio(at)
	if err != nil {
		return 0, usage("%v", err)
	}
	t1, t2 := p.TipClearance(at)
	a.CentreMM, a.StandardCentreMM, a.TightCentreMM = gauged(at), gauged(p.Standard()), gauged(p.Tight())
	a.OperatingAngle, a.ContactRatio = dim.Number(angle), dim.Number(eps)
	// Teeth that would overlap have no backlash: by how much, the tight distance tells.
	a.BacklashMM, a.NormalBacklashMM = gauged(max(0, jt)), gauged(max(0, jn))
	a.RadialBacklashMM = gauged(max(0, p.Radial(at)))
	a.TipClearanceMM = gauged(min(t1, t2))
	if jn < 0 {
		a.Note += "the teeth would have to overlap: it does not turn at this distance. "
	}
	if min(t1, t2) < 0 {
		a.Note += "a tip digs into a root. "
	}
	if eps < 1 {
		a.Note += "below a contact ratio of 1 there are moments without a tooth in contact. "
	}
	return at, nil
}

func (a *meshAnswer) lines(p *page, u dim.Units) {
	mm := func(g dim.Gauged) string { return g.Length().Format(u) }
	p.pair("centre distance", "%s", mm(a.CentreMM))
	p.pair("standard centre distance", "%s", mm(a.StandardCentreMM))
	p.pair("tight at", "%s", mm(a.TightCentreMM))
	p.figures("working pressure angle", "%.3f deg", a.OperatingAngle)
	p.pair("backlash along the pitch circle", "%s", mm(a.BacklashMM))
	p.pair("backlash between the flanks", "%s", mm(a.NormalBacklashMM))
	p.figures("contact ratio", "%.3f", a.ContactRatio)
	p.pair("least tip clearance", "%s", mm(a.TipClearanceMM))
}
