package limits

import (
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
	"rebush/fits/table"
)

func TestWhatDoesNotExist(t *testing.T) {
	l := builtIn(t)
	for _, c := range []struct{ size, class, says string }{
		{"6", "t7", "only over 24 mm up to 50 mm; at 6 mm there are a, b, c, cd"}, {"6", "t7", "u is the usual stand-in"},
		{"24", "T7", "T7 does not exist at 24 mm"}, {"0.8", "N9", "N is not used above IT8 at 1 mm or less"},
		{"10.001", "cd8", "only up to 10 mm"}, {"11", "EF8", "at 11 mm there are A, B, C, D, E, F, G, H, JS, K"}, {"11", "fg8", "only up to 10 mm"},
		{"3.001", "K9", "K does not exist above IT8 over 3 mm"}, {"1", "a11", "only over 1 mm"}, {"1", "B11", "only over 1 mm"},
		{"1", "h14", "IT14 does not exist at 1 mm, only over 1 mm"}, {"8", "h19", "IT1 to IT18"}, {"8", "v6", "no figures for that letter"},
		{"8", "zc6", "no figures"}, {"8", "j6", "no figures"}, {"8", "q6", "no such letter"}, {"8", "Js7", "write JS7 for a hole or js7"},
		{"8", "P2", "starts at IT3"}, {"8", "7", "is not a class"}, {"8", "", "is not a class"}, {"8", "H0", "is not a class"},
		{"0.4", "H7", "from 0.5 to 50 mm"}, {"50.001", "H7", "from 0.5 to 50 mm"}, {"-8", "H7", "from 0.5 to 50 mm"},
	} {
		d, err := l.Class(dim.Must(c.size), c.class)
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s %s: %s to %s, error %v does not say %q", c.size, c.class, d.LowerUm, d.UpperUm, err, c.says)
		}
	}
	for _, c := range []struct{ pair, says string }{
		{"p6/H7", "write H7/p6"}, {"H7", "write hole and shaft"}, {"h6/p6", "two shafts"}, {"H7/P6", "two holes"}, {"H7/", "is not a class"},
	} {
		if _, err := l.Fit(dim.Must("8"), c.pair); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v does not say %q", c.pair, err, c.says)
		}
	}
	for _, c := range []struct{ in, fit, says string }{
		{"0.95", "FN3", "only over 0.95 in up to 1.19 in; at that size there are RC1"}, {"0.3", "RC6", "there are RC1, RC2"},
		{"1.2", "FN1", "up to 1.19 in"}, {"0", "FN1", "above 0"}, {"0.3", "", "not an inch fit"},
	} {
		if _, err := l.Inch(dim.OfInch(decimal.RequireFromString(c.in)), c.fit); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s %s: %v does not say %q", c.in, c.fit, err, c.says)
		}
	}
	if _, _, err := l.Reamer(dim.Must("8"), "h7"); err == nil || !strings.Contains(err.Error(), "shaft class") {
		t.Errorf("reamer for h7: %v", err)
	}
	if _, _, err := l.Reamer(dim.Must("8"), "H1"); err == nil || !strings.Contains(err.Error(), "too fine") {
		t.Errorf("reamer for H1: %v", err)
	}
	if _, err := l.Class(dim.Length{}, "H7"); err == nil {
		t.Error("no size, no error")
	}
	if _, err := l.ReamerInch(dim.Must("26")); err == nil {
		t.Error("no inch reamer of 26 mm is known")
	}
}

func TestShopTableIsChecked(t *testing.T) {
	for _, data := range []string{
		"over_mm,upto_mm,grade,um,source\n0,50,IT7,soft,x\n",
		"over_mm,upto_mm,grade,um,source\n50,3,IT7,10,x\n",
	} {
		tab, err := table.Parse("limits_it", "my-limits.csv", []byte(data))
		if err != nil {
			t.Fatal(err)
		}
		lib := table.BuiltIn()
		if err := lib.Replace(tab); err != nil {
			t.Fatal(err)
		}
		if _, err := New(lib); err == nil || !strings.Contains(err.Error(), "limits_it:2") {
			t.Errorf("%q: %v", data, err)
		}
	}
}
