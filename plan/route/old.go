package route

import (
	"rebush/fits/finding"
	"rebush/fits/say"
)

// What draws a bush out: no punch of its size passes the opposite hole, so what
// pushes is slipped in between the plates.
const (
	drawBolt = say.Text("bolt through the bush, a washer a little under its outside slipped on between the plates, tube " +
		"and nut outside")
	drawRing = say.Text("tube on that wall, clear of the flange; nothing bears on the other plate")
)

// removeOld takes factory bushes out first: their seats are the best datum. One
// that carries a new bush stays.
func (b *builder) removeOld() {
	b.setup = onBench
	for _, x := range b.j.Bores {
		if x.Out != "" {
			b.takeOut(x)
		}
		if !x.Bushed || x.Part != nil && x.Part.Stays {
			continue
		}
		b.add(Operation{Kind: KindTakeOut, Pressed: true, Bore: x.Name,
			Do:   say.F("Draw the old bush out of %s to the outside", x.Name),
			Tool: drawBolt, Minutes: b.r.Press,
			Backing:    drawRing,
			GaugeFirst: "Place and bore of the old bush measured and written down: they are lost with it.",
			Note:       "will it not move, bore it to a thin shell and collapse that; never drive it"})
	}
}

// takeOut presses a bush of this job out again: its seat is known.
func (b *builder) takeOut(x Bore) {
	b.add(Operation{Kind: KindTakeOut, Pressed: true, Bore: x.Name,
		Do:   say.F("Draw bush %s out of %s to the outside", x.Out, x.Name),
		Tool: drawBolt, Minutes: b.r.Press,
		Backing: drawRing,
		Note:    "it is not used again; what compound is left comes off the seat before it is gauged"})
}

// seatUnknown says whether an old bush hides a seat that nobody has measured.
func (b *builder) seatUnknown() bool {
	for _, x := range b.j.Bores {
		if x.SeatUnknown {
			return true
		}
	}
	return false
}

// measureAndStop ends a route: no cut is planned about a seat that nobody has
// seen.
func (b *builder) measureAndStop() {
	b.setup = onBench
	for _, x := range b.j.Bores {
		if !x.SeatUnknown {
			continue
		}
		b.add(Operation{Kind: KindGauge, Bore: x.Name, Minutes: b.r.Gauging, OfSeat: true,
			Do:   say.F("Measure the seat that the old bush of %s left", x.Name),
			Tool: "pins or a small hole gauge, micrometer",
			Gauge: "widest and narrowest, each at both faces; its middle, as the centres were measured; " +
				"is it round and unscored",
			Note: "THIS SHEET ENDS HERE. Nothing is cut yet: write the seat into the job file (diameter, centre, " +
				"sound or not, and bushed: no) and plan again"})
		b.trouble(Trouble{Level: finding.Note, Rule: EndsHere, Where: x.Name,
			Text: "the old bush is in and its seat is not known: the operations end when it is out and measured",
			Fix:  "write its outside, bushed: {od: ...}, where it is known"})
	}
}
