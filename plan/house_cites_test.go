package plan_test

import (
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
)

// A derivation that code, a table or a check leans on stands in a file
// METHODS.md of the room that uses it, under a numbered heading, and is cited
// as "METHODS.md 3" from within the room or "fits/press/METHODS.md 3" from
// anywhere.
var (
	citation = regexp.MustCompile(`((?:[a-z]+/)*)METHODS\.md(?: (\d+(?:\.\d+)?)\b)?`)
	heading  = regexp.MustCompile(`(?m)^##+ (\d+(?:\.\d+)?) \S`)
	// notes are citations of papers that a reader does not have.
	notes = regexp.MustCompile(`\b(?:planning|metrology|pressfit|holemaking|mesh|fits)(?:\.md)? [1-9]\.\d\b` +
		`|\b(?:planning|metrology|pressfit|holemaking) \d+\b|\b[a-z]+\.md (?:section )?\d` +
		`|\bmethods/\w+\.md|\b(?:metrology|planning|mesh) notes\b|see the \w+ section`)
)

func TestHouseCitationsLead(t *testing.T) {
	faults, cited := citationFaults(t, home(t))
	if len(cited) < 6 {
		t.Errorf("only %d files of methods are cited: %v", len(cited), cited)
	}
	for _, f := range faults {
		t.Error(f)
	}
}

// TestHouseFindsDeadCitation shows each fault to be found.
func TestHouseFindsDeadCitation(t *testing.T) {
	m := "METHODS" + ".md"
	root := fstest.MapFS{
		"fits/press/" + m:       {Data: []byte("# Press\n\n## 1 Ring\n\n### 1.2 Edge\n\n## 5 Smoothing\n")},
		"fits/press/press.go":   {Data: []byte("package press\n\n// Source: " + m + " 1, " + m + " 1.2.\n// Source: " + m + " 4.\n// See " + m + ".\n")},
		"plan/seat/seat.go":     {Data: []byte("package seat\n\n// Source: fits/press/" + m + " 5.\n// Source: " + m + " 5.\n")},
		"fits/table/data/r.csv": {Data: []byte("a,source\n1,\"fits/press/" + m + " 1.2\"\n2,fits/pres/" + m + " 1.2\n3,fits/press/" + m + " 1.3\n")},
		"plan/notes.go":         {Data: []byte("package plan\n\n// Source: planning" + " 7.\n// the plan 7, mesh 0.05 too near\n// methods" + "/mesh.md 1\n")},
		"README.md":             {Data: []byte("The press: fits/press/" + m + ". Each room has its " + m + ".\n")},
	}
	got, cited := citationFaults(t, root)
	compareFaults(t, got, []string{
		"fits/press/press.go:4: fits/press/" + m + " has no heading 4",
		"fits/press/press.go:5: cites fits/press/" + m + " without a number",
		"fits/table/data/r.csv:3: there is no fits/pres/" + m,
		"fits/table/data/r.csv:4: fits/press/" + m + " has no heading 1.3",
		"plan/notes.go:3: \"planning" + " 7\" leads nowhere",
		"plan/notes.go:5: \"methods" + "/mesh.md\" leads nowhere",
		"plan/seat/seat.go:4: there is no plan/seat/" + m,
	})
	if len(cited) != 1 {
		t.Errorf("cited %v", cited)
	}
}

// citationFaults follows every citation of a file of methods in Go, tables and
// documents. Prose may name such a file without a number. cited are the files
// that were found by a citation that leads.
func citationFaults(t *testing.T, root fs.FS) (out []string, cited map[string]bool) {
	t.Helper()
	cited = map[string]bool{}
	walkFiles(t, root, func(name string, data []byte) {
		ext := path.Ext(name)
		if ext != ".go" && ext != ".csv" && ext != ".md" || strings.HasSuffix(name, "house_cites_test.go") {
			return
		}
		for i, line := range strings.Split(string(data), "\n") {
			say := func(format string, a ...any) {
				out = append(out, fmt.Sprintf("%s:%d: ", name, i+1)+fmt.Sprintf(format, a...))
			}
			for _, c := range citation.FindAllStringSubmatch(line, -1) {
				file, number := c[1]+"METHODS.md", c[2]
				if ext == ".md" && c[1] == "" && number == "" {
					continue // the name of such files, no one of them
				}
				if c[1] == "" {
					file = path.Join(path.Dir(name), file)
				}
				page, err := fs.ReadFile(root, file)
				switch {
				case err != nil:
					say("there is no %s", file)
				case number == "" && ext != ".md":
					say("cites %s without a number", file)
				case number != "" && !hasHeading(page, number):
					say("%s has no heading %s", file, number)
				case number != "":
					cited[file] = true
				}
			}
			for _, n := range notes.FindAllString(strings.ReplaceAll(line, "METHODS.md", ""), -1) {
				say("%q leads nowhere", n)
			}
		}
	})
	return out, cited
}

func hasHeading(page []byte, number string) bool {
	for _, h := range heading.FindAllSubmatch(page, -1) {
		if string(h[1]) == number {
			return true
		}
	}
	return false
}
