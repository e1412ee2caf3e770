package survey

import (
	"errors"
	"fmt"
	"math"
)

// What can be wrong with readings.
var (
	ErrSwapped = errors.New("the narrowest is larger than the widest")
	ErrWall    = errors.New("the walls do not belong to one hole")
)

// Diameters are two-point readings of a worn bore with its measured middle.
// Angles are radians; sides as the directions it has worn to, none to two.
type Diameters struct {
	Middle            [2]float64 // of the widest diameter
	UMiddle           float64    // per axis
	Widest, Narrowest float64
	UWidest, UNarrow  float64
	WidestAt          float64 // direction of the widest, either way round
	HasWidestAt       bool
	WornTo            []float64
	UDir              float64 // of the direction
	Journal           float64 // diameter of the journal, 0 unknown
}

// FromDiameters finds the old centre from the largest and smallest diameter:
//
//	R = narrowest/2,  w = widest - narrowest,  O = M - (w/2) towards the wear
//
// with u^2 along the wear u_M^2 + u_w^2/4 and across u_M^2 + (w/2)^2 u_theta^2.
// Both diameters are exact for one lobe, whatever the clearance. A bore whose
// diameters differ by less than 2u is round: its centre is its centre.
func FromDiameters(d Diameters) (Evidence, error) {
	if !finite(d.Middle[0], d.Middle[1], d.Widest, d.Narrowest, d.UMiddle, d.UWidest, d.UNarrow) || d.Narrowest <= 0 || d.Widest <= 0 {
		return Evidence{}, fmt.Errorf("widest and narrowest: %w", ErrNotFinite)
	}
	uw := math.Hypot(d.UWidest, d.UNarrow)
	w := d.Widest - d.Narrowest
	if w < -2*uw {
		return Evidence{}, fmt.Errorf("%w: %.3f and %.3f; swap them or measure again", ErrSwapped, d.Narrowest, d.Widest)
	}
	e := Evidence{Rank: RankReadings, What: "widest and narrowest", R: d.Narrowest / 2, RU: d.UNarrow / 2}
	if d.Journal > d.Narrowest+2*d.UNarrow {
		return Evidence{}, fmt.Errorf("%w: %.3f in a hole whose narrowest is %.3f", ErrJournal, d.Journal, d.Narrowest)
	}
	b := NewWornBore(d.Middle, e.R, d.Journal/2, math.Max(0, w), 0)
	b.RU, b.WU = e.RU, uw
	if w <= 2*uw {
		e.Centre, e.Cov = d.Middle, round2(d.UMiddle)
		b.Round, b.Cov = true, e.Cov
		if len(d.WornTo) > 0 {
			b.ThetaRad = d.WornTo[0]
		}
		e.Bore = &b
		return e, nil
	}
	dir, u, known := d.direction(&e)
	along := d.UMiddle*d.UMiddle + uw*uw/4
	across := d.UMiddle*d.UMiddle + w*w/4*u*u
	if !known {
		// Either way along the widest, or anywhere: the middle, and half the wear.
		e.Centre = d.Middle
		along += w * w / 4
		across = math.Max(across, d.UMiddle*d.UMiddle)
		if !d.HasWidestAt {
			across = along
		}
		e.Cov = scale2(alongAcross(along, across, dir), 4)
		e.doubt("the side it has worn to is not known: the old centre lies %.3f mm from the middle of the hole, one way or the other; say where the metal is gone", w/2)
	} else {
		e.Centre = toward(d.Middle, -w/2, dir)
		e.Cov = alongAcross(along, across, dir)
		if e.Doubtful {
			e.Cov = scale2(e.Cov, 4)
		}
	}
	b.O, b.Cov, b.ThetaRad = e.Centre, e.Cov, dir
	e.Bore = &b
	return e, nil
}

// direction settles which way it has worn from the stated side and the line of
// the widest diameter.
func (d Diameters) direction(e *Evidence) (dir, u float64, known bool) {
	u = d.UDir
	switch len(d.WornTo) {
	case 0:
		return d.WidestAt, u, false
	case 1:
		dir = d.WornTo[0]
	default:
		half := math.Remainder(d.WornTo[1]-d.WornTo[0], 2*math.Pi) / 2
		dir = d.WornTo[0] + half
		u = math.Max(u, math.Abs(half)/math.Sqrt(3))
		e.say("two loads: one diameter tells less; probe the wall all round")
	}
	if u > math.Pi/4 {
		e.doubt("the side it has worn to is known to %.0f degrees only", u*180/math.Pi)
	}
	if d.HasWidestAt {
		line := d.WidestAt
		if apart(line, dir) > math.Pi/2 {
			line += math.Pi
		}
		if off := apart(line, dir); off > math.Pi/4 {
			e.doubt("it is widest at %.0f degrees but is said to have worn to %.0f", angle(line)*180/math.Pi, angle(dir)*180/math.Pi)
		}
		dir = line // the measured line, on the stated side
	}
	return dir, u, true
}

// PinWall is a pin held against the unworn wall.
type PinWall struct {
	Centre       [2]float64 // of the pin as measured
	UCentre      float64
	Bore, UBore  float64 // old diameter, as the entering pin gives it
	Pin, UPin    float64 // diameter of the pin
	WornTo, UDir float64
}

// FromPin finds the old centre from a pin pressed against the unworn wall:
// O = pin centre + (D - d)/2 towards the wear.
func FromPin(p PinWall) (Evidence, error) {
	e := (p.Bore - p.Pin) / 2
	ue := math.Hypot(p.UBore, p.UPin) / 2
	if !finite(p.Centre[0], p.Centre[1], e, p.WornTo) || p.Pin <= 0 {
		return Evidence{}, fmt.Errorf("pin: %w", ErrNotFinite)
	}
	if e < -2*ue {
		return Evidence{}, fmt.Errorf("a pin of %.3f does not enter a bore of %.3f", p.Pin, p.Bore)
	}
	ev := Evidence{Rank: RankReadings, What: "a pin held against the unworn wall", Centre: toward(p.Centre, e, p.WornTo), R: p.Bore / 2, RU: p.UBore / 2}
	ev.Cov = alongAcross(p.UCentre*p.UCentre+ue*ue, p.UCentre*p.UCentre+e*e*p.UDir*p.UDir, p.WornTo)
	if p.UDir > math.Pi/4 {
		ev.Cov = scale2(ev.Cov, 4)
		ev.doubt("the side it has worn to is known to %.0f degrees only", p.UDir*180/math.Pi)
	}
	return ev, nil
}

// Walls are four wall positions on the axes through the hole.
type Walls struct {
	Left, Right, Bottom, Top float64
	UWall                    float64
	R, UR                    float64 // old radius, known otherwise
	JournalR                 float64 // 0 unknown
	WornTo                   float64
}

// FromWalls finds the old centre from four walls and R: on each axis the wall
// away from the wear is unworn, x0 = x1 + R or x2 - R. The error of R is common
// to both axes. If both far walls are worn the wear follows too:
// d (cos, sin) = (x2 - x0 - r, y2 - y0 - r), exact.
func FromWalls(w Walls) (Evidence, error) {
	if !finite(w.Left, w.Right, w.Bottom, w.Top, w.R, w.WornTo) {
		return Evidence{}, fmt.Errorf("walls: %w", ErrNotFinite)
	}
	if w.R <= 0 {
		return Evidence{}, fmt.Errorf("four walls alone do not tell the old centre; give the old diameter too (the largest pin that enters)")
	}
	if slack := 4*math.Hypot(w.UWall, w.UR) + 1e-6; w.Right-w.Left < 2*w.R-slack || w.Top-w.Bottom < 2*w.R-slack {
		return Evidence{}, fmt.Errorf("%w: they stand %.3f and %.3f apart, less than the old diameter %.3f", ErrWall, w.Right-w.Left, w.Top-w.Bottom, 2*w.R)
	}
	e := Evidence{Rank: RankReadings, What: "four walls", R: w.R, RU: w.UR}
	sin, cos := math.Sincos(w.WornTo)
	axis := func(lo, hi, c float64) (o, sign, v float64) {
		// A wall square to the wear is unworn on both sides.
		if math.Abs(c) < 0.05 && hi-lo < 2*w.R+2*math.Hypot(w.UWall, w.UR) {
			return (lo + hi) / 2, 0, w.UWall * w.UWall / 2
		}
		if c >= 0 {
			return lo + w.R, 1, w.UWall * w.UWall
		}
		return hi - w.R, -1, w.UWall * w.UWall
	}
	x, sx, vx := axis(w.Left, w.Right, cos)
	y, sy, vy := axis(w.Bottom, w.Top, sin)
	e.Centre = [2]float64{x, y}
	r2 := w.UR * w.UR
	e.Cov = [2][2]float64{{vx + sx*sx*r2, sx * sy * r2}, {sx * sy * r2, vy + sy*sy*r2}}
	r := w.JournalR
	if r <= 0 || r > w.R {
		r = w.R
	}
	far := func(lo, hi, o, s float64) float64 {
		if s < 0 {
			return o - lo
		}
		return hi - o
	}
	hx, hy := far(w.Left, w.Right, x, sx), far(w.Bottom, w.Top, y, sy)
	worn := w.R + 2*math.Hypot(w.UWall, w.UR)
	b := NewWornBore(e.Centre, w.R, r, 0, w.WornTo)
	b.Cov, b.RU = e.Cov, w.UR
	b.WU = math.Hypot(w.UWall*math.Sqrt2, w.UR)
	switch {
	case hx > worn && hy > worn:
		dx, dy := math.Copysign(hx-r, sx), math.Copysign(hy-r, sy)
		b.D, b.ThetaRad = math.Hypot(dx, dy), angle(math.Atan2(dy, dx))
		b.W = math.Max(0, b.D-b.C)
		if apart(b.ThetaRad, w.WornTo) > math.Pi/4 {
			e.doubt("the walls have worn to %.0f degrees, but it is said to have worn to %.0f", b.ThetaRad*180/math.Pi, angle(w.WornTo)*180/math.Pi)
			e.Cov = scale2(e.Cov, 4)
		}
	case hx > worn:
		b.D = (hx - r) / math.Max(0.3, math.Abs(cos))
		b.W = math.Max(0, b.D-b.C)
		e.say("only one of the walls is worn: the wear is a guess from the stated side")
	case hy > worn:
		b.D = (hy - r) / math.Max(0.3, math.Abs(sin))
		b.W = math.Max(0, b.D-b.C)
		e.say("only one of the walls is worn: the wear is a guess from the stated side")
	default:
		b.Round = true
	}
	e.Bore = &b
	return e, nil
}

// SpanCentre returns the distance of two bores from edge to edge, inside and
// outside: C = (inside + outside)/2 needs no diameters. On worn bores touch
// unworn walls only.
func SpanCentre(inside, outside, uIn, uOut float64) (c, u float64) {
	return (inside + outside) / 2, math.Hypot(uIn, uOut) / 2
}

// Span is the distance to a place whose own place is known.
type Span struct {
	To       [2]float64
	Apart, U float64 // centre to centre
	UTo      float64 // of the place, per axis
	Name     string
}

// FromSpans finds a centre from its distances to two places or more, the
// crossing nearest to near (the centre roughly).
func FromSpans(spans []Span, near [2]float64) (Evidence, error) {
	if len(spans) < 2 {
		return Evidence{}, fmt.Errorf("%w: one distance gives a circle, not a place; measure to a second bore", ErrTooFew)
	}
	p := near
	var inv [2][2]float64
	for range 60 {
		var a [2][2]float64
		var g [2]float64
		for _, s := range spans {
			d := dist(p, s.To)
			if d == 0 || !finite(d, s.Apart) || s.Apart <= 0 {
				return Evidence{}, fmt.Errorf("distance to %s: %w", s.Name, ErrNotFinite)
			}
			n := [2]float64{(p[0] - s.To[0]) / d, (p[1] - s.To[1]) / d}
			w := 1 / math.Max(s.U*s.U+s.UTo*s.UTo, 1e-8)
			for i := range n {
				g[i] += w * n[i] * (d - s.Apart)
				for j := range n {
					a[i][j] += w * n[i] * n[j]
				}
			}
		}
		det := a[0][0]*a[1][1] - a[0][1]*a[1][0]
		if det < 1e-4*a[0][0]*a[1][1] || det <= 0 {
			return Evidence{}, fmt.Errorf("%w: the places measured to lie in one line with this bore", ErrCollinear)
		}
		inv = [2][2]float64{{a[1][1] / det, -a[0][1] / det}, {-a[0][1] / det, a[0][0] / det}}
		dx := inv[0][0]*g[0] + inv[0][1]*g[1]
		dy := inv[1][0]*g[0] + inv[1][1]*g[1]
		p[0] -= dx
		p[1] -= dy
		if !finite(p[0], p[1]) {
			return Evidence{}, ErrNoCircle
		}
		if math.Hypot(dx, dy) < 1e-12 {
			break
		}
	}
	e := Evidence{Rank: RankReadings, What: "edge to edge", Centre: p, Cov: inv}
	for _, s := range spans {
		if off := math.Abs(dist(p, s.To) - s.Apart); off > math.Max(3*math.Hypot(s.U, s.UTo), 1e-6) {
			e.doubt("the distance to %s is %.3f mm off what the others say", s.Name, off)
		}
	}
	return e, nil
}
