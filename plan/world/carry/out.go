package carry

import (
	"math"
	"strings"

	"rebush/plan/world"
)

// Carried is what became of a plan on one truck.
type Carried struct {
	Seed   uint64
	Class  string // trusted, untrusted, contradicted or none: the worst of its meshes
	Stated float64
	Right  float64            // share of the turns that came right
	Seats  float64            // share with every seat right
	Meshes float64            // share with every mesh right
	First  map[string]float64 // what failed first, share of the turns
	Feared map[string]float64 // what the plan says will fail first
	Meshed []Meshing
	Survey []Error
	Cut    bool
	Close  closings
}

// Meshing is one mesh with its shafts bored at four places, share of the turns
// with the backlash in the window.
type Meshing struct {
	Gear                                           string
	Trusted, Wide                                  bool
	Planned, Surveyed, Middle, Old                 float64
	PlannedNone, SurveyedNone, MiddleNone, OldNone float64 // without any backlash
	U, Window                                      float64
	Moves                                          bool
}

// Error is how far a survey is off.
type Error struct {
	Bore, Method string
	Off          [2]float64
	U            float64
	Cov          *[3]float64
	Wear         float64
	Repaired     bool
	Deg          float64
}

type closings struct {
	n, inside    int
	loose, tight int
}

func (c *carrying) note(s *Seat, tight, closes float64) {
	if s.Closure == nil || s.Interference == nil {
		return
	}
	um := 1000 * tight
	if um < float64(s.Interference.Min) {
		c.close.loose++
	} else if um > float64(s.Interference.Max) {
		c.close.tight++
	}
	if um < float64(s.Interference.Min) || um > float64(s.Interference.Max) {
		return
	}
	c.close.n++
	if k := 1000 * closes; k >= float64(s.Closure.Min) && k <= float64(s.Closure.Max) {
		c.close.inside++
	}
}

// Out carries a plan out so many times.
func Out(seed uint64, t *world.Truth, p *Plan, turns int) Carried {
	c := &carrying{truth: t, plan: p, seats: map[string]*Seat{}}
	for i := range p.Seats {
		if s := &p.Seats[i]; s.Mend != "" && s.Bush != "" {
			c.seats[s.Bore] = s
		}
	}
	out := Carried{Seed: seed, Stated: math.NaN(), First: map[string]float64{}, Class: c.class()}
	out.Survey = c.errors()
	out.Meshed = make([]Meshing, len(t.Gears))
	c.places(seed, turns, out.Meshed)
	if p.Chance == nil || len(c.seats) == 0 {
		return out
	}
	out.Cut, out.Stated, out.Feared = true, p.Chance.Right, map[string]float64{}
	for _, x := range p.Chance.Causes {
		_, what, _ := strings.Cut(x.Cause, ": ")
		out.Feared[what] += x.Share * (1 - p.Chance.Right)
	}
	each := 1 / float64(turns)
	for turn := range turns {
		l := luck{seed, uint64(turn)}
		holes, why := map[string]made{}, ""
		for i := range p.Seats {
			s := &p.Seats[i]
			if c.seats[s.Bore] != s {
				continue
			}
			m := c.seat(s, l)
			holes[s.Bore] = m
			if why == "" {
				why = m.failed
			}
		}
		if why == "" {
			out.Seats += each
		}
		meshes := ""
		for i := range t.Gears {
			g := &t.Gears[i]
			if meshes == "" {
				meshes = judged(c.mesh(g.Name), c.turned(g, c.axisOf(g.Wheel, holes), c.axisOf(g.Mate, holes)))
			}
		}
		if meshes == "" {
			out.Meshes += each
		}
		if why == "" {
			why = meshes
		}
		if why == "" {
			out.Right += each
		} else {
			out.First[why] += each
		}
	}
	out.Close = c.close
	return out
}

func (c *carrying) axisOf(shaft string, holes map[string]made) axis {
	if s := c.truth.Shaft(shaft); s != nil {
		return c.runs(s, holes)
	}
	return axis{}
}

func (c *carrying) mesh(gear string) *Mesh {
	for i := range c.plan.Mesh {
		if c.plan.Mesh[i].Gear == gear {
			return &c.plan.Mesh[i]
		}
	}
	return nil
}

// class is that of the worst mesh.
func (c *carrying) class() string {
	rank := map[string]int{"none": 0, "trusted": 1, "untrusted": 2, "contradicted": 3}
	worst := "none"
	for _, m := range c.plan.Mesh {
		k := "trusted"
		if !m.Trusted {
			k = "untrusted"
		}
		for _, f := range c.plan.Findings {
			if f.Where == m.Gear && f.Rule == "mesh contradicts" {
				k = "contradicted"
			}
		}
		if rank[k] > rank[worst] {
			worst = k
		}
	}
	return worst
}
