package survey

import (
	"math"
	"math/rand/v2"
	"testing"

	"rebush/plan/job"
)

// TestCrossByDrawing: the errors of two old centres that lend each other what they
// know, drawn 20000 times with their middles, diameters and two drillings, are
// related as Cross says.
func TestCrossByDrawing(t *testing.T) {
	k := oneShaft(t, measured(t), measured(t))
	k.Chassis.DrilledTogether = job.Yes // 0.02 apart
	holes, _, _ := k.survey()
	a, b := holes[0], holes[1]
	rng := rand.New(rand.NewPCG(8, 8))
	draw := func(c [2][2]float64) [2]float64 {
		l := math.Sqrt(c[0][0])
		m := c[0][1] / l
		p, q := rng.NormFloat64(), rng.NormFloat64()
		return [2]float64{l * p, m*p + math.Sqrt(c[1][1]-m*m)*q}
	}
	var got, own [2][2]float64
	const n = 20000
	for range n {
		apart := draw(round2(0.02))
		ea, eb := draw(a.Evidence[0].Cov), draw(b.Evidence[0].Cov)
		// The true centres lie at nothing and at what the drillings differ by.
		es := [2][]Evidence{}
		es[0] = append(es[0], Evidence{Rank: 4, Cov: a.Evidence[0].Cov, Centre: ea}, Evidence{Rank: 5, Cov: a.Evidence[1].Cov,
			Centre: [2]float64{eb[0] + apart[0], eb[1] + apart[1]}})
		es[1] = append(es[1], Evidence{Rank: 4, Cov: b.Evidence[0].Cov, Centre: [2]float64{eb[0] + apart[0], eb[1] + apart[1]}},
			Evidence{Rank: 5, Cov: b.Evidence[1].Cov, Centre: ea})
		var fades = []float64{1, 1}
		var at [2][2]float64
		for i := range es {
			var cov [2][2]float64
			for j, g := range gains(es[i], fades, &cov) {
				for r := range 2 {
					at[i][r] += g[r][0]*es[i][j].Centre[0] + g[r][1]*es[i][j].Centre[1]
				}
			}
		}
		for i := range 2 {
			for j := range 2 {
				got[i][j] += at[0][i] * (at[1][j] - apart[j]) / n
				own[i][j] += at[0][i] * at[0][j] / n
			}
		}
	}
	for i := range 2 {
		near(t, "own variance", own[i][i], a.Worn.Cov[i][i], 0.05*own[i][i])
		near(t, "cross", got[i][i], a.Cross[i][i], 0.03*own[i][i])
		if a.Cross[i][i] < 0.1*own[i][i] {
			t.Errorf("cross %v beside %v: too small to be seen here", a.Cross[i][i], own[i][i])
		}
		near(t, "the other way", b.Cross[i][i], a.Cross[i][i], 1e-12)
	}
}
