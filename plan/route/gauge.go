package route

import (
	"fmt"
	"math"
	"slices"

	"rebush/fits/say"
	"rebush/plan/seat"
)

// proof is how a hole is shown to be inside its limits.
type proof struct {
	how         say.Text
	goes, stops say.Text
	proves      bool // false: goes and stops bracket the hole only
}

// gauge finds the smallest pin that must enter and the largest that must not.
// Where the pins' steps are too coarse for the limits they bracket the hole,
// and something else has to prove it.
func (b *builder) gauge(lim [2]float64) proof {
	if p := b.s.Pins; p != nil && p.Step > 0 && lim[0] >= p.From-1e-9 {
		in := p.From + math.Ceil((lim[0]-p.From)/p.Step-1e-6)*p.Step
		out := p.From + math.Floor((lim[1]-p.From)/p.Step+1e-6)*p.Step
		if in < out-1e-9 && out <= p.To+1e-9 {
			return proof{how: "pins", goes: p.name(in), stops: p.name(out), proves: true}
		}
		low := math.Min(p.From+math.Floor((lim[0]-p.From)/p.Step+1e-6)*p.Step, p.To)
		high := p.From + math.Ceil((lim[1]-p.From)/p.Step-1e-6)*p.Step
		w := proof{how: say.F("pins bracket it only: steps of %v do not prove %v", p.step(),
			say.Um((lim[1]-lim[0])*1000, 0)), goes: p.name(low)}
		if high <= p.To+1e-9 {
			w.stops = p.name(high)
		} else if t, ok := b.surely(lim[1]); ok {
			w.stops = shank(t)
			w.how = "pin and shank bracket it only"
		}
		return w
	}
	return b.byShanks(lim)
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
func (b *builder) byShanks(lim [2]float64) proof {
	under := b.r.ShankUnder
	if under == nil {
		under = func(float64) float64 { return 0 }
	}
	var in, out *Tool
	for i := range b.s.Drills {
		t := &b.s.Drills[i]
		if t.Size-under(t.Size) >= lim[0]-1e-9 && t.Size <= lim[1]+1e-9 {
			if in == nil {
				in = t
			} else {
				out = t
			}
		}
	}
	const how = say.Text("drill shanks, each measured with the micrometer first")
	if in != nil && out != nil {
		return proof{how: how, goes: shank(*in), stops: shank(*out), proves: true}
	}
	var low *Tool
	for i := range b.s.Drills {
		if b.s.Drills[i].Size <= lim[0]+1e-9 {
			low = &b.s.Drills[i]
		}
	}
	high, ok := b.surely(lim[1])
	if low == nil || !ok || lim[0]-low.Size > b.r.ShankNear || high.Size-lim[1] > b.r.ShankNear {
		return proof{how: "no pin or shank near these limits"}
	}
	return proof{how: how + "; they bracket it only", goes: shank(*low), stops: shank(high)}
}

// shank names the shank of a drill, as it is stamped.
func shank(t Tool) say.Text { return words(t.Name) + " shank" }

// surely is the smallest drill whose shank is surely not under a size.
func (b *builder) surely(d float64) (Tool, bool) {
	for _, t := range b.s.Drills {
		u := 0.0
		if b.r.ShankUnder != nil {
			u = b.r.ShankUnder(t.Size)
		}
		if t.Size-u >= d-1e-9 {
			return t, true
		}
	}
	return Tool{}, false
}

func (p proof) box() say.Text {
	switch {
	case p.goes != "" && p.stops != "":
		return p.goes + " goes, " + p.stops + " does not"
	case p.goes != "":
		return p.goes + " goes"
	}
	return "its scrap hole took the bush"
}

// tryInScrap makes a hole in scrap with each seat tool whose seat no gauge can
// prove, and tries the very bushes in it, before anything is cut.
func (b *builder) tryInScrap() {
	b.setup, b.last = onBench, ""
	seen := map[string]bool{}
	for i, x := range b.j.Bores {
		if seen[scrapKey(x)] || !b.needsScrap(x) {
			continue
		}
		seen[scrapKey(x)] = true
		var bushes, holes []string
		for _, y := range b.j.Bores[i:] {
			if b.needsScrap(y) && scrapKey(y) == scrapKey(x) {
				bushes, holes = appendNew(bushes, y.Bush), appendNew(holes, y.Name)
			}
		}
		try := say.F("bush %s", list(bushes))
		if x.BushMade {
			try = say.F("a stub turned %v", say.Limits(x.OD[0], x.OD[1], 3))
		}
		want := say.Text("it starts square and does not go in by hand")
		if x.HeldBy == seat.ByCompound {
			want = "it slides in without shake"
		}
		lim := x.Seat
		b.add(Operation{Kind: KindScrap,
			Do: say.F("In scrap of the same metal and thickness make a hole as for %s and try %v in it", list(holes),
				try), Tool: words(x.WayName), ToolMM: math.NaN(),
			Limits: &lim, OfSeat: true, Gauge: want, Backing: "block under the scrap",
			Minutes: 2*b.r.ToolChange + b.r.Gauging,
			Note:    "same tools, speeds and oil as on the job: the gauges here do not prove this seat, this does",
			Spindle: b.s.Machine != ByHand, Leaded: b.j.Leaded})
	}
}

func (b *builder) needsScrap(x Bore) bool { return x.cuts() && !b.gauge(x.Seat).proves }

// scrapKey is one for bores that one scrap hole answers for.
func scrapKey(x Bore) string {
	return fmt.Sprintf("%s %.3f %.3f %.3f %v", x.WayName, x.Seat[0], x.OD[0], x.OD[1], x.HeldBy)
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
		g := b.gauge(lim)
		o := Operation{Kind: KindGauge, Bore: x.Name,
			Do:     say.F("Gauge the seat of %s before the clamps come off", x.Name),
			Limits: &lim, OfSeat: true, Gauge: g.how, Go: g.goes, NoGo: g.stops, Minutes: b.r.Gauging, HoleMM: x.mid()}
		if !g.proves {
			o.Gauge = join(g.how, "the scrap hole proves the tool")
		}
		o.Note = join(b.once("spindle stopped; write the size down, the next repairer will want it"), b.once(x.IfLarge))
		b.add(o)
	}
}

// oldSeats measures the seats that nothing is cut in.
func (b *builder) oldSeats() {
	b.setup = onBench
	for _, x := range b.j.Bores {
		if x.In || x.Way != seat.OldSeatWay && x.Way != seat.CapWay {
			continue
		}
		lim := x.Seat
		g := b.gauge(lim)
		o := Operation{Kind: KindGauge, Bore: x.Name, Do: say.F("Gauge the old bush's seat in %s", x.Name),
			Limits: &lim, OfSeat: true, Gauge: g.how, Go: g.goes, NoGo: g.stops,
			Minutes: b.r.Gauging, HoleMM: x.mid(), Note: "nothing is cut here: scrape no metal off, only dirt"}
		if x.Made {
			o.Do, o.Note = say.F("Gauge the seat of %s again", x.Name), "as it was made: no metal comes off, only dirt"
		}
		if x.Way == seat.CapWay {
			o.Do = say.F("Gauge the seat under the cap of %s", x.Name)
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
