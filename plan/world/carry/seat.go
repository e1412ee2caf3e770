package carry

import (
	"math"
	"strings"

	"rebush/plan/world"
)

// How far shops scatter. What a cutter leaves is quoted as plus and minus: reamed
// 0.015 where care is taken and 0.025 as usual, bored 0.010 (a guide of a shop
// that makes to order, methods on scatter of holes). That is read as three
// standard deviations (j), half of its square the habit of the tool in this job
// and half from hole to hole (j).
const (
	reamedCareful = 0.015 / 3
	reamedUsual   = 0.025 / 3
	boredScatter  = 0.010 / 3
	milledScatter = 0.024 / 3 // milling IT10 (a chart of machines and grades)
	outOfRound    = 0.006     // largest, on diameter, even below it (j)
	bushTIR       = 0.03      // largest of a bush that is bought, even below it (ISO 2795: coaxiality IT9)
	leastMetal    = 0.25      // mm between seat and edge below which the edge breaks out (j)
	slips         = 0.005     // share of holes that a grab or a misread dial spoils (j)
	setOver       = 0.01      // of a bush that is turned eccentric, mm on each axis (j)
)

// made is a hole as the plan leaves it on one truck.
type made struct {
	at     [2]float64 // middle of its finished bore
	clear  float64    // running clearance on diameter, mm
	failed string     // what failed first, "" nothing
}

// scatter is the standard deviation of a seat that a tool cuts.
func scatter(tool string, careful bool) float64 {
	switch {
	case strings.Contains(tool, "end mill"):
		return milledScatter
	case !strings.Contains(tool, "reamer"):
		return boredScatter
	case careful:
		return reamedCareful
	}
	return reamedUsual
}

// clears says whether a round seat takes the whole of a worn hole in: no point
// of its wall lies outside. It is walked round half a degree at a time.
func clears(h world.Hole, at [2]float64, radius float64) bool {
	for i := range 720 {
		deg := float64(i) / 2
		if size(minus(h.Old.Plus(deg, h.Wall(deg, 0)), at)) > radius {
			return false
		}
	}
	return true
}

// left is the metal between a seat and the nearest free edge.
func left(b *world.Bore, at [2]float64, radius float64) float64 {
	least := math.Inf(1)
	for _, e := range b.Edges {
		to, off := towards(e.Deg), minus(at, b.Hole.Old)
		least = math.Min(least, e.Away-to[0]*off[0]-to[1]*off[1]-radius)
	}
	return least
}

// seat cuts, presses and sizes one hole of the plan.
func (c *carrying) seat(s *Seat, l luck) made {
	b, shaft, end := c.bore(s.Bore)
	m := made{at: c.placed(s.Bore, l, nil)}
	fail := func(what string) {
		if m.failed == "" {
			m.failed = what
		}
	}
	if l.of(s.Bore+" slip").Float64() < slips {
		fail("a slip")
	}
	key := "seats/" + s.Bore + "/"
	// The seat, its habit shared by all that the tool cuts in this job.
	u := scatter(s.Tool, c.truth.Bench.Careful) / math.Sqrt2
	low, high := c.plan.figure(key+"tool/hole_mm/min"), c.plan.figure(key+"tool/hole_mm/max")
	if !(low > 0) && s.Seat != nil {
		low, high = float64(s.Seat.Min), float64(s.Seat.Max)
	}
	seat := even(l.of("size of "+s.Tool), low, high) + normal(l.of("habit of "+s.Tool), u) + normal(l.of(s.Bore+" seat"), u)
	if s.cuts() && s.clearing() && !clears(b.Hole, c.seated(s, l), seat/2) {
		fail("worn wall left")
	}
	if s.cuts() && left(b, c.seated(s, l), seat/2) < leastMetal {
		fail("breaks out")
	}
	out := even(l.of(s.Bore+" bush outside"), c.plan.figure(key+"bush/od_mm/min"), c.plan.figure(key+"bush/od_mm/max"))
	in := even(l.of(s.Bore+" bush bore"), c.plan.figure(key+"bush/bore_mm/min"), c.plan.figure(key+"bush/bore_mm/max"))
	round := even(l.of(s.Bore+" round"), 0, outOfRound)
	tight := out - seat - round/2
	ring := c.ringOf(s, l, out, in)
	mpa, closes := ring.press(tight)
	if why := c.holds(s, l, tight, mpa, ring); why != "" {
		fail(why)
	}
	bore := in - closes
	c.note(s, tight, closes)
	journal := shaft.Journal[end]
	given := c.plan.figure(key + "journal_mm")
	if s.expected() {
		r := l.of(s.Bore + " finish")
		aim := even(r, float64(s.Expected.Min), float64(s.Expected.Max))
		switch s.Finish {
		case "to its own axle":
			bore = math.Max(bore, journal+aim-given)
		case "mandrel":
			bore = math.Max(bore, aim)
		case "ream":
			bore = math.Max(bore, aim+normal(r, scatter("reamer", c.truth.Bench.Careful)))
		case "bore":
			bore = math.Max(bore, aim+normal(r, boredScatter))
		}
	}
	m.clear = bore - journal
	if s.Running != nil {
		um := 1000 * m.clear
		if um < c.leastRun() && s.Finish != "to its own axle" {
			fail("runs too tight")
		}
		if um > float64(s.Running.Max)+0.5 {
			fail("runs too loose")
		}
	}
	if bore < shaft.MustPass[end] && s.Finish != "to its own axle" {
		fail("does not pass")
	}
	return m
}

// holds says why a bush does not hold, or the plate does not, "" where both do.
func (c *carrying) holds(s *Seat, l luck, tight, mpa float64, r ring) string {
	if s.HeldBy != "press" {
		if s.HeldBy == "compound" && (tight > 0.02 || tight < -0.2) {
			return "gap for compound"
		}
		return ""
	}
	rough := l.of(s.Bore + " rough")
	lost := even(rough, 0.4, 0.8) * (even(rough, 0.002, 0.0063) + even(rough, 0.001, 0.004))
	if tight <= 0 || tight <= lost && s.Second == "" {
		return "loose in its seat"
	}
	if s.HoopLimit != nil && s.Hoop != nil {
		if most := c.plan.figure("seats/" + s.Bore + "/pressure_mpa/max"); most > 0 && mpa/most**s.Hoop > *s.HoopLimit {
			return "wall overstrained"
		}
	}
	return ""
}

// leastRun is the least running clearance that the plan accepts, um: what it
// adds for what has to pass is tried by itself.
func (c *carrying) leastRun() float64 {
	if um := c.plan.figure("rules/bore_over_journal_um"); um > 0 {
		return um
	}
	return 10
}
