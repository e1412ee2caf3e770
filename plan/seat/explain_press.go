package seat

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/ledger"
	"rebush/fits/press"
)

const (
	lame       = "Lame; Shigley ch. 3; beside an edge Jeffery 1921: fits/press/METHODS.md 2"
	coulomb    = "Coulomb friction"
	byFriction = "friction x pi x seat diameter x contact x pressure"
	atRim      = "that force at half the seat's diameter"
)

// state is the state of a press over its interference in um, seat, bore of the
// bush, both moduli and the flow stress of the bush: the very mechanics that
// the search decides by.
func (e *explainer) state(pick func(press.State) float64) func(in []float64) float64 {
	return func(in []float64) float64 {
		st := e.mechanics(in)
		if e.a.MandrelIn && st.Bush.Yield == 0 {
			p, tension := st.HeldAt(in[0] / 1000)
			return pick(press.State{P: p, HousingHoopMax: tension, Spring: in[0] / 1000})
		}
		return pick(st.At(in[0] / 1000))
	}
}

func (e *explainer) mechanics(in []float64) press.Seat {
	h, m := &e.x.Hole, &e.a.Bush.Metal
	return pressed(h.wall(in[1]), in[1], in[2],
		press.Elastic{E: in[3], Nu: h.Plate2.Nu}, press.Elastic{E: in[4], Nu: m.Nu, Yield: in[5]})
}

// press explains pressure, tension, force, torque and closure.
func (e *explainer) press(row *Row, f figures) {
	a, p := e.a, e.page
	plate, bush := e.aroundIt(), a.Bush.Metal.Name
	casting := &e.in.Casting.Plate
	stiff, soft, closing := e.bores(f)
	given := []ledger.Num{
		stiff,
		p.Leaf("plate_e_high", "modulus of "+plate+" for stress", "MPa", e.where("E", a.Stress.Housing.E, casting.EHigh, true), a.Stress.Housing.E),
		p.Leaf("bush_e_high", "modulus of "+bush+" for stress", "MPa", e.bush("E", true), a.Stress.Bush.E),
		p.Leaf("bush_flow_high", "flow stress of the bush for stress, with 1.155", "MPa",
			e.flowLine("porous_peak_mpa", true)+", times 1.155 (von Mises over Tresca)", a.Stress.Bush.Yield)}
	stressed := append([]ledger.Num{f.u.most, f.seat.least}, given...)
	most := p.Calc("pressure_mpa/max", "largest seat pressure", "MPa",
		"interference over the flexibility of plate and bush, no more than the bush bears before it flows", lame,
		e.state(func(s press.State) float64 { return s.P }), stressed...)
	row.HoopMPa = dim.Number(e.tension(most, func() ledger.Num {
		return p.Calc("hoop_mpa", "largest tension in the plate", "MPa",
			"largest pressure times the larger of the tension at the seat and at the free edge", lame,
			e.state(func(s press.State) float64 { return s.HousingHoopMax }), stressed...)
	}).V)
	row.HoopLimitMPa = dim.Number(p.Leaf("hoop_limit_mpa", "largest tension allowed", "MPa", e.limitLine(),
		a.PeakLimit).V)

	softest := []ledger.Num{soft,
		p.Leaf("plate_e_low", "modulus of "+plate+" for holding"+e.slackened(), "MPa", e.holdLine(), a.Hold.Housing.E),
		p.Leaf("bush_e_low", "modulus of "+bush+" for holding", "MPa", e.bush("E", false), a.Hold.Bush.E),
		p.Leaf("bush_flow_low", "flow stress of the bush for holding", "MPa", e.flowLine("porous_hold_mpa", false),
			a.Hold.Bush.Yield)}
	left := p.Calc2("interference_left_um", "least interference that is left after smoothing", "um",
		"least interference less smoothing, not below 0", dinSmoothing, press.Left, f.u.least, e.smoothing())
	held := append([]ledger.Num{left, f.seat.most}, softest...)
	e.spring = p.Calc("interference_spring_um", "least interference that springs back", "um",
		"what is left after smoothing, of a bush that flows no more than makes the pressure at which it does",
		"unloading is elastic: fits/press/METHODS.md 6",
		e.state(func(s press.State) float64 { return 1000 * s.Spring }), held...)
	least := p.Calc("pressure_mpa/min", "least lasting seat pressure", "MPa",
		"the same at the least interference, softest figures"+e.slackened(), lame,
		e.state(func(s press.State) float64 { return s.P }), held...)
	row.PressureMPa = dim.Numbers(least.V, most.V)
	e.force(row, f, both{least, most}, given)
	if a.MandrelIn {
		e.ontoMandrel(row, f)
		return
	}
	e.closure(row, f, closing)
}

func (e *explainer) slackened() string {
	if e.a.Slackens {
		return ", after it has given way over the years"
	}
	return ""
}

// force explains what a press holds, and what it takes to go in.
func (e *explainer) force(row *Row, f figures, pressure both, stiff []ledger.Num) {
	p, contact := e.page, e.contact()
	low := p.Leaf("friction_low", "friction for holding", "-", e.frictionLine(), e.in.Shop.FrictionLow)
	high := p.Leaf("friction_high", "friction for pressing", "-", e.frictionLine(), e.in.Shop.FrictionHigh)
	force := both{
		p.Calc4("force_n/min", "force along the axle that the press holds", "N", byFriction, coulomb, AxialForce, low,
			f.seat.most, contact, pressure.least),
		p.Calc4("force_n/max", "largest force to press the bush in", "N", byFriction, coulomb, AxialForce, high,
			f.seat.least, contact, pressure.most)}
	row.ForceN = force.numbers()
	e.pressIn(f, low, contact, stiff)
	row.TorqueNmm = both{
		p.Calc2("torque_nmm/min", "torque that the press holds", "N mm", atRim, "statics", Torque, force.least,
			f.seat.most),
		p.Calc2("torque_nmm/max", "torque at the largest press", "N mm", atRim, "statics", Torque, force.most,
			f.seat.least)}.numbers()
}

// pressIn explains what it takes at least to press the bush in, before anything
// is smoothed or gives way.
func (e *explainer) pressIn(f figures, friction, contact ledger.Num, stiff []ledger.Num) {
	fresh := e.page.Calc("pressure_fresh_mpa", "least seat pressure while the bush goes in", "MPa",
		"as the largest pressure, at the least interference", lame, e.state(func(s press.State) float64 { return s.P }),
		append([]ledger.Num{f.u.least, f.seat.most}, stiff...)...)
	e.page.Calc4("press_in_n/min", "least force to press the bush in", "N", byFriction, coulomb, AxialForce, friction,
		f.seat.most, contact, fresh)
}

// closure explains how far the bore closes, at either end of what is not known
// of moduli and flow.
func (e *explainer) closure(row *Row, f figures, bores both) {
	p, metal := e.page, &e.a.Bush.Metal
	end := func(i int, k string, u, seat, bore ledger.Num, pick func(press.State) float64) ledger.Num {
		at := e.a.ClosureAt[i]
		return p.Calc("closure_um/"+k, k+" closure of the bore on diameter", "um",
			"elastic up to the flow of the bush, beyond it 1.0 (least) or outer over inner wall diameter (largest) of each further um",
			"Lame, and the ring that flows: fits/press/METHODS.md 3", e.state(pick), u, seat, bore,
			p.Leaf("closure_plate_e_"+k, "modulus of "+e.aroundIt()+" for the "+k+" closure", "MPa",
				e.closureE(at.Housing.E), at.Housing.E),
			p.Leaf("closure_bush_e_"+k, "modulus of "+metal.Name+" for the "+k+" closure", "MPa",
				e.bush("E", at.Bush.E == metal.EHigh), at.Bush.E),
			p.Leaf("flow_"+k, "flow stress of the bush for its closure", "MPa", e.flowLine("porous_flow_mpa", false),
				at.Bush.Yield))
	}
	row.ClosureUM = both{
		end(0, "min", f.u.least, f.seat.most, bores.least, func(s press.State) float64 { return s.ClosureLow * 1000 }),
		end(1, "max", f.u.most, f.seat.least, bores.most, func(s press.State) float64 { return s.ClosureHigh * 1000 })}.numbers()
}

// closureE says where a modulus of what the seat is cut in stands, by which a bore
// closes.
func (e *explainer) closureE(v float64) string {
	high, plate := v == e.x.Hole.Plate2.EHigh, e.in.Casting.Plate.ELow
	if high {
		plate = e.in.Casting.Plate.EHigh
	}
	return e.where("E", v, plate, high)
}

// ontoMandrel explains how far the bore of a bush closes onto the mandrel that
// stands in it while it is pressed.
func (e *explainer) ontoMandrel(row *Row, f figures) {
	p, spring := e.page, e.in.Table.Get("mandrel_spring_um")
	source := e.cited("mandrel_spring_um")
	mandrel := p.Leaf("mandrel_mm", "mandrel in the bore", "mm", e.shopLine("mandrels"), e.a.FinishSizes[0])
	stopped := func(bore, mandrel, springUM float64) float64 { return OntoMandrel(bore, mandrel, springUM/1000) * 1000 }
	end := func(k string, back float64, bore ledger.Num) ledger.Num {
		return p.Calc3("closure_um/"+k, k+" closure of the bore on diameter", "um",
			"bore of the bush less the mandrel, and what it springs back",
			"the mandrel stops the bore", stopped,
			bore, mandrel, p.Leaf("spring_um/"+k, k+" spring back onto no mandrel", "um", source, back))
	}
	row.ClosureUM = both{end("min", spring.Low, f.bore.most), end("max", spring.High, f.bore.least)}.numbers()
}

// still explains a bush that is not pressed: under a cap nothing holds it but
// the cap, in compound the compound does.
func (e *explainer) still(row *Row, f figures) {
	none := dim.Numbers(0, 0)
	row.PressureMPa, row.ClosureUM = none, dim.Numbers(0, 0)
	row.ForceN, row.TorqueNmm = dim.Numbers(e.a.Force[0], e.a.Force[1]), dim.Numbers(e.a.Torque[0], e.a.Torque[1])
	if e.a.HeldBy != ByCompound {
		return
	}
	in := []ledger.Num{e.rule("compound_shear_mpa"), f.seat.least, e.contact()}
	if e.a.Filled {
		in = append(in, e.rule("fill_contact_deg"))
	}
	force := e.page.Calc("force_n/min", "force along the axle that the compound holds", "N",
		"shear strength times the seat's surface, as far round as its wall is sound", "rule compound_shear_mpa",
		func(in []float64) float64 {
			return CompoundForce(in[0], in[1], in[2], math.Min(360, last(in[3:], 360)))
		}, in...)
	torque := e.page.Calc2("torque_nmm/min", "torque that the compound holds", "N mm", atRim, "statics", Torque,
		force, f.seat.least)
	row.ForceN, row.TorqueNmm = dim.Numbers(force.V, force.V), dim.Numbers(torque.V, torque.V)
}

// last is the last figure of a list, else another.
func last(list []float64, otherwise float64) float64 {
	if len(list) == 0 {
		return otherwise
	}
	return list[len(list)-1]
}
