// Package checks hands the tests of every room the published values that lie
// beside it.
package checks

import (
	"embed"
	"testing"

	"rebush/fits/table"
)

//go:embed *.csv
var files embed.FS

// Rows reads one of the files, "fits.csv", each row by the names of its
// columns. A file that cannot be read, or has no rows, fails the test: there
// would be nothing to hold the work against.
func Rows[Row ~map[string]string](t testing.TB, name string) []Row {
	t.Helper()
	data, err := files.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	tab, err := table.Parse(name, name, data)
	if err != nil {
		t.Fatal(err)
	}
	if len(tab.Rows) == 0 {
		t.Fatalf("%s: no rows", name)
	}
	out := make([]Row, len(tab.Rows))
	for i, r := range tab.Rows {
		out[i] = Row{}
		for _, c := range tab.Columns {
			out[i][c] = r.Get(c)
		}
	}
	return out
}
