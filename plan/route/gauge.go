package route

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"rebush/fits/say"
	"rebush/plan/seat"
)

// proof is how a hole is shown to be inside its limits.
type proof struct {
	how         say.Text
	goes, stops say.Text
	proves      bool       // false: goes and stops bracket the hole only
	sizes       [2]float64 // of pins and plugs in mm, 0 where a shank stands in
	without     say.Text   // what holds while a gauge that decides is not here, "" nothing
}

// gauge finds the smallest pin that must enter and the largest that must not.
// Where the pins' steps are too coarse for the limits they bracket the hole,
// and something else has to prove it. Beyond the ends of the set drill shanks
// stand in, and where none is near plugs to be bought: no hole goes ungauged.
func (b *builder) gauge(lim [2]float64, bore string) proof {
	if p := b.s.Pins; p != nil && p.Step > 0 {
		if w, ok := p.proves(lim); ok {
			return w
		}
		low, lows := p.below(lim[0])
		high, highs := p.above(lim[1])
		if lows && highs {
			return proof{how: say.F("pins bracket it only: steps of %v do not prove %v", p.step(),
				say.Um((lim[1]-lim[0])*1000, 0)), goes: p.name(low), stops: p.name(high), sizes: [2]float64{low, high}}
		}
		if t, near := b.shankAbove(lim[1]); lows && near {
			return proof{how: "pin and shank bracket it only", goes: p.name(low), stops: shank(t), sizes: [2]float64{low}}
		}
		if t, near := b.shankBelow(lim[0]); highs && near {
			return proof{how: "shank and pin bracket it only", goes: shank(t), stops: p.name(high), sizes: [2]float64{1: high}}
		}
	}
	if w, ok := b.byShanks(lim); ok {
		return w
	}
	return b.byPlugs(lim, bore)
}

// proves is a pair of pins of the set whose going and not going puts a hole
// inside its limits.
func (p *Pins) proves(lim [2]float64) (proof, bool) {
	in, goes := p.above(lim[0])
	out, stops := p.below(lim[1])
	w := proof{how: "pins", goes: p.name(in), stops: p.name(out), proves: true, sizes: [2]float64{in, out}}
	return w, goes && stops && in < out-1e-9
}

// below is the largest pin of the set that is not over a size, of those within
// one step of it.
func (p *Pins) below(d float64) (float64, bool) {
	f := p.From + math.Floor((d-p.From)/p.Step+1e-6)*p.Step
	return f, f >= p.From-1e-9 && f <= p.To+1e-9
}

// above is the smallest pin of the set that is not under a size, likewise.
func (p *Pins) above(d float64) (float64, bool) {
	f := p.From + math.Ceil((d-p.From)/p.Step-1e-6)*p.Step
	return f, f >= p.From-1e-9 && f <= p.To+1e-9
}

// byPlugs are two plug gauges to be bought, in the steps that they are sold in.
func (b *builder) byPlugs(lim [2]float64, bore string) proof {
	sold := Pins{Step: b.r.PlugStep, To: math.Inf(1)}
	if p := b.s.Pins; p != nil && p.Inch {
		sold = Pins{Step: b.r.PlugStepInch, To: math.Inf(1), Inch: true}
	}
	how := say.Text("plug gauges")
	w, ok := sold.proves(lim)
	in, _ := sold.above(lim[0])
	out, _ := sold.below(lim[1])
	if !ok {
		in, _ = sold.below(lim[0])
		out, _ = sold.above(lim[1])
		how = "plug gauges bracket it only"
	}
	plug := func(d float64) say.Text {
		name := say.F("plug gauge %v", say.MM(d, 2)) + toBuy
		if sold.Inch {
			name = "plug gauge " + say.Text(strings.TrimPrefix(string(sold.name(d)), "pin ")) + toBuy
		}
		b.buy(purchase{kind: BuyGauge, tool: "plug gauge " + trim(d) + " mm" + toBuy, name: name, size: d,
			spec: "no pin or shank here is near it", bore: bore})
		return name
	}
	return proof{how: how, goes: plug(in), stops: plug(out), proves: w.proves && ok, sizes: [2]float64{in, out}}
}

func (p *Pins) name(f float64) say.Text {
	if p.Inch {
		return say.F("pin %.4g in", math.Round(f/25.4*1e5)/1e5)
	}
	places := 2
	if r := p.Step * 100; math.Abs(r-math.Round(r)) > 1e-6 {
		places = 3
	}
	return say.F("pin %.*f", places, f)
}

func (p *Pins) step() say.Text {
	if p.Inch {
		return say.F("%.4g in", p.Step/25.4)
	}
	return say.MM(p.Step, 3).Trim().Text()
}

// byShanks takes drill shanks, which are under their name by what their class
// allows: one that must enter, one that must not. Measured first they bracket
// a hole; where both lie inside the limits whatever they measure, they prove it.
func (b *builder) byShanks(lim [2]float64) (proof, bool) {
	var in, out *Tool
	for i := range b.s.Drills {
		t := &b.s.Drills[i]
		if t.Size-b.shankUnder(t.Size) >= lim[0]-1e-9 && t.Size <= lim[1]+1e-9 {
			if in == nil {
				in = t
			} else {
				out = t
			}
		}
	}
	const how = say.Text("drill shanks, each measured with the micrometer first")
	if in != nil && out != nil {
		return proof{how: how, goes: shank(*in), stops: shank(*out), proves: true}, true
	}
	low, lows := b.shankBelow(lim[0])
	high, highs := b.shankAbove(lim[1])
	return proof{how: how + "; they bracket it only", goes: shank(low), stops: shank(high)}, lows && highs
}

// shankUnder is how much the shank of a drill may be under its name.
func (b *builder) shankUnder(d float64) float64 {
	if b.r.ShankUnder == nil {
		return 0
	}
	return b.r.ShankUnder(d)
}

// shankBelow is the largest drill whose shank is not over a size, if it is near.
func (b *builder) shankBelow(d float64) (Tool, bool) {
	for i := len(b.s.Drills) - 1; i >= 0; i-- {
		if t := b.s.Drills[i]; t.Size <= d+1e-9 {
			return t, d-t.Size <= b.r.ShankNear
		}
	}
	return Tool{}, false
}

// shankAbove is the smallest drill whose shank is surely not under a size, if
// it is near.
func (b *builder) shankAbove(d float64) (Tool, bool) {
	for _, t := range b.s.Drills {
		if t.Size-b.shankUnder(t.Size) >= d-1e-9 {
			return t, t.Size-d <= b.r.ShankNear
		}
	}
	return Tool{}, false
}

// shank names the shank of a drill, as it is stamped.
func shank(t Tool) say.Text { return words(t.Name) + " shank" }

// box is what a gauge first box says of a hole.
func (p proof) box() say.Text { return p.goes + " goes, " + p.stops + " does not" }

// tryInScrap makes a hole in scrap with each seat tool whose seat no gauge can
// prove, and tries the very bushes in it, before anything is cut.
func (b *builder) tryInScrap() {
	b.setup, b.last = onBench, ""
	seen := map[string]bool{}
	var cut []Bore
	for _, x := range b.j.Bores {
		cut = append(cut, b.cutsOf(x)...)
	}
	for i, x := range cut {
		if seen[scrapKey(x)] || !b.needsScrap(x) {
			continue
		}
		seen[scrapKey(x)] = true
		var bushes, holes []string
		for _, y := range cut[i:] {
			if b.needsScrap(y) && scrapKey(y) == scrapKey(x) {
				bushes, holes = appendNew(bushes, y.Bush), appendNew(holes, y.Name)
			}
		}
		try := say.F("bush %s", list(bushes))
		if x.BushMade {
			try = say.F("a stub turned %v", say.Limits(x.OD[0], x.OD[1], 3))
		}
		const want = say.Text("it starts square and does not go in by hand")
		metal := say.Text("the same metal and thickness")
		switch {
		case x.Metal != "":
			metal = words(x.Metal) + ", of the same thickness,"
		case x.ForPart:
			holes = []string{"the " + x.Bush + " of " + list(holes)}
		}
		lim := x.Seat
		b.out.Scrap = appendNew(b.out.Scrap, x.WayName)
		b.add(Operation{Kind: KindScrap,
			Do: say.F("In scrap of %v make a hole as for %s and try %v in it", metal, list(holes),
				try), Tool: words(x.WayName), ToolMM: math.NaN(),
			Limits: &lim, OfSeat: true, AsLeft: x.AsLeft, Gauge: want, Backing: "block under the scrap",
			Minutes: 2*b.r.ToolChange + b.r.Gauging,
			Note: join("same tools, speeds and oil as on the job: the gauges here do not prove this seat, this does",
				b.trialTools(x)),
			Spindle: b.s.Machine != ByHand, Leaded: b.j.Leaded})
	}
}

// needsScrap says whether nothing but a trial proves a seat. Compound fills what a
// gauge does not tell.
func (b *builder) needsScrap(x Bore) bool {
	return x.cuts() && x.HeldBy != seat.ByCompound && !b.gauge(x.Seat, x.Name).proves
}

// scrapKey is one for bores that one scrap hole answers for.
func scrapKey(x Bore) string {
	return fmt.Sprintf("%s %v %s %.3f %.3f %.3f %v",
		x.WayName, x.ForPart, x.Metal, x.Seat[0], x.OD[0], x.OD[1], x.HeldBy)
}

// unique leaves the first of what is alike.
func unique[T comparable](all []T) []T {
	var out []T
	for _, x := range all {
		out = appendNew(out, x)
	}
	return out
}

func appendNew[T comparable](names []T, n T) []T {
	for _, m := range names {
		if m == n {
			return names
		}
	}
	return append(names, n)
}

// gaugeSeats proves every seat while the chassis is still clamped, when a
// small one can still be cut again.
func (b *builder) gaugeSeats(c clamping) {
	for _, x := range c.bores {
		lim := x.Seat
		g := b.seatGauge(x)
		o := Operation{Kind: KindGauge, Bore: x.Name,
			Do:     say.F("Gauge the seat of %s before the clamps come off", x.Name),
			Limits: &lim, OfSeat: true, AsLeft: x.AsLeft, Gauge: g.how, Go: g.goes, NoGo: g.stops, Pins: g.sizes,
			Minutes: b.r.Gauging, HoleMM: x.mid()}
		if x.ForPart {
			o.Do = say.F("Gauge the hole for the %s of %s before the clamps come off", x.Bush, x.Name)
		}
		switch {
		case g.proves:
		case x.HeldBy == seat.ByCompound:
			o.Gauge = join(g.how, "near enough: compound fills the gap")
		default:
			o.Gauge = join(g.how, "the scrap hole proves the tool")
		}
		size := say.Text("spindle stopped; write the size down, the next repairer will want it")
		if strings.HasPrefix(g.goes.String(), "pin ") {
			size = "spindle stopped; write the size down: the largest pin that goes"
		}
		o.Note = join(size, g.without, x.IfLarge)
		b.add(o)
	}
}

// oldSeats measures the seats that nothing is cut in.
func (b *builder) oldSeats() {
	b.setup = onBench
	for _, x := range b.j.Bores {
		if x.In || x.cuts() {
			continue
		}
		lim := x.Seat
		g := b.gauge(lim, x.Name)
		o := Operation{Kind: KindGauge, Bore: x.Name, Do: say.F("Gauge the old bush's seat in %s", x.Name),
			Limits: &lim, OfSeat: true, AsLeft: x.AsLeft, Gauge: g.how, Go: g.goes, NoGo: g.stops, Pins: g.sizes,
			Minutes: b.r.Gauging, HoleMM: x.mid(), Note: "nothing is cut here: scrape no metal off, only dirt"}
		if x.Made {
			o.Do, o.Note = say.F("Gauge the seat of %s again", x.Name), "as it was made: no metal comes off, only dirt"
		}
		switch {
		case x.Way == seat.CapWay:
			o.Do = say.F("Gauge the seat under the cap of %s", x.Name)
		case x.Mend == seat.MadeToFit:
			o.Do = say.F("Gauge the hole of %s, which the bush is turned to", x.Name)
			o.Note = "nothing is cut here; across and along the wear, at both faces: the least counts; write it down"
		}
		if !g.proves {
			o.Gauge = join(g.how, "take the mean of three readings with the instrument it was measured with")
		}
		b.add(o)
	}
}

// wash is the last look before the presses.
func (b *builder) wash() {
	b.setup = onBench
	o := Operation{Kind: KindWash,
		Do:   "Wash and dry the chassis, take the burrs off inside; no chips left in a seat or an oil hole",
		Tool: "brush", Minutes: b.r.Gauging}
	if !slices.ContainsFunc(b.j.Bores, Bore.cuts) {
		o.Do = "Wash and dry the chassis; no dirt left in a seat or an oil hole"
	}
	if b.j.Magnesium {
		o.Do = "Brush the chassis clean, dry, and wipe it with a dry cloth; take the burrs off inside; no chips " +
			"left in a seat or an oil hole"
		o.Tool = "dry brush, dry cloth"
	}
	b.add(o)
}
