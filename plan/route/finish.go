package route

import (
	"math"
	"strings"

	"rebush/fits/say"
	"rebush/plan/seat"
)

func (b *builder) shafts() []string {
	var out []string
	seen := map[string]bool{}
	for _, x := range b.j.Bores {
		if !seen[x.Shaft] {
			seen[x.Shaft] = true
			out = append(out, x.Shaft)
		}
	}
	return out
}

// oilWays clears the oil holes through the new bushes, before the bores are
// sized so that sizing takes the burr.
func (b *builder) oilWays() {
	b.setup, b.last = oilWays, ""
	for _, x := range b.j.Bores {
		if x.Oil == nil || x.In {
			continue
		}
		t, own := b.oilDrill(x.Oil.Diameter)
		if !own {
			b.buy(purchase{kind: BuyDrill, tool: t.Name, size: t.Size, spec: "oil way", bore: x.Name})
		}
		o := Operation{Kind: KindOil, Bore: x.Name,
			Do: say.F("Drill bush %s through from the old oil hole of %s", x.Bush, x.Name), Tool: words(t.Name),
			ToolMM:  t.Size,
			Backing: "close-fitting rod in the bore",
			Holding: say.F("on edge, oil hole at %.0f degrees uppermost", x.Oil.AtDeg),
			HoleMM:  (x.Limits[0] + x.Limits[1]) / 2,
			Note:    "light feed, until it meets the rod; deburr inside; oil must reach the axle"}
		q := Query{Op: OpDrill, Dia: t.Size, Through: math.Max(0.1, (x.Seat[0]-x.Limits[1])/2), Material: x.BushMetal}
		o.Minutes = b.r.Hold // on edge, hole by hole
		b.figures(&o, q)
		o.Depth = math.NaN() // from the mouth of the old hole, which is not known
		if !math.IsNaN(x.LoadDeg) && away(x.LoadDeg, x.Oil.AtDeg) <= b.r.OilLoadDeg {
			o.Note = join(o.Note, "it comes out on the loaded side: keep it small and round its edge well, oil "+
				"is pressed back here")
		}
		o.Leaded = x.Leaded
		b.add(o)
	}
}

// oilDrill is the largest drill of the shop that goes down the old hole, and
// not much smaller.
func (b *builder) oilDrill(d float64) (Tool, bool) {
	for i := len(b.s.Drills) - 1; i >= 0; i-- {
		if t := b.s.Drills[i]; t.Size <= d+1e-9 {
			if t.Size >= b.r.OilShare*d {
				return t, true
			}
			break
		}
	}
	return Tool{Name: trim(d) + " mm drill" + toBuy, Size: d}, false
}

// away is the angle between two directions, in degrees.
func away(a, c float64) float64 {
	d := math.Abs(math.Mod(a-c, 360))
	return math.Min(d, 360-d)
}

// finishBores takes both bores of each shaft to size, in line.
func (b *builder) finishBores() {
	b.setup, b.last = finishing, ""
	for _, shaft := range b.shafts() {
		mine := b.on(shaft)
		b.tryMesh(shaft, mine)
		b.boreInPlace(mine)
		b.setup = finishing
		for _, x := range mine {
			if x.Finish != seat.BoreInPlace {
				b.finish(x, len(mine) > 1)
			}
		}
	}
}

// tryMesh is the cheapest check there is: before any bore of the shaft is
// opened.
func (b *builder) tryMesh(shaft string, mine []Bore) {
	open, made, low := false, false, []float64(nil)
	for _, x := range mine {
		open = open || x.Finish != seat.AsDelivered
		if x.Closed[0] > 0 {
			low = appendNew(low, under(x.Closed[0], b.r.DummyUnder))
		}
	}
	if !open {
		return
	}
	for _, g := range b.j.Gears {
		if g.Shaft != shaft {
			continue
		}
		o := Operation{Kind: KindTryMesh, Do: say.F("Try the mesh of %s before the bores are opened", g.Name),
			Tool: "dummy axle, paper strip in the mesh", Minutes: b.r.Gauging,
			Gauge: say.F("backlash %v", g.window()),
			Note: join("the drive goes back in its place for this, no power; the gear comes off its axle on the flat plate, "+
				"pushed at its hub, and on the dummy", b.holdTo(mine), "read it by an indicator on a tooth, or by "+
				"two strips: one of the least goes between the flanks, one of the most does not; out of its limits: "+
				"stop and measure the seats again", "then the gear back on its axle as it sat")}
		if len(low) > 0 {
			size := say.Row(2, "mm", " / ", low...).About()
			o.Tool = say.F("dummy axle turned to pass (%v), paper strip in the mesh", size)
			if !made {
				b.makeRods("dummy axle", []say.Text{say.F("%s %v", shaft, size)},
					"it passes both bores as they are, without shake; the gear sits on it as on its axle")
				b.setup, made = finishing, true
			}
		}
		b.add(o)
	}
}

// closedWrong is what is done where a bore that nothing sizes is not as planned.
const closedWrong = say.Text("the go gauge does not go in: size the bore by a mandrel, or ease it a little at a time, and gauge " +
	"again; the no-go goes in: the bush is spoilt, out the way it came and another in")

// holdTo says which way the dummy axle is held: as the load holds the axle.
func (b *builder) holdTo(mine []Bore) say.Text {
	for _, x := range mine {
		if x.LoadTo != "" {
			return say.F("hold the dummy %v in both bores, seen from the left, as the load holds the axle", x.LoadTo)
		}
	}
	return "hold the dummy to the side that the load holds the axle"
}

func (b *builder) finish(x Bore, pair bool) {
	lim := x.Limits
	g := b.gauge(lim, x.Name)
	o := Operation{Kind: KindSizeBore, Bore: x.Name, Limits: &lim, Minutes: b.r.Sizing, HoleMM: (lim[0] + lim[1]) / 2,
		Gauge: g.how, Go: g.goes, NoGo: g.stops, Pins: g.sizes,
		Backing: "anvil behind that wall"}
	if !g.proves {
		o.Gauge = join(g.how, "its own axle proves it")
	}
	line := say.Text("")
	if pair {
		line = "a close-fitting rod in the other bore keeps it in line"
	}
	switch x.Finish {
	case seat.AsDelivered:
		o.Kind, o.Do, o.Minutes, o.Backing = KindGauge, say.F("Gauge the bore of %s: the bush closes into its "+
			"limits by itself", x.Name), b.r.Gauging, ""
		o.Note = closedWrong
	case seat.Mandrel:
		if x.MandrelIn {
			o.Kind, o.Do, o.Minutes, o.Backing = KindGauge, say.F("Gauge the bore of %s: the mandrel it was "+
				"pressed on has sized it", x.Name), b.r.Gauging, ""
			o.Note = closedWrong
			break
		}
		var names []string
		for _, m := range x.FinishSizes {
			names = append(names, trim(m))
		}
		o.Do = say.F("Size the bore of %s with mandrel %s mm", x.Name, strings.Join(names, ", then "))
		o.Tool = say.F("sizing mandrel %s mm", strings.Join(names, ", "))
		o.ToolMM = x.FinishSizes[len(x.FinishSizes)-1]
		o.Minutes = b.r.Sizing * float64(len(names))
		o.Lubricant, o.Pressed = "oil", true
		o.Note = "straight through, one stroke each, under the press"
		if b.s.PressN <= 0 {
			o.Note = "straight through, one stroke each, drawn by a bolt or pushed in the vice, square"
		}
		if x.Porous {
			o.Note += "; porous: never ream it"
		}
	case seat.Ream:
		o.Do, o.Tool, o.ToolMM = say.F("Ream the bore of %s", x.Name), words(x.FinishTool), x.FinishSizes[0]
		o.Note = join(line, "never turn it back")
		b.figures(&o, Query{Op: OpReam, Dia: x.FinishSizes[0], Through: x.Plate, Material: x.BushMetal})
	default:
		o.Do = say.F("Ease the bore of %s until its own axle runs", x.Name)
		o.Tool = say.F("broach, or hand reamer for %v, a little at a time", say.Limits(lim[0], lim[1], 3))
		o.Note = join(line, "its own axle is the gauge: free with oil, no shake")
		if x.Porous {
			o.Tool = "sizing balls or stepped mandrels, a little at a time"
			o.Note = "its own axle is the gauge: free with oil, no shake; a porous bore is burnished, never " +
				"reamed or honed: that closes its pores"
		}
	}
	o.Leaded = x.Leaded && (x.Finish == seat.Ream || x.Finish == seat.ToOwnAxle)
	b.add(o)
}
