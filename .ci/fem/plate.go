package main

import (
	"math"

	"rebush/fits/press"
)

// ring is a quarter of a bush in a round ring, plane stress; without a bush the
// ring alone.
func ring(s press.Seat, fine int) *deck {
	m := newMesh()
	a, b := s.D/2, s.Wall.(press.Ring).OD/2
	quarter := func(in, out float64) func(s, t float64) point {
		return func(s, t float64) point { return polar(in+s*(out-in), t*math.Pi/2) }
	}
	if s.Di > 0 {
		m.block(bush, even(4*fine), even(8*fine), quarter(s.Di/2, a))
	}
	m.block(metal, graded(10*fine, 5), even(8*fine), quarter(a, b))
	d := planeDeck(m, s)
	for n, p := range m.nodes {
		d.held[n] = [2]bool{near(p.x, 0), near(p.y, 0)}
	}
	return d
}

func planeDeck(m *mesh, s press.Seat) *deck {
	return &deck{mesh: m, held: map[int][2]bool{},
		metals: map[string]press.Elastic{bush: s.Bush, metal: s.Housing},
		seat:   func(p point) bool { return near(math.Hypot(p.x, p.y), s.D/2) },
		normal: outwards}
}

func outwards(p point) point {
	r := math.Hypot(p.x, p.y)
	return point{p.x / r, p.y / r}
}

// strap is half of a plate that has a straight edge below the seat. It reaches
// wide to the side and high above, both from the seat's centre. Rays from that
// centre fill a box round the seat, straight strips the rest.
func strap(s press.Seat, wide, high float64, fine int) *deck {
	m := newMesh()
	a := s.D / 2
	h := a + s.Wall.(press.Edge).Ligament
	side, top := 2*a, 2*a
	low, up := math.Atan2(side, h), math.Pi-math.Atan2(side, top)
	// Where the ray of angle q leaves the box.
	leaves := func(q float64) point {
		sin, cos := math.Sincos(q)
		switch {
		case q <= low:
			return point{h * sin / cos, -h}
		case q <= up:
			return point{side, -side * cos / sin}
		}
		return point{-top * sin / cos, top}
	}
	sectors := [][2]float64{{0, low}, {low, up}, {up, math.Pi}}
	around := []int{10 * fine, 14 * fine, 6 * fine}
	out := graded(7*fine, 3)
	for i, q := range sectors {
		angle := func(t float64) float64 { return q[0] + t*(q[1]-q[0]) }
		if s.Di > 0 {
			m.block(bush, even(4*fine), even(around[i]), func(u, t float64) point {
				return polar(s.Di/2+u*(a-s.Di/2), angle(t))
			})
		}
		m.block(metal, out, even(around[i]), func(u, t float64) point {
			return along(polar(a, angle(t)), leaves(angle(t)), u)
		})
	}
	rest := graded(12*fine, 0.6*math.Max(wide, high)/a)
	right := func(t float64) point { return leaves(low + t*(up-low)) }
	above := func(t float64) point { return leaves(up + t*(math.Pi-up)) }
	m.block(metal, rest, even(around[1]), func(u, t float64) point {
		return point{side + u*(wide-side), right(t).y}
	})
	m.block(metal, rest, even(around[2]), func(u, t float64) point {
		return point{above(t).x, top + u*(high-top)}
	})
	m.block(metal, rest, rest, func(u, t float64) point {
		return point{side + u*(wide-side), top + t*(high-top)}
	})
	d := planeDeck(m, s)
	for n, p := range m.nodes {
		d.held[n] = [2]bool{near(p.x, 0), m.inside[metal][n] && near(p.x, 0) && near(p.y, high)}
	}
	return d
}
