package chance

import (
	"fmt"
	"math/bits"
	"runtime"
	"sort"
	"sync"
	"sync/atomic"

	"rebush/fits/odds"
	"rebush/fits/say"
)

// MaxTrials is the most trials that are run; more would not change a printed
// digit and would keep the bench waiting.
const MaxTrials = 1_000_000_000

// Settings of a run. Workers of 0 takes every core; the answer is the same
// for any number.
type Settings struct {
	Trials  int64
	Seed    int64
	Workers int
}

// Result is what became of the trials. The five classes add up to Trials.
type Result struct {
	Trials    int
	Seed      uint64
	Right     int // at the first go
	Rework    int // sized again or lapped
	Spoilt    int // a bush and its time
	NextBush  int // a larger or an eccentric bush, or a mesh off its window that runs
	LostCount int

	FirstTimeRight float64 // share
	Low, High      float64 // its 95 % interval (Wilson)
	Saved          float64 // share right after rework or another bush
	Lost           float64 // share
	Causes         []Cause
}

// Cause is a check that failed first, in the order of the job, in Count of the
// trials that did not come right. Counts add up to those trials, shares to 1.
type Cause struct {
	Cause say.Text `json:"cause"`
	Count int      `json:"-"`
	Share float64  `json:"share"`
}

func (s Settings) check() error {
	switch {
	case s.Trials <= 0:
		return fmt.Errorf("%d trials say nothing; 20000 are usual", s.Trials)
	case s.Trials > MaxTrials:
		return fmt.Errorf("%d trials are refused: more than %d change no printed digit; 20000 are usual", s.Trials, MaxTrials)
	case s.Seed < 0:
		return fmt.Errorf("seed %d is negative; a seed is 0 or more", s.Seed)
	case s.Workers < 0:
		return fmt.Errorf("%d workers", s.Workers)
	}
	return nil
}

// Run tries the model. Errors: settings out of range, a model that makes no
// sense.
func Run(m Model, s Settings) (Result, error) {
	r, _, err := runAll([]*Model{&m}, s)
	if err != nil {
		return Result{}, err
	}
	return r[0], nil
}

// tally are the integer counts of one model.
type tally struct {
	class [classes]int
	first []int
}

// pair counts the trials that came right in a variant and not in the base, and
// the other way round.
type pair struct{ gained, spoiled int }

// runAll runs all models on the same random numbers and compares each with the
// first.
func runAll(models []*Model, s Settings) ([]Result, []pair, error) {
	if err := s.check(); err != nil {
		return nil, nil, err
	}
	comp := make([]*compiled, len(models))
	nb, ng, ns := 0, 0, 0
	for i, m := range models {
		if err := m.check(); err != nil {
			return nil, nil, err
		}
		comp[i] = m.compile()
		nb, ng, ns = max(nb, len(m.Bores)), max(ng, len(m.Gears)), max(ns, len(m.Setups))
	}
	workers := s.Workers
	if workers == 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	blocks := int((s.Trials + Block - 1) / Block)
	workers = min(workers, blocks)

	sums := make([]tally, len(models))
	pairs := make([]pair, len(models))
	for i := range sums {
		sums[i].first = make([]int, checks*comp[i].places)
	}
	var todo atomic.Int64
	var lock sync.Mutex
	var wait sync.WaitGroup
	for range workers {
		wait.Add(1)
		go func() {
			defer wait.Done()
			w := newWorker(nb, ng, ns)
			mine, pairsMine := make([]tally, len(models)), make([]pair, len(models))
			for i := range mine {
				mine[i].first = make([]int, checks*comp[i].places)
			}
			var base, bitmap [Block / 64]uint64
			for {
				block := int(todo.Add(1)) - 1
				if block >= blocks {
					break
				}
				n := int(min(Block, s.Trials-int64(block)*Block))
				for i, c := range comp {
					w.keys = c.keys
					w.seed(uint64(s.Seed), block)
					w.block(c, n, &mine[i], &bitmap)
					if i == 0 {
						base = bitmap
						continue
					}
					for k := range bitmap {
						pairsMine[i].gained += bits.OnesCount64(bitmap[k] &^ base[k])
						pairsMine[i].spoiled += bits.OnesCount64(base[k] &^ bitmap[k])
					}
				}
			}
			lock.Lock()
			defer lock.Unlock()
			for i := range mine {
				for k, n := range mine[i].class {
					sums[i].class[k] += n
				}
				for k, n := range mine[i].first {
					sums[i].first[k] += n
				}
				pairs[i].gained += pairsMine[i].gained
				pairs[i].spoiled += pairsMine[i].spoiled
			}
		}()
	}
	wait.Wait()
	out := make([]Result, len(models))
	for i, m := range models {
		out[i] = result(m, &sums[i], comp[i].places, int(s.Trials), uint64(s.Seed))
	}
	return out, pairs, nil
}

// block runs n trials of a seeded block and notes which came right.
func (w *worker) block(c *compiled, n int, t *tally, good *[Block / 64]uint64) {
	*good = [Block / 64]uint64{}
	for k := 0; k < n; k++ {
		s := w.trial(c, uint64(k))
		t.class[s.worst]++
		if s.worst == right {
			good[k/64] |= 1 << (k % 64)
		} else {
			t.first[s.first]++
		}
	}
}

func result(m *Model, t *tally, places, trials int, seed uint64) Result {
	n := float64(trials)
	r := Result{Trials: trials, Seed: seed, Right: t.class[right], Rework: t.class[rework], Spoilt: t.class[spoilt],
		NextBush: t.class[next], LostCount: t.class[lost]}
	r.FirstTimeRight = float64(r.Right) / n
	r.Low, r.High = odds.Wilson(r.Right, trials, z95)
	r.Saved = float64(r.Rework+r.Spoilt+r.NextBush) / n
	r.Lost = float64(r.LostCount) / n
	for at, count := range t.first {
		if count > 0 {
			r.Causes = append(r.Causes, Cause{m.cause(at/places, at%places), count, float64(count) / float64(trials-r.Right)})
		}
	}
	sort.SliceStable(r.Causes, func(i, j int) bool { return r.Causes[i].Count > r.Causes[j].Count })
	return r
}

// z95 is the normal deviate of a 95 % interval.
const z95 = 1.959964
