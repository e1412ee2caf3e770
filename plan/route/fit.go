package route

import (
	"math"

	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/seat"
)

// offset is how far the bore of a bush stands off its outside.
func (x Bore) offset() float64 {
	if x.Mend != seat.MadeToFit {
		return 0
	}
	return off(x.At, x.SeatAt)
}

// clock is the direction of the bore from the middle of the seat, in degrees of
// the drawing: there the wall is thin.
func (x Bore) clock() float64 {
	deg := math.Atan2(x.At[1]-x.SeatAt[1], x.At[0]-x.SeatAt[0]) * 180 / math.Pi
	return math.Mod(deg+360, 360)
}

// fitting is how a bush is turned to a hole that is there.
func (b *builder) fitting(x Bore) say.Text {
	if x.Mend != seat.MadeToFit {
		return ""
	}
	w := toHole(x)
	e := x.offset()
	if e < b.r.EccentricFrom {
		return w
	}
	bar := math.Ceil(math.Max(x.OD[1], x.FlangeOD) + 1)
	w = join(w, say.F("ECCENTRIC: turn the outside first, then move the bar over by %v and bore", say.MM(e, 3)),
		say.F("in four jaws the indicator reads %v over a turn", say.MM(2*e, 3)))
	if pack := b.packing(e, bar); pack > 0 {
		w = join(w, say.F("in three jaws, %v of packing under one of them on %v bar", say.MM(pack, 2), say.MM(bar, 0)))
	}
	return join(w, "mark the thin side on the face that stays outside before it is parted off")
}

// packing is what goes under one of three jaws, 0 where that is not known.
func (b *builder) packing(offset, bar float64) float64 {
	if b.r.Packing == nil {
		return 0
	}
	if p := b.r.Packing(offset, bar); p > 0 {
		return p
	}
	return 0
}

// clocking is how an eccentric bush is turned round before it is pressed.
func (b *builder) clocking(x Bore) say.Text {
	if x.offset() < b.r.EccentricFrom {
		return ""
	}
	at := x.clock()
	seen := say.Text("seen from the left, from straight ahead, anticlockwise")
	if x.Side == job.Right {
		// From outside the right plate the drawing is mirrored.
		return say.F("thin side, marked, to %.0f degrees %v; seen from outside this plate that is %.0f degrees; 5 "+
			"degrees out puts the bore %v to the side", at, seen, math.Mod(540-at, 360),
			say.MM(2*x.offset()*math.Sin(2.5*math.Pi/180), 3))
	}
	return say.F("thin side, marked, to %.0f degrees %v; 5 degrees out puts the bore %v to the side", at, seen,
		say.MM(2*x.offset()*math.Sin(2.5*math.Pi/180), 3))
}
