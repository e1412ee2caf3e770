package route

import (
	"math"

	"rebush/fits/say"
	"rebush/plan/seat"
)

// removeOld takes factory bushes out first: their seats are the best datum.
func (b *builder) removeOld() {
	b.setup = onBench
	for _, x := range b.j.Bores {
		if x.Out != "" {
			b.takeOut(x)
		}
		if !x.Bushed {
			continue
		}
		b.add(Operation{Kind: KindTakeOut, Pressed: true, Bore: x.Name,
			Do:   say.F("Push the old bush out of %s to the outside", x.Name),
			Tool: "stepped punch through the opposite hole, a little under the bush's outside", Minutes: b.r.Press,
			Backing:    "ring under that wall, clear of the flange; never across the open box",
			GaugeFirst: "Place and bore of the old bush measured and written down: they are lost with it.",
			Note: "will it not move, bore it to a thin shell and collapse that; never drive it; then " +
				"measure its seat, put it into the job file and plan again before any cut"})
	}
}

// takeOut presses a bush of this job out again: its seat is known.
func (b *builder) takeOut(x Bore) {
	b.add(Operation{Kind: KindTakeOut, Pressed: true, Bore: x.Name,
		Do:   say.F("Press bush %s out of %s to the outside", x.Out, x.Name),
		Tool: "stepped punch through the opposite hole, a little under the bush's outside", Minutes: b.r.Press,
		Backing: "ring under that wall, clear of the flange; never across the open box",
		Note:    "it is not used again; what compound is left comes off the seat before it is gauged"})
}

// turnBushes makes the bushes that have to be made, those that are alike
// together.
func (b *builder) turnBushes() {
	done := map[string]bool{} // by what it reads like
	for i, x := range b.j.Bores {
		if !x.BushMade || x.In || done[x.BushSizes.String()] {
			continue
		}
		done[x.BushSizes.String()] = true
		var names []string
		for _, y := range b.j.Bores[i:] {
			if y.BushMade && !y.In && y.BushSizes.String() == x.BushSizes.String() {
				names = append(names, y.Name)
			}
		}
		lim := x.OD
		o := Operation{Kind: KindTurn, Setup: atLathe, Bore: x.Name,
			Do:   say.F("Turn the %s for %s: %v", plural(len(names), "bush", "bushes"), list(names), x.BushSizes),
			Tool: "turning tool, drill, boring tool or reamer", Limits: &lim, Gauge: "micrometer",
			Minutes: b.r.TurnBush * float64(len(names)),
			Backing: "bar in the chuck, held short",
			Note: b.once(say.F("bore and outside in one chucking, then part off; lead of %v on the end that goes in; "+
				"lips of the drill dubbed: bronze grabs", say.MM(0.5, 1)))}
		o.Leaded, o.Spindle = x.Leaded, true
		b.add(o)
	}
}

// faceBushes brings bushes that are longer than the plate to length, before
// they are pressed.
func (b *builder) faceBushes() {
	for _, x := range b.j.Bores {
		if x.BushMade || x.In || x.Proud <= b.r.Proud || x.Way == seat.CapWay {
			continue
		}
		o := Operation{Kind: KindFace, Setup: atLathe, Bore: x.Name,
			Do: say.F("Face %v off bush %s for %s, to %v, and break its edge %v",
				say.MM(x.Proud, 2), x.Bush, x.Name, say.MM(x.Length-x.Proud, 2), say.MM(0.2, 1)),
			Tool: "facing tool, sharp", Minutes: b.r.ToolChange + b.r.Gauging, Gauge: "calliper",
			Backing: "on a mandrel, or in a soft collet",
			Note:    "the end without the flange, dry", Leaded: x.Leaded, Spindle: true}
		if !b.s.Lathe && b.s.Machine != OnLathe {
			o.Setup, o.Tool, o.Backing = onBench, "fine file, bush in a drilled block of its own length", "drilled block"
			o.Spindle = false
		}
		b.add(o)
	}
}

// pressIn draws or presses each bush in from outside.
func (b *builder) pressIn() {
	b.setup, b.last = atPress, ""
	any, cure := false, false
	for _, x := range b.j.Bores {
		any = any || x.Way != seat.CapWay && !x.In
		cure = cure || !x.In && (x.HeldBy == seat.ByCompound || x.Second&seat.Compound != 0)
	}
	if any {
		b.out.Setups = append(b.out.Setups,
			Setup{Name: atPress, Words: "power off; each wall on its own anvil, never the box as a whole"})
	}
	for _, x := range b.j.Bores {
		if !x.In {
			b.press(x)
		}
	}
	if cure {
		b.add(Operation{Kind: KindCure,
			Do:    "Leave the chassis until the compound has cured for the time that its maker gives",
			Gauge: "no bush turns by hand",
			Note:  "axles out until then; a good place to break off"})
	}
}

func (b *builder) press(x Bore) {
	o := Operation{Kind: KindPress, Bore: x.Name, HoleMM: (x.Limits[0] + x.Limits[1]) / 2, Minutes: b.r.Press,
		Backing: "anvil directly behind that wall, never across the box"}
	g := b.gauge(x.Seat)
	o.GaugeFirst = say.F("Seat of %s: %v. Bush %v", x.Name, g.box(), b.measured(x))
	switch x.HeldBy {
	case seat.ByCompound:
		o.Do = say.F("Set bush %s into %s from outside with retaining compound", x.Bush, x.Name)
		o.Tool, o.Note = "retaining compound, guide pin", b.once("both faces free of oil, a thin bead round the "+
			"leading end, none in the bore; wipe off what squeezes out and leave it undisturbed")
	case seat.ByCap:
		o.Do, o.Tool = say.F("Lay bearing %s into its seat at %s and fit the cap", x.Bush, x.Name), "fingers"
		o.Backing, o.Note = "none: no press, the cap holds it", "cap and seat free of dirt and burrs; measure "+
			"its partner too"
		if len(b.on(x.Shaft)) < 2 {
			o.Note += "; the partner is not planned here"
		}
	default:
		o.Pressed = true
		o.Tool, o.Note = b.pressTool(x)
		verb := "Press"
		if b.drawn(x) {
			verb = "Draw"
		}
		o.Do = say.F("%s bush %s into %s from outside", verb, x.Bush, x.Name)
		o.Note = join(o.Note, secondWords(x))
		if x.MandrelIn && len(x.FinishSizes) > 0 {
			last := trim(x.FinishSizes[len(x.FinishSizes)-1])
			o.Tool += say.F(", sizing mandrel %s mm in the bore", last)
			o.Note = join(o.Note, say.F("press it with the mandrel %s mm left in the bore and withdraw the "+
				"mandrel afterwards", last))
		}
	}
	o.Compound = x.HeldBy == seat.ByCompound || x.Second&seat.Compound != 0 || x.Filled
	if x.Filled {
		o.Note = join(o.Note, "part of the old wear stays outside the bush: fill it with the compound, no gap "+
			"left, and let it cure before the axle is tried")
	}
	b.add(o)
}

func (b *builder) on(shaft string) []Bore {
	var out []Bore
	for _, x := range b.j.Bores {
		if x.Shaft == shaft {
			out = append(out, x)
		}
	}
	return out
}

// measured says what the bush itself must measure before it goes in.
func (b *builder) measured(x Bore) say.Text {
	s := say.F("measures %v", say.Limits(x.OD[0], x.OD[1], 3))
	if x.HeldBy == seat.ByPress {
		s += say.F(" and %v over its seat", say.Limits(math.Max(0, x.U[0]), x.U[1], 3))
	}
	s += ", no burr"
	if x.FlangeOD > 0 {
		s += ", flange outwards"
	}
	return s + "."
}

// secondWords tells of the second hold, where there is one.
func secondWords(x Bore) say.Text {
	var w []say.Text
	for _, s := range x.Second.Each() {
		switch s {
		case seat.Flange:
			w = append(w, "until the flange sits down all round")
		case seat.Compound:
			w = append(w, "compound on the outside, none in the bore")
		case seat.Stake:
			w = append(w, "then stake the rim lightly at three points, on a support")
		}
	}
	return join(w...)
}

// drawn says whether a bolt draws the bush in, for want of a press that can.
func (b *builder) drawn(x Bore) bool { return b.s.PressN <= 0 || x.PressN[1] > b.s.PressN }

// pressTool chooses between the press and a bolt, and says when to stop.
func (b *builder) pressTool(x Bore) (tool, note say.Text) {
	guide := say.Text("guide in the bore")
	if low := x.Closed[0]; low > 0 && b.r.GuideMost > 0 {
		guide = say.F("guide %v", say.MMs(hundredth(low-b.r.GuideMost), hundredth(low-b.r.GuideLeast), 2))
	}
	expect := say.F("expect %v", say.Row(0, "N", " to ", x.PressN[0], x.PressN[1]))
	halt := b.r.HaltFactor * x.PressN[1]
	switch {
	case b.s.PressN > 0 && b.drawn(x):
		return "bolt, nut and washers, " + guide, say.F("%v, more than the press can give (%v): draw it in by "+
			"the bolt; "+
			"HALT where a short spanner wants more than one firm hand", expect, say.Num(b.s.PressN, 0, "N").Bare())
	case b.s.PressN > 0:
		return "press, " + guide, say.F("%v; HALT at %v", expect, say.Num(math.Min(halt, b.s.PressN), 0, "N"))
	}
	return "bolt, nut and washers, " + guide, say.F("%v; HALT at %v", expect, say.Num(halt, 0, "N"))
}
