package survey

import (
	"encoding/binary"
	"math"
	"slices"
	"sync"
)

// Memo keeps what was found from probed points: all outlines that agree with them
// are weighed once for the same points, however many plans of a truck ask. It
// changes no figure, and may be shared. The zero Memo is ready, a nil one keeps
// nothing.
type Memo struct {
	lock sync.Mutex
	kept map[string]found
}

// found is an answer or why there is none.
type found struct {
	Answer
	err error
}

// touched is what work finds from the points of a ball that touched a wall.
func (m *Memo) touched(p Probe, ball float64, work func(Probe, float64) (Answer, error)) (Answer, error) {
	if m == nil {
		return work(p, ball)
	}
	m.lock.Lock()
	defer m.lock.Unlock()
	key := p.key(ball)
	of, ok := m.kept[key]
	if !ok {
		if m.kept == nil {
			m.kept = map[string]found{}
		}
		of.Answer, of.err = work(p, ball)
		m.kept[key] = of
	}
	return of.Answer.copied(), of.err
}

// key tells a question from every other, bit by bit.
func (p Probe) key(ball float64) string {
	b := make([]byte, 0, 16*len(p.Points)+64)
	put := func(list ...float64) {
		for _, v := range list {
			b = binary.LittleEndian.AppendUint64(b, math.Float64bits(v))
		}
	}
	put(ball, p.S, p.Journal, p.UJournal, p.UDir, p.Against, float64(len(p.WornTo)))
	put(p.WornTo...)
	for _, at := range p.Points {
		put(at[:]...)
	}
	return string(b)
}

// copied is an answer of which nothing is shared.
func (a Answer) copied() Answer {
	if a.Bore != nil {
		b := *a.Bore
		a.Bore = &b
	}
	a.Parts, a.Words = slices.Clone(a.Parts), slices.Clone(a.Words)
	a.Points, a.Residuals, a.LeftOut = slices.Clone(a.Points), slices.Clone(a.Residuals), slices.Clone(a.LeftOut)
	return a
}
