package seat

import (
	"math"

	"rebush/fits/press"
)

// wall is question 3: the metal left outside, and what the press does to it. What
// presses on the plate is the seat, or what the seat is cut in.
func (j *judge) wall(a *Answer) Fail {
	c := j.circle(a.SeatHigh)
	s := c.d / 2
	a.Ligament = c.left
	a.WindowLow, a.WinHigh = 0, math.Inf(1)
	if a.HeldBy == ByCap {
		return Fail{} // nothing is cut and nothing presses
	}
	if p := j.part; p != nil && c.inside {
		if web := p.web(j.h.At, a.SeatHigh); tooThin(web, j.r.LeastWall) {
			f := fail(WallStands, wallOfPart, web, j.r.LeastWall)
			f.Name = p.name()
			return f
		}
	}
	if a.HeldBy != ByPress {
		if tooThin(a.Ligament, j.r.LeastWall) {
			return fail(WallStands, wallTooThin, a.Ligament, j.r.LeastWall)
		}
		return Fail{}
	}
	if least := j.r.leastMetal(ByPress, c.d); tooThin(c.left, least) {
		return fail(WallStands, wallTooThinForPress, c.left, least)
	}
	light := j.light(c)
	if light {
		a.WinHigh = j.r.LightShare * 2 * s
		if f := fail(WallStands, pressTooHeavy, a.UHigh*1000, a.WinHigh*1000); a.UHigh > a.WinHigh+slack && !j.narrowed(a, f) {
			return f
		}
	}
	seat := j.press(&a.Bush, 0, a.SeatLow, true, false)
	a.Wall, a.Stress = seat.Wall, seat
	a.PHigh = seat.At(a.UHigh).P
	c.factor = j.circle(a.SeatLow).factor
	a.Peak = c.tension(a.PHigh)
	a.PeakLimit, a.WinHigh = j.plateLimit(), math.Min(a.WinHigh, j.mostInterference(seat, c))
	if f := j.plateStands(a.PHigh+c.pressed, a.Peak, s, c.left); f.What != noFail {
		return f
	}
	p := &j.h.Plate2
	a.Slackens = p.Casting && p.Creep > 0 && a.Peak > p.Creep+slack
	a.OverYield = !p.Casting && a.Peak > p.Yield+slack
	if light {
		a.Second = j.secondHold(a)
	}
	near := j.r.NearRadii * s
	a.Corner = j.h.Edge2 > 0 && j.h.Edge2-s < near && c.left < near
	return Fail{}
}

// circle is the hole that presses on the plate: the seat, or where the seat lies
// within what stands round it, the hole of that.
type circle struct {
	d, left float64 // its diameter, and the metal left outside it
	inside  bool    // the seat lies within a part
	pressed float64 // MPa, what presses in it beside the bush
	factor  float64 // largest tension in the plate for each MPa
}

// tooThin says that the metal left outside is less than is asked for. Where none is
// left no rule of a shop makes it pass.
func tooThin(left, least float64) bool { return left < least-slack || left <= slack }

// light says that a casting beside a hole is so thin that only a light press may be
// made in it. A wrought plate is judged by its yield alone.
func (j *judge) light(c circle) bool {
	return j.h.Plate2.Casting && c.left < j.r.LightWall*c.d/2-slack
}

// circle is that of a seat of diameter d.
func (j *judge) circle(d float64) circle {
	p := j.part
	if p == nil || p.through {
		c := circle{d: d, left: MetalLeft(j.edge, d)}
		c.factor = tensionFactor(j.wallShape(d), d)
		if p != nil {
			c.left = math.Min(c.left, p.Left)
		}
		return c
	}
	return circle{d: p.SeatHigh, left: p.Left, inside: true, pressed: p.PressMPa, factor: p.factor}
}

// tension is the largest in the plate when the bush presses with p MPa.
func (c circle) tension(p float64) float64 { return PlateTension(p, c.pressed, c.factor) }

// tensionFactor is the largest tension in a plate for each MPa in a hole of
// diameter d: at the hole or at the edge.
func tensionFactor(w press.Wall, d float64) float64 {
	seat := press.Seat{D: d, Wall: w}
	if left, known := seat.Ligament(); known && left <= 0 {
		return math.Inf(1)
	}
	f := seat.Factors()
	return math.Max(f.HoleMax, f.EdgeMax)
}

func (j *judge) plateLimit() float64 {
	if j.h.Plate2.Casting {
		return j.h.Plate2.Limit
	}
	return j.h.Plate2.Yield
}

// plateStands holds a pressure against the plate: a casting by its largest
// tension, a wrought plate by the mean over the metal left at the edge.
func (j *judge) plateStands(p, peak, s, ligament float64) Fail {
	limit := j.plateLimit()
	if j.h.Plate2.Casting {
		if peak > limit+slack {
			return fail(WallStands, castingCracks, peak, limit)
		}
		return Fail{}
	}
	if mean := meanTension(p, s, ligament); mean > limit+slack {
		return fail(WallStands, plateYields, mean, limit)
	}
	return Fail{}
}

// meanTension is the pull over the metal left at the edge, averaged: p s / t.
func meanTension(p, s, ligament float64) float64 {
	if math.IsInf(ligament, 1) {
		return 0
	}
	return p * s / ligament
}

// mostInterference is the interference at which the plate reaches its limit;
// +Inf where the bush flows first and caps the pressure, or where no edge is
// known.
func (j *judge) mostInterference(seat press.Seat, c circle) float64 {
	limit := j.plateLimit()
	if j.h.Plate2.Casting {
		limit /= c.factor
	} else {
		limit *= c.left / (c.d / 2)
	}
	return interferenceFor(seat, math.Max(0, limit-c.pressed))
}

// interferenceFor is the interference that makes a pressure; +Inf where the
// bush flows before it is reached.
func interferenceFor(seat press.Seat, p float64) float64 {
	if seat.Bush.Yield > 0 && p >= seat.FlowPressure() || math.IsInf(p, 1) {
		return math.Inf(1)
	}
	return seat.InterferenceFor(p)
}

// press sets up the mechanics of a bush in a seat of diameter d. stress asks
// for the moduli that give the largest tension, else those that give the least
// hold; a plate that slackens then has its relaxed modulus.
func (j *judge) press(b *Bush, contact, d float64, stress, slackens bool) press.Seat {
	p, m := &j.h.Plate2, &b.Metal
	st := pressed(j.wallShape(d), d, b.thin(d), press.Elastic{}, press.Elastic{})
	st.L = contact
	if stress {
		st.Di = b.thick()
		st.Housing = press.Elastic{E: p.EHigh, Nu: p.Nu}
		st.Bush = press.Elastic{E: m.EHigh, Nu: m.Nu, Yield: press.MisesOverTresca * m.YieldHi}
		if m.Porous {
			st.Bush.Yield = press.MisesOverTresca * j.r.PorousPeak
		}
		return st
	}
	st.Housing = press.Elastic{E: p.ELow, Nu: p.Nu}
	st.Bush = press.Elastic{E: m.ELow, Nu: m.Nu, Yield: m.Yield}
	if slackens && p.ERelaxed > 0 {
		st.Housing.E = p.ERelaxed
	}
	if m.Porous {
		st.Bush.Yield = j.r.PorousHold
	}
	return st
}

// thick and thin are the bores of the round bushes whose walls are everywhere
// that of the thick or of the thin side of a bush turned eccentric: the one is
// stiffer than it, the other softer (METHODS.md 2). Of a bush that is not they
// are its bore. d is the diameter of the seat.
func (b *Bush) thick() float64         { return ThickBore((b.BLow+b.BHigh)/2, b.Off) }
func (b *Bush) thin(d float64) float64 { return ThinBore((b.BLow+b.BHigh)/2, b.Off, d) }

// wallShape is the wall of a seat of diameter d; the last few are remembered.
func (j *judge) wallShape(d float64) press.Wall {
	for i := range j.walls {
		if j.walls[i].w != nil && j.walls[i].d == d {
			return j.walls[i].w
		}
	}
	w := j.h.wall(d)
	j.walls[j.next] = knownWall{d, w}
	j.next = (j.next + 1) % len(j.walls)
	return w
}
