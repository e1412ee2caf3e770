package habit

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"rebush/fits/dim"
)

// truth is a shop with known habits, all in um; setup and hole of a place along
// each axis.
type truth struct {
	over, job, hole float64 // the mean, and its scatter from job to job and from hole to hole
	setup, place    float64
	gauge           float64
}

// past draws past jobs of a shop.
func (s truth) past(rng *rand.Rand, jobs, holes int) (out []Job) {
	for range jobs {
		shared := s.over + s.job*rng.NormFloat64()
		at := [2]float64{s.setup * rng.NormFloat64(), s.setup * rng.NormFloat64()}
		j := Job{}
		for range holes {
			h := Hole{Bore: "a.left", Way: Reamed, Reamer: "5 mm H7"}
			h.Seat = &Over{shared + s.hole*rng.NormFloat64() + s.gauge*rng.NormFloat64(), s.gauge}
			h.Place = &Off{UMM: s.gauge / 1000, Clamping: "A"}
			for a := range 2 {
				h.Place.MM[a] = (at[a] + s.place*rng.NormFloat64() + s.gauge*rng.NormFloat64()) / 1000
			}
			j.Holes = append(j.Holes, h)
		}
		out = append(out, j)
	}
	return out
}

// Habits are found again as well as is said: of 400 shops, drawn from what the
// rules say of shops, the truth lies within two standard uncertainties in 92 to
// 99.5 of 100, and the standard uncertainty is what they miss by. Measured with a
// gauge of 2 um that is taken off.
func TestFoundAgain(t *testing.T) {
	rules := RulesOf(rulesOf(t))
	by := Ruled(rulesOf(t), Place{SetupMM: 0.010, HoleMM: 0.010})
	for _, jobs := range []int{3, 6, 15} {
		in, scaled, scatter, setup, place := 0, 0.0, 0.0, 0.0, 0.0
		const n = 400
		for i := range n {
			rng := rand.New(rand.NewPCG(uint64(i), uint64(jobs)))
			s := truth{over: 4 * rng.NormFloat64(), job: 1.5, hole: 2.6, setup: 15, place: 26, gauge: 2}
			l := Learn(s.past(rng, jobs, 3), by, rules)
			f := l.Ways[Reamed]
			if f.Jobs != jobs || f.Holes+countOf(l, "seat") != 3*jobs {
				t.Fatalf("%+v", f)
			}
			d := (f.OverUm - s.over) / f.UOverUm
			if math.Abs(d) <= 2 {
				in++
			}
			scaled += d * d / n
			scatter += f.ScatterUm * f.ScatterUm / n
			setup += l.Place.SetupUm * l.Place.SetupUm / n
			place += l.Place.HoleUm * l.Place.HoleUm / n
		}
		if share := float64(in) / n; share < 0.92 || share > 0.998 {
			t.Errorf("%d jobs: %.3f within two standard uncertainties (rms %.2f)", jobs, share, math.Sqrt(scaled))
		}
		if r := math.Sqrt(scaled); r < 0.5 || r > 1.1 {
			t.Errorf("%d jobs: the mean misses by %.2f of its standard uncertainty", jobs, r)
		}
		// Mean squares: a variance is estimated without bias but for the cut at 0.
		for what, x := range map[string][2]float64{"scatter": {scatter, 1.5*1.5 + 2.6*2.6}, "clamping": {setup, 15 * 15},
			"hole": {place, 26 * 26}} {
			if r := math.Sqrt(x[0] / x[1]); r < 0.85 || r > 1.15 {
				t.Errorf("%d jobs: %s is found at %.2f of what it is", jobs, what, r)
			}
		}
	}
}

func countOf(l Learned, what string) (n int) {
	for _, s := range l.Slipped {
		if s.What == what {
			n++
		}
	}
	return n
}

func seats(um ...float64) (j Job) {
	for _, x := range um {
		j.Holes = append(j.Holes, Hole{Bore: "a.left", Way: Reamed, Seat: &Over{x, 1}})
	}
	return j
}

// By hand. Three jobs of two reamed holes, 4 and 6, 7 and 9, 6 and 4 um over, by a
// gauge of 1 um; the rule scatters by 3 um and counts as 4 jobs:
//
//	means of jobs  5, 8, 5: on the whole 6; their variance (1+4+1)/2 = 3
//	u              root((4 x (9+1) + 2 x 3)/(4+2)/3) = root(46/18) = 1.59861
//	in a job       3 pairs 2 apart: 2 each, over 3: 2
//	scatter        3 + 2 x (1 - 1/2) = 4, less 1 of the gauge: root 3 = 1.73205
//	known to       of the variance 4 x root(2/2) = 4, which is more than 3: root(4)/2 = 1
func TestByHand(t *testing.T) {
	l := Learn([]Job{seats(4, 6), seats(7, 9), seats(6, 4)}, Ruled(rulesOf(t), Place{}), RulesOf(rulesOf(t)))
	f := l.Ways[Reamed]
	close(t, "mean", f.OverUm, 6)
	close(t, "u", f.UOverUm, 1.59861)
	close(t, "scatter", f.ScatterUm, 1.73205)
	close(t, "known to", f.UScatterUm, 1)
	if !f.Told || f.Jobs != 3 || f.Holes != 6 || len(l.Slipped) != 0 || l.Slips != (FoundSlips{0, 6, 3}) {
		t.Errorf("%+v %+v", f, l.Slips)
	}
}

// By hand. Two jobs in one clamping each, holes at +20 and +40 um, and at -10 and
// -30, along x and on target along y, the gauge without doubt:
//
//	in all    (400 + 1600 + 100 + 900)/8 axes = 375
//	in one    (10^2 + 10^2 + 10^2 + 10^2)/(2 x (1 + 1)) = 100: a hole 10
//	clamping  root(375 - 100) = 16.58312
func TestPlacesByHand(t *testing.T) {
	job := func(x ...float64) (j Job) {
		for _, x := range x {
			j.Holes = append(j.Holes, Hole{Bore: "a.left", Place: &Off{MM: [2]float64{x / 1000, 0}, Clamping: "A"}})
		}
		return j
	}
	p := Learn([]Job{job(20, 40), job(-10, -30)}, Ruled(rulesOf(t), Place{SetupMM: 0.02, HoleMM: 0.02}), RulesOf(rulesOf(t))).Place
	close(t, "hole", p.HoleUm, 10)
	close(t, "clamping", p.SetupUm, 16.58312)
	close(t, "to the right", p.MeanUm[0], 5)
	if !p.Told || !p.Apart || p.Jobs != 2 || p.Holes != 4 {
		t.Errorf("%+v", p)
	}
}

// A hole far from the others is a slip: it is counted, named, and in no mean.
func TestSlip(t *testing.T) {
	by, rules := Ruled(rulesOf(t), Place{}), RulesOf(rulesOf(t))
	l := Learn([]Job{seats(4, 6), seats(7, 60), seats(6, 4)}, by, rules)
	if l.Slips != (FoundSlips{1, 6, 3}) || len(l.Slipped) != 1 || l.Slipped[0].Job != 1 || l.Slipped[0].What != "seat" {
		t.Fatalf("%+v", l)
	}
	if f := l.Ways[Reamed]; f.Holes != 5 || f.OverUm > 6 {
		t.Errorf("%+v", f)
	}
	// A shop that bores 60 um small throughout slips nowhere.
	if l = Learn([]Job{seats(-58, -60), seats(-61, -62), seats(-60, -57)}, by, rules); l.Slips.Slipped != 0 {
		t.Errorf("%+v", l.Slipped)
	}
}

// A coarse gauge makes no shop look steady: what it reads within its own doubt
// tells no scatter, and the rule's stands. A fine one that reads no scatter tells
// that there is none.
func TestGauge(t *testing.T) {
	by, rules := Ruled(rulesOf(t), Place{}), RulesOf(rulesOf(t))
	for _, c := range []struct {
		gauge, off float64
		told       bool
	}{{10, 3, false}, {10, 30, true}, {0.5, 0.1, true}} {
		jobs := []Job{seats(0), seats(c.off), seats(-c.off), seats(c.off), seats(-c.off)}
		for _, j := range jobs {
			j.Holes[0].Seat.UUm = c.gauge
		}
		l := Learn(jobs, by, rules)
		f := l.Ways[Reamed]
		_, text := l.Record(rules, dim.MM)
		if f.Told != c.told || strings.Contains(text, "scatter") != c.told || f.ScatterUm < 0 {
			t.Errorf("gauge %v, off by %v: %+v\n%s", c.gauge, c.off, f, text)
		}
	}
}

// One job tells no mean that a plan takes, and divides nothing by nothing.
func TestOneJob(t *testing.T) {
	by, rules := Ruled(rulesOf(t), Place{}), RulesOf(rulesOf(t))
	for _, jobs := range [][]Job{nil, {{}}, {seats(5)}, {seats(5, 7), {}}} {
		l := Learn(jobs, by, rules)
		for _, v := range []float64{l.Ways[Reamed].UOverUm, l.Ways[Reamed].ScatterUm, l.Place.UUm, l.Clearance.OverUm} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("%+v", l)
			}
		}
		if rec, text := l.Record(rules, dim.MM); rec != nil || text != "" {
			t.Errorf("of %d jobs: %s", len(jobs), text)
		}
	}
}
