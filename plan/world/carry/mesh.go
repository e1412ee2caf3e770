package carry

import (
	"math"

	"rebush/plan/world"
)

// What a whole turn of a mesh has to keep.
const (
	tightest = 0.01 // normal backlash of the tightest tooth, mm (common practice, no source)
	contact  = 1.2  // contact ratio of the loosest (common handbook minimum, from memory)
	running  = 1.0  // the same of a pair of few teeth that never reaches the usual one
)

// turn is a mesh over a whole turn on the truth.
type turn struct {
	mean, near, far float64 // distances of the axes
	backlash        float64 // mean, round the operating pitch circle
	tight           float64 // normal, at the tightest tooth
	contact         float64 // at the loosest
	wanted          float64 // what that has to be
}

// turned runs a mesh whose axes stand as given.
func (c *carrying) turned(g *world.Gear, wheel, mate axis) turn {
	from := g.Left
	w := c.at(wheel, from)
	m := [2]float64(g.At)
	if g.Mate != "" {
		m = c.at(mate, from)
	}
	t := turn{mean: g.Distance(w, m)}
	reach := g.Reach()
	t.near, t.far = t.mean-reach, t.mean+reach
	t.backlash = g.Backlash(t.mean) / math.Cos(working(g, t.mean))
	t.tight = g.Backlash(t.near) - c.leant(g, wheel, mate)
	t.contact, t.wanted = ratio(g, t.far), contact
	if ratio(g, unplayed(g)) < contact {
		t.wanted = running
	}
	return t
}

// judged holds a turned mesh to the window that the plan states for it. Where
// there is none, or it is closed, a mesh is right where it runs.
func judged(m *Mesh, t turn) string {
	if !(t.tight >= tightest) {
		return "tightest tooth"
	}
	if m == nil || m.Window == nil || !m.Window[0].known() || m.Window[1]-m.Window[0] < 1e-6 {
		if !(t.contact >= running) {
			return "contact of the loosest"
		}
		return ""
	}
	if !(t.contact >= t.wanted) {
		return "contact of the loosest"
	}
	if t.backlash < float64(m.Window[0]) {
		return "backlash below its window"
	}
	if t.backlash > float64(m.Window[1]) {
		return "backlash above its window"
	}
	return ""
}

// leant is the backlash square to the flanks that a spur pair loses over its face
// where its shafts are not parallel: at one end of the teeth they are nearer, and
// turned against each other. Plane geometry.
func (c *carrying) leant(g *world.Gear, wheel, mate axis) float64 {
	if g.Teeth == nil {
		return 0
	}
	lean := minus(wheel.ends[1], wheel.ends[0])
	at := [2]float64(g.At)
	if g.Mate != "" {
		lean = minus(lean, minus(mate.ends[1], mate.ends[0]))
		at = c.at(mate, g.Left)
	}
	line := minus(c.at(wheel, g.Left), at)
	line = times(1/size(line), line)
	in := math.Abs(lean[0]*line[0] + lean[1]*line[1])
	out := math.Abs(lean[0]*line[1] - lean[1]*line[0])
	q := working(g, size(minus(c.at(wheel, g.Left), at)))
	span := c.truth.Width - (c.truth.Thickness[0]+c.truth.Thickness[1])/2
	return g.Face / span * (in*math.Sin(q) + out*math.Cos(q))
}

// unplayed is the distance of the axes at which there is no backlash.
func unplayed(g *world.Gear) float64 {
	if g.Screw != nil {
		return g.Screw.At(0)
	}
	return g.Teeth.At(0)
}
