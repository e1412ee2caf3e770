package survey

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

// someEvidence draws a few kinds that tell of (0, 0), some with an error in common;
// far says how many doubts they may lie off.
func someEvidence(t *rapid.T, far float64) []Evidence {
	f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	es := make([]Evidence, rapid.IntRange(1, 5).Draw(t, "kinds"))
	for i := range es {
		u, dir := f("u", 0.003, 0.05), f("long axis", 0, math.Pi)
		e := Evidence{Rank: 1 + i, Method: Method(1 + i), Cov: alongAcross(u*u, u*u*f("across", 0.05, 1), dir)}
		if rapid.Bool().Draw(t, "shares") {
			p := Part{Name: fmt.Sprint(i % 2), V: toward([2]float64{}, f("part", 0, 0.02), f("part dir", 0, 6.28))}
			e.Parts = []Part{p}
			e.Cov = add2(e.Cov, [2][2]float64{{p.V[0] * p.V[0], p.V[0] * p.V[1]}, {p.V[0] * p.V[1], p.V[1] * p.V[1]}})
		}
		e.Centre = toward([2]float64{}, far*u*f("off", 0, 1), f("off dir", 0, 6.28))
		es[i] = e
	}
	return es
}

// TestMoreNeverDoubtsMore: what is added never raises the doubt, unless it is said
// to contradict; and the order of the list decides nothing.
func TestMoreNeverDoubtsMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		es := someEvidence(t, 4)
		all := Combine(es)
		fewer := Combine(es[:len(es)-1])
		if len(es) > 1 && len(all.Differ) == 0 && LargestU(all.Cov) > LargestU(fewer.Cov)+1e-9 {
			t.Fatalf("u %v, with one more %v, and nothing contradicts", LargestU(fewer.Cov), LargestU(all.Cov))
		}
		for _, e := range es {
			if len(all.Differ) == 0 && LargestU(all.Cov) > e.U()+1e-9 {
				t.Fatalf("u %v of all, %v of one alone", LargestU(all.Cov), e.U())
			}
		}
		turned := append([]Evidence(nil), es...)
		rand.New(rand.NewPCG(1, uint64(len(es)))).Shuffle(len(es), func(i, k int) {
			turned[i], turned[k] = turned[k], turned[i]
		})
		if o := Combine(turned); dist(o.Centre, all.Centre) > 1e-9 || math.Abs(LargestU(o.Cov)-LargestU(all.Cov)) > 1e-9 {
			t.Fatalf("in another order %v, %v", o, all)
		}
	})
}

// TestContradictionFades: as one kind is moved away from the others the answer
// follows no faster than it moves; it is said from 2 sqrt(u1^2 + u2^2) on, and far
// away it is as good as not there, but for the doubt, twice that of the others.
func TestContradictionFades(t *testing.T) {
	seat := SoundSeat([2]float64{}, 0.010)
	other := OtherPlate([2]float64{}, round2(0.010), 0.02)
	var was Combined
	for i := range 600 {
		other.Centre[0] = 0.001 * float64(i)
		c := Combine([]Evidence{seat, other})
		if i > 0 && math.Abs(c.Centre[0]-was.Centre[0]) > 0.001 {
			t.Fatalf("%.3f apart: the answer jumps from %v to %v", other.Centre[0], was.Centre[0], c.Centre[0])
		}
		if said := len(c.Differ) > 0; said != (other.Centre[0] > 2*math.Hypot(0.010, math.Hypot(0.010, 0.02))) {
			t.Fatalf("%.3f apart: said %v", other.Centre[0], said)
		}
		was = c
	}
	near(t, "far away", was.Centre[0], 0, 1e-4)
	near(t, "doubt", LargestU(was.Cov), 0.020, 1e-4)
}

// TestSharedErrorsAreCountedOnce: two kinds of u 0.010 of which 0.008 is one
// reading: 0.006 alone is independent, so together sqrt(0.008^2 + 0.006^2/2) =
// 0.00906, not 0.00707.
func TestSharedErrorsAreCountedOnce(t *testing.T) {
	e := Evidence{Rank: 4, Method: ByDiameters, Cov: alongAcross(0.0001, 0.000001, 0)}
	o := e
	o.Method = ByWalls
	near(t, "apart", LargestU(Combine([]Evidence{e, o}).Cov), 0.01/math.Sqrt2, 1e-6)
	e.Parts = []Part{{Name: "narrowest", V: [2]float64{0.008, 0}}}
	o.Parts = e.Parts
	near(t, "shared", LargestU(Combine([]Evidence{e, o}).Cov), math.Hypot(0.008, 0.006/math.Sqrt2), 1e-6)
}

// TestCombineHonest: of evidence drawn with its doubts, parts in common too, the
// answer lies within the 95 % ellipse as often as it should where nothing is said
// to contradict, and not less over all.
func TestCombineHonest(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	var n, in float64
	for range 4000 {
		shared := rng.NormFloat64()
		var es []Evidence
		for k := range 2 + rng.IntN(3) {
			u, dir := 0.005+0.02*rng.Float64(), 3*rng.Float64()
			e := Evidence{Rank: k, Method: Method(k), Cov: alongAcross(u*u, u*u/4, dir)}
			e.Centre = toward(toward([2]float64{}, u*rng.NormFloat64(), dir), u/2*rng.NormFloat64(), dir+math.Pi/2)
			if k < 2 {
				p := Part{Name: "one reading", V: toward([2]float64{}, 0.01, 3*rng.Float64())}
				e.Parts = []Part{p}
				e.Cov = add2(e.Cov, [2][2]float64{{p.V[0] * p.V[0], p.V[0] * p.V[1]}, {p.V[0] * p.V[1], p.V[1] * p.V[1]}})
				e.Centre[0], e.Centre[1] = e.Centre[0]+shared*p.V[0], e.Centre[1]+shared*p.V[1]
			}
			es = append(es, e)
		}
		c := Combine(es)
		i := inverse2(c.Cov)
		if n++; c.Centre[0]*(i[0][0]*c.Centre[0]+2*i[0][1]*c.Centre[1])+c.Centre[1]*i[1][1]*c.Centre[1] <= 5.991 {
			in++
		}
	}
	if share := in / n; share < 0.94 || share > 0.97 {
		t.Errorf("%.3f within the ellipse", share)
	}
}
