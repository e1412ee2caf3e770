package main

import (
	"fmt"
	"math"

	"rebush/fits/press"
)

// row is one figure of a case: what, by the formula, and what is claimed of it.
type row struct {
	what    string
	formula float64
	claim
}

// study is one case: its deck at a fineness of 1 or 2, how it is read, its rows.
type study struct {
	name string
	deck func(fine int) *deck
	read func(a *answer) says
	rows []row
}

var (
	zinc  = press.Elastic{E: 85500, Nu: 0.3} // fits/table: zinc die-casting alloy 3
	brass = press.Elastic{E: 97000, Nu: 0.31}
)

const interference = 0.012

func bush46(w press.Wall) press.Seat {
	return press.Seat{D: 6, Di: 4, L: 4, Housing: zinc, Bush: brass, Wall: w}
}

// studies are all cases, those first whose answer is printed in books.
func studies() []study {
	all := []study{alone("ring 6/24 alone, 10 MPa (Lame)", press.Ring{OD: 24}, 10)}
	for _, left := range []float64{0.5, 1, 2} {
		name := fmt.Sprintf("hole, edge at %g a, 1 MPa (Jeffery)", left)
		all = append(all, alone(name, press.Edge{Ligament: 3 * left}, 1))
	}
	for _, how := range []string{slides, stuck, warm} {
		all = append(all, concentric("bush 4/6 in a ring of 24", bush46(press.Ring{OD: 24}), how))
	}
	thin := press.Seat{D: 5, Di: 3.8, L: 4, Housing: zinc, Bush: brass, Wall: press.Ring{OD: 9}}
	all = append(all, concentric("bush 3.8/5 in a ring of 9", thin, slides))
	for _, e := range edges {
		all = append(all, edged("wide plate", e.left, far, far, slides, byMean, peakSafe, e.slides),
			edged("wide plate", e.left, far, far, stuck, byMean, peakSafe, e.stuck),
			edged("plate 30 wide", e.left, 15, 12, slides, smallPlate, smallPeak, e.small))
	}
	for _, l := range lengths {
		l.Seat = bush46(press.Ring{OD: 24})
		all = append(all, l.study(slides, l.slides))
		if l.rubs != (shares{}) {
			all = append(all, l.study(rubs, l.rubs))
		}
		all = append(all, l.study(stuck, l.stuck))
	}
	return all
}

// How the two parts meet.
const (
	slides = "slides"
	stuck  = "stuck"
	warm   = "stuck, by heat"
	rubs   = "rubs at 0.15" // Coulomb friction
)

func (d *deck) pressed(how string) *deck {
	d.jump, d.stuck = interference/2, how == stuck
	if how == rubs {
		d.friction = 0.15
	}
	return d
}

// far is how far off a wide plate ends: 160 seat radii. At 40 the seat still
// opens by 0.3 % more and the edge at two radii has 0.8 % more tension; at 160
// both are within 0.1 % of the plate without end.
const far = 480

// alone is the metal without a bush under a pressure: what the books print.
func alone(name string, w press.Wall, p float64) study {
	s := bush46(w)
	s.Di = 0
	f := s.Factors()
	st := study{name: name, read: func(a *answer) says { return a.plane(s) },
		rows: []row{{pressure, p, exact}, {tension, p * f.HoleMax, exact},
			{opening, p * s.D * (f.MeanHoop + s.Housing.Nu) / s.Housing.E, exact}}}
	st.deck = func(fine int) *deck {
		d := ring(s, fine)
		d.pressure = p
		return d
	}
	if _, ok := w.(press.Edge); ok {
		st.rows = append(st.rows, row{atEdge, p * f.EdgeMax, exact})
		st.deck = func(fine int) *deck {
			d := strap(s, far, far, fine)
			d.pressure = p
			return d
		}
	}
	return st
}

func concentric(name string, s press.Seat, how string) study {
	at := s.At(interference)
	return study{name: name + ", " + how,
		deck: func(fine int) *deck {
			d := ring(s, fine)
			if how == warm { // the bush would grow by the interference
				d.stuck, d.warm = true, interference/s.D
				return d
			}
			return d.pressed(how)
		},
		read: func(a *answer) says { return a.plane(s) },
		rows: []row{{pressure, at.P, exact}, {tension, at.HousingHoopMax, exact}, {closure, at.Closure, exact},
			{opening, at.Opening, exact}}}
}

// edges are the seats beside a straight edge: the metal left in seat radii, and
// what share of the mean closing the bore closes by in the direction in which it
// closes most, and least.
var edges = []struct {
	left                 float64
	slides, stuck, small [2]float64
}{
	{left: 0.5, slides: [2]float64{1.29, 0.67}, stuck: [2]float64{1.21, 0.81}, small: [2]float64{1.16, 0.77}},
	{left: 1, slides: [2]float64{1.13, 0.85}, stuck: [2]float64{1.09, 0.91}, small: [2]float64{1.08, 0.88}},
	{left: 2, slides: [2]float64{1.05, 0.95}, stuck: [2]float64{1.04, 0.96}, small: [2]float64{1.04, 0.94}},
}

func edged(plate string, left, wide, high float64, how string, of, peak claim, oval [2]float64) study {
	s := bush46(press.Edge{Ligament: 3 * left})
	at := s.At(interference)
	return study{name: fmt.Sprintf("edge at %g a, %s, %s", left, plate, how),
		deck: func(fine int) *deck { return strap(s, wide, high, fine).pressed(how) },
		read: func(a *answer) says {
			r := a.plane(s)
			r[greatest] = math.Max(r[tension], r[atEdge])
			return r
		},
		rows: []row{{pressure, at.P, of}, {tension, at.HoleHoop, peak}, {atEdge, at.EdgeHoop, peak},
			{greatest, at.HousingHoopMax, peak}, {closure, at.Closure, of},
			{tightest, at.Closure, found(oval[0])}, {slackest, at.Closure, found(oval[1])}}}
}

// shares are what came out along a length, in the order of the rows below.
type shares [8]float64

// lengths are the bushes that turn: 4/6 in a ring of 24, with what was found.
var lengths = []struct {
	turned
	slides, rubs, stuck shares
}{
	{turned: turned{shank: 4, thickness: 4},
		slides: shares{1.00, 1.00, 1.00, 1.00, 1.00, 1.00, 1.00, 1.00},
		rubs:   shares{0.98, 1.12, 1.13, 1.00, 1.03, 1.03, 0.93, 0.93},
		stuck:  shares{0.97, 1.12, 1.23, 1.00, 1.04, 1.04, 0.90, 0.90}},
	{turned: turned{shank: 4, thickness: 4, flangeOD: 9, flangeT: 1, chamfer: 0.4},
		slides: shares{0.92, 1.03, 1.10, 0.98, 1.01, 1.02, -0.14, 1.02},
		rubs:   shares{0.91, 1.12, 1.14, 0.98, 1.04, 1.04, -0.15, 0.95},
		stuck:  shares{0.90, 1.12, 1.18, 0.98, 1.04, 1.05, -0.15, 0.94}},
	{turned: turned{shank: 4, thickness: 5},
		slides: shares{1.03, 0.91, 1.15, 1.04, 1.02, 1.23, 0.91, 1.23},
		stuck:  shares{1.00, 1.04, 1.42, 1.05, 1.08, 1.17, 0.78, 1.16}},
	{turned: turned{shank: 4, thickness: 3},
		slides: shares{0.91, 1.11, 1.41, 0.95, 0.99, 1.09, 1.09, 0.08},
		stuck:  shares{0.89, 1.18, 1.36, 0.95, 1.01, 1.05, 1.04, 0.07}},
	{turned: turned{shank: 2.5, thickness: 2.5, flangeOD: 9, flangeT: 1, chamfer: 0.4},
		slides: shares{0.90, 1.05, 1.08, 0.97, 1.01, 1.09, -0.14, 1.09},
		rubs:   shares{0.89, 1.12, 1.12, 0.97, 1.01, 1.07, -0.15, 1.07},
		stuck:  shares{0.89, 1.12, 1.12, 0.97, 1.02, 1.06, -0.15, 1.06}},
	{turned: turned{shank: 3, thickness: 2.5, flangeOD: 9, flangeT: 1, chamfer: 0.4},
		slides: shares{0.82, 1.24, 1.30, 0.88, 0.95, 0.95, -0.12, 0.59},
		stuck:  shares{0.82, 1.22, 1.28, 0.88, 0.95, 0.95, -0.11, 0.60}},
}

func (t turned) study(how string, of shares) study {
	at := t.At(interference)
	kind := "plain"
	if t.flangeOD > 0 {
		kind = fmt.Sprintf("flange %g x %g", t.flangeOD, t.flangeT)
	}
	s := study{name: fmt.Sprintf("turned, %s, %g long in %g, %s", kind, t.shank, t.thickness, how), read: t.along,
		deck: func(fine int) *deck {
			d := t.deck(fine).pressed(how)
			t.hold(d)
			return d
		}}
	s.rows = []row{{pressure, at.P, holds}, {middle, at.P, claim{}}, {halfHoop, at.HousingHoopMax, claim{}},
		{insideEnd, at.HousingHoopMax, claim{}}, {closure, at.Closure, claim{}}, {halfClose, at.Closure, claim{}},
		{tightest, at.Closure, claim{}}, {nearEnd, at.Closure, claim{}}, {farEnd, at.Closure, claim{}}}
	for i := range of {
		s.rows[i+1].claim = found(of[i])
	}
	if flush := t.flangeOD == 0 && t.shank == t.thickness; flush && how == slides {
		// No stress along the axis anywhere: plane stress through and through.
		for i := range s.rows {
			s.rows[i].claim = exact
		}
	} else if flush {
		for i, r := range s.rows {
			switch r.what {
			case middle, halfHoop, closure, halfClose:
				s.rows[i].claim = byLength
			}
		}
	}
	return s
}
