package plan_test

import (
	"fmt"
	"os"
	"path"
	"regexp"
	"strings"
	"testing"

	"rebush/testdata"
)

type truthRow map[string]string

// ours are the words of a source that is no printed one.
var ours = regexp.MustCompile(`(?i)\bown\b|synthetic|analytic|made up|finite.element|re-derived|recomput|no published|methods/`)

// marked says whether a row owns to be from memory.
func (r truthRow) marked() bool {
	return strings.Contains(strings.ToLower(r["source"]+" "+r["basis"]+" "+r["note"]), "from memory") ||
		r["basis"] == "from_memory"
}

// kindFault says why a row may not lie in a folder; "" where it may.
func kindFault(kind, file string, r truthRow) string {
	source := r["source"]
	switch {
	case source == "" && file != "wornbores.csv":
		return "no source"
	case kind == "checks" && r.marked():
		return "remembered, not printed"
	case kind == "checks" && ours.MatchString(source):
		return "our own, not printed outside"
	case kind == "remembered" && !r.marked():
		return "does not say that it is from memory"
	}
	return ""
}

// counted is how many rows each folder has, and how many of the copied ones
// are from memory.
func counted(t *testing.T) (of map[string]int, remembered int) {
	of = map[string]int{}
	for _, kind := range testdata.Kinds {
		for _, name := range testdata.Files(t, kind) {
			for _, r := range testdata.Rows[truthRow](t, name) {
				of[kind]++
				if kind == "transcription" && r.marked() {
					remembered++
				}
				if fault := kindFault(kind, path.Base(name), r); fault != "" {
					t.Errorf("%s: %s: %s: %s", name, r["id"]+r["name"], fault, r["source"])
				}
			}
		}
	}
	return of, remembered
}

// TestTruthByItsName: what lies in a folder of testdata is of that kind, and
// README and testdata/README.md say how many there are of each.
func TestTruthByItsName(t *testing.T) {
	of, remembered := counted(t)
	says := []string{
		fmt.Sprintf("**%d printed by somebody outside** (`testdata/checks`)", of["checks"]),
		fmt.Sprintf("**%d of our own** (`testdata/own`)", of["own"]),
		fmt.Sprintf("**%d transcription checks** (`testdata/transcription`)", of["transcription"]),
		fmt.Sprintf("**%d from memory** (`testdata/remembered`), and %d of the transcription rows", of["remembered"], remembered),
	}
	for _, name := range []string{"../README.md", "../testdata/README.md"} {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, want := range says {
			if !strings.Contains(string(text), want) {
				t.Errorf("%s does not say: %s", name, want)
			}
		}
		if want := "own derivation, no source"; !strings.Contains(string(text), want) {
			t.Errorf("%s does not say of the old centre: %s", name, want)
		}
	}
	for _, file := range testdata.Files(t, "own") {
		text, err := os.ReadFile("../testdata/own/README.md")
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(text), "`"+path.Base(file)+"`") {
			t.Errorf("testdata/own/README.md does not say how %s was made", file)
		}
	}
}

// TestKindFaults: the fault of a row in the wrong folder is seen.
func TestKindFaults(t *testing.T) {
	for _, c := range []struct {
		kind, want string
		row        truthRow
	}{
		{"checks", "", truthRow{"source": "ISO 286-2 Table 3"}},
		{"checks", "remembered", truthRow{"source": "Norton, from memory"}},
		{"checks", "remembered", truthRow{"source": "a chart", "basis": "from_memory"}},
		{"checks", "our own", truthRow{"source": "own plane-stress finite-element script"}},
		{"checks", "our own", truthRow{"source": "independent recomputation, no published value"}},
		{"checks", "no source", truthRow{}},
		{"remembered", "does not say", truthRow{"source": "ISO 286-2 Table 3"}},
		{"own", "no source", truthRow{}},
	} {
		got := kindFault(c.kind, "any.csv", c.row)
		if (got == "") != (c.want == "") || !strings.Contains(got, c.want) {
			t.Errorf("%s %v: %q, want %q", c.kind, c.row, got, c.want)
		}
	}
}
