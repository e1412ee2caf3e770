package plan

import (
	"fmt"
	"math"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/seat"
)

// nearEdge is one free edge as seen from a bore's target.
type nearEdge struct {
	away float64
	deg  float64 // the way it lies
	name string
}

// nearestEdge is the distance from a bore's target to the nearest free edge:
// those measured from the bore, and the outline.
func (m *maker) nearestEdge(b *bore) (float64, string) {
	e := m.nearest(b, func(nearEdge) bool { return true })
	return e.away, e.name
}

// secondEdge is the distance to the nearest edge that lies another way than
// the nearest one, by more than 45 degrees; 0 where there is none.
func (m *maker) secondEdge(b *bore) float64 {
	first := m.nearest(b, func(nearEdge) bool { return true })
	e := m.nearest(b, func(e nearEdge) bool { return math.Abs(math.Remainder(e.deg-first.deg, 360)) > 45 })
	if math.IsInf(e.away, 1) {
		return 0
	}
	return e.away
}

func (m *maker) nearest(b *bore, which func(nearEdge) bool) nearEdge {
	best := nearEdge{away: math.Inf(1)}
	for _, e := range m.edges(b) {
		if which(e) && e.away < best.away {
			best = e
		}
	}
	return best
}

// edges are all free edges that are known near a bore.
func (m *maker) edges(b *bore) []nearEdge {
	var out []nearEdge
	for _, e := range b.b.Edges {
		sin, cos := math.Sincos(e.AtDeg * math.Pi / 180)
		from := b.found
		at := e.Away.Float()
		if e.Metal.Given() {
			at = e.Metal.Float() + m.reachFrom(b, from, e.AtDeg)
		}
		// The edge is taken as straight, square to the direction it was
		// measured in.
		moved := (b.target[0]-from[0])*cos + (b.target[1]-from[1])*sin
		out = append(out, nearEdge{at - moved, e.AtDeg, fmt.Sprintf("the edge measured at %.0f degrees", e.AtDeg)})
	}
	c := m.j.Chassis
	x, y := b.target[0], b.target[1]
	switch {
	case len(c.Corners) > 2:
		for i := range c.Corners {
			q := onSegment(b.target, c.Corners[i].Float(), c.Corners[(i+1)%len(c.Corners)].Float())
			out = append(out, nearEdge{math.Hypot(q[0]-x, q[1]-y), math.Atan2(q[1]-y, q[0]-x) / deg, "the outline"})
		}
	case c.Length.Given() && c.Height.Given():
		out = append(out, nearEdge{x, 180, "the rear end of the plate"}, nearEdge{c.Length.Float() - x, 0, "the front end of the plate"},
			nearEdge{y, 270, "the datum edge"}, nearEdge{c.Height.Float() - y, 90, "the upper edge of the plate"})
	}
	return out
}

// onSegment is the point between a and b that is nearest to p.
func onSegment(p, a, b [2]float64) [2]float64 {
	dx, dy := b[0]-a[0], b[1]-a[1]
	l2 := dx*dx + dy*dy
	t := 0.0
	if l2 > 0 {
		t = math.Max(0, math.Min(1, ((p[0]-a[0])*dx+(p[1]-a[1])*dy)/l2))
	}
	return [2]float64{a[0] + t*dx, a[1] + t*dy}
}

// wallFindings says what the mechanics of one bush near one edge leave out.
func (m *maker) wallFindings(b *bore) {
	a := b.chosen
	if a.Corner {
		m.say(finding.Caution, "seat/corner", b,
			"two edges are near; the tension worked out for the nearest one alone is too low", "press lightly with a second hold, or set a clean solid bush in retaining compound")
	}
	if a.NearHole != "" {
		m.say(finding.Caution, "seat/near hole", b,
			say.F("the metal towards %s is thin; the tension worked out without it is too low", a.NearHole), "press lightly, with the other hole filled by its shaft or a pin")
	}
	if a.MandrelIn {
		m.say(finding.Caution, "seat/mandrel in", b,
			say.F("press it with the %v mandrel left in its bore: the bush cannot give way, and the press of %.0f MPa is worked out for that", say.MM(a.FinishSizes[0], 3), a.PHigh), "")
	}
	if a.Filled {
		m.say(finding.Caution, "seat/wear filled", b,
			"this seat does not clear the wear: the rest is filled with the compound, and the shaft stays out until it is hard", "a larger bush or a plug clears it")
	}
	if a.Short {
		m.say(finding.Caution, "seat/short seat", b,
			say.F("the plate is %v for a seat of %v and there is no room for a shoulder: finish both bores in line", say.MM(b.hole.Plate, 2), say.MM(a.SeatHigh, 2)), "room between plate and hub for a shoulder")
	}
	if a.HeldBy == "cap" {
		m.say(finding.Note, "seat/partner", b,
			"a bearing under a cap is renewed here: measure its partner on this shaft too", "")
	}
}

func proudWords(a *seat.Answer) string {
	if a.MustFace {
		return "face it to length before pressing, there is no room inside for what stands proud"
	}
	return "face it to length before pressing, or let it stand proud inside if there is room"
}
