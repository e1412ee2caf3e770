package plan_test

import (
	"io/fs"
	"path"
	"regexp"
	"strings"
	"testing"
)

func read(t *testing.T, name string) string {
	t.Helper()
	data, err := fs.ReadFile(home(t), name)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

var codeBlock = regexp.MustCompile("(?s)```go\n(.*?)```")

// TestDocsCompile holds the Go of DEVELOPERS.md against the examples, which
// the compiler sees and go test runs.
func TestDocsCompile(t *testing.T) {
	blocks := codeBlock.FindAllStringSubmatch(read(t, "DEVELOPERS.md"), -1)
	if len(blocks) < 3 {
		t.Fatalf("DEVELOPERS.md holds %d blocks of Go", len(blocks))
	}
	examples := strip(read(t, "plan/example_test.go"))
	for _, b := range blocks {
		if !strings.Contains(examples, strip(b[1])) {
			t.Errorf("plan/example_test.go does not hold this block of DEVELOPERS.md:\n%s", b[1])
		}
	}
}

// strip leaves the indents out.
func strip(code string) string {
	lines := strings.Split(strings.TrimSpace(code), "\n")
	for i := range lines {
		lines[i] = strings.TrimSpace(lines[i])
	}
	return strings.Join(lines, "\n")
}

// TestDocsNameRoomsAndModules: every room and every module of others has a row
// in DEVELOPERS.md, and every row of modules is one that the house lets in.
func TestDocsNameRoomsAndModules(t *testing.T) {
	doc := read(t, "DEVELOPERS.md")
	rooms := map[string]bool{}
	for _, f := range goFiles(t, home(t)) {
		rooms[path.Dir(f.name)] = true
	}
	for room := range rooms {
		if !strings.Contains(doc, "`"+room+"`") {
			t.Errorf("DEVELOPERS.md does not say what %s is for", room)
		}
	}
	let := append([]string(nil), testGuests...)
	for guest := range guests {
		let = append(let, guest)
	}
	for _, guest := range let {
		if !strings.Contains(doc, "\n| `"+guest+"` |") {
			t.Errorf("DEVELOPERS.md gives no reason for %s", guest)
		}
	}
	rows := regexp.MustCompile("(?m)^\\| `([a-z]+\\.[^`]*)` \\|").FindAllStringSubmatch(doc, -1)
	if len(rows) != len(let) {
		t.Errorf("DEVELOPERS.md has %d rows of modules, the house lets in %d", len(rows), len(let))
	}
	for _, r := range rows {
		if !contains(let, r[1]) {
			t.Errorf("DEVELOPERS.md names %s, which the house does not let in", r[1])
		}
	}
}

// TestReadmeCommands holds the two commands of the README, which .ci/run takes
// from there.
func TestReadmeCommands(t *testing.T) {
	doc := read(t, "README.md")
	for start, want := range map[string]string{
		`(?m)^go run .*$`:  "go run ./cmd/rebush sheet testdata/jobs/pellinthwaite.yaml -o pellinthwaite.pdf",
		`(?m)^go test .*$`: "go test ./...",
	} {
		found := regexp.MustCompile(start).FindAllString(doc, -1)
		if len(found) != 1 || found[0] != want {
			t.Errorf("README.md has %q, want once %q", found, want)
		}
	}
	for _, link := range regexp.MustCompile(`\]\(([^)#:]+)\)`).FindAllStringSubmatch(doc, -1) {
		if _, err := fs.Stat(home(t), link[1]); err != nil {
			t.Errorf("README.md points at %s, which is not there", link[1])
		}
	}
	if n := strings.Count(doc, "bogie"); n != 1 {
		t.Errorf("README.md says %d times that a truck is a bogie, want once", n)
	}
}
