package target

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// draw makes a train of shafts with gears between neighbours and to fixed mates.
func draw(t *rapid.T) Input {
	n := rapid.IntRange(1, 5).Draw(t, "shafts")
	f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	in := Input{Move: 0.0005}
	for i := range n {
		s := Shaft{Name: string(rune('a' + i)), TowardsDeg: f("towards", 0, 360), USetup: f("setup", 0, 0.02), UHole: f("hole", 0, 0.02)}
		fixed := rapid.IntRange(0, 4).Draw(t, "fixed") == 0
		for range rapid.IntRange(1, 2).Draw(t, "bores") {
			o := Point{float64(i)*12 + f("x", -0.1, 0.1), f("y", -0.1, 0.1)}
			u, v, r := f("u", 0.005, 0.05), f("v", 0.005, 0.05), f("rho", -0.9, 0.9)
			lo := f("cd", 0.01, 0.03)
			s.Bores = append(s.Bores, Bore{Original: o, Found: o, Cov: Cov{{u * u, r * u * v}, {r * u * v, v * v}}, CdLo: lo, CdHi: lo + f("spread", 0, 0.03), Fixed: fixed})
		}
		in.Shafts = append(in.Shafts, s)
		g := Gear{Name: s.Name, Shaft: i, Mate: i - 1, Geometry: spur{}, Trusted: rapid.Bool().Draw(t, "trusted"),
			UGeom: 0.02, Share: f("share", -0.2, 1.2), MateShare: f("mate share", -0.2, 1.2)}
		if i == 0 {
			g.MateAt = Point{f("mx", -3, 3), 12}
		}
		g.Lo = 11.9 + f("lo", 0, 0.2)
		g.Hi = g.Lo + f("width", 0.02, 0.2)
		in.Gears = append(in.Gears, g)
	}
	return in
}

func TestProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := draw(t)
		out, err := Place(in)
		if err != nil {
			t.Fatal(err)
		}
		carries := make([]bool, len(in.Shafts))
		for i, g := range out.Gears {
			if bad(g) && out.AllMet {
				t.Fatalf("%s missed by %v and no fight told", g.Name, g.Missed)
			}
			if !in.Gears[i].Trusted && g.Bound != "" {
				t.Fatalf("an untrusted pair moved a shaft: %+v", g)
			}
			for _, c := range in.Gears[i].carried() {
				carries[c.shaft] = carries[c.shaft] || g.Trusted
			}
		}
		for i, s := range out.Shafts {
			if d := math.Hypot(s.Moved[0], s.Moved[1]); (!carries[i] || s.Fixed) && d > 1e-9 {
				t.Fatalf("shaft %s moved %v without need", s.Name, d)
			}
			if math.IsNaN(s.T[0]+s.T[1]) || in.Shafts[i].Name != s.Name {
				t.Fatalf("%+v", s)
			}
		}
		if !out.AllMet {
			return
		}
		// No small step from the answer is likelier for its way and still meets the
		// windows, and it is no worse than the least move.
		at, least := make([]Point, len(out.Shafts)), make([]Point, len(out.Shafts))
		for j, s := range out.Shafts {
			at[j], least[j] = s.T, s.LeastMove
		}
		base := toll(in, at)
		if was := toll(in, least); base > was+1e-3*(1+was) { // the lines of centres turn
			t.Fatalf("%v, the least move %v", base, was)
		}
		for i := range in.Shafts {
			for k := range 8 {
				if out.Shafts[i].Fixed {
					continue
				}
				sin, cos := math.Sincos(float64(k) * math.Pi / 4)
				to := slices.Clone(at)
				to[i] = Point{at[i][0] + 1e-4*cos, at[i][1] + 1e-4*sin}
				ok := true
				for _, g := range judge(in, to) {
					ok = ok && (g.Missed == 0 || !g.Trusted || g.Stuck)
				}
				// The lines of centres turn a little on the way, which is not counted.
				if c := toll(in, to); ok && c < base-2e-5*(1+base) {
					t.Fatalf("shaft %d: a step costs %v, the answer %v", i, c, base)
				}
			}
		}
	})
}

// toll is what is to be least: -ln of every chance alone, and what the moves
// weigh.
func toll(in Input, at []Point) float64 {
	sum := 0.0
	for _, g := range in.Gears {
		if l := in.limit(g, at); in.counts(g, l.e) {
			f, _, _ := l.cost()
			sum += f
		}
	}
	p := newProblem(in)
	for i := range at {
		d, w := Point{at[i][0] - p.mean[i][0], at[i][1] - p.mean[i][1]}, p.weight[i]
		sum += in.Move * (d[0]*(w[0][0]*d[0]+w[0][1]*d[1]) + d[1]*(w[1][0]*d[0]+w[1][1]*d[1]))
	}
	return sum
}

// Mirrored along x the answer is mirrored; three times as large it is three
// times as large.
func TestMirrorAndScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := draw(t)
		out, err := Place(in)
		if err != nil {
			t.Fatal(err)
		}
		change := func(k float64, f func(Point) Point, deg func(float64) float64, rho float64) Input {
			c := Input{Move: in.Move}
			for _, s := range in.Shafts {
				s.TowardsDeg, s.USetup, s.UHole = deg(s.TowardsDeg), k*s.USetup, k*s.UHole
				bores := append([]Bore(nil), s.Bores...)
				for i := range bores {
					b := &bores[i]
					b.Original, b.Found, b.CdLo, b.CdHi = f(b.Original), f(b.Found), k*b.CdLo, k*b.CdHi
					b.Cov = Cov{{k * k * b.Cov[0][0], rho * k * k * b.Cov[0][1]}, {rho * k * k * b.Cov[1][0], k * k * b.Cov[1][1]}}
				}
				s.Bores = bores
				c.Shafts = append(c.Shafts, s)
			}
			for _, g := range in.Gears {
				g.MateAt, g.Lo, g.Hi, g.UGeom, g.UMate = f(g.MateAt), k*g.Lo, k*g.Hi, k*g.UGeom, k*g.UMate
				c.Gears = append(c.Gears, g)
			}
			return c
		}
		for _, c := range []struct {
			in   Input
			back func(Point) Point
		}{
			{change(1, func(p Point) Point { return Point{-p[0], p[1]} }, func(d float64) float64 { return 180 - d }, -1), func(p Point) Point { return Point{-p[0], p[1]} }},
			{change(3, func(p Point) Point { return Point{3 * p[0], 3 * p[1]} }, func(d float64) float64 { return d }, 1), func(p Point) Point { return Point{p[0] / 3, p[1] / 3} }},
		} {
			o, err := Place(c.in)
			if err != nil {
				t.Fatal(err)
			}
			if len(o.Fights) != len(out.Fights) {
				t.Fatalf("fights %v, were %v", o.Fights, out.Fights)
			}
			for i, s := range o.Shafts {
				b, w := c.back(s.T), out.Shafts[i].T
				if math.Hypot(b[0]-w[0], b[1]-w[1]) > 2e-6 {
					t.Fatalf("shaft %d at %v, want %v", i, b, w)
				}
			}
		}
	})
}
