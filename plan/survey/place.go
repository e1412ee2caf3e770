package survey

import (
	"errors"
	"math"
)

// ErrNoRoom says that a seat cannot be had.
var ErrNoRoom = errors.New("no place for the seat clears the worn hole")

// Place is an eccentric seat.
type Place struct {
	E [2]float64 // centre of the seat
	R float64    // its least radius there
	// Offset of the bore from the seat, mm; an indicator reads twice this.
	Offset float64
	Rad    float64 // direction of the bore from the seat's centre
}

// EccentricSeat returns the smallest seat that clears the hole wherever it may
// stand, and how far off it the bore at T is. About the middle of one lobe
// this is R + w/2, where a seat about the old centre needs R + w.
func (b WornBore) EccentricSeat(T [2]float64) Place {
	return b.place(b.Found(), T)
}

// EccentricSeatFor returns the place nearest to T where a seat of radius q
// clears the hole, with allow to spare: the least offset that a bush of this
// size needs. ErrNoRoom where even the best place does not do.
func (b WornBore) EccentricSeatFor(T [2]float64, q, allow float64) (Place, error) {
	type disc struct {
		c [2]float64
		r float64
	}
	ds := []disc{{b.O, q - allow - b.R}, {toward(b.O, b.D, b.ThetaRad), q - allow - b.JournalR}}
	if b.D2 > 0 {
		ds = append(ds, disc{toward(b.O, b.D2, b.Theta2), q - allow - b.JournalR})
	}
	for i := -20; b.FanHalf > 0 && i <= 20; i++ {
		ds = append(ds, disc{toward(b.O, b.D, b.ThetaRad+b.FanHalf*float64(i)/20), q - allow - b.JournalR})
	}
	ok := func(p [2]float64) bool { return b.SeatRadius(p)+allow <= q+1e-9 }
	// The nearest point of discs that meet: T, one foot, or one corner.
	cand := [][2]float64{T, b.Found()}
	for i, d := range ds {
		if l := dist(T, d.c); l > 0 && d.r >= 0 {
			cand = append(cand, [2]float64{d.c[0] + (T[0]-d.c[0])*d.r/l, d.c[1] + (T[1]-d.c[1])*d.r/l})
		}
		for _, e := range ds[:i] {
			l := dist(d.c, e.c)
			x := (l*l + d.r*d.r - e.r*e.r) / (2 * l)
			if l == 0 || d.r < 0 || x*x > d.r*d.r {
				continue
			}
			y := math.Sqrt(d.r*d.r - x*x)
			a := math.Atan2(e.c[1]-d.c[1], e.c[0]-d.c[0])
			m := toward(d.c, x, a)
			cand = append(cand, toward(m, y, a+math.Pi/2), toward(m, -y, a+math.Pi/2))
		}
	}
	best, found := Place{}, false
	for _, p := range cand {
		if ok(p) && (!found || dist(p, T) < best.Offset) {
			best, found = b.place(p, T), true
		}
	}
	if !found {
		return Place{}, ErrNoRoom
	}
	return best, nil
}

func (b WornBore) place(e, T [2]float64) Place {
	return Place{E: e, R: b.SeatRadius(e), Offset: dist(e, T), Rad: math.Atan2(T[1]-e[1], T[0]-e[0])}
}

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
