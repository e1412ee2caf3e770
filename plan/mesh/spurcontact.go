package mesh

import (
	"math"

	"rebush/fits/say"
)

// tip runs: length of the line of action from a base tangent point to a tip.
func (s Spur) runs() (r1, r2 float64) {
	return run(s.tipRadius1(), s.base1()), run(s.tipRadius2(), s.base2())
}

func run(tip, base float64) float64 { return math.Sqrt(math.Max(0, tip*tip-base*base)) }

// reach refuses distances at which no tooth meets another.
func (s Spur) reach(a, t float64) error {
	r1, r2 := s.runs()
	if a*math.Sin(t) < r1+r2 {
		return nil
	}
	return &DistanceError{Have: a, Limit: math.Hypot(s.leastBase(), r1+r2), Far: true}
}

// PathOfContact returns the length of the path of contact in mm, not limited
// to the base tangent points. Source: any handbook of gearing.
func (s Spur) PathOfContact(a float64) (float64, error) {
	t, err := s.operating(a)
	if err != nil {
		return 0, err
	}
	if err := s.reach(a, t); err != nil {
		return 0, err
	}
	r1, r2 := s.runs()
	return r1 + r2 - a*math.Sin(t), nil
}

// ContactRatioUncapped returns the transverse contact ratio as handbooks print
// it: the path of contact over the base pitch. With pinions of few teeth it
// flatters.
func (s Spur) ContactRatioUncapped(a float64) (float64, error) {
	p, err := s.PathOfContact(a)
	return p / s.basePitch(), err
}

// ContactRatio returns the transverse contact ratio with the contact limited
// to the base tangent points, which it cannot pass. For an undercut pinion
// (below 17 teeth at 20 degrees without shift) it is still an upper bound.
//
// Source: METHODS.md 1.4.
func (s Spur) ContactRatio(a float64) (float64, error) {
	if _, err := s.PathOfContact(a); err != nil {
		return 0, err
	}
	t, _ := s.operating(a)
	line := a * math.Sin(t)
	r1, r2 := s.runs()
	return math.Max(0, math.Min(r1, line)+math.Min(r2, line)-line) / s.basePitch(), nil
}

// CentreForContactRatio returns the largest centre distance in mm at which the
// limited contact ratio is still eps. The ratio only falls as the distance
// grows from the standard one, so there is one answer; where the pair never
// reaches eps the error is a *RangeError.
func (s Spur) CentreForContactRatio(eps float64) (float64, error) {
	r1, r2 := s.runs()
	if best := math.Min(r1, r2) / s.basePitch(); !(eps <= best*(1+1e-12)) {
		return 0, &RangeError{What: "the contact ratio asked for", Have: eps,
			Want: say.F("at most %.3f, the best of these gears at any distance", best)}
	}
	return s.CentreForContactRatioUncapped(eps)
}

// CentreForContactRatioUncapped is the same for the ratio of the handbooks.
func (s Spur) CentreForContactRatioUncapped(eps float64) (float64, error) {
	if err := inRange("the contact ratio asked for", eps, 0, 5, "from 0 to 5"); err != nil {
		return 0, err
	}
	r1, r2 := s.runs()
	line := r1 + r2 - eps*s.basePitch()
	a := 0.
	if line > 0 {
		a = math.Hypot(s.leastBase(), line)
	}
	if floor := math.Min(s.Tight(), s.Standard()); a < floor*(1-1e-12) {
		return 0, &RangeError{What: "the contact ratio asked for", Have: eps,
			Want: "less: these gears do not reach it even at their tight centre distance"}
	}
	return a, nil
}

// TipClearance returns the gaps in mm between the tip of gear 1 and the root
// of gear 2, and between the tip of gear 2 and the root of gear 1. Tips are as
// measured, roots 1.25 modules deep; negative means the tip digs in.
func (s Spur) TipClearance(a float64) (tip1, tip2 float64) {
	return a - s.tipRadius1() - s.rootRadius2(), a - s.tipRadius2() - s.rootRadius1()
}

// Lowest is a lower limit of a centre distance and what sets it.
type Lowest struct {
	At float64 // mm
	By Edge    // ByFlanks, ByTipOnRoot or ByFillet
}

// Lowest returns the least centre distance at which the pair turns, with a gap
// of clearance mm between tips and roots:
//
//	max( a_tight, ra1+rf2+c, ra2+rf1+c, fillet limits )
//
// The fillet limit keeps the tip of one gear out of the root curve of the
// other, where no involute was generated. An undercut gear has none: the rack
// that undercut it reached deeper than its mate does.
//
// Source: METHODS.md 1.6.
func (s Spur) Lowest(clearance float64) Lowest {
	low := Lowest{s.Tight(), ByFlanks}
	raise := func(a float64, by Edge) {
		if a > low.At {
			low = Lowest{a, by}
		}
	}
	raise(s.tipRadius1()+s.rootRadius2()+clearance, ByTipOnRoot)
	raise(s.tipRadius2()+s.rootRadius1()+clearance, ByTipOnRoot)
	if a, ok := s.Fillet(); ok {
		raise(a, ByFillet)
	}
	return low
}

// Fillet returns the centre distance in mm below which a tip runs into the
// fillet of its mate; ok is false where both gears are undercut or the limit
// lies below the base circles.
func (s Spur) Fillet() (a float64, ok bool) {
	r1, r2 := s.runs()
	al := s.alpha()
	for _, g := range []struct {
		z         int
		x, rb, tp float64
	}{{s.Z1, s.X1, s.base1(), r2}, {s.Z2, s.X2, s.base2(), r1}} {
		f := math.Tan(al) - 4*(1-g.x)/(float64(g.z)*math.Sin(2*al))
		if f < 0 {
			continue
		}
		a, ok = math.Max(a, math.Hypot(s.leastBase(), g.tp+g.rb*f)), true
	}
	return a, ok
}
