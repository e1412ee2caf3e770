package chance

import (
	"math"
	"runtime"
	"sort"
	"sync"
	"sync/atomic"
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
	plain := base.compile()
	workers := s.Workers
	if workers == 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	effects := make([]Effect, len(list))
	was := make([]int, 0, 16) // right ones of the base, block by block
	w := base.worker()
	for block := 0; int64(block)*Block < s.Trials; block++ {
		was = append(was, w.rights(plain, s, block))
	}
	var todo atomic.Int64
	var wait sync.WaitGroup
	for range min(workers, max(len(list), 1)) {
		wait.Add(1)
		go func() {
			defer wait.Done()
			w := base.worker()
			for {
				i := int(todo.Add(1)) - 1
				if i >= len(list) {
					return
				}
				effects[i] = w.effect(&base, list[i], s, was)
			}
		}()
	}
	wait.Wait()
	out := Sensitivity{Effects: effects}
	for _, e := range effects {
		if e.Without {
			out.Without = append(out.Without, e.Source)
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

// effect halves one source, and doubles it where halving shows little.
func (w *worker) effect(base *Model, src source, s Settings, was []int) Effect {
	m := base.copied()
	src.scale(m, 0.5)
	d := w.rights(m.compile(), s, 0) - was[0]
	e := Effect{Source: src.words, Halving: float64(d) / float64(min(s.Trials, SensitiveTrials))}
	if abs(d) >= clear {
		return e
	}
	m = base.copied()
	src.scale(m, 2)
	c := m.compile()
	d = 0
	for block := range was {
		if d += w.rights(c, s, block) - was[block]; abs(d) >= clear {
			return e
		}
	}
	e.Without = d == 0
	return e
}

// rights counts the trials of one block that come right.
func (w *worker) rights(c *compiled, s Settings, block int) int {
	w.seed(uint64(s.Seed), block)
	n := 0
	for k := range uint64(min(Block, s.Trials-int64(block)*Block)) {
		if w.trial(c, k).worst == right {
			n++
		}
	}
	return n
}

func (m *Model) worker() *worker { return newWorker(len(m.Bores), len(m.Gears), len(m.Setups)) }

func abs(n int) int { return max(n, -n) }
