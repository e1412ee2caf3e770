package chance

import (
	"math"
	"sort"

	"rebush/fits/say"
)

// Variant is the plan with one thing changed.
type Variant struct {
	Change say.Text // "pins instead of the inside calliper on front axle.left"
	Model  Model
}

// Gain is what a change would bring.
type Gain struct {
	Change         say.Text
	FirstTimeRight float64
	Gain           float64    // of the share right first time
	Interval       [2]float64 // 95 %, of the gain, both plans on the same random numbers
	Result         Result
}

// Improve tries every variant on the random numbers of the base and lists the
// gains, largest first; equal ones keep their order. A gain whose interval
// holds 0, and a loss, are not listed. The gain is exactly the difference of
// two runs made apart with the same settings.
func Improve(base Model, variants []Variant, s Settings) ([]Gain, error) {
	models := []*Model{&base}
	for i := range variants {
		models = append(models, &variants[i].Model)
	}
	r, pairs, err := runAll(models, s)
	if err != nil {
		return nil, err
	}
	var out []Gain
	for i, v := range variants {
		g := Gain{Change: v.Change, FirstTimeRight: r[i+1].FirstTimeRight, Result: r[i+1],
			Gain: r[i+1].FirstTimeRight - r[0].FirstTimeRight}
		g.Interval = pairs[i+1].interval(r[0].Trials)
		if g.Interval[0] > 0 {
			out = append(out, g)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Gain > out[j].Gain })
	return out, nil
}

// interval is the 95 % interval of the difference of two shares seen on the
// same trials.
//
// Source: the usual large-sample interval of paired shares (McNemar's table),
// from memory.
func (p pair) interval(trials int) [2]float64 {
	n := float64(trials)
	d := float64(p.gained-p.spoiled) / n
	u := math.Sqrt(math.Max(0, float64(p.gained+p.spoiled)/n-d*d) / n)
	return [2]float64{d - z95*u, d + z95*u}
}
