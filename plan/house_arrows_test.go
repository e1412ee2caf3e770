package plan_test

import (
	"fmt"
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"sort"
	"strconv"
	"strings"
	"testing"
)

const module = "rebush"

// The floors of the house, from the ground up. An import points to a lower
// floor; what stands on one floor does not know its neighbours, but for the
// doors below.
const (
	ground   = iota // testdata/checks, fits/{dim,table,ledger,finding,material,say,spelling}
	seatBits        // fits/{limits,press,stock,odds}
	seatWhole
	holeBits // feeds/*
	holeWhole
	planBits // plan/*
	planWhole
	paperBits // sheets/*
	paper
	command
)

// floor places a folder; false where the house has no such room. New rooms of
// fits are named here, so that somebody thinks of where they stand.
func floor(dir string) (int, bool) {
	switch dir {
	case checksFolder, "fits/dim", "fits/table", "fits/ledger", "fits/finding", "fits/material", "fits/spelling", "fits/say":
		return ground, true
	case "fits/limits", "fits/press", "fits/stock", "fits/odds":
		return seatBits, true
	case "fits":
		return seatWhole, true
	case "feeds":
		return holeWhole, true
	case "plan":
		return planWhole, true
	case "sheets":
		return paper, true
	}
	switch parent := path.Dir(dir); {
	case parent == "feeds":
		return holeBits, true
	case parent == "plan", dir == carryRoom:
		return planBits, true
	case parent == "sheets":
		return paperBits, true
	case parent == "cmd":
		return command, true
	}
	return 0, false
}

// doors are the imports between neighbours that are meant. The rooms of plan
// may also see the plain types of plan/job.
var doors = map[string][]string{
	"fits/dim":      {"fits/table"},
	"fits/say":      {"fits/dim"},
	"fits/finding":  {"fits/say"},
	"fits/ledger":   {"fits/dim"},
	"fits/material": {"fits/table", "fits/dim", "fits/spelling"},
	"plan/target":   {"plan/mesh", "plan/survey", "plan/habit"},
	"plan/seat":     {"plan/survey", "plan/habit"},
	"plan/route":    {"plan/seat", "plan/safety"},
	"plan/chance":   {"plan/survey", "plan/habit"},
	"plan/checked":  {"plan/mesh", "plan/survey"},
}

// guests are the modules of others that the program is built from, each with
// the rooms that may know it; none listed means any.
var guests = map[string][]string{
	"github.com/urfave/cli/v2":      {"cmd"},
	"golang.org/x/term":             {"cmd"},
	"github.com/go-pdf/fpdf":        {"sheets/draw"},
	"golang.org/x/image":            {"sheets/draw"},
	"gopkg.in/yaml.v3":              {"plan/job"},
	"github.com/shopspring/decimal": nil,
	"gonum.org/v1/gonum":            {"fits", "feeds", "plan"},
}

// checksFolder holds figures that others printed, and a line that embeds them: the
// program works them out again when it is asked to.
const checksFolder = "testdata/checks"

// worldRoom is the room that makes trucks with a known truth: it shares nothing with
// the planner but the files, and nothing in the program leans on it.
const worldRoom = "plan/world"

// carryRoom carries plans out on those trucks; it reads plans as JSON alone.
const carryRoom = "plan/world/carry"

// testGuests are known to test files only.
var testGuests = []string{
	"github.com/google/go-cmp",
	"github.com/klippa-app/go-pdfium",
	"github.com/rogpeppe/go-internal",
	"github.com/santhosh-tekuri/jsonschema/v6",
	"golang.org/x/tools",
	"pgregory.net/rapid",
}

// shut are parts of the standard library that a planner on a bench has no use
// for: it starts no other program and asks nothing of a network.
var shut = []string{"net", "os/exec", "plugin", "C"}

// goFile is a Go file and what it imports.
type goFile struct {
	name    string
	imports []string
}

func (f goFile) test() bool { return strings.HasSuffix(f.name, "_test.go") }

// goFiles reads the imports of every Go file outside testdata and dot folders.
func goFiles(t *testing.T, root fs.FS) []goFile {
	t.Helper()
	var out []goFile
	err := fs.WalkDir(root, ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if e.IsDir() {
			if base := path.Base(name); base == "testdata" || base != "." && strings.HasPrefix(base, ".") {
				return fs.SkipDir
			}
			return nil
		}
		if path.Ext(name) != ".go" {
			return nil
		}
		src, err := fs.ReadFile(root, name)
		if err != nil {
			return err
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), name, src, parser.ImportsOnly)
		if err != nil {
			return err
		}
		f := goFile{name: name}
		for _, spec := range parsed.Imports {
			p, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			f.imports = append(f.imports, p)
		}
		out = append(out, f)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// importFaults names every import that the house does not allow.
func importFaults(files []goFile) []string {
	var out []string
	for _, f := range files {
		if _, ok := floor(path.Dir(f.name)); !ok {
			out = append(out, f.name+": the house has no room "+path.Dir(f.name))
			continue
		}
		for _, imp := range f.imports {
			if why := importFault(f, imp); why != "" {
				out = append(out, fmt.Sprintf("%s imports %s: %s", f.name, imp, why))
			}
		}
	}
	sort.Strings(out)
	return out
}

func importFault(f goFile, imp string) string {
	from := path.Dir(f.name)
	if to, ok := strings.CutPrefix(imp, module+"/"); ok {
		if f.test() {
			return "" // a test may look into any room
		}
		return arrowFault(from, to)
	}
	first, _, _ := strings.Cut(imp, "/")
	if (from == worldRoom || from == carryRoom) && strings.Contains(first, ".") && !f.test() {
		return "the world stands on the standard library alone"
	}
	if !strings.Contains(first, ".") {
		for _, s := range shut {
			if !f.test() && under(imp, s) {
				return "the planner starts no program and asks no network"
			}
		}
		return ""
	}
	for guest, rooms := range guests {
		if under(imp, guest) {
			if f.test() || rooms == nil || underAny(from, rooms) {
				return ""
			}
			return "only " + strings.Join(rooms, ", ") + " may know it"
		}
	}
	if underAny(imp, testGuests) {
		if f.test() {
			return ""
		}
		return "it is for tests only"
	}
	return "a module that DEVELOPERS.md gives no reason for"
}

// arrowFault says what is wrong with one room importing another.
func arrowFault(from, to string) string {
	up, _ := floor(from)
	down, ok := floor(to)
	switch {
	case !ok:
		return "the house has no such room"
	case from == worldRoom && to != "plan/job":
		return "the world shares nothing with the planner that it tries"
	case from == carryRoom && to != worldRoom:
		return "the world shares nothing with the planner that it tries"
	case from == carryRoom:
		return ""
	case to == worldRoom, to == carryRoom:
		return "the world is for tests only"
	case from == "sheets/draw":
		return "the drawing room knows nothing of the job"
	case down > up:
		return "it points up"
	case down < up, up == command:
		return ""
	case contains(doors[from], to), up == planBits && to == "plan/job":
		return ""
	}
	return "neighbours do not know each other"
}

// under says that a path is a folder or lies in it.
func under(p, folder string) bool { return p == folder || strings.HasPrefix(p, folder+"/") }

func underAny(p string, folders []string) bool {
	for _, f := range folders {
		if under(p, f) {
			return true
		}
	}
	return false
}
