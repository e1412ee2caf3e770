package survey

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/optimize"

	"rebush/testdata"
)

// TestAgainstGonum: a general optimiser of gonum, started from the fit and from
// two other places, finds the same answer or a worse one on the same points.
func TestAgainstGonum(t *testing.T) {
	n, worse := 0, 0
	var widest float64
	for _, r := range testdata.Rows[row](t, "own/wornbores.csv") {
		if r.num(t, "fan_half_deg") > 0 || r.num(t, "noise_um") == 0 || r.num(t, "n") < 16 {
			continue
		}
		pts, rj, side := r.points(t), r.num(t, "r"), r.num(t, "wear_side_hint_deg")*deg
		f, err := fitLobe(pts, rj, r.num(t, "noise_um")/1000, side)
		if err != nil {
			t.Fatal(err)
		}
		cost := func(q []float64) float64 {
			// Its own way: the wall's distance as the outline tells it.
			if q[2] < rj || q[3] < 0 || apart(q[4], side) > sideways {
				return 1e9
			}
			b := WornBore{O: [2]float64{q[0], q[1]}, R: q[2], JournalR: rj, D: q[3], ThetaRad: q[4]}
			var s float64
			for _, p := range pts {
				e := b.Gap(p)
				s += e * e
			}
			return s * 1e6
		}
		near(t, r["id"]+" cost", cost([]float64{f.O[0], f.O[1], f.R, f.D, f.Theta})/1e6, f.SSQ, 1e-9+1e-9*f.SSQ)
		best := math.Inf(1)
		var at [2]float64
		for _, x0 := range [][]float64{
			{f.O[0], f.O[1], f.R + 1e-5, f.D + 1e-5, f.Theta},
			{r.num(t, "x0"), r.num(t, "y0"), r.num(t, "R") + 1e-4, r.num(t, "d"), r.num(t, "theta_deg") * deg},
			{r.num(t, "mcci_x"), r.num(t, "mcci_y"), r.num(t, "mcci_r"), r.num(t, "d"), side},
		} {
			res, err := optimize.Minimize(optimize.Problem{Func: cost}, x0, &optimize.Settings{FuncEvaluations: 4000}, &optimize.NelderMead{SimplexSize: 0.02})
			if err == nil && res.F/1e6 < best {
				best, at = res.F/1e6, [2]float64{res.X[0], res.X[1]}
			}
		}
		n++
		// The residual has kinks, where one point changes from wall to lobe: the
		// same answer is a cost within a ten-thousandth,
		// or a centre within a tenth of u.
		apart := dist(at, f.O) / f.U
		if best < f.SSQ {
			widest = math.Max(widest, apart)
		}
		if f.SSQ > best*(1+1e-4) {
			t.Logf("%s: sum of squares %.6g, gonum %.6g, centres %.3f u apart", r["id"], f.SSQ, best, apart)
			if apart > 0.1 {
				worse++
				t.Errorf("%s: another answer", r["id"])
			}
		}
	}
	t.Logf("where gonum is lower at all its centre is at most %.4f u away", widest)
	t.Logf("the same answer or a better cost on %d of %d bores", n-worse, n)
	if n < 40 {
		t.Errorf("only %d bores compared", n)
	}
}
