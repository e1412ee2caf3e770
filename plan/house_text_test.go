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

// strangers are words that no file may hold: folders of the machine that a
// file was written on, and the addresses of package servers. They are put
// together here so that this file does not hold them either.
var strangers = []string{
	"/wo" + "rk/", "/t" + "mp/", "/ro" + "ot/", "/ho" + "me/", "/Us" + "ers/",
	"proxy.go" + "lang.org", "sum.go" + "lang.org", "pkg.go" + ".dev",
	"py" + "pi.org", "python" + "hosted.org", "registry." + "npm", "npm" + "js.com",
	"crates" + ".io", "ruby" + "gems.org", "deb." + "debian.org", "maven" + ".org", "docker" + ".io",
}

func TestHouseHoldsNoForeignAddress(t *testing.T) {
	faults, read := strangerFaults(t, home(t))
	if read < 100 {
		t.Fatalf("read %d files; the walk does not see the project", read)
	}
	for _, f := range faults {
		t.Error(f)
	}
}

func TestHouseFindsForeignAddress(t *testing.T) {
	for _, word := range strangers {
		root := fstest.MapFS{
			"plan/testdata/x.yaml": {Data: []byte("a\nb " + word + "c\n")},
			".git/config":          {Data: []byte(word)},
			"page.png":             {Data: []byte("\x00" + word)},
		}
		got, _ := strangerFaults(t, root)
		compareFaults(t, got, []string{fmt.Sprintf("plan/testdata/x.yaml:2: holds %q", word)})
	}
}

// strangerFaults looks through every text file, fixtures too, less what git
// ignores; read is how many.
func strangerFaults(t *testing.T, root fs.FS) (out []string, read int) {
	t.Helper()
	walkFiles(t, root, func(name string, data []byte) {
		if bytes.IndexByte(data, 0) >= 0 {
			return
		}
		read++
		for i, line := range strings.Split(string(data), "\n") {
			for _, word := range strangers {
				if strings.Contains(line, word) {
					out = append(out, fmt.Sprintf("%s:%d: holds %q", name, i+1, word))
				}
			}
		}
	})
	return out, read
}

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
