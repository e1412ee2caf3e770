package press_test

import (
	"math"
	"strings"
	"testing"

	"rebush/fits/press"
	"rebush/plan/checked"
	"rebush/testdata"
	"rebush/testdata/own"
)

// plates are the solved ones, so that rows of one plate share the work.
type plates map[own.Plate]own.Answer

func (p plates) solve(t *testing.T, plate own.Plate) own.Answer {
	t.Helper()
	if a, ok := p[plate]; ok {
		return a
	}
	a, err := plate.Sharp()
	if err != nil {
		t.Fatal(err)
	}
	p[plate] = a
	return a
}

// plateOf is the row's press as finite elements see it. A ring, the same all
// round, gets fewer round it and more through the wall.
func plateOf(s press.Seat, u float64) own.Plate {
	p := own.Plate{Hole: s.D / 2, E: s.Housing.E, Nu: s.Housing.Nu, Pressure: 1, Around: 80, Deep: 8}
	switch w := s.Wall.(type) {
	case press.Ring:
		p.Edge, p.Around, p.Deep = w.OD/2, 32, 16
	case press.Boss:
		p.Edge, p.Off = w.OD/2, w.Ecc
	}
	if u > 0 {
		p.Pressure, p.Interference = 0, u
		p.BushBore, p.BushE, p.BushNu = s.Di/2, s.Bush.E, s.Bush.Nu
	}
	return p
}

// straight is a hole beside a straight edge: two round edges, far away and twice
// as far, and on from there.
func (p plates) straight(t *testing.T, ligament float64, of func(own.Answer) float64) float64 {
	far := func(edge float64) float64 {
		return of(p.solve(t, own.Plate{Hole: 1, Edge: edge, Off: edge - 1 - ligament, E: 1, Nu: 0.3, Pressure: 1, Around: 80, Deep: 12}))
	}
	return 2*far(120) - far(60)
}

func holeMost(a own.Answer) float64 { return a.HoleMost }
func edgeMost(a own.Answer) float64 { return a.EdgeMost }
func holeMean(a own.Answer) float64 { return a.HoleMean }

// second works a row of own/pressfit.csv out without the formulas of this
// package, and says how near that can be to the exact answer.
func (p plates) second(t *testing.T, q string, in checked.PressText) (got, within float64) {
	if got, ok := secondWarm(q, in); ok {
		return got, 0.005
	}
	s, u := seatOf(t, in)
	if e, ok := s.Wall.(press.Edge); ok {
		of := holeMean
		switch {
		case strings.HasPrefix(q, "max hoop on hole"):
			of = holeMost
		case strings.HasPrefix(q, "max tension on straight edge"):
			of = edgeMost
		}
		return p.straight(t, 2*e.Ligament/s.D, of), 0.005
	}
	if strings.HasPrefix(q, "pressure limit") {
		return tresca(s), 2e-6
	}
	if strings.Contains(q, "plateau") || strings.Contains(q, "closure, ") {
		r := s.Wall.(press.Ring)
		f := own.Flow{Bore: s.Di / 2, Seat: s.D / 2, Edge: r.OD / 2, BushE: s.Bush.E, BushNu: s.Bush.Nu, Yield: s.Bush.Yield,
			E: s.Housing.E, Nu: s.Housing.Nu, Interference: u, Rings: 20, Steps: 20}
		if f.Yield == 0 {
			f.Yield = math.Inf(1)
		}
		pressure, closure := f.Press()
		if strings.Contains(q, "plateau") {
			return pressure, 0.005
		}
		return 1000 * closure, 0.005
	}
	a := p.solve(t, plateOf(s, u))
	length, mu := in.Get(0, 1, "L"), in.Get(0, 0, "mu")
	switch {
	case strings.HasPrefix(q, "shrink pressure giving jacket hoop 100 MPa"):
		return 100 / a.HoleMost, 0.002
	case strings.HasPrefix(q, "max hoop on hole"):
		return a.HoleMost, 0.001
	case strings.HasPrefix(q, "max hoop on outer edge"):
		return a.EdgeMost, 0.001
	case strings.HasPrefix(q, "hoop on hole at thinnest"):
		return a.HoleThin, 0.001
	case strings.HasPrefix(q, "peak tensile"):
		return math.Max(a.HoleMost, a.EdgeMost), 0.005
	case strings.Contains(q, "closure"):
		return 1000 * a.Closure, 0.005
	case strings.Contains(q, "OD growth"):
		return 1000 * a.Growth, 0.001
	case strings.Contains(q, "bush hoop stress at bore"):
		return a.BushBore, 0.001
	case strings.Contains(q, "von Mises at seat"):
		return a.SeatMises, 0.001
	case strings.Contains(q, "housing hoop stress at seat"):
		return a.HoleMost, 0.001
	case strings.Contains(q, "force"):
		return mu * a.Pressure * math.Pi * s.D * length, 0.001
	case strings.Contains(q, "torque"):
		return mu * a.Pressure * math.Pi * s.D * length * s.D / 2 / 1000, 0.001
	case strings.Contains(q, "interface pressure"):
		return a.Pressure, 0.002
	}
	t.Fatalf("no second way for %q", q)
	return 0, 0
}

// tresca is the pressure that a bush bears once its hoop stress is the yield
// stress everywhere: the balance of a thin shell, summed from the bore out.
func tresca(s press.Seat) float64 {
	const steps = 100000
	var radial float64
	long := (s.D - s.Di) / 2 / steps
	for i := range steps {
		r := s.Di/2 + (float64(i)+0.5)*long
		half := radial + (s.Bush.Yield-radial)/r*long/2
		radial += (s.Bush.Yield - half) / r * long
	}
	return radial
}

// secondWarm takes each part at its own size and its own temperature.
func secondWarm(q string, in checked.PressText) (float64, bool) {
	seat := in.Get(0, 0, "d")
	bush := seat + in.Get(0, 0, "U20", "U")
	grown := func(size, alpha, c float64) float64 { return size * (1 + alpha*(c-20)) }
	root := func(f func(float64) float64) float64 {
		lo, hi := 0.0, 1000.0
		for range 80 {
			if mid := (lo + hi) / 2; f(mid) < 0 {
				lo = mid
			} else {
				hi = mid
			}
		}
		return lo
	}
	housingExp, bushExp, given := in.Expansions()
	if !given {
		return 0, false
	}
	open := func(c float64) float64 { return grown(seat, housingExp, c) - grown(bush, bushExp, c) }
	if strings.Contains(q, "loose") {
		return root(open), true
	}
	return -1000 * open(checked.DegreesOf(q)), true
}

// TestOwnRowsTwice: every row of own/pressfit.csv comes out a second way.
func TestOwnRowsTwice(t *testing.T) {
	rows, passed, solved := testdata.Rows[checked.Row](t, "own/pressfit.csv"), 0, plates{}
	for _, r := range rows {
		want := num(r["expected"])
		got, within := solved.second(t, r["quantity"], checked.ReadPress(checked.WithOther(r["inputs"], rows)))
		if off := math.Abs(got/want - 1); !(off <= within) {
			t.Errorf("%s %s: a second way gives %.6g, the row %s: %.2f %% apart", r["id"], r["quantity"], got, r["expected"], 100*off)
			continue
		}
		passed++
	}
	if passed != len(rows) || passed < 40 {
		t.Errorf("%d of %d rows", passed, len(rows))
	}
}

// TestElementsOutside holds the finite elements themselves to what was printed
// of a tube in a tube.
func TestElementsOutside(t *testing.T) {
	n := 0
	for _, r := range testdata.Rows[map[string]string](t, "checks/pressfit.csv") {
		if !strings.HasPrefix(r["quantity"], "interface pressure") {
			continue
		}
		s, u := seatOf(t, checked.ReadPress(r["inputs"]))
		if s.Di == 0 {
			continue
		}
		n++
		a, err := plateOf(s, u).Sharp()
		if err != nil {
			t.Fatal(err)
		}
		if want := num(r["expected"]); math.Abs(a.Pressure/want-1) > 0.002 {
			t.Errorf("%s: finite elements %v, printed %v (%s)", r["id"], a.Pressure, want, r["source"])
		}
	}
	if n != 2 {
		t.Errorf("%d rows, want 2", n)
	}
}
