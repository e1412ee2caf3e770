package survey

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// wallsOf are the walls of a bore as they are.
func wallsOf(b WornBore, w Walls) Walls {
	h := b.support
	w.Left, w.Right = b.O[0]-h(math.Pi), b.O[0]+h(0)
	w.Bottom, w.Top = b.O[1]-h(-math.Pi/2), b.O[1]+h(math.Pi/2)
	w.R, w.JournalR = b.R, b.JournalR
	return w
}

// METHODS.md 3.4: R 1.55, r 1.53, w 0.10, worn to 30: walls -1.5500, 1.6339,
// -1.5500, 1.5900. Middles would give (0.042, 0.020).
func TestWalls(t *testing.T) {
	b := NewWornBore([2]float64{}, 1.55, 1.53, 0.10, 30*deg)
	near(t, "right wall", b.support(0), 1.6339, 5e-5)
	near(t, "top wall", b.support(math.Pi/2), 1.5900, 5e-5)
	w := wallsOf(b, Walls{UWall: 0.003, UR: 0.004, WornTo: []float64{40 * deg}, UDir: 10 * deg})
	e, err := FromWalls(w)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "centre", math.Hypot(e.Centre[0], e.Centre[1]), 0, 5e-4)
	near(t, "theta", e.Bore.ThetaRad/deg, 30, 2)
	near(t, "w", e.Bore.W, 0.1, 2e-3)
	// Both far walls are worn: x0 = x1 + R, y0 = y1 + R, and the error of R common.
	near(t, "u(x)", math.Sqrt(e.Cov[0][0]), 0.005, 2e-4)
	near(t, "common R", e.Cov[0][1], 0.004*0.004, 2e-6)
	w.WornTo[0] = 135 * deg // the other x wall: not unworn
	if e, err = FromWalls(w); err != nil {
		t.Fatal(err)
	}
	if !e.Doubtful && math.Abs(e.Centre[0]) < 0.05 {
		t.Errorf("a wrong side changes nothing: %+v", e)
	}
	w.WornTo, w.Usual = nil, someUsual
	if e, err = FromWalls(w); err != nil || !e.Doubtful || math.Hypot(e.Centre[0], e.Centre[1]) > 2*e.U() {
		t.Errorf("no side: %v %+v", err, e)
	}
	near(t, "middle x", e.Centre[0], 0.042, 5e-4)
	near(t, "middle y", e.Centre[1], 0.020, 5e-4)
	w.R = 0
	if _, err := FromWalls(w); err == nil || !strings.Contains(err.Error(), "pin") {
		t.Errorf("no R: %v", err)
	}
	w.R = 1.7
	if _, err := FromWalls(w); !errors.Is(err, ErrWall) {
		t.Errorf("R too large: %v", err)
	}
}

// TestWallsGoSmoothly: as the stated side turns past an axis, and as a wall is read
// farther out, the centre moves without a jump.
func TestWallsGoSmoothly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		b := NewWornBore([2]float64{}, 1.6, 1.6-f("c", 0, 0.03), f("w", 0, 0.25), f("theta", 1, 2.2))
		w := wallsOf(b, Walls{UWall: f("u", 0.004, 0.02), UR: f("u of R", 0.001, 0.01), UDir: 10 * deg, Usual: someUsual})
		from := b.ThetaRad + f("said", -0.35, 0.25)
		var was Evidence
		for i := range 10 {
			w.WornTo = []float64{from + 0.5*deg*float64(i)}
			e, err := FromWalls(w)
			if err != nil {
				t.Fatal(err)
			}
			if i > 0 && dist(e.Centre, was.Centre) > 0.006 {
				t.Fatalf("said %.1f degrees: jumps by %v", w.WornTo[0]/deg, dist(e.Centre, was.Centre))
			}
			was = e
		}
		for i := range 10 {
			w.Top += 0.001
			e, err := FromWalls(w)
			if err != nil {
				t.Fatal(err)
			}
			if i > 0 && dist(e.Centre, was.Centre) > 0.0015 {
				t.Fatalf("a wall %.3f farther out: jumps by %v", 0.001*float64(i+1), dist(e.Centre, was.Centre))
			}
			was = e
		}
	})
}

// TestWallsHonest: walls, old diameter and side drawn with their doubts, whatever
// side it wore to and however deep.
func TestWallsHonest(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for _, deep := range [][2]float64{{0, 0.03}, {0.03, 0.1}, {0.1, 0.3}} {
		var n, in, along float64
		for range 250 {
			b := NewWornBore([2]float64{}, 1.6, 1.6-0.005-0.02*rng.Float64(), deep[0]+(deep[1]-deep[0])*rng.Float64(), 6.28*rng.Float64())
			u, uR := 0.004+0.012*rng.Float64(), 0.002+0.008*rng.Float64()
			w := wallsOf(b, Walls{UWall: u, UR: uR, UDir: 10 * deg, WornTo: []float64{b.ThetaRad + 10*deg*rng.NormFloat64()}})
			for _, p := range []*float64{&w.Left, &w.Right, &w.Bottom, &w.Top} {
				*p += u * rng.NormFloat64()
			}
			w.R += uR * rng.NormFloat64()
			e, err := FromWalls(w)
			if err != nil {
				continue // walls nearer than the old diameter
			}
			i, c := inverse2(e.Cov), e.Centre
			n++
			if c[0]*(i[0][0]*c[0]+2*i[0][1]*c[1])+c[1]*i[1][1]*c[1] <= 5.991 {
				in++
			}
			major := math.Atan2(2*e.Cov[0][1], e.Cov[0][0]-e.Cov[1][1]) / 2
			if math.Abs(c[0]*math.Cos(major)+c[1]*math.Sin(major)) <= 2*e.U() {
				along++
			}
		}
		t.Logf("worn %v: %.1f %% in the ellipse, %.1f %% within 2u along it", deep, 100*in/n, 100*along/n)
		// 95 and 95.4 in 100, and 3 standard deviations of 250.
		if in/n < 0.908 || in/n > 0.992 || along/n < 0.914 || along/n > 0.994 {
			t.Errorf("worn %v: %.3f in the ellipse, %.3f along it", deep, in/n, along/n)
		}
	}
}
