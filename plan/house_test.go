package plan_test

import (
	"bytes"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
)

// The house is the layout of the project: which rooms there are, which way
// imports point, what may lie at the top. Its rules stand in
// house_arrows_test.go and house_text_test.go and are told in DEVELOPERS.md.

// home is the project as it lies on the disk.
func home(t *testing.T) fs.FS {
	t.Helper()
	root := os.DirFS("..")
	if _, err := fs.Stat(root, "go.mod"); err != nil {
		t.Fatalf("the folder above is not the project: %v", err)
	}
	return root
}

func TestHouseImportsPointDown(t *testing.T) {
	files := goFiles(t, home(t))
	if len(files) < 100 {
		t.Fatalf("read %d Go files; the walk does not see the project", len(files))
	}
	for _, f := range importFaults(files) {
		t.Error(f)
	}
}

func TestHouseTopLevel(t *testing.T) {
	for _, f := range topLevelFaults(t, home(t)) {
		t.Error(f)
	}
	for _, name := range topLevel {
		if _, err := fs.Stat(home(t), name); err != nil {
			t.Errorf("the top level lacks %s", name)
		}
	}
}

// TestHouseFixtures shows each rule to fail. A fixture is an archive of a few
// files that break one rule; each line "want: ..." of its head names a fault
// that must be found, and no other may be.
func TestHouseFixtures(t *testing.T) {
	names, err := filepath.Glob("../testdata/house/*.txtar")
	if err != nil || len(names) < 20 {
		t.Fatalf("%d fixtures: %v", len(names), err)
	}
	for _, name := range names {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
			data, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			want, root := fixture(string(data))
			if len(root) == 0 {
				t.Fatal("the fixture holds no file")
			}
			got := append(importFaults(goFiles(t, root)), topLevelFaults(t, root)...)
			compareFaults(t, got, want)
		})
	}
}

// fixture reads an archive: a head, then files, each after a line
// "-- name --".
func fixture(archive string) (want []string, root fstest.MapFS) {
	root = fstest.MapFS{}
	var file *fstest.MapFile
	for _, line := range strings.SplitAfter(archive, "\n") {
		if name, ok := strings.CutPrefix(strings.TrimSpace(line), "-- "); ok && strings.HasSuffix(name, " --") {
			file = &fstest.MapFile{}
			root[strings.TrimSuffix(name, " --")] = file
		} else if file != nil {
			file.Data = append(file.Data, line...)
		} else if w, ok := strings.CutPrefix(line, "want: "); ok {
			want = append(want, strings.TrimSpace(w))
		}
	}
	return want, root
}

func compareFaults(t *testing.T, got, want []string) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%d faults, want %d", len(got), len(want))
	}
	for i := 0; i < len(got) || i < len(want); i++ {
		switch {
		case i >= len(want):
			t.Errorf("found and not wanted: %s", got[i])
		case i >= len(got):
			t.Errorf("wanted and not found: %s", want[i])
		case got[i] != want[i]:
			t.Errorf("fault %d:\n got %s\nwant %s", i, got[i], want[i])
		}
	}
}

// topLevel is what lies at the top beside dot files, and nothing else does.
var topLevel = []string{
	"cmd", "plan", "fits", "feeds", "sheets", "testdata",
	"go.mod", "go.sum", "README.md", "DEVELOPERS.md", "LICENSE",
}

// topLevelFaults names what lies at the top and has no place there. What
// .gitignore names is a product, such as the sheet of the first command.
func topLevelFaults(t *testing.T, root fs.FS) []string {
	t.Helper()
	entries, err := fs.ReadDir(root, ".")
	if err != nil {
		t.Fatal(err)
	}
	ignored := readIgnored(root)
	var out []string
	for _, e := range entries {
		if !contains(topLevel, e.Name()) && !strings.HasPrefix(e.Name(), ".") && !ignored.match(e.Name()) {
			out = append(out, e.Name()+" does not belong at the top level")
		}
	}
	return out
}

// ignoreList holds the patterns of .gitignore: "/name" is anchored at the top,
// a bare "name" matches the last element anywhere, "!" takes a match back.
type ignoreList []string

func readIgnored(root fs.FS) ignoreList {
	data, err := fs.ReadFile(root, ".gitignore")
	if err != nil {
		return nil
	}
	var out ignoreList
	for _, line := range bytes.Split(data, []byte("\n")) {
		if s := strings.TrimSpace(string(line)); s != "" && !strings.HasPrefix(s, "#") {
			out = append(out, s)
		}
	}
	return out
}

func (l ignoreList) match(name string) bool {
	ignored := false
	for _, p := range l {
		p, back := strings.CutPrefix(p, "!")
		p = strings.TrimSuffix(p, "/")
		subject := path.Base(name)
		if strings.Contains(p, "/") {
			p, subject = strings.TrimPrefix(p, "/"), name
		}
		if ok, err := path.Match(p, subject); err == nil && ok {
			ignored = !back
		}
	}
	return ignored
}

func contains(list []string, s string) bool {
	for _, l := range list {
		if l == s {
			return true
		}
	}
	return false
}
