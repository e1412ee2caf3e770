package survey

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestProbeContinuous: points that move by a ten millionth of a millimetre, or
// stand in another order, are answered alike: u to 1 %, the centre to a fiftieth
// of u. A mirror mirrors the answer, to twice that: rounds of looking begin
// elsewhere.
func TestProbeContinuous(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 7))
	worst, moved := 0.0, 0.0
	for k := range 120 {
		b := someBore(rng)
		if k%2 == 0 { // a journal that all but fills its hole
			b.r = b.R - 0.003 - 0.02*rng.Float64()
			b.d = b.R - b.r + b.w
		}
		p := Probe{Points: b.points(rng, []int{8, 12, 16, 24}[k%4]), S: math.Max(b.noise, 0.004),
			Journal: 2 * b.r, UJournal: 0.005, WornTo: []float64{b.side}, UDir: 10 * deg, Against: 16}
		if k%5 == 4 {
			p.WornTo = nil
		}
		was, err := FromProbe(p)
		if err != nil {
			continue
		}
		compare := func(what string, q Probe, most float64, back func([2]float64) [2]float64) {
			is, err := FromProbe(q)
			if err != nil {
				t.Errorf("%d %s: %v", k, what, err)
				return
			}
			du, dc := math.Abs(is.U()/was.U()-1), dist(back(is.Centre), was.Centre)/was.U()
			worst, moved = math.Max(worst, du), math.Max(moved, dc)
			if du > most || dc > 2*most {
				t.Errorf("%d %s: u %.6f, was %.6f; centre moves by %.4f u", k, what, is.U(), was.U(), dc)
			}
		}
		same := func(p [2]float64) [2]float64 { return p }
		q := p
		q.Points = append([][2]float64{}, p.Points...)
		for i := range q.Points {
			q.Points[i][0] += 1e-7 * rng.NormFloat64()
			q.Points[i][1] += 1e-7 * rng.NormFloat64()
		}
		compare("jitter", q, 0.01, same)
		q.Points = append([][2]float64{}, p.Points...)
		rng.Shuffle(len(q.Points), func(i, j int) { q.Points[i], q.Points[j] = q.Points[j], q.Points[i] })
		compare("order", q, 0.01, same)
		mirror := func(p [2]float64) [2]float64 { return [2]float64{-p[0], p[1]} }
		for i := range q.Points {
			q.Points[i] = mirror(p.Points[i])
		}
		if p.WornTo != nil {
			q.WornTo = []float64{math.Pi - p.WornTo[0]}
		}
		compare("mirror", q, 0.02, mirror)
	}
	t.Logf("at worst u by %.2g, the centre by %.2g u", worst, moved)
}
