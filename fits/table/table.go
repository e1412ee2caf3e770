// Package table holds the handbook tables of the program: CSV files with a
// source for each row or for the whole table, embedded in the binary, read
// once on first use and handed down as arguments. A shop may put a file of its
// own in the place of any of them; the library remembers which.
//
// The package knows nothing of what a table means: columns are strings here,
// and the room that uses a table turns them into numbers.
package table

import (
	"embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"sort"
	"strings"
	"sync"
)

//go:embed data/*.csv
var embedded embed.FS

// Row is one line of a table. Line is its line number in the file, so that
// Address points a reader at it.
type Row struct {
	Table string
	Line  int
	from  string
	cells []string
	cols  map[string]int
}

// Get returns the trimmed cell under a column, "" where the table has no such
// column.
func (r Row) Get(column string) string {
	i, ok := r.cols[column]
	if !ok || i >= len(r.cells) {
		return ""
	}
	return strings.TrimSpace(r.cells[i])
}

// Address is where the row stands, as the ledger prints it: "limits_it:7".
func (r Row) Address() string { return fmt.Sprintf("%s:%d", r.Table, r.Line) }

// Place is where the row stands for one who has to mend it: "my-rules.csv:7" of
// a shop's own file.
func (r Row) Place() string { return fmt.Sprintf("%s:%d", r.from, r.Line) }

// Source is the row's own source, from its source column.
func (r Row) Source() string { return r.Get("source") }

// Table is a CSV file: comment lines start with '#', the first other line
// names the columns.
type Table struct {
	Name    string
	About   string // the comment lines at the head, without their '#'
	Columns []string
	Rows    []Row
	From    string // "built in", or the shop's file that took its place
}

// Parse reads one table. Errors name the line.
func Parse(name, from string, data []byte) (*Table, error) {
	text := strings.ReplaceAll(strings.TrimPrefix(string(data), "\uFEFF"), "\r\n", "\n")
	t := &Table{Name: name, From: from}
	// Comments stand at the head only: further down a cell may well begin with
	// '#', as the name of a number drill does.
	var about []string
	head := 0
	for strings.HasPrefix(text, "#") {
		line, rest, _ := strings.Cut(text, "\n")
		about = append(about, strings.TrimSpace(strings.TrimPrefix(line, "#")))
		text = rest
		head++
	}
	t.About = strings.Join(about, " ")
	r := csv.NewReader(strings.NewReader(text))
	r.FieldsPerRecord = -1
	var cols map[string]int
	for {
		rec, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			var at *csv.ParseError
			if errors.As(err, &at) {
				return nil, fmt.Errorf("%s:%d:%d: %w", from, at.Line+head, at.Column, at.Err)
			}
			return nil, fmt.Errorf("%s: %w", from, err)
		}
		line, _ := r.FieldPos(0)
		line += head
		if cols == nil {
			cols = map[string]int{}
			for i, c := range rec {
				c = strings.TrimSpace(c)
				if _, twice := cols[c]; twice {
					return nil, fmt.Errorf("%s:%d: column %q stands twice", from, line, c)
				}
				cols[c] = i
				t.Columns = append(t.Columns, c)
			}
			continue
		}
		if len(rec) != len(t.Columns) {
			return nil, fmt.Errorf("%s:%d: %d cells; the head line names %d columns", from, line, len(rec),
				len(t.Columns))
		}
		t.Rows = append(t.Rows, Row{Table: name, Line: line, from: from, cells: rec, cols: cols})
	}
	if cols == nil {
		return nil, fmt.Errorf("%s: no line names the columns", from)
	}
	return t, nil
}

// Library is the set of tables in force: the built-in ones, less those a shop
// has put its own file in place of. It is safe for use from many goroutines.
type Library struct {
	mu    sync.Mutex
	read  map[string]*Table
	swaps map[string]bool
}

// BuiltIn returns the library as it ships.
func BuiltIn() *Library {
	return &Library{read: map[string]*Table{}, swaps: map[string]bool{}}
}

// later are columns that came after shops had written their own tables: a
// shop's may leave them out, and what reads them says what stands instead.
var later = map[string][]string{"instruments": {"least_mm", "most_mm"}, "materials_kinds": {"aliases"},
	"rules": {"range"}}

// Replace puts a shop's table in the place of the built-in one of that name.
// The new table must have every column of the old one, but for the later ones. What keeps people from
// harm is not replaced.
func (l *Library) Replace(t *Table) error {
	if t.Name == "stops" || t.Name == "hazards" {
		return fmt.Errorf("%s: the table of %s is not for a shop to replace", t.From, t.Name)
	}
	old, err := builtIn(t.Name)
	if err != nil {
		return err
	}
	have := map[string]bool{}
	for _, c := range t.Columns {
		have[c] = true
	}
	for _, c := range old.Columns {
		if !have[c] && !slices.Contains(later[t.Name], c) {
			return fmt.Errorf("%s: no column %q; the built-in table has %s", t.From, c, strings.Join(old.Columns, ", "))
		}
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	l.read[t.Name] = t
	l.swaps[t.Name] = true
	return nil
}

// Replaced lists the tables that a shop put its own file in place of.
func (l *Library) Replaced() []string {
	l.mu.Lock()
	defer l.mu.Unlock()
	var out []string
	for n := range l.swaps {
		out = append(out, n)
	}
	sort.Strings(out)
	return out
}

// Get returns a table by name.
func (l *Library) Get(name string) (*Table, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if t, ok := l.read[name]; ok {
		return t, nil
	}
	t, err := builtIn(name)
	if err != nil {
		return nil, err
	}
	l.read[name] = t
	return t, nil
}

// Names lists the built-in tables in alphabetical order.
func Names() []string {
	entries, err := embedded.ReadDir("data")
	if err != nil {
		panic("table: the embedded folder is missing: " + err.Error())
	}
	var out []string
	for _, e := range entries {
		out = append(out, strings.TrimSuffix(e.Name(), ".csv"))
	}
	sort.Strings(out)
	return out
}

func builtIn(name string) (*Table, error) {
	data, err := embedded.ReadFile("data/" + name + ".csv")
	if err != nil {
		return nil, fmt.Errorf("no table %q; there are %s", name, strings.Join(Names(), ", "))
	}
	return Parse(name, "built in", data)
}
