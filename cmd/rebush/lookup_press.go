package main

import (
	"fmt"

	"rebush/fits/dim"
	"rebush/fits/material"
	"rebush/fits/press"
)

type pressAnswer struct {
	InterferenceUM   *float64   `json:"interference_um"`
	PressureMPa      *float64   `json:"pressure_mpa"`
	PressureHighMPa  *float64   `json:"pressure_high_mpa"` // where the bush flows, else the same
	HoldPressureMPa  *float64   `json:"hold_pressure_mpa"` // with the softest figures
	BushHoopMPa      *float64   `json:"bush_hoop_mpa"`
	HousingHoopMPa   *float64   `json:"housing_hoop_mpa"`
	SeatHoopMPa      *float64   `json:"seat_hoop_mpa"`
	EdgeHoopMPa      *float64   `json:"edge_hoop_mpa"`
	HousingMisesMPa  *float64   `json:"housing_mises_mpa"`
	ClosureUM        *float64   `json:"closure_um"`
	ClosureSpanUM    dim.MinMax `json:"closure_span_um"`
	GrowthUM         *float64   `json:"growth_um"`
	ForceN           *float64   `json:"force_n"`
	TorqueNmm        *float64   `json:"torque_nmm"`
	Friction         *float64   `json:"friction"`
	LooseAtC         *float64   `json:"loose_at_c"`
	WarmC            *float64   `json:"warm_c"`
	WarmInterference *float64   `json:"warm_interference_um"`
	WarmPressureMPa  *float64   `json:"warm_pressure_mpa"`
	BushFlows        bool       `json:"bush_flows"`
	Bush             metalOf    `json:"bush"`
	Housing          metalOf    `json:"housing"`
	Note             string     `json:"note"`

	holdsLess bool // with the softest figures the pressure is another
}

// metalOf says which figures of a metal were used.
type metalOf struct {
	Name     string     `json:"name"`
	EMPa     dim.MinMax `json:"e_mpa"` // softest and stiffest published
	Poisson  *float64   `json:"poisson"`
	YieldMPa *float64   `json:"yield_mpa"`
	Growth   *float64   `json:"expansion_1e6_k"`

	stiff, soft press.Elastic
}

func lookupPress(e *env, o options, words []string) error {
	if err := none(words); err != nil {
		return err
	}
	return ask(e, o, func(b *books) (answer, error) {
		for _, must := range []string{"bush-bore", "bush-od", "length", "interference", "bush", "housing"} {
			if !o.has(must) {
				return nil, &usageError{fmt.Sprintf("--%s is missing; 0 is a solid pin for --bush-bore", must),
					"lookup press"}
			}
		}
		var l [6]dim.Length
		for i, f := range []struct {
			name  string
			above bool
		}{{"bush-bore", false}, {"bush-od", true}, {"housing-od", true}, {"edge", true}, {"length",
			true}, {"interference", false}} {
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
			bush.Growth, housing.Growth = dim.Number(g[0]), dim.Number(g[1])
		}
		seat := press.Seat{Di: l[0].Float(), D: l[1].Float(), L: l[4].Float(), Bush: bush.stiff,
			Housing: housing.stiff, Wall: wallOf(l[1], l[2], l[3])}
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
	a := metalOf{Name: m.Name}
	eHigh, nu, yield, err := m.Elastic(true)
	if err != nil {
		return a, usage("%v", err)
	}
	eLow, _, _, err := m.Elastic(false)
	if err != nil {
		return a, usage("%v", err)
	}
	a.EMPa, a.Poisson = *dim.Numbers(eLow, eHigh), dim.Number(nu)
	a.stiff, a.soft = press.Elastic{E: eHigh, Nu: nu, Yield: yield}, press.Elastic{E: eLow, Nu: nu, Yield: yield}
	if yield > 0 {
		a.YieldMPa = dim.Number(yield)
	}
	if v, ok := m.Low("expansion"); ok {
		a.Growth = dim.Number(v.Low)
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
	a := &pressAnswer{InterferenceUM: dim.Number(u * 1000),
		PressureMPa: dim.Number(st.P), PressureHighMPa: dim.Number(st.PHigh), HoldPressureMPa: dim.Number(hold),
		BushHoopMPa: dim.Number(st.BushHoopBore), HousingHoopMPa: dim.Number(st.HousingHoopMax),
		SeatHoopMPa: dim.Number(st.HoleHoop), EdgeHoopMPa: dim.Number(st.EdgeHoop),
		HousingMisesMPa: dim.Number(st.HousingMises), ClosureUM: dim.Number(st.Closure * 1000),
		ClosureSpanUM: *dim.Numbers(st.ClosureLow*1000, st.ClosureHigh*1000), GrowthUM: dim.Number(st.Growth * 1000),
		ForceN: dim.Number(seat.Force(mu, hold)), TorqueNmm: dim.Number(seat.Torque(mu, hold)),
		Friction:  dim.Number(mu),
		BushFlows: st.Flows, Bush: bush, Housing: housing, holdsLess: hold != st.P}
	switch seat.Wall.(type) {
	case press.Edge:
		a.GrowthUM = nil
	case press.Infinite:
		a.GrowthUM, a.EdgeHoopMPa = nil, nil
	}
	if st.Flows {
		a.Note = "the whole wall of the bush yields: the pressure is the least it can be, and the closure is a span; what springs back is " +
			coarse(1000*st.Spring) + " um of the interference, and temperature works on that. "
	}
	if st.HousingFlows {
		a.Note += "the metal round the seat yields too: it will not hold this press. "
	}
	return a, a.warm(o, seat, st.Spring)
}

// warm is what temperature does to a press of which so much springs back.
func (a *pressAnswer) warm(o options, seat press.Seat, spring float64) error {
	known := a.Bush.Growth != nil && a.Housing.Growth != nil
	var w press.Warm
	if known {
		w = press.Warm{D: seat.D, U20: spring, HousingExp: *a.Housing.Growth, BushExp: *a.Bush.Growth}
		if t, ok := w.LooseAt(); ok {
			a.LooseAtC = dim.Number(t)
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
	a.WarmC, a.WarmInterference, a.WarmPressureMPa = dim.Number(t), dim.Number(at*1000),
		dim.Number(seat.At(max(at, 0)).P)
	return nil
}

func (a *pressAnswer) show(p *page, u dim.Units) {
	say := func(name string, f *float64, unit, more string) {
		if f != nil {
			p.pair(name, "%s %s%s", coarse(*f), unit, more)
		}
	}
	say("pressure in the seat", a.PressureMPa, "MPa", "")
	if a.holdsLess {
		say("  with the softest figures", a.HoldPressureMPa, "MPa", "")
	}
	say("hoop stress in the bush, at its bore", a.BushHoopMPa, "MPa", " (below zero: compression)")
	say("largest tension round the seat", a.HousingHoopMPa, "MPa", "")
	if a.BushFlows {
		p.pair("the bore closes by", "%s to %s um", coarse(*a.ClosureSpanUM.Min), coarse(*a.ClosureSpanUM.Max))
	} else {
		say("the bore closes by", a.ClosureUM, "um", "")
	}
	say("the outside grows by", a.GrowthUM, "um", "")
	say("holds along the axis", a.ForceN, "N", fmt.Sprintf(" at friction %g", *a.Friction))
	say("holds against turning", a.TorqueNmm, "N mm", "")
	if a.LooseAtC != nil {
		p.pair("comes loose", "%s", looseAt(*a.LooseAtC))
	}
	if a.WarmC != nil {
		p.pair(fmt.Sprintf("at %g C", *a.WarmC), "%s um of interference, %s MPa",
			coarse(*a.WarmInterference), coarse(*a.WarmPressureMPa))
	}
	for _, m := range []struct {
		name string
		of   metalOf
	}{{"bush", a.Bush}, {"housing", a.Housing}} {
		s := fmt.Sprintf("%s: E %g MPa", m.of.Name, *m.of.EMPa.Max)
		if *m.of.EMPa.Min != *m.of.EMPa.Max {
			s = fmt.Sprintf("%s: E %g MPa for stress, %g MPa for hold", m.of.Name, *m.of.EMPa.Max, *m.of.EMPa.Min)
		}
		p.pair(m.name, "%s, Poisson %g", s, *m.of.Poisson)
	}
	p.pair("note", "%s", a.Note)
	p.pair("source", "thick cylinders of Lame; off the middle and at an edge Jeffery 1921; rebush lookup material "+
		"NAME for the metals")
}
