package main

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"math"
	"path/filepath"
	"strconv"
	"strings"

	"golang.org/x/tools/go/packages"
)

// A site is a place where a bug can be seeded: a range of one file, what kind
// of bug, and how the range reads with it. What it holds by itself may hold
// other sites.
type site struct {
	room, file string // folder of the package and path of the file, from the project's root
	line       int
	from, to   int // bytes of the file
	kind       string
	what       string // the change in words: "< to <="
	form       form
}

// A form says how the text of a site is built from its parts.
type form struct {
	shape string // either, flip, pick, drop, choose
	typ   string // of the value, as the file would write it
	op    [2]int // bytes of the operator or name that changes
	other string // what stands there instead
	cond  [2]int // bytes of a condition
}

// Operators that take another's place.
var (
	compared = map[token.Token]string{
		token.LSS: "<=", token.LEQ: "<", token.GTR: ">=", token.GEQ: ">", token.EQL: "!=", token.NEQ: "==",
	}
	joined   = map[token.Token]string{token.LAND: "||", token.LOR: "&&"}
	reckoned = map[token.Token]string{
		token.ADD: "-", token.SUB: "+", token.MUL: "/", token.QUO: "*", token.REM: "*",
	}
	called = map[string]string{
		"math.Max": "math.Min", "math.Min": "math.Max", "math.Ceil": "math.Floor", "math.Floor": "math.Ceil",
		"max": "min", "min": "max", "math.Sin": "math.Cos", "math.Cos": "math.Sin",
		"strings.HasPrefix": "strings.HasSuffix", "slices.Min": "slices.Max", "slices.Max": "slices.Min",
	}
)

// sites finds every place of the program's own packages, tests left out.
func sites(root string) ([]site, error) {
	cfg := &packages.Config{Dir: root, Mode: packages.NeedName | packages.NeedFiles | packages.NeedSyntax |
		packages.NeedTypes | packages.NeedTypesInfo | packages.NeedImports | packages.NeedDeps}
	pkgs, err := packages.Load(cfg, "./cmd/...", "./plan/...", "./fits/...", "./feeds/...", "./sheets/...")
	if err != nil {
		return nil, err
	}
	var all []site
	for _, p := range pkgs {
		if len(p.Errors) > 0 {
			return nil, p.Errors[0]
		}
		for _, f := range p.Syntax {
			name, err := filepath.Rel(root, p.Fset.Position(f.Pos()).Filename)
			if err != nil {
				return nil, err
			}
			name = filepath.ToSlash(name)
			if strings.HasPrefix(name, "plan/world/") || ast.IsGenerated(f) {
				continue // for tests alone
			}
			l := look{pkg: p, file: f, name: name, room: filepath.ToSlash(filepath.Dir(name))}
			l.walk(f)
			all = append(all, l.found...)
		}
	}
	return all, nil
}

// look walks one file.
type look struct {
	pkg        *packages.Package
	file       *ast.File
	name, room string
	found      []site
	above      []ast.Node
}

func (l *look) walk(root ast.Node) {
	ast.Inspect(root, func(n ast.Node) bool {
		if n == nil {
			l.above = l.above[:len(l.above)-1]
			return true
		}
		switch n := n.(type) {
		case *ast.GenDecl:
			if n.Tok == token.CONST || n.Tok == token.IMPORT || n.Tok == token.TYPE {
				return false
			}
		case *ast.ArrayType:
			if n.Len != nil {
				return false // its length has to be a constant
			}
		case *ast.BinaryExpr:
			l.binary(n)
		case *ast.BasicLit:
			l.literal(n)
		case *ast.Ident:
			l.truth(n)
		case *ast.IfStmt:
			l.condition(n)
		case *ast.CallExpr:
			l.call(n)
		case *ast.ExprStmt, *ast.AssignStmt, *ast.IncDecStmt:
			l.statement(n.(ast.Stmt))
		}
		l.above = append(l.above, n)
		return true
	})
}

func (l *look) add(n ast.Node, kind, what string, f form) {
	at := l.pkg.Fset.Position(n.Pos())
	l.found = append(l.found, site{l.room, l.name, at.Line, at.Offset, l.pkg.Fset.Position(n.End()).Offset,
		kind, what, f})
}

func (l *look) span(p token.Pos, n int) [2]int {
	at := l.pkg.Fset.Position(p).Offset
	return [2]int{at, at + n}
}

// known says that the compiler works the expression out itself.
func (l *look) known(e ast.Expr) bool { return l.pkg.TypesInfo.Types[e].Value != nil }

// typed is the type of a number as the file would write it, "" where it is
// none that a function can return there.
func (l *look) typed(e ast.Expr) string {
	t := l.pkg.TypesInfo.TypeOf(e)
	if t == nil {
		return ""
	}
	b, ok := t.Underlying().(*types.Basic)
	if !ok || b.Info()&types.IsNumeric == 0 || b.Info()&types.IsUntyped != 0 {
		return ""
	}
	switch t := t.(type) {
	case *types.Basic:
		return t.Name()
	case *types.Named:
		if t.Obj().Pkg() == l.pkg.Types && t.Obj().Parent() == l.pkg.Types.Scope() {
			return t.Obj().Name()
		}
	}
	return ""
}

func (l *look) binary(n *ast.BinaryExpr) {
	if l.known(n) {
		return
	}
	op := l.span(n.OpPos, len(n.Op.String()))
	if other, ok := compared[n.Op]; ok && l.plainBool(n) {
		l.add(n, "compare", n.Op.String()+" to "+other, form{shape: "either", op: op, other: other})
	}
	if other, ok := joined[n.Op]; ok && l.plainBool(n) {
		l.add(n, "join", n.Op.String()+" to "+other, form{shape: "either", op: op, other: other})
	}
	if other, ok := reckoned[n.Op]; ok {
		if t := l.typed(n); t != "" {
			l.add(n, "reckon", n.Op.String()+" to "+other, form{shape: "choose", typ: t, op: op, other: other})
		}
	}
}

func (l *look) plainBool(e ast.Expr) bool {
	b, ok := l.pkg.TypesInfo.TypeOf(e).(*types.Basic)
	return ok && b.Info()&types.IsBoolean != 0
}

// literal changes a number: nought to one, a whole one by one, any other by a
// tenth.
func (l *look) literal(n *ast.BasicLit) {
	t := l.typed(n)
	if t == "" || n.Kind != token.INT && n.Kind != token.FLOAT || l.inConstant() {
		return
	}
	other := ""
	if v, err := strconv.ParseInt(n.Value, 0, 64); err == nil && n.Kind == token.INT {
		other = strconv.FormatInt(v+1, 10)
		if v > 3 && t == "float64" {
			other = strconv.FormatFloat(float64(v)*1.1, 'g', -1, 64)
		}
	} else if v, err := strconv.ParseFloat(n.Value, 64); err == nil {
		other = strconv.FormatFloat(v*1.1, 'g', -1, 64)
		if v == 0 {
			other = "1"
		}
		if math.IsInf(v*1.1, 0) {
			return
		}
	}
	if other != "" {
		l.add(n, "figure", n.Value+" to "+other, form{shape: "pick", typ: t, other: other})
	}
}

// inConstant says that the place wants a constant: a case, a key of a list, a
// shift, or part of a product that the compiler works out.
func (l *look) inConstant() bool {
	for i := len(l.above) - 1; i >= 0; i-- {
		switch n := l.above[i].(type) {
		case *ast.CaseClause:
			return true
		case *ast.KeyValueExpr:
			_, lit := n.Key.(*ast.BasicLit)
			return lit
		case *ast.BinaryExpr:
			if n.Op == token.SHL || n.Op == token.SHR {
				return true
			}
			if l.known(n) {
				return true
			}
		case *ast.UnaryExpr, *ast.ParenExpr:
		default:
			return false
		}
	}
	return false
}

func (l *look) truth(n *ast.Ident) {
	if (n.Name == "true" || n.Name == "false") && l.pkg.TypesInfo.Uses[n] == types.Universe.Lookup(n.Name) &&
		!l.inConstant() {
		if b, ok := l.pkg.TypesInfo.TypeOf(n).(*types.Basic); ok && b.Kind() == types.Bool {
			l.add(n, "truth", n.Name+" to the other", form{shape: "flip"})
		}
	}
}

func (l *look) condition(n *ast.IfStmt) {
	at := l.pkg.Fset.Position(n.Cond.Pos())
	if _, ok := n.Cond.(*ast.BinaryExpr); ok || l.known(n.Cond) || !l.plainBool(n.Cond) {
		return // its operator is a site already
	}
	l.found = append(l.found, site{l.room, l.name, at.Line, at.Offset, l.pkg.Fset.Position(n.Cond.End()).Offset,
		"condition", "if to if not", form{shape: "flip"}})
}

func (l *look) call(n *ast.CallExpr) {
	name := ""
	switch f := n.Fun.(type) {
	case *ast.Ident:
		if _, ok := l.pkg.TypesInfo.Uses[f].(*types.Builtin); ok {
			name = f.Name
		}
	case *ast.SelectorExpr:
		if x, ok := f.X.(*ast.Ident); ok {
			name = x.Name + "." + f.Sel.Name
		}
	}
	other, ok := called[name]
	if !ok || l.known(n) {
		return
	}
	op := l.span(n.Fun.Pos(), len(name))
	if strings.HasPrefix(name, "strings.") {
		l.add(n, "call", name+" to "+other, form{shape: "either", op: op, other: other})
	} else if t := l.typed(n); t != "" {
		l.add(n, "call", name+" to "+other, form{shape: "choose", typ: t, op: op, other: other})
	}
}

// statement leaves one out: a call whose result nobody takes, or a value that
// is set.
func (l *look) statement(n ast.Stmt) {
	above := l.above[len(l.above)-1]
	switch above.(type) {
	case *ast.BlockStmt, *ast.CaseClause:
	default:
		return
	}
	what := "statement left out"
	switch n := n.(type) {
	case *ast.AssignStmt:
		if n.Tok == token.DEFINE {
			return
		}
		if id, ok := n.Lhs[0].(*ast.Ident); ok && id.Name == "_" {
			return
		}
		what = "assignment left out"
	case *ast.ExprStmt:
		call, ok := n.X.(*ast.CallExpr)
		if !ok {
			return
		}
		if id, ok := call.Fun.(*ast.Ident); ok && id.Name == "panic" {
			return
		}
	}
	l.add(n, "leave out", what, form{shape: "drop"})
}

func (s site) String() string { return fmt.Sprintf("%s:%d %s", s.file, s.line, s.what) }
