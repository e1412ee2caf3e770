package main

import (
	"fmt"
	"os"
	"path/filepath"
	"sort"
	"strings"
)

// planted is the package that the seeded copy asks which bug is on. It writes
// down the bugs that were reached where it is told to.
const planted = `// Package planted turns one seeded bug on.
package planted

import (
	"os"
	"strconv"
	"strings"
	"sync"
)

var (
	active, _ = strconv.Atoi(os.Getenv("PLANTED"))
	record    = os.Getenv("PLANTED_LOG")
	mu        sync.Mutex
	seen      = map[int]bool{}
)

// On says whether bug n is on.
func On(n int) bool {
	if record != "" {
		note(n)
	}
	return n == active
}

func note(n int) {
	mu.Lock()
	defer mu.Unlock()
	if seen[n] {
		return
	}
	seen[n] = true
	f, err := os.OpenFile(record, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o600)
	if err != nil {
		panic(err)
	}
	if _, err := f.WriteString(strconv.Itoa(n) + "\n"); err != nil {
		panic(err)
	}
	if err := f.Close(); err != nil {
		panic(err)
	}
}

// Pick is a figure, or the one in its place.
func Pick[T any](n int, was, is T) T {
	if On(n) {
		return is
	}
	return was
}

// Choose is a value, or the one in its place.
func Choose[T any](n int, was, is func() T) T {
	if On(n) {
		return is()
	}
	return was()
}

type line struct {
	table string
	line  int
	text  string
}

// Cell is a table with the bug in it that is on.
func Cell(name, from string, data []byte) []byte {
	if from != "built in" && from != name && from != name+".csv" {
		return data
	}
	name = strings.TrimSuffix(name, ".csv")
	for n, l := range lines {
		if l.table != name || !On(n) {
			continue
		}
		all := strings.Split(string(data), "\n")
		all[l.line-1] = l.text
		return []byte(strings.Join(all, "\n"))
	}
	return data
}
`

// plant writes the bugs into a copy of the project.
func plant(copied string, bugs []bug) error {
	var lines strings.Builder
	lines.WriteString("package planted\n\nvar lines = map[int]line{\n")
	byFile := map[string][]bug{}
	for _, b := range bugs {
		if b.cell != nil {
			fmt.Fprintf(&lines, "\t%d: {%q, %d, %q},\n", b.id, b.cell.table, b.cell.line, b.cell.text)
		} else {
			byFile[b.code.file] = append(byFile[b.code.file], b)
		}
	}
	lines.WriteString("}\n")
	for file, list := range byFile {
		if err := plantFile(filepath.Join(copied, file), list); err != nil {
			return err
		}
	}
	dir := filepath.Join(copied, "fits", "planted")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(dir, "planted.go"), []byte(planted), 0o600); err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(dir, "lines.go"), []byte(lines.String()), 0o600); err != nil {
		return err
	}
	if err := replaceOnce(filepath.Join(copied, "fits/table/table.go"),
		"func Parse(name, from string, data []byte) (*Table, error) {\n",
		"func Parse(name, from string, data []byte) (*Table, error) {\n\tdata = planted.Cell(name, from, data)\n"); err != nil {
		return err
	}
	if err := importPlanted(filepath.Join(copied, "fits/table/table.go")); err != nil {
		return err
	}
	// A script of commands has an environment of its own.
	return replaceOnce(filepath.Join(copied, "cmd/rebush/script_test.go"), `e.Setenv("JOBS", jobs)`,
		`e.Setenv("JOBS", jobs); e.Setenv("PLANTED", os.Getenv("PLANTED")); `+
			`e.Setenv("PLANTED_LOG", os.Getenv("PLANTED_LOG"))`)
}

func replaceOnce(name, old, with string) error {
	text, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	if strings.Count(string(text), old) != 1 {
		return fmt.Errorf("%s holds %d times %q", name, strings.Count(string(text), old), old)
	}
	return os.WriteFile(name, []byte(strings.Replace(string(text), old, with, 1)), 0o600)
}

// importPlanted adds the import after the line of the package.
func importPlanted(name string) error {
	text, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	s := string(text)
	if strings.Contains(s, `"rebush/fits/planted"`) {
		return nil
	}
	at := 0
	if !strings.HasPrefix(s, "package ") {
		at = strings.Index(s, "\npackage ") + 1
	}
	end := at + strings.Index(s[at:], "\n") + 1
	return os.WriteFile(name, []byte(s[:end]+"\nimport \"rebush/fits/planted\"\n"+s[end:]), 0o600)
}

func plantFile(name string, bugs []bug) error {
	text, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	// Wider ranges first, so that a bug comes before those that it holds.
	sort.Slice(bugs, func(i, j int) bool {
		a, b := bugs[i].code, bugs[j].code
		if a.from != b.from {
			return a.from < b.from
		}
		return a.to > b.to
	})
	w := writer{string(text), bugs}
	if err := os.WriteFile(name, []byte(w.text(0, len(text), -1)), 0o600); err != nil {
		return err
	}
	return importPlanted(name)
}

// writer writes ranges of a file with the bugs in them.
type writer struct {
	src  string
	bugs []bug
}

// text is the range with every bug after number last of the list in it.
func (w writer) text(from, to, last int) string {
	var b strings.Builder
	at := from
	for i := last + 1; i < len(w.bugs); i++ {
		s := w.bugs[i].code
		if s.from < at || s.to > to {
			continue
		}
		b.WriteString(w.src[at:s.from])
		b.WriteString(w.seeded(i))
		at = s.to
	}
	b.WriteString(w.src[at:to])
	return b.String()
}

// seeded is one bug's range: as it was, as it is, and which of them.
func (w writer) seeded(i int) string {
	s, id := w.bugs[i].code, w.bugs[i].id
	was := w.text(s.from, s.to, i)
	is := ""
	if s.form.op != [2]int{} {
		is = w.text(s.from, s.form.op[0], i) + s.form.other + w.text(s.form.op[1], s.to, i)
	}
	on := fmt.Sprintf("planted.On(%d)", id)
	switch s.form.shape {
	case "either":
		return "(" + on + " && (" + is + ") || !" + on + " && (" + was + "))"
	case "choose":
		return fmt.Sprintf("planted.Choose(%d, func() %s { return %s }, func() %s { return %s })", id, s.form.typ, was,
			s.form.typ, is)
	case "pick":
		return fmt.Sprintf("planted.Pick[%s](%d, %s, %s)", s.form.typ, id, was, s.form.other)
	case "flip":
		return "(" + on + " != (" + was + "))"
	default: // drop
		return "if !" + on + " {\n" + was + "\n}"
	}
}
