package main

import (
	"math"

	"rebush/fits/press"
)

// says is what a solved press says of itself, by the names of the rows.
type says map[string]float64

const (
	pressure  = "pressure, mean"
	loosest   = "pressure, least"
	middle    = "pressure half way"
	tension   = "tension at the seat"
	halfHoop  = "tension half way"
	insideEnd = "tension off the ends"
	atEdge    = "tension at the edge"
	greatest  = "tension, greatest"
	opening   = "opening of the seat"
	closure   = "closing of the bore"
	tightest  = "closing, most"
	slackest  = "closing, least"
	halfClose = "closing half way"
	nearEnd   = "closing at the near end"
	farEnd    = "closing at the far end"
)

// plane reads a plate. Pressure and tension are those of the metal's own nodes;
// where the bush is warm its free growth is taken off the motion of its bore.
func (a *answer) plane(s press.Seat) says {
	angle := func(p point) float64 { return math.Atan2(p.x, -p.y) }
	of := func(part string, holds func(point) bool, f func(n int) float64) ([]float64, []float64) {
		nodes, at := a.row(part, holds, angle)
		return at, over(nodes, f)
	}
	outward := func(n int) float64 {
		v := outwards(a.nodes[n])
		return a.moved[n].x*v.x + a.moved[n].y*v.y
	}
	r := says{}
	at, p := of(metal, a.seat, func(n int) float64 { return -a.radial(n, outwards(a.nodes[n])) })
	r[pressure], r[loosest] = mean(at, p), least(p)
	_, hoop := of(metal, a.seat, func(n int) float64 { return a.hoop(n, outwards(a.nodes[n])) })
	r[tension] = most(hoop)
	at, open := of(metal, a.seat, outward)
	r[opening] = 2 * mean(at, open)
	if e, ok := s.Wall.(press.Edge); ok {
		on := func(p point) bool { return near(p.y, -s.D/2-e.Ligament) }
		_, pull := of(metal, on, func(n int) float64 { return a.stress[n][0] })
		r[atEdge] = most(pull)
	}
	if s.Di > 0 {
		at, in := of(bush, func(p point) bool { return near(math.Hypot(p.x, p.y), s.Di/2) }, outward)
		free := a.warm * s.Di
		r[closure] = free - 2*mean(at, in)
		// Both halves of the plate move alike, so the far end of the diameter
		// in direction q moves as the ray of 180 degrees less q does.
		end := at[len(at)-1]
		across := over(make([]int, len(at)), func(int) float64 { return 0 })
		for i, q := range at {
			across[i] = free - in[i] - reading(at, in, end-q)
		}
		if near(end, math.Pi) {
			r[tightest], r[slackest] = most(across), least(across)
		}
	}
	return r
}

// along reads a press that turns, along its length.
func (t turned) along(a *answer) says {
	place := func(p point) float64 { return p.y }
	from, to := t.contact()
	nodes, at := a.row(metal, a.seat, place)
	p := over(nodes, func(n int) float64 { return -a.stress[n][0] })
	hoop := over(nodes, func(n int) float64 { return a.stress[n][2] })
	half := (from + to) / 2
	r := says{pressure: mean(at, p), loosest: least(p), middle: reading(at, p, half), halfHoop: reading(at, hoop, half),
		insideEnd: math.Max(reading(at, hoop, from+ends), reading(at, hoop, to-ends))}
	for i, z := range at {
		if z > from+ends && z < to-ends {
			r[insideEnd] = math.Max(r[insideEnd], hoop[i])
		}
	}
	bore, deep := a.row(bush, func(p point) bool { return near(p.x, t.Di/2) }, place)
	closes := over(bore, func(n int) float64 { return -2 * a.moved[n].x })
	r[nearEnd], r[farEnd], r[halfClose] = closes[0], closes[len(closes)-1], reading(deep, closes, half)
	r[tightest] = most(closes)
	var zs, cs []float64
	for i, z := range deep {
		if z > from-1e-5 && z < to+1e-5 {
			zs, cs = append(zs, z), append(cs, closes[i])
		}
	}
	r[closure] = mean(zs, cs)
	return r
}

// ends is how far from the ends of a contact a stress is read, mm: at the end
// itself of a sharp contact it grows with every finer mesh.
const ends = 0.25
