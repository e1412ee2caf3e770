package route

import (
	"math"
	"slices"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/seat"
)

// turnBushes makes the bushes that have to be made, those that are alike
// together.
func (b *builder) turnBushes() {
	done := map[string]bool{} // by what it reads like
	for i, x := range b.j.Bores {
		if !x.BushMade || x.In || done[b.turnKey(x)] {
			continue
		}
		done[b.turnKey(x)] = true
		var names []string
		for _, y := range b.j.Bores[i:] {
			if y.BushMade && !y.In && b.turnKey(y) == b.turnKey(x) {
				names = append(names, y.Name)
			}
		}
		lim := x.OD
		chucking := say.Text("bore and outside in one chucking, then part off")
		if x.offset() >= b.r.EccentricFrom {
			chucking = "part off after the bore"
		}
		o := Operation{Kind: KindTurn, Setup: atLathe, Bore: x.Name,
			Do:   say.F("Turn the %s for %s", plural(len(names), "bush", "bushes"), list(names)),
			Tool: "turning tool, drill, boring tool or reamer", Limits: &lim, Gauge: "micrometer",
			Minutes: b.r.TurnBush * float64(len(names)),
			Backing: "bar in the chuck, held short",
			Note: join(x.BushSizes, b.fitting(x), b.boredAfter(x), chucking, say.F("lead of %v on the end that goes in",
				say.MM(0.5, 1)), "lips of the drill dubbed: bronze grabs")}
		o.Leaded, o.Spindle = x.Leaded, true
		if x.BushShape != nil {
			o.Shapes = []Shape{*x.BushShape}
			o.Shapes[0].For = x.Name
		}
		b.add(o)
	}
}

// turnKey is one for bushes that are turned alike.
func (b *builder) turnKey(x Bore) string {
	return (x.BushSizes + b.fitting(x) + b.boredAfter(x)).String()
}

// boredAfter says where the bore of a turned bush needs no more than a drill: a
// tool takes it to size when it is in.
func (b *builder) boredAfter(x Bore) say.Text {
	if x.Finish != seat.Ream || len(x.FinishSizes) == 0 {
		return ""
	}
	lo, hi := b.r.ReamStock(x.FinishSizes[0])
	return say.F("its bore is reamed when it is in: leave %v for it", say.MMs(lo, hi, 2))
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
	any, cure := false, false
	for _, x := range b.j.Bores {
		any = any || x.Way != seat.CapWay && !x.In
		cure = cure || !x.In && (x.HeldBy == seat.ByCompound || x.Second&seat.Compound != 0)
	}
	b.bondingRods()
	b.setup, b.last = atPress, ""
	if any {
		b.pressBench()
	}
	// What is pressed goes in first: nothing moves any more once compound sets.
	for _, bonded := range []bool{false, true} {
		for _, x := range b.j.Bores {
			if !x.In && (x.HeldBy == seat.ByCompound) == bonded {
				b.press(x)
			}
		}
	}
	if cure {
		gauge := say.Text("no bush turns by hand")
		if slices.ContainsFunc(b.shafts(), b.bonded) {
			gauge += "; the rods come out by a turn and a pull"
		}
		b.cure(gauge)
	}
}

// pressBench says once how the chassis lies at the press.
func (b *builder) pressBench() {
	for _, s := range b.out.Setups {
		if s.Name == atPress {
			return
		}
	}
	b.out.Setups = append(b.out.Setups,
		Setup{Name: atPress, Words: "power off; each wall on its own anvil, never the box as a whole"})
}

func (b *builder) cure(gauge say.Text) {
	b.add(Operation{Kind: KindCure,
		Do:    "Leave the chassis until the compound has cured for the time that its maker gives",
		Gauge: gauge,
		Note:  "axles out until then; a good place to break off"})
}

// bonded are the bores of a shaft whose bushes compound holds.
func (b *builder) bonded(shaft string) bool {
	for _, x := range b.on(shaft) {
		if x.HeldBy == seat.ByCompound && !x.In {
			return true
		}
	}
	return false
}

// bondingRod passes both bores of a shaft while compound sets: what holds the
// bushes in line is the rod, afterwards nothing can be lined up.
func (b *builder) bondingRod(shaft string) say.Text {
	var sizes []float64
	for _, x := range b.on(shaft) {
		bore := x.Closed[0]
		if bore <= 0 {
			bore = x.Limits[0]
		}
		sizes = append(sizes, under(bore, b.r.RodUnder))
	}
	if len(sizes) == 2 && sameSize(sizes[0], sizes[1]) {
		sizes = sizes[:1]
	}
	return say.Row(2, "mm", " / ", sizes...).Text()
}

func (b *builder) bondingRods() {
	var rods []say.Text
	for _, shaft := range b.shafts() {
		if b.bonded(shaft) {
			rods = append(rods, say.F("%s %v, through both bores and out on both sides", shaft, b.bondingRod(shaft)))
		}
	}
	b.makeRods("bonding rod", rods, "polished; each bush slides on it without shake")
}

func (b *builder) press(x Bore) {
	o := Operation{Kind: KindPress, Bore: x.Name, HoleMM: (x.Limits[0] + x.Limits[1]) / 2, Minutes: b.r.Press,
		Backing: "anvil directly behind that wall, never across the box"}
	g := b.seatGauge(x)
	o.GaugeFirst = say.F("Seat of %s: %v. Bush %v", x.Name, g.box(), b.measured(x))
	switch x.HeldBy {
	case seat.ByCompound:
		o.Do = say.F("Set bush %s into %s from outside with retaining compound", x.Bush, x.Name)
		o.Tool = say.F("retaining compound, greased rod %v", b.bondingRod(x.Shaft))
		o.Note = "both faces free of oil, a thin bead round the leading end, none in the bore; wipe off what " +
			"squeezes out"
		o.Note = join(o.Note, b.clocking(x))
		o.Note = join(o.Note, "the greased rod goes through both bores of the shaft: it lines them up, and stays in, "+
			"undisturbed, until the compound is cured")
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
		o.Expect, o.Halt = x.PressN, b.halt(x)
		o.Do = say.F("%s bush %s into %s from outside", b.pressVerb(x), x.Bush, x.Name)
		o.Note = join(o.Note, b.clocking(x), b.secondWords(x))
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
	s := say.F("measures %v by micrometer", say.Limits(x.OD[0], x.OD[1], 3))
	if x.HeldBy == seat.ByPress && x.Mend == seat.MadeToFit { // its hole is a figure: read, not passed by a gauge
		over := say.Limits(math.Max(0, x.U[0]), x.U[1], 3)
		if math.Abs(x.OD[0]-x.Seat[1]-x.U[0]) < 1e-6 && math.Abs(x.OD[1]-x.Seat[0]-x.U[1]) < 1e-6 {
			over = say.Over(x.OD, x.Seat, 3) // as both stand on paper
		}
		s += say.F(" and %v over its seat", over)
	}
	s += ", no burr"
	if x.FlangeOD > 0 {
		s += ", flange outwards"
	}
	return s + "."
}

// secondWords tells of the second hold, where there is one.
func (b *builder) secondWords(x Bore) say.Text {
	var w []say.Text
	if x.FlangeOD > 0 {
		w = append(w, "until the flange sits down all round")
	}
	for _, s := range x.Second.Each() {
		switch {
		case s == seat.Compound:
			w = append(w, "both faces free of oil; compound on the outside, none in the bore")
		case s == seat.Stake && b.stakes(x):
			w = append(w, "then stake the rim lightly at three points, on a support, none of them towards the "+
				"nearest edge")
		case s == seat.Stake:
			w = append(w, say.F("no punch mark round this rim: the press already pulls it with %v of the %v that it "+
				"is allowed", say.Num(x.Tension[0], 0, "MPa").Bare(), say.Num(x.Tension[1], 0, "MPa")))
		}
	}
	return join(w...)
}

// stakes says whether a rim bears to be staked: an old casting whose press uses
// up much of what it is allowed cracks from the punch mark.
func (b *builder) stakes(x Bore) bool {
	return !b.j.Casting || x.Tension[1] <= 0 || x.Tension[0] <= b.r.StakeShare*x.Tension[1]+1e-9
}

// unstaked raises what a rim that may not be staked leaves undone.
func (b *builder) unstaked() {
	for _, x := range b.j.Bores {
		held := []Bore{x}
		if y, ok := b.part(x); ok {
			held = append(held, y)
		}
		for _, y := range held {
			if y.In || y.Second&seat.Stake == 0 || b.stakes(y) {
				continue
			}
			b.trouble(Trouble{Level: finding.Caution, Rule: NoStake, Where: y.Name, Have: y.Tension[0],
				Want: b.r.StakeShare * y.Tension[1], Unit: "MPa",
				Text: say.F("the press wants a second hold, and the rim must not be staked: it is pulled with %v",
					say.Num(y.Tension[0], 0, "MPa")),
				Fix: "a flanged bush, a solid one with retaining compound, or a larger seat with a lighter press"})
		}
	}
}

// drawn says whether a bolt draws the bush in, for want of a press that can.
func (b *builder) drawn(x Bore) bool { return b.s.PressN <= 0 || x.PressN[1] > b.s.PressN }

// pressTool chooses between the press and a bolt, and says when to stop.
func (b *builder) pressTool(x Bore) (tool, note say.Text) {
	guide := say.Text("guide in the bore")
	if low := x.Closed[0]; low > 0 && b.r.GuideMost > 0 {
		least, most := hundredth(low-b.r.GuideMost), hundredth(low-b.r.GuideLeast)
		guide = say.F("guide %v%v", say.MMs(least, most, 2), b.guideFrom(least, most))
	}
	if x.ForPart { // it is solid
		guide = "kept square by its face"
	}
	expect := say.F("expect %v", say.Row(0, "N", " to ", x.PressN[0], x.PressN[1]))
	switch {
	case b.s.PressN > 0 && b.drawn(x):
		return "bolt, nut and washers, " + guide, say.F("%v, more than the press can give (%v): draw it in by "+
			"the bolt; "+
			"HALT where a short spanner wants more than one firm hand", expect, say.Num(b.s.PressN, 0, "N").Bare())
	case b.s.PressN > 0:
		return "press, " + guide, say.F("%v; HALT at %v", expect, say.Num(b.halt(x), 0, "N").Halts())
	}
	return "bolt, nut and washers, " + guide, join(expect, "a bolt shows no force: HALT where a short spanner wants more "+
		"than one firm hand")
}

// guideFrom is where a guide comes from in a shop that cannot turn one: the largest
// drill whose shank is surely no larger, and no smaller than a guide may be; else it
// is bought.
func (b *builder) guideFrom(least, most float64) say.Text {
	if b.s.Lathe || b.s.Machine == OnLathe {
		return ""
	}
	for i := len(b.s.Drills) - 1; i >= 0; i-- {
		if t := b.s.Drills[i]; t.Size <= most+1e-9 && t.Size-b.shankUnder(t.Size) >= least-1e-9 {
			return ", " + shank(t)
		}
	}
	b.buy(purchase{kind: BuyRod, tool: "guide for the press" + toBuy, spec: say.F("%v: no lathe here to turn it, and no "+
		"shank of a drill is of that size", say.MMs(least, most, 2))})
	return ""
}

// halt is the force at which a press is stopped, at most what it can give; 0
// where a bolt draws it in, which shows none.
func (b *builder) halt(x Bore) float64 {
	most := b.r.HaltFactor * x.PressN[1]
	if b.drawn(x) {
		return 0
	}
	return math.Min(most, b.s.PressN)
}

// pressVerb is what is done to what goes in by a press: drawn in by the bolt where
// the press cannot give enough.
func (b *builder) pressVerb(x Bore) string {
	if b.drawn(x) {
		return "Draw"
	}
	return "Press"
}
