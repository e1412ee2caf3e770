package survey

import (
	"math"
	"testing"

	"rebush/testdata"
)

// TestWornBores walks the made-up bores of own/wornbores.csv: every row with a
// tolerance lies inside it. Their generator knows nothing of this room, but it
// wears its holes as this room supposes; no outside truth is known.
func TestWornBores(t *testing.T) {
	passed, noisy, covered := 0, 0, 0
	var sum float64
	for _, r := range testdata.Rows[row](t, "own/wornbores.csv") {
		if !r.has("tol_centre_mm") {
			continue
		}
		s := r.num(t, "noise_um") / 1000
		f, err := FitOutline(r.points(t), r.num(t, "r"), s, r.num(t, "wear_side_hint_deg")*deg)
		if err != nil {
			t.Errorf("%s: %v", r["id"], err)
			continue
		}
		off := dist(f.O, [2]float64{r.num(t, "x0"), r.num(t, "y0")})
		if tol := r.num(t, "tol_centre_mm"); off > tol {
			t.Errorf("%s: centre off by %.5f, tolerance %.5f (%v, rms %.5f, u %.4f)", r["id"], off, tol, f.Shape, math.Sqrt(f.SSQ/float64(f.N)), f.U)
		} else {
			passed++
		}
		if s > 0 {
			noisy++
			if off <= 2*f.U {
				covered++
			}
			sum += off * off / (f.U * f.U)
		}
	}
	share, rms := float64(covered)/float64(noisy), math.Sqrt(sum/float64(noisy))
	t.Logf("wornbores.csv: %d of 149 inside; of %d noisy %.1f %% within 2u, rms error/u %.3f", passed, noisy, 100*share, rms)
	if passed != 149 || share < 0.9 || rms < 0.7 || rms > 1.2 {
		t.Errorf("want 149 inside, 90 %% within 2u, rms 0.7 to 1.2")
	}
}

func benchPoints(b testing.TB) ([][2]float64, float64, float64) {
	for _, r := range testdata.Rows[row](b, "own/wornbores.csv") {
		if r["id"] == "WB025" {
			return r.points(b), r.num(b, "r"), r.num(b, "wear_side_hint_deg") * deg
		}
	}
	b.Fatal("no row WB025")
	return nil, 0, 0
}

func BenchmarkLobe36(b *testing.B) {
	pts, r, side := benchPoints(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := fitLobe(pts, r, 0.005, side); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLobeFan36(b *testing.B) {
	pts, r, side := benchPoints(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := FitOutline(pts, r, 0.005, side); err != nil {
			b.Fatal(err)
		}
	}
}
