package seat

import (
	"math"

	"rebush/plan/job"
	"rebush/plan/survey"
)

// there is the diameter of a round hole that is in the plate beside the worn
// outline, mm: the seat of an old bush that is out, or the outside of one that
// is still in. 0 where there is none.
func (s Site) there() float64 {
	b := s.Old.Bore
	switch {
	case b.Now != nil:
		return 0 // the seat as made is the hole that stands there
	case b.Seat != nil && s.Seat > 0:
		return s.Seat
	case b.Seat != nil:
		return b.Seat.Diameter.Float()
	case b.Bushed:
		return b.BushedOD.Float()
	}
	return 0
}

// thereAt is the middle of that hole: where it was made by this job; where it was
// measured, if an earlier repair moved it or spoilt it; else the old centre.
func thereAt(old survey.Hole) [2]float64 {
	if n := old.Bore.Now; n != nil {
		return n.At
	}
	if old.Spoilt() {
		return old.Middle
	}
	return old.Worn.O
}

// clears is the seat radius about a new centre that just takes in all that is
// hollow there, mm: the worn outline, and a round hole of diameter there, 0
// none.
//
//	the larger of S(T) of the worn outline and |T - c| + there/2
func clears(old survey.Hole, at [2]float64, there float64) float64 {
	s := old.Stands().SeatRadius(at)
	if there > 0 {
		s = math.Max(s, apart(thereAt(old), at)+there/2)
	}
	return s
}

// wallAt is how far the wall that metal was measured from lies from the middle of a
// hole, in a direction in radians, mm: that of the hole as it is seen. Of an old bush
// that is still in its bore is seen, and not its outside.
func wallAt(old survey.Hole, there, towards float64) float64 {
	away := old.Surveyed().Ray(old.Middle, towards)
	if there <= 0 || old.Bore.Seat == nil {
		return away
	}
	// From the middle m to the circle about c: t = d.u + sqrt(R^2 - |d|^2 + (d.u)^2), d = c - m.
	c := thereAt(old)
	dx, dy := c[0]-old.Middle[0], c[1]-old.Middle[1]
	sin, cos := math.Sincos(towards)
	along := dx*cos + dy*sin
	if under := there*there/4 - dx*dx - dy*dy + along*along; under > 0 {
		away = math.Max(away, along+math.Sqrt(under))
	}
	return away
}

func apart(a, b [2]float64) float64 { return math.Hypot(a[0]-b[0], a[1]-b[1]) }

// neighbours are the other bores in the plate of a bore, as they stand: worn,
// and the seats of old bushes.
func neighbours(s Site, sites []Site) []Near {
	var out []Near
	for _, o := range sites {
		if o.Name() == s.Name() || o.side() != s.side() || !o.Old.Known {
			continue
		}
		w := o.Old.Stands()
		n := Near{Name: o.Name(), At: apart(w.O, s.At), R: w.R + w.W}
		out = append(out, n)
		if c := thereAt(o.Old); o.there() > 0 && o.there()/2 > n.R-apart(w.O, c) {
			out = append(out, Near{Name: "the old seat of " + o.Name(), At: apart(c, s.At), R: o.there() / 2})
		}
		if away, r, ok := oilWay(o.Old.Bore, w.O, s.At); ok {
			out = append(out, Near{Name: "the oil hole of " + o.Name(), At: away, R: r})
		}
	}
	return out
}

// oilWay is how far the oil hole of another bore passes from a place, from axis
// to place, and its radius, mm: it runs in the plate from that bore outwards.
// false where it has none, or where the bore itself is nearer.
func oilWay(b *job.Bore, from, at [2]float64) (away, radius float64, ok bool) {
	if b.Oil == nil || !b.Oil.Diameter.Given() {
		return 0, 0, false
	}
	sin, cos := math.Sincos(b.Oil.AtDeg * math.Pi / 180)
	dx, dy := at[0]-from[0], at[1]-from[1]
	if dx*cos+dy*sin <= 0 {
		return 0, 0, false
	}
	return math.Abs(dx*sin - dy*cos), b.Oil.Diameter.Float() / 2, true
}

// otherHoles are the screw and dowel holes of a plate whose diameter is known.
// A feature in the very place of the bore is the bore itself.
func (in *Input) otherHoles(s Site) []Near {
	var out []Near
	for _, f := range in.Job.Chassis.Features {
		if f.Plate != s.side() || !f.Diameter.Given() || !f.At.Given() {
			continue
		}
		if apart(f.At.Float(), s.Old.Worn.O) > s.Old.Worn.R {
			out = append(out, Near{Name: f.Name, At: apart(f.At.Float(), s.At), R: f.Diameter.Float() / 2})
		}
	}
	return out
}
