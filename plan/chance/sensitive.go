package chance

import (
	"math"
	"sort"

	"rebush/fits/say"
)

// Effect is what a source of error does to the chance of coming right first
// time.
type Effect struct {
	Source  say.Text
	Halving float64 // change of the share right first time when it is halved
	Without bool    // doubling it leaves the count as it was
}

// Sensitivity ranks the sources of error of a plan.
type Sensitivity struct {
	Most    []say.Text // at most three, in words, those whose halving changes the chance most
	Effects []Effect   // every source, largest effect first
	Without []say.Text // sources without effect, named
}

// SensitiveTrials is the most trials with which the sources are ranked.
const SensitiveTrials = Block

// clear is a change of count that needs no second look.
const clear = 8

// Sensitive halves every source of error in turn, on the same random numbers,
// with SensitiveTrials at most: a ranking needs fewer than a chance. A source
// is named as without effect when doubling it leaves the count of right ones
// as it was over all the trials of s.
func Sensitive(base Model, s Settings) (Sensitivity, error) {
	if err := s.check(); err != nil {
		return Sensitivity{}, err
	}
	if err := base.check(); err != nil {
		return Sensitivity{}, err
	}
	list := base.sources()
	out := Sensitivity{Effects: make([]Effect, len(list))}
	look := &probe{w: newWorker(len(base.Bores), len(base.Gears), len(base.Setups)), base: base.compile(), bad: make([]bool, len(base.Bores))}

	few := min(s.Trials, SensitiveTrials)
	all := base.scaled(list, 0.5)
	was := look.block(all, s, 0)
	for i, v := range all {
		out.Effects[i] = Effect{Source: say.Words(v.source.words), Halving: float64(v.rights-was) / float64(few)}
	}
	quiet, doubled := []int(nil), base.scaled(list, 2)
	for i, v := range all {
		if abs(v.rights-was) < clear {
			quiet = append(quiet, i)
		}
	}
	was = 0
	for block := 0; int64(block)*Block < s.Trials && len(quiet) > 0; block++ {
		var pick []*variant
		for _, i := range quiet {
			pick = append(pick, doubled[i])
		}
		was += look.block(pick, s, block)
		still := quiet[:0]
		for _, i := range quiet {
			if abs(doubled[i].rights-was) < clear {
				still = append(still, i)
			}
		}
		quiet = still
	}
	for _, i := range quiet {
		if doubled[i].rights == was {
			out.Effects[i].Without = true
			out.Without = append(out.Without, out.Effects[i].Source)
		}
	}
	sort.SliceStable(out.Effects, func(i, j int) bool {
		return math.Abs(out.Effects[i].Halving) > math.Abs(out.Effects[j].Halving)
	})
	for _, e := range out.Effects {
		if len(out.Most) < 3 && e.Halving != 0 && !e.Without {
			out.Most = append(out.Most, e.Source)
		}
	}
	return out, nil
}
