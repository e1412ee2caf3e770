package world

import "math"

// Stands is where the middle of the journal lies in a hole as it was found: at
// the end of what it wore, and where it wore nothing against its load.
func (b *Bore) Stands(load float64) Point {
	h := b.Hole
	deg := (h.Towards[0] + h.Towards[1]) / 2
	if h.Depth <= 0.002 {
		deg = load
	}
	return h.Old.Plus(deg, h.Radius-h.Journal+math.Max(h.Depth, 0))
}

// Found are the ends of a shaft as it was found, in the middles of both plates;
// one with a hole in one plate only lies square.
func (s *Shaft) Found() (ends [2]Point) {
	for k, b := range s.Bores {
		if b != nil {
			ends[k] = b.Stands(s.Load)
		}
	}
	for k, b := range s.Bores {
		if b == nil {
			ends[k] = ends[1-k]
		}
	}
	return ends
}

// Between is the place of a shaft at a distance from the outside of the left
// plate.
func (t *Truth) Between(ends [2]Point, from float64) Point {
	left, right := t.Thickness[0]/2, t.Width-t.Thickness[1]/2
	f := (from - left) / (right - left)
	return Point{(1-f)*ends[0][0] + f*ends[1][0], (1-f)*ends[0][1] + f*ends[1][1]}
}

// Reach is how much nearer the tightest tooth of a turn stands than the mean: of
// a spur pair half the run-out of both gears, of a worm drive that of the wheel.
func (g *Gear) Reach() float64 {
	if g.Screw != nil {
		return g.Runout[0] / 2
	}
	return (g.Runout[0] + g.Runout[1]) / 2
}

// room is the backlash of the tightest tooth as found, with the mate at a place.
func (m *maker) room(g *Gear, mate Point) float64 {
	t := &m.truth
	wheel := t.Between(t.Shaft(g.Wheel).Found(), g.Left)
	if s := t.Shaft(g.Mate); s != nil {
		mate = t.Between(s.Found(), g.Left)
	}
	b := g.Backlash(g.Distance(wheel, mate) - g.Reach())
	if math.IsNaN(b) {
		return -1
	}
	return b
}

// bottomed is how far the teeth of a mesh give, mm square to the flanks, once
// they carry the load in the place of the holes (j).
const bottomed = -0.01

// held lets no hole wear on once the teeth of its mesh have bottomed: then they
// carry the load. What still jams shows as binding.
func (m *maker) held() {
	t := &m.truth
	for i := range t.Gears {
		g := &t.Gears[i]
		for _, name := range []string{g.Wheel, g.Mate} {
			s := t.Shaft(name)
			if s == nil {
				continue
			}
			for range 40 {
				if m.room(g, g.Was) >= bottomed {
					break
				}
				for _, b := range s.Bores {
					if b != nil {
						b.Hole.Depth *= 0.85
					}
				}
			}
		}
	}
	for i := range t.Gears {
		if g := &t.Gears[i]; m.room(g, g.At) < 0 {
			m.jams = true
		}
	}
	if m.jams {
		m.note("teeth jam as found")
	}
}
