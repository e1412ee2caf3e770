package route

import (
	"math"

	"rebush/fits/say"
	"rebush/plan/seat"
)

// finest are the steps in which single plug gauges are made to a size asked for,
// mm: metric, and ten-thousandths of an inch. Common practice, no source.
var finest = [2]float64{0.001, 0.00254}

// seatGauge is how a seat is shown to be inside its limits before a bush is
// pressed into it. A pin that stands off its limit by more than the doubt which
// the seat is reckoned with lets bad seats pass: a plug at the limit decides
// there, and what holds until it is bought is said. Compound fills what a gauge
// does not tell, so its seats keep the pins.
func (b *builder) seatGauge(x Bore) proof {
	lim := x.Seat
	had := len(b.needs)
	g := b.gauge(lim, x.Name)
	if g.proves || x.HeldBy != seat.ByPress || !x.cuts() {
		return g
	}
	b.needs = b.needs[:had] // plugs that bracket are not bought where plugs decide
	inch := b.s.Pins != nil && b.s.Pins.Inch
	step := finest[0]
	if inch {
		step = finest[1]
	}
	low, high := math.Round(lim[0]/step)*step, math.Round(lim[1]/step)*step // as the limits are printed
	if in, out := math.Ceil(lim[0]/step-1e-6)*step, math.Floor(lim[1]/step+1e-6)*step; inch && in < out-1e-9 {
		low, high = in, out // in inches those are rounded inwards
	}
	out, told := g, say.Text("")
	if g.sizes[0] == 0 || g.sizes[0] < lim[0]-b.r.GaugeOwn-1e-9 {
		out.goes, out.sizes[0] = b.plug(low, inch, x, "the least of its seat; what is here goes in at less too"), low
	}
	if g.sizes[1] == 0 || g.sizes[1] > lim[1]+b.r.GaugeOwn+1e-9 {
		out.stops, out.sizes[1] = b.plug(high, inch, x, "the most of its seat; what is here stops only beyond it, or use a bore gauge"), high
		told = b.withoutPlug(g, lim)
	}
	if out.goes != g.goes || out.stops != g.stops {
		out.how = "plugs at its limits, since " + g.how
	}
	out.without = told
	return out
}

// withoutPlug says what the pins that are here decide of a seat's upper limit.
func (b *builder) withoutPlug(g proof, lim [2]float64) say.Text {
	const use = say.Text("without that plug use a bore gauge")
	p := b.s.Pins
	if p == nil {
		return use + "; with neither, press nothing"
	}
	in, ok := p.below(lim[1])
	if ok && in > lim[0]+1e-9 {
		return use + say.F("; with neither: %v goes too, stop and press nothing", p.name(in))
	}
	return use + "; with neither, press nothing: no pin here tells a good seat from one too large"
}

// plug orders one plug gauge of a size in the finest steps.
func (b *builder) plug(d float64, inch bool, x Bore, why say.Text) say.Text {
	name := say.F("plug gauge %v", say.MM(d, 3))
	if inch {
		name = say.F("plug gauge %.4f in", d/25.4)
	}
	b.buy(purchase{kind: BuyGauge, tool: "plug gauge " + trim(d) + " mm" + toBuy, name: name + toBuy, size: d,
		spec: why, bore: x.Name})
	return name
}
