package carry

import "math"

// ring is a bush pressed into a plate: mm and MPa.
type ring struct {
	out, in         float64 // diameters
	bush, plate     float64 // moduli
	nuBush, nuPlate float64
	wide            float64 // outside diameter of the plate round it, 0 without end
	flow            float64 // stress at which the bush gives way, 0 never
	slope           float64 // closure for each interference beyond
}

// give is how much interference a pressure of 1 MPa takes up, on diameter:
// Lame's thick rings.
func (r ring) give() float64 {
	o, i := r.out*r.out, r.in*r.in
	plate := 1.0
	if w := r.wide * r.wide; w > 0 {
		plate = (w + o) / (w - o)
	}
	return r.out * (((o+i)/(o-i)-r.nuBush)/r.bush + (plate+r.nuPlate)/r.plate)
}

// press gives the pressure at an interference and how much the bore closes, on
// diameter.
func (r ring) press(u float64) (mpa, closes float64) {
	if u <= 0 {
		return 0, 0
	}
	o, i := r.out*r.out, r.in*r.in
	perMPa := 2 * o * r.in / (o - i) / r.bush
	mpa = u / r.give()
	most := math.Inf(1)
	if r.flow > 0 {
		most = r.flow * (o - i) / (2 * o)
	}
	if mpa <= most {
		return mpa, mpa * perMPa
	}
	return most, most*perMPa + r.slope*(u-most*r.give())
}

// ringOf is the bush of a seat by the figures that the plan states of it.
func (c *carrying) ringOf(s *Seat, l luck, out, in float64) ring {
	key := "seats/" + s.Bore + "/"
	r := l.of(s.Bore + " closure")
	between := func(a, b string) float64 { return even(r, c.plan.figure(key+a), c.plan.figure(key+b)) }
	x := ring{out: out, in: in, bush: between("bush_e_low", "bush_e_high"), plate: between("plate_e_low", "plate_e_high"),
		nuBush: 0.34, nuPlate: 0.3, slope: even(r, 1, out/in)}
	if flow := between("flow_max", "flow_min"); flow > 0 {
		x.flow = flow
	}
	if !(x.bush > 0) {
		x.bush = 100000
	}
	if !(x.plate > 0) {
		x.plate = 100000
	}
	return x
}
