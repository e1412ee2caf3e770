package mesh

import (
	"math"
	"slices"

	"rebush/fits/dim"
	"rebush/fits/odds"
	"rebush/fits/table"
	"rebush/plan/job"
)

// Spread is where the window of a pair may truly lie, in mm beside the place
// that its figures give it: shifts that are equally likely, rising. It is of
// the real pairs that agree with what was found; nil where the teeth were
// measured and agree.
type Spread []float64

// spreadOf is how many shifts stand for a spread.
const spreadOf = 64

// U is the standard uncertainty of the window's place that a spread stands
// for, mm: the root of the mean square, since the figures are believed at 0.
func (s Spread) U() float64 {
	sum := 0.0
	for _, v := range s {
		sum += v * v
	}
	return math.Sqrt(sum / math.Max(1, float64(len(s))))
}

// Ran is what was found of a pair: it turned when it was new, and as it was
// found it turned without binding. Distances under load, mm.
type Ran struct {
	Original, Found float64
	U               float64 // standard uncertainty of both, together with that of the teeth as entered
	Moved           bool    // the mate stands elsewhere since: neither tells anything
	Binds           bool    // it binds as found
}

// Tie is what how a pair ran tells of the errors that its distance has, once the
// shift of its window is known: with s^2 the variance of a part y of them, y has
// the mean s^2 Pull and the variance s^2 - s^4 Sure.
type Tie struct {
	Pull float64 // 1/mm; above 0: it truly stands farther off than it seems to
	Sure float64 // 1/mm^2
}

// odd is what is believed of the teeth of one gear beyond the figures entered,
// before anything is known of how it ran.
type odd struct {
	Share    float64 // chance that it is cut otherwise
	Low, Top float64 // how much farther off its pair then runs, mm, even between
	Blank    float64 // the same of a gear cut to full depth on its blank, mm: as likely as all between; 0 none
}

// odds of both gears of a pair: one whose tip was measured and agrees is what
// it is said to be; one whose tip belongs to other teeth is cut to full depth on
// its blank, or as counted, or anything between; of one that nobody measured it is
// not known.
func (d Drive) odds(share, bound float64) []odd {
	unknown := odd{Share: share, Low: -bound, Top: bound}
	gears := map[int]odd{2: unknown}
	if d.Kind == SpurPair {
		gears[1] = unknown
	}
	for _, t := range d.Pair.Tips() {
		off := d.Module * math.Max(-1, math.Min(1, t.Shift))
		switch {
		case t.Agrees && d.Denied: // something is wrong with it all the same
		case t.Agrees:
			delete(gears, t.Gear)
		default:
			gears[t.Gear] = odd{Share: 1, Low: math.Min(0, off), Top: math.Max(0, off), Blank: off}
		}
	}
	var out []odd
	for _, gear := range []int{1, 2} {
		if o, ok := gears[gear]; ok {
			out = append(out, o)
		}
	}
	return out
}

// forms are the shifts of a worm drive for the forms that its wheel may have,
// equally likely: one where the form was looked at.
func (d Drive) forms() []float64 {
	w, ok := d.Pair.(Worm)
	if !ok || w.Form != Unknown {
		return []float64{0}
	}
	straight := w
	straight.Form = Straight
	if straight.Validate() != nil {
		return []float64{0}
	}
	return []float64{0, 0, straight.Tight() - w.Tight()} // throated, helical, straight
}

// reach is how far a spread may go either way, mm: the bound of what nobody
// measured, and as far as the tips that were measured say.
func (d Drive) reach(share, bound float64) float64 {
	tips, unknown := 0.0, 0.0
	for _, o := range d.odds(share, bound) {
		if o.Blank == 0 {
			unknown = bound
		}
		tips += math.Abs(o.Blank)
	}
	return math.Max(bound, tips+unknown)
}

// cells is the fineness of a spread: steps from 0 to the bound.
const cells = 50

// prior is the chance of each shift as far as it may go either way, in so many
// cells: both gears' and the form's added, with what is beyond put on the last.
func (d Drive) prior(share, bound float64) [2*cells + 1]float64 {
	var p [2*cells + 1]float64
	far := d.reach(share, bound)
	step := far / cells
	at := func(v float64) int { return cells + int(math.Round(math.Max(-far, math.Min(far, v))/step)) }
	forms := d.forms()
	for _, v := range forms {
		p[at(v)] += 1 / float64(len(forms))
	}
	for _, o := range d.odds(share, bound) {
		var q [2*cells + 1]float64
		low, top := at(o.Low)-cells, at(o.Top)-cells
		each, blank := o.Share/float64(top-low+1), 0.0
		if o.Blank != 0 {
			each, blank = each/2, o.Share/2
		}
		for i, w := range p {
			if w == 0 {
				continue
			}
			q[i] += w * (1 - o.Share)
			q[max(0, min(2*cells, i+at(o.Blank)-cells))] += w * blank
			for k := low; k <= top; k++ {
				q[max(0, min(2*cells, i+k))] += w * each
			}
		}
		p = q
	}
	return p
}

// SpreadFrom is the spread of a pair whose teeth were not all measured: shifts
// by up to bound mm either way, or as far as a tip says, each as likely as it is among gears of which a
// share is not cut as it is counted, and as it agrees with how the pair ran:
// the tightest tooth found room, at a contact ratio of 1 the next tooth was
// there, and when it was new it most likely stood inside its backlash limits. Where nothing agrees, what was found is left aside. It is nil where
// nothing is open.
//
// Source: Bayes' rule on a grid; METHODS.md 6.
func (d Drive) SpreadFrom(share, bound float64, r Ran) Spread {
	if (d.Tried || d.Pair.Measured()) && !d.Denied {
		return nil
	}
	p, far := d.prior(share, bound), d.reach(share, bound)
	q, sum := p, 0.0
	for i := range q {
		shift := far * float64(i-cells) / cells
		q[i] *= d.agrees(shift, r) * d.stood(shift, far, r)
		sum += q[i]
	}
	if sum < 1e-6 {
		q = p
	}
	return quantiles(q[:], far)
}

// agrees is how likely it is that a pair shifted by so much ran as it was found.
func (d Drive) agrees(shift float64, r Ran) float64 {
	low, high := d.room(shift, r)
	return math.Max(0, odds.Within(low, high))
}

// stood is how likely it is, against other shifts, that a pair shifted by so much
// stood where it did when it was new: somewhere inside its backlash limits, as
// most do, or anywhere up to far either way. A mate that was moved tells nothing.
func (d Drive) stood(shift, far float64, r Ran) float64 {
	wide := d.Window.Hi - d.Window.Lo
	if r.Moved || wide <= 0 || far <= 0 {
		return 1
	}
	u := r.doubt()
	in := odds.Within((d.Window.Lo+shift-r.Original)/u, (d.Window.Hi+shift-r.Original)/u)
	share := d.Limits.NewRight
	return share*math.Max(0, in)/wide + (1-share)/(2*far)
}

// room is between which errors of its distances, in units of their doubt, a pair
// shifted by so much ran as it was found.
func (d Drive) room(shift float64, r Ran) (low, high float64) {
	low, high = math.Inf(-1), math.Inf(1)
	if r.Moved {
		return low, high
	}
	u := r.doubt()
	near := r.Original
	if !r.Binds && !d.Denied {
		near = math.Min(near, r.Found)
	}
	low = (d.Pair.Tight() + shift + d.Runout/2 - near) / u
	if far, err := d.Pair.CentreForContactRatio(d.Limits.ContactHard); err == nil {
		high = (far + shift - math.Max(r.Original, r.Found)) / u
	}
	return low, high
}

// doubt is U, or so little that it does not matter.
func (r Ran) doubt() float64 { return math.Max(r.U, 1e-4) }

// TiesOf are what how a pair ran tells of the errors of its distance at each shift
// of a spread: those of a normal distribution of which only what lies within its
// room is left. A shift at which it could not have run tells nothing.
//
// Source: mean and variance of a normal distribution cut on both sides, own
// derivation; METHODS.md 6.
func (d Drive) TiesOf(s Spread, r Ran) []Tie {
	out := make([]Tie, len(s))
	u := r.doubt()
	for i, shift := range s {
		low, high := d.room(shift, r)
		z := odds.Within(low, high)
		if z < 1e-4 {
			continue
		}
		mean := (odds.Density(low) - odds.Density(high)) / z
		gone := mean*mean - (moment(low)-moment(high))/z // of the variance, as a share
		out[i] = Tie{Pull: dim.Sig9(mean / u), Sure: dim.Sig9(gone / (u * u))}
	}
	return out
}

// moment is x times the density of a standard normal distribution.
func moment(x float64) float64 {
	if math.IsInf(x, 0) {
		return 0
	}
	return x * odds.Density(x)
}

// quantiles turns chances of shifts from -bound to bound into equally likely
// shifts. Within a cell a shift lies anywhere.
func quantiles(p []float64, bound float64) Spread {
	total := 0.0
	for _, w := range p {
		total += w
	}
	step := 2 * bound / float64(len(p)-1)
	out := make(Spread, spreadOf)
	i, before := 0, 0.0
	for k := range out {
		want := total * (float64(k) + 0.5) / spreadOf
		for i < len(p)-1 && before+p[i] < want {
			before += p[i]
			i++
		}
		in := 0.5
		if i != (len(p)-1)/2 { // what is as entered is not smeared
			in = (want - before) / p[i]
		}
		v := -bound + step*(float64(i)+in-0.5)
		out[k] = dim.Near(math.Max(-bound, math.Min(bound, v)), 6)
	}
	slices.Sort(out)
	return out
}

// Anywhere is the spread of a pair of which nothing is known: any shift up to
// bound mm, one as likely as another.
func Anywhere(bound float64) Spread {
	even := make([]float64, 2*cells+1)
	for i := range even {
		even[i] = 1
	}
	return quantiles(even, bound)
}

// HalfWidth is about half the width of the window of centre distances, mm, that
// a gear wants whose pair cannot be worked out: half the backlash wanted over
// 2 tan of the pressure angle.
//
// Source: SDP/SI-QTC Handbook of Metric Gears, section 14, eq 14-3a; METHODS.md 1.3.
func HalfWidth(lib *table.Library, g *job.Gear) float64 {
	lo, hi := g.Backlash[0].Float(), g.Backlash[1].Float()
	if !g.Backlash[0].Given() {
		by, err := HandbookWish(lib, g.Module)
		if err != nil {
			return 0
		}
		lo, hi = by.Lo, by.Hi
	}
	return (hi - lo) / 2 / (2 * math.Tan(g.PressureAngle*rad))
}
