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
}

// Probed is what the points say.
type Probed struct {
	Evidence
	Fit       OutlineFit // with the journal known
	Arc       *ArcFit    // without
	Residuals []float64  // of every point from the outline, mm, outside positive
	LeftOut   []int      // points that were not used, from 0
}

// FromProbe finds the old centre from wall points: by the full outline where
// the journal is known, else by the grown arc or consensus. Where the side is
// not known, more than 45 degrees in doubt, or contradicted by the points, the
// answer is doubtful, says so, and its u is doubled.
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

// fitTo fits towards the stated sides.
func (p Probe) fitTo(pts [][2]float64, sides []float64) (OutlineFit, error) {
	if len(sides) > 1 && apart(sides[0], sides[1]) > 30*math.Pi/180 {
		return FitTwoLobes(pts, p.Journal/2, p.s(), [2]float64{sides[0], sides[1]})
	}
	side := sides[0]
	if len(sides) > 1 {
		side += math.Remainder(sides[1]-sides[0], 2*math.Pi) / 2
	}
	return FitOutline(pts, p.Journal/2, p.s(), side)
}

// outline fits the whole outline, journal known.
func (pd *Probed) outline(p Probe, pts [][2]float64) error {
	pd.Rank, pd.Method = RankOutline, ByOutline
	s := p.s()
	var f, other OutlineFit
	var err error
	if !p.sided() {
		if f, other, err = p.anySide(pts, 0); err != nil {
			return tooFew(err, len(pts))
		}
		pd.Rank = RankArc
		if !flat(pts, f, s) {
			pd.noSide(p, f, other)
		}
	} else {
		if f, err = p.fitTo(pts, p.WornTo); err != nil {
			return tooFew(err, len(pts))
		}
		if i := stray(pts, s, f.SSQ, func(q [][2]float64) (OutlineFit, error) { return p.fitTo(q, p.WornTo) }); i >= 0 {
			at := indexOf(p.Points, pts[i])
			rest := append(append([][2]float64{}, pts[:i]...), pts[i+1:]...)
			g, err := p.fitTo(rest, p.WornTo)
			if err == nil {
				b := g.bore(p)
				pd.Words = append(pd.Words, nameSlip(p.Points, at, func(q [2]float64) float64 { return math.Abs(b.Gap(q)) }, 6*s,
					say.F("stands %v off the wall that the others give", say.MM(b.Gap(pts[i]), 3))))
				pd.LeftOut = append(pd.LeftOut, at)
				pts, f = rest, g
			}
		}
		if len(p.WornTo) == 1 && !flat(pts, f, s) {
			if f, other, err = pd.contradicted(p, pts, f); err != nil {
				return tooFew(err, len(pts))
			}
		}
	}
	b := f.bore(p)
	b.Round = flat(pts, f, s)
	if b.Round && f.UD > 0.2 {
		// No point tells of a lobe: none is made up between them.
		b.D, b.D2, b.FanHalf, b.W = math.Min(b.D, b.C), 0, 0, 0
	}
	pd.Fit, pd.Centre, pd.Bore = f, f.O, &b
	pd.Cov = add2(f.Cov, p.journalCov(pts, f))
	if pd.Doubtful {
		pd.Cov = scale2(pd.Cov, 4)
		if finite(other.SSQ) && other.N > 0 && other.SSQ-f.SSQ <= fanGain*s*s {
			// It may be the other one: half the way there.
			dx, dy := (other.O[0]-f.O[0])/2, (other.O[1]-f.O[1])/2
			pd.Cov = add2(pd.Cov, [2][2]float64{{dx * dx, dx * dy}, {dx * dy, dy * dy}})
		}
	} else if over := f.SSQ / math.Max(1, float64(f.N-f.Shape.unknowns())); over > 9*s*s {
		pd.say("the wall does not run as a journal wears it: points stand off by %v, three times what the instrument should; look for burrs, bell-mouth or a second load", say.MM(math.Sqrt(over), 3))
	}
	return nil
}

// bore turns a fit into a bore.
func (f OutlineFit) bore(p Probe) WornBore {
	r := p.Journal / 2
	return WornBore{O: f.O, R: f.R, JournalR: math.Min(r, f.R), C: math.Max(0, f.R-r), W: f.W(r), D: f.D, ThetaRad: f.Theta,
		FanHalf: f.FanHalf, D2: f.D2, Theta2: f.Theta2, Cov: f.Cov, RU: f.UR, WU: math.Hypot(f.UW, p.UJournal/2)}
}

// journalCov is what the journal's own uncertainty does to the centre: the fit
// moved by a little.
func (p Probe) journalCov(pts [][2]float64, f OutlineFit) [2][2]float64 {
	if p.UJournal <= 0 {
		return [2][2]float64{}
	}
	const h = 1e-4
	o := outline{pts: pts, r: p.Journal/2 - h, shape: f.Shape}
	s := seed{q: f.q}
	o.begin(&s)
	o.improve(&s, 60)
	k := p.UJournal / 2 / h
	dx, dy := (s.q[iX]-f.O[0])*k, (s.q[iY]-f.O[1])*k
	if l := math.Hypot(dx, dy); l > p.UJournal { // another minimum: at most all of it
		dx, dy = dx/l*p.UJournal, dy/l*p.UJournal
	}
	return [2][2]float64{{dx * dx, dx * dy}, {dx * dy, dy * dy}}
}
