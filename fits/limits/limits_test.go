package limits

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"rebush/fits/dim"
	"rebush/fits/table"
)

// Printed reamer limits (upper/lower, um): Guehring 2010 cutting-data guide
// p. 72 and Dormer catalogue p. 568.
const printedReamers = `
3  5/2  8/4  11/6  21/12 34/20 51/30  85/50
6  6/3  10/5 15/8  25/14 40/23 63/36  102/60
10 7/3  12/6 18/10 30/17 49/28 76/44  127/74
18 9/5  15/8 22/12 36/20 59/34 93/54  153/90
30 11/6 17/9 28/16 44/25 71/41 110/64 178/104`

func TestPrintedReamerTable(t *testing.T) {
	l := builtIn(t)
	cells := 0
	for _, line := range strings.Split(strings.TrimSpace(printedReamers), "\n") {
		f := strings.Fields(line)
		d := dim.Must(f[0])
		for i, cell := range f[1:] {
			class := fmt.Sprintf("H%d", 6+i)
			lo, hi, err := l.Reamer(d, class)
			got := fmt.Sprintf("%s/%s", hi.Sub(d).Um(), lo.Sub(d).Um())
			if err != nil || got != cell {
				t.Errorf("%s %s: %s, %v; printed %s", d, class, got, err, cell)
			}
			cells++
		}
	}
	if cells != 35 {
		t.Errorf("%d cells", cells)
	}
	lo, hi, err := l.Reamer(dim.Must("40"), "H7") // Dormer p. 568, 30-50: 21/12
	if err != nil || lo.String() != "40.012 mm" || hi.String() != "40.021 mm" {
		t.Errorf("40 H7: %s %s %v", lo, hi, err)
	}
}

// Delta = IT(n) - IT(n-1) for IT3 to IT8: Machine Drawing p. 221 confirms 8 for
// 18-30 IT7; the others are differences of the printed tolerances.
func TestDelta(t *testing.T) {
	l := builtIn(t)
	for size, want := range map[string][6]string{
		"3": {"0", "0", "0", "0", "0", "0"}, "6": {"1", "1.5", "1", "3", "4", "6"}, "10": {"1", "1.5", "2", "3", "6", "7"},
		"18": {"1", "2", "3", "3", "7", "9"}, "30": {"1.5", "2", "3", "4", "8", "12"}, "50": {"1.5", "3", "4", "5", "9", "14"},
	} {
		for i, w := range want {
			d, err := l.Class(dim.Must(size), fmt.Sprintf("M%d", 3+i))
			s, err2 := l.Class(dim.Must(size), "m6")
			if err != nil || err2 != nil || !d.UpperUm.Add(s.LowerUm).Equal(decimal.RequireFromString(w)) {
				t.Errorf("%s IT%d: delta %s, want %s (%v, %v)", size, 3+i, d.UpperUm.Add(s.LowerUm), w, err, err2)
			}
		}
	}
}

// From IT6 to IT18 each fifth grade is ten times as wide: rule of ISO 286-1 as
// given with its Table 1 at en.wikipedia.org/wiki/IT_Grade. It holds the grades
// from IT14 up against IT9 and up, of which other tables are printed. (IT11 of 3
// to 6 mm is 75 and not 80: the rule is older than the rounding.)
func TestFifthGradeIsTenTimesAsWide(t *testing.T) {
	l := builtIn(t)
	for _, size := range []string{"3", "6", "10", "18", "30", "50"} {
		for n := 9; n+5 <= 18; n++ {
			fine, err := l.Grade(dim.Must(size), fmt.Sprintf("IT%d", n))
			wide, err2 := l.Grade(dim.Must(size), fmt.Sprintf("IT%d", n+5))
			if err != nil || err2 != nil || !wide.Um.Equal(fine.Um.Mul(decimal.NewFromInt(10))) {
				t.Errorf("%s: IT%d %s, IT%d %s (%v, %v)", size, n, fine.Um, n+5, wide.Um, err, err2)
			}
		}
	}
}

// Both sides of the rules that end at a size.
func TestEdges(t *testing.T) {
	l := builtIn(t)
	for _, c := range []struct{ size, class, lower, upper string }{
		{"3", "H7/p6", "-12", "4"}, // up to 3 p is IT6, so this is a transition fit
		{"24", "u6", "41", "54"}, {"24.001", "u6", "48", "61"}, {"24.001", "t6", "41", "54"},
		{"14", "x6", "40", "51"}, {"14.001", "x6", "45", "56"}, {"10", "x6", "34", "43"},
		{"18", "u6", "33", "44"}, {"3", "K9", "-25", "0"}, {"1", "N8", "-18", "-4"}, {"1.001", "N9", "-29", "-4"},
		{"3", "N9", "-29", "-4"}, {"3.001", "N9", "-30", "0"}, {"8", "M9", "-42", "-6"}, {"8", "M8", "-21", "1"},
		{"8", "P8", "-37", "-15"}, {"8", "k3", "0", "2.5"}, {"8", "k4", "1", "5"}, {"8", "k7", "1", "16"}, {"8", "k8", "0", "22"},
		{"10", "fg6", "-17", "-8"}, {"1.1", "a11", "-330", "-270"}, {"40", "c11", "-280", "-120"}, {"40.001", "c11", "-290", "-130"},
		{"8", "js7", "-7.5", "7.5"}, {"8", "JS8", "-11", "11"}, {"2", "js2", "-0.6", "0.6"}, {"50", "H7", "0", "25"}, {"0.5", "h6", "-6", "0"},
	} {
		var lo, hi decimal.Decimal
		var err error
		if strings.Contains(c.class, "/") {
			var f Fit
			f, err = l.Fit(dim.Must(c.size), c.class)
			lo, hi = f.MinClearanceUm, f.MaxClearanceUm
		} else {
			var d Deviation
			d, err = l.Class(dim.Must(c.size), c.class)
			lo, hi = d.LowerUm, d.UpperUm
		}
		if err != nil || lo.String() != c.lower || hi.String() != c.upper {
			t.Errorf("%s %s: %s to %s, %v; want %s to %s", c.size, c.class, lo, hi, err, c.lower, c.upper)
		}
	}
}

func TestKind(t *testing.T) {
	l := builtIn(t)
	for pair, want := range map[string]Kind{"H7/h6": Clearance, "H7/g6": Clearance, "H7/k6": Transition, "H7/p6": Interference, "H7/js6": Transition} {
		f, err := l.Fit(dim.Must("5"), pair)
		if err != nil || f.Kind != want {
			t.Errorf("%s is %s, %v; want %s", pair, f.Kind, err, want)
		}
	}
	if f, err := l.Fit(dim.Must("3"), "H7/p6"); err != nil || f.Kind != Transition {
		t.Errorf("3 H7/p6 is %s, %v", f.Kind, err)
	}
}

// TestInchTableCloses: the printed clearances follow from the printed limits in
// every row, and the hole of a range is the same in every fit with that hole.
func TestInchTableCloses(t *testing.T) {
	l := builtIn(t)
	tab, err := table.BuiltIn().Get("fits_inch")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range tab.Rows {
		upTo := dim.OfInch(decimal.RequireFromString(row.Get("upto_in")))
		f, err := l.Inch(upTo, row.Get("fit"))
		if err != nil {
			t.Errorf("%s: %v", row.Address(), err)
			continue
		}
		if f.MinClearance.String() != row.Get("clearance_min_thou") || f.MaxClearance.String() != row.Get("clearance_max_thou") {
			t.Errorf("%s: clearance %s to %s, printed %s to %s", row.Address(), f.MinClearance, f.MaxClearance, row.Get("clearance_min_thou"), row.Get("clearance_max_thou"))
		}
		if f.Source != row.Address() {
			t.Errorf("%s in is read from %s", row.Address(), f.Source)
		}
	}
	for _, in := range []string{"0.12", "0.24", "0.4", "0.71", "1.19"} {
		holes := func(fits ...string) {
			var first InchFit
			for i, name := range fits {
				f, err := l.Inch(dim.OfInch(decimal.RequireFromString(in)), name)
				if err != nil {
					t.Fatal(err)
				}
				if i == 0 {
					first = f
				}
				if !f.HoleUpper.Equal(first.HoleUpper) {
					t.Errorf("%s in: hole of %s is %s, of %s %s", in, first.Fit, first.HoleUpper, name, f.HoleUpper)
				}
			}
		}
		holes("RC3", "LN2", "LN3", "FN2", "FN4") // H7
		holes("RC2", "LN1", "FN1")               // H6
		holes("RC4", "RC5")                      // H8
	}
}

// TestTablesHaveNoGaps: ranges of one key follow each other, and every row has
// a source.
func TestTablesHaveNoGaps(t *testing.T) {
	for name, key := range map[string]string{"limits_it": "grade", "limits_shaft": "letter", "fits_inch": "fit", "reamers_inch_limits": "basis"} {
		tab, err := table.BuiltIn().Get(name)
		if err != nil {
			t.Fatal(err)
		}
		unit := "_in"
		if strings.HasPrefix(name, "limits") {
			unit = "_mm"
		}
		last := map[string]string{}
		for _, row := range tab.Rows {
			k := row.Get(key)
			if prev, ok := last[k]; ok && prev != row.Get("over"+unit) {
				t.Errorf("%s: %s ends at %s, the next range starts at %s", row.Address(), k, prev, row.Get("over"+unit))
			}
			last[k] = row.Get("upto" + unit)
			if row.Source() == "" {
				t.Errorf("%s: no source", row.Address())
			}
		}
	}
}

func TestLimitsHoldTogether(t *testing.T) {
	l := builtIn(t)
	letters := []string{"a", "b", "c", "cd", "d", "e", "ef", "f", "fg", "g", "h", "js", "k", "m", "n", "p", "r", "s", "t", "u", "x"}
	rapid.Check(t, func(t *rapid.T) {
		d := dim.OfUm(decimal.NewFromInt(rapid.Int64Range(500, 50000).Draw(t, "size")))
		n := rapid.IntRange(1, 18).Draw(t, "grade")
		i := rapid.IntRange(0, len(letters)-1).Draw(t, "letter")
		class := letters[i] + strconv.Itoa(n)
		fine, err := l.Grade(d, strconv.Itoa(n))
		if err != nil {
			if n < 14 || d.Cmp(dim.Must("1")) > 0 {
				t.Fatal(err)
			}
			return
		}
		if n > 1 {
			finer, err := l.Grade(d, fmt.Sprintf("IT%d", n-1))
			if err != nil || !finer.Um.LessThan(fine.Um) {
				t.Fatalf("IT%d %s, IT%d %s, %v", n-1, finer.Um, n, fine.Um, err)
			}
		}
		for _, c := range []string{class, strings.ToUpper(class)} {
			got, err := l.Class(d, c)
			if err != nil {
				continue
			}
			if !got.WidthUm().Equal(fine.Um) || !got.Max().Sub(got.Min()).Equal(dim.OfUm(fine.Um)) {
				t.Fatalf("%s %s is %s wide, the grade is %s", d, c, got.WidthUm(), fine.Um)
			}
			if len(got.Sources) == 0 {
				t.Fatalf("%s has no source", c)
			}
			if !got.Hole {
				continue
			}
			if lo, hi, err := l.Reamer(d, c); err == nil && (lo.Less(got.Min()) || got.Max().Less(hi) || !lo.Less(hi)) {
				t.Fatalf("%s %s: reamer %s to %s in a hole %s to %s", d, c, lo, hi, got.Min(), got.Max())
			}
		}
		// a later letter never gives a smaller shaft
		if i > 0 && letters[i] != "js" && letters[i-1] != "js" {
			a, err1 := l.Class(d, letters[i-1]+strconv.Itoa(n))
			b, err2 := l.Class(d, class)
			if err1 == nil && err2 == nil && b.UpperUm.LessThan(a.UpperUm) {
				t.Fatalf("%s: %s reaches %s, %s only %s", d, a.Class, a.UpperUm, b.Class, b.UpperUm)
			}
		}
	})
}

func FuzzClass(f *testing.F) {
	for _, s := range []string{"H7", "js6", "H7/p6", "ZC11", "h99", "", "Ø7", "IT7"} {
		f.Add(s, int64(8000))
	}
	l := builtIn(f)
	f.Fuzz(func(t *testing.T, s string, um int64) {
		d := dim.OfUm(decimal.NewFromInt(um))
		if c, err := l.Class(d, s); err == nil && !c.LowerUm.LessThan(c.UpperUm) {
			t.Errorf("%s %q: %s to %s", d, s, c.LowerUm, c.UpperUm)
		}
		if fit, err := l.Fit(d, s); err == nil && !fit.MinClearanceUm.LessThan(fit.MaxClearanceUm) {
			t.Errorf("%s %q: %s to %s", d, s, fit.MinClearanceUm, fit.MaxClearanceUm)
		}
		if fit, err := l.Inch(d, s); err == nil && !fit.MinClearance.LessThan(fit.MaxClearance) {
			t.Errorf("%s %q: %s to %s", d, s, fit.MinClearance, fit.MaxClearance)
		}
		if g, err := l.Grade(d, s); err == nil && g.Um.Sign() <= 0 {
			t.Errorf("%s %q: %s", d, s, g.Um)
		}
	})
}

func TestReamerInch(t *testing.T) {
	l := builtIn(t)
	// industrialmonitordirect.com bands; the remembered ones stand behind them.
	for in, want := range map[string][2]string{"0.5": {"0.50010", "0.50050"}, "0.5625": {"0.56270", "0.56310"}, "1": {"1.00020", "1.00060"}} {
		got, err := l.ReamerInch(dim.OfInch(decimal.RequireFromString(in)))
		if err != nil || len(got) != 2 || !got[0].Published || got[1].Published ||
			got[0].Low.StringInch(5) != want[0] || got[0].High.StringInch(5) != want[1] {
			t.Errorf("%s in: %+v, %v", in, got, err)
		}
	}
}
