package survey

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestTwoLoads: holes worn to and fro over 25 to 70 degrees, some so deep that the
// narrowest is no old diameter. Read with their doubts, the depth comes out within
// 2u as often as it should, and nearer than widest less narrowest does.
func TestTwoLoads(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 2))
	var n, in, off, plain, wide float64
	for range 600 {
		b := NewWornBore([2]float64{}, 1.6, 1.6-0.005-0.02*rng.Float64(), 0.02+0.3*rng.Float64(), 0)
		b.FanHalf = (12.5 + 22.5*rng.Float64()) * deg
		// The least of all diameters, half a degree at a time.
		narrowest := math.Inf(1)
		for i := range 360 {
			a := float64(i) * deg / 2
			narrowest = math.Min(narrowest, b.Reach(a)+b.Reach(a+math.Pi))
		}
		if narrowest > 2*b.R+0.02 {
			wide++
		}
		u := 0.003 + 0.01*rng.Float64()
		read := TwoLoads{Widest: 2*b.R + b.W + u*rng.NormFloat64(), Narrowest: narrowest + u*rng.NormFloat64(),
			U: u * math.Sqrt2, Journal: 2 * b.JournalR, Half: b.FanHalf + 7*deg*rng.NormFloat64(), UHalf: 7 * deg, Clear: 0.06}
		w, uw := read.Depth()
		if n++; math.Abs(w-b.W) <= 2*uw {
			in++
		}
		off += (w - b.W) * (w - b.W)
		plain += math.Pow(read.Widest-read.Narrowest-b.W, 2)
	}
	t.Logf("%.1f %% within 2u, rms error %.1f um, of widest less narrowest %.1f um; %.0f of %.0f have no old diameter left",
		100*in/n, 1000*math.Sqrt(off/n), 1000*math.Sqrt(plain/n), wide, n)
	if wide < 100 {
		t.Errorf("only %.0f holes have no old diameter left", wide)
	}
	if in/n < 0.93 || off > plain/2 {
		t.Errorf("%.3f within 2u; rms %v against %v", in/n, math.Sqrt(off/n), math.Sqrt(plain/n))
	}
}
