package main

import (
	"fmt"

	"rebush/fits/dim"
	"rebush/fits/material"
	"rebush/fits/press"
)

type pressAnswer struct {
	InterferenceUM   figure  `json:"interference_um"`
	PressureMPa      figure  `json:"pressure_mpa"`
	PressureHighMPa  figure  `json:"pressure_high_mpa"` // where the bush flows, else the same
	HoldPressureMPa  figure  `json:"hold_pressure_mpa"` // with the softest figures
	BushHoopMPa      figure  `json:"bush_hoop_mpa"`
	HousingHoopMPa   figure  `json:"housing_hoop_mpa"`
	SeatHoopMPa      figure  `json:"seat_hoop_mpa"`
	EdgeHoopMPa      figure  `json:"edge_hoop_mpa"`
	HousingMisesMPa  figure  `json:"housing_mises_mpa"`
	ClosureUM        figure  `json:"closure_um"`
	ClosureSpanUM    span    `json:"closure_span_um"`
	GrowthUM         figure  `json:"growth_um"`
	ForceN           figure  `json:"force_n"`
	TorqueNmm        figure  `json:"torque_nmm"`
	Friction         figure  `json:"friction"`
	LooseAtC         figure  `json:"loose_at_c"`
	WarmC            figure  `json:"warm_c"`
	WarmInterference figure  `json:"warm_interference_um"`
	WarmPressureMPa  figure  `json:"warm_pressure_mpa"`
	BushFlows        bool    `json:"bush_flows"`
	Bush             metalOf `json:"bush"`
	Housing          metalOf `json:"housing"`
	Note             string  `json:"note"`
}

// metalOf says which figures of a metal were used.
type metalOf struct {
	Name     string `json:"name"`
	EMPa     span   `json:"e_mpa"` // softest and stiffest published
	Poisson  figure `json:"poisson"`
	YieldMPa figure `json:"yield_mpa"`
	Growth   figure `json:"expansion_1e6_k"`

	stiff, soft press.Elastic
}

func lookupPress(e *env, o options, words []string) error {
	if err := none(words); err != nil {
		return err
	}
	return ask(e, o, func(b *books) (answer, error) {
		for _, must := range []string{"bush-bore", "bush-od", "length", "interference", "bush", "housing"} {
			if !o.has(must) {
				return nil, &usageError{fmt.Sprintf("--%s is missing; 0 is a solid pin for --bush-bore", must), "lookup press"}
			}
		}
		var l [6]dim.Length
		for i, f := range []struct {
			name  string
			above bool
		}{{"bush-bore", false}, {"bush-od", true}, {"housing-od", true}, {"edge", true}, {"length", true}, {"interference", false}} {
			var err error
			if l[i], err = o.lengthFrom(f.name, 0, f.above); err != nil {
				return nil, err
			}
		}
		reg, err := b.materials()
		if err != nil {
			return nil, err
		}
		bush, err := metal(reg, o.text["bush"])
		if err != nil {
			return nil, err
		}
		housing, err := metal(reg, o.text["housing"])
		if err != nil {
			return nil, err
		}
		if g, err := o.numbers("expansion"); err != nil {
			return nil, err
		} else if g != nil {
			if len(g) != 2 {
				return nil, usage("--expansion wants two figures, of the bush and of the housing: 18,27.4")
			}
			bush.Growth, housing.Growth = figure(g[0]), figure(g[1])
		}
		seat := press.Seat{Di: l[0].Float(), D: l[1].Float(), L: l[4].Float(), Bush: bush.stiff, Housing: housing.stiff, Wall: wallOf(l[1], l[2], l[3])}
		return pressed(b, o, seat, l[5].Float(), bush, housing)
	})
}

// wallOf is the metal round the seat as the options describe it.
func wallOf(od, housing, edge dim.Length) press.Wall {
	switch {
	case housing.Given() && edge.Given():
		return press.Boss{OD: housing.Float(), Ecc: housing.Sub(od).Half().Sub(edge).Float()}
	case housing.Given():
		return press.Ring{OD: housing.Float()}
	case edge.Given():
		return press.Edge{Ligament: edge.Float()}
	}
	return press.Infinite{}
}

func metal(reg *material.Registry, text string) (metalOf, error) {
	m, err := reg.FindOrInline(text)
	if err != nil {
		return metalOf{}, usage("%v", err)
	}
	a := metalOf{Name: m.Name, YieldMPa: absent, Growth: absent}
	eHigh, nu, yield, err := m.Elastic(true)
	if err != nil {
		return a, usage("%v", err)
	}
	eLow, _, _, err := m.Elastic(false)
	if err != nil {
		return a, usage("%v", err)
	}
	a.EMPa, a.Poisson = span{figure(eLow), figure(eHigh)}, figure(nu)
	a.stiff, a.soft = press.Elastic{E: eHigh, Nu: nu, Yield: yield}, press.Elastic{E: eLow, Nu: nu, Yield: yield}
	if yield > 0 {
		a.YieldMPa = figure(yield)
	}
	if v, ok := m.Low("expansion"); ok {
		a.Growth = figure(v.Low)
	}
	return a, nil
}

func pressed(b *books, o options, seat press.Seat, u float64, bush, housing metalOf) (answer, error) {
	if err := seat.Validate(); err != nil {
		return nil, usage("%v", err)
	}
	if err := seat.CheckInterference(u); err != nil {
		return nil, usage("%v", err)
	}
	low, high := b.rules.Pair("friction")
	mu, err := o.number("friction", low)
	if err != nil {
		return nil, err
	}
	if mu < 0 || mu > 2 {
		return nil, usage("--friction: %g; between metals it lies between %g and %g", mu, low, high)
	}
	st := seat.At(u)
	soft := seat
	soft.Bush, soft.Housing = bush.soft, housing.soft
	hold := soft.At(u).P
	a := &pressAnswer{InterferenceUM: figure(u * 1000), PressureMPa: figure(st.P), PressureHighMPa: figure(st.PHigh), HoldPressureMPa: figure(hold),
		BushHoopMPa: figure(st.BushHoopBore), HousingHoopMPa: figure(st.HousingHoopMax), SeatHoopMPa: figure(st.HoleHoop), EdgeHoopMPa: figure(st.EdgeHoop),
		HousingMisesMPa: figure(st.HousingMises), ClosureUM: figure(st.Closure * 1000), ClosureSpanUM: span{figure(st.ClosureLow * 1000), figure(st.ClosureHigh * 1000)},
		GrowthUM: figure(st.Growth * 1000), ForceN: figure(seat.Force(mu, hold)), TorqueNmm: figure(seat.Torque(mu, hold)), Friction: figure(mu),
		LooseAtC: absent, WarmC: absent, WarmInterference: absent, WarmPressureMPa: absent, BushFlows: st.Flows, Bush: bush, Housing: housing}
	switch seat.Wall.(type) {
	case press.Edge:
		a.GrowthUM = absent
	case press.Infinite:
		a.GrowthUM, a.EdgeHoopMPa = absent, absent
	}
	if st.Flows {
		a.Note = "the whole wall of the bush yields: the pressure is the least it can be, and the closure is a span. "
	}
	if st.HousingFlows {
		a.Note += "the metal round the seat yields too: it will not hold this press. "
	}
	return a, a.warm(o, seat, u)
}

func (a *pressAnswer) warm(o options, seat press.Seat, u float64) error {
	known := a.Bush.Growth.given() && a.Housing.Growth.given()
	w := press.Warm{D: seat.D, U20: u, HousingExp: float64(a.Housing.Growth), BushExp: float64(a.Bush.Growth)}
	if known {
		if t, ok := w.LooseAt(); ok {
			a.LooseAtC = figure(t)
		}
	}
	if !o.has("warm") {
		return nil
	}
	t, err := o.number("warm", 20)
	switch {
	case err != nil:
		return err
	case t < -273 || t > 1000:
		return usage("--warm: %g C is no temperature for a truck", t)
	case !known:
		return usage("--warm wants to know how the metals grow: name them, or give --expansion BUSH,HOUSING in 1e-6/K")
	}
	at := w.At(t)
	a.WarmC, a.WarmInterference, a.WarmPressureMPa = figure(t), figure(at*1000), figure(seat.At(max(at, 0)).P)
	return nil
}

func (a *pressAnswer) show(p *page, u dim.Units) {
	say := func(name string, f figure, unit, more string) {
		if f.given() {
			p.pair(name, "%s %s%s", coarse(float64(f)), unit, more)
		}
	}
	say("pressure in the seat", a.PressureMPa, "MPa", "")
	if a.HoldPressureMPa != a.PressureMPa {
		say("  with the softest figures", a.HoldPressureMPa, "MPa", "")
	}
	say("hoop stress in the bush, at its bore", a.BushHoopMPa, "MPa", " (below zero: compression)")
	say("largest tension round the seat", a.HousingHoopMPa, "MPa", "")
	if a.BushFlows {
		p.pair("the bore closes by", "%s to %s um", coarse(float64(a.ClosureSpanUM.Min)), coarse(float64(a.ClosureSpanUM.Max)))
	} else {
		say("the bore closes by", a.ClosureUM, "um", "")
	}
	say("the outside grows by", a.GrowthUM, "um", "")
	say("holds along the axis", a.ForceN, "N", fmt.Sprintf(" at friction %g", float64(a.Friction)))
	say("holds against turning", a.TorqueNmm, "N mm", "")
	if a.LooseAtC.given() {
		p.pair("comes loose", "%s", looseAt(float64(a.LooseAtC)))
	}
	if a.WarmC.given() {
		p.pair(fmt.Sprintf("at %g C", float64(a.WarmC)), "%s um of interference, %s MPa", coarse(float64(a.WarmInterference)), coarse(float64(a.WarmPressureMPa)))
	}
	for _, m := range []struct {
		name string
		of   metalOf
	}{{"bush", a.Bush}, {"housing", a.Housing}} {
		s := fmt.Sprintf("%s: E %g MPa", m.of.Name, float64(m.of.EMPa.Max))
		if m.of.EMPa.Min != m.of.EMPa.Max {
			s = fmt.Sprintf("%s: E %g MPa for stress, %g MPa for hold", m.of.Name, float64(m.of.EMPa.Max), float64(m.of.EMPa.Min))
		}
		p.pair(m.name, "%s, Poisson %g", s, float64(m.of.Poisson))
	}
	p.pair("note", "%s", a.Note)
	p.pair("source", "thick cylinders of Lame; off the middle and at an edge Jeffery 1921; rebush lookup material NAME for the metals")
}
