package main

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// A cell is a bug in a table: one line of it, as it stands and as it is seeded.
type cell struct {
	table, file string
	line        int
	column      string
	was, is     string // the cell
	text        string // the whole line, with the bug
}

// cells finds the cells of every table that can hold a bug: a figure a tenth
// larger (a whole one that counts, by one), a word that stands in the same
// column of another row. Sources and remarks are prose.
func cells(root string) ([]cell, error) {
	var all []cell
	for _, pattern := range []string{"fits/table/data/*.csv", "plan/job/data/*.csv"} {
		files, err := filepath.Glob(filepath.Join(root, pattern))
		if err != nil {
			return nil, err
		}
		for _, f := range files {
			got, err := cellsOf(root, f)
			if err != nil {
				return nil, err
			}
			all = append(all, got...)
		}
	}
	return all, nil
}

func cellsOf(root, name string) ([]cell, error) {
	data, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	short, _ := filepath.Rel(root, name)
	lines := strings.Split(string(data), "\n")
	var head []string
	var rows [][]string
	var at []int
	for i, text := range lines {
		if strings.TrimSpace(text) == "" || head == nil && strings.HasPrefix(text, "#") {
			continue
		}
		rec, err := csv.NewReader(strings.NewReader(text)).Read()
		if err != nil || head != nil && len(rec) != len(head) {
			continue // of several lines
		}
		if head == nil {
			head = rec
			continue
		}
		rows, at = append(rows, rec), append(at, i+1)
	}
	var all []cell
	for r, rec := range rows {
		for c, was := range rec {
			is := otherCell(head[c], rows, r, c)
			if is == "" || is == was {
				continue
			}
			changed := append([]string(nil), rec...)
			changed[c] = is
			var b strings.Builder
			w := csv.NewWriter(&b)
			_ = w.Write(changed) // a builder takes everything
			w.Flush()
			all = append(all, cell{strings.TrimSuffix(filepath.Base(name), ".csv"), filepath.ToSlash(short), at[r],
				head[c], was, is, strings.TrimRight(b.String(), "\n")})
		}
	}
	return all, nil
}

// prose are the columns that nobody computes with.
var prose = map[string]bool{"source": true, "note": true, "about": true, "remark": true}

func otherCell(column string, rows [][]string, r, c int) string {
	was := strings.TrimSpace(rows[r][c])
	if prose[column] || was == "" {
		return ""
	}
	if n, err := strconv.Atoi(was); err == nil && n < 20 {
		return strconv.Itoa(n + 1)
	}
	if v, err := strconv.ParseFloat(was, 64); err == nil {
		if v == 0 {
			return "1"
		}
		return strconv.FormatFloat(v*1.1, 'g', 8, 64)
	}
	for i := 1; i < len(rows); i++ {
		other := strings.TrimSpace(rows[(r+i)%len(rows)][c])
		if _, err := strconv.ParseFloat(other, 64); other != "" && other != was && err != nil {
			return other
		}
	}
	return ""
}
