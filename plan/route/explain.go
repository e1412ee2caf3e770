package route

import (
	"fmt"
	"math"

	"rebush/feeds/cutting"
	"rebush/fits/dim"
	"rebush/fits/ledger"
)

// Explainer puts operations into the ledger and prints them: every figure of a
// cut by the very function that decided it.
type Explainer struct {
	Book     *ledger.Ledger
	Cuts     Handbook
	Plates   string // where the thickness of the plates stands
	Handling string // where the time of a tool change stands
}

// Row records the figures of one operation and prints it.
func (e Explainer) Row(o Operation) Row {
	row := o.row()
	c := o.Cut
	if c == nil {
		return row
	}
	row.FeedMMRev, row.FeedWords = dim.Number(c.Feed), c.FeedWords
	q, page := c.Asked, e.Book.Page(fmt.Sprintf("operations/%d", o.Number))
	machine := e.Cuts.Shop.At("machine").Source("built-in small shop:1")

	speed := page.Leaf("speed_m_min", "cutting speed", "m/min", c.SpeedFrom, c.SpeedMMin)
	dia := page.Leaf("cut_mm", "diameter being cut", "mm", machine, q.Dia)
	row.RPMIdeal = dim.Number(page.Calc2("rpm_ideal", "turns that the cutting speed asks for", "rev/min",
		"1000 x speed / (pi x diameter)", "every workshop handbook", wholeTurns, speed, dia).V)
	row.RPM = dim.Number(page.Calc2("rpm", "step of the spindle to set (0: turn it by hand)", "rev/min",
		"the spindle's own step at or below the ideal one", "common practice, no source", e.Cuts.turns, speed, dia).V)
	feed := page.Leaf("feed_mm_rev", "feed", "mm/rev", c.FeedFrom, dim.Sig9(c.Feed))
	through := page.Leaf("through_mm", "metal to go through", "mm", e.Plates, q.Through)
	if !math.IsNaN(o.Depth) {
		depth := page.Calc2("depth_mm", "how far the tool is fed from the face", "mm",
			"metal to go through, point of the drill and overrun",
			"plane geometry of a drill's point; overrun from table feed_depth", func(through, dia float64) float64 {
				q.Through, q.Dia = through, dia
				return dim.Sig9(e.Cuts.depth(q))
			}, through, dia)
		row.DepthMM = dim.Places(depth.V, 1)
	}
	if !math.IsNaN(o.Thrust) {
		from := page.Leaf("opened_mm", "hole that it opens (0: solid metal)", "mm", machine, q.From)
		row.ThrustN = dim.Number(page.Calc3("thrust_n", "thrust of a drill in normal use", "N",
			"largest of the published drilling formulas at this diameter and feed, of what the lips cut",
			"Shaw-Oxford as in Machinery's Handbook 31, a drill maker's formula: feeds/cutting/METHODS.md 2",
			func(dia, from, feed float64) float64 { return e.Cuts.thrust(c.Asked, dia, from, feed) }, dia, from, feed).V)
	}
	if o.Minutes > 0 {
		cut := page.Leaf("cutting_minutes", "time of the cut at that feed and step", "min", "feed_depth:1",
			dim.Sig9(c.Minutes))
		rest := page.Leaf("handling_minutes", "tool change and handling", "min", e.Handling,
			dim.Sig9(o.Minutes-c.Minutes))
		row.Minutes = dim.Number(page.Calc2("minutes", "time of this operation", "min",
			"cutting and handling, to a tenth", "rules minutes_...",
			func(cut, rest float64) float64 { return toATenth(cut + rest) }, cut, rest).V)
	}
	return row
}

// wholeTurns are the turns that a cutting speed asks for, as they are printed.
func wholeTurns(speed, dia float64) float64 { return math.Round(cutting.RPM(speed, dia)) }
