package press_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rebush/fits/press"
)

func seats(t *rapid.T) press.Seat {
	span := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	d := span("D", 2, 12)
	s := press.Seat{D: d, Di: d * span("Q", 0.2, 0.9), L: span("L", 1, 8),
		Housing: press.Elastic{E: span("EA", 2e4, 2e5), Nu: span("nuA", 0.2, 0.4), Yield: span("yieldA", 0, 300)},
		Bush:    press.Elastic{E: span("EI", 3e3, 2e5), Nu: span("nuI", 0.2, 0.4)}}
	if rapid.Bool().Draw(t, "flows") {
		s.Bush.Yield = span("yield", 20, 300)
	}
	b, lig := d/2*span("b/a", 1.2, 8), d/2*span("metal", 0.1, 4)
	switch rapid.IntRange(0, 3).Draw(t, "wall") {
	case 0:
		s.Wall = press.Ring{OD: 2 * b}
	case 1:
		s.Wall = press.Edge{Ligament: lig}
	case 2:
		s.Wall = press.Boss{OD: 2 * b, Ecc: (b - d/2) * span("off", 0, 0.95)}
	default:
		s.Wall = press.Infinite{}
	}
	return s
}

// More interference never means less pressure, and always more closure.
func TestMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := seats(t)
		u := s.D * rapid.Float64Range(1e-5, 0.02).Draw(t, "U/D")
		a, b := s.At(u), s.At(u*1.01)
		if b.P < a.P || b.PMid < a.PMid || b.PHigh < a.PHigh || b.HousingHoopMax < a.HousingHoopMax {
			t.Fatalf("pressure fell: %+v then %+v", a, b)
		}
		if b.Closure <= a.Closure || b.ClosureLow < a.ClosureLow || b.ClosureHigh < a.ClosureHigh {
			t.Fatalf("closure fell: %+v then %+v", a, b)
		}
		if a.P > a.PMid || a.PMid > a.PHigh || a.ClosureLow > a.Closure || a.Closure > a.ClosureHigh {
			t.Fatalf("out of its band: %+v", a)
		}
	})
}

// Less metal between the seat and a straight edge: less pressure and closure,
// but a higher peak of tension.
func TestThinnerWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := seats(t)
		s.Bush.Yield = 0
		lig := s.D / 2 * rapid.Float64Range(0.1, 0.95).Draw(t, "left")
		thick, thin := s, s
		thick.Wall, thin.Wall = press.Edge{Ligament: lig}, press.Edge{Ligament: lig * 0.95}
		u := s.D / 500
		a, b := thick.At(u), thin.At(u)
		if b.P >= a.P || b.HousingHoopMax <= a.HousingHoopMax || b.Closure >= a.Closure {
			t.Fatalf("%v then thinner %v", a, b)
		}
		if hp, hb := s.HeldAt(u); hp < s.At(u).P || hb < s.At(u).HousingHoopMax {
			t.Fatalf("a mandrel in the bore lowered the pressure: %v %v", hp, hb)
		}
	})
}

// A solid shaft is stiffer than any bush, and the seat's opening and the bush's
// shrinking make up the interference.
func TestSharesAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := seats(t)
		s.Bush.Yield = 0
		u := s.D / 500
		st := s.At(u)
		q2 := s.Di * s.Di / (s.D * s.D)
		shrinks := st.P * s.D / s.Bush.E * ((1+q2)/(1-q2) - s.Bush.Nu)
		if math.Abs(st.Opening+shrinks-u) > 1e-9*u {
			t.Fatalf("opens %v, shrinks %v, of %v", st.Opening, shrinks, u)
		}
		if back := s.InterferenceFor(st.P); math.Abs(back-u) > 1e-9*u {
			t.Fatalf("interference %v gives %v back", u, back)
		}
		solid := s
		solid.Di = 0
		if solid.At(u).P <= st.P || solid.At(u).Closure != 0 {
			t.Fatalf("solid %+v, bush %+v", solid.At(u), st)
		}
	})
}

// Inch and psi give the same answer as mm and MPa.
func TestUnits(t *testing.T) {
	const in, psi = 25.4, 0.006894757293168361
	rapid.Check(t, func(t *rapid.T) {
		s := seats(t)
		u := s.D * rapid.Float64Range(1e-5, 0.01).Draw(t, "U/D")
		w := s
		w.D, w.Di, w.L = s.D/in, s.Di/in, s.L/in
		for _, e := range []*press.Elastic{&w.Housing, &w.Bush} {
			e.E, e.Yield = e.E/psi, e.Yield/psi
		}
		switch x := s.Wall.(type) {
		case press.Ring:
			w.Wall = press.Ring{OD: x.OD / in}
		case press.Edge:
			w.Wall = press.Edge{Ligament: x.Ligament / in}
		case press.Boss:
			w.Wall = press.Boss{OD: x.OD / in, Ecc: x.Ecc / in}
		}
		a, b := s.At(u), w.At(u/in)
		for _, p := range [][2]float64{{a.P, b.P * psi}, {a.HousingHoopMax, b.HousingHoopMax * psi}, {a.Closure, b.Closure * in},
			{a.Growth, b.Growth * in}, {a.PMid, b.PMid * psi}, {s.Force(0.1, a.P), w.Force(0.1, b.P) * psi * in * in}} {
			if math.Abs(p[0]-p[1]) > 1e-9*math.Abs(p[0])+1e-15 {
				t.Fatalf("%v in mm, %v in inch", p[0], p[1])
			}
		}
	})
}

// Off the middle by nothing is the ring; a huge boss is the straight edge.
func TestLimits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(1, 20).Draw(t, "D")
		od := d * rapid.Float64Range(1.05, 10).Draw(t, "OD/D")
		q := d / od
		lame := (1 + q*q) / (1 - q*q)
		for _, w := range []press.Wall{press.Boss{OD: od}, press.Boss{OD: od, Ecc: 1e-9 * d}, press.Ring{OD: od}} {
			f := press.Seat{D: d, Wall: w}.Factors()
			for _, got := range []float64{f.HoleMax, f.HoleThin, f.MeanHoop, f.EdgeMax + 1, f.OuterMean + 1} {
				if math.Abs(got-lame) > 1e-6*lame {
					t.Fatalf("%+v: %+v, Lame %v", w, f, lame)
				}
			}
		}
		lig := d / 2 * rapid.Float64Range(0.1, 5).Draw(t, "metal")
		huge := 1e6 * d
		a := press.Seat{D: d, Wall: press.Edge{Ligament: lig}}.Factors()
		b := press.Seat{D: d, Wall: press.Boss{OD: 2 * huge, Ecc: huge - d/2 - lig}}.Factors()
		for _, p := range [][2]float64{{a.HoleMax, b.HoleMax}, {a.EdgeMax, b.EdgeMax}, {a.MeanHoop, b.MeanHoop}, {a.HoleThin, b.HoleThin}} {
			if math.Abs(p[0]-p[1]) > 1e-4*p[0] {
				t.Fatalf("edge %+v, boss %+v", a, b)
			}
		}
		far := press.Seat{D: d, Wall: press.Edge{Ligament: 1e6 * d}}.Factors()
		none := press.Seat{D: d, Wall: press.Infinite{}}.Factors()
		if math.Abs(far.MeanHoop-none.MeanHoop) > 1e-9 || math.Abs(far.HoleMax-none.HoleMax) > 1e-9 {
			t.Fatalf("far edge %+v, none %+v", far, none)
		}
	})
}
