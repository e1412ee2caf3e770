package survey

import "math"

// Plug is a solid plug that is bored again.
type Plug struct {
	Centre  [2]float64
	SeatR   float64 // least radius of its seat
	LeastOD float64 // so that the bush about T stands in it with a web around
}

// PlugCentre returns where a plug is best put: the middle of the hole as
// found, with allow on the radius, and the least plug that holds a bush of
// bushOD about T with a web of at least web.
func (b WornBore) PlugCentre(T [2]float64, allow, bushOD, web float64) Plug {
	e := b.Found()
	p := Plug{Centre: e, SeatR: b.SeatRadius(e) + allow}
	p.LeastOD = 2 * math.Max(p.SeatR, dist(T, e)+bushOD/2+web)
	return p
}
