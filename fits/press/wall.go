package press

import "math"

const pi = math.Pi

// Factors are the stresses that unit pressure in the seat makes in the metal
// round it.
type Factors struct {
	HoleThin  float64 // hoop on the seat where the metal is thinnest
	HoleMax   float64 // largest hoop on the seat
	EdgeMax   float64 // largest tension on the outer edge
	MeanHoop  float64 // mean hoop round the seat, H
	OuterMean float64 // mean hoop round the outside of a ring or boss; 0 for a plate
}

// Factors of the seat's wall.
func (s Seat) Factors() Factors {
	switch w := s.Wall.(type) {
	case Ring:
		return boss(s.D/2, w.OD/2, 0)
	case Boss:
		return boss(s.D/2, w.OD/2, w.Ecc)
	case Edge:
		return edge(s.D/2, w.Ligament)
	}
	return Factors{HoleThin: 1, HoleMax: 1, MeanHoop: 1}
}

// Ligament is the least metal between the seat and the outside, mm; false
// where there is no outside.
func (s Seat) Ligament() (float64, bool) {
	switch w := s.Wall.(type) {
	case Ring:
		return (w.OD - s.D) / 2, true
	case Boss:
		return (w.OD-s.D)/2 - w.Ecc, true
	case Edge:
		return w.Ligament, true
	}
	return 0, false
}

// boss is the ring with its hole of radius a off the middle of its outside of
// radius b by e. With v = -1 at the thinnest point and +1 at the thickest:
//
//	hoop on the hole  = -1 + 2 (C1-v)(S1 W+v)/N, greatest at v = -1 for e <= a/2, else at v = -a/(2e)
//	hoop on the edge  = 2 (C2-v)(S2 W-v)/N, greatest at v = -1
//	mean on the hole  = 2 S1^2 W/N - 1
//	mean on the edge  = 2 S2^2 W/N
//
// The letters are those of bipolar coordinates; they are written here times e,
// which takes the division by zero out of e = 0, where the ring of Lame is
// left. The mean on the edge is the same integral as that on the hole (own
// derivation).
//
// Source: Jeffery 1921, Phil. Trans. A221; Timoshenko and Goodier, Theory of
// Elasticity, bipolar coordinates.
func boss(a, b, e float64) Factors {
	x1 := (b*b - a*a - e*e) / 2 // e x1
	x2 := x1 + e*e              // e x2
	c2 := (b - a - e) * (b + a + e) / 2 * ((b - a + e) * (b + a - e) / 2)
	w := (a*a + b*b - e*e) / 2 // c e W
	m := c2 * (1/(a*a) + 1/(b*b))
	hole := func(v float64) float64 { return -1 + 2*(x1/a-e*v)*(w/a+e*v)/m }
	v := -1.0
	if e > a/2 {
		v = -a / (2 * e)
	}
	mean := 2 * math.Sqrt(c2) * w / m
	return Factors{
		HoleThin:  hole(-1),
		HoleMax:   hole(v),
		EdgeMax:   2 * (x2/b + e) * (w/b + e) / m,
		MeanHoop:  mean/(a*a) - 1,
		OuterMean: mean / (b * b),
	}
}

// edge is the plate with a straight edge, the limit of boss for b infinite.
// With k the distance of the hole's centre from the edge in hole radii:
//
//	greatest on the hole = (k^2+1)/(k^2-1); at the point nearest the edge 1
//	on the edge          = 4/(k^2-1)
//	mean on the hole     = 2k/sqrt(k^2-1) - 1
//
// The edge has the larger one where the metal left is below 0.73 a.
func edge(a, ligament float64) Factors {
	t := ligament / a
	k := 1 + t
	d := t * (2 + t) // k^2 - 1
	return Factors{HoleThin: 1, HoleMax: (k*k + 1) / d, EdgeMax: 4 / d, MeanHoop: 2*k/math.Sqrt(d) - 1}
}

// housing fills in the stresses of the housing at P.
func (s Seat) housing(st *State, f Factors) {
	p := st.P
	st.HoleHoop, st.EdgeHoop = p*f.HoleMax, p*f.EdgeMax
	st.HousingHoopMax = max(st.HoleHoop, st.EdgeHoop)
	// At the seat the radial stress is -p; the edge is under tension alone.
	h := f.HoleMax
	st.HousingMises = p * max(math.Sqrt(h*h+h+1), f.EdgeMax)
	st.HousingTresca = p * max(h+1, f.EdgeMax)
	if s.Housing.Yield > 0 {
		st.HousingUse = st.HousingTresca / s.Housing.Yield
		st.HousingFlows = p > s.HousingLimit()
	}
	st.Opening = p * s.D * (f.MeanHoop + s.Housing.Nu) / s.Housing.E
	st.Growth = p * s.outside() * f.OuterMean / s.Housing.E
}

func (s Seat) outside() float64 {
	switch w := s.Wall.(type) {
	case Ring:
		return w.OD
	case Boss:
		return w.OD
	}
	return 0
}

// HousingLimit is the pressure at which the metal round the seat flows through
// to the outside, MPa; 0 where the housing has no yield. For a ring it is
//
//	p = sy ln(OD/D), and sy at the most
//
// (Tresca, exact while the hoop at the seat stays tensile; Timoshenko, Strength
// of Materials II, from memory). Off the middle and at an edge it is that of the
// ring to the nearest edge: the ligament then has at least that much metal.
func (s Seat) HousingLimit() float64 {
	t, ok := s.Ligament()
	if !ok {
		return s.Housing.Yield
	}
	return s.Housing.Yield * min(1, math.Log1p(2*t/s.D))
}
