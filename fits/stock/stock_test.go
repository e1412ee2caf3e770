package stock_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"rebush/fits/dim"
	"rebush/fits/limits"
	"rebush/fits/material"
	"rebush/fits/stock"
	"rebush/fits/table"
	"rebush/testdata"
)

func classes(t testing.TB) stock.Classes {
	t.Helper()
	l, err := limits.New(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	return func(nominal dim.Length, class string) (lower, upper decimal.Decimal, rows []string, err error) {
		d, err := l.Class(nominal, class)
		return d.LowerUm, d.UpperUm, d.Sources, err
	}
}

func mm(s string) dim.Length { return dim.Must(s + " mm") }

var sized = regexp.MustCompile(`bush_OD_mm=(\d+); OD_class=(\w+); housing=(\w+)`)

// Interference of a sintered bush in its housing, from the printed classes.
func TestPublishedRows(t *testing.T) {
	of, n := classes(t), 0
	for _, r := range testdata.Rows[map[string]string](t, "checks/fits.csv") {
		g := sized.FindStringSubmatch(r["inputs"])
		if g == nil {
			continue
		}
		bush, err := stock.Size{Nominal: mm(g[1]), Class: g[2]}.Limits(of, dim.Length{})
		seat, err2 := stock.Size{Nominal: mm(g[1]), Class: g[3]}.Limits(of, dim.Length{})
		if err != nil || err2 != nil {
			t.Errorf("%s: %v %v", r["id"], err, err2)
			continue
		}
		got := bush.High.Sub(seat.Low)
		if strings.HasPrefix(r["quantity"], "minimum") {
			got = bush.Low.Sub(seat.High)
		}
		if got.Um().String() != r["expected"] {
			t.Errorf("%s: %s um, want %s (%s)", r["id"], got.Um(), r["expected"], r["source"])
		}
		n++
	}
	if n == 0 {
		t.Error("no row was held against")
	}
}

func TestSizes(t *testing.T) {
	of := classes(t)
	for _, c := range []struct {
		what      string
		size      stock.Size
		u         string
		low, high string
		say       string
	}{
		// ISO 286: 5 s7 is +19 to +31, 5 r6 is +15 to +23.
		{"class", stock.Size{Nominal: mm("5"), Class: "s7"}, "", "5.019", "5.031", "5 mm s7"},
		{"either class", stock.Size{Nominal: mm("5"), Class: "r6 to s7"}, "", "5.015", "5.031", "r6 to s7"},
		{"a class takes no reading error", stock.Size{Nominal: mm("5"), Class: "s7"}, "0.01", "5.019", "5.031", ""},
		{"box", stock.Size{Low: mm("4.995"), High: mm("5.003"), Measured: true}, "0.01", "4.995", "5.003", "measured"},
		{"one", stock.Size{Nominal: mm("5.01"), Low: mm("5.01"), High: mm("5.01"), Measured: true}, "0.005", "5.005", "5.015", "good to 0.005 mm"},
		{"one, instrument not said", stock.Size{Nominal: mm("5.01"), Measured: true}, "", "5.01", "5.01", "measured"},
	} {
		u := dim.Length{}
		if c.u != "" {
			u = mm(c.u)
		}
		l, err := c.size.Limits(of, u)
		if err != nil || !l.Low.Equal(mm(c.low)) || !l.High.Equal(mm(c.high)) || !strings.Contains(l.How, c.say) {
			t.Errorf("%s: %s to %s (%s) %v; want %s to %s", c.what, l.Low, l.High, l.How, err, c.low, c.high)
		}
	}
	for say, s := range map[string]stock.Size{
		"without a class":       {Nominal: mm("5")},
		"no size is given":      {},
		"needs its nominal":     {Class: "s7"},
		"is above":              {Low: mm("5.1"), High: mm("5")},
		"must be greater than":  {Low: mm("0"), High: mm("5")},
		"is not a class":        {Nominal: mm("5"), Class: "7s"},
		"-1 mm is not possible": {Nominal: mm("-1"), Class: "s7"},
	} {
		if _, err := s.Limits(of, dim.Length{}); err == nil || !strings.Contains(err.Error(), say) {
			t.Errorf("%+v: %v; want %q in it", s, err, say)
		}
	}
}

func drawer7() stock.Bush {
	return stock.Bush{Code: "drawer 7", Bore: stock.Size{Nominal: mm("3.2"), Class: "F7"}, OD: stock.Size{Nominal: mm("5"), Class: "s7"},
		Length: mm("3.8"), FlangeOD: mm("7"), FlangeThickness: mm("0.8")}
}

func TestResolve(t *testing.T) {
	of := classes(t)
	k, err := drawer7().Resolve(of, dim.Length{}, dim.Length{})
	// ISO 286: 3.2 F7 is +10 to +22, 5 s7 is +19 to +31.
	if err != nil || !k.UnderFlange.Equal(mm("3")) || !k.WallMin.Equal(mm("0.8985")) || !k.WallMax.Equal(mm("0.9105")) {
		t.Errorf("%+v %v", k, err)
	}
	for say, spoil := range map[string]func(*stock.Bush){
		"changed round":      func(b *stock.Bush) { b.Bore, b.OD = b.OD, b.Bore },
		"thinner than":       func(b *stock.Bush) { b.Bore = stock.Size{Nominal: mm("5"), Class: "F7"} },
		"not larger than":    func(b *stock.Bush) { b.FlangeOD = mm("5.02") },
		"with the flange":    func(b *stock.Bush) { b.Length = mm("0.8") },
		"both its diameter":  func(b *stock.Bush) { b.FlangeThickness = dim.Length{} },
		"must be more than":  func(b *stock.Bush) { b.FlangeThickness = mm("0") },
		"greater than 0":     func(b *stock.Bush) { b.Length = mm("-1") },
		"drawer 7: outside:": func(b *stock.Bush) { b.OD = stock.Size{} },
		"drawer 7: bore:":    func(b *stock.Bush) { b.Bore = stock.Size{Nominal: mm("900"), Class: "F7"} },
	} {
		b := drawer7()
		spoil(&b)
		if _, err := b.Resolve(of, dim.Length{}, dim.Length{}); err == nil || !strings.Contains(err.Error(), say) {
			t.Errorf("%v; want %q in it", err, say)
		}
	}
}

// Every row of the series is a bush, of a known material, marked as to buy.
func TestSeries(t *testing.T) {
	lib := table.BuiltIn()
	list, err := stock.Series(lib)
	if err != nil {
		t.Fatal(err)
	}
	reg, err := material.New(lib)
	if err != nil {
		t.Fatal(err)
	}
	of, seen := classes(t), map[string]bool{}
	for _, b := range list {
		if _, err := b.Resolve(of, dim.Length{}, dim.Length{}); err != nil {
			t.Errorf("%s: %v", b.Address, err)
		}
		if _, err := reg.Find(b.Material); err != nil {
			t.Errorf("%s: %v", b.Address, err)
		}
		if !b.ToBuy || b.Source == "" || seen[b.Code] {
			t.Errorf("%s: %+v", b.Address, b)
		}
		seen[b.Code] = true
	}
	// ISO 2795:1991 Table 1 has a 3 x 6 and a thin 3 x 5, both 3 and 4 long.
	for _, code := range []string{"sintered plain 3 x 6 x 4 mm", "sintered plain thin 3 x 5 x 3 mm", "inch porous plain 1/8 x 3/16 x 1/4 in"} {
		if !seen[code] {
			t.Errorf("no %s among %d bushes", code, len(list))
		}
	}
}

// A spoilt table is refused with its line, never read as something else.
func TestSpoiltSeries(t *testing.T) {
	const head = "series,material,unit,bore,bore_class,bore_low_thou,bore_high_thou,od,od_class,od_low_thou,od_high_thou,lengths,source\n"
	for say, row := range map[string]string{
		"neither mm nor in": "x,bronze,furlong,3,F7,,,6,s7,,,4,mine",
		"bore":              "x,bronze,mm,three,F7,,,6,s7,,,4,mine",
		"there is no class": "x,bronze,mm,3,F7,,,6,,,,4,mine",
		"no span":           "x,bronze,mm,3,F7,,,6,,3,2,4,mine",
		"lengths":           "x,bronze,mm,3,F7,,,6,s7,,,4;,mine",
		"source":            "x,bronze,mm,3,F7,,,6,s7,,,4,",
	} {
		lib := table.BuiltIn()
		tab, err := table.Parse("bush_series", "shop", []byte(head+row+"\n"))
		if err != nil {
			t.Fatal(err)
		}
		if err := lib.Replace(tab); err != nil {
			t.Fatal(err)
		}
		if _, err := stock.Series(lib); err == nil || !strings.Contains(err.Error(), say) || !strings.Contains(err.Error(), "bush_series:2") {
			t.Errorf("%s: %v; want %q and its line", row, err, say)
		}
	}
}

// What is measured worse is never known better, and no wall is below zero.
func TestWider(t *testing.T) {
	of := classes(t)
	rapid.Check(t, func(t *rapid.T) {
		um := func(name string, lo, hi int64) dim.Length {
			return dim.OfUm(decimal.NewFromInt(rapid.Int64Range(lo, hi).Draw(t, name)))
		}
		b := stock.Bush{Code: "x", Bore: stock.Size{Nominal: um("bore", 500, 12000), Measured: true}, OD: stock.Size{Nominal: um("od", 500, 14000), Measured: true}}
		u := um("u", 0, 50)
		fine, err := b.Resolve(of, dim.Length{}, dim.Length{})
		rough, err2 := b.Resolve(of, u, u)
		if err2 == nil && err != nil {
			t.Fatalf("refused when known well: %v", err)
		}
		if err2 != nil {
			return
		}
		if fine.WallMin.Less(rough.WallMin) || rough.WallMin.Sign() <= 0 || rough.WallMax.Less(fine.WallMax) {
			t.Fatalf("%+v %+v", fine, rough)
		}
	})
}
