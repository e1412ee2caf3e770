package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// TestTablesCountWhatRowsRestOn holds the counts of "rebush tables" against the
// files: a row that speaks of memory is counted as such, every row is counted
// once, and README names the command and the sum.
func TestTablesCountWhatRowsRestOn(t *testing.T) {
	memory, lines := map[string]int{}, map[string]int{}
	files, err := filepath.Glob("../../fits/table/data/*.csv")
	if err != nil || len(files) < 30 {
		t.Fatalf("%d tables: %v", len(files), err)
	}
	spoken := regexp.MustCompile(`(?i)from.memory|^remembered$`)
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		name := strings.TrimSuffix(filepath.Base(file), ".csv")
		text := string(data)
		for strings.HasPrefix(text, "#") {
			_, text, _ = strings.Cut(text, "\n")
		}
		rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		for _, row := range rows[1:] {
			lines[name]++
			for i, column := range rows[0] {
				if (column == "source" || column == "basis") && spoken.MatchString(row[i]) {
					memory[name]++
					break
				}
			}
		}
	}
	code, out, _ := ran("", "tables", "--json")
	var list []tableInfo
	if err := json.Unmarshal([]byte(out), &list); code != 0 || err != nil {
		t.Fatalf("exit %d, %v", code, err)
	}
	rows, remembered := 0, 0
	for _, l := range list {
		s := l.Standing
		if l.Rows != lines[l.Name] || s.Memory != memory[l.Name] {
			t.Errorf("%s: %d rows, %d from memory; the file has %d and %d", l.Name, l.Rows, s.Memory, lines[l.Name],
				memory[l.Name])
		}
		if s.Page+s.Worked+s.Practice+s.Memory != l.Rows {
			t.Errorf("%s: %+v does not add up to %d", l.Name, s, l.Rows)
		}
		rows += l.Rows
		remembered += s.Memory
	}
	_, text, _ := ran("", "tables")
	all := regexp.MustCompile(`(?m)^all +` + fmt.Sprint(rows) + ` .* ` + fmt.Sprint(remembered) + `$`)
	if !all.MatchString(text) {
		t.Errorf("the list does not end with %d rows and %d from memory:\n%s", rows, remembered,
			text[max(0, len(text)-300):])
	}
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	if want := fmt.Sprintf("**%d rows** of the tables", remembered); !strings.Contains(string(readme), want) ||
		!strings.Contains(string(readme), "`rebush tables` counts them") {
		t.Errorf("README.md does not say: %s", want)
	}
}
