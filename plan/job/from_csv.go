package job

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
)

// csvColumns are the columns of a table of bores for FromCSV.
var csvColumns = []string{"shaft", "side", "x", "y", "widest", "narrowest", "worn_to", "journal", "must_pass",
	"metal", "metal_at"}

// csvSettings are the lines of two cells that may stand before the table.
var csvSettings = []string{"title", "units", "material", "condition", "thickness", "length", "height", "width",
	"rails", "current", "shop"}

// csvKeys are the keys that a setting goes to.
var csvKeys = map[string]string{"title": "title", "units": "units", "material": "chassis/material",
	"condition": "chassis/condition", "thickness": "chassis/plates/left/thickness chassis/plates/right/thickness",
	"length": "chassis/outline/length", "height": "chassis/outline/height", "width": "chassis/width",
	"rails": "chassis/rails", "current": "chassis/current", "shop": "shop"}

// csvDraft is a job file while a table is read into it.
type csvDraft struct {
	of     *leaf
	shafts []string        // by name, in their order
	bores  map[string]bool // that the table had
}

func newCSVDraft() *csvDraft {
	d := &csvDraft{of: &leaf{}, bores: map[string]bool{}}
	for _, k := range [][2]string{{"rebush", "1"}, {"units", "mm"}, {"datum", datumWords}, {"title", ""},
		{"chassis/condition", "unknown"}, {"chassis/rails", "below"}, {"chassis/current", "none"}} {
		d.of.set(k[0], k[1])
	}
	own := d.of.at("bushes/#turned")
	own.set("code", "own turning")
	own.set("make", "turned")
	own.set("material", "bearing bronze C93200")
	return d
}

// FromCSV writes a job file from a table of bores: a head line that names its
// columns (shaft, side, x, y, widest, narrowest, worn_to, journal, must_pass,
// metal, metal_at; shaft and side are needed), a line for each bore. Lines of
// two cells before the head set title, units, material, condition, thickness,
// length, height, width, rails, current or shop. Cells are parted by commas, or
// by semicolons where the head line has one. What the table does not say is
// left open in the file for the reader to name. Errors are Problems.
func FromCSV(name string, data []byte) ([]byte, error) {
	if line, column, wrong := notText(data); wrong != "" {
		return nil, Problems{{Pos: Pos{name, line, column}, Wrong: wrong,
			Right: "save it as CSV in UTF-8; if this was an accent, leave it out"}}
	}
	if len(data) > largest {
		return nil, Problems{{Pos: Pos{name, 1, 1}, Wrong: "this table is larger than 1 MiB", Right: "is it the right file?"}}
	}
	text := strings.TrimPrefix(string(data), "\uFEFF")
	r := csv.NewReader(strings.NewReader(text))
	r.FieldsPerRecord, r.TrimLeadingSpace, r.Comment, r.LazyQuotes = -1, true, '#', true
	if strings.Contains(text, ";") {
		r.Comma = ';'
	}
	d := newCSVDraft()
	var problems Problems
	var head map[string]int
	for {
		cells, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		line := 1
		if err != nil {
			var pe *csv.ParseError
			if errors.As(err, &pe) {
				line = pe.Line
			}
			return nil, append(problems, Problem{Pos: Pos{name, line, 1}, Wrong: "this is not a table: " + plainCSV(err),
				Right: "part the cells by commas"})
		}
		line, _ = r.FieldPos(0)
		say := func(wrong, right string) {
			problems = append(problems, Problem{Pos: Pos{name, line, 1}, Wrong: wrong, Right: right})
		}
		for i := range cells {
			cells[i] = strings.TrimSpace(cells[i])
		}
		switch {
		case head == nil && strings.EqualFold(cells[0], "shaft"):
			head = csvHead(cells, say)
		case head == nil:
			d.set(cells, say)
		default:
			d.row(head, cells, say)
		}
	}
	if head == nil { // then nothing else in it means anything
		return nil, Problems{{Pos: Pos{name, 1, 1}, Wrong: "no line names the columns, so this is no table of bores",
			Right: "the table begins with a line " + strings.Join(csvColumns, ",")}}
	} else if len(d.shafts) == 0 && len(problems) == 0 {
		problems = append(problems, Problem{Pos: Pos{name, 1, 1}, Wrong: "there are no bores in this table",
			Right: "write a line for each bore below the head"})
	}
	if len(problems) > 0 {
		return nil, problems.sorted()
	}
	return d.of.yaml(), nil
}

func plainCSV(err error) string {
	var pe *csv.ParseError
	if errors.As(err, &pe) {
		return pe.Err.Error()
	}
	return err.Error()
}

func csvHead(cells []string, say func(wrong, right string)) map[string]int {
	head := map[string]int{}
	for i, c := range cells {
		c = strings.ToLower(c)
		if _, twice := head[c]; twice {
			say(fmt.Sprintf("column %q stands twice", short(c)), "keep one of them")
		}
		if !has(csvColumns, c) {
			say(fmt.Sprintf("unknown column %q", short(c)),
				"did you mean `"+nearest(c, csvColumns)+"`? The columns are "+strings.Join(csvColumns, ", "))
		}
		head[c] = i
	}
	if _, ok := head["side"]; !ok {
		say("no column says which side a bore is on", "add a column side with left or right")
	}
	return head
}

func (d *csvDraft) set(cells []string, say func(wrong, right string)) {
	if len(cells) == 1 && cells[0] == "" {
		return
	}
	key := strings.ToLower(cells[0])
	if !has(csvSettings, key) || len(cells) < 2 {
		say(fmt.Sprintf("%q is neither a setting nor the head of the table", short(cells[0])),
			"did you mean `"+nearest(key, append([]string{"shaft"},
				csvSettings...))+"`? The table begins with a line "+strings.Join(csvColumns, ","))
		return
	}
	v := cells[1]
	words := func(list ...string) {
		if !has(list, v) {
			say(fmt.Sprintf("%s: %q", key, short(v)), "it may be "+orList(list))
		}
	}
	if key == "units" || key == "condition" || key == "rails" || key == "current" {
		words(jobShape.at(csvKeys[key]).words...)
	}
	for _, path := range strings.Fields(csvKeys[key]) {
		d.of.set(path, quoted(v))
	}
}

func (d *csvDraft) row(head map[string]int, cells []string, say func(wrong, right string)) {
	get := func(column string) string {
		if i, ok := head[column]; ok && i < len(cells) {
			return cells[i]
		}
		return ""
	}
	if len(cells) > len(head) {
		say(fmt.Sprintf("%d cells; the head line names %d columns", len(cells), len(head)),
			"with decimal commas part the cells by semicolons")
		return
	}
	name, side := get("shaft"), strings.ToLower(get("side"))
	if name == "" && side == "" {
		return
	}
	if name == "" || side != string(Left) && side != string(Right) {
		say(fmt.Sprintf("shaft %q, side %q", short(name), short(side)), "name the shaft, and left or right")
		return
	}
	i := slices.Index(d.shafts, name)
	if i < 0 {
		i = len(d.shafts)
		d.shafts = append(d.shafts, name)
	}
	at := fmt.Sprintf("shafts/#%d/", i)
	if d.bores[at+side] {
		say(fmt.Sprintf("the %s bore of %q stands twice", side, short(name)), "keep one of them")
		return
	}
	d.bores[at+side] = true
	d.of.set(at+"name", quoted(name))
	d.of.set(at+"journal/"+side, quoted(get("journal")))
	d.of.set(at+"must_pass/"+side, quoted(get("must_pass")))
	bore := at + "bores/" + side + "/"
	d.of.at(at + "bores/" + side)
	if x, y := get("x"), get("y"); x != "" || y != "" {
		d.of.set(bore+"centre", "["+quoted(x)+", "+quoted(y)+"]")
	}
	for _, k := range []string{"widest", "narrowest", "worn_to"} {
		d.of.set(bore+k, quoted(get(k)))
	}
	d.of.set(bore+"widest_at", quoted(get("worn_to")))
	if metal := get("metal"); metal != "" {
		d.of.set(bore+"edges/#1/metal", quoted(metal))
		d.of.set(bore+"edges/#1/at", "270")
		d.of.set(bore+"edges/#1/at", quoted(get("metal_at")))
	}
}
