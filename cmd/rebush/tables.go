package main

import (
	"math"
	"slices"
	"strconv"

	"rebush/fits/spelling"
	"rebush/fits/table"
)

func tablesCommand() *command {
	return &command{name: "tables", args: "[NAME]", what: "the built-in tables with their sources",
		flags: []string{"json", "shop"}, run: runTables,
		more: "Without a name it lists them and counts what their rows rest on: a page, practice, memory. A " +
			"shop may put a file of its own in the place of any table; --shop shows what is then in force. " +
			"\"rebush tables checks\" works out anew, with those tables, what others printed of limits, fits, reamers, " +
			"presses, gears, circles and cells of the tables, and lays it beside what they printed; it ends with exit 1 where any disagrees.",
		examples: []string{"rebush tables", "rebush tables rules", "rebush tables checks"}}
}

type tableInfo struct {
	Name  string `json:"name"`
	About string `json:"about"`
	From  string `json:"from"`
	Rows  int    `json:"rows"`
	// Standing is how many of the rows rest on what.
	Standing struct {
		Page     int `json:"read_on_a_page"`
		Worked   int `json:"worked_out"`
		Practice int `json:"practice"`
		Memory   int `json:"from_memory"`
	} `json:"standing"`
}

func infoOf(t *table.Table) (info tableInfo) {
	info.Name, info.About, info.From, info.Rows = t.Name, t.About, t.From, len(t.Rows)
	c, s := t.Standings(), &info.Standing
	s.Page, s.Worked, s.Practice, s.Memory = c[table.Published], c[table.WorkedOut], c[table.Practice], c[table.Memory]
	return info
}

type tableJSON struct {
	Name    string              `json:"name"`
	About   string              `json:"about"`
	From    string              `json:"from"`
	Columns []string            `json:"columns"`
	Rows    []map[string]string `json:"rows"`
}

func runTables(e *env, o options, words []string) error {
	b, err := openBooks(o)
	if err != nil {
		return err
	}
	if len(words) == 0 {
		return listTables(e, o, b)
	}
	name, err := one(words, "table")
	if err != nil {
		return err
	}
	if name == checksWord {
		return listChecks(e, o, b.lib)
	}
	if known := append(table.Names(), checksWord); !slices.Contains(known, name) {
		return usage("there is no table %q; the nearest is %q", name, spelling.Nearest(name, known))
	}
	t, err := b.lib.Get(name)
	if err != nil {
		return err
	}
	return printTable(e, o, b, t)
}

func listTables(e *env, o options, b *books) error {
	var list []tableInfo
	for _, n := range table.Names() {
		t, err := b.lib.Get(n)
		if err != nil {
			return err
		}
		list = append(list, infoOf(t))
	}
	if o.on["json"] {
		return e.json(list)
	}
	p := &page{w: e.out}
	for _, t := range list {
		about := t.About
		if t.From != "built in" {
			about += " [from " + t.From + "]"
		}
		p.pair(t.Name, "%s", about)
	}
	p.flush()
	standings(p, list)
	return nil
}

// standings counts what the rows of the tables rest on, and all of them.
func standings(p *page, list []tableInfo) {
	p.line("")
	p.prose("", 96, "What the rows rest on. Worked out: from printed figures, or plane geometry. "+
		"Practice: habit of the trade or a judgement, "+
		"without a source. From memory: printed somewhere, but nobody here saw the page; look it up before you lean "+
		"on it. "+
		"The source of each row: rebush tables NAME.")
	rows := [][]string{}
	sum := tableInfo{Name: "all"}
	add := func(t tableInfo) {
		s := t.Standing
		rows = append(rows, []string{t.Name, strconv.Itoa(t.Rows), strconv.Itoa(s.Page), strconv.Itoa(s.Worked),
			strconv.Itoa(s.Practice), strconv.Itoa(s.Memory)})
	}
	for _, t := range list {
		add(t)
		sum.Rows += t.Rows
		sum.Standing.Page += t.Standing.Page
		sum.Standing.Worked += t.Standing.Worked
		sum.Standing.Practice += t.Standing.Practice
		sum.Standing.Memory += t.Standing.Memory
	}
	add(sum)
	p.table([]string{"table", "rows", "read on a page", "worked out", "practice", "from memory"}, rows)
}

func printTable(e *env, o options, b *books, t *table.Table) error {
	rows := make([][]string, len(t.Rows))
	objects := make([]map[string]string, len(t.Rows))
	for i, r := range t.Rows {
		objects[i] = map[string]string{}
		for _, c := range t.Columns {
			v := r.Get(c)
			if t.Name == "rules" && b.shop != nil {
				v = ruleCell(b.rules, r.Get("rule"), c, v)
			}
			rows[i] = append(rows[i], v)
			objects[i][c] = v
		}
	}
	if o.on["json"] {
		return e.json(tableJSON{t.Name, t.About, t.From, t.Columns, objects})
	}
	p := &page{w: e.out}
	p.prose("# ", 98, t.About)
	if t.From != "built in" {
		p.line("# from %s", t.From)
	}
	p.table(t.Columns, rows)
	return nil
}

// ruleCell is a cell of the rules with the shop's own figures in it.
func ruleCell(rules *table.Rules, name, column, v string) string {
	if name = table.CurrentRule(name); !slices.Contains(rules.Names(), name) {
		return v
	}
	r := rules.Get(name)
	if !r.Shop {
		return v
	}
	switch column {
	case "low":
		return plainly(r.Low)
	case "high":
		return plainly(r.High)
	case "source":
		return r.Source
	}
	return v
}

// plainly writes a figure without a power of ten, "" where there is none.
func plainly(f float64) string {
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return ""
	}
	return strconv.FormatFloat(f, 'f', -1, 64)
}
