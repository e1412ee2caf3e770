package plan_test

import (
	"go/ast"
	"go/types"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"golang.org/x/tools/go/packages"
)

// TestNoCircleOfCalls reads package plan with its types and follows who calls
// whom from file to file: the steps of the plan run one way, so no two files
// call into each other, by whatever detour.
func TestNoCircleOfCalls(t *testing.T) {
	for _, c := range circles(t, ".", "rebush/plan") {
		t.Errorf("these files call each other in a circle: %s", c)
	}
	// A test that could not fail would hold anything.
	got := circles(t, "../testdata/house/circle", "circle")
	if want := []string{"a.go b.go c.go"}; !slices.Equal(got, want) {
		t.Errorf("of the fixture %q, want %q", got, want)
	}
}

// circles loads one package and names the files of each circle.
func circles(t *testing.T, dir, path string) []string {
	t.Helper()
	list, err := packages.Load(&packages.Config{Dir: dir, Mode: packages.NeedName | packages.NeedSyntax | packages.NeedTypes | packages.NeedTypesInfo |
		packages.NeedFiles | packages.NeedImports | packages.NeedDeps | packages.NeedExportFile}, ".")
	if err != nil {
		t.Fatal(err)
	}
	if len(list) != 1 || list[0].PkgPath != path || len(list[0].Errors) > 0 || len(list[0].Syntax) < 3 {
		t.Fatalf("%s: %+v", dir, list)
	}
	p := list[0]
	calls := map[string][]string{}
	for _, f := range p.Syntax {
		from := filepath.Base(p.Fset.Position(f.Pos()).Filename)
		ast.Inspect(f, func(n ast.Node) bool {
			id, ok := n.(*ast.Ident)
			if !ok {
				return true
			}
			fn, ok := p.TypesInfo.Uses[id].(*types.Func)
			if !ok || fn.Pkg() != p.Types {
				return true
			}
			to := filepath.Base(p.Fset.Position(fn.Pos()).Filename)
			if to != from && !slices.Contains(calls[from], to) {
				calls[from] = append(calls[from], to)
			}
			return true
		})
	}
	return circlesOf(calls)
}

// circlesOf names the sets of files that reach each other.
func circlesOf(calls map[string][]string) []string {
	reach := map[string]map[string]bool{}
	var walk func(from, at string)
	walk = func(from, at string) {
		for _, to := range calls[at] {
			if !reach[from][to] {
				reach[from][to] = true
				walk(from, to)
			}
		}
	}
	for from := range calls {
		reach[from] = map[string]bool{}
		walk(from, from)
	}
	var out []string
	for a := range reach {
		if !reach[a][a] {
			continue
		}
		var set []string
		for b := range reach {
			if reach[a][b] && reach[b][a] {
				set = append(set, b)
			}
		}
		slices.Sort(set)
		if s := strings.Join(set, " "); !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	slices.Sort(out)
	return out
}
