package main

import (
	"math"
	"sort"

	"rebush/fits/press"
)

// turned is a bush in a round plate as both turn about their axis: x is the
// radius, y the depth below the face of the plate on which the flange lies.
type turned struct {
	press.Seat
	thickness float64 // of the plate, mm
	shank     float64 // length of the bush without its flange; below or above thickness
	flangeOD  float64 // 0: plain
	flangeT   float64
	chamfer   float64 // of the seat, by 45 degrees, at the face
}

// contact is from where to where the seat touches the bush.
func (t turned) contact() (from, to float64) { return t.chamfer, math.Min(t.shank, t.thickness) }

func (t turned) deck(fine int) *deck {
	m := newMesh()
	m.turns = true
	in, a, b := t.Di/2, t.D/2, t.Wall.(press.Ring).OD/2
	from, to := t.contact()
	// Depths at which something begins or ends.
	depths := []float64{0, from, to, t.shank, t.thickness}
	sort.Float64s(depths)
	through := even(4 * fine)
	for i := 1; i < len(depths); i++ {
		lo, hi := depths[i-1], depths[i]
		if near(lo, hi) {
			continue
		}
		steps := both(max(2, 2*int(math.Ceil(4*(hi-lo))))*fine, 4)
		deep := func(s float64) float64 { return lo + s*(hi-lo) }
		if hi < t.shank+1e-5 {
			m.block(bush, through, steps, func(u, s float64) point { return point{in + u*(a-in), deep(s)} })
		}
		if hi < t.thickness+1e-5 {
			m.block(metal, graded(9*fine, 8), steps, func(u, s float64) point {
				r := a + math.Max(0, t.chamfer-deep(s))
				return point{r + u*(b-r), deep(s)}
			})
		}
	}
	if t.flangeOD > 0 {
		up := both(max(4, int(6*t.flangeT))*fine, 2)
		m.block(bush, through, up, func(u, s float64) point { return point{in + u*(a-in), -s * t.flangeT} })
		m.block(bush, even(6*fine), up, func(u, s float64) point {
			return point{a + u*(t.flangeOD/2-a), -s * t.flangeT}
		})
	}
	d := &deck{mesh: m, held: map[int][2]bool{},
		metals: map[string]press.Elastic{bush: t.Bush, metal: t.Housing},
		seat:   func(p point) bool { return near(p.x, a) && p.y > from-1e-5 && p.y < to+1e-5 },
		normal: func(point) point { return point{1, 0} }}
	return d
}

// hold keeps the parts from moving along the axis: stuck parts, and those that
// rub, hold each other.
func (t turned) hold(d *deck) {
	for n, p := range d.nodes {
		if !near(p.y, t.thickness) && !near(p.y, t.shank) {
			continue
		}
		if d.inside[metal][n] && near(p.y, t.thickness) && near(p.x, t.Wall.(press.Ring).OD/2) ||
			d.inside[bush][n] && near(p.y, t.shank) && near(p.x, t.Di/2) && !d.stuck && d.friction == 0 {
			d.held[n] = [2]bool{false, true}
		}
	}
}
