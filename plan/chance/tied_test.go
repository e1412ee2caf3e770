package chance

import (
	"math"
	"testing"
)

// distances are the mean and the spread of the first pair's distance as it is tried.
func distances(t *testing.T, m Model) (mean, u float64) {
	t.Helper()
	if err := m.check(); err != nil {
		t.Fatal(err)
	}
	c, w := m.compile(), newWorker(len(m.Bores), len(m.Gears), len(m.Setups))
	n, sum, sq := 0.0, 0.0, 0.0
	for block := range 20 {
		w.seed(1, block)
		for k := range uint64(Block) {
			w.trial(c, k)
			d := w.centre[0] - 8.1175
			n, sum, sq = n+1, sum+d, sq+d*d
		}
	}
	mean = sum / n
	return mean, math.Sqrt(sq/n - mean*mean)
}

// That a pair ran ties the errors of its distance to the shift of its teeth. By
// hand: 0.03 of the teeth and 0.04 of the mate are s^2 = 0.0025; a pull of 8 gives
// them a mean of 0.02, and 240 leaves 0.0025 - 0.0025^2 x 240 = 0.001, u 0.0316. A
// bore that is not cut stands where the pair ran: another 0.0025 of its survey
// makes s^2 = 0.005, the mean 0.04 and, with 150, 0.005 - 0.005^2 x 150 = 0.00125,
// u 0.0354. A bore that is cut has left its old centre, and its survey says nothing.
func TestTied(t *testing.T) {
	m := plainJob()
	g := &m.Gears[0]
	g.UGeomMM, g.UMateMM, g.SpreadMM = 0.03, 0.04, []float64{0}
	look := func(what string, mean, u float64) {
		t.Helper()
		if a, b := distances(t, m); math.Abs(a-mean) > 0.0005 || math.Abs(b-u) > 0.0005 {
			t.Errorf("%s: mean %+.4f u %.4f, by hand %+.4f and %.4f", what, a, b, mean, u)
		}
	}
	look("untied", 0, 0.05)
	g.Ties = []Tie{{Pull: 8, Sure: 240}}
	look("tied", 0.02, 0.0316)
	m.Bores[0].Survey.Cov = [3]float64{0.0025, 0, 0.0025}
	look("cut", 0.02, 0.0316)
	m.Bores[0].Kind, g.Ties[0].Sure = OldSeat, 150
	look("in its old seat", 0.04, 0.0354)
	g.Ties = append(g.Ties, Tie{})
	if m.check() == nil {
		t.Error("two ties for one shift")
	}
}
