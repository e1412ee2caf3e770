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

// anySide fits towards all sides, and returns the best fit and the best that
// lies more than 75 degrees elsewhere.
func (p Probe) anySide(pts [][2]float64, from float64) (best, other OutlineFit, err error) {
	best.SSQ, other.SSQ = math.Inf(1), math.Inf(1)
	var fits [4]OutlineFit
	for i, side := range round4 {
		if fits[i], err = FitOutline(pts, p.Journal/2, p.s(), from+side); err != nil {
			return best, other, err
		}
		if fits[i].SSQ < best.SSQ {
			best = fits[i]
		}
	}
	for _, f := range fits {
		if apart(f.Theta, best.Theta) > sideways && f.SSQ < other.SSQ {
			other = f
		}
	}
	return best, other, nil
}

// noSide puts into words that the points alone were asked.
func (pd *Probed) noSide(p Probe, f, other OutlineFit) {
	why := "the side it has worn to is not given"
	if len(p.WornTo) > 0 {
		why = fmt.Sprintf("the side it has worn to is known to %.0f degrees only", p.UDir*180/math.Pi)
	}
	if other.N > 0 && other.SSQ-f.SSQ <= fanGain*p.s()*p.s() {
		pd.doubt("%s, and both arcs have nearly one radius: worn to %.0f degrees or to %.0f fits as well, and the old centre is %v elsewhere; say where the metal is gone",
			why, f.Theta*180/math.Pi, other.Theta*180/math.Pi, say.MM(dist(f.O, other.O), 3))
		return
	}
	pd.doubt("%s; the points alone say %.0f degrees; look at the bore and say where the metal is gone", why, f.Theta*180/math.Pi)
}

// contradicted asks whether the points fit another side better than the stated
// one.
func (pd *Probed) contradicted(p Probe, pts [][2]float64, f OutlineFit) (best, other OutlineFit, err error) {
	side := between(p.WornTo)
	limit := fanGain * p.s() * p.s()
	any, _, err := p.anySide(pts, side)
	if err != nil {
		return f, other, err
	}
	off := apart(f.Theta, side)
	switch {
	case apart(any.Theta, side) > sideways && f.SSQ-any.SSQ > limit:
		pd.Rank = RankArc
		pd.doubt("it is said to have worn to %.0f degrees, but the points fit a wear to %.0f; the old centre would be %v elsewhere; look at the bore again",
			angle(side)*180/math.Pi, any.Theta*180/math.Pi, say.MM(dist(any.O, f.O), 3))
		return any, f, nil
	case off > doubtSide+2*math.Min(f.UTheta, math.Pi/6):
		pd.Rank = RankArc
		pd.doubt("it is said to have worn to %.0f degrees, but the points fit %.0f, more than 45 away; look at the bore again",
			angle(side)*180/math.Pi, f.Theta*180/math.Pi)
	}
	return f, other, nil
}

// flat says whether a plain circle fits as well: no wear to be seen.
func flat(pts [][2]float64, f OutlineFit, s float64) bool {
	ls, err := Least(pts, s)
	if err != nil {
		return false
	}
	return sumSquares(pts, ls.Circle)-f.SSQ <= fanGain*s*s
}

func tooFew(err error, n int) error {
	return fmt.Errorf("%w: %d fit for use; probe eight or more, all round", err, n)
}
