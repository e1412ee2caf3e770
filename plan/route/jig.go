package route

import (
	"math"

	"rebush/fits/say"
	"rebush/plan/job"
)

// jig makes what guides the tools where the machine does not place them: the
// plate, pinned in unworn holes, and a slip bush for each tool that goes
// through it. The same plate serves both sides, turned over with the chassis:
// its holes are then mirrored as the chassis is.
func (b *builder) jig() {
	if !b.loose() || !b.s.Jig {
		return
	}
	var places []say.Text
	for _, x := range b.j.Bores {
		for _, y := range b.cutsOf(x) {
			shaft := y.Shaft
			if y.At != x.At {
				shaft = y.Name + ", its " + y.Bush
			}
			places = appendNew(places, say.F("%s %v", shaft, say.Row(3, "mm", ", ", y.At[0], y.At[1])))
		}
	}
	if len(places) == 0 {
		return
	}
	all, thick, out := b.slips(), b.jigThick(), b.slipOutside()
	hole, outside := b.slide(out)
	b.setup = onBench
	b.add(Operation{Kind: KindAid, Do: say.F("Make the jig plate, pinned in %s", b.pinned()),
		Tool: "mill, or sent out: its bushes guide no better than they stand", Spindle: true,
		Minutes: b.r.JigPlate + b.r.SlipBush*float64(len(places)), Backing: "clamped flat",
		Gauge: join("its bush holes read again from the pins", b.placeWithin()),
		Note: join(say.F("steel plate %v thick, faces parallel: it guides the largest tool over %.4g of its diameters",
			say.MM(thick, 1).Trim(), b.r.JigDiameters), say.F("bush holes %v, square through", say.Limits(hole[0], hole[1], 3)),
			"bush holes at "+list(places)+" in the figures of the drawing, seen from the left; the same plate "+
				"goes on the right side with its other face up", b.pinWords(thick))})
	var bores []say.Text
	for _, s := range all {
		bores = append(bores, say.F("for %v %v", say.MM(s.tool, 3).Trim(), s.bored()))
	}
	body := say.F("outside %v, %v long", say.Limits(outside[0], outside[1], 3), say.MM(thick, 1).Trim())
	if !b.s.Lathe {
		for _, s := range all {
			b.buy(purchase{kind: BuySlip, tool: "slip bush " + trim(s.tool) + " mm" + toBuy,
				name: s.name() + toBuy, size: s.tool, spec: s.bored() + ", " + body + ": no lathe here to turn it"})
		}
		return
	}
	b.add(Operation{Kind: KindAid, Setup: atLathe,
		Do:   say.F("Turn %d slip %s", len(all), plural(len(all), "bush", "bushes")),
		Tool: "turning tool, drill, boring tool", Spindle: true, Backing: "bar in the chuck, held short",
		Minutes: b.r.SlipBush * float64(len(all)), Gauge: "each tool runs in its own without shake, and does not bind",
		Note: join("all of one outside, to the bush holes of the plate: "+body, list(bores))})
}

// guided are the tools that slip bushes guide in the making of one seat.
func (b *builder) guided(x Bore) []float64 {
	var out []float64
	for _, st := range b.opening(x, false) {
		out = appendNew(out, st.tool.Size)
	}
	if x.Way.Cuts() {
		out = appendNew(out, x.WaySize)
	}
	return out
}

// pinWords say where the pins of the jig stand, and how thick and long they are:
// they slide through the plate, which goes on either face.
func (b *builder) pinWords(thick float64) say.Text {
	var w []say.Text
	for _, name := range b.j.Features[:min(2, len(b.j.Features))] {
		for _, m := range b.j.Marks {
			if m.Name != name {
				continue
			}
			pin := say.F("%s %v", name, say.Row(3, "mm", ", ", m.At[0], m.At[1]))
			if m.Dia > 0 {
				pin += say.F(", pin %v", say.MM(under(m.Dia, b.r.RodUnder), 3).Trim())
			}
			w = append(w, pin)
		}
	}
	if len(w) == 0 {
		return "pins turned to the holes that they go in"
	}
	return "pins at " + list(w) + say.F("; each goes in by hand without shake and slides through the jig, about %v long",
		say.MM(math.Ceil(thick+b.r.RodStands), 0).About())
}

// turnedOver is what is said of a jig that goes to the other side.
func (b *builder) turnedOver(c clamping) say.Text {
	if c.up == job.Right {
		return "turn the jig plate over with the chassis: its other face is up, its pins go in the same holes"
	}
	return ""
}
