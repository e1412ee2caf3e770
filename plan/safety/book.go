package safety

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"rebush/fits/material"
	"rebush/fits/table"
)

// Book is the table of hazards as read. It never changes.
type Book struct{ rows []row }

// row is one line of the table.
type row struct {
	line       Line
	at         map[Place]bool
	any        bool            // any metal, or none
	but        []material.Kind // ... but these
	metals     []material.Kind
	operations []string // none: any
	when       []Fact
	rank       int
	address    string
}

var places = []Place{Operation, PageOne, LookFor, Before, Proving, Form, Owner}

var facts = []Fact{Spindle, FirstSetUp, FromBelow, UnderThePress, Compound, Leaded, Air, InMagnesium, ConditionUnknown, ToBeCut}

var metals = []material.Kind{material.ZincCasting, material.AluminiumCasting, material.MagnesiumCasting, material.WroughtAluminium,
	material.WroughtBrass, material.BrassBush, material.Steel, material.CastIron, material.SolidBronze, material.PorousBronze,
	material.Plastic, Unsaid}

// Metals lists the kinds of material that the table may name.
func Metals() []material.Kind { return slices.Clone(metals) }

// New reads the built-in table "hazards" for the kinds of operation that there
// are.
func New(lib *table.Library, operations []string) (*Book, error) {
	t, err := lib.Get("hazards")
	if err != nil {
		return nil, err
	}
	return Read(t, operations)
}

// Read makes a book of a table. A row that names another operation, or a metal,
// a place or a fact that is none, is an error that names the row.
func Read(t *table.Table, operations []string) (*Book, error) {
	b := &Book{}
	for _, r := range t.Rows {
		x, err := read(r, operations)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", r.Address(), err)
		}
		b.rows = append(b.rows, x)
	}
	return b, nil
}

func read(r table.Row, operations []string) (row, error) {
	x := row{address: r.Address(), at: map[Place]bool{},
		line: Line{Hazard: r.Get("hazard"), Words: r.Get("words"), Source: r.Source(), Each: r.Get("print") == "each"}}
	if x.line.Hazard == "" || x.line.Words == "" || x.line.Source == "" {
		return x, fmt.Errorf("hazard, words and source must stand")
	}
	for _, s := range cells(r.Get("where")) {
		if !slices.Contains(places, Place(s)) {
			return x, fmt.Errorf("where: no place %q", s)
		}
		x.at[Place(s)] = true
	}
	if len(x.at) == 0 {
		return x, fmt.Errorf("where: no place is named")
	}
	list := r.Get("materials")
	rest, but := strings.CutPrefix(list, "any but ")
	x.any = but || list == "*"
	for _, s := range cells(strings.TrimPrefix(rest, "*")) {
		if !slices.Contains(metals, material.Kind(s)) {
			return x, fmt.Errorf("materials: no kind %q", s)
		}
		if but {
			x.but = append(x.but, material.Kind(s))
		} else {
			x.metals = append(x.metals, material.Kind(s))
		}
	}
	if !x.any && len(x.metals) == 0 {
		return x, fmt.Errorf("materials: none is named; write * for any")
	}
	return x, x.readRest(r, operations)
}

func (x *row) readRest(r table.Row, operations []string) error {
	if list := r.Get("operations"); list != "*" {
		for _, s := range cells(list) {
			if !slices.Contains(operations, s) {
				return fmt.Errorf("operations: no kind %q", s)
			}
			x.operations = append(x.operations, s)
		}
		if len(x.operations) == 0 {
			return fmt.Errorf("operations: none is named; write * for any")
		}
	}
	for _, s := range cells(r.Get("when")) {
		if !slices.Contains(facts, Fact(s)) {
			return fmt.Errorf("when: nothing is called %q", s)
		}
		x.when = append(x.when, Fact(s))
	}
	if p := r.Get("print"); x.at[Operation] != (p == "each" || p == "first") {
		return fmt.Errorf("print: %q; write each or first beside an operation, and nothing elsewhere", p)
	}
	if x.at[PageOne] {
		n, err := strconv.Atoi(r.Get("rank"))
		if err != nil || n < 1 {
			return fmt.Errorf("rank: %q is not a whole number from 1", r.Get("rank"))
		}
		x.rank = n
	}
	return nil
}

// cells parts a list of names at its semicolons.
func cells(s string) []string {
	var out []string
	for _, c := range strings.Split(s, ";") {
		if c = strings.TrimSpace(c); c != "" {
			out = append(out, c)
		}
	}
	return out
}

// meets says whether a row speaks of a work. A work without an operation meets
// every kind: it is the job as a whole.
func (r row) meets(w Work) bool {
	if w.Operation != "" && len(r.operations) > 0 && !slices.Contains(r.operations, w.Operation) {
		return false
	}
	for _, f := range r.when {
		if !w.Facts[f] {
			return false
		}
	}
	if r.any {
		for _, k := range r.but {
			if slices.Contains(w.Metals, k) || slices.Contains(w.Near, k) {
				return false
			}
		}
		return true
	}
	for _, k := range w.Metals {
		if slices.Contains(r.metals, k) {
			return true
		}
	}
	return false
}
