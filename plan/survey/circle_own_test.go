package survey

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/num/hyperdual"

	"rebush/testdata"
)

// The circles of own/circles.csv are shown to be what they are called, by what
// defines each: not by a way of finding it. Least squares, Kasa, Pratt and
// Taubin each make a sum least; there the sum has no slope and is hollow. The
// sums are those of Pratt 1987 and Taubin 1991 as quotients: the squares of
// d^2 - R^2 over 4 R^2, and over 4 times the sum of d^2.
type sum func(d2 []hyperdual.Number, R hyperdual.Number) hyperdual.Number

func squares(d2 []hyperdual.Number, R hyperdual.Number) (s, all hyperdual.Number) {
	for _, d := range d2 {
		e := hyperdual.Sub(d, hyperdual.Mul(R, R))
		s, all = hyperdual.Add(s, hyperdual.Mul(e, e)), hyperdual.Add(all, d)
	}
	return s, all
}

var sums = map[string]sum{
	"lsci": func(d2 []hyperdual.Number, R hyperdual.Number) (s hyperdual.Number) {
		for _, d := range d2 {
			e := hyperdual.Sub(hyperdual.Sqrt(d), R)
			s = hyperdual.Add(s, hyperdual.Mul(e, e))
		}
		return s
	},
	"kasa": func(d2 []hyperdual.Number, R hyperdual.Number) hyperdual.Number {
		s, _ := squares(d2, R)
		return s
	},
	"pratt": func(d2 []hyperdual.Number, R hyperdual.Number) hyperdual.Number {
		s, _ := squares(d2, R)
		return hyperdual.Mul(s, hyperdual.Inv(hyperdual.Scale(4, hyperdual.Mul(R, R))))
	},
	"taubin": func(d2 []hyperdual.Number, R hyperdual.Number) hyperdual.Number {
		s, all := squares(d2, R)
		return hyperdual.Mul(s, hyperdual.Inv(hyperdual.Scale(4, all)))
	},
}

// toBottom is the step from a circle to the bottom of its sum, by the exact
// slopes and curvatures, and whether the sum is hollow there.
func toBottom(f sum, pts [][2]float64, c [3]float64) (step float64, hollow bool) {
	at := func(i, j int) hyperdual.Number {
		var v [3]hyperdual.Number
		for k := range v {
			v[k].Real = c[k]
		}
		v[i].E1mag, v[j].E2mag = 1, 1
		d2 := make([]hyperdual.Number, len(pts))
		for k, p := range pts {
			x, y := hyperdual.Sub(hyperdual.Number{Real: p[0]}, v[0]), hyperdual.Sub(hyperdual.Number{Real: p[1]}, v[1])
			d2[k] = hyperdual.Add(hyperdual.Mul(x, x), hyperdual.Mul(y, y))
		}
		return f(d2, v[2])
	}
	slope, curve := mat.NewVecDense(3, nil), mat.NewSymDense(3, nil)
	for i := range 3 {
		for j := i; j < 3; j++ {
			n := at(i, j)
			slope.SetVec(i, n.E1mag)
			curve.SetSym(i, j, n.E1E2mag)
		}
	}
	var by mat.Cholesky
	if !by.Factorize(curve) {
		return math.Inf(1), false
	}
	var s mat.VecDense
	if err := by.SolveVecTo(&s, slope); err != nil {
		return math.Inf(1), false
	}
	return mat.Norm(&s, 2), true
}

// spread is the nearest and the farthest of the points from a centre.
func spread(pts [][2]float64, x, y float64) (near, far float64) {
	near = math.Inf(1)
	for _, p := range pts {
		d := math.Hypot(p[0]-x, p[1]-y)
		near, far = math.Min(near, d), math.Max(far, d)
	}
	return near, far
}

// noBetter tries centres round about, near and far, and says whether any has a
// lower badness by more than slack.
func noBetter(badness func(x, y float64) float64, x, y, size, slack float64) bool {
	rng := rand.New(rand.NewPCG(7, 7))
	for range 20000 {
		r, a := size*math.Pow(10, -6*rng.Float64()), 2*math.Pi*rng.Float64()
		if badness(x+r*math.Cos(a), y+r*math.Sin(a)) < badness(x, y)-slack {
			return false
		}
	}
	return true
}

func TestOwnCirclesTwice(t *testing.T) {
	shown := map[string]int{}
	for _, r := range testdata.Rows[row](t, "own/circles.csv") {
		pts, id := r.points(t), r["id"]
		for name, f := range sums {
			c := [3]float64{r.num(t, name+"_x"), r.num(t, name+"_y"), r.num(t, name+"_r")}
			if step, hollow := toBottom(f, pts, c); !hollow || step > 1e-6*math.Max(c[2], 1) {
				t.Errorf("%s %s: the bottom of its sum is %.3g away (hollow %v)", id, name, step, hollow)
			}
			shown[name]++
		}
		var ssq float64
		for _, p := range pts {
			e := math.Hypot(p[0]-r.num(t, "lsci_x"), p[1]-r.num(t, "lsci_y")) - r.num(t, "lsci_r")
			ssq += e * e
		}
		near(t, id+" rms", math.Sqrt(ssq/float64(len(pts))), r.num(t, "lsci_rms"), 1e-8)
		for _, c := range []struct {
			name, size string
			of         func(near, far float64) float64
			sign       float64 // of the size in the badness
		}{
			{"mcci", "mcci_r", func(_, far float64) float64 { return far }, 1},
			{"mici", "mici_r", func(near, _ float64) float64 { return -near }, -1},
			{"mzci", "mzci_zone", func(near, far float64) float64 { return far - near }, 1},
		} {
			if !r.has(c.name + "_x") {
				continue
			}
			badness := func(x, y float64) float64 { return c.of(spread(pts, x, y)) }
			x, y := r.num(t, c.name+"_x"), r.num(t, c.name+"_y")
			near(t, id+" "+c.size, c.sign*badness(x, y), r.num(t, c.size), 5e-8)
			round := r.num(t, "lsci_r")
			if c.name == "mici" { // past the open side of an arc it grows without end
				round *= 0.01
			}
			if !noBetter(badness, x, y, round, 3e-8) {
				t.Errorf("%s %s: there is a better centre", id, c.name)
			}
			shown[c.name]++
		}
		if r.has("mzci_x") {
			in, out := spread(pts, r.num(t, "mzci_x"), r.num(t, "mzci_y"))
			near(t, id+" mzci_rmid", (in+out)/2, r.num(t, "mzci_rmid"), 5e-8)
		}
		if id[0] == 'N' {
			// Made with this centre and radius, and residuals square to 1, cos
			// and sin: the row says so, and it is so.
			near(t, id+" as made", math.Hypot(r.num(t, "lsci_x")-r.num(t, "answer_x"), r.num(t, "lsci_y")-r.num(t, "answer_y")), 0, 1e-8)
			near(t, id+" as made", r.num(t, "lsci_r"), r.num(t, "answer_r"), 1e-8)
		}
	}
	for _, name := range []string{"lsci", "kasa", "pratt", "taubin", "mcci"} {
		if shown[name] != 17 {
			t.Errorf("%s: %d circles shown, want 17", name, shown[name])
		}
	}
	if shown["mici"] < 10 || shown["mzci"] < 10 {
		t.Errorf("shown: %v", shown)
	}
}
