package survey

import (
	"fmt"
	"math"

	"rebush/fits/say"
)

// Probe is what was probed of one bore. Points are of the wall itself,
// corrected for the stylus.
type Probe struct {
	Points            [][2]float64
	S                 float64   // standard deviation of one point, mm
	Journal, UJournal float64   // diameter where it runs, 0 unknown; its u
	WornTo            []float64 // none, one or two directions, radians
	UDir              float64   // of the direction; over 45 degrees is no direction
	Against           float64   // chi-square by which points outweigh a side; at 0 no side tells anything
}

// Probed is what the points say.
type Probed struct {
	Evidence
	Believed  Believed  // with the journal known
	Arc       *ArcFit   // without
	Residuals []float64 // of every point from the outline, mm, outside positive
	LeftOut   []int     // points that were not used, from 0
}

// FromProbe finds the old centre from wall points: over all outlines that agree
// with them where the journal is known, else by the grown arc or consensus.
// Where the side is not known, more than 45 degrees in doubt, or contradicted by
// the points, the answer is doubtful and says so.
func FromProbe(p Probe) (Probed, error) {
	pts, out, err := p.check()
	if err != nil {
		return Probed{}, err
	}
	pd := Probed{LeftOut: out.at}
	pd.Words = out.words
	switch {
	case p.Journal > 0:
		err = pd.outline(p, pts)
	case p.sided():
		err = pd.grown(p, pts)
	default:
		err = pd.consensus(p, pts)
	}
	if err != nil {
		return Probed{}, err
	}
	b := pd.Bore
	pd.Residuals = make([]float64, len(p.Points))
	for i, q := range p.Points {
		pd.Residuals[i] = b.Gap(q)
	}
	pd.R, pd.RU = b.R, b.RU
	b.Cov = pd.Cov
	return pd, nil
}

func (p Probe) sided() bool { return len(p.WornTo) > 0 && p.UDir <= doubtSide*1.0001 }

func (p Probe) s() float64 { return math.Max(p.S, leastS) }

type leftOut struct {
	at    []int
	words []say.Text
}

// check refuses what cannot be fitted and drops typing slips.
func (p Probe) check() ([][2]float64, leftOut, error) {
	var out leftOut
	if err := checkPoints(p.Points, 5); err != nil {
		return nil, out, fmt.Errorf("%w; probe eight or more, all round", err)
	}
	if !finite(p.S, p.Journal, p.UJournal, p.UDir) || !finite(p.WornTo...) {
		return nil, out, fmt.Errorf("probe: %w", ErrNotFinite)
	}
	keep, at, words := slips(p.Points)
	out.at, out.words = at, words
	pts := make([][2]float64, 0, len(keep))
	for _, i := range keep {
		pts = append(pts, p.Points[i])
	}
	ls, err := Least(pts, p.s())
	if err != nil {
		return nil, out, err
	}
	if gap := largestGap(pts, ls.Centre); gap > 190*math.Pi/180 {
		return nil, out, fmt.Errorf("%w: they leave %.0f degrees of the wall untouched; probe all round", ErrOneSide, gap*180/math.Pi)
	} else if gap > 2*math.Pi/3 {
		out.words = append(out.words, say.F("%.0f degrees of the wall are not probed", gap*180/math.Pi))
	}
	if r, slack := p.Journal/2, 4*math.Hypot(p.s(), p.UJournal/2); r > ls.R+slack {
		return nil, out, say.Errorf("%w: journal %v, hole %v; measure both again", ErrJournal, say.MM(p.Journal, 3), say.MM(2*ls.R, 3))
	} else if r > 0 {
		if in, err := Inscribed(pts); err == nil && r > in.R+slack {
			return nil, out, say.Errorf("%w: journal %v, the largest round pin that enters these points is %v; measure both again", ErrJournal, say.MM(p.Journal, 3), say.MM(2*in.R, 3))
		}
	}
	return pts, out, nil
}

// outline weighs all outlines that agree with the points, journal known.
func (pd *Probed) outline(p Probe, pts [][2]float64) error {
	pd.Rank, pd.Method = RankOutline, ByOutline
	b, err := p.believe(pts)
	if err != nil {
		return tooFew(err, len(pts))
	}
	if i := stray(pts, p.s(), b.Best.n.ssq, b.again(p)); i >= 0 {
		at := indexOf(p.Points, pts[i])
		rest := append(append([][2]float64{}, pts[:i]...), pts[i+1:]...)
		if c, err := p.believe(rest); err == nil {
			w := c.bore(p.Journal / 2)
			pd.Words = append(pd.Words, nameSlip(p.Points, at, func(q [2]float64) float64 { return math.Abs(w.Gap(q)) }, 6*p.s(),
				say.F("stands %v off the wall that the others give", say.MM(w.Gap(pts[i]), 3))))
			pd.LeftOut = append(pd.LeftOut, at)
			pts, b = rest, c
		}
	}
	w := b.bore(p.Journal / 2)
	w.Round = flat(pts, b.Best.n.ssq, p.s())
	if w.Round && !w.lobeAt(pts, p.s()) {
		// No point tells of a lobe: none is made up between them.
		w.D, w.D2, w.FanHalf, w.W = math.Min(w.D, w.C), 0, 0, 0
	}
	pd.Believed, pd.Centre, pd.Cov, pd.Bore = b, b.O, b.Cov, &w
	if !w.Round {
		pd.weighSides(p, b)
	}
	if over := b.Best.n.ssq / math.Max(1, float64(len(pts)-b.Shape.unknowns())); over > 9*p.s()*p.s() && !pd.Doubtful {
		pd.say("the wall does not run as a journal wears it: points stand off by %v, three times what the instrument should; look for burrs, bell-mouth or a second load", say.MM(math.Sqrt(over), 3))
	}
	return nil
}

// again fits an outline like the likeliest one.
func (b Believed) again(p Probe) func(pts [][2]float64) (OutlineFit, error) {
	return func(pts [][2]float64) (OutlineFit, error) {
		if b.Shape == TwoLobes {
			return FitTwoLobes(pts, p.Journal/2, p.s(), [2]float64{b.Best.q[iTheta], b.Best.q[iTheta2]})
		}
		return FitOutline(pts, p.Journal/2, p.s(), b.Best.q[iTheta])
	}
}

// leastOther is the share of the belief from which the other end is drawn too.
const leastOther = 0.02

// bore is what is believed of the hole, about the mean of the old centre. Where
// either end may be the old one the hole is drawn as worn from that mean both
// ways: what it is now is the same either way.
func (b Believed) bore(journal float64) WornBore {
	e := &b.Ends[0]
	r := math.Min(journal, e.R)
	w := WornBore{O: b.O, R: e.R, JournalR: r, C: e.R - r, W: e.W, D: e.R - r + e.W, ThetaRad: e.Theta, FanHalf: e.Fan,
		Cov: b.Cov, RU: b.RU, WU: b.WU}
	if e.Two > 0.5 {
		w.FanHalf, w.D2, w.Theta2, w.W = 0, e.R-r+e.W2, e.Theta2, math.Max(e.W, e.W2)
	}
	o := &b.Ends[1]
	if o.Share < leastOther {
		return w
	}
	one, other := toward(e.O, w.D, w.ThetaRad), toward(o.O, o.R-r+o.W, o.Theta)
	w.FanHalf = 0
	w.D, w.ThetaRad = dist(one, b.O), angle(math.Atan2(one[1]-b.O[1], one[0]-b.O[0]))
	w.D2, w.Theta2 = dist(other, b.O), angle(math.Atan2(other[1]-b.O[1], other[0]-b.O[0]))
	return w
}

// lobeAt says whether any of the points lies on the worn wall, to within 2 s.
func (b WornBore) lobeAt(pts [][2]float64, s float64) bool {
	for _, p := range pts {
		if b.Reach(math.Atan2(p[1]-b.O[1], p[0]-b.O[0])) > b.R+1e-9 && math.Abs(b.Gap(p)) < 2*s {
			return true
		}
	}
	return false
}
