package table_test

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rebush/fits/table"
	"rebush/testdata"
)

var update = flag.Bool("update", false, "write the cells of the tables anew")

const cellsDir = "../../testdata/tables"

// TestCells holds every cell of every built-in table to what it was when
// somebody last looked at it. That proves no figure: it is here since most
// tables have cells that no law and no second source binds, and a slip of the
// hand in one of them would otherwise be seen by nobody.
func TestCells(t *testing.T) {
	lib := table.BuiltIn()
	known := map[string]bool{}
	for _, name := range table.Names() {
		tab, err := lib.Get(name)
		if err != nil {
			t.Fatal(err)
		}
		known[name] = true
		testdata.HoldCells(t, cellsDir, tab, *update)
	}
	files, err := filepath.Glob(cellsDir + "/*.txt")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if name := strings.TrimSuffix(filepath.Base(f), ".txt"); !known[name] {
			t.Errorf("%s: there is no such table", f)
		}
	}
}

// TestCellsSeeEveryChange: a change of any one cell of a small table, of the
// words at its head, of a name of a column, or a row more or less changes what
// is held.
func TestCellsSeeEveryChange(t *testing.T) {
	const text = "# what it is\na,b,source\n1,x,book 1\n2,y,book 2\n"
	cells := func(s string) string {
		tab, err := table.Parse("small", "small.csv", []byte(s))
		if err != nil {
			t.Fatal(err)
		}
		return testdata.Cells(tab)
	}
	was := cells(text)
	for _, c := range [][2]string{{"what", "that"}, {"a,", "c,"}, {"1,", "11,"}, {"x", ""}, {"book 1", "book 3"},
		{"y", "z"},
		{"2,y,book 2\n", ""}, {"book 2\n", "book 2\n3,z,book\n"}} {
		if cells(strings.Replace(text, c[0], c[1], 1)) == was {
			t.Errorf("%q for %q is not seen", c[1], c[0])
		}
	}
}

// TestEveryTableIsHeld: testdata/README.md says of each table what holds it, and
// of none that is not there.
func TestEveryTableIsHeld(t *testing.T) {
	text, err := os.ReadFile("../../testdata/README.md")
	if err != nil {
		t.Fatal(err)
	}
	named := map[string]bool{}
	_, part, _ := strings.Cut(string(text), "## What holds each table")
	part, _, _ = strings.Cut(part, "\n## ")
	for _, line := range strings.Split(part, "\n") {
		if first, _, ok := strings.Cut(strings.TrimPrefix(line, "| "), " |"); ok && strings.HasPrefix(first, "`") {
			for _, n := range strings.Split(first, ", ") {
				named[strings.Trim(n, "`")] = true
			}
		}
	}
	have := table.Names()
	files, err := filepath.Glob("../../plan/job/data/*.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		have = append(have, strings.TrimSuffix(filepath.Base(f), ".csv"))
	}
	for _, n := range have {
		if !named[n] {
			t.Errorf("testdata/README.md does not say what holds %s", n)
		}
	}
	if len(named) != len(have) {
		t.Errorf("%d tables are named, there are %d", len(named), len(have))
	}
}
