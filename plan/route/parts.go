package route

import (
	"math"

	"rebush/fits/say"
	"rebush/plan/seat"
)

// named is what a part is called.
func named(m seat.Mend) string {
	if m == seat.Plug {
		return "plug"
	}
	return "sleeve"
}

// part is the hole of a plug or a sleeve as a bore of its own; false where none
// is cut.
func (b *builder) part(x Bore) (Bore, bool) {
	p := x.Part
	if p == nil || p.Stays || x.In || x.Made {
		return Bore{}, false
	}
	y := x
	y.At, y.Seat, y.SeatAt = p.At, [2]float64{p.SeatLow, p.SeatHigh}, p.At
	y.Way, y.WayName, y.WaySize = p.Way.Kind, p.Way.Name, p.Way.Size
	y.Reach, y.Shank = x.PartReach, x.PartShank
	y.S, y.Allow, y.Ligament = (p.SeatLow+p.SeatHigh)/4-p.CleanUp, 0, p.Left
	y.Bush, y.BushMade, y.BushToBuy, y.BushMetal = named(p.Mend), true, false, p.Metal.Name
	long := p.Length + 2*b.r.PartProud
	y.BushSizes = say.F("outside %v, length %v, %s", say.Limits(p.ODLow, p.ODHigh, 3), say.MM(long, 2), p.Metal.Name)
	y.OD, y.U = [2]float64{p.ODLow, p.ODHigh}, [2]float64{p.ODLow - p.SeatHigh, p.ODHigh - p.SeatLow}
	y.Length, y.FlangeOD, y.Proud, y.Porous, y.Leaded = long, 0, 0, p.Metal.Porous, p.Metal.Leaded
	y.HeldBy, y.Second, y.PressN, y.Filled, y.MandrelIn = p.HeldBy, p.Second, p.PressN, false, false
	y.Tension[0] = p.PressMPa * p.Factor()
	y.Part, y.Oil, y.Solid, y.Metal, y.ForPart = nil, nil, false, "", true
	y.IfLarge = say.F("too large: turn the %s to the hole as it is", y.Bush)
	return y, true
}

// oldBush is what an old bush is taken for whose metal nobody knows: it is cut
// slower than the plate is.
const oldBush = "bearing bronze"

// inPart is the seat of a bush that stands in a part: it is started in solid
// metal, or in the bore of the old bush.
func (b *builder) inPart(x Bore) Bore {
	p := x.Part
	if p == nil {
		return x
	}
	if x.Metal = p.Metal.Name; p.Stays && x.Metal == "" {
		x.Metal = oldBush
	}
	if !p.Stays {
		// A plug and a sleeve are pressed in solid: what holds them is worked out
		// so, and their bore is cut where it belongs.
		x.Found, x.S, x.Allow, x.Wear, x.Solid = 0, 0, 0, 0, true
	}
	return x
}

func off(a, c [2]float64) float64 { return math.Hypot(a[0]-c[0], a[1]-c[1]) }

// cutsOf are the holes that are cut for one bore, in their order: that of its
// part, and the seat of its bush.
func (b *builder) cutsOf(x Bore) []Bore {
	var out []Bore
	if y, ok := b.part(x); ok && y.cuts() {
		out = append(out, y)
	}
	if x.cuts() {
		out = append(out, b.inPart(x))
	}
	return out
}

// setParts fills what is to be filled before any seat is cut: the holes of all
// plugs and sleeves are cut, the parts turned to them and set, cured and faced.
func (b *builder) setParts() {
	var mine []Bore
	for _, x := range b.j.Bores {
		if y, ok := b.part(x); ok {
			mine = append(mine, y)
		}
	}
	if len(mine) == 0 {
		return
	}
	for _, c := range b.clampingsOf(mine) {
		b.cutIn(c)
	}
	b.wash()
	for _, y := range mine {
		b.turnPart(y)
	}
	b.setup, b.last = atPress, ""
	b.pressBench()
	cure := false
	for _, y := range mine {
		b.setPart(y)
		cure = cure || y.HeldBy == seat.ByCompound || y.Second&seat.Compound != 0
	}
	if cure {
		b.cure("no plug or sleeve turns by hand")
	}
	b.setup = onBench
	for _, y := range mine {
		b.add(Operation{Kind: KindFlush, Bore: y.Name, BushMetal: y.BushMetal,
			Do:   say.F("Face the %s of %s flush with the plate, outside and inside", y.Bush, y.Name),
			Tool: "fine file, then a scraper; the plate masked", Minutes: b.r.Sizing, Leaded: y.Leaded,
			Backing: "anvil behind that wall",
			Gauge:   "a straight edge rocks nowhere over it, nor does light show",
			Note:    "the face of the plate is not filed; deburr the inside edge"})
	}
}

// turnPart turns one plug or sleeve to the hole as it was gauged.
func (b *builder) turnPart(y Bore) {
	lim := y.OD
	shape := say.Text("solid, ends faced square")
	if y.Bush == "sleeve" {
		shape = "solid as yet, ends faced square: the seat in it is cut when it is in"
	}
	b.add(Operation{Kind: KindTurn, Setup: atLathe, Bore: y.Name, BushMetal: y.BushMetal,
		Do: say.F("Turn the %s for %s", y.Bush, y.Name), Tool: "turning tool", Limits: &lim, Gauge: "micrometer",
		Minutes: b.r.TurnBush, Backing: "bar in the chuck, held short", Leaded: y.Leaded, Spindle: true,
		Note: join(y.BushSizes, shape, toHole(y),
			say.F("lead of %v on the end that goes in", say.MM(0.5, 1)))})
}

// toHole says how a part or a bush that is turned for one hole stands to it: over
// it for a press, under it where compound holds it.
func toHole(y Bore) say.Text {
	if y.HeldBy == seat.ByCompound {
		return say.F("to the hole as it was gauged: %v under it", say.Limits(-y.U[1], -y.U[0], 3))
	}
	return say.F("to the hole as it was gauged: %v over it", say.Limits(y.U[0], y.U[1], 3))
}

// setPart presses a plug or a sleeve in, or bonds it.
func (b *builder) setPart(y Bore) {
	g := b.gauge(y.Seat, y.Name)
	o := Operation{Kind: KindSetPart, Bore: y.Name, BushMetal: y.BushMetal, HoleMM: y.mid(), Minutes: b.r.Press,
		Backing:    "anvil directly behind that wall, never across the box",
		GaugeFirst: say.F("Hole of %s: %v. %v", y.Name, g.box(), say.F("The %s %v", y.Bush, b.measured(y)))}
	if y.HeldBy == seat.ByCompound {
		o.Do, o.Compound = say.F("Set the %s into %s from outside with retaining compound", y.Bush, y.Name), true
		o.Tool = "retaining compound"
		o.Note = "both faces free of oil, a thin bead round the leading end; leave it undisturbed"
	} else {
		o.Pressed = true
		o.Tool, o.Note = b.pressTool(y)
		o.Do = say.F("%s the %s into %s from outside", b.pressVerb(y), y.Bush, y.Name)
		o.Note = join(o.Note, b.secondWords(y))
		o.Compound = y.Second&seat.Compound != 0
	}
	o.Note = join(o.Note, say.F("it stands out about %v on each side", say.MM(b.r.PartProud, 1).About()))
	b.add(o)
}

// tryFast looks whether the old bushes that stay sit fast: a new bush in one
// that turns would turn with it.
func (b *builder) tryFast() {
	b.setup = onBench
	for _, x := range b.j.Bores {
		if x.Part == nil || !x.Part.Stays {
			continue
		}
		b.add(Operation{Kind: KindTryFast, Bore: x.Name, Minutes: b.r.Gauging,
			Do:      say.F("Try whether the old bush of %s sits fast in its plate", x.Name),
			Tool:    "a tapered plug of wood, by hand",
			Backing: "anvil behind that wall",
			Gauge:   "it neither turns nor moves along under a firm hand, and no light shows round it",
			Note: "it moves: cut nothing in it. Push it out, measure its seat, put that into the job file and plan " +
				"again"})
	}
}

// leadedPart says whether the chips of a seat are of a part that holds lead. An
// old bush that nobody knows is taken to.
func (x Bore) leadedPart() bool {
	return x.Metal != "" && x.Part != nil && (x.Part.Metal.Leaded || x.Part.Stays && x.Part.Metal.Name == "")
}
