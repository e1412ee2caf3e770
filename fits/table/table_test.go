package table_test

import (
	"math"
	"strings"
	"testing"

	"rebush/fits/table"
)

// TestBuiltInTables reads every embedded table: it has rows, no row is short,
// and every row has a source of its own or the table says one at its head.
func TestBuiltInTables(t *testing.T) {
	names := table.Names()
	if len(names) < 20 {
		t.Fatalf("only %d tables", len(names))
	}
	lib := table.BuiltIn()
	for _, name := range names {
		tab, err := lib.Get(name)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if len(tab.Rows) == 0 || tab.From != "built in" {
			t.Errorf("%s: %d rows from %q", name, len(tab.Rows), tab.From)
		}
		for _, r := range tab.Rows {
			if r.Source() == "" && !strings.Contains(strings.ToLower(tab.About), "source") {
				t.Errorf("%s has no source", r.Address())
			}
		}
	}
	if _, err := lib.Get("nothing"); err == nil || !strings.Contains(err.Error(), "rules") {
		t.Errorf("an unknown table gives %v", err)
	}
}

func TestParse(t *testing.T) {
	tab, err := table.Parse("mine", "mine.csv",
		[]byte("# what it is\n# and whence\nname,mm,source\n#31,3.048,\"a, b\"\n 5 , 5.0 ,x\n"))
	if err != nil {
		t.Fatal(err)
	}
	if len(tab.Rows) != 2 || tab.About != "what it is and whence" {
		t.Fatalf("%d rows, about %q", len(tab.Rows), tab.About)
	}
	r := tab.Rows[0]
	if r.Get("name") != "#31" || r.Get("mm") != "3.048" || r.Source() != "a, b" || r.Address() != "mine:4" ||
		r.Get("inch") != "" {
		t.Errorf("row is %q %q %q at %s", r.Get("name"), r.Get("mm"), r.Source(), r.Address())
	}
	if tab.Rows[1].Get("name") != "5" {
		t.Errorf("cells are not trimmed: %q", tab.Rows[1].Get("name"))
	}
	for text, want := range map[string]string{
		"":                "no line names the columns",
		"# only this\n":   "no line names the columns",
		"a,a\n1,2\n":      "stands twice",
		"# x\na,b\n1\n":   "mine.csv:3: 1 cells; the head line names 2 columns",
		"# x\na,b\n\"1\n": "mine.csv:3",
	} {
		if _, err := table.Parse("mine", "mine.csv", []byte(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q gives %v, want %q", text, err, want)
		}
	}
}

func TestReplace(t *testing.T) {
	lib := table.BuiltIn()
	mine, err := table.Parse("pin_classes", "mine.csv", []byte("class,tolerance_mm,source\nZZ,0.004,own measurement\n"))
	if err != nil {
		t.Fatal(err)
	}
	if err := lib.Replace(mine); err != nil {
		t.Fatal(err)
	}
	got, err := lib.Get("pin_classes")
	if err != nil || len(got.Rows) != 1 || got.From != "mine.csv" {
		t.Errorf("got %+v, %v", got, err)
	}
	if names := lib.Replaced(); len(names) != 1 || names[0] != "pin_classes" {
		t.Errorf("replaced %v", names)
	}
	short, _ := table.Parse("pin_classes", "short.csv", []byte("class,source\nZZ,x\n"))
	if err := lib.Replace(short); err == nil || !strings.Contains(err.Error(), `no column "tolerance_mm"`) {
		t.Errorf("a table without a column gives %v", err)
	}
	other, _ := table.Parse("nothing", "x.csv", []byte("a\n1\n"))
	if err := lib.Replace(other); err == nil {
		t.Error("a table of no known name was taken")
	}
}

func TestRules(t *testing.T) {
	rules, err := table.ReadRules(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	if lo, hi := rules.Pair("clearance_aim_um"); lo != 15 || hi != 45 {
		t.Errorf("aim %v to %v", lo, hi)
	}
	nan := rules.Get("cleanup_mm").High
	if err := rules.Set("clearance_aim_um", 20, 40, "shop.yaml:9"); err != nil {
		t.Error(err)
	}
	if r := rules.Get("clearance_aim_um"); r.Low != 20 || !r.Shop || r.Source != "shop.yaml:9" {
		t.Errorf("rule is %+v", r)
	}
	for _, c := range []struct {
		name    string
		lo, hi  float64
		problem string
	}{
		{"nothing", 1, nan, "no rule"},
		{"clearance_aim_um", 20, nan, "two figures"},
		{"cleanup_mm", 0.01, 0.02, "one figure"},
		{"clearance_aim_um", 40, 20, "above"},
	} {
		if err := rules.Set(c.name, c.lo, c.hi, "x"); err == nil || !strings.Contains(err.Error(), c.problem) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	for _, n := range rules.Names() {
		if r := rules.Get(n); r.What == "" || r.Unit == "" || r.Source == "" {
			t.Errorf("%s lacks words, unit or source", r.Address)
		}
	}
}

// TestOlderRuleName: a rule is set, and stands in a shop's own table of rules,
// under the name it had before too.
func TestOlderRuleName(t *testing.T) {
	lib := table.BuiltIn()
	own, err := lib.Get("rules")
	if err != nil {
		t.Fatal(err)
	}
	text := "# About.\n" + strings.Join(own.Columns, ",") + "\nstrap_slide_um,6,31,um,,play,own\n"
	if own, err = table.Parse("rules", "own.csv", []byte(text)); err != nil {
		t.Fatal(err)
	}
	if err := lib.Replace(own); err != nil {
		t.Fatal(err)
	}
	rules, err := table.ReadRules(lib)
	if err != nil {
		t.Fatal(err)
	}
	if lo, hi := rules.Pair("cap_slide_um"); lo != 6 || hi != 31 {
		t.Errorf("read as %v to %v", lo, hi)
	}
	if err := rules.Set("strap_slide_um", 7, 32, "shop.yaml:9"); err != nil {
		t.Error(err)
	}
	if lo, hi := rules.Pair("cap_slide_um"); lo != 7 || hi != 32 {
		t.Errorf("set to %v to %v", lo, hi)
	}
}

// FuzzParse: any bytes give a table or an error, never a panic.
func FuzzParse(f *testing.F) {
	f.Add([]byte("# about\na,b,source\n1,2,x\n"))
	f.Add([]byte("\"a\nb\",c\n"))
	f.Add([]byte("#"))
	f.Fuzz(func(t *testing.T, data []byte) {
		tab, err := table.Parse("fuzz", "fuzz.csv", data)
		if err != nil {
			return
		}
		for _, r := range tab.Rows {
			for _, c := range tab.Columns {
				_ = r.Get(c)
			}
			if r.Address() == "" {
				t.Error("a row without an address")
			}
		}
	})
}

// TestFill: a field takes the figure that its tag names, micrometres as mm
// where it says so, and the second of a pair.
func TestFill(t *testing.T) {
	rules, err := table.ReadRules(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	if err := rules.Set("clearance_aim_um", 20, 40, "shop.yaml:9"); err != nil {
		t.Fatal(err)
	}
	if err := rules.Set("cleanup_mm", 0.11, math.NaN(), "shop.yaml:10"); err != nil {
		t.Fatal(err)
	}
	type inner struct {
		Low  float64 `rule:"clearance_aim_um"`
		High float64 `rule:"clearance_aim_um,high,mm"`
	}
	got := struct {
		inner
		CleanUp float64 `rule:"cleanup_mm"`
		Other   float64
	}{Other: 7}
	rules.Fill(&got)
	if got.Low != 20 || got.High != 0.04 || got.CleanUp != 0.11 || got.Other != 7 {
		t.Errorf("%+v", got)
	}
	defer func() {
		if recover() == nil {
			t.Error("a rule that is none is filled in")
		}
	}()
	rules.Fill(&struct {
		None float64 `rule:"no_such_rule"`
	}{})
}

// TestInstruments: the kinds of instrument, told by a piece of a name, each with
// a doubt that lies in what is plausible for it.
func TestInstruments(t *testing.T) {
	kinds, err := table.ReadInstruments(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{"Dial caliper 150": "calliper", "inside calliper": "inside calliper",
		"shop rule": "rule"} {
		if k := kinds.Of(name); k == nil || k.Name != want {
			t.Errorf("%s: %+v", name, k)
		}
	}
	if kinds.Of("tape") != nil {
		t.Error("a tape is of a kind")
	}
	for _, k := range kinds {
		if !(k.Least <= k.U && k.U <= k.Most) || k.Most > 25.4*k.Least && len(k.Words) > 0 && k.Least != 0.001 {
			t.Errorf("%s: %v lies not between %v and %v", k.From, k.U, k.Least, k.Most)
		}
	}
	if least, most := kinds.Plausible("tape"); least != 0.001 || most != 0.2 {
		t.Errorf("of no kind: %v to %v", least, most)
	}
}
