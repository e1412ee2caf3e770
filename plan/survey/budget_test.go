package survey

import (
	"math"
	"math/rand/v2"
	"sort"
	"testing"
)

// TestEndGauge is the worked example H.1 of JCGM 100:2008: u_c 32 nm, nu_eff
// 16, t99 2.92, U99 93 nm (values as coded in several public test suites; the
// parts 25.0, 9.7, 2.9, 16.68 recomputed). In nm.
func TestEndGauge(t *testing.T) {
	const ls = 50.000623e6
	b := Budget{
		{Name: "standard", U: 25, C: 1, Nu: 18},
		{Name: "difference", U: 9.7, C: 1, Nu: 25.6},
		{Name: "difference of expansion", U: 0.58e-6, C: -ls * -0.1, Nu: 50},
		{Name: "difference of temperature", U: 0.029, C: -ls * 11.5e-6, Nu: 2},
	}
	near(t, "part", math.Abs(b[2].C*b[2].U), 2.9, 0.01)
	near(t, "part", math.Abs(b[3].C*b[3].U), 16.68, 0.01)
	near(t, "u_c", b.U(), 31.71, 0.01)
	near(t, "nu", b.Nu(), 16.66, 0.05)
	k := Coverage(0.99, b.Nu())
	near(t, "t99", k, 2.921, 0.0005)
	near(t, "U99", k*b.U(), 92.6, 0.1)
	// H.1.7 (from memory): second-order terms 11.9 and 1.7 make it 34.
	second := math.Hypot(ls*0.58e-6*0.41, ls*1.2e-6*0.029)
	near(t, "with second order", math.Hypot(b.U(), second), 34, 0.5)
	near(t, "normal", Coverage(0.95, math.Inf(1)), 1.959964, 1e-6)
}

// TestEndGaugeByTrials is the same gauge by Monte Carlo, JCGM 101:2008, 9.5:
// 838 nm, u 36, shortest 99 % interval 745 to 932 (1e6 trials, as reported in
// Metrology 2(1):3, 2022). Distributions of 9.5 from memory. The ends wobble
// by 1 to 2 nm from seed to seed.
func TestEndGaugeByTrials(t *testing.T) {
	rng := rand.New(rand.NewPCG(101, 95))
	student := func(nu float64) float64 { // Bailey's polar form
		u := 1 - rng.Float64()
		return math.Sqrt(nu*(math.Pow(u, -2/nu)-1)) * math.Cos(2*math.Pi*rng.Float64())
	}
	trapezoid := func(b, d float64) float64 { // +-b, the limit itself known to d
		h := b - d + 2*d*rng.Float64()
		return h * (2*rng.Float64() - 1)
	}
	const trials = 1000000
	v := make([]float64, trials)
	var mean, sq float64
	for i := range v {
		ls := 50000623 + 25*student(18)
		d := 215 + 6*student(24) + 4*student(5) + 7*student(8)
		alpha := 11.5e-6 + 2e-6*(2*rng.Float64()-1)
		theta := -0.1 + 0.2*rng.NormFloat64() + 0.5*math.Cos(math.Pi*rng.Float64())
		l := ls + d - ls*(trapezoid(1e-6, 0.1e-6)*theta+alpha*trapezoid(0.050, 0.025)) - 50000000
		v[i] = l
		mean += l / trials
	}
	for _, l := range v {
		sq += (l - mean) * (l - mean) / trials
	}
	near(t, "mean", mean, 838, 0.5)
	near(t, "u", math.Sqrt(sq), 36, 0.5)
	sort.Float64s(v)
	n := trials * 99 / 100
	at := 0
	for i := 0; i+n < trials; i++ {
		if v[i+n]-v[i] < v[at+n]-v[at] {
			at = i
		}
	}
	near(t, "low end", v[at], 745, 2.5)
	near(t, "high end", v[at+n], 932, 2.5)
}

// axle is the worked example of METHODS.md 7.1, in mm; its inputs are made up.
var axle = struct{ survey, datum, table, wander, bush, clearance float64 }{
	0.004, math.Sqrt2 * Rectangular(0.005), Rectangular(0.010), 0.008, RandomClocking(0.010, false), Rectangular(0.005) / 2,
}

// bore is its budget per axis; shared are the errors both plates have.
func bore(plate string, shared ...string) Budget {
	b := Budget{
		{Name: "survey", U: axle.survey, C: 1}, {Name: "datum", U: axle.datum, C: 1}, {Name: "table", U: axle.table, C: 1},
		{Name: "wander", U: axle.wander, C: 1}, {Name: "bush", U: axle.bush, C: 1},
	}
	for i := range b {
		b[i].Key = b[i].Name + plate
		for _, s := range shared {
			if s == b[i].Name {
				b[i].Key = s
			}
		}
	}
	return b
}

func TestAxleBudget(t *testing.T) {
	um := func(what string, got, want, tol float64) { near(t, what, got*1000, want, tol) }
	along := append(bore("left"), Contribution{Name: "clearance", U: axle.clearance, C: 1})
	um("datum", axle.datum, 4.082, 5e-4)
	um("table", axle.table, 5.774, 5e-4)
	um("bush", axle.bush, 4.082, 5e-4)
	um("clearance", axle.clearance, 1.443, 5e-4)
	um("u(a)", along.U(), 12.196, 5e-4)
	mean := 12 + 0.010 + math.Pow(bore("left").U(), 2)/24
	near(t, "mean", mean, 12.010006, 5e-7)
	k := Coverage(0.95, math.Inf(1))
	near(t, "low", mean-k*along.U(), 11.9861, 5e-5)
	near(t, "high", mean+k*along.U(), 12.0339, 5e-5)
	near(t, "P", Conform(mean, along.U(), 11.980, 12.040), 0.9861, 5e-5)
	m, p95 := Radial(bore("left").U())
	um("radial mean", m, 15.18, 5e-3)
	um("radial 95", p95, 29.64, 1.5e-2)
	shares := along.Share()
	near(t, "wander's share", shares[3], 0.43, 5e-3)
	near(t, "table's share", shares[2], 0.22, 5e-3)
	for _, c := range []struct {
		shared []string
		want   float64
	}{{nil, 0.9515}, {[]string{"datum", "survey"}, 0.8389}, {[]string{"datum", "survey", "table"}, 0.7057}} {
		skew := bore("left", c.shared...).Plus(1.0/18, bore("right", c.shared...), -1.0/18)
		near(t, "u(skew) mrad", skew.U()*1000, c.want, 6e-5)
	}
	near(t, "tilt in the clearance, mrad", 0.020/18*1000, 1.111, 5e-4)
}

// TestAxleByTrials is the other way: printed 12.180, 12.010021, 11.9862 to
// 12.0338, 0.9867, 15.20, 29.45, 0.9510, 0.8379 from 1e6 trials.
func TestAxleByTrials(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 72))
	const trials = 400000
	flat := func(a float64) float64 { return a * (2*rng.Float64() - 1) }
	type place [2]float64
	sum := func(ps ...place) (q place) {
		for _, p := range ps {
			q[0] += p[0]
			q[1] += p[1]
		}
		return q
	}
	norm := func(s float64) place { return place{s * rng.NormFloat64(), s * rng.NormFloat64()} }
	rect := func(a float64) place { return place{flat(a), flat(a)} }
	own := func() place {
		e, c := 0.010*rng.Float64(), 2*math.Pi*rng.Float64()
		return sum(rect(0.010), norm(0.008), place{e * math.Cos(c), e * math.Sin(c)})
	}
	common := func() place { return sum(norm(0.004), rect(0.005), rect(0.005)) }
	sin, cos := math.Sincos(35 * deg)
	as, radial := make([]float64, trials), make([]float64, trials)
	var mean, sq, inside, rad, skew, one float64
	for i := range as {
		c := common()
		left := sum(c, own())
		k := (0.020 + flat(0.005)) / 2
		a := math.Hypot(12*cos+left[0]+k*cos, 12*sin+left[1]+k*sin)
		as[i] = a
		mean += a / trials
		sq += (a - 12.01) * (a - 12.01) / trials
		if a >= 11.980 && a <= 12.040 {
			inside += 1.0 / trials
		}
		radial[i] = math.Hypot(left[0], left[1])
		rad += radial[i] / trials
		apart, together := sum(common(), own()), sum(c, own())
		skew += math.Pow((left[0]-apart[0])/18, 2) / trials
		one += math.Pow((left[0]-together[0])/18, 2) / trials
	}
	sort.Float64s(as)
	sort.Float64s(radial)
	near(t, "u(a)", math.Sqrt(sq)*1000, 12.180, 0.05)
	near(t, "mean", mean, 12.010021, 6e-5)
	near(t, "low", as[trials/40], 11.9862, 2e-4)
	near(t, "high", as[trials-trials/40], 12.0338, 2e-4)
	near(t, "P", inside, 0.9867, 1e-3)
	near(t, "radial mean", rad*1000, 15.20, 0.06)
	near(t, "radial 95", radial[trials*95/100]*1000, 29.45, 0.15)
	near(t, "u(skew)", math.Sqrt(skew)*1000, 0.9510, 0.004)
	near(t, "u(skew), one set-up", math.Sqrt(one)*1000, 0.8379, 0.004)
}
