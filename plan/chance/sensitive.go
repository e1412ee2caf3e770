package chance

import (
	"math"
	"sort"
)

// Effect is what a source of error does to the chance of coming right first
// time.
type Effect struct {
	Source  string
	Halving float64 // change of the share right first time when it is halved
	Without bool    // neither halving nor doubling changes the count
}

// Sensitivity ranks the sources of error of a plan.
type Sensitivity struct {
	Most    []string // at most three, in words, those whose halving changes the chance most
	Effects []Effect // every source, largest effect first
	Without []string // sources without effect, named
}

// SensitiveTrials is the most trials that each source is tried with.
const SensitiveTrials = 8192

// Sensitive halves every source of error in turn, on the same random numbers.
// A source whose halving changes nothing is doubled as well before it is
// named as without effect. Trials above SensitiveTrials are not used: a
// ranking needs fewer than a chance.
func Sensitive(base Model, s Settings) (Sensitivity, error) {
	if err := s.check(); err != nil {
		return Sensitivity{}, err
	}
	s.Trials = min(s.Trials, SensitiveTrials)
	list := base.sources()
	models := []*Model{&base}
	for _, src := range list {
		m := base.copied()
		src.scale(m, 0.5)
		models = append(models, m)
	}
	r, _, err := runAll(models, s)
	if err != nil {
		return Sensitivity{}, err
	}
	out := Sensitivity{}
	var quiet []int
	doubled := []*Model{&base}
	for i, src := range list {
		out.Effects = append(out.Effects, Effect{Source: src.words, Halving: r[i+1].FirstTimeRight - r[0].FirstTimeRight})
		if r[i+1].Right == r[0].Right {
			m := base.copied()
			src.scale(m, 2)
			doubled = append(doubled, m)
			quiet = append(quiet, i)
		}
	}
	if len(quiet) > 0 {
		d, _, err := runAll(doubled, s)
		if err != nil {
			return Sensitivity{}, err
		}
		for k, i := range quiet {
			if d[k+1].Right == d[0].Right {
				out.Effects[i].Without = true
				out.Without = append(out.Without, out.Effects[i].Source)
			}
		}
	}
	sort.SliceStable(out.Effects, func(i, j int) bool {
		return math.Abs(out.Effects[i].Halving) > math.Abs(out.Effects[j].Halving)
	})
	for _, e := range out.Effects {
		if len(out.Most) < 3 && e.Halving != 0 {
			out.Most = append(out.Most, e.Source)
		}
	}
	return out, nil
}
