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
	Old               string  // the reading that the narrowest comes from, where others may use it too
	WidestAt          float64 // direction of the widest, either way round
	HasWidestAt       bool
	WornTo            []float64
	UDir              float64 // of the direction
	Usual             Usual   // of the side, where none is said
	Shaft             string  // whose two holes wear to one side, where none is said
	Journal, UJournal float64 // diameter of the journal, 0 unknown; its u
	Clear             float64 // clearance on diameter that new holes have at the most, for two loads; 0 unknown
}

// FromDiameters finds the old centre from the largest and smallest diameter:
//
//	R = narrowest/2,  w = max(0, widest - narrowest),  O = M - (w/2) towards the wear
//
// with u^2 along the wear u_M^2 + u_w^2/4, however little it wore, and across
// u_M^2 + (w/2)^2 u_theta^2. Both diameters are exact for one lobe, whatever the
// clearance. A hole is no smaller than the journal that turns in it: what reads
// smaller within 2u is taken as large as that. Where no side is said it is the middle,
// and half of the wear is doubt.
func FromDiameters(d Diameters) (Evidence, error) {
	if !finite(d.Middle[0], d.Middle[1], d.Widest, d.Narrowest, d.UMiddle, d.UWidest, d.UNarrow) || d.Narrowest <= 0 || d.Widest <= 0 {
		return Evidence{}, fmt.Errorf("widest and narrowest: %w", ErrNotFinite)
	}
	uw := math.Hypot(d.UWidest, d.UNarrow)
	if d.Widest-d.Narrowest < -2*uw-1e-9 {
		return Evidence{}, fmt.Errorf("%w: %.3f and %.3f; swap them or measure again", ErrSwapped, d.Narrowest, d.Widest)
	}
	if least := d.Journal - 2*math.Hypot(d.UNarrow, d.UJournal); d.Narrowest < least-1e-9 {
		return Evidence{}, fmt.Errorf("%w: a journal of %.4f in a hole whose narrowest is %.4f, at the least %.4f would do",
			ErrJournal, d.Journal, d.Narrowest, least)
	}
	old := math.Max(d.Narrowest, d.Journal)
	reads := d.Widest - old
	w := math.Max(0, reads)
	e := Evidence{Rank: RankReadings, Method: ByDiameters, R: old / 2, RU: d.UNarrow / 2}
	b := NewWornBore(d.Middle, e.R, d.Journal/2, w, 0)
	b.RU, b.WU, b.Round = e.RU, uw, w <= 2*uw
	if len(d.WornTo) > 1 && d.Journal > 0 && d.Clear > 0 {
		half := math.Abs(math.Remainder(d.WornTo[1]-d.WornTo[0], 2*math.Pi)) / 2
		w, uw = TwoLoads{Widest: d.Widest, Narrowest: old, U: uw, Journal: d.Journal, Half: half,
			UHalf: d.UDir / math.Sqrt2, Clear: d.Clear}.Depth()
		e.R, e.RU = (d.Widest-w)/2, math.Hypot(d.UWidest, uw)/2
		b = NewWornBore(d.Middle, e.R, d.Journal/2, w, 0)
		b.FanHalf, b.RU, b.WU, b.Round = half, e.RU, uw, w <= 2*uw
	}
	if len(d.WornTo) > 0 {
		dir, u := d.direction(&e)
		e.Centre = toward(d.Middle, -w/2, dir)
		e.Cov = alongAcross(d.UMiddle*d.UMiddle+uw*uw/4, d.UMiddle*d.UMiddle+w*w/4*u*u, dir)
		if e.Doubtful {
			e.Cov = scale2(e.Cov, 4)
		}
		b.ThetaRad = dir
		if d.Old != "" {
			e.Parts = []Part{{d.Old, toward([2]float64{}, d.UNarrow/2, dir)}}
		}
	} else {
		// Half of the wear to whatever side it is: the middle, and that is doubt.
		e.Centre = d.Middle
		off := scale2(d.Usual.side(d.WidestAt, d.HasWidestAt, d.UDir), d.Usual.depth(reads, uw)/4)
		e.Cov = add2(round2(d.UMiddle), off)
		if d.Shaft != "" { // the other plate of the shaft has worn to the same side
			major := math.Atan2(2*off[0][1], off[0][0]-off[1][1]) / 2
			if apart(major, d.Usual.Rad) > math.Pi/2 {
				major += math.Pi
			}
			e.Parts = []Part{{d.Shaft, toward([2]float64{}, LargestU(off), major)}}
		}
		b.ThetaRad = d.Usual.towards(d.WidestAt, d.HasWidestAt)
		if !b.Round {
			e.doubt("the side it has worn to is not known: the old centre lies %v from the middle of the hole, one way or the other; say where the metal is gone", say.MM(w/2, 3))
		}
	}
	b.O, b.Cov = e.Centre, e.Cov
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
func (d Diameters) direction(e *Evidence) (dir, u float64) {
	dir, u = between(d.WornTo), d.UDir
	if len(d.WornTo) > 1 {
		half := math.Remainder(d.WornTo[1]-d.WornTo[0], 2*math.Pi) / 2
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
	return dir, u
}
