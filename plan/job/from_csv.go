package job

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
)

// csvColumns are the columns of a table of bores for FromCSV.
var csvColumns = []string{"shaft", "side", "x", "y", "widest", "narrowest", "worn_to", "journal", "must_pass",
	"metal", "metal_at"}

// csvSettings are the lines of two cells that may stand before the table.
var csvSettings = []string{"title", "units", "material", "condition", "thickness", "length", "height", "width",
	"rails", "current", "shop"}

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
	d := &draft{units: "mm", condition: "unknown", rails: "below", current: "none"}
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
	return d.yaml(), nil
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

func (d *draft) set(cells []string, say func(wrong, right string)) {
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
	switch key {
	case "title":
		d.title = v
	case "units":
		words("mm", "in")
		d.units = v
	case "material":
		d.material = v
	case "condition":
		words("sound", "cracked", "swollen", "unknown")
		d.condition = v
	case "thickness":
		d.left, d.right = v, v
	case "length":
		d.length = v
	case "height":
		d.height = v
	case "width":
		d.width = v
	case "rails":
		words("below", "above")
		d.rails = v
	case "current":
		words("axles", "none")
		d.current = v
	case "shop":
		d.shop = v
	}
}

func (d *draft) row(head map[string]int, cells []string, say func(wrong, right string)) {
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
	k := -1
	for i, s := range Sides {
		if side == string(s) {
			k = i
		}
	}
	if name == "" || k < 0 {
		say(fmt.Sprintf("shaft %q, side %q", short(name), short(side)), "name the shaft, and left or right")
		return
	}
	var s *draftShaft
	for i := range d.shafts {
		if d.shafts[i].name == name {
			s = &d.shafts[i]
		}
	}
	if s == nil {
		d.shafts = append(d.shafts, draftShaft{name: name})
		s = &d.shafts[len(d.shafts)-1]
	}
	if s.bores[k] != (draftBore{}) {
		say(fmt.Sprintf("the %s bore of %q stands twice", side, short(name)), "keep one of them")
		return
	}
	b := draftBore{widest: get("widest"), narrowest: get("narrowest"), at: get("worn_to"), metal: get("metal"),
		metalAt: get("metal_at")}
	if x, y := get("x"), get("y"); x != "" || y != "" {
		b.centre = x + " ; " + y
	}
	s.bores[k] = b
	s.journal[k] = get("journal")
	if p := get("must_pass"); p != "" {
		s.pass[k] = p
	}
}
