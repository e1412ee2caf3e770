package plan_test

import (
	"bytes"
	"fmt"
	"io/fs"
	"path"
	"strings"
	"testing"
	"testing/fstest"

	"rebush/fits/table"
)

// longest is how many lines a Go file may have before it needs a reason in
// testdata/house/long-files.txt.
const longest = 400

// walkFiles hands over every file that git would keep.
func walkFiles(t *testing.T, root fs.FS, see func(name string, data []byte)) {
	t.Helper()
	ignored := readIgnored(root)
	err := fs.WalkDir(root, ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if name == ".git" || name != "." && ignored.match(name) {
			if e.IsDir() {
				return fs.SkipDir
			}
			return nil
		}
		if e.IsDir() {
			return nil
		}
		data, err := fs.ReadFile(root, name)
		if err == nil {
			see(name, data)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

func TestHouseTablesHaveSources(t *testing.T) {
	lib := table.BuiltIn()
	for _, name := range table.Names() {
		tab, err := lib.Get(name)
		if err != nil {
			t.Error(err)
			continue
		}
		for _, f := range sourceFaults(tab) {
			t.Error(f)
		}
	}
}

func TestHouseFindsRowWithoutSource(t *testing.T) {
	for _, c := range []struct {
		name, csv string
		want      []string
	}{
		{"each row", "# About.\na,source\n1,handbook 31st ed.\n2,from memory\n", nil},
		{"head", "# Source: handbook 31st ed., table 5.\na\n1\n", nil},
		{"one row without", "# About.\na,source\n1,handbook 31st ed.\n2,\n", []string{"t:4: no source"}},
		{"no column", "# About.\na\n1\n", []string{"t: neither a source column nor \"Source:\" in the head"}},
		{"no row", "# About.\na,source\n", []string{"t: no rows"}},
		{"no head", "a,source\n1,handbook\n", []string{"t: no comment at the head says what the table is"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			tab, err := table.Parse("t", "test", []byte(c.csv))
			if err != nil {
				t.Fatal(err)
			}
			compareFaults(t, sourceFaults(tab), c.want)
		})
	}
}

func sourceFaults(tab *table.Table) []string {
	var out []string
	if tab.About == "" {
		out = append(out, tab.Name+": no comment at the head says what the table is")
	}
	if len(tab.Rows) == 0 {
		out = append(out, tab.Name+": no rows")
	}
	if strings.Contains(tab.About, "Source:") {
		return out
	}
	if !contains(tab.Columns, "source") {
		return append(out, tab.Name+": neither a source column nor \"Source:\" in the head")
	}
	for _, row := range tab.Rows {
		if row.Source() == "" {
			out = append(out, row.Address()+": no source")
		}
	}
	return out
}

func TestHouseLongFilesHaveReasons(t *testing.T) {
	for _, f := range longFaults(t, home(t)) {
		t.Error(f)
	}
}

func TestHouseFindsLongFile(t *testing.T) {
	long := &fstest.MapFile{Data: []byte(strings.Repeat("//\n", longest+1))}
	root := fstest.MapFS{
		"plan/a.go": long,
		"plan/b.go": long,
		"plan/c.go": long,
		"plan/d.go": {Data: []byte(strings.Repeat("//\n", longest))},
		"testdata/house/long-files.txt": {Data: []byte(
			"# path, then the reason\nplan/b.go one table of cases\nplan/c.go\nplan/gone.go moved\n")},
	}
	compareFaults(t, longFaults(t, root), []string{
		"plan/a.go: 401 lines and no reason in long-files.txt",
		"plan/c.go: 401 lines and no reason in long-files.txt",
		"long-files.txt names plan/gone.go, which is not there",
	})
}

// longFaults names Go files over the limit without a reason, and reasons that
// have no file.
func longFaults(t *testing.T, root fs.FS) []string {
	t.Helper()
	reasons := map[string]string{}
	var listed []string
	if data, err := fs.ReadFile(root, "testdata/house/long-files.txt"); err == nil {
		for _, line := range strings.Split(string(data), "\n") {
			if name, why, _ := strings.Cut(line, " "); name != "" && name != "#" {
				reasons[name] = strings.TrimSpace(why)
				listed = append(listed, name)
			}
		}
	}
	var out []string
	seen := map[string]bool{}
	walkFiles(t, root, func(name string, data []byte) {
		if path.Ext(name) != ".go" {
			return
		}
		seen[name] = true
		if n := bytes.Count(data, []byte("\n")); n > longest && reasons[name] == "" {
			out = append(out, fmt.Sprintf("%s: %d lines and no reason in long-files.txt", name, n))
		}
	})
	for _, name := range listed {
		if !seen[name] {
			out = append(out, "long-files.txt names "+name+", which is not there")
		}
	}
	return out
}
