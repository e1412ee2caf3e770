package cutting

import (
	"fmt"
	"math"

	"rebush/fits/table"
)

// ruleNames are the rules that the package decides by; each must be above 0.
var ruleNames = []string{"boring_head_rpm", "faceplate_rpm", "thin_wall_m_min", "hand_ream_m_min",
	"zinc_plunge_m_min", "zinc_bore_m_min", "plunge_feed_mm", "drill_oversize_mm"}

func checkRules(rules *table.Rules) error {
	if rules == nil {
		return fmt.Errorf("no rules were given to work with")
	}
	have := map[string]bool{}
	for _, n := range rules.Names() {
		have[n] = true
	}
	for _, n := range ruleNames {
		if !have[n] {
			return fmt.Errorf("the table of rules has no row %q", n)
		}
		if v := rules.V(n); !(v > 0) || math.IsInf(v, 0) {
			return fmt.Errorf("rule %s is %v (%s); it must be above 0", n, v, rules.Get(n).Address)
		}
	}
	return nil
}

// cap slows the answer down to what the wall, the hand and the head allow,
// and works out the turns.
func (c *Cutting) cap(q Query, m material, op string, a *Answer) error {
	slow := func(rule string, limitMMin float64, words string) {
		if a.VUsed <= limitMMin*(1+1e-9) {
			return
		}
		r := c.rules.Get(rule)
		a.VUsed, a.CappedRule = limitMMin, rule
		a.CappedBy = fmt.Sprintf("%s %g %s", words, r.Low, r.Unit)
		a.cite(Ref{r.Source, r.Address})
	}
	if q.ThinWall && m.kind == "metal" {
		slow("thin_wall_m_min", c.rules.V("thin_wall_m_min"), "thin wall")
	}
	if q.Hand && op == ream {
		slow("hand_ream_m_min", c.rules.V("hand_ream_m_min"), "reaming by hand feed")
	}
	switch q.Head {
	case NoHead:
	case BoringHead:
		slow("boring_head_rpm", SurfaceSpeed(c.rules.V("boring_head_rpm"), q.DiaMM), "boring head")
	case Faceplate:
		slow("faceplate_rpm", SurfaceSpeed(c.rules.V("faceplate_rpm"), q.DiaMM), "offset work on a faceplate")
	default:
		return fmt.Errorf("no head %q; write %q, %q or nothing", q.Head, BoringHead, Faceplate)
	}
	a.RPM = RPM(a.VUsed, q.DiaMM)
	return nil
}

// deepRow is a factor on speed and feed from a depth in diameters.
type deepRow struct {
	from, speed, feed float64
	ref               Ref
}

func (c *Cutting) readDeep(lib *table.Library) error {
	t, err := lib.Get("speeds_deep")
	if err != nil {
		return err
	}
	for _, r := range t.Rows {
		d := deepRow{ref: refOf(r)}
		for _, cell := range []struct {
			name string
			to   *float64
		}{{"from_diameters", &d.from}, {"speed", &d.speed}, {"feed", &d.feed}} {
			if *cell.to, err = positive(r, cell.name); err != nil {
				return err
			}
		}
		c.deep = append(c.deep, d)
	}
	return nil
}

// DeepHole returns the factors on speed and feed of a drilled hole so many
// diameters deep: 1 and 1 where it is not deep. From 3, 4, 5 and 6 diameters
// on, the speed falls by 10, 20, 30 and 40 %. Source: table speeds_deep.
func (c *Cutting) DeepHole(depthMM, diaMM float64) (speed, feed float64) {
	d := c.deepest(depthMM, diaMM)
	if d == nil {
		return 1, 1
	}
	return d.speed, d.feed
}

func (c *Cutting) deepest(depthMM, diaMM float64) *deepRow {
	var found *deepRow
	for i := range c.deep {
		if depthMM >= c.deep[i].from*diaMM*(1-1e-9) && (found == nil || c.deep[i].from > found.from) {
			found = &c.deep[i]
		}
	}
	return found
}

func (c *Cutting) deepHole(q Query, op string, a *Answer) {
	if op != drill {
		return
	}
	d := c.deepest(q.DepthMM, q.DiaMM)
	if d == nil {
		return
	}
	a.VUsed *= d.speed
	if q.FeedMMRev == 0 {
		a.FeedMMRev *= d.feed
		a.FeedLow *= d.feed
		a.FeedHigh *= d.feed
	}
	a.cite(d.ref)
	a.note("%.1f diameters deep: %g of the speed, %g of the feed, and peck", q.DepthMM/q.DiaMM, d.speed, d.feed)
}

// smallRow is the small-drill correction at a diameter.
type smallRow struct {
	dMM, full, light float64
	ref              Ref
}

func (c *Cutting) readSmall(lib *table.Library) error {
	t, err := lib.Get("speeds_small")
	if err != nil {
		return err
	}
	for i, r := range t.Rows {
		s := smallRow{ref: refOf(r)}
		for _, cell := range []struct {
			name string
			to   *float64
		}{{"d_mm", &s.dMM}, {"full_feed", &s.full}, {"fifth_feed", &s.light}} {
			if *cell.to, err = positive(r, cell.name); err != nil {
				return err
			}
		}
		if i > 0 && s.dMM <= c.small[i-1].dMM {
			return fmt.Errorf("%s: diameters must rise down the table", r.Address())
		}
		c.small = append(c.small, s)
	}
	if len(c.small) == 0 {
		return fmt.Errorf("%s: no rows", t.From)
	}
	return nil
}

// SmallDrill returns the factors on the book speed of a drill of that
// diameter, at the full book feed and at a fifth of it, straight lines between
// the rows of the table and its end values beyond them. The second stands
// before a feed factor that is above 1, so it is a floor. Source: Machinery's
// Handbook 31st ed., Table 22 (table speeds_small).
func (c *Cutting) SmallDrill(diaMM float64) (fullFeed, lightFeed float64) {
	s := c.small
	if diaMM <= s[0].dMM {
		return s[0].full, s[0].light
	}
	for i := 1; i < len(s); i++ {
		if diaMM <= s[i].dMM {
			t := (diaMM - s[i-1].dMM) / (s[i].dMM - s[i-1].dMM)
			return s[i-1].full + t*(s[i].full-s[i-1].full), s[i-1].light + t*(s[i].light-s[i-1].light)
		}
	}
	return s[len(s)-1].full, s[len(s)-1].light
}

// smallDrill slows a drill that is pushed at the full feed of the book. A
// drill fed lightly keeps the book speed: its factor is nearly 1, before a
// feed factor above 1.
func (c *Cutting) smallDrill(q Query, op string, a *Answer) {
	if op != drill {
		return
	}
	a.SmallFullFeed, a.SmallLightFeed = c.SmallDrill(q.DiaMM)
	switch {
	case q.FullFeed && !q.Hand && a.SmallFullFeed < 1:
		a.VUsed *= a.SmallFullFeed
		a.cite(c.small[0].ref)
		a.note("small drill at the full feed of the book: %.2f of the speed", a.SmallFullFeed)
	case a.SmallFullFeed < 1:
		a.note("a small drill keeps the book speed only at a light feed; pushed at the full feed of the book it stands %.2f of it", a.SmallFullFeed)
	}
}
