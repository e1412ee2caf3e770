package plan

import (
	"math"

	"rebush/fits/ledger"
	"rebush/fits/press"
)

// explainPress records pressure, stress, force, torque and closure.
func (m *maker) explainPress(b *bore, s *Seat, uLow, uHigh, seatLow, seatHigh ledger.Num) {
	a, l := b.chosen, m.book
	key := func(k string) string { return "seats/" + b.name() + "/" + k }
	stress, hold := a.Stress, a.Hold
	bushBore := l.Leaf(key("bush_bore_mm"), "bore of the bush before pressing, middle of its limits", "mm", m.bushSource(b, "bore"), stress.Di)
	eA := l.Leaf(key("plate_e_high"), "modulus of "+m.plate.Name+" for stress", "MPa", m.matter(m.chassis, "E", true), stress.Housing.E)
	eB := l.Leaf(key("bush_e_high"), "modulus of "+a.Bush.Metal.Name+" for stress", "MPa", m.matter(m.bushMaterial(b), "E", true), stress.Bush.E)
	fl := l.Leaf(key("bush_flow_high"), "flow stress of the bush for stress, with 1.155", "MPa", m.flowSource(b, "porous_peak_mpa", true)+", times 1.155 (von Mises over Tresca)", stress.Bush.Yield)
	at := func(st press.Seat, pick func(press.State) float64) func([]float64) float64 {
		return func(in []float64) float64 {
			st, own := st, st.D
			st.D, st.Di, st.Housing.E, st.Bush.E, st.Bush.Yield = in[1], in[2], in[3], in[4], in[5]
			if e, ok := st.Wall.(press.Edge); ok {
				// The edge stays where it is; the metal left follows the seat.
				e.Ligament += (own - in[1]) / 2
				st.Wall = e
			}
			if a.MandrelIn && st.Bush.Yield == 0 {
				p, tension := st.HeldAt(in[0] / 1000)
				return pick(press.State{P: p, HousingHoopMax: tension})
			}
			return pick(st.At(in[0] / 1000))
		}
	}
	const src = "Lame; Shigley ch. 3; beside an edge Jeffery 1921: fits/press/METHODS.md 2"
	pHigh := l.Calc(key("pressure_mpa/max"), "largest seat pressure", "MPa", "interference over the flexibility of plate and bush, no more than the bush bears before it flows", src,
		at(stress, func(s press.State) float64 { return s.P }), uHigh, seatLow, bushBore, eA, eB, fl)
	hoop := l.Calc(key("hoop_mpa"), "largest tension in the plate", "MPa", "largest pressure times the larger of the tension at the seat and at the free edge", src,
		at(stress, func(s press.State) float64 { return s.HousingHoopMax }), uHigh, seatLow, bushBore, eA, eB, fl)
	s.HoopMPa = num(hoop.V)
	s.HoopLimitMPa = num(l.Leaf(key("hoop_limit_mpa"), "largest tension allowed", "MPa", m.limitSource(), a.PeakLimit).V)

	eAl := l.Leaf(key("plate_e_low"), "modulus of "+m.plate.Name+" for holding"+slackWords(a), "MPa", m.holdSource(a), hold.Housing.E)
	eBl := l.Leaf(key("bush_e_low"), "modulus of "+a.Bush.Metal.Name+" for holding", "MPa", m.matter(m.bushMaterial(b), "E", false), hold.Bush.E)
	fll := l.Leaf(key("bush_flow_low"), "flow stress of the bush for holding", "MPa", m.flowSource(b, "porous_hold_mpa", false), hold.Bush.Yield)
	smooth := m.smoothLeaf(b)
	uHold := l.Calc(key("interference_left_um"), "least interference that is left after smoothing", "um", "least interference less smoothing, not below 0", "DIN 7190 smoothing rule: fits/press/METHODS.md 5",
		func(in []float64) float64 { return math.Max(0, in[0]-in[1]) }, uLow, smooth)
	pLow := l.Calc(key("pressure_mpa/min"), "least lasting seat pressure", "MPa", "the same at the least interference, softest figures"+slackWords(a), src,
		at(hold, func(s press.State) float64 { return s.P }), uHold, seatHigh, bushBore, eAl, eBl, fll)
	s.PressureMPa = minMax(pLow.V, pHigh.V)

	contact := m.contactNum(b)
	muLow := l.Leaf(key("friction_low"), "friction for holding", "-", m.frictionSource(), m.shop.FrictionLow)
	muHigh := l.Leaf(key("friction_high"), "friction for pressing", "-", m.frictionSource(), m.shop.FrictionHigh)
	force := func(in []float64) float64 { return in[0] * math.Pi * in[1] * in[2] * in[3] }
	fLow := l.Calc(key("force_n/min"), "force along the axle that the press holds", "N", "friction x pi x seat diameter x contact x pressure", "Coulomb friction", force, muLow, seatHigh, contact, pLow)
	fHigh := l.Calc(key("force_n/max"), "largest force to press the bush in", "N", "friction x pi x seat diameter x contact x pressure", "Coulomb friction", force, muHigh, seatLow, contact, pHigh)
	s.ForceN = minMax(fLow.V, fHigh.V)
	torque := func(in []float64) float64 { return in[0] * in[1] / 2 }
	tLow := l.Calc(key("torque_nmm/min"), "torque that the press holds", "N mm", "that force at half the seat's diameter", "statics", torque, fLow, seatHigh)
	tHigh := l.Calc(key("torque_nmm/max"), "torque at the largest press", "N mm", "that force at half the seat's diameter", "statics", torque, fHigh, seatLow)
	s.TorqueNmm = minMax(tLow.V, tHigh.V)

	flow := func(k string, seat press.Seat) ledger.Num {
		return l.Leaf(key("flow_"+k), "flow stress of the bush for its closure", "MPa", m.flowSource(b, "porous_flow_mpa", false), seat.Bush.Yield)
	}
	if a.MandrelIn {
		m.explainHeld(b, s)
		return
	}
	cl := [2]ledger.Num{}
	for i, k := range []string{"min", "max"} {
		c := a.ClosureAt[i]
		u, d := [2]ledger.Num{uLow, uHigh}[i], [2]ledger.Num{seatHigh, seatLow}[i]
		ea := l.Leaf(key("closure_plate_e_"+k), "modulus of "+m.plate.Name+" for the "+k+" closure", "MPa", m.matter(m.chassis, "E", c.Housing.E == m.plate.EHigh), c.Housing.E)
		eb := l.Leaf(key("closure_bush_e_"+k), "modulus of "+a.Bush.Metal.Name+" for the "+k+" closure", "MPa", m.matter(m.bushMaterial(b), "E", c.Bush.E == a.Bush.Metal.EHigh), c.Bush.E)
		pick := func(s press.State) float64 { return s.ClosureLow * 1000 }
		if i == 1 {
			pick = func(s press.State) float64 { return s.ClosureHigh * 1000 }
		}
		cl[i] = l.Calc(key("closure_um/"+k), k+" closure of the bore on diameter", "um", "elastic up to the flow of the bush, beyond it 1.0 (least) or outer over inner wall diameter (largest) of each further um",
			"Lame, and the ring that flows: fits/press/METHODS.md 3", at(c, pick), u, d, bushBore, ea, eb, flow(k, c))
	}
	s.ClosureUM = minMax(cl[0].V, cl[1].V)
}

// explainHeld records how far the bore of a bush closes onto the mandrel that
// stands in it while it is pressed.
func (m *maker) explainHeld(b *bore, s *Seat) {
	a, l := b.chosen, m.book
	key := func(k string) string { return "seats/" + b.name() + "/" + k }
	spring := m.rules.Get("mandrel_spring_um")
	m.used("mandrel_spring_um")
	size := l.Leaf(key("mandrel_mm"), "mandrel in the bore", "mm", place(m.j.Shop.At("mandrels"), "built-in small shop:1"), a.FinishSizes[0])
	var cl [2]float64
	for i, k := range []string{"min", "max"} {
		back := l.Leaf(key("spring_um/"+k), k+" spring back onto no mandrel", "um", spring.Address+": "+spring.Source, []float64{spring.Low, spring.High}[i])
		bore := m.ledgerNum(key("bush/bore_mm/" + []string{"max", "min"}[i]))
		cl[i] = l.Calc(key("closure_um/"+k), k+" closure of the bore on diameter", "um", "bore of the bush less the mandrel, and what it springs back", "the mandrel stops the bore",
			func(in []float64) float64 { return (in[0]-in[1])*1000 + in[2] }, bore, size, back).V
	}
	s.ClosureUM = minMax(cl[0], cl[1])
}
