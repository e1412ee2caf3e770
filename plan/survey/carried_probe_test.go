package survey

import (
	"fmt"
	"maps"
	"math"
	"os"
	"slices"
	"strconv"
	"testing"

	"rebush/fits/table"
	"rebush/plan/world"
)

// cover counts how often the doubt of an old centre covers its error.
type cover struct {
	n, inside, along int
	squares, stated  float64
}

// add takes the error of a centre, with its covariance. Within the ellipse of
// 95 % chi-square is below 5.991 (two degrees of freedom: -2 ln 0.05).
func (c *cover) add(e [2]float64, cov [2][2]float64) {
	c.n++
	det := cov[0][0]*cov[1][1] - cov[0][1]*cov[0][1]
	if chi := (cov[1][1]*e[0]*e[0] - 2*cov[0][1]*e[0]*e[1] + cov[0][0]*e[1]*e[1]) / det; chi <= -2*math.Log(0.05) {
		c.inside++
	}
	sin, cos := math.Sincos(0.5 * math.Atan2(2*cov[0][1], cov[0][0]-cov[1][1]))
	if math.Abs(e[0]*cos+e[1]*sin) <= 2*LargestU(cov) {
		c.along++
	}
	c.squares += e[0]*e[0] + e[1]*e[1]
	c.stated += cov[0][0] + cov[1][1]
}

// shares are those inside the ellipse and along its major axis, and the rms of
// errors and of what was stated, mm.
func (c *cover) shares() (inside, along, rms, stated float64) {
	n := math.Max(1, float64(c.n))
	return float64(c.inside) / n, float64(c.along) / n, math.Sqrt(c.squares / n), math.Sqrt(c.stated / n)
}

func (c *cover) String() string {
	inside, along, rms, stated := c.shares()
	return fmt.Sprintf("%5d centres, ellipse %5.1f %%, along %5.1f %%, rms %5.1f um, stated %5.1f um", c.n, 100*inside,
		100*along, 1000*rms, 1000*stated)
}

// holds wants shares of about 95 %, more nearly the more centres were counted.
func (c *cover) holds(t *testing.T, what string) {
	t.Helper()
	t.Logf("%-22s %v", what, c)
	inside, along, _, _ := c.shares()
	slack := 0.02 + 3*math.Sqrt(0.95*0.05/math.Max(1, float64(c.n)))
	if c.n > 0 && (inside < 0.95-slack || along < 0.95-slack) {
		t.Errorf("%s: want 95 %% less %.1f at most", what, 100*slack)
	}
}

// trucks is how many trucks are drawn: TRUCKS of the environment, else as many
// as said.
func trucks(few int) int {
	if n, err := strconv.Atoi(os.Getenv("TRUCKS")); err == nil {
		return n
	}
	return few
}

// bandOf names the band of wear that a hole belongs to.
func bandOf(wear float64) string {
	for _, to := range []float64{0.010, 0.035, 0.12, 0.30} {
		if wear < to {
			return fmt.Sprintf("worn below %.3f", to)
		}
	}
	return "worn deeper"
}

// TestCarriedProbe measures holes of made-up trucks by points of their wall and
// holds the old centre found to the true one, in every band of true wear. A hole
// that was repaired stands elsewhere, which no points can tell.

func TestCarriedProbe(t *testing.T) {
	var all cover
	kinds := map[string]*cover{}
	rules, err := table.ReadRules(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	for seed := range trucks(200) {
		w := world.Truck(uint64(40000+seed), world.Options{})
		j, err := w.Read(t.TempDir())
		if err != nil {
			t.Fatal(err)
		}
		tools, err := ReadInstruments(table.BuiltIn(), j.Shop)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range FromJob(j, tools, rules, nil).Bores {
			b := w.Truth.Bore(f.Hole.Name())
			if len(f.Hole.Bore.Probed) == 0 || b == nil || b.Repaired {
				continue
			}
			for _, s := range f.Own {
				if s.What != "probed points" {
					continue
				}
				a, err := s.ask()
				if err != nil {
					t.Logf("truck %d, %s: %v", w.Seed, b.Name, err)
					continue
				}
				off := [2]float64{a.Centre[0] - b.Centre[0], a.Centre[1] - b.Centre[1]}
				all.add(off, a.Cov)
				for _, kind := range []string{bandOf(b.Hole.Depth), fmt.Sprintf("sides said: %d", len(f.Hole.Bore.WornTo)),
					fmt.Sprintf("%2d points", len(a.Points))} {
					if kinds[kind] == nil {
						kinds[kind] = &cover{}
					}
					kinds[kind].add(off, a.Cov)
				}
			}
		}
	}
	all.holds(t, "all")
	for _, kind := range slices.Sorted(maps.Keys(kinds)) {
		kinds[kind].holds(t, kind)
	}
	if _, _, rms, stated := all.shares(); all.n < trucks(200)/4 || rms > 1.3*stated {
		t.Errorf("%d centres, rms %.4f, stated %.4f", all.n, rms, stated)
	}
}

// TestOwnProbesCover: so it is with the made-up holes of own/wornbores.csv.
func TestOwnProbesCover(t *testing.T) {
	var all cover
	eachProbe(t, func(r row, p Probe, o [2]float64) {
		if p.S == 0 {
			return
		}
		pd, err := FromProbe(p)
		if err != nil {
			t.Fatal(err)
		}
		all.add([2]float64{pd.Centre[0] - o[0], pd.Centre[1] - o[1]}, pd.Cov)
	})
	all.holds(t, "own")
	if inside, along, _, stated := all.shares(); all.n < 80 || inside > 0.995 || along > 0.995 || stated > 0.02 {
		t.Errorf("%d holes, %v", all.n, &all)
	}
}
