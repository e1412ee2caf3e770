package carry

import (
	"rebush/plan/world"
)

// carrying is one plan on one truck.
type carrying struct {
	truth *world.Truth
	plan  *Plan
	seats map[string]*Seat
	close closings
}

// bore is a hole of the truth, its shaft and which end.
func (c *carrying) bore(name string) (*world.Bore, *world.Shaft, int) {
	for i := range c.truth.Shafts {
		for k, b := range c.truth.Shafts[i].Bores {
			if b != nil && b.Name == name {
				return b, &c.truth.Shafts[i], k
			}
		}
	}
	return nil, nil, 0
}

// seated is where the seat of a hole comes: where it was wanted, the error of
// the clamping that it shares with others, and its own.
func (c *carrying) seated(s *Seat, l luck) [2]float64 {
	b, _, _ := c.bore(s.Bore)
	switch s.Mend {
	case "renew":
		return b.Centre
	case "made to fit":
		return b.Hole.Middle()
	}
	want := [2]float64{}
	switch t := c.plan.target(s.Bore); {
	case s.SeatAt != nil:
		want = s.SeatAt.mm()
	case t != nil:
		want = t.At.mm()
	}
	return plus(want, c.clamped(s.Bore, c.plan.clamping(s.Bore), l), pair(l.of(s.Bore+" place"), c.truth.Bench.Hole))
}

func (c *carrying) clamped(bore, setup string, l luck) [2]float64 {
	if setup == "" {
		setup = bore[len(bore)-4:] // by plates
	}
	return pair(l.of("clamping "+setup), c.truth.Bench.Setup)
}

// placed is the middle of the finished bore; with `want` it is bored there, and
// the errors are those of the plan.
func (c *carrying) placed(bore string, l luck, want *[2]float64) [2]float64 {
	s := c.seats[bore]
	tir := even(l.of(bore+" run-out"), 0, bushTIR)
	off := clocked(l.of(bore+" clocking"), tir/2)
	if s == nil {
		return plus(*want, c.clamped(bore, "", l), pair(l.of(bore+" place"), c.truth.Bench.Hole), off)
	}
	if s.Finish == "bore" {
		for _, o := range c.plan.Operations {
			if o.Kind == "size bore" && o.Bore == bore {
				at := c.plan.target(bore).At.mm()
				if want != nil {
					at = *want
				}
				return plus(at, c.clamped(bore, o.Setup, l), pair(l.of(bore+" place of its bore"), c.truth.Bench.Hole))
			}
		}
	}
	at := plus(c.seated(s, l), off)
	if s.Offset != nil {
		at = plus(at, s.Offset.mm(), pair(l.of(bore+" set over"), setOver))
	}
	if want != nil {
		if t := c.plan.target(bore); t != nil {
			at = plus(at, minus(*want, t.At.mm()))
		}
	}
	return at
}

// axis is a shaft as it runs: its middle in the middle of either plate.
type axis struct{ ends [2][2]float64 }

// at is its place at a distance from the outside of the left plate.
func (c *carrying) at(x axis, from float64) [2]float64 {
	return c.truth.Between([2]world.Point{x.ends[0], x.ends[1]}, from)
}

// runs is a shaft under its load; made are the holes that were bushed.
func (c *carrying) runs(s *world.Shaft, holes map[string]made) axis {
	var x axis
	for k, b := range s.Bores {
		if b == nil {
			continue
		}
		if m, ok := holes[b.Name]; ok {
			x.ends[k] = plus(m.at, times(m.clear/2, towards(s.Load)))
		} else {
			x.ends[k] = b.Stands(s.Load)
		}
	}
	for k, b := range s.Bores {
		if b == nil {
			x.ends[k] = x.ends[1-k]
		}
	}
	return x
}
