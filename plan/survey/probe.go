package survey

import (
	"fmt"
	"math"
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

// doubtSide is how wrong a stated side may be: beyond it no method holds.
const doubtSide = math.Pi / 4

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
	words []string
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
		out.words = append(out.words, fmt.Sprintf("%.0f degrees of the wall are not probed", gap*180/math.Pi))
	}
	if r, slack := p.Journal/2, 4*math.Hypot(p.s(), p.UJournal/2); r > ls.R+slack {
		return nil, out, fmt.Errorf("%w: journal %.3f, hole %.3f; measure both again", ErrJournal, p.Journal, 2*ls.R)
	} else if r > 0 {
		if in, err := Inscribed(pts); err == nil && r > in.R+slack {
			return nil, out, fmt.Errorf("%w: journal %.3f, the largest round pin that enters these points is %.3f; measure both again", ErrJournal, p.Journal, 2*in.R)
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

// outline fits the whole outline, journal known.
func (pd *Probed) outline(p Probe, pts [][2]float64) error {
	pd.Rank, pd.What = RankOutline, "probed wall"
	s := p.s()
	var f, other OutlineFit
	var err error
	if !p.sided() {
		if f, other, err = p.anySide(pts, 0); err != nil {
			return explain(err, len(pts))
		}
		pd.Rank = RankArc
		if !flat(pts, f, s) {
			pd.noSide(p, f, other)
		}
	} else {
		if f, err = p.fitTo(pts, p.WornTo); err != nil {
			return explain(err, len(pts))
		}
		if i := stray(pts, s, f.SSQ, func(q [][2]float64) (OutlineFit, error) { return p.fitTo(q, p.WornTo) }); i >= 0 {
			at := indexOf(p.Points, pts[i])
			rest := append(append([][2]float64{}, pts[:i]...), pts[i+1:]...)
			g, err := p.fitTo(rest, p.WornTo)
			if err == nil {
				b := g.bore(p)
				pd.Words = append(pd.Words, nameSlip(p.Points, at, func(q [2]float64) float64 { return math.Abs(b.Gap(q)) }, 6*s,
					fmt.Sprintf("stands %.3f mm off the wall that the others give", b.Gap(pts[i]))))
				pd.LeftOut = append(pd.LeftOut, at)
				pts, f = rest, g
			}
		}
		if len(p.WornTo) == 1 && !flat(pts, f, s) {
			if f, other, err = pd.contradicted(p, pts, f); err != nil {
				return explain(err, len(pts))
			}
		}
	}
	b := f.bore(p)
	b.Round = flat(pts, f, s)
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
		pd.say("the wall does not run as a journal wears it: points stand off by %.3f mm, three times what the instrument should; look for burrs, bell-mouth or a second load", math.Sqrt(over))
	}
	return nil
}

// noSide puts into words that the points alone were asked.
func (pd *Probed) noSide(p Probe, f, other OutlineFit) {
	why := "the side it has worn to is not given"
	if len(p.WornTo) > 0 {
		why = fmt.Sprintf("the side it has worn to is known to %.0f degrees only", p.UDir*180/math.Pi)
	}
	if other.N > 0 && other.SSQ-f.SSQ <= fanGain*p.s()*p.s() {
		pd.doubt("%s, and both arcs have nearly one radius: worn to %.0f degrees or to %.0f fits as well, and the old centre is %.3f mm elsewhere; say where the metal is gone",
			why, f.Theta*180/math.Pi, other.Theta*180/math.Pi, dist(f.O, other.O))
		return
	}
	pd.doubt("%s; the points alone say %.0f degrees; look at the bore and say where the metal is gone", why, f.Theta*180/math.Pi)
}

// contradicted asks whether the points fit another side better than the stated
// one.
func (pd *Probed) contradicted(p Probe, pts [][2]float64, f OutlineFit) (best, other OutlineFit, err error) {
	side := p.WornTo[0]
	limit := fanGain * p.s() * p.s()
	any, _, err := p.anySide(pts, side)
	if err != nil {
		return f, other, err
	}
	off := apart(f.Theta, side)
	switch {
	case apart(any.Theta, side) > sideways && f.SSQ-any.SSQ > limit:
		pd.Rank = RankArc
		pd.doubt("it is said to have worn to %.0f degrees, but the points fit a wear to %.0f; the old centre would be %.3f mm elsewhere; look at the bore again",
			angle(side)*180/math.Pi, any.Theta*180/math.Pi, dist(any.O, f.O))
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

// grown is the answer without a journal.
func (pd *Probed) grown(p Probe, pts [][2]float64) error {
	pd.Rank, pd.What = RankArc, "unworn arc of the probed wall"
	a, err := GrownArc(pts, p.s(), p.WornTo[0])
	if err != nil {
		return err
	}
	pd.arc(p, pts, a)
	if used := count(a.Used); used < 4 {
		pd.doubt("only %d points lie on one circle opposite the wear", used)
	}
	if !pd.Bore.Round && pd.Bore.W > 0 && apart(pd.Bore.ThetaRad, p.WornTo[0]) > doubtSide+0.2 {
		pd.doubt("it is said to have worn to %.0f degrees, but the points off the circle lie at %.0f", angle(p.WornTo[0])*180/math.Pi, pd.Bore.ThetaRad*180/math.Pi)
		pd.Cov = scale2(pd.Cov, 4)
	}
	return nil
}

// consensus is the answer without journal and side.
func (pd *Probed) consensus(p Probe, pts [][2]float64) error {
	pd.Rank, pd.What = RankArc, "what most of the probed points agree on"
	a, err := Consensus(pts, p.s())
	if err != nil {
		return err
	}
	pd.arc(p, pts, a)
	if pd.Bore.Round {
		return nil
	}
	if a.Twin {
		pd.doubt("both arcs have nearly one radius (%.3f and %.3f): the shape does not tell worn from unworn; say where the metal is gone and measure the journal", a.R, a.Rest.R)
		dx, dy := a.Rest.Centre[0]-a.Centre[0], a.Rest.Centre[1]-a.Centre[1]
		pd.Cov = add2(pd.Cov, [2][2]float64{{dx * dx / 4, dx * dy / 4}, {dx * dy / 4, dy * dy / 4}})
		return nil
	}
	pd.doubt("neither the side it has worn to nor the journal is known; say where the metal is gone and measure the journal")
	return nil
}

// arc turns an arc fit into evidence with u doubled.
func (pd *Probed) arc(p Probe, pts [][2]float64, a ArcFit) {
	pd.Arc, pd.Centre, pd.Cov = &a, a.Centre, scale2(a.Cov, 4)
	var w, sx, sy float64
	for i, q := range pts {
		if e := a.Deviation(q); !a.Used[i] && e > 0 {
			w = math.Max(w, e)
			sx += e * (q[0] - a.Centre[0]) / (a.R + e)
			sy += e * (q[1] - a.Centre[1]) / (a.R + e)
		}
	}
	b := NewWornBore(a.Centre, a.R, 0, w, 0)
	if len(p.WornTo) > 0 {
		b.ThetaRad = angle(p.WornTo[0])
	}
	if w > 0 {
		b.ThetaRad = angle(math.Atan2(sy, sx))
	}
	b.RU, b.WU = 2*a.UR, math.Hypot(p.s(), 2*a.UR)
	if ls, err := Least(pts, p.s()); err == nil {
		lo, hi := reach(pts, ls.Centre)
		b.Round = ls.RMS < 1.3*p.s() && math.Max(hi-ls.R, ls.R-lo) < 3.5*p.s()
	}
	pd.Bore = &b
}

func explain(err error, n int) error {
	return fmt.Errorf("%w: %d fit for use; probe eight or more, all round", err, n)
}

func indexOf(pts [][2]float64, p [2]float64) int {
	for i, q := range pts {
		if q == p {
			return i
		}
	}
	return -1
}

func count(used []bool) (n int) {
	for _, u := range used {
		if u {
			n++
		}
	}
	return n
}
