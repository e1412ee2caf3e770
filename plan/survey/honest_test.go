package survey

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestUncertaintyIsHonest: on made-up one-lobe bores the error of the centre
// lies within 2u as often as it should, and u is neither boast nor alarm.
func TestUncertaintyIsHonest(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	const bores = 2500
	for _, n := range []int{0, 8, 36} {
		within, missed, fans := 0, 0, 0
		var sum float64
		for range bores {
			b := someBore(rng)
			k := n
			if k == 0 {
				k = [3]int{8, 16, 36}[rng.IntN(3)]
			}
			pts := b.points(rng, k)
			f, err := FitOutline(pts, b.r, b.noise, b.side)
			if err != nil {
				t.Fatal(err)
			}
			off := dist(f.O, b.o)
			if off <= 2*f.U {
				within++
			}
			sum += off * off / f.U / f.U
			if f.Shape == Fan {
				fans++
			}
			// From the truth the solver may not do better.
			o := outline{pts: pts, r: b.r, shape: OneLobe}
			s := seed{q: vector{b.o[0], b.o[1], b.R, b.d, b.theta}}
			o.begin(&s)
			o.improve(&s, 400)
			if f.SSQ > s.n.ssq+b.noise*b.noise {
				missed++
			}
		}
		share, rms := float64(within)/bores, math.Sqrt(sum/bores)
		t.Logf("n %d (0: mixed): %.2f %% within 2u, rms error/u %.3f, fans taken %d, better minimum missed %d of %d", n, 100*share, rms, fans, missed, bores)
		if share < 0.92 || share > 0.99 || rms < 0.7 || rms > 1.2 {
			t.Errorf("n %d: want 92 to 99 %% and 0.7 to 1.2", n)
		}
		if missed > bores/100 {
			t.Errorf("n %d: %d better minima missed", n, missed)
		}
	}
}
