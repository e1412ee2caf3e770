package route

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"rebush/feeds/cutting"
	"rebush/fits/dim"
	"rebush/fits/material"
	"rebush/fits/say"
	"rebush/plan/job"
)

// Handbook answers for the cutting figures of one chassis in one shop, from
// the cutting tables and the steps of its spindle. Its Cut is a Cutter.
type Handbook struct {
	Tables  *cutting.Cutting
	Metals  *material.Registry
	Chassis *material.Material
	Shop    *job.Shop
}

// Cut answers one question. It fails where the tables have no speed for it.
func (h Handbook) Cut(q Query) (Cut, error) {
	mat, note, err := h.metal(q)
	if err != nil {
		return Cut{}, err
	}
	asked := h.query(mat, q, q.Dia, 0)
	a, err := h.Tables.Speed(asked)
	if err != nil && q.Op == OpBore {
		asked.Tool = "carbide"
		a, err = h.Tables.Speed(asked)
	}
	if err != nil {
		return Cut{}, err
	}
	a = h.slowerThanDrill(q, a)
	c := Cut{Ideal: a.RPM, Feed: a.FeedMMRev, Lubricant: say.Words(a.Lubricant), Thrust: math.NaN(), Note: note,
		Depth: h.depth(q),
		Asked: q, SpeedMMin: a.VUsed, SpeedFrom: h.speedRow(a), FeedFrom: citing(a, "feed")}
	if a.ForcesKnown {
		c.Thrust = a.ThrustN
	}
	if a.CappedBy != "" {
		c.Note = join(c.Note, say.Words("held to: "+a.CappedBy))
	}
	if note != "" {
		c.Lubricant = h.ownOil(q, c.Lubricant)
	}
	h.set(&c)
	c.FeedWords = feedWords(c, q)
	point := 0.0
	if q.Op == OpDrill {
		if pecks := h.Tables.Pecks(q.Through, q.Dia); len(pecks) > 1 {
			at := say.Row(1, "mm", ", ", pecks[:len(pecks)-1]...) // at the last it is through
			c.Note = join(c.Note, say.F("deep for its size: withdraw it to clear the chips at %v", at))
		}
		point = cutting.PointLength(q.Dia, h.Tables.PointAngle())
	}
	if turns := min(c.RPM, c.Ideal); turns > 0 && a.FeedMMRev > 0 {
		c.Minutes = cutting.Minutes(q.Through, h.Tables.Approach(), point, h.Tables.Overrun(), a.FeedMMRev, turns)
	}
	return c, nil
}

// slowerThanDrill holds a reamer to the speed of a drill of its size in the same
// metal: the drill's figure can be the lowest of many published ones and the
// reamer's of few, and no reamer runs faster than the drill before it. Common
// practice, no source.
func (h Handbook) slowerThanDrill(q Query, a cutting.Answer) cutting.Answer {
	if q.Op != OpReam {
		return a
	}
	q.Op = OpDrill
	mat, _, err := h.metal(q)
	if err != nil {
		return a
	}
	drill, err := h.Tables.Speed(h.query(mat, q, q.Dia, 0))
	if err != nil || drill.RPM >= a.RPM {
		return a
	}
	a.RPM, a.VUsed, a.Operation = drill.RPM, drill.VUsed, drill.Operation
	a.CappedBy = "a drill of its size, which runs slower here"
	return a
}

// query puts a question of the route into the terms of the tables. A feed of 0
// asks for that of the table.
func (h Handbook) query(mat string, q Query, dia, feed float64) cutting.Query {
	tool := "hss"
	if q.Op == OpDrill && h.Shop.DrillTool != "" {
		tool = h.Shop.DrillTool
	}
	return cutting.Query{Material: mat, Tool: tool, Operation: string(q.Op), DiaMM: dia, FromMM: q.From,
		DepthMM: q.Through, Hand: true,
		ThinWall: q.ThinWall, Head: q.Head, FeedMMRev: feed}
}

// metal is the material of the cutting tables for one operation. The tables
// have no row for drilling a porous bush, which is done for its oil way alone:
// the row of bearing bronze stands in, and is said to.
func (h Handbook) metal(q Query) (name string, note say.Text, err error) {
	mat := h.Chassis
	if q.Material != "" {
		if mat, err = h.Metals.Find(q.Material); err != nil {
			return "", "", err
		}
	}
	if mat.Kind == material.PorousBronze && q.Op == OpDrill {
		if stand, err := h.Metals.Find("bearing bronze"); err == nil {
			return stand.Cutting, "speed of bearing bronze: none is known for a porous one", nil
		}
	}
	if mat.Cutting == "" {
		return "", "", fmt.Errorf("no cutting speed is known for %s", mat.Name)
	}
	return mat.Cutting, "", nil
}

// ownOil is the lubricant of the metal itself: a stand-in lends its speed, not
// its oil.
func (h Handbook) ownOil(q Query, lent say.Text) say.Text {
	own, err := h.Metals.Find(q.Material)
	if err != nil {
		return lent
	}
	wet, err := h.Tables.Lubricant(own.Cutting)
	if err != nil {
		return lent
	}
	return say.Words(wet.Text)
}

// depth is how far the tool is fed from the face.
func (h Handbook) depth(q Query) float64 {
	switch q.Op {
	case OpDrill:
		return h.Tables.Through(q.Through, q.Dia)
	case OpReam, OpBore, OpPlunge:
		return q.Through + h.Tables.Overrun()
	}
	return q.Through
}

// thrust asks the tables for the thrust of a diameter, of the hole that is
// opened, and a feed; 0 where it is not known.
func (h Handbook) thrust(q Query, dia, from, feed float64) float64 {
	q.From = from
	mat, _, err := h.metal(q)
	if err != nil {
		return 0
	}
	a, err := h.Tables.Speed(h.query(mat, q, dia, feed))
	if err != nil || !a.ForcesKnown {
		return 0
	}
	return dim.Sig9(a.ThrustN)
}

// set chooses the step of the spindle at or below the ideal, or turning by
// hand.
func (h Handbook) set(c *Cut) {
	sh := h.Shop
	step := h.Tables.Step(sh.Spindle, sh.SpindleMin, sh.SpindleMax, c.Ideal)
	c.RPM, c.AtTop, c.ByHand = step.RPM, step.AtTop, step.TooFast
	switch {
	case step.TooFast:
		c.Note = join(c.Note, say.F("the lowest step, %.0f, is too fast: turn the spindle by hand", step.RPM))
	case step.Unknown && Machine(sh.MachineKind) == ByHand:
		c.ByHand = true
	case step.Unknown:
		c.Note = join(c.Note, "the shop file names no spindle steps: set the next step below")
		c.RPM = readable(c.RPM)
	case len(sh.Spindle) == 0:
		// A spindle without steps is set to a figure that can be read off it.
		c.RPM = max(readable(c.RPM), sh.SpindleMin)
	}
}

// turns are what the spindle is set to for a cutting speed at a diameter; 0
// where it is turned by hand.
func (h Handbook) turns(speed, dia float64) float64 {
	c := Cut{Ideal: cutting.RPM(speed, dia)}
	h.set(&c)
	if c.ByHand {
		return 0
	}
	return dim.Sig9(c.RPM)
}

// readable rounds turns down to what a scale shows.
func readable(n float64) float64 {
	step := 10.0
	if n < 100 {
		step = 1
	}
	return math.Floor(dim.Sig9(n)/step+1e-9) * step
}

// feedWords tells the feed at the turns that are set, not at the ideal ones.
func feedWords(c Cut, q Query) say.Text {
	words := cutting.FeedWords(c.Feed, c.RPM, true)
	if c.ByHand {
		words = say.F("by hand, light and steady: about %v a turn", say.MM(c.Feed, 3).Trim())
	}
	if q.Op == OpDrill && q.Material == "" {
		words = join(words, "ease off as the point comes through")
	}
	return words
}

// speedRow is the row that the speed came from: the one whose lowest figure it
// is, else the first that the answer names.
func (h Handbook) speedRow(a cutting.Answer) string {
	for _, row := range h.Tables.Rows(a.Material, a.Tool, a.Operation) {
		v, err := strconv.ParseFloat(row.Get("v_min_m_min"), 64)
		if err == nil && math.Abs(v-a.VUsed) < 1e-9 {
			return row.Address() + ": " + row.Source()
		}
	}
	return citing(a, "speeds")
}

// citing is the first row of a kind of table that an answer rests on.
func citing(a cutting.Answer, table string) string {
	for _, r := range a.Sources {
		if strings.HasPrefix(r.Address, table) {
			return r.Address + ": " + r.Text
		}
	}
	if a.CappedRule != "" {
		return "rules:1, " + a.CappedRule
	}
	for _, r := range a.Sources {
		return r.Address + ": " + r.Text
	}
	return table + ":1"
}
