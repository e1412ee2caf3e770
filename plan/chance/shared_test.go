package chance

import (
	"math"
	"testing"
)

// The old centres of both bores of a shaft are drawn with what they have in common:
// 400 000 trials have the covariances that were asked for within 1 in 100, whichever
// bore stands first in the list.
func TestOldCentresAreDrawnTogether(t *testing.T) {
	left := [3]float64{0.0004, 0.0001, 0.0002}
	right := [3]float64{0.0003, -0.00005, 0.0005}
	x := [2][2]float64{{0.0002, 0.00004}, {0.00003, 0.0002}} // of left (rows) and right
	m := truck()
	for i := range 2 {
		m.Bores[i].Kind = Leave
	}
	m.Bores[0].Survey.Cov, m.Bores[1].Survey.Cov = left, right
	m.Bores[0].Survey.Cross, m.Bores[1].Survey.Cross = x, [2][2]float64{{x[0][0], x[1][0]}, {x[0][1], x[1][1]}}
	var before []float64
	for _, turned := range []bool{false, true} {
		l, r := 0, 1
		if turned {
			m.Bores[0], m.Bores[1] = m.Bores[1], m.Bores[0]
			l, r = 1, 0
		}
		c, w := m.compile(), newWorker(len(m.Bores), len(m.Gears), len(m.Setups))
		w.keys = c.keys
		n, got := 0.0, make([]float64, 10)
		for block := range 100 {
			w.seed(1, block)
			for k := range uint64(Block) {
				w.trial(c, k)
				v := [4]float64{w.px[l], w.py[l], w.px[r], w.py[r]}
				at := 0
				for i := range v {
					for j := range i + 1 {
						got[at] += v[i] * v[j]
						at++
					}
				}
				n++
			}
		}
		want := []float64{left[0], left[1], left[2], x[0][0], x[1][0], right[0], x[0][1], x[1][1], right[1], right[2]}
		for i := range got {
			if got[i] /= n; math.Abs(got[i]-want[i]) > 5e-6 {
				t.Errorf("turned %v, %d: %.6f, wanted %.6f", turned, i, got[i], want[i])
			}
			if turned && got[i] != before[i] {
				t.Errorf("%d: %v, the other way round %v", i, got[i], before[i])
			}
		}
		before = got
	}
	// Both stay: the pair at 0.45 between them, along y, has 0.55^2 x 2 + 0.45^2 x 5
	// + 2 x 0.55 x 0.45 x 2 = 2.6075 of 0.0001.
	c := m.compile()
	v := m.crossed(&c.gears[0], 0) + m.crossed(&c.gears[0], 1)
	if math.Abs(v-0.99e-4) > 1e-12 {
		t.Errorf("in common along the line of centres: %v, by hand 0.000099", v)
	}
	m.Bores[0].Survey.Cross = [2][2]float64{}
	if m.unshared(); m.Bores[1].Survey.Cross != [2][2]float64{} {
		t.Error("one bore is placed otherwise, and yet they have something in common")
	}
}

// Twice the error of one bore is twice what the other has of it.
func TestSharedIsScaled(t *testing.T) {
	m := truck()
	for i := range 2 {
		m.Bores[i].Survey.Cross = [2][2]float64{{0.00005, 0}, {0, 0.00005}}
	}
	m.rescale(1, 2)
	for i, want := range []float64{0.0001, 0.0004} {
		if b := m.Bores[i].Survey; math.Abs(b.Cov[0]-want) > 1e-12 || math.Abs(b.Cross[1][1]-0.0001) > 1e-12 {
			t.Errorf("bore %d: %+v", i, b)
		}
	}
}
