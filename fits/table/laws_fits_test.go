package table_test

import (
	"math"
	"strings"
	"testing"
)

// TestGradesKeepTheRule: standard tolerances IT5 to IT18 are the multiples 7,
// 10, 16, 25 and so on, times ten every fifth, of i = 0.45 cbrt(D) + 0.001 D um,
// D the geometric mean of the range, 1 to 3 of the lowest (ISO 286-1, annex on
// the basis of the system; the printed figures are rounded).
func TestGradesKeepTheRule(t *testing.T) {
	of := []float64{7, 10, 16, 25, 40, 64}
	for _, r := range rowsOf(t, "limits_it") {
		g := atoi(strings.TrimPrefix(r.Get("grade"), "IT"))
		if g < 5 {
			continue
		}
		k := of[0]
		if g > 5 {
			k = of[1+(g-6)%5] * math.Pow(10, float64((g-6)/5))
		}
		d := math.Sqrt(math.Max(fig(t, r, "over_mm"), 1) * fig(t, r, "upto_mm"))
		i := 0.45*math.Cbrt(d) + 0.001*d
		tol := 0.12
		if r.Get("upto_mm") == "3" {
			tol = 0.16 // printed coarser than the rule there
		}
		alike(t, r.Address(), fig(t, r, "um")/(k*i), 1, tol)
	}
	for _, rows := range groups(rowsOf(t, "limits_it"), "over_mm") {
		rising(t, rows, "um", true)
	}
}

// TestBacklashClasses: the ranges of teeth abut; a class has half the backlash
// of the one before it, rounded, from B on; finer teeth have less.
func TestBacklashClasses(t *testing.T) {
	by := groups(rowsOf(t, "backlash"), "class")
	for class, rows := range by {
		abut(t, rows, "from_dp", "to_dp", 20, 1)
		last := fig(t, rows[len(rows)-1], "to_dp")
		if want := map[string]float64{"A": 200, "B": 120, "C": 120, "D": 120}[class]; last != want {
			t.Errorf("class %s ends at %v, want %v", class, last, want)
		}
		for i, r := range rows {
			ratio := fig(t, r, "most_in") / fig(t, r, "least_in")
			if ratio < 1.99 || ratio > 2.8 {
				t.Errorf("%s: most is %.2f times the least", r.Address(), ratio)
			}
			if i > 0 && (fig(t, r, "least_in") >= fig(t, rows[i-1], "least_in") ||
				fig(t, r, "most_in") >= fig(t, rows[i-1], "most_in")) {
				t.Errorf("%s: no less than of coarser teeth", r.Address())
			}
		}
	}
	for _, pair := range [][2]string{{"B", "C"}, {"C", "D"}} {
		for i, r := range by[pair[1]] {
			for _, c := range []string{"least_in", "most_in"} {
				alike(t, r.Address()+": "+c, fig(t, r, c), fig(t, by[pair[0]][i], c)/2, 0.000051)
			}
			if r.Get("to_dp") != by[pair[0]][i].Get("to_dp") {
				t.Errorf("%s: another range than of class %s", r.Address(), pair[0])
			}
		}
	}
	alike(t, "where class B ends, A begins", fig(t, by["A"][0], "least_in"), fig(t, by["B"][0], "most_in"), 0)
}

// TestPinClasses: the classes are whole steps of ten millionths of an inch,
// rounded to a hundredth of a micrometre: 1, 2, 4, 7, 10 and 20 (ASME B89.1.5,
// its inch figures).
func TestPinClasses(t *testing.T) {
	steps := map[string]float64{"XXX": 1, "XX": 2, "X": 4, "Y": 7, "Z": 10, "ZZ": 20}
	rows := rowsOf(t, "pin_classes")
	for _, r := range rows {
		alike(t, r.Address(), fig(t, r, "tolerance_mm"), steps[r.Get("class")]*25.4e-5, 0.0000051)
	}
	if len(rows) != len(steps) {
		t.Errorf("%d classes, want %d", len(rows), len(steps))
	}
}

// TestInstrumentDoubts: the doubt of an instrument with a printed limit of error
// is that limit over root 3 (its half width, rectangular), of a pin the class
// over root 12; what stands for a kind when none is named is that kind; each doubt
// lies well between the least and the most that it can be.
func TestInstrumentDoubts(t *testing.T) {
	u := func(kind string) float64 { return fig(t, row(t, "instruments", "kind", kind), "u_mm") }
	zz := fig(t, row(t, "pin_classes", "class", "ZZ"), "tolerance_mm")
	for _, c := range []struct {
		kind      string
		want, tol float64
	}{
		// ISO 13385-1 has 0.03 for a calliper of 150 mm, DIN 863 0.004 for a
		// micrometer of 25 mm: machally.com prints both.
		{"calliper", 0.03 / math.Sqrt(3), 0.0005}, {"micrometer", 0.004 / math.Sqrt(3), 0.00005},
		{"inside calliper", 0.04 / math.Sqrt(3), 0.0005}, {"pins", zz / math.Sqrt(12), 0.00005},
		// 0.014 to 3 mm, 0.018 to 6 mm.
		{"drill shanks", 0.016 / math.Sqrt(12), 0.0007},
		{"default width", u("inside calliper"), 0}, {"default pin", u("pins"), 0}, {"default probe", u("indicator"), 0},
	} {
		alike(t, c.kind, u(c.kind), c.want, c.tol)
	}
	words := map[string]string{}
	for _, r := range rowsOf(t, "instruments") {
		ordered(t, r, "least_mm", "u_mm", "most_mm")
		standIn := strings.HasPrefix(r.Get("kind"), "default")
		if v := fig(t, r, "u_mm"); !standIn && (v/fig(t, r, "least_mm") > 30 || fig(t, r, "most_mm")/v > 100 || v > 0.2) {
			t.Errorf("%s: a doubt of %v in %s to %s", r.Address(), v, r.Get("least_mm"), r.Get("most_mm"))
		}
		for _, w := range strings.Split(r.Get("words"), ";") {
			if old, ok := words[w]; ok && w != "" {
				t.Errorf("%s: %q is of %s as well", r.Address(), w, old)
			}
			words[w] = r.Get("kind")
		}
		for _, w := range strings.Fields(r.Get("reads")) {
			if !strings.Contains(" centre probe width outside pin ", " "+w+" ") {
				t.Errorf("%s: reads %q", r.Address(), w)
			}
		}
	}
}

// TestBushSeries: of each series the outside grows with the bore, a thin bush is
// thinner than a plain one of its bore and as long, walls are those of a bush,
// the limits are those of the series and lengths stand in order.
func TestBushSeries(t *testing.T) {
	outside := map[string]float64{}
	for series, rows := range groups(rowsOf(t, "bush_series"), "series") {
		rising(t, rows, "bore", false)
		for i, r := range rows {
			if i > 0 && r.Get("bore") == rows[i-1].Get("bore") {
				rising(t, rows[i-1:i+1], "od", true)
			}
			for _, c := range []string{"material", "unit", "bore_class", "bore_low_thou", "bore_high_thou",
				"od_class", "od_low_thou",
				"od_high_thou"} {
				if r.Get(c) != rows[0].Get(c) {
					t.Errorf("%s: %s is %q, of the series %q", r.Address(), c, r.Get(c), rows[0].Get(c))
				}
			}
			mm := map[string]float64{"mm": 1, "in": 25.4}[r.Get("unit")]
			wall := (fig(t, r, "od") - fig(t, r, "bore")) / 2 * mm
			if wall < 0.78 || wall > 3 {
				t.Errorf("%s: a wall of %.2f mm", r.Address(), wall)
			}
			outside[series+r.Get("bore")] = fig(t, r, "od")
			last := 0.0
			for _, l := range strings.Split(r.Get("lengths"), ";") {
				one := r
				v := fraction(t, one.Address(), l)
				if v <= last || v*mm > 2.6*fig(t, r, "bore")*mm || v*mm < 0.6*fig(t, r, "bore")*mm {
					t.Errorf("%s: length %s of a bush of bore %s", r.Address(), l, r.Get("bore"))
				}
				last = v
			}
		}
		if !strings.HasPrefix(series, "sintered") && rows[0].Get("unit") == "mm" {
			continue
		}
		for i := 1; i < len(rows); i++ { // one outside a bore, or two: both grow
			if rows[i].Get("bore") != rows[i-1].Get("bore") {
				rising(t, rows[i-1:i+1], "od", false)
			}
		}
	}
	thin := 0
	for _, r := range rowsOf(t, "bush_series") {
		if r.Get("series") != "sintered plain thin" {
			continue
		}
		thin++
		plain := row(t, "bush_series", "series", "sintered plain", "bore", r.Get("bore"))
		if d := fig(t, plain, "od") - fig(t, r, "od"); d < 1 || d > 2 || plain.Get("lengths") != r.Get("lengths") {
			t.Errorf("%s: %v mm less outside than the plain one, lengths %s and %s", r.Address(), d, r.Get("lengths"),
				plain.Get("lengths"))
		}
	}
	if thin != 9 {
		t.Errorf("%d thin bushes, want 9", thin)
	}
	low, high := fig(t, row(t, "bush_series", "series", "inch porous plain", "bore", "3/8"), "od_low_thou"), 3.0
	alike(t, "outside of inch bushes, over", low, 2, 0)
	alike(t, "outside of inch bushes, to", fig(t, row(t, "bush_series", "series", "inch porous plain", "bore", "3/8"),
		"od_high_thou"), high, 0)
}

// TestInchReamers: the printed limits in thousandths are those that reaming has
// in inches and mm; the remembered ones are no farther off than 0.1.
func TestInchReamers(t *testing.T) {
	for _, basis := range groups(rowsOf(t, "reamers_inch_limits"), "basis") {
		abut(t, basis, "over_in", "upto_in", 0, 0)
		alike(t, basis[1].Address()+": the last size", fig(t, basis[1], "upto_in"), 1, 0)
		rising(t, basis, "upper_thou", true)
		rising(t, basis, "lower_thou", false)
		for _, r := range basis {
			ordered(t, r, "lower_thou", "upper_thou")
		}
	}
	for _, r := range rowsOf(t, "reaming") {
		if r.Get("quantity") != "reamer_diameter_limits" {
			continue
		}
		p := row(t, "reamers_inch_limits", "basis", "published", "upto_in", r.Get("d_to_in"))
		alike(t, r.Address()+": low", fig(t, r, "low_mm_or_factor"), fig(t, p, "lower_thou")*0.0254, 0.00005)
		alike(t, r.Address()+": high", fig(t, r, "high_mm_or_factor"), fig(t, p, "upper_thou")*0.0254, 0.00005)
	}
	for _, r := range rowsOf(t, "reamers_inch_limits") {
		between(t, r, "lower_thou", 0.1, 0.2)
		between(t, r, "upper_thou", 0.4, 0.6)
	}
}
