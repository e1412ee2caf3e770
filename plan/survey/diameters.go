package survey

import (
	"errors"
	"fmt"
	"math"

	"rebush/fits/say"
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
	e := Evidence{Rank: RankReadings, Method: ByDiameters, R: d.Narrowest / 2, RU: d.UNarrow / 2}
	if d.Journal > d.Narrowest+2*d.UNarrow {
		return Evidence{}, fmt.Errorf("%w: %.3f in a hole whose narrowest is %.3f", ErrJournal, d.Journal, d.Narrowest)
	}
	b := NewWornBore(d.Middle, e.R, d.Journal/2, math.Max(0, w), 0)
	b.RU, b.WU = e.RU, uw
	if w <= 2*uw {
		e.Centre, e.Cov = d.Middle, round2(d.UMiddle)
		b.Round, b.Cov = true, e.Cov
		if len(d.WornTo) > 0 {
			b.ThetaRad = between(d.WornTo)
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
		e.doubt("the side it has worn to is not known: the old centre lies %v from the middle of the hole, one way or the other; say where the metal is gone", say.MM(w/2, 3))
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

// between is the direction that a hole has worn to, or the middle of the two
// that it was loaded in, radians: whichever is named first.
func between(worn []float64) float64 {
	if len(worn) == 1 {
		return worn[0]
	}
	return worn[0] + math.Remainder(worn[1]-worn[0], 2*math.Pi)/2
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
		dir = between(d.WornTo)
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
