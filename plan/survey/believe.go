package survey

import "math"

// Believed is the old centre that points of a worn wall leave to be believed,
// the journal known: mean and covariance over all outlines that agree with them,
// each as far as it does.
type Believed struct {
	O         [2]float64
	Cov       [2][2]float64
	Ends      [2]End // the likelier first
	RU, WU    float64
	Effective float64 // places that count, of all that were looked at
	Best      seed    // the likeliest outline that was fitted
	Shape     Shape   // of that
}

// SSQ is the sum of squared residuals of the likeliest outline, mm^2.
func (out *Believed) SSQ() float64 { return out.Best.n.ssq }

// End is the mean of the outlines worn to within 90 degrees of one direction,
// or of those that were not.
type End struct {
	Share              float64    // of the belief
	O                  [2]float64 // old centre
	R, W               float64    // old radius, depth of wear
	Theta, UTheta, Fan float64    // direction, its doubt, half-angle of a fan
	Two, W2, Theta2    float64    // share of two lobes, and the second of them
	x, y, x2, y2       float64    // sums of cosines and sines
}

// How many places each cloud has, while it is brought to the belief and at last.
const (
	fewPlaces  = 128
	manyPlaces = 512
	rounds     = 4  // of the clouds
	halvings   = 2  // of the two halves
	hopeless   = 60 // in chi-square worse than the best: not looked at
)

// shapes are those that a bore may have been worn in, with the logarithm of
// their odds: a fan of some width once in ten (j); where two sides are said, one
// lobe once in ten, else a fan, or as likely two lobes if the sides stand well
// apart (j).
func (p Probe) shapes() ([]Shape, [3]float64) {
	if len(p.WornTo) < 2 {
		return []Shape{OneLobe, Fan}, [3]float64{0, math.Log(0.1 / widestFan), 0}
	}
	odds := [3]float64{math.Log(0.1), math.Log(1 / widestFan), math.Log(1 / firstMM)}
	if apart(p.WornTo[0], p.WornTo[1]) > 30*math.Pi/180 {
		return []Shape{OneLobe, Fan, TwoLobes}, odds
	}
	return []Shape{OneLobe, Fan}, odds
}

// believe looks for all outlines that agree with the points.
func (p Probe) believe(pts [][2]float64) (out Believed, err error) {
	if len(pts) < 6 {
		return out, ErrTooFew
	}
	b := belief{outline: outline{pts: pts, r: p.Journal / 2}, s: p.s(), journal: p.Journal / 2,
		uJournal: math.Max(p.UJournal/2, leastS), against: p.Against, uSide: math.Max(p.UDir, 1e-3)}
	all := p.starts(pts)
	_, odds := p.shapes()
	if p.sided() {
		b.sides = p.WornTo
	}
	low := b.likeliest(all, odds, &out)
	if math.IsInf(low, 1) {
		return out, ErrNoCircle
	}
	turn := out.Best.q[iTheta]
	if len(b.sides) > 0 {
		turn = between(b.sides)
	}
	out.settle(pts, b.journal)
	t := tally{from: meanOf(pts)}
	for _, s := range all {
		b.set(s.shape, t.from, turn)
		if ds := b.explore(b.first(s.seeds, low+2*odds[s.shape]+hopeless)); ds != nil {
			t.add(&b, ds, b.evidence(ds, manyPlaces)+odds[s.shape])
		}
	}
	return out, t.tell(&out)
}

// likeliest puts the likeliest of the starts into out and returns its chi.
func (b *belief) likeliest(all []started, odds [3]float64, out *Believed) float64 {
	low := math.Inf(1)
	for _, s := range all {
		b.set(s.shape, [2]float64{}, 0)
		for i := range s.seeds {
			v := b.unknowns(&s.seeds[i].q)
			if chi := b.chi(&v) - 2*odds[s.shape]; chi < low {
				low, out.Best, out.Shape = chi, s.seeds[i], s.shape
			}
		}
	}
	return low
}

// settle brings the likeliest outline to rest.
func (out *Believed) settle(pts [][2]float64, journal float64) {
	o := outline{pts: pts, r: journal, shape: out.Shape}
	o.begin(&out.Best)
	o.improve(&out.Best, 100)
	o.nudge(&out.Best)
}

// first are clouds about those starts that are no worse than worst.
func (b *belief) first(seeds []seed, worst float64) (clouds []cloud) {
	for i := range seeds {
		v := b.unknowns(&seeds[i].q)
		if b.chi(&v) > worst || known(seeds[:i], &seeds[i].q) {
			continue
		}
		if c, ok := b.near(&seeds[i]); ok {
			clouds = append(clouds, c)
		}
	}
	return clouds
}

func known(seeds []seed, q *vector) bool {
	for i := range seeds {
		if sameFit(&seeds[i].q, q) {
			return true
		}
	}
	return false
}

// explore brings the clouds to the belief and draws from them.
func (b *belief) explore(clouds []cloud) []drawn {
	if len(clouds) == 0 {
		return nil
	}
	few, many := places(fewPlaces, b.dims, b.odd), places(manyPlaces, b.dims, b.odd)
	for range rounds {
		clouds = b.moved(clouds, b.draw(clouds, few))
	}
	for range halvings {
		if halves := b.halves(b.draw(clouds, many)); len(halves) > 0 {
			clouds = halves
		}
	}
	return b.draw(clouds, many)
}
