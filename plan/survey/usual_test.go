package survey

import (
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

// someUsual presses upwards; its figures are made up.
var someUsual = Usual{Rad: 90 * deg, U: 20 * deg, Share: 0.85, Worn: 0.5, Least: 0.003, Most: 0.3}

// TestUnsaidByDrawing: of holes drawn as Usual says, those whose diameters read
// about alike have their middles as far off, along and across, as is reckoned.
func TestUnsaidByDrawing(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	u, uw := someUsual, 0.03
	for _, want := range []float64{0.01, 0.06, 0.12} {
		var n, xx, xy, yy float64
		for n < 20000 {
			w, a := 0.0, 2*math.Pi*rng.Float64()
			if rng.Float64() < u.Worn {
				w = u.Least * math.Pow(u.Most/u.Least, rng.Float64())
			}
			if rng.Float64() < u.Share {
				a = u.Rad + u.U*rng.NormFloat64()
			}
			if read := w + uw*rng.NormFloat64(); math.Abs(read-want) > 0.003 {
				continue
			}
			p := toward([2]float64{}, w/2, a)
			n, xx, xy, yy = n+1, xx+p[0]*p[0], xy+p[0]*p[1], yy+p[1]*p[1]
		}
		off := scale2(u.side(0, false, 0), u.depth(want, uw)/4)
		near(t, "across", math.Sqrt(off[0][0]), math.Sqrt(xx/n), 0.0012)
		near(t, "along", math.Sqrt(off[1][1]), math.Sqrt(yy/n), 0.0012)
		near(t, "together", off[0][1], xy/n, 2e-5)
	}
}

// TestDiametersGoSmoothly: as the widest is read wider the centre moves no faster
// than the reading, and it is never better known for having worn more or less than
// the doubt of the readings allows: along the wear not below half of theirs.
func TestDiametersGoSmoothly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		d := Diameters{Narrowest: 3.2, UMiddle: f("u middle", 0.002, 0.02), UWidest: f("u widest", 0.002, 0.03),
			UNarrow: f("u narrowest", 0.002, 0.03), UDir: f("u side", 0, 0.3), Usual: someUsual,
			Journal: f("journal", 3.1, 3.2), UJournal: 0.005}
		if rapid.Bool().Draw(t, "side said") {
			d.WornTo = []float64{f("side", 0, 6.28)}
		}
		if rapid.Bool().Draw(t, "line") {
			d.HasWidestAt, d.WidestAt = true, f("line", 0, 3.14)
			if len(d.WornTo) > 0 {
				d.WidestAt = d.WornTo[0] + f("off", -0.7, 0.7)
			}
		}
		uw := math.Hypot(d.UWidest, d.UNarrow)
		var was Evidence
		for i := range 200 {
			d.Widest = 3.2 - 2*uw + 0.001*float64(i)
			e, err := FromDiameters(d)
			if err != nil {
				t.Fatal(err)
			}
			if i > 0 {
				if step := dist(e.Centre, was.Centre); step > 0.001 {
					t.Fatalf("widest %.3f: the centre jumps %v", d.Widest, step)
				}
				if e.U() < was.U()-1e-9 {
					t.Fatalf("widest %.3f: u falls from %v to %v", d.Widest, was.U(), e.U())
				}
			}
			if least := math.Hypot(d.UMiddle, uw/2); len(d.WornTo) > 0 && e.U() < least-1e-12 {
				t.Fatalf("widest %.3f: u %v under %v", d.Widest, e.U(), least)
			}
			was = e
		}
	})
}

// TestDiametersMirror: everything turned over is found turned over.
func TestDiametersMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		d := Diameters{Middle: [2]float64{f("x", -20, 20), f("y", -20, 20)}, Narrowest: 3.2, Widest: f("widest", 3.2, 3.6),
			UMiddle: 0.012, UWidest: 0.02, UNarrow: 0.02, UDir: 10 * deg, Usual: someUsual}
		if rapid.Bool().Draw(t, "side said") {
			d.WornTo = []float64{f("side", 0, 6.28)}
		}
		if rapid.Bool().Draw(t, "line") {
			d.HasWidestAt, d.WidestAt = true, f("line", 0, 3.14)
		}
		m := d
		m.Middle[0], m.WidestAt, m.Usual.Rad = -m.Middle[0], math.Pi-m.WidestAt, math.Pi-m.Usual.Rad
		m.WornTo = nil
		for _, a := range d.WornTo {
			m.WornTo = append(m.WornTo, math.Pi-a)
		}
		e, err := FromDiameters(d)
		o, err2 := FromDiameters(m)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		if math.Abs(e.Centre[0]+o.Centre[0]) > 1e-12 || math.Abs(e.Centre[1]-o.Centre[1]) > 1e-12 ||
			math.Abs(e.Cov[0][1]+o.Cov[0][1]) > 1e-15 || math.Abs(e.Cov[0][0]-o.Cov[0][0]) > 1e-15 {
			t.Fatalf("%+v turned over is %+v", e, o)
		}
	})
}
