package inspect

import (
	"math"

	"rebush/fits/say"
)

// Site is where one hole of a truck stands, mm in the frame of the job: as it
// was gauged, or as the plan would leave it.
type Site struct {
	Name       string
	Target, At [2]float64
	UMM        float64 // standard uncertainty along each axis: of the instrument, or of the placing
	Gauged     bool
}

// Check is one thing that is asked of the places of a truck, all at once: a
// centre distance, a lean, the metal left.
type Check struct {
	Name  say.Text
	Holes []int // the places that it hangs on
	// Figure is what is asked, mm. Low and High are its limits, an open one an
	// infinity; UMM is the standard uncertainty of all but the places.
	Figure         func(at [][2]float64) float64
	Low, High, UMM float64
	Words          func(figure float64) say.Text // says it, "0.042 mm of backlash"; nil: nothing to add
	Tells          bool                          // it is said and decides nothing
	Try            say.Text                      // how else it can be told, where no gauge of places tells
}

// Outcome is a check with all places as they were made.
type Outcome struct {
	Check
	MM       float64 // the figure
	UMM      float64 // with the doubt of the places
	Decision Decision
	gain     []float64 // by hole: how much nearer to right it comes with that one at its target
	own      []float64 // by hole: guard band of its own gauging, as it changes the figure
}

// together asks every check of all places at once. Errors are those of Decide.
func together(places []Site, checks []Check, guardK float64) ([]Outcome, error) {
	at := make([][2]float64, len(places))
	for i, p := range places {
		at[i] = p.At
	}
	var out []Outcome
	for _, c := range checks {
		own := c.doubts(places, at)
		o := Outcome{Check: c, MM: c.Figure(at), UMM: c.UMM}
		for _, u := range own {
			o.UMM = math.Hypot(o.UMM, u)
		}
		var err error
		if o.Decision, err = Decide(Made{MM: o.MM, Low: c.Low, High: c.High, UMM: o.UMM, GuardK: guardK}); err != nil {
			return nil, err
		}
		o.gain, o.own = make([]float64, len(places)), own
		for _, i := range c.Holes {
			o.gain[i] = c.margin(moved(at, i, places[i].Target)) - c.margin(at)
			o.own[i] *= guardK
		}
		out = append(out, o)
	}
	return out, nil
}

// moved is the same places with one of them elsewhere.
func moved(at [][2]float64, i int, to [2]float64) [][2]float64 {
	out := append([][2]float64(nil), at...)
	out[i] = to
	return out
}

// margin is how far the figure stands inside its limits, below 0 outside.
func (c *Check) margin(at [][2]float64) float64 {
	v := c.Figure(at)
	return math.Min(v-c.Low, c.High-v)
}

// doubts are the standard uncertainties of the figure by hole: that of each
// place along each axis as it changes the figure.
//
// Source: law of propagation, JCGM 100:2008 5.1.2, with the larger of both
// slopes where they differ.
func (c *Check) doubts(places []Site, at [][2]float64) []float64 {
	const step = 1e-4 // mm
	v, out := c.Figure(at), make([]float64, len(places))
	for _, i := range c.Holes {
		for axis := range 2 {
			most := 0.0
			for _, h := range [2]float64{-step, step} {
				to := at[i]
				to[axis] += h
				most = math.Max(most, math.Abs(c.Figure(moved(at, i, to))-v)/step)
			}
			out[i] = math.Hypot(out[i], most*places[i].UMM)
		}
	}
	return out
}

// concerns says whether an outcome counts against a place: it hangs on it, is
// not accepted, and no other place is more than twice as much to blame. Where it
// is only in doubt, it counts against a place that its gauge knows to be off its
// target: of one that stands where the plan wants it, the doubt is that of the
// plan.
func (o *Outcome) concerns(i int) bool {
	if o.Tells || o.Decision.Result == Accept || !o.hangsOn(i) {
		return false
	}
	most := 0.0
	for _, k := range o.Holes {
		most = math.Max(most, o.gain[k])
	}
	if o.gain[i] < most/2-1e-9 {
		return false
	}
	return o.Decision.Result == Reject || o.gain[i] > o.own[i]
}

// worst is the result of a place.
func worst(i int, all []Outcome) Result {
	out := Accept
	for k := range all {
		if !all[k].concerns(i) {
			continue
		}
		if all[k].Decision.Result == Reject {
			return Reject
		}
		out = CannotTell
	}
	return out
}

// reach is how far a place may be off its target the way it is off so that it
// works, and, where sure, so that it is accepted: from low to high, mm. The
// others stay where they are, but for those that are rejected, which count at
// their targets. A place on its target is asked all round, and the least way
// counts. ok is false where nowhere that way it works.
func reach(i int, places []Site, all []Outcome, sure bool) (low, high float64, ok bool) {
	p := places[i]
	at := make([][2]float64, len(places))
	for k := range places {
		if at[k] = places[k].At; k != i && worst(k, all) == Reject {
			at[k] = places[k].Target
		}
	}
	home := moved(at, i, p.Target)
	holds := func(to [2]float64) bool {
		there := moved(at, i, to)
		for k := range all {
			o := &all[k]
			if o.Tells || !o.hangsOn(i) {
				continue
			}
			spare := o.margin(there)
			if spare < -1e-9 || sure && spare < o.Decision.GuardMM && o.margin(home)-spare > o.own[i] {
				return false
			}
		}
		return true
	}
	low, high, ok = 0, math.Inf(1), true
	for _, way := range ways(p) {
		from, to, found := stretch(func(t float64) bool {
			return holds([2]float64{p.Target[0] + t*way[0], p.Target[1] + t*way[1]})
		}, math.Max(1, 2*math.Hypot(p.At[0]-p.Target[0], p.At[1]-p.Target[1])))
		low, high, ok = math.Max(low, from), math.Min(high, to), ok && found
	}
	return low, high, ok && low <= high
}

// ways are unit vectors: the way a place is off its target, else all round.
func ways(p Site) [][2]float64 {
	dx, dy := p.At[0]-p.Target[0], p.At[1]-p.Target[1]
	if off := math.Hypot(dx, dy); off >= 5e-4 {
		return [][2]float64{{dx / off, dy / off}}
	}
	var out [][2]float64
	for k := range 12 {
		sin, cos := math.Sincos(float64(k) * math.Pi / 6)
		out = append(out, [2]float64{cos, sin})
	}
	return out
}

func (o *Outcome) hangsOn(i int) bool {
	for _, k := range o.Holes {
		if k == i {
			return true
		}
	}
	return false
}

// stretch is the first stretch from 0 to most over which something holds, to a
// tenth of a micrometre.
func stretch(holds func(float64) bool, most float64) (from, to float64, found bool) {
	const step = 0.005
	edge := func(no, yes float64) float64 {
		for math.Abs(yes-no) > 1e-4 {
			if m := (no + yes) / 2; holds(m) {
				yes = m
			} else {
				no = m
			}
		}
		return yes
	}
	for t := 0.0; t <= most; t += step {
		switch on := holds(t); {
		case on && !found:
			found = true
			if t > 0 {
				from = edge(t-step, t)
			}
		case !on && found:
			return from, edge(t, t-step), true
		}
	}
	return from, most, found
}
