// Package testdata hands the tests of every room the figures that their work
// is held against. The folder says of what kind a figure is: checks, printed
// by somebody outside; remembered, printed but written down from memory;
// transcription, rows of the tables of the program copied a second time; own,
// worked out or made up here. README.md beside this file says more.
package testdata

import (
	"embed"
	"path"
	"testing"

	"rebush/fits/table"
)

//go:embed checks/*.csv remembered/*.csv transcription/*.csv own/*.csv
var files embed.FS

// Kinds are the folders, in the order of how much they prove.
var Kinds = []string{"checks", "remembered", "transcription", "own"}

// Files are the names of the files of a kind, "checks/fits.csv".
func Files(t testing.TB, kind string) []string {
	t.Helper()
	names, err := files.ReadDir(kind)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, e := range names {
		out = append(out, path.Join(kind, e.Name()))
	}
	return out
}

// Rows reads one of the files, "checks/fits.csv", each row by the names of its
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

// All reads the file of that name, "mesh.csv", in every folder that has one,
// but for transcription, and puts the rows one after another.
func All[Row ~map[string]string](t testing.TB, name string) []Row {
	t.Helper()
	var out []Row
	for _, kind := range Kinds {
		if _, err := files.Open(path.Join(kind, name)); kind == "transcription" || err != nil {
			continue
		}
		out = append(out, Rows[Row](t, path.Join(kind, name))...)
	}
	if len(out) == 0 {
		t.Fatalf("no folder has %s", name)
	}
	return out
}
