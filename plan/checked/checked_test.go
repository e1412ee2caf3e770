package checked_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"rebush/fits/table"
	"rebush/plan/checked"
	"rebush/testdata"
	"rebush/testdata/checks"
)

func printed(t *testing.T) []checked.Figure {
	t.Helper()
	figures, err := checked.Printed(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	return figures
}

// TestPrinted: every row of testdata/checks gives a figure, and all agree.
func TestPrinted(t *testing.T) {
	rows := map[string]int{}
	for _, f := range printed(t) {
		rows[f.File+" "+f.ID]++
		if !f.Agrees() {
			t.Error(f)
		}
		if f.Source == "" || f.What == "" || f.Inputs == "" {
			t.Errorf("nothing says what or where: %v", f)
		}
	}
	want := 0
	for _, name := range testdata.Files(t, "checks") {
		want += len(testdata.Rows[checked.Row](t, name))
	}
	if len(rows) != want {
		t.Errorf("%d rows are worked out, %d are carried", len(rows), want)
	}
}

// TestAnotherFigureDisagrees: had another figure been printed, by half as much
// again as its tolerance or by one in its last digit, no check would agree.
func TestAnotherFigureDisagrees(t *testing.T) {
	for _, f := range printed(t) {
		want, err := strconv.ParseFloat(f.Expected, 64)
		if err != nil {
			t.Fatalf("%v: %v", f, err)
		}
		_, places, _ := strings.Cut(f.Expected, ".")
		off := math.Pow(10, -float64(len(places)))
		tol := f.Tolerance
		if _, above, two := strings.Cut(tol, "/"); two {
			tol = above
		}
		if tol, percent := strings.CutSuffix(tol, "%"); percent {
			v, _ := strconv.ParseFloat(tol, 64)
			off = math.Abs(v / 100 * want)
		} else if v, _ := strconv.ParseFloat(tol, 64); v > 0 {
			off = v
		}
		for _, moved := range []float64{want + 2.5*off, want - 2.5*off} {
			g := f
			g.Expected = strconv.FormatFloat(moved, 'f', -1, 64)
			if g.Agrees() {
				t.Errorf("agrees with %s as well: %v", g.Expected, f)
			}
		}
	}
}

// TestSeededRow: a wrong figure in the file of one row makes that row disagree
// and no other; a row that nobody understands does too.
func TestSeededRow(t *testing.T) {
	for name, c := range map[string]struct{ column, old, wrong, id string }{
		"fits.csv":     {"expected", "15", "16", "FIT-001"},
		"mesh.csv":     {"expected", "26.0888", "26.0890", "mesh-002"},
		"pressfit.csv": {"expected", "53.3", "53.6", "PF-TB-BRZ-p"},
		"circles.csv":  {"answer_r", "4.911302", "4.911303", "C01-pratt"},
		"tables.csv":   {"expected", "0.51", "0.52", "TAB-PIN-XX"},
		"reaming.csv":  {"high_mm_or_factor", "0.008", "0.009", "reaming:2"},
	} {
		data, err := checks.Files.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(strings.NewReader(string(data))).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		set := func(v string) {
			for i, r := range rows {
				if i > 0 && (r[0] == c.id || c.id == fmt.Sprintf("reaming:%d", i+1)) {
					for k, column := range rows[0] {
						if column == c.column {
							r[k] = v
						}
					}
				}
			}
		}
		for _, v := range []string{c.wrong, "", "much", c.old} {
			set(v)
			var b strings.Builder
			if err := csv.NewWriter(&b).WriteAll(rows); err != nil {
				t.Fatal(err)
			}
			apart := map[string]bool{}
			figures, err := checked.In(fstest.MapFS{name: {Data: []byte(b.String())}}, table.BuiltIn())
			if err != nil {
				t.Fatal(err)
			}
			for _, f := range figures {
				if !f.Agrees() {
					apart[f.ID] = true
				}
			}
			empty := v == "" && name == "circles.csv" // which was not printed then
			if want := v != c.old && !empty; apart[c.id] != want || len(apart) > 1 || len(apart) == 1 && !want {
				t.Errorf("%s with %q for %s: disagree %v", name, v, c.old, apart)
			}
		}
	}
}

// TestOddRows: what nobody understands never agrees, and says why.
func TestOddRows(t *testing.T) {
	for _, c := range []struct {
		file, want string
		row        checked.Row
	}{
		{"other.csv", "nothing works out", checked.Row{"expected": "0"}},
		{"fits.csv", "nominal_mm", checked.Row{"quantity": "upper", "inputs": "class=H7", "expected": "0"}},
		{"fits.csv", "", checked.Row{"inputs": "nominal_in=x; fit=RC1", "expected": "0"}},
		{"mesh.csv", "no answer", checked.Row{"quantity": "weight", "expected": "0"}},
		{"mesh.csv", "gives no z1", checked.Row{"quantity": "standard centre distance", "inputs": "m=1", "expected": "0"}},
		{"mesh.csv", "no point", checked.Row{"quantity": "present centre distance, spur mate at M, axle at P",
			"inputs": "M=(1,y);P=(0,0)", "expected": "0"}},
		{"pressfit.csv", "", checked.Row{"quantity": "interface pressure", "inputs": "d=0", "expected": "0"}},
		{"circles.csv", "no fit", checked.Row{"answer_method": "by eye", "answer_x": "0", "points": "1 2"}},
		{"circles.csv", "", checked.Row{"answer_method": "kasa", "answer_x": "0", "points": "1 b"}},
		{"reaming.csv", "no answer", checked.Row{"quantity": "flutes", "d_over_mm": "3", "d_to_mm": "6"}},
		{"tables.csv", "no row of", checked.Row{"table": "pin_classes", "where": "class=Q", "column": "tolerance_mm",
			"times": "1", "expected": "0"}},
		{"tables.csv", "no figure", checked.Row{"table": "pin_classes", "where": "class=ZZ", "column": "class",
			"times": "1", "expected": "0"}},
		{"tables.csv", "", checked.Row{"table": "nothing", "expected": "0"}},
		{"reaming.csv", "", checked.Row{"quantity": "drill_diameter_minus_tolerance_h8", "d_to_mm": "six"}},
	} {
		figures := checked.Of(c.file, []checked.Row{c.row}, table.BuiltIn())
		if len(figures) == 0 {
			t.Errorf("%s %v: nothing", c.file, c.row)
		}
		bad := false
		for _, f := range figures {
			bad = bad || f.Why != "" && !f.Agrees() && strings.Contains(f.Why, c.want)
		}
		if !bad {
			t.Errorf("%s %v: %v, want %q", c.file, c.row, figures, c.want)
		}
	}
}
