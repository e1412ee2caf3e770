package survey

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// TestSlope: the gradient that eval gives is that of its sum of squares, by
// differences, away from the kinks; and the sum is that of Gap.
func TestSlope(t *testing.T) {
	for _, shape := range []Shape{OneLobe, Fan, TwoLobes} {
		kinks, n := 0, 0
		rapid.Check(t, func(t *rapid.T) {
			f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
			R := f("R", 1, 4)
			q := vector{f("x", -1, 1), f("y", -1, 1), R, f("d", 0.05, 0.6), f("theta", 0, 6)}
			switch shape {
			case Fan:
				q[iFan] = f("fan", 0.05, 1.2)
			case TwoLobes:
				q[iD2], q[iTheta2] = f("d2", 0.05, 0.6), f("theta2", 0, 6)
			}
			o := outline{r: R - f("c", 0, 0.1), shape: shape}
			for i := range 23 {
				a := 2*math.Pi*float64(i)/23 + 0.01
				o.pts = append(o.pts, toward([2]float64{0.3, -0.2}, R+f("e", -0.2, 0.5), a))
			}
			var m, up, down normal
			o.eval(&q, &m)
			b := WornBore{O: [2]float64{q[0], q[1]}, R: R, JournalR: o.r, D: q[iD], ThetaRad: q[iTheta]}
			switch shape {
			case Fan:
				b.FanHalf = q[iFan]
			case TwoLobes:
				b.D2, b.Theta2 = q[iD2], q[iTheta2]
			}
			var sum float64
			for _, p := range o.pts {
				sum += b.Gap(p) * b.Gap(p)
			}
			if math.Abs(sum-m.ssq) > 1e-9*(1+sum) {
				t.Fatalf("%v: eval %v, Gap %v", shape, m.ssq, sum)
			}
			for i := range shape.unknowns() {
				const h = 1e-6
				a, c := q, q
				a[i] += h
				c[i] -= h
				o.eval(&a, &up)
				o.eval(&c, &down)
				n++
				if diff := (up.ssq - down.ssq) / (2 * h); math.Abs(diff-2*m.g[i]) > 1e-4*(1+math.Abs(diff)) {
					kinks++
				}
			}
		})
		// One draw on a kink spoils up to seven of its slopes; one wrong derivative
		// spoils a seventh of all.
		if kinks > n/20 || n < 200 {
			t.Errorf("%v: %d of %d slopes differ", shape, kinks, n)
		}
	}
}
