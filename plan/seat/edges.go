package seat

import (
	"fmt"
	"math"

	"rebush/plan/job"
	"rebush/plan/survey"
)

// freeEdge is one free edge as seen from a bore's new centre.
type freeEdge struct {
	away float64 // mm
	deg  float64 // the way it lies
	name string
}

// measured are the figures of the edges that were measured from a bore, mm: the
// metal beyond its wall, or the way from its middle.
func measured(b *job.Bore) []float64 {
	var out []float64
	for _, e := range b.Edges {
		v := e.Metal
		if !v.Given() {
			v = e.Away
		}
		out = append(out, v.Float())
	}
	return out
}

// freeEdges are all free edges that are known near a bore: those measured from
// it, by the figures given, and the outline. A measured edge is taken as
// straight, square to the direction it was measured in. there is the diameter
// of a round hole in the place of the worn one, 0 none: the metal is measured
// from its wall.
func freeEdges(old survey.Hole, at [2]float64, there float64, measured []float64, c job.Chassis) []freeEdge {
	var out []freeEdge
	from := old.Middle
	for i, e := range old.Bore.Edges {
		towards := e.AtDeg * math.Pi / 180
		sin, cos := math.Sincos(towards)
		away := measured[i]
		if e.Metal.Given() {
			away += wallAt(old, there, towards)
		}
		moved := (at[0]-from[0])*cos + (at[1]-from[1])*sin
		out = append(out, freeEdge{away - moved, e.AtDeg, fmt.Sprintf("the edge measured at %.0f degrees", e.AtDeg)})
	}
	x, y := at[0], at[1]
	switch {
	case len(c.Corners) > 2:
		for i := range c.Corners {
			q := onSegment(at, c.Corners[i].Float(), c.Corners[(i+1)%len(c.Corners)].Float())
			out = append(out, freeEdge{math.Hypot(q[0]-x, q[1]-y), math.Atan2(q[1]-y, q[0]-x) * 180 / math.Pi,
				"the outline"})
		}
	case c.Length.Given() && c.Height.Given():
		out = append(out, freeEdge{x, 180, "the rear end of the plate"}, freeEdge{c.Length.Float() - x, 0,
			"the front end of the plate"},
			freeEdge{y, 270, "the datum edge"}, freeEdge{c.Height.Float() - y, 90, "the upper edge of the plate"})
	}
	return out
}

// nearestOf is the nearest of some edges, +Inf away where there is none.
func nearestOf(edges []freeEdge, which func(freeEdge) bool) freeEdge {
	best := freeEdge{away: math.Inf(1)}
	for _, e := range edges {
		if which(e) && (e.away < best.away-slack || e.away < best.away+slack && e.name < best.name) {
			best = e
		}
	}
	return best
}

// otherWay is how far the nearest edge is that lies another way than the first
// one by more than so many degrees; 0 where there is none.
func otherWay(edges []freeEdge, first freeEdge, by float64) float64 {
	e := nearestOf(edges, func(e freeEdge) bool { return math.Abs(math.Remainder(e.deg-first.deg, 360)) > by })
	if math.IsInf(e.away, 1) {
		return 0
	}
	return e.away
}

// offBoss is how far a new centre lies from the middle of its boss, which is
// taken to be where the old centre was.
func offBoss(old survey.Hole, at [2]float64) float64 {
	return math.Hypot(at[0]-old.Worn.O[0], at[1]-old.Worn.O[1])
}

// EdgeAway is the way from the new centre to whatever is nearest of free edge
// and outside of the boss, mm; +Inf where neither is known.
func (h *Hole) EdgeAway() float64 {
	if h.BossR > 0 {
		return math.Min(h.Edge, h.BossR-h.BossE)
	}
	return h.Edge
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
