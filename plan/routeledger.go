package plan

import (
	"fmt"
	"math"

	"rebush/plan/route"
)

// explainOperation records the figures of one cutting operation: speed, step,
// feed, depth, thrust and time.
func (m *maker) explainOperation(o route.Operation, out *Operation) {
	c := o.Cut
	if c == nil {
		return
	}
	l, q := m.book, c.Asked
	at := fmt.Sprintf("operations/%d/", o.Number)
	key := func(k string) string { return at + k }
	shop := place(m.j.Shop.At("machine"), "built-in small shop:1")

	v := l.Leaf(key("speed_m_min"), "cutting speed", "m/min", rowOf(c.SpeedFrom, "speeds"), c.SpeedMMin)
	d := l.Leaf(key("cut_mm"), "diameter being cut", "mm", shop, q.Dia)
	ideal := l.Calc(key("rpm_ideal"), "turns that the cutting speed asks for", "rev/min", "1000 x speed / (pi x diameter)", "every workshop handbook",
		func(in []float64) float64 { return math.Round(1000 * in[0] / (math.Pi * in[1])) }, v, d)
	out.RPMIdeal = num(ideal.V)
	if out.RPM != nil {
		rpm := l.Calc(key("rpm"), "step of the spindle to set (0: turn it by hand)", "rev/min", "the spindle's own step at or below the ideal one", "common practice, no source",
			func(in []float64) float64 {
				again := route.Cut{Ideal: 1000 * in[0] / (math.Pi * in[1])}
				m.setSpindle(&again)
				if again.ByHand {
					return 0
				}
				return sig9(again.RPM)
			}, v, d)
		out.RPM = num(rpm.V)
	}
	feed := l.Leaf(key("feed_mm_rev"), "feed", "mm/rev", rowOf(c.FeedFrom, "feed"), sig9(c.Feed))
	plate := l.Leaf(key("through_mm"), "metal to go through", "mm", m.source("chassis/plates"), q.Through)
	if out.DepthMM.Given() {
		depth := l.Calc(key("depth_mm"), "how far the tool is fed from the face", "mm", "metal to go through, point of the drill and overrun", "plane geometry of a drill's point; overrun from table feed_depth",
			func(in []float64) float64 {
				again := q
				again.Through, again.Dia = in[0], in[1]
				return sig9(m.cutDepth(again))
			}, plate, d)
		out.DepthMM = mmAt(depth.V, 1)
	}
	if out.ThrustN != nil {
		thrust := l.Calc(key("thrust_n"), "thrust of a sharp drill", "N", "largest of the published drilling formulas at this diameter and feed", "Shaw-Oxford as in Machinery's Handbook 31, Kienzle, a drill maker's formula",
			func(in []float64) float64 { return m.thrust(q, in[0], in[1]) }, d, feed)
		out.ThrustN = num(thrust.V)
	}
	if out.Minutes != nil {
		cutting := l.Leaf(key("cutting_minutes"), "time of the cut at that feed and step", "min", "feed_depth:1", sig9(c.Minutes))
		handling := l.Leaf(key("handling_minutes"), "tool change and handling", "min", m.rules.Get("minutes_tool_change").Address, sig9(o.Minutes-c.Minutes))
		minutes := l.Calc(key("minutes"), "time of this operation", "min", "cutting and handling, to a tenth", "rules minutes_...",
			func(in []float64) float64 { return math.Round((in[0]+in[1])*10) / 10 }, cutting, handling)
		out.Minutes = num(minutes.V)
	}
}

// thrust asks the cutting tables again.
func (m *maker) thrust(q route.Query, dia, feed float64) float64 {
	mat, _, err := m.cutMaterial(q)
	if err != nil {
		return 0
	}
	a, err := m.cutting.Speed(m.cuttingQuery(mat, q, dia, feed))
	if err != nil || !a.ForcesKnown {
		return 0
	}
	return sig9(a.ThrustN)
}

// rowOf sees that a source names a row.
func rowOf(s, table string) string {
	if s == "" || s == table {
		return table + ":1"
	}
	if len(s) > 6 && s[:6] == "rules:" && s[6] == ' ' {
		return "rules:1, " + s[7:]
	}
	return s
}
