package survey

import (
	"fmt"
	"math"

	"rebush/fits/say"
)

// doubtSide is how wrong a stated side may be: beyond it no method holds.
const doubtSide = math.Pi / 4

// round4 are sides that between them reach every direction.
var round4 = [4]float64{0, math.Pi / 2, math.Pi, 3 * math.Pi / 2}

// weighSides puts into words which side the points speak for.
func (pd *Probed) weighSides(p Probe, b Believed) {
	e, o := b.Ends[0], b.Ends[1]
	toDeg := 180 / math.Pi
	if !p.sided() {
		pd.Rank = RankArc
		why := "the side it has worn to is not given"
		if len(p.WornTo) > 0 {
			why = fmt.Sprintf("the side it has worn to is known to %.0f degrees only", p.UDir*toDeg)
		}
		if o.Share >= leastOther {
			pd.doubt("%s, and both arcs have nearly one radius: worn to %.0f degrees or to %.0f fits as well, and the old centre is %v elsewhere; say where the metal is gone",
				why, e.Theta*toDeg, o.Theta*toDeg, say.MM(dist(e.O, o.O), 3))
			return
		}
		pd.doubt("%s; the points alone say %.0f degrees; look at the bore and say where the metal is gone", why, e.Theta*toDeg)
		return
	}
	if len(p.WornTo) > 1 {
		return
	}
	side := between(p.WornTo)
	off := apart(e.Theta, side)
	switch {
	case off > math.Pi/2:
		pd.Rank = RankArc
		pd.doubt("it is said to have worn to %.0f degrees, but the points fit a wear to %.0f; the old centre would be %v elsewhere; look at the bore again",
			angle(side)*toDeg, e.Theta*toDeg, say.MM(e.W, 3))
	case o.Share >= leastOther:
		pd.Rank = RankArc
		pd.doubt("it is said to have worn to %.0f degrees, but to %.0f fits the points too, %.0f in 100; the old centre would be %v elsewhere; look at the bore again",
			angle(side)*toDeg, o.Theta*toDeg, 100*o.Share, say.MM(dist(e.O, o.O), 3))
	case off > doubtSide+2*math.Min(e.UTheta, math.Pi/6):
		pd.Rank = RankArc
		pd.doubt("it is said to have worn to %.0f degrees, but the points fit %.0f, more than 45 away; look at the bore again",
			angle(side)*toDeg, e.Theta*toDeg)
	}
}

// flat says whether a plain circle fits as well: no wear to be seen.
func flat(pts [][2]float64, ssq, s float64) bool {
	ls, err := Least(pts, s)
	if err != nil {
		return false
	}
	return sumSquares(pts, ls.Circle)-ssq <= fanGain*s*s
}

func tooFew(err error, n int) error {
	return fmt.Errorf("%w: %d fit for use; probe eight or more, all round", err, n)
}
