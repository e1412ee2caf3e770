package mesh

import (
	"math"
)

// Tip is what a measured tip diameter says of a gear. Toy gears are met whose
// blanks do not match their tooth count: they run at the centre distance of
// half a tooth more or less (common practice, no source).
type Tip struct {
	Gear         int     // 1 or 2; of a worm drive the wheel is 2
	Measured     float64 // mm
	Expected     float64 // mm: module x (teeth + 2 + 2 shift)
	Shift        float64 // the shift that would make this tip of a tooth one module high
	VirtualTeeth float64 // the tooth count that this blank belongs to
	Agrees       bool    // within a tenth of a module on diameter
}

func readTip(gear int, m float64, z int, x, measured float64) Tip {
	t := Tip{Gear: gear, Measured: measured, Expected: m * (float64(z) + 2 + 2*x)}
	t.VirtualTeeth = measured/m - 2
	t.Shift = (t.VirtualTeeth - float64(z)) / 2
	t.Agrees = math.Abs(measured-t.Expected) <= agrees*m*(1+1e-9)
	return t
}

// Tips reads the measured tip diameters, gear 1 first; unmeasured ones are
// left out.
func (s Spur) Tips() []Tip {
	var out []Tip
	if s.Tip1 > 0 {
		out = append(out, readTip(1, s.Module, s.Z1, s.X1, s.Tip1))
	}
	if s.Tip2 > 0 {
		out = append(out, readTip(2, s.Module, s.Z2, s.X2, s.Tip2))
	}
	return out
}

// agrees is how far off on diameter a tip may be and still fit its tooth count,
// modules.
const agrees = 0.1

// Blunt is the pair with every tip that nobody measured short by one standard
// deviation of what fits its tooth count, evenly within limits: what contact can
// be counted on.
func (d Drive) Blunt() Pair {
	short := func(tip *float64, m, full float64) {
		if *tip == 0 {
			*tip = full - agrees/math.Sqrt(3)*m
		}
	}
	switch p := d.Pair.(type) {
	case Spur:
		short(&p.Tip1, p.Module, 2*p.tipRadius1())
		short(&p.Tip2, p.Module, 2*p.tipRadius2())
		return p
	case Worm:
		short(&p.WheelTip, p.Module, 2*p.wheelTip())
		short(&p.WormTip, p.Module, 2*p.wormTip())
		return p
	}
	return d.Pair
}

// FullTips are the tip diameters in mm of wheel and mate as their figures have
// them, where nobody measured them: what measuring would be expected to give.
func (d Drive) FullTips() (wheel, mate float64) {
	switch p := d.Pair.(type) {
	case Spur:
		return 2 * p.tipRadius1(), 2 * p.tipRadius2()
	case Worm:
		return 2 * p.wheelTip(), 2 * p.wormTip()
	}
	return 0, 0
}

// Measured says whether both tip diameters were measured and agree with the
// module, the tooth count and the shift: such a pair may be trusted to move a
// shaft.
func (s Spur) Measured() bool {
	t := s.Tips()
	return len(t) == 2 && t[0].Agrees && t[1].Agrees
}
