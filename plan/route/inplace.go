package route

import (
	"math"

	"rebush/feeds/cutting"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/seat"
)

// boreInPlace puts the chassis back under the spindle: it is a clamping of its
// own. Both bores of a shaft are done in one where the bar brings them to one size
// about one axis, each of its settings through both; else the chassis is turned
// over between them, for a bar that is set to the far bore would spoil the near one.
func (b *builder) boreInPlace(mine []Bore) {
	var in []Bore
	for _, x := range mine {
		if x.Finish == seat.BoreInPlace {
			in = append(in, x)
		}
	}
	if len(in) == 2 && b.inLine(in[0], in[1]) {
		b.clampAgain(in)
		return
	}
	for _, x := range in {
		b.clampAgain([]Bore{x})
	}
}

// inLine says whether a boring bar takes two bushes to size in one clamping.
func (b *builder) inLine(near, far Bore) bool {
	return near.Side != far.Side && oneAxis(near, far) && near.FinishTool == far.FinishTool &&
		sameSize(near.Limits[0], far.Limits[0]) && sameSize(near.Limits[1], far.Limits[1]) && b.j.Width > 0 &&
		slender(b.r.ReachDiameters, near.Closed[0]) >= b.deep(OpBore, near.Limits[1])-1e-9
}

// clampAgain bores one bush in place, or two at one setting.
func (b *builder) clampAgain(in []Bore) {
	x := in[0]
	c := clamping{up: x.Side, bores: in, far: map[string]bool{}}
	if len(in) > 1 {
		c.far[in[1].Name] = true
	}
	set := Setup{Name: b.letter(), Plate: c.up, Mirrored: c.up == job.Right, Words: b.holdWords(c), Clamping: true}
	for _, y := range in {
		set.Bores = append(set.Bores, y.Name)
	}
	b.setup, b.last = set.Name, ""
	b.out.Setups = append(b.out.Setups, set)
	b.add(Operation{Kind: KindSetUp,
		Do: say.F("Clamp the chassis again, %s plate uppermost, to bore %s", c.up, list(set.Bores)), Holding: set.Words,
		Note: join(b.trueAgain(in[0]), b.mirrorNote(c))})
	lim, at := x.Limits, x.At
	if c.up == job.Right {
		at[0] = b.mirrorX(at[0])
	}
	g := b.gauge(lim, x.Name)
	o := Operation{Kind: KindSizeBore, Bore: x.Name, Do: say.F("Bore %s in place on its new centre", x.Name),
		Tool: words(x.FinishTool), Approach: b.approach(c, x),
		Limits: &lim, Gauge: g.how, Go: g.goes, NoGo: g.stops, Pins: g.sizes, Backing: "slotted block close under that wall",
		Minutes: b.r.Sizing, HoleMM: (lim[0] + lim[1]) / 2,
		Note: "sharp tool, light last cuts"}
	q := Query{Op: OpBore, Dia: (lim[0] + lim[1]) / 2, Through: x.Plate, Head: cutting.BoringHead, Material: x.BushMetal}
	if o.At = &at; b.s.Machine == OnLathe {
		o.At, o.Tool, q.Head = nil, "boring tool", cutting.Faceplate
	}
	if len(in) > 1 {
		o.Do = say.F("Bore %s and %s in place on their new centre at one setting", x.Name, in[1].Name)
		o.Backing = "slotted blocks close under both walls"
		o.Note, q.Through = join(bothPlates, o.Note), math.Max(b.j.Width, x.Plate)
	}
	b.figures(&o, q)
	o.Leaded = x.Leaded || len(in) > 1 && in[1].Leaded
	b.add(o)
	for _, y := range in[1:] {
		b.add(Operation{Kind: KindGauge, Bore: y.Name, Do: say.F("Gauge the bore of %s before the clamps come off", y.Name),
			Limits: &lim, Gauge: g.how, Go: g.goes, NoGo: g.stops, Pins: g.sizes, Minutes: b.r.Gauging, HoleMM: o.HoleMM,
			Note: "spindle stopped; from below where a pin does not pass the near bore"})
	}
}

// trueAgain says how a bush that is bored in place comes under the spindle.
func (b *builder) trueAgain(x Bore) say.Text {
	if b.s.Machine != OnLathe {
		return "bring the outside of the new bush true under the spindle, then set the dials to its new centre"
	}
	w := say.Text("run the outside of the new bush true with the indicator")
	if off(x.At, x.SeatAt) >= 0.005 && x.SeatAt != [2]float64{} {
		y := x
		y.Old = x.SeatAt
		w = join(w, b.shift(y))
	}
	return join(w, "counterweight until it stays where it is put; turn it once by hand, guard shut, 300 rev/min at most")
}

func (b *builder) mirrorNote(c clamping) say.Text {
	if c.up != job.Right {
		return ""
	}
	return "MIRRORED"
}
