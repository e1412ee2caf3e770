package plan

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"rebush/feeds/cutting"
	"rebush/fits/material"
	"rebush/fits/say"
	"rebush/plan/route"
)

// cutter answers the route's questions from the cutting tables and this
// shop's spindle.
func (m *maker) cutter() route.Cutter {
	return func(q route.Query) (route.Cut, error) {
		mat, note, err := m.cutMaterial(q)
		if err != nil {
			return route.Cut{}, err
		}
		cq := m.cuttingQuery(mat, q, q.Dia, 0)
		a, err := m.cutting.Speed(cq)
		if err != nil && q.Operation == "bore" {
			cq.Tool = "carbide"
			a, err = m.cutting.Speed(cq)
		}
		if err != nil {
			return route.Cut{}, err
		}
		c := route.Cut{Ideal: a.RPM, Feed: a.FeedMMRev, Lubricant: say.Words(a.Lubricant), Thrust: math.NaN(), Note: note, Depth: m.cutDepth(q),
			Asked: q, SpeedMMin: a.VUsed, SpeedFrom: m.speedRow(a), FeedFrom: citing(a, "feed")}
		if a.ForcesKnown {
			c.Thrust = a.ThrustN
		}
		if note != "" {
			// A stand-in lends its speed, not its oil.
			if own, err := m.materials.Find(q.Material); err == nil {
				if wet, err := m.cutting.Lubricant(own.Cutting); err == nil {
					c.Lubricant = say.Words(wet.Text)
				}
			}
		}
		m.setSpindle(&c)
		m.feedWords(&c, q)
		point := 0.0
		if q.Operation == "drill" {
			if pecks := m.cutting.Pecks(q.Through, q.Dia); len(pecks) > 1 {
				c.Note = say.Join("; ", c.Note, say.F("deep for its size: withdraw it to clear the chips at %v", say.Row(1, "mm", ", ", pecks[:len(pecks)-1]...)))
			}
			point = cutting.PointLength(q.Dia, m.cutting.PointAngle())
		}
		if turns := min(c.RPM, c.Ideal); turns > 0 && a.FeedMMRev > 0 {
			c.Minutes = cutting.Minutes(q.Through, m.cutting.Approach(), point, m.cutting.Overrun(), a.FeedMMRev, turns)
		}
		return c, nil
	}
}

// cuttingQuery puts a question of the route into the terms of the tables. A
// feed of 0 asks for that of the table.
func (m *maker) cuttingQuery(mat string, q route.Query, dia, feed float64) cutting.Query {
	tool := "hss"
	if q.Operation == "drill" && m.j.Shop.DrillTool != "" {
		tool = m.j.Shop.DrillTool
	}
	return cutting.Query{Material: mat, Tool: tool, Operation: q.Operation, DiaMM: dia, DepthMM: q.Through, Hand: true, ThinWall: q.ThinWall, Head: cutting.Head(q.Head), FeedMMRev: feed}
}

// speedRow is the row that the speed came from: the one whose lowest figure it
// is, else the first that the answer names.
func (m *maker) speedRow(a cutting.Answer) string {
	for _, row := range m.cutting.Rows(a.Material, a.Tool, a.Operation) {
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
		return "rules: " + a.CappedRule
	}
	for _, r := range a.Sources {
		return r.Address + ": " + r.Text
	}
	return table
}

// cutMaterial is the material of the cutting tables for one operation. The
// tables have no row for drilling a porous bush, which is done for its oil way
// alone: the row of bearing bronze stands in, and is said to.
func (m *maker) cutMaterial(q route.Query) (name string, note say.Text, err error) {
	mat := m.chassis
	if q.Material != "" {
		if mat, err = m.materials.Find(q.Material); err != nil {
			return "", "", err
		}
	}
	if mat.Kind == material.PorousBronze && q.Operation == "drill" {
		if stand, err := m.materials.Find("bearing bronze"); err == nil {
			return stand.Cutting, "speed of bearing bronze: none is known for a porous one", nil
		}
	}
	if mat.Cutting == "" {
		return "", "", fmt.Errorf("no cutting speed is known for %s", mat.Name)
	}
	return mat.Cutting, "", nil
}

// cutDepth is how far the tool is fed from the face.
func (m *maker) cutDepth(q route.Query) float64 {
	switch q.Operation {
	case "drill":
		return m.cutting.Through(q.Through, q.Dia)
	case "ream", "bore", "plunge", "end mill":
		return q.Through + m.cutting.Overrun()
	}
	return q.Through
}

// setSpindle sets the step at or below the ideal, or turns by hand.
func (m *maker) setSpindle(c *route.Cut) {
	sh := m.j.Shop
	step := m.cutting.Step(sh.Spindle, sh.SpindleMin, sh.SpindleMax, c.Ideal)
	c.RPM, c.AtTop, c.ByHand = step.RPM, step.AtTop, step.TooFast
	switch {
	case step.TooFast:
		c.Note = say.Join("; ", c.Note, say.F("the lowest step, %.0f, is too fast: turn the spindle by hand", step.RPM))
	case step.Unknown && sh.MachineKind == "hand":
		c.ByHand = true
	case step.Unknown:
		c.Note = say.Join("; ", c.Note, "the shop file names no spindle steps: set the next step below")
		c.RPM = roundTurns(c.RPM)
	case len(sh.Spindle) == 0:
		// A spindle without steps is set to a figure that can be read off it.
		if c.RPM = roundTurns(c.RPM); c.RPM < sh.SpindleMin {
			c.RPM = sh.SpindleMin
		}
	}
}

// roundTurns rounds turns down to what a scale shows.
func roundTurns(n float64) float64 {
	step := 10.0
	if n < 100 {
		step = 1
	}
	return math.Floor(sig9(n)/step+1e-9) * step
}

// feedWords tells the feed at the turns that are set, not at the ideal ones.
func (m *maker) feedWords(c *route.Cut, q route.Query) {
	if c.ByHand {
		c.FeedWords = say.F("by hand, light and steady: about %v a turn", say.MM(c.Feed, 3).Trim())
	} else {
		c.FeedWords = cutting.FeedWords(c.Feed, c.RPM, true)
	}
	if q.Operation == "drill" && q.Material == "" {
		c.FeedWords = say.Join("; ", c.FeedWords, "ease off as the point comes through")
	}
}
