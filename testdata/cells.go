package testdata

import (
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rebush/fits/table"
)

// Cells writes out every cell of a table, a line for each row: what stands in
// it, and of the source and of the words at the head a sum that any change of
// theirs changes.
func Cells(tab *table.Table) string {
	sum := func(s string) string { return fmt.Sprintf("%x", sha256.Sum256([]byte(s)))[:8] }
	var b strings.Builder
	fmt.Fprintf(&b, "head %s\n%s\n", sum(tab.About), strings.Join(tab.Columns, " | "))
	for _, r := range tab.Rows {
		cells := make([]string, len(tab.Columns))
		for i, c := range tab.Columns {
			cells[i] = r.Get(c)
			if c == "source" {
				cells[i] = "source " + sum(cells[i])
			}
		}
		b.WriteString(strings.TrimRight(strings.Join(cells, " | "), " ") + "\n")
	}
	return b.String()
}

// HoldCells holds every cell of a table to dir/NAME.txt, or writes that anew.
// It names the first line that differs.
func HoldCells(t *testing.T, dir string, tab *table.Table, update bool) {
	t.Helper()
	name, got := filepath.Join(dir, tab.Name+".txt"), Cells(tab)
	if update {
		if err := os.WriteFile(name, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	data, err := os.ReadFile(name)
	if err != nil {
		t.Errorf("%v: is the table new? go test -run Cells -update", err)
		return
	}
	have, want := strings.Split(got, "\n"), strings.Split(string(data), "\n")
	for i := range max(len(have), len(want)) {
		h, w := "no line", "no line"
		if i < len(have) {
			h = have[i]
		}
		if i < len(want) {
			w = want[i]
		}
		if h != w {
			t.Errorf("%s: a cell is another one than %s:%d has. If it is meant, say why in the commit and write it "+
				"anew with -update.\n the table: %s\n that file: %s", tab.Name, name, i+1, h, w)
			return
		}
	}
}
