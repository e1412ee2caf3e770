package drills

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"rebush/fits/dim"
	"rebush/fits/table"
	"rebush/testdata"
)

func builtIn(t testing.TB) *Drills {
	t.Helper()
	d, err := New(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	return d
}

var inFile = map[string]Series{
	"number": Number, "letter": Letter, "fraction": Fraction, "metric": Metric,
	"reamer_machine_metric": MachineReamer, "reamer_hand_metric": HandReamer, "reamer_chucking_inch": InchReamer,
}

// TestTranscriptionSizes is a transcription check: it reaches every row of the
// copied tables by its name, metric rows exact in mm and inch to five places,
// inch rows exact in inch with mm following from 25.4. A wrong size copied
// twice it does not see; .ci/drills holds the number and letter drills against
// a source of another hand.
func TestTranscriptionSizes(t *testing.T) {
	d := builtIn(t)
	count := map[Series]int{}
	for _, r := range testdata.Rows[map[string]string](t, "transcription/drills.csv") {
		series, name, inch, mm := inFile[r["series"]], r["name"], r["inch"], r["mm"]
		count[series]++
		got, ok := d.ByName(series, name)
		if !ok {
			t.Errorf("%s %s: not found", r["series"], name)
			continue
		}
		exactMM := decimal.RequireFromString(mm)
		if strings.HasSuffix(r["series"], "metric") {
			if rounded := decimal.RequireFromString(inch); got.Size.StringInch(5) != rounded.StringFixed(5) {
				t.Errorf("%s %s: %s in, copied %s", r["series"], name, got.Size.StringInch(5), inch)
			}
		} else if byInch := dim.OfInch(decimal.RequireFromString(inch)); !got.Size.Equal(byInch) {
			t.Errorf("%s %s: %s, copied %s in", r["series"], name, got.Size, inch)
		}
		if !got.Size.MM().Equal(exactMM) {
			t.Errorf("%s %s: %s, copied %s mm", r["series"], name, got.Size, mm)
		}
		if series == MachineReamer || series == HandReamer || series == InchReamer {
			continue
		}
		readings, err := d.Lookup(name, dim.MM)
		if err != nil || len(readings) != 1 || readings[0].Drill == nil || readings[0].Drill.Name != got.Name {
			t.Errorf("Lookup(%q) = %+v, %v; want %s", name, readings, err, got.Name)
		}
	}
	for series := range tables {
		if n := len(d.All(series)); n != count[series] || n == 0 {
			t.Errorf("%s: %d sizes, the copy has %d", series, n, count[series])
		}
	}
}

// TestMetricRule: 0.2-0.98 in steps ending 0, 2, 5, 8; 1.0-2.95 by 0.05;
// 3.0-13.9 by 0.1; 14-25 by 0.25 (BS 328 as given at
// en.wikipedia.org/wiki/Drill_bit_sizes).
func TestMetricRule(t *testing.T) {
	d := builtIn(t)
	var want []int64
	for h := int64(20); h <= 2500; h++ {
		last := h % 10
		switch {
		case h < 100 && (last == 0 || last == 2 || last == 5 || last == 8),
			h >= 100 && h < 300 && h%5 == 0, h >= 300 && h < 1400 && h%10 == 0, h >= 1400 && h%25 == 0:
			want = append(want, h)
		}
	}
	var got []int64
	for _, x := range d.All(Metric) {
		got = append(got, x.Size.MM().Shift(2).IntPart())
	}
	if diff := cmp.Diff(want, got); diff != "" || len(got) != 227 {
		t.Errorf("%d sizes (-want +got)\n%s", len(got), diff)
	}
}

func TestLookup(t *testing.T) {
	d := builtIn(t)
	for _, c := range []struct {
		text string
		want []string // reading, then names of the same size
	}{
		{"#31", []string{"number drill #31: #31"}},
		{"no 31", []string{"number drill #31: #31"}},
		{"31", []string{"number drill #31: #31", "size 31 mm: "}},
		{"5", []string{"number drill #5: #5", "size 5 mm: 5.00 mm"}},
		{"5.0", []string{"size 5 mm: 5.00 mm"}},
		{"100", []string{"size 100 mm: "}},
		{"0", []string{"size 0 mm: "}},
		{"F", []string{"letter drill F: F"}},
		{"e", []string{"letter drill E: E, 1/4 in"}}, // both are 0.2500 in
		{"1/4", []string{"fraction drill 1/4 in: E, 1/4 in"}},
		{"0.25 in", []string{"fraction drill 1/4 in: E, 1/4 in"}},
		{"1/8", []string{"fraction drill 1/8 in: 1/8 in"}},
		{"3.2", []string{"size 3.2 mm: 3.20 mm"}},
		{"0.126 in", []string{"size 3.2004 mm: "}},
	} {
		readings, err := d.Lookup(c.text, dim.MM)
		var got []string
		for _, r := range readings {
			var names []string
			for _, x := range r.Same {
				names = append(names, x.Name)
			}
			got = append(got, r.As+": "+strings.Join(names, ", "))
		}
		if diff := cmp.Diff(c.want, got); diff != "" || err != nil {
			t.Errorf("%q: %v (-want +got)\n%s", c.text, err, diff)
		}
	}
	if _, err := d.Lookup("#98", dim.MM); err == nil {
		t.Error("there is no #98")
	}
}

func TestNear(t *testing.T) {
	d := builtIn(t)
	got := map[Series][3]string{}
	name := func(x *Drill) string {
		if x == nil {
			return ""
		}
		return x.Name
	}
	for _, n := range d.Near(dim.Must("4.8")) {
		got[n.Series] = [3]string{name(n.Below), name(n.At), name(n.Above)}
	}
	want := map[Series][3]string{
		Number: {"#13", "", "#12"}, // #12 is 4.8006 mm
		Letter: {"", "", "A"}, Fraction: {"3/16 in", "", "13/64 in"}, Metric: {"4.70 mm", "4.80 mm", "4.90 mm"},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	if n := d.Near(dim.Must("4.99"), MachineReamer); len(n) != 1 || name(n[0].Above) != "5 mm" || name(n[0].Below) != "4.5 mm" {
		t.Errorf("%+v", n)
	}
	if n := d.Near(dim.Length{}); n != nil {
		t.Errorf("near nothing: %v", n)
	}
}

func TestNearSurrounds(t *testing.T) {
	d := builtIn(t)
	rapid.Check(t, func(t *rapid.T) {
		size := dim.OfUm(decimal.NewFromInt(rapid.Int64Range(0, 30000).Draw(t, "um")))
		for _, n := range d.Near(size) {
			inside := 0
			for _, x := range d.All(n.Series) {
				if n.Below != nil && n.Below.Size.Less(x.Size) && x.Size.Less(size) || n.Above != nil && size.Less(x.Size) && x.Size.Less(n.Above.Size) {
					inside++
				}
			}
			if inside > 0 || n.Below != nil && !n.Below.Size.Less(size) || n.Above != nil && !size.Less(n.Above.Size) || n.At != nil && !n.At.Size.Equal(size) {
				t.Fatalf("%s in %s: %+v", size, n.Series, n)
			}
			if n.Below == nil && n.At == nil && n.Above == nil {
				t.Fatalf("%s in %s: nothing", size, n.Series)
			}
		}
	})
}

func TestEverySizeIsNamedAndSourced(t *testing.T) {
	d := builtIn(t)
	for _, name := range tables {
		tab, err := table.BuiltIn().Get(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range tab.Rows {
			if row.Source() == "" {
				t.Errorf("%s: no source", row.Address())
			}
		}
	}
	for s := range tables {
		for i, x := range d.All(s) {
			if i > 0 && !d.All(s)[i-1].Size.Less(x.Size) {
				t.Errorf("%s is no larger than the one before", x.Source)
			}
		}
	}
}

func TestShopTableIsChecked(t *testing.T) {
	for _, data := range []string{
		"size,unit,name,source\nlarge,in,#1,x\n", "size,unit,name,source\n3,ell,#1,x\n",
		"size,unit,name,source\n-3,mm,#1,x\n", "size,unit,name,source\n3,mm,,x\n",
	} {
		tab, err := table.Parse("drills_number", "mine.csv", []byte(data))
		if err != nil {
			t.Fatal(err)
		}
		lib := table.BuiltIn()
		if err := lib.Replace(tab); err != nil {
			t.Fatal(err)
		}
		if _, err := New(lib); err == nil || !strings.Contains(err.Error(), "drills_number:2") {
			t.Errorf("%q: %v", data, err)
		}
	}
}
