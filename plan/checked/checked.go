// Package checked works out again, with the formulas that plan a job, what
// somebody outside printed: limits and fits, reamers, presses, gears, circles
// and cells of tables that have a second print. It holds no figure of its own; what is expected and how near comes
// from the row, and the tables are those it is handed.
package checked

import (
	"fmt"
	"io/fs"
	"math"
	"path"
	"strconv"
	"strings"

	"rebush/fits/table"
	"rebush/testdata/checks"
)

// Row is a row of a file of figures, by the names of its columns.
type Row map[string]string

// Figure is one printed figure beside the one that is computed. Low and High
// are equal but where the program gives a span, as of a bush that flows.
type Figure struct {
	File, ID     string  // "fits.csv", "FIT-001"
	What, Inputs string  // in the words of the row
	Unit         string  // "" of a plain number
	Expected     string  // as it was printed
	Tolerance    string  // as the row has it: "0.3%", "-1%/+30%"; "0" is exact
	Low, High    float64 // computed, in the unit; NaN where there is no answer
	Source       string
	Why          string // why there is no answer
}

// readers work out the rows of a file; the key is the name of the file.
var readers = map[string]func([]Row, *table.Library) []Figure{
	"circles.csv": circles, "fits.csv": fitRows, "mesh.csv": meshRows, "pressfit.csv": pressRows, "reaming.csv": reamRows,
	"tables.csv": cellRows,
}

// Printed works out every row that the program carries, file by file in the
// order of their names. An error names a file that cannot be read.
func Printed(lib *table.Library) ([]Figure, error) { return In(checks.Files, lib) }

// In works out every row of the CSV files of a folder.
func In(folder fs.FS, lib *table.Library) ([]Figure, error) {
	names, err := fs.Glob(folder, "*.csv")
	if err != nil {
		return nil, err
	}
	var out []Figure
	for _, name := range names {
		data, err := fs.ReadFile(folder, name)
		if err != nil {
			return nil, err
		}
		tab, err := table.Parse(strings.TrimSuffix(name, path.Ext(name)), name, data)
		if err != nil {
			return nil, err
		}
		rows := make([]Row, len(tab.Rows))
		for i, r := range tab.Rows {
			rows[i] = Row{"id": r.Address()}
			for _, c := range tab.Columns {
				rows[i][c] = r.Get(c)
			}
		}
		out = append(out, Of(name, rows, lib)...)
	}
	return out, nil
}

// Of works out rows of the kind that stand in the file of that name. Every row
// gives one figure at least; of a row that is not understood it says so.
func Of(name string, rows []Row, lib *table.Library) []Figure {
	if read, ok := readers[name]; ok {
		return read(rows, lib)
	}
	var out []Figure
	for _, r := range rows {
		out = append(out, r.figure(name).fails(fmt.Errorf("nothing works out rows of %s", name)))
	}
	return out
}

// figure is the row without its answer.
func (r Row) figure(file string) Figure {
	tol := r["tolerance"]
	if tol == "" {
		tol = "0"
	}
	unit := r["unit"]
	if unit == "-" {
		unit = ""
	}
	return Figure{File: file, ID: r["id"], What: r["quantity"], Inputs: r["inputs"], Unit: unit,
		Expected: r["expected"], Tolerance: tol, Source: r["source"], Low: math.NaN(), High: math.NaN()}
}

func (f Figure) is(v float64, err error) Figure { return f.spans(v, v, err) }

func (f Figure) spans(low, high float64, err error) Figure {
	if err != nil {
		return f.fails(err)
	}
	f.Low, f.High = low, high
	return f
}

func (f Figure) fails(err error) Figure {
	f.Why = err.Error()
	return f
}

// Agrees says that the computed figure lies within the tolerance of the printed
// one; of a span, that some of it does.
func (f Figure) Agrees() bool {
	want, err := strconv.ParseFloat(f.Expected, 64)
	if err != nil {
		return false
	}
	below, above, err := margins(f.Tolerance, want)
	return err == nil && f.Why == "" && f.Low <= want+above && f.High >= want-below
}

// margins reads a tolerance: a number, 0.3%, or -1%/+30%.
func margins(tolerance string, want float64) (below, above float64, err error) {
	part := func(s string) float64 {
		digits, percent := strings.CutSuffix(s, "%")
		v, e := strconv.ParseFloat(digits, 64)
		if e != nil {
			err = e
		}
		if percent {
			v *= want / 100
		}
		return math.Abs(v)
	}
	a, b, two := strings.Cut(tolerance, "/")
	below, above = part(a), part(a)
	if two {
		above = part(b)
	}
	return below, above, err
}

// Span is what was worked out, with two significant digits more than were
// printed; NaN where there is no answer.
func (f Figure) Span() (low, high float64) {
	round := func(v float64) float64 {
		r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', digits(f.Expected)+2, 64), 64)
		if err != nil {
			return math.NaN()
		}
		return r
	}
	return round(f.Low), round(f.High)
}

// Computed is Span in words.
func (f Figure) Computed() string {
	low, high := f.Span()
	show := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	switch {
	case f.Why != "":
		return "none"
	case low != high:
		return show(low) + " to " + show(high)
	}
	return show(low)
}

// digits is how many significant digits a figure was printed with, 3 at least.
func digits(printed string) int {
	mantissa, _, _ := strings.Cut(strings.ToLower(printed), "e")
	mantissa = strings.TrimLeft(strings.NewReplacer("-", "", ".", "").Replace(mantissa), "0")
	return max(3, len(mantissa))
}

// String is one line of all that there is to say.
func (f Figure) String() string {
	line := fmt.Sprintf("%s %s: %s (%s): printed %s within %s, computed %s %s; %s", f.File, f.ID, f.What, f.Inputs,
		f.Expected, f.Tolerance, f.Computed(), f.Unit, f.Source)
	if f.Why != "" {
		line += ": " + f.Why
	}
	return line
}
